package amend

import (
	"bytes"
	"strings"

	"tallyfold/kit/load"
)

// A slot is the bytes of one entry with what belongs to it: notes on the lines right
// above it and set in like it, and the note behind its last line. The line end is
// not part of it, so that slots can change places in a file whose last line has none.
// In brackets it is the entry alone.
type slot struct{ start, end int }

// slot is that of the numbered entry of a part.
func (t *text) slot(p *load.Part, number int) slot {
	e := p.Entries[number]
	if p.InBrackets {
		return slot{t.entryStart(e), t.valueEnd(e)}
	}
	start := t.entryStart(e)
	if !e.KeySpan.Known() {
		start = t.dash(start)
	}
	first := 0
	if number > 0 {
		first = t.lineEndAt(t.valueEnd(p.Entries[number-1]))
	}
	return slot{t.notesAbove(start, first), t.lineEndAt(t.valueEnd(e))}
}

// entryStart is the first byte of an entry: its key, or the value in a list.
func (t *text) entryStart(e load.PartEntry) int {
	if e.KeySpan.Known() {
		return e.KeySpan.Start
	}
	return e.Value.Span.Start
}

// dash is the dash before an entry of a list.
func (t *text) dash(at int) int {
	if found := bytes.LastIndexByte(t.file.Text[:at], '-'); found >= 0 {
		return found
	}
	return at
}

// valueEnd is the byte after an entry. Behind a key with nothing after it that is
// its colon; behind lines under “|+” their blank lines, which belong to the text.
func (t *text) valueEnd(e load.PartEntry) int {
	if e.Value.Nothing() && e.KeySpan.Known() {
		from := e.KeySpan.End
		if colon := strings.IndexByte(t.bytes(from, max(from, e.Value.Span.End)), ':'); colon >= 0 {
			return from + colon + 1
		}
		return from
	}
	end := e.Value.Span.End
	if last := lastOf(e.Value); isBlock(last) && t.keepsBlankLines(last) {
		for rest := t.file.Text[end:]; ; rest = t.file.Text[end:] {
			line := t.file.Text[end : end+lineLength(rest)]
			if len(line) == 0 || len(bytes.TrimSpace(line)) > 0 {
				break
			}
			end += len(line)
		}
		end -= len(t.file.Text[:end]) - len(bytes.TrimRight(t.file.Text[:end], "\r\n"))
		end = max(end, e.Value.Span.End)
	}
	return end
}

// lastOf is the text that an entry ends with.
func lastOf(p *load.Part) *load.Part {
	for len(p.Entries) > 0 && !p.InBrackets {
		p = p.Entries[len(p.Entries)-1].Value
	}
	return p
}

// keepsBlankLines says whether a block of text has a “+” behind its sign.
func (t *text) keepsBlankLines(p *load.Part) bool {
	head, _, _ := strings.Cut(t.bytes(p.Span.Start, min(p.Span.Start+3, p.Span.End)), "\n")
	return strings.Contains(head, "+")
}

// lineLength is how many bytes the first line of a text has, its end included.
func lineLength(text []byte) int {
	at := bytes.IndexAny(text, "\r\n")
	switch {
	case at < 0:
		return len(text)
	case text[at] == '\r' && at+1 < len(text) && text[at+1] == '\n':
		return at + 2
	}
	return at + 1
}

// lineEndAt is the end of the line that byte at stands in, before its line end.
func (t *text) lineEndAt(at int) int {
	if end := bytes.IndexAny(t.file.Text[at:], "\r\n"); end >= 0 {
		return at + end
	}
	return len(t.file.Text)
}

// lineStartAt is the first byte of the line that byte at stands in.
func (t *text) lineStartAt(at int) int {
	return max(bytes.LastIndexAny(t.file.Text[:at], "\r\n")+1, t.markBefore(at))
}

// markBefore is how many bytes of byte order mark stand before a place.
func (t *text) markBefore(at int) int { return min(t.file.WithoutMark(), at) }

// notesAbove goes up from the start of an entry over lines that have only a note,
// set in like the entry, and not above byte first.
func (t *text) notesAbove(start, first int) int {
	line := t.lineStartAt(start)
	indent := t.bytes(line, start)
	if strings.TrimSpace(indent) != "" {
		return start // it stands behind a dash
	}
	for line > first {
		above := t.lineStartAt(max(line-len(t.eol), 0))
		text := t.bytes(above, t.lineEndAt(above))
		if above < first || above >= line || !strings.HasPrefix(text, indent+"#") {
			break
		}
		line = above
		start = line + len(indent)
	}
	return start
}

// indent is what stands before each entry of a part on a line of its own.
func (t *text) indent(p *load.Part) string {
	if len(p.Entries) == 0 {
		return ""
	}
	start := t.entryStart(p.Entries[0])
	if p.Kind == load.ListPart {
		start = t.dash(start)
	}
	before := t.bytes(t.lineStartAt(start), start)
	return strings.Repeat(" ", len([]rune(before)))
}
