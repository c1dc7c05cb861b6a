package amend

import (
	"slices"
	"strings"

	"tallyfold/kit/load"
)

// create puts in a field that is not there, with all that it stands in.
func (t *text) create(path Path, at place, form load.Form, value string) ([]byte, error) {
	parentPath := path[:len(path)-len(at.missing)]
	for i, key := range at.missing {
		above := path[:len(path)-len(at.missing)+i]
		section := levelOf(above)
		if section.isList() && i > 0 && key != "0" || section.isList() && i == 0 && at.part.Nothing() && key != "0" {
			return nil, refuse("count the entries from the first", "%s has no entries yet", above)
		}
		if section.inner != nil && section.form == load.NamedGroups {
			if why, ok := load.IsKey(key); !ok {
				return nil, refuse("choose another key", "%s", why)
			}
		}
	}
	number := t.whereto(at.part, levelOf(parentPath), at.missing[0])
	for _, written := range ways(form, value) {
		want := t.with(parentPath, func(p *load.Part) { grow(p, levelOf, parentPath, at.missing, number, value) })
		for _, changed := range t.insertions(path, at, number, written) {
			if t.proved(changed, want) {
				return changed, nil
			}
		}
	}
	return nil, refuse("write it in the text", "%s cannot be put in without changing something else", path)
}

// grow makes the missing parts in a copy of the tree.
func grow(p *load.Part, levels func(Path) level, at, missing Path, number int, value string) {
	if p.Kind == load.TextPart {
		p.Kind = load.KeysPart
		if levels(at).isList() {
			p.Kind = load.ListPart
		}
		number = 0
	}
	inner := &load.Part{Kind: load.TextPart, Text: value}
	if len(missing) > 1 {
		inner = &load.Part{Kind: load.TextPart}
		grow(inner, levels, append(slices.Clone(at), missing[0]), missing[1:], 0, value)
	}
	e := load.PartEntry{Key: missing[0], Value: inner}
	if p.Kind == load.ListPart {
		e.Key = ""
	}
	p.Entries = slices.Insert(p.Entries, number, e)
}

// whereto is which entry of a part a new one becomes: the one behind the last of
// those that the section tells before it, in the order of the file; at the end where
// the maker chose the names.
func (t *text) whereto(p *load.Part, l level, key string) int {
	if p.Kind == load.ListPart || l.keys == nil {
		return len(p.Entries)
	}
	number := 0
	for i, e := range p.Entries {
		if l.place(e.Key) <= l.place(key) {
			number = i + 1
		}
	}
	if number == 0 && len(p.Entries) > 0 && t.slot(p, 0).start < t.entryStart(p.Entries[0]) {
		return 1 // a note stands right above the first entry, and stays with it
	}
	return number
}

// insertions are the ways to write a new entry at its place, best first.
func (t *text) insertions(path Path, at place, number int, written string) [][]byte {
	p, parentPath := at.part, path[:len(path)-len(at.missing)]
	inBrackets := at.inBrackets() || p.InBrackets
	flow := compact(levelOf, parentPath, at.missing, written)
	if p.Kind == load.TextPart {
		return t.underNothing(at, parentPath, flow)
	}
	entry := flow
	if levelOf(parentPath).isList() || p.Kind == load.ListPart {
		entry = strings.TrimPrefix(entry, "- ")
	}
	switch {
	case len(p.Entries) == 0 && p.InBrackets:
		return [][]byte{t.spliced(p.Span.Start+1, p.Span.Start+1, entry)}
	case len(p.Entries) == 0:
		return [][]byte{t.atTheEnd(flow)}
	case inBrackets && p.InBrackets && number > 0:
		end := t.valueEnd(p.Entries[number-1])
		return [][]byte{t.spliced(end, end, ", "+entry)}
	case inBrackets && p.InBrackets:
		start := t.entryStart(p.Entries[0])
		return [][]byte{t.spliced(start, start, entry+", ")}
	}
	if block, ok := t.likeItsSiblings(p, parentPath, at.missing, number, written); ok {
		return [][]byte{t.asLine(p, number, block), t.asLine(p, number, flow)}
	}
	return [][]byte{t.asLine(p, number, flow)}
}

