package amend

import (
	"bytes"
	"io/fs"
	"slices"
	"strconv"
	"strings"

	"tallyfold/instructions"
	"tallyfold/kit"
	"tallyfold/kit/diag"
	"tallyfold/kit/load"
	"tallyfold/kit/proof"
	"tallyfold/kit/source"
)

// Rename gives a thing of the kit another key: a component, household item, tool,
// mixture or kind of piece. It lists every place to change: in kit.yaml the key and
// what names it, and each link in the method, its translations, trouble.md and
// words.md. A translated step that was up to date stays so: the fingerprint it bears
// is that of the step with the new key. Where plain words of the method call the thing
// by its old key, that becomes one of its further names. Nothing is written; Renamed
// makes the changes.
func Rename(folder fs.FS, key, to string) ([]diag.Change, error) {
	k, found := instructions.Open(folder, "kit")
	if k == nil {
		return nil, &Refused{Found: "the kit cannot be read: " + found[0].Found, Do: found[0].Remedies[0].Do, Findings: found}
	}
	name, ok := k.Named(key)
	switch why, isKey := load.IsKey(to); {
	case !ok:
		return nil, refuse("look whether it has another key by now", "nothing in kit.yaml has the key “%s”", key)
	case !isKey:
		return nil, refuse("choose another key", "%s", why)
	case to == key:
		return nil, nil
	case isTaken(k, to):
		return nil, refuse("choose another key", "“%s” is the name of something in this kit already", to)
	}
	t := renaming{folder: folder, kit: k, key: key, changes: []diag.Change{{Where: name.IDSpan, New: to}}}
	for _, where := range load.Mentions(k, key) {
		t.changes = append(t.changes, diag.Change{Where: where, New: to})
	}
	links, err := linksTo(folder, key, to)
	if err != nil {
		return nil, err
	}
	t.changes = append(t.changes, links...)
	return t.settled()
}

// isTaken says whether a key means something in the kit: a thing, a measure, a role,
// a step or a named wait.
func isTaken(k *kit.Kit, key string) bool {
	_, taken := k.Named(key)
	for _, m := range k.Measures {
		taken = taken || m.ID == key
	}
	for _, run := range k.Runs {
		for _, b := range run.With {
			taken = taken || b.Role.Value == key
		}
	}
	for _, step := range k.Method.Steps() {
		taken = taken || step.ID == key
		for _, o := range step.Operations {
			taken = taken || o.Kind == kit.Wait && o.Target == key
		}
	}
	return taken
}

// namesNoThing are the links whose name is not that of a thing.
var namesNoThing = []kit.Kind{kit.ToStep, kit.ToHelp, kit.ShowPicture, kit.Wait, kit.After, kit.Hazard}

// linksTo finds every link of every Markdown file that names a thing.
func linksTo(folder fs.FS, key, to string) ([]diag.Change, error) {
	names, err := fs.Glob(folder, "*.md")
	if err != nil {
		return nil, err
	}
	var changes []diag.Change
	for _, name := range names {
		content, err := fs.ReadFile(folder, name)
		if err != nil {
			return nil, refuse("look at its permissions", "%s cannot be read", name)
		}
		for _, m := range instructions.LinkNames(source.NewFile(name, content)) {
			isThing := m.Param == "" && !slices.Contains(namesNoThing, m.Kind) || slices.Contains([]string{"into", "from", "in", "as"}, m.Param)
			if !isThing || m.Name != key {
				continue
			}
			if m.Span.Text() != key {
				return nil, refuse("write it plainly: "+key, "line %d of %s names “%s” with escapes", m.Span.Position().Line, name, key)
			}
			change := diag.Change{Where: m.Span, New: to}
			if !slices.Contains(changes, change) { // several links may share one definition
				changes = append(changes, change)
			}
		}
	}
	return changes, nil
}

// A renaming is the places to change as far as they are known.
type renaming struct {
	folder  fs.FS
	kit     *kit.Kit
	key     string
	changes []diag.Change
}

