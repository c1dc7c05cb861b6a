package workbench

import (
	"errors"
	"os"
	"slices"
	"strconv"
	"strings"

	"tallyfold/instructions/keep"
	"tallyfold/kit/amend"
	"tallyfold/kit/load"
	"tallyfold/kit/source"
)

// definition is kit.yaml as it is typed now.
func (d *desk) definition() (keep.Text, error) { return d.read("kit.yaml") }

// amended puts a change of kit.yaml in place. Every other byte stays.
func (d *desk) amended(field string, change func(text []byte) ([]byte, error)) (answer, error) {
	old, err := d.definition()
	if err != nil {
		return answer{}, err
	}
	text, err := change(old.Typed)
	if err != nil {
		return answer{}, &wrong{plain(err), field}
	}
	if string(text) == string(old.Typed) {
		return answer{}, nil
	}
	_, err = d.put("kit.yaml", text, old.TypedPrint)
	return answer{}, err
}

// setField gives a field of kit.yaml another value; an empty one takes the field out. A
// value that another window has changed in the meantime is not written over.
func (d *desk) setField(o order) (answer, error) {
	if err := checkTyped(o); err != nil {
		return answer{}, err
	}
	return d.amended(fieldID(o.Path), func(text []byte) ([]byte, error) {
		now, given := valueAt(text, o.Path)
		switch value := strings.TrimSpace(o.Value); {
		case now != o.Was && now != value:
			return nil, errors.New("in another window this has become “" + now + "”; type it again if yours is the right one")
		case value == now:
			return text, nil
		case value == "" && !given:
			return text, nil
		case value == "":
			return withoutField(text, o.Path)
		default:
			return amend.Set(text, o.Path, value)
		}
	})
}

// withoutField takes a field out, and the group with it that would be empty then. A key that
// its thing cannot do without stays, with nothing after it.
func withoutField(text []byte, path amend.Path) ([]byte, error) {
	shorter, err := amend.Remove(text, path)
	if err != nil || len(path) < 2 || isOwnEntry(path[:len(path)-1]) {
		return shorter, err
	}
	if part := partAt(shorter, path[:len(path)-1]); part != nil && part.Kind != load.TextPart && len(part.Entries) == 0 {
		return amend.Remove(shorter, path[:len(path)-1])
	}
	return shorter, nil
}

// isOwnEntry says whether a path leads to a thing of the maker's: it stays though it says
// nothing.
func isOwnEntry(path amend.Path) bool { return len(path) == 2 }

// partAt is what stands at a path of kit.yaml, nil for nothing.
func partAt(text []byte, path []string) *load.Part {
	part, _ := load.Tree(source.NewFile("kit.yaml", text))
	for _, key := range path {
		if part == nil {
			return nil
		}
		var next *load.Part
		for i := range part.Entries {
			if keyOf(part, i) == key {
				next = part.Entries[i].Value
				break
			}
		}
		if next == nil && part.Kind == load.TextPart && key == "0" {
			next = part // one value is written without brackets
		}
		part = next
	}
	return part
}

// valueAt is the text at a path; given is false where there is none.
func valueAt(text []byte, path []string) (value string, given bool) {
	part := partAt(text, path)
	if part == nil {
		return "", false
	}
	if part.Kind != load.TextPart {
		return "", true
	}
	return strings.TrimSpace(part.Text), true
}

// nameField adds an entry with a name of the maker's own, such as a role or a language.
func (d *desk) nameField(o order) (answer, error) {
	o.Path = append(slices.Clone(o.Path), o.Key)
	if strings.TrimSpace(o.Key) == "" || strings.TrimSpace(o.Value) == "" {
		return answer{}, &wrong{"write a name and what stands for it", fieldID(o.Path[:len(o.Path)-1])}
	}
	o.Was = ""
	return d.setField(o)
}

// addThing adds an entry to a section: under a key made of its name, or at the end of a list.
func (d *desk) addThing(o order) (answer, error) {
	name := strings.TrimSpace(o.Name)
	if err := checkTyped(order{Path: append(slices.Clone(o.Path), ""), Value: name}); err != nil {
		return answer{}, err
	}
	at := "add-" + strings.Join(o.Path, ".")
	if name == "" {
		return answer{}, &wrong{"give it a name first", at}
	}
	made, err := d.amended(at, func(text []byte) ([]byte, error) {
		return amend.Set(text, d.pathOfNew(text, o.Path, name), name)
	})
	return made, err
}

