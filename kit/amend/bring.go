package amend

import (
	"slices"
	"strings"

	"tallyfold/kit/load"
)

// Entry gives an entry with a key of the maker's own alone, in its section: what Bring takes
// to put it back. Path is that of the entry.
func Entry(content []byte, path Path) ([]byte, error) {
	t, at, err := readAt(content, path)
	if err != nil {
		return nil, err
	}
	e := at.entry()
	if len(path) != 2 || !e.KeySpan.Known() {
		return nil, refuse("copy it in the text", "%s has no key of its own", path)
	}
	if at.parent().InBrackets {
		return []byte(spelledKey(path[0]) + ": {" + t.bytes(e.KeySpan.Start, t.valueEnd(e)) + "}" + t.eol), nil
	}
	return []byte(spelledKey(path[0]) + ":" + t.eol + t.indent(at.parent()) + t.bytes(e.KeySpan.Start, t.lineEndAt(t.valueEnd(e))) + t.eol), nil
}

// Bring puts an entry that Entry gave into kit.yaml, as the numbered one (from 0) of its
// section; one whose number is beyond the last becomes the last.
func Bring(content, entry []byte, path Path, number int) ([]byte, error) {
	from, at, err := readAt(entry, path)
	if err != nil {
		return nil, err
	}
	t, err := withSection(content, path)
	if err != nil {
		return nil, err
	}
	section, err := t.existing(path[:1])
	if err != nil {
		return nil, err
	}
	p := section.part
	if err := t.free(path, p, path[1]); err != nil {
		return nil, err
	}
	number = min(max(number, 0), len(p.Entries))
	want := t.with(path[:1], func(p *load.Part) {
		p.Kind, p.Text = load.KeysPart, ""
		p.Entries = slices.Insert(p.Entries, number, load.PartEntry{Key: path[1], Value: copied(at.part)})
	})
	if changed := t.brought(section, from.atMargin(at), number); changed != nil && t.proved(changed, want) {
		return changed, nil
	}
	return nil, refuse("put it back in the text", "%s cannot be put back without changing something else", path)
}

// withSection reads kit.yaml, with an empty section where it has none.
func withSection(content []byte, path Path) (*text, error) {
	t, err := read(content)
	if err != nil {
		return nil, err
	}
	if at, err := t.find(path[:1]); err != nil || len(at.missing) == 0 {
		return t, err
	}
	return read(t.atTheEnd(spelledKey(path[0]) + ": {}"))
}

// atMargin is an entry as it would stand at the margin, with LF between its lines.
func (t *text) atMargin(at place) string {
	e := at.entry()
	if at.parent().InBrackets {
		return t.bytes(e.KeySpan.Start, t.valueEnd(e))
	}
	lines := strings.Split(unified(t.bytes(e.KeySpan.Start, t.lineEndAt(t.valueEnd(e)))), "\n")
	for i := range lines[1:] {
		lines[i+1] = strings.TrimPrefix(lines[i+1], t.indent(at.parent()))
	}
	return strings.Join(lines, "\n")
}

// brought writes an entry into a section, nil where there is no way to.
func (t *text) brought(section place, entry string, number int) []byte {
	p := section.part
	switch {
	case len(p.Entries) == 0:
		start := t.afterColon(section)
		end := max(start, p.Span.End)
		if p.Nothing() {
			end = start
		}
		behind := t.bytes(end, t.lineEndAt(end)) // a note goes with the key
		return t.spliced(start, t.lineEndAt(end), behind+t.eol+"  "+strings.ReplaceAll(entry, "\n", t.eol+"  "))
	case !p.InBrackets:
		return t.asLine(p, number, entry)
	case strings.Contains(entry, "\n"):
		return nil
	case number == 0:
		start := t.slot(p, 0).start
		return t.spliced(start, start, entry+", ")
	}
	end := t.slot(p, number-1).end
	return t.spliced(end, end, ", "+entry)
}