// settled adds what follows from the new key: prose that speaks of the thing by its
// old key must go on doing so, and translated steps that are up to date stay so.
func (r *renaming) settled() ([]diag.Change, error) {
	later, err := r.later()
	if err != nil {
		return nil, err
	}
	if known(later.Method) != known(r.kit.Method) {
		if err := r.keepAsWord(); err != nil {
			return nil, err
		}
		if later, err = r.later(); err != nil {
			return nil, err
		}
	}
	steps := later.Method.Steps()
	for i, step := range r.kit.Method.Steps() {
		if i >= len(steps) || steps[i].Fingerprint() == step.Fingerprint() {
			continue
		}
		for _, t := range r.kit.Translations {
			for _, told := range t.Method.Steps() {
				if told.Of.Given() && told.Of.Value == step.Fingerprint() {
					r.changes = append(r.changes, diag.Change{Where: told.Of.Span, New: steps[i].Fingerprint()})
				}
			}
		}
	}
	return r.changes, nil
}

// later is the kit as it will be.
func (r *renaming) later() (*kit.Kit, error) {
	texts, err := Renamed(r.folder, r.changes)
	if err != nil {
		return nil, err
	}
	later, _ := load.Kit(source.NewFile("kit.yaml", texts["kit.yaml"]))
	if later == nil {
		return nil, refuse("change the key in the text", "the kit could not be read with the new key")
	}
	method, ok := texts["method.md"]
	if !ok {
		if method, err = fs.ReadFile(r.folder, "method.md"); err != nil {
			return later, nil // a kit without a method has no links to keep
		}
	}
	later.Method, _ = instructions.ReadMethod(source.NewFile("method.md", method), later, load.Amounts(later))
	return later, nil
}

// known counts what the steps do, and the plain words that are known as tools.
func known(m kit.Method) int {
	n := 0
	for _, step := range m.Steps() {
		n += len(step.Operations) + len(step.Mentions)
	}
	return n
}

// keepAsWord gives the thing its old key as a further name: the method calls it so in
// plain words.
func (r *renaming) keepAsWord() error {
	text := r.kit.File.Text
	t, err := read(text)
	if err != nil {
		return err
	}
	for _, section := range t.root.Entries {
		number, err := indexOf(section.Value, r.key, At(section.Key, r.key))
		if section.Value.Kind != load.KeysPart || err != nil || number < 0 {
			continue
		}
		names := 0
		if at, err := t.find(At(section.Key, r.key, "also called")); err == nil && len(at.missing) == 0 {
			if names = len(at.part.Entries); at.part.Kind == load.TextPart {
				names = 1
			}
		}
		changed, err := Set(text, At(section.Key, r.key, "also called", strconv.Itoa(names)), r.key)
		if err != nil {
			return refuse("write it there, then change the key", "the method calls it “%s” in plain words, which is not among the names under “also called”", r.key)
		}
		r.changes = append(r.changes, only(r.kit.File, changed))
		return nil
	}
	return refuse("change the key in the text", "“%s” is not under a section of its own", r.key)
}

// only is the one stretch in which a changed text is another than its file.
func only(file *source.File, changed []byte) diag.Change {
	old, from, behind := file.Text, 0, 0
	for from < min(len(old), len(changed)) && old[from] == changed[from] {
		from++
	}
	for behind < min(len(old), len(changed))-from && old[len(old)-1-behind] == changed[len(changed)-1-behind] {
		behind++
	}
	return diag.Change{Where: file.Span(from, len(old)-behind), New: string(changed[from : len(changed)-behind])}
}

// Renamed makes the changes of Rename in the texts of a folder, and gives the new
// text of each file that they touch. Where a file has become another since, nothing
// is changed.
func Renamed(folder fs.FS, changes []diag.Change) (map[string][]byte, error) {
	texts := map[string][]byte{}
	for name, in := range byFile(changes) {
		content, err := fs.ReadFile(folder, name)
		if err != nil {
			return nil, refuse("look at its permissions", "%s cannot be read", name)
		}
		file := source.NewFile(name, content)
		for i := range in {
			if !bytes.Equal(content, in[i].Where.File.Text) {
				return nil, refuse("try again", "%s has changed meanwhile", name)
			}
			in[i].Where.File = file
		}
		if texts[name], err = proof.Changed(file, in); err != nil {
			return nil, refuse("change it in the text", "%s", strings.TrimSpace(err.Error()))
		}
	}
	return texts, nil
}

// byFile sorts changes by the name of their file: a folder may have been read twice.
func byFile(changes []diag.Change) map[string][]diag.Change {
	sorted := map[string][]diag.Change{}
	for _, c := range changes {
		sorted[c.Where.File.Name] = append(sorted[c.Where.File.Name], c)
	}
	return sorted
}