// firstKey is the key that the name of a new entry of a list stands under.
var firstKey = map[string]string{"runs": "name", "claims": "says", "accept": "rule", "measures": "holds", "hazards": "happens"}

// pathOfNew is where a new entry's name goes.
func (d *desk) pathOfNew(text []byte, section []string, name string) amend.Path {
	first := "name"
	if other := firstKey[section[0]]; other != "" {
		first = other
	}
	if part := partAt(text, section); isListSection(section) {
		number := 0
		if part != nil {
			number = len(part.Entries)
		}
		return append(slices.Clone(section), strconv.Itoa(number), first)
	}
	return append(slices.Clone(section), d.freeKey(text, name), first)
}

func isListSection(section []string) bool {
	return len(section) == 1 && slices.Contains([]string{"runs", "claims", "accept"}, section[0])
}

// freeKey makes a key of a name that no thing of kit.yaml, no step and no wait has.
func (d *desk) freeKey(text []byte, name string) string {
	taken := keysTaken(d.proved().Kit)
	return load.FreeKey(name, func(key string) bool {
		return taken[key] || slices.ContainsFunc([]string{"components", "household", "tools", "mixtures", "pieces", "measures", "hazards"},
			func(section string) bool { return partAt(text, []string{section, key}) != nil })
	})
}

// doubleThing puts a copy behind a thing, with a key and a name of its own.
func (d *desk) doubleThing(o order) (answer, error) {
	if len(o.Path) < 2 {
		return answer{}, errNoPath
	}
	return d.amended(fieldID(o.Path), func(text []byte) ([]byte, error) {
		last := o.Path[len(o.Path)-1]
		if part := partAt(text, o.Path[:len(o.Path)-1]); part != nil && part.Kind == load.ListPart {
			return amend.Duplicate(text, o.Path, "")
		}
		name, named := valueAt(text, append(slices.Clone(o.Path), "name"))
		if !named {
			name = last
		}
		name += " (copy)"
		key := d.freeKey(text, last)
		text, err := amend.Duplicate(text, o.Path, key)
		if err != nil || isListSection(o.Path[:1]) {
			return text, err
		}
		if partAt(text, o.Path[:len(o.Path)-1]) == nil || o.Path[0] == "measures" || o.Path[0] == "hazards" {
			return text, nil
		}
		return amend.Set(text, append(slices.Clone(o.Path[:len(o.Path)-1]), key, "name"), name)
	})
}

// placeThing moves an entry among those beside it.
func (d *desk) placeThing(o order) (answer, error) {
	return d.amended(fieldID(o.Path), func(text []byte) ([]byte, error) { return amend.Move(text, o.Path, o.Number) })
}

// renameThing gives a thing another key wherever it is named. What is typed and not saved
// yet is saved first, as several files change together.
func (d *desk) renameThing(o order) (answer, error) {
	if len(o.Path) != 2 {
		return answer{}, errNoPath
	}
	field := fieldID(o.Path)
	drafts, err := d.folder.Drafts()
	if err != nil {
		return answer{}, err
	}
	for _, draft := range drafts {
		if d.save(draft.Name); d.troubles[draft.Name] != "" || d.clashes[draft.Name] != nil {
			return answer{}, &wrong{draft.Name + " cannot be saved now, so the key stays as it is", field}
		}
	}
	folder := os.DirFS(d.path)
	changes, err := amend.Rename(folder, o.Path[1], strings.TrimSpace(o.Key))
	if err != nil {
		return answer{}, &wrong{plain(err), field}
	}
	texts, err := amend.Renamed(folder, changes)
	if err != nil {
		return answer{}, &wrong{plain(err), field}
	}
	var all []keep.Saving
	for _, name := range sortedKeys(texts) {
		text, err := d.read(name)
		if err != nil {
			return answer{}, err
		}
		all = append(all, keep.Saving{Name: name, Text: texts[name], Was: text.TypedPrint})
	}
	if err := d.folder.SaveAll(all...); err != nil {
		return answer{}, err
	}
	return answer{Go: "#" + fieldID([]string{o.Path[0], strings.TrimSpace(o.Key)})}, nil
}

// setAt sets a key of an entry of the list “accept”.
func setAt(text []byte, number int, key, value string) ([]byte, error) {
	return amend.Set(text, amend.At("accept", strconv.Itoa(number), key), value)
}
