// Package amend changes one place of a maker's file and leaves every other byte as
// it was: comments, order, quotation marks, blank lines, line ends, a byte order
// mark, a last line without an end.
//
// Every change of kit.yaml proves itself before it is handed out: the new text is
// read again, and must say what the old one said save for the one thing that was
// to change. A change that cannot be made so is refused, with the reason in plain
// words; the old text then stands.
//
//	set.go      a field gets another value, in the spelling it had
//	create.go   a field that was not there, at its place in the section
//	entries.go  entries taken out, doubled, put elsewhere
//	bring.go    an entry that was taken out is put back
//	rename.go   a thing gets another key, everywhere it is named
//	stretch.go  a stretch of a Markdown file, or the whole of it as an editor shows it
package amend

import (
	"bytes"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"tallyfold/kit/diag"
	"tallyfold/kit/load"
	"tallyfold/kit/source"
)

// A Path leads to a value of kit.yaml: keys from the outermost inwards, and in a
// list the number of the entry from 0: At("runs", "0", "name").
type Path []string

// At makes a Path of its keys.
func At(keys ...string) Path { return keys }

// String tells the path to a person: “runs › 1 › name”, entries counted from 1.
func (p Path) String() string {
	words := slices.Clone(p)
	for i, word := range words {
		if n, err := strconv.Atoi(word); err == nil && i > 0 {
			words[i] = strconv.Itoa(n + 1)
		}
	}
	return "“" + strings.Join(words, " › ") + "”"
}

// A Refused is a change that cannot be made. The text stays as it was.
type Refused struct {
	// Found says what is in the way, Do what the maker can do about it.
	Found, Do string
	// Findings are what the reader of kit.yaml has to say, where it refuses the file
	// as it is.
	Findings diag.List
}

// Error tells both in one sentence.
func (r *Refused) Error() string { return r.Found + "; " + r.Do }

func refuse(do, found string, about ...any) error {
	return &Refused{Found: fmt.Sprintf(found, about...), Do: do}
}

// A text is kit.yaml being changed.
type text struct {
	file *source.File
	root *load.Part
	// eol is how its lines end.
	eol string
}

// read takes kit.yaml apart, or tells why it cannot be changed.
func read(content []byte) (*text, error) {
	file := source.NewFile("kit.yaml", content)
	root, found := load.Tree(file)
	if root == nil {
		return nil, &Refused{Found: "kit.yaml cannot be read: " + found[0].Found, Do: found[0].Remedies[0].Do + " (line " +
			strconv.Itoa(found[0].Where.Position().Line) + ")", Findings: found}
	}
	if root.Kind != load.KeysPart {
		return nil, refuse("begin it with “name:”", "kit.yaml has no keys at the beginning of its lines")
	}
	return &text{file: file, root: root, eol: lineEnd(content)}, nil
}

// lineEnd is how the first line ends; LF where there is only one.
func lineEnd(content []byte) string {
	at := bytes.IndexAny(content, "\r\n")
	switch {
	case at < 0 || content[at] == '\n':
		return "\n"
	case at+1 < len(content) && content[at+1] == '\n':
		return "\r\n"
	}
	return "\r"
}

// A place is what a path leads to: the part, and the parts above it, outermost first.
type place struct {
	part  *load.Part
	above []*load.Part
	// index is the number of the part among the entries of the last of above.
	index int
	// missing are the keys of the path that are not there.
	missing Path
	// second: the path leads to a second value where there is one, and no list yet.
	second bool
}

// parent is the part whose entry it is.
func (p place) parent() *load.Part { return p.above[len(p.above)-1] }

// entry is the part with its key.
func (p place) entry() load.PartEntry { return p.parent().Entries[p.index] }

// inBrackets says whether it stands anywhere inside brackets.
func (p place) inBrackets() bool {
	return slices.ContainsFunc(p.above, func(above *load.Part) bool { return above.InBrackets })
}

