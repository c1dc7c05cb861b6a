package amend

import (
	"bytes"
	"slices"
	"strings"

	"tallyfold/kit/load"
)

// Remove takes an entry out: a field, or a component with all its fields. The note
// behind its last line goes with it; notes on lines above it stay. An entry that
// was the only one leaves “{}” or “[]”.
func Remove(content []byte, path Path) ([]byte, error) {
	t, at, err := readAt(content, path)
	if err != nil {
		return nil, err
	}
	p, n := at.parent(), at.index
	want := t.with(path[:len(path)-1], func(p *load.Part) { p.Entries = slices.Delete(p.Entries, n, n+1) })
	for _, cut := range t.cuts(at) {
		if changed := t.spliced(cut.start, cut.end, cut.with); t.proved(changed, want) {
			return changed, nil
		}
	}
	if p == t.root && len(p.Entries) == 1 {
		return nil, refuse("delete the file if it is not needed", "%s is the only thing in kit.yaml", path)
	}
	return nil, refuse("take it out in the text", "%s cannot be taken out without changing something else", path)
}

// A cut is bytes to be replaced.
type cut struct {
	start, end int
	with       string
}

// cuts are the ways to take an entry out, best first.
func (t *text) cuts(at place) []cut {
	p, n := at.parent(), at.index
	e := p.Entries[n]
	start, end := t.entryStart(e), t.valueEnd(e)
	if !e.KeySpan.Known() && !p.InBrackets {
		start = t.dash(start)
	}
	lineStart, lineEnd := t.lineStartAt(start), t.lineEndAt(end)
	next := lineEnd + lineLength(t.file.Text[lineEnd:])
	switch {
	case len(p.Entries) == 1 && p.InBrackets:
		return []cut{{p.Span.Start + 1, p.Span.End - 1, ""}}
	case len(p.Entries) == 1:
		return t.onlyOne(at, start, end)
	case p.InBrackets && n == 0:
		behind := t.entryStart(p.Entries[1])
		if strings.Contains(t.bytes(end, behind), "#") {
			comma := end + bytes.IndexByte(t.file.Text[end:], ',')
			return []cut{{start, comma + 1, ""}}
		}
		return []cut{{start, behind, ""}}
	case p.InBrackets:
		before := t.valueEnd(p.Entries[n-1])
		if !strings.Contains(t.bytes(before, start), "#") {
			return []cut{{before, end, ""}}
		}
		comma := end + max(bytes.IndexByte(t.file.Text[end:], ','), 0)
		return []cut{{start, comma + 1, ""}, {start, end, ""}}
	case strings.TrimSpace(t.bytes(lineStart, start)) != "":
		// The first key of an entry of a list stands behind the dash.
		return []cut{{start, t.entryStart(p.Entries[n+1]), ""}, {start, lineEnd, ""}}
	case next == len(t.file.Text) && lineEnd == next:
		// The last line of a file that ends without a line end: what was above it
		// then ends the file in the same way.
		return []cut{{max(lineStart-len(t.eol), 0), lineEnd, ""}, {lineStart, lineEnd, ""}}
	}
	return []cut{{lineStart, next, ""}}
}

// onlyOne takes out what a key has under it on lines of their own.
func (t *text) onlyOne(at place, start, end int) []cut {
	empty := "{}"
	if at.parent().Kind == load.ListPart {
		empty = "[]"
	}
	if len(at.above) < 2 {
		return nil
	}
	owner := at.above[len(at.above)-2]
	i := slices.IndexFunc(owner.Entries, func(e load.PartEntry) bool { return e.Value == at.parent() })
	e := owner.Entries[i]
	if !e.KeySpan.Known() {
		return []cut{{start, end, empty}}
	}
	colon := e.KeySpan.End + strings.IndexByte(t.bytes(e.KeySpan.End, start), ':') + 1
	between := t.bytes(colon, t.lineStartAt(start))
	lineEnd := t.lineEndAt(end)
	if t.lineStartAt(start) <= colon {
		return []cut{{colon, end, " " + empty}}
	}
	return []cut{{colon, lineEnd, " " + empty + strings.TrimRight(between, " \r\n")}}
}

