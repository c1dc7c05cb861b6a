package load

import (
	"slices"
	"strings"

	"tallyfold/kit/diag"
	"tallyfold/kit/source"
)

// Form is what a key holds, for schemas and documentation.
type Form string

// The forms a key can have.
const (
	Text        Form = "text"
	TextList    Form = "text or list of texts"
	WholeNumber Form = "whole number"
	YesNo       Form = "yes or no"
	OneOf       Form = "one of a few words"
	Date        Form = "date"
	Colour      Form = "colour"
	Picture     Form = "name of a picture"
	Address     Form = "address on the web"
	Amount      Form = "amount"
	AmountList  Form = "amount or list of amounts"
	Inside      Form = "inside shape"
	Group       Form = "keys"                      // the keys of Key.Section
	NamedGroups Form = "named entries with keys"   // names of the maker's own, under each the keys of Key.Section
	GroupList   Form = "list of entries with keys" // each with the keys of Key.Section
	Bindings    Form = "names with a text each"    // names of the maker's own
	Languages   Form = "languages with a name each"
)

// A Key is one key of kit.yaml.
type Key struct {
	// Name as it is typed, "add below".
	Name string
	// Expected completes "expected: " for a person who makes kits.
	Expected string
	// Example is a value as it is typed after the colon.
	Example string
	Form    Form
	// Choices are the words of OneOf.
	Choices []string
	// Least and Most are the ends of a WholeNumber, both included; After is what may
	// stand behind it ("+").
	Least, Most int
	After       string
	// Unit: an Amount needs a unit, a bare figure is none. Positive: it may not be
	// nothing. Whole: it may not be a half.
	Unit, Positive, Whole bool
	// Words: a Text that need not be the name of something. A name may not be a word
	// that reads like yes, no or nothing.
	Words bool
	// Section is the name of the Section of what stands inside, for the forms with keys.
	Section string
	// Short is the key of that section which an amount alone stands for.
	Short string
	// Required keys must be there.
	Required bool
}

// A Section is the keys that may stand together in one place.
type Section struct {
	// Name is said in findings and headings, "component".
	Name string
	// About says in one sentence what it describes.
	About string
	Keys  []Key
}

// A table is a Section together with how each key is read into a T. Keys are
// read in the order of the table, whatever their order in the file.
type table[T any] struct {
	name, about string
	fields      []field[T]
}

type field[T any] struct {
	Key
	read func(r *reader, into *T, v value)
}

// required marks a field that must be there.
func (f field[T]) required() field[T] {
	f.Required = true
	return f
}

func (t table[T]) section() Section {
	s := Section{Name: t.name, About: t.about}
	for _, f := range t.fields {
		s.Keys = append(s.Keys, f.Key)
	}
	return s
}

// names gives the keys in alphabetical order, for messages.
func (t table[T]) names() []string {
	var names []string
	for _, f := range t.fields {
		names = append(names, f.Name)
	}
	slices.Sort(names)
	return names
}

// An entry is a key with its value.
type entry struct{ key, value value }

// readKeys reads lines of keys into a T. owner is where to point at what is
// missing: the key that the lines stand under.
func readKeys[T any](r *reader, t table[T], into *T, owner source.Span, v value) {
	given := r.entries(v)
	misspelt := r.misspelt(given, t.names())
	for _, f := range t.fields {
		e, ok := given.take(f.Name)
		if near, is := misspelt[f.Name]; is && !ok {
			if !near.value.nothing() {
				r.quietly(func() { f.read(r, into, near.value) })
			}
			continue // the key is told below, and what it says is not missing
		}
		switch {
		case ok && e.value.nothing():
			r.empty(e, f.Key)
		case ok:
			f.read(r, into, e.value)
		case f.Required:
			r.missing(owner, t.name, f.Key)
		}
	}
	for _, e := range given.left() {
		r.unknownField(e, t.name, t.names(), v.inBrackets())
	}
}

// quietly reads what is only a guess: what is wrong with it is not told.
func (r *reader) quietly(read func()) {
	told := len(r.found)
	read()
	r.found = r.found[:told]
}

// misspelt gives the entries whose key means nothing and is near to one that is not
// there, by the key that is most likely meant. They are read as meant, so that one
// slip does not bring a dozen findings.
func (r *reader) misspelt(given *entries, known []string) map[string]entry {
	meant := map[string]entry{}
	for _, e := range given.all {
		if slices.Contains(known, e.key.text()) {
			continue
		}
		near := r.nearest(e.key.oneLine(), known)
		_, isThere := given.place[near]
		if _, isTaken := meant[near]; near != "" && !isThere && !isTaken {
			meant[near] = e
		}
	}
	return meant
}

// entries are those of one mapping, in the order of the file.
type entries struct {
	all   []entry
	place map[string]int
	taken map[string]bool
}

func (e *entries) take(name string) (entry, bool) {
	i, ok := e.place[name]
	if !ok {
		return entry{}, false
	}
	e.taken[name] = true
	return e.all[i], true
}

func (e *entries) left() []entry {
	return slices.DeleteFunc(slices.Clone(e.all), func(one entry) bool { return e.taken[one.key.text()] })
}

// entries reads the keys of a mapping, tells those that are no words or stand
// there twice, and leaves those out.
func (r *reader) entries(v value) *entries {
	read := &entries{place: map[string]int{}, taken: map[string]bool{}}
	for i := 0; i+1 < len(v.node.Content); i += 2 {
		e := entry{r.doc.value(v.node.Content[i]), r.doc.value(v.node.Content[i+1])}
		name := e.key.text()
		switch first, twice := read.place[name]; {
		case !e.key.isText() || e.key.nothing():
			r.report(WrongType, e.key.span, e.key.told()+" where a key should stand", "a word followed by a colon",
				"write a word before the colon")
		case twice:
			f := r.report(DuplicateKey, e.key.span, quote(name)+" a second time", "each key once",
				"keep one of the two, or give one another name")
			f.Also = []diag.Place{{Where: read.all[first].key.span, Note: "the first one, which counts"}}
		default:
			read.place[name] = len(read.all)
			read.all = append(read.all, e)
		}
	}
	return read
}

// list joins words for a sentence: a, b and c.
func list(words []string, joint string) string {
	if len(words) < 2 {
		return strings.Join(words, "")
	}
	return strings.Join(words[:len(words)-1], ", ") + " " + joint + " " + words[len(words)-1]
}