// find goes along a path as far as there is something.
func (t *text) find(path Path) (place, error) {
	if len(path) == 0 {
		return place{}, refuse("name the field", "no field is named")
	}
	at := place{part: t.root}
	for i, key := range path {
		if at.part.Kind == load.TextPart {
			isList := levelOf(path[:i]).isList() && i == len(path)-1
			switch {
			case at.part.Nothing():
			case isList && key == "0":
				return at, nil // one value is written without brackets
			case isList && key == "1":
				at.second = true
				return at, nil
			default:
				return place{}, refuse("take that value out first", "%s has one value and no keys under it", path[:i])
			}
			at.missing = path[i:]
			return at, nil
		}
		index, err := indexOf(at.part, key, path[:i+1])
		if err != nil {
			return place{}, err
		}
		if index < 0 {
			at.missing = path[i:]
			return at, nil
		}
		at.above, at.index = append(at.above, at.part), index
		at.part = at.part.Entries[index].Value
	}
	return at, nil
}

// indexOf is the number of the entry with a key, -1 for none.
func indexOf(part *load.Part, key string, path Path) (int, error) {
	if part.Kind == load.ListPart {
		n, err := strconv.Atoi(key)
		if err != nil || n < 0 || n > len(part.Entries) {
			return 0, refuse("count the entries from the first", "%s is no entry of the list, which has %d", path, len(part.Entries))
		}
		if n == len(part.Entries) {
			return -1, nil
		}
		return n, nil
	}
	found := -1
	for i, e := range part.Entries {
		if e.Key != key {
			continue
		}
		if found >= 0 {
			return 0, refuse("take one of the two out in the text", "%s stands there twice", path)
		}
		found = i
	}
	return found, nil
}

// existing is find for what must be there.
func (t *text) existing(path Path) (place, error) {
	at, err := t.find(path)
	switch {
	case err != nil:
	case len(at.missing) == 0 && !at.second && len(at.above) < len(path):
		err = refuse("name the field itself", "%s is the only value of its field", path)
	case len(at.missing) > 0 || at.second:
		err = refuse("look whether it has another name by now", "%s is not in kit.yaml", path)
	}
	return at, err
}

// readAt takes kit.yaml apart and finds what must be there.
func readAt(content []byte, path Path) (*text, place, error) {
	t, err := read(content)
	if err != nil {
		return nil, place{}, err
	}
	at, err := t.existing(path)
	return t, at, err
}

// bytes gives what stands from start to end.
func (t *text) bytes(start, end int) string { return string(t.file.Text[start:end]) }

// spliced gives the text with bytes start to end replaced.
func (t *text) spliced(start, end int, with string) []byte {
	return slices.Concat(t.file.Text[:start], []byte(with), t.file.Text[end:])
}

// proved hands out a changed text if it says what it should and nothing else.
func (t *text) proved(changed []byte, want *load.Part) bool {
	got, _ := load.Tree(source.NewFile("kit.yaml", changed))
	return got != nil && same(got, want)
}

// same says whether two parts say the same. The line end after the last line of a
// block of text is the block's own and says nothing.
func same(a, b *load.Part) bool {
	if a.Kind != b.Kind || len(a.Entries) != len(b.Entries) {
		return false
	}
	if a.Text != b.Text && (!isBlock(a) && !isBlock(b) || strings.TrimRight(a.Text, "\n") != strings.TrimRight(b.Text, "\n")) {
		return false
	}
	for i, e := range a.Entries {
		if other := b.Entries[i]; e.Key != other.Key || !same(e.Value, other.Value) {
			return false
		}
	}
	return true
}

func isBlock(p *load.Part) bool { return p.Spelling == load.Lines || p.Spelling == load.Folded }

// with is a copy of the whole tree in which the entries of the part that a path
// leads to are changed.
func (t *text) with(path Path, change func(*load.Part)) *load.Part {
	root := copied(t.root)
	part := root
	for _, key := range path {
		index, err := indexOf(part, key, path)
		if err != nil || index < 0 {
			return nil
		}
		part = part.Entries[index].Value
	}
	change(part)
	return root
}

func copied(p *load.Part) *load.Part {
	c := *p
	c.Entries = make([]load.PartEntry, len(p.Entries))
	for i, e := range p.Entries {
		e.Value = copied(e.Value)
		c.Entries[i] = e
	}
	return &c
}