// compact writes missing entries on one line: “key: value”, “key: {inner: value}”,
// “- value” for the entry of a list.
func compact(levels func(Path) level, at, missing Path, written string) string {
	l := levels(at)
	inner := written
	if len(missing) > 1 {
		below := append(slices.Clone(at), missing[0])
		inner = compact(levels, below, missing[1:], written)
		if levels(below).isList() {
			inner = "[" + strings.TrimPrefix(inner, "- ") + "]"
		} else {
			inner = "{" + inner + "}"
		}
	}
	if l.isList() {
		return "- " + inner
	}
	return spelledKey(missing[0]) + ": " + inner
}

// asLine puts an entry on a line of its own, as the numbered one of lines of keys or
// of a list with dashes.
func (t *text) asLine(p *load.Part, number int, entry string) []byte {
	indent := t.indent(p)
	entry = strings.ReplaceAll(entry, "\n", t.eol+indent)
	if number == 0 {
		start := t.slot(p, 0).start
		return t.spliced(start, start, entry+t.eol+indent)
	}
	end := t.slot(p, number-1).end
	return t.spliced(end, end, t.gap(p)+indent+entry)
}

// gap is what stands between two entries: a line end, and a blank line between the
// sections of the kit where all of them have one.
func (t *text) gap(p *load.Part) string {
	if p != t.root || len(p.Entries) < 2 {
		return t.eol
	}
	last := len(p.Entries) - 1
	between := t.bytes(t.slot(p, last-1).end, t.slot(p, last).start)
	if strings.Count(between, t.eol) > 1 {
		return t.eol + t.eol
	}
	return t.eol
}

// likeItsSiblings writes a new named entry as lines of keys where the one before it
// is written so. Lines are set in as the entry itself stands at the margin.
func (t *text) likeItsSiblings(p *load.Part, at, missing Path, number int, written string) (string, bool) {
	deeper := "  "
	if p != t.root {
		if number == 0 || p.Kind == load.ListPart {
			return "", false
		}
		sibling := p.Entries[number-1].Value
		if sibling.Kind != load.KeysPart || sibling.InBrackets || len(sibling.Entries) == 0 || len(missing) < 2 {
			return "", false
		}
		deeper = strings.TrimPrefix(t.indent(sibling), t.indent(p))
	} else if levelOf(append(slices.Clone(at), missing[0])).inner == nil || len(missing) < 2 {
		return "", false
	}
	inner := compact(levelOf, append(slices.Clone(at), missing[0]), missing[1:], written)
	return spelledKey(missing[0]) + ":\n" + deeper + inner, deeper != ""
}

// underNothing puts entries under a key with nothing after it: in brackets behind the
// colon, or on the next line.
func (t *text) underNothing(at place, path Path, flow string) [][]byte {
	start := t.afterColon(at)
	inBraces := " {" + flow + "}"
	if levelOf(path).isList() {
		inBraces = " [" + strings.TrimPrefix(flow, "- ") + "]"
	}
	behind := t.spliced(start, start, inBraces)
	if at.inBrackets() || !at.entry().KeySpan.Known() {
		return [][]byte{behind}
	}
	end := t.lineEndAt(start)
	line := t.spliced(end, end, t.eol+t.indent(at.parent())+"  "+flow)
	return [][]byte{line, behind}
}

// atTheEnd adds a line to a file that says nothing yet.
func (t *text) atTheEnd(entry string) []byte {
	end := len(t.file.Text)
	before := ""
	if end > t.file.WithoutMark() && !strings.HasSuffix(string(t.file.Text), t.eol) {
		before = t.eol
	}
	return t.spliced(end, end, before+entry+t.eol)
}