// Duplicate puts a copy of an entry right behind it, with another key. The copy has
// the same name as the first, which kit.yaml does not bear for long: the caller sets
// another next. For an entry of a list key is "".
func Duplicate(content []byte, path Path, key string) ([]byte, error) {
	t, at, err := readAt(content, path)
	if err != nil {
		return nil, err
	}
	p, e := at.parent(), at.entry()
	if e.KeySpan.Known() {
		if err := t.free(path, p, key); err != nil {
			return nil, err
		}
	}
	want := t.with(path[:len(path)-1], func(p *load.Part) {
		copy := load.PartEntry{Key: key, Value: copied(p.Entries[at.index].Value)}
		p.Entries = slices.Insert(p.Entries, at.index+1, copy)
	})
	var changed []byte
	s := t.slot(p, at.index)
	body := t.bytes(t.entryStart(e), t.valueEnd(e))
	if e.KeySpan.Known() {
		body = spelledKey(key) + t.bytes(e.KeySpan.End, t.valueEnd(e))
	}
	switch {
	case p.InBrackets:
		changed = t.spliced(s.end, s.end, ", "+body)
	case e.KeySpan.Known():
		changed = t.spliced(s.end, s.end, t.eol+t.indent(p)+body)
	default:
		dash := t.dash(t.entryStart(e))
		changed = t.spliced(s.end, s.end, t.eol+t.indent(p)+t.bytes(dash, t.valueEnd(e)))
	}
	if !t.proved(changed, want) {
		return nil, refuse("copy it in the text", "%s cannot be doubled without changing something else", path)
	}
	return changed, nil
}

// free says whether a key may be given to a new entry beside others.
func (t *text) free(path Path, beside *load.Part, key string) error {
	if index, err := indexOf(beside, key, append(slices.Clone(path[:len(path)-1]), key)); err != nil || index >= 0 {
		return refuse("choose another key", "“%s” is there already", key)
	}
	if levelOf(path[:len(path)-1]).form != load.NamedGroups {
		return nil
	}
	if why, ok := load.IsKey(key); !ok {
		return refuse("choose another key", "%s", why)
	}
	return nil
}

// Move makes an entry the numbered one (from 0) among those beside it. Notes right
// above it and behind it go along; blank lines and other notes stay where they are.
func Move(content []byte, path Path, to int) ([]byte, error) {
	t, at, err := readAt(content, path)
	if err != nil {
		return nil, err
	}
	p := at.parent()
	if to < 0 || to >= len(p.Entries) {
		return nil, refuse("count the places from the first", "there are %d places beside %s, and none of this number", len(p.Entries), path)
	}
	if to == at.index {
		return content, nil
	}
	order := make([]int, len(p.Entries))
	for i := range order {
		order[i] = i
	}
	order = slices.Insert(slices.Delete(order, at.index, at.index+1), to, at.index)
	want := t.with(path[:len(path)-1], func(p *load.Part) {
		old := slices.Clone(p.Entries)
		for i, from := range order {
			p.Entries[i] = old[from]
		}
	})
	changed := t.reordered(p, order)
	if !t.proved(changed, want) {
		return nil, refuse("move it in the text", "%s cannot be moved without changing something else", path)
	}
	return changed, nil
}

// reordered lets entries change places; what stands between the places stays.
func (t *text) reordered(p *load.Part, order []int) []byte {
	slots := make([]slot, len(p.Entries))
	for i := range slots {
		slots[i] = t.slot(p, i)
	}
	var changed bytes.Buffer
	end := 0
	for i, from := range order {
		changed.WriteString(t.bytes(end, slots[i].start))
		changed.WriteString(t.bytes(slots[from].start, slots[from].end))
		end = slots[i].end
	}
	changed.WriteString(t.bytes(end, len(t.file.Text)))
	return changed.Bytes()
}
