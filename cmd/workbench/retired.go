package workbench

import (
	"time"

	"tallyfold/instructions/keep"
	"tallyfold/kit/amend"
	"tallyfold/kit/load"
	"tallyfold/kit/source"
)

// A retiredView is a thing that was taken out of a section and can be put back.
type retiredView struct{ ID, Title, When string }

// removeThing takes a field or a thing out of kit.yaml. A thing with a key of its own is kept
// aside, so that it can be put back on another day.
func (d *desk) removeThing(o order) (answer, error) {
	old, err := d.definition()
	if err != nil {
		return answer{}, err
	}
	aside, number := entryOf(old.Typed, o.Path)
	said, err := d.amended(fieldID(o.Path), func(text []byte) ([]byte, error) { return amend.Remove(text, o.Path) })
	if err != nil || aside == nil {
		return said, err
	}
	if err := d.folder.Retire(aside, number); err != nil {
		d.note("It is taken out, and Undo brings it back; it could not be put aside as well: " + plain(err))
	}
	return said, nil
}

// entryOf is a thing of a section that is shown as cards, and its place there; nil for all else.
func entryOf(text []byte, path []string) ([]byte, int) {
	if len(path) != 2 || !isShelf(path[0]) {
		return nil, 0
	}
	section := partAt(text, path[:1])
	entry, err := amend.Entry(text, path)
	if section == nil || err != nil {
		return nil, 0
	}
	for number, e := range section.Entries {
		if e.Key == path[1] {
			return entry, number
		}
	}
	return nil, 0
}

// returnThing puts back what was taken out, at the place that it had. Key is its name among
// what is kept aside.
func (d *desk) returnThing(o order) (answer, error) {
	all, err := d.folder.Retired()
	if err != nil {
		return answer{}, err
	}
	for _, thing := range all {
		path, _, ok := nameOf(thing)
		if thing.ID != o.Key || !ok {
			continue
		}
		field := "retired-" + path[0]
		said, err := d.amended(field, func(text []byte) ([]byte, error) { return amend.Bring(text, thing.Text, path, thing.Number) })
		if err != nil {
			return said, err
		}
		said.Go = "#" + fieldID(path)
		return said, d.folder.PutBack(thing.ID)
	}
	return answer{}, &wrong{"it has been put back meanwhile", ""}
}

// nameOf reads where a retired thing belongs, and what people call it.
func nameOf(thing keep.Retired) (path []string, title string, ok bool) {
	root, _ := load.Tree(source.NewFile("kit.yaml", thing.Text))
	if root == nil || len(root.Entries) != 1 || len(root.Entries[0].Value.Entries) != 1 {
		return nil, "", false
	}
	section := root.Entries[0]
	entry := section.Value.Entries[0]
	title = entry.Key
	for _, inner := range entry.Value.Entries {
		if inner.Key == "name" || inner.Key == "says" {
			title = inner.Value.Text
		}
	}
	return []string{section.Key, entry.Key}, title, true
}

// retiredOf lists what was taken out of each section and is not in it again.
func (d *desk) retiredOf(root *load.Part) map[string][]retiredView {
	listed := map[string][]retiredView{}
	all, err := d.folder.Retired()
	if err != nil {
		return nil // the earlier states have it still
	}
	seen := map[string]bool{}
	for _, thing := range all {
		path, title, ok := nameOf(thing)
		if id := fieldID(path); ok && !seen[id] && !isIn(root, path) {
			seen[id] = true
			listed[path[0]] = append(listed[path[0]], retiredView{thing.ID, title, thing.When.In(time.Local).Format("2 January 2006, 15:04")})
		}
	}
	return listed
}

func isIn(root *load.Part, path []string) bool {
	for _, section := range root.Entries {
		for _, e := range section.Value.Entries {
			if section.Key == path[0] && e.Key == path[1] {
				return true
			}
		}
	}
	return false
}
