package amend

import (
	"strings"

	"tallyfold/kit/load"
)

// Set gives a field a value and the text back with it; every other byte stays. The
// value is what the maker means, without quotation marks.
//
// The field keeps its spelling: plain, in single or in double quotation marks, as
// lines under “|”, as far as that can hold the value, else it gets double ones.
// Double quotation marks that were there only because the old value needed them
// (a comma in braces) go when the new one does without, so that setting the old
// value back gives the old bytes. What a value does not tell does not come back with
// it: the folding of a text over several lines, escapes of its own, and marks that it
// did not need, once another value that needs them has stood in them.
//
// A field that is not there is put in at its place in the section, with what it
// stands in: Set(text, At("components", "case", "packed"), "2") may start a
// component.
func Set(content []byte, path Path, value string) ([]byte, error) {
	t, err := read(content)
	if err != nil {
		return nil, err
	}
	if what := unwritable(value); what != "" {
		return nil, refuse("take it out", "the value for %s has %s", path, what)
	}
	at, err := t.find(path)
	if err != nil {
		return nil, err
	}
	form := levelOf(path).form
	if at.part.Kind == load.TextPart && !at.second && len(at.missing) == 0 && len(at.above) < len(path) {
		path = path[:len(at.above)] // the one value that the list is
	}
	switch {
	case at.second:
		return t.makeList(path[:len(path)-1], at, form, value)
	case len(at.missing) > 0:
		return t.create(path, at, form, value)
	case at.part.Kind != load.TextPart:
		return nil, refuse("change the values in it one by one, or take it out first", "%s holds several values", path)
	case at.part.Nothing():
		return t.fillIn(path, at, form, value)
	case at.part.Text == value:
		return content, nil
	}
	return t.replace(path, at, form, value)
}

// replace puts another value in the place of a text.
func (t *text) replace(path Path, at place, form load.Form, value string) ([]byte, error) {
	want := t.with(path, func(p *load.Part) { p.Text = value })
	span := at.part.Span
	for _, written := range t.spellings(path, at, form, value) {
		if changed := t.spliced(span.Start, span.End, written); t.proved(changed, want) {
			return changed, nil
		}
	}
	return nil, refuse("change it in the text", "this value cannot be written at %s without changing something else", path)
}

// makeList makes a list in brackets of one value and a second.
func (t *text) makeList(path Path, at place, form load.Form, value string) ([]byte, error) {
	old := at.part
	want := t.with(path, func(p *load.Part) {
		first := *p
		*p = load.Part{Kind: load.ListPart, Entries: []load.PartEntry{{Value: &first}, {Value: &load.Part{Kind: load.TextPart, Text: value}}}}
	})
	for _, first := range []string{t.bytes(old.Span.Start, old.Span.End), doubleQuoted(strings.TrimSuffix(old.Text, "\n"))} {
		for _, second := range ways(form, value) {
			if changed := t.spliced(old.Span.Start, old.Span.End, "["+first+", "+second+"]"); t.proved(changed, want) {
				return changed, nil
			}
		}
	}
	return nil, refuse("write both as a list in the text", "%s cannot take a second value without changing something else", path)
}

// fillIn puts a value behind a key with nothing after it.
func (t *text) fillIn(path Path, at place, form load.Form, value string) ([]byte, error) {
	want := t.with(path, func(p *load.Part) { p.Text = value })
	start := t.afterColon(at)
	for _, written := range ways(form, value) {
		if changed := t.spliced(start, start, " "+written); t.proved(changed, want) {
			return changed, nil
		}
	}
	return nil, refuse("write it in the text", "no value can be put in at %s", path)
}

// afterColon is the byte behind the colon of a key with nothing after it, or behind
// the dash of an entry.
func (t *text) afterColon(at place) int {
	e := at.entry()
	if !e.KeySpan.Known() {
		return at.part.Span.Start
	}
	from := e.KeySpan.End
	if colon := strings.IndexByte(t.bytes(from, at.part.Span.End), ':'); colon >= 0 {
		return from + colon + 1
	}
	return from
}

// spellings are the ways to write a value in the place of a text, best first.
func (t *text) spellings(path Path, at place, form load.Form, value string) []string {
	old := at.part
	inBraces := []string{doubleQuoted(value)}
	switch old.Spelling {
	case load.SingleQuoted:
		if !hasOdd(value) {
			return append([]string{singleQuoted(value)}, inBraces...)
		}
		return inBraces
	case load.DoubleQuoted:
		if t.needsQuotes(path, at, form) {
			return ways(form, value)
		}
		return inBraces
	case load.Lines, load.Folded:
		if block, ok := t.block(at, value); ok {
			return append([]string{block}, inBraces...)
		}
		return inBraces
	}
	return ways(form, value)
}

// ways are plain, where that is allowed, and double quotation marks.
func ways(form load.Form, value string) []string {
	if mayBePlain(form, value) {
		return []string{value, doubleQuoted(value)}
	}
	return []string{doubleQuoted(value)}
}

// needsQuotes says whether the value that stands there could not do without its
// quotation marks.
func (t *text) needsQuotes(path Path, at place, form load.Form) bool {
	old := at.part
	if !mayBePlain(form, old.Text) {
		return true
	}
	return !t.proved(t.spliced(old.Span.Start, old.Span.End, old.Text), t.root)
}

// block writes a value as the lines under “|” or “>” that stand there now: with
// their indentation, and with a comment behind the sign.
func (t *text) block(at place, value string) (string, bool) {
	old := t.bytes(at.part.Span.Start, at.part.Span.End)
	head, body, _ := strings.Cut(strings.ReplaceAll(strings.ReplaceAll(old, "\r\n", "\n"), "\r", "\n"), "\n")
	lines := strings.Split(strings.TrimSuffix(value, "\n"), "\n")
	holds := strings.TrimSpace(lines[0]) != "" && !strings.HasSuffix(value, "\n\n") && lines[0][0] != ' ' && !hasOdd(strings.ReplaceAll(value, "\n", ""))
	indent := leastIndent(body)
	if !holds || indent == "" {
		return "", false
	}
	sign, comment, commented := strings.Cut(head, " ")
	if len(lines) > 1 {
		sign = "|" + sign[1:] // folding would join them
	}
	// A figure behind the sign told the indentation of a first line that began with
	// blanks; “+” kept blank lines at the end. This value has neither.
	sign = strings.Map(func(r rune) rune {
		if r >= '0' && r <= '9' || r == '+' {
			return -1
		}
		return r
	}, sign)
	var b strings.Builder
	b.WriteString(sign)
	if commented {
		b.WriteString(" " + comment)
	}
	for _, line := range lines {
		b.WriteString(t.eol)
		if line != "" {
			b.WriteString(indent + line)
		}
	}
	return b.String(), true
}

// leastIndent is the indentation that all lines with something on them share.
func leastIndent(body string) string {
	least := ""
	for line := range strings.SplitSeq(body, "\n") {
		rest := strings.TrimLeft(line, " ")
		if indent := line[:len(line)-len(rest)]; rest != "" && (least == "" || len(indent) < len(least)) {
			least = indent
		}
	}
	return least
}
