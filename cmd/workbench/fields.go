package workbench

import (
	"slices"
	"strconv"
	"strings"
	"sync"

	"tallyfold/kit/diag"
	"tallyfold/kit/load"
	"tallyfold/kit/source"
)

// A field is one value of kit.yaml in a form, or several that belong together. It is made
// from the tables of keys and from what stands in the file, so that a new key of kit.yaml
// has its field at once.
type field struct {
	ID, Label, Expected, Example string
	// Control is how it is shown: text, long, amount, choice, yesno, number, date, colour,
	// picture, group, list, names, groups.
	Control string
	Path    []string
	Value   string
	// Given: it stands in the file.
	Given, Required bool
	Choices, Units  []string
	Wrong           []toldFinding
	// Fields are those of a group, the entries of a list, or of a group of groups.
	Fields []field
	// Section names the keys that a group may have, Has are those that it shows.
	Section string
	Has     []string
	// ByLanguage: the names of a group of names are languages.
	ByLanguage bool
	// Next is the path of an entry that is not there yet, for lists and names.
	Next []string
	// Offers are values from a table.
	Offers []offer
	// Key is the maker's own key of an entry; Index its place among the entries, of Of.
	Key       string
	Index, Of int
	card      *cardView
}

// Card is what a card shows besides its fields, nil for all else.
func (f field) Card() *cardView { return f.card }

// First and Last say where an entry stands, for the buttons that move it.
func (f field) First() bool { return f.Index == 0 }
func (f field) Last() bool  { return f.Index == f.Of-1 }

// An offer is a value that a table has, never taken over without the maker.
type offer struct{ Value, Says, Source string }

// A form makes fields. Findings are given to the innermost field that they are about.
type form struct {
	kit  string
	open []diag.Finding
	// shown are the paths of fields that the maker asked for and that are still empty.
	shown map[string]bool
	// units tell which units go with a value; offers what tables have for a field.
	units  func(key load.Key, value string) []string
	offers func(path []string) []offer
}

var sectionsByName = sync.OnceValue(func() map[string]load.Section {
	all := map[string]load.Section{}
	for _, s := range load.Keys() {
		all[s.Name] = s
	}
	return all
})

// usual are the keys that a form shows though they are empty: what nearly every kit tells.
var usual = map[string][]string{
	"kit":       {"name", "maker", "about", "edition", "makes"},
	"audience":  {"age", "skill"},
	"time":      {"hands-on", "total"},
	"component": {"name", "packed", "density", "picture"},
	"household": {"name", "amount"},
	"tool":      {"name", "from", "essential"},
	"container": {"brimful", "headspace"},
	"insert":    {"mass", "volume"},
	"mixture":   {"made in"},
	"piece":     {"name", "count", "in"},
	"run":       {"name"},
	"claim":     {"says", "shown by"},
	"accept":    {"rule", "about", "because"},
	"hazard":    {"happens", "avoid"},
	"measure":   {"holds"},
}

// field makes the field of a key; part is nil where it is not in the file.
func (f *form) field(key load.Key, part *load.Part, path []string) field {
	made := field{
		ID: fieldID(path), Label: key.Name, Expected: key.Expected, Example: key.Example, Path: slices.Clone(path),
		Given: part != nil, Required: key.Required, Choices: key.Choices, Control: controlOf(key),
	}
	f.fill(&made, key, part, path)
	return made
}

// fill puts what stands in the file into a field.
func (f *form) fill(made *field, key load.Key, part *load.Part, path []string) {
	switch {
	case part != nil && part.Kind == load.ListPart, made.Control == "list" && part != nil:
		f.list(made, key, part, path)
	case made.Control == "group":
		f.group(made, sectionsByName()[key.Section], part, path)
	case made.Control == "groups":
		f.groups(made, key, part, path)
	case made.Control == "names" || part != nil && part.Kind == load.KeysPart:
		made.ByLanguage = key.Form == load.Languages
		f.names(made, part, path)
	case part != nil:
		made.Value = part.Text
	}
	if made.Control == "amount" {
		made.Units = f.units(key, made.Value)
	}
	if len(made.Fields) == 0 {
		made.Offers = f.offers(path)
	}
	if part != nil {
		made.Wrong = append(made.Wrong, f.claim(part.Span)...)
	}
}

func controlOf(key load.Key) string {
	switch key.Form {
	case load.WholeNumber:
		return "number"
	case load.YesNo:
		return "yesno"
	case load.OneOf:
		return "choice"
	case load.Date:
		return "date"
	case load.Colour:
		return "colour"
	case load.Picture:
		return "picture"
	case load.Amount:
		return "amount"
	case load.TextList, load.AmountList:
		return "list"
	case load.Group:
		return "group"
	case load.NamedGroups, load.GroupList:
		return "groups"
	case load.Bindings, load.Languages:
		return "names"
	}
	if key.Words && len(key.Example) > longExample {
		return "long"
	}
	return "text"
}

// longExample is how many letters a usual value has that wants more than a line.
const longExample = 30

// list shows one value or several, and room for one more.
func (f *form) list(made *field, key load.Key, part *load.Part, path []string) {
	one := load.Key{Name: key.Name, Expected: key.Expected, Example: strings.Trim(key.Example, "[]"), Form: load.Text, Unit: key.Unit}
	if key.Form == load.AmountList {
		one.Form = load.Amount
	}
	made.Control = "list"
	entries := []load.PartEntry{{Value: part}}
	if part.Kind == load.ListPart {
		entries = part.Entries
	}
	for i, entry := range entries {
		inner := append(slices.Clone(path), strconv.Itoa(i))
		if key.Section != "" {
			one = load.Key{Name: key.Name, Form: load.Group, Section: key.Section}
		}
		item := f.field(one, entry.Value, inner)
		item.Index, item.Of = i, len(entries)
		made.Fields = append(made.Fields, item)
	}
	made.Next = append(slices.Clone(path), strconv.Itoa(len(entries)))
}

// names shows entries with names of the maker's own, or of languages, and a text each.
func (f *form) names(made *field, part *load.Part, path []string) {
	made.Control = "names"
	if part == nil || part.Kind != load.KeysPart {
		return
	}
	for i, entry := range part.Entries {
		inner := append(slices.Clone(path), entry.Key)
		item := f.field(load.Key{Name: entry.Key, Form: load.Text}, entry.Value, inner)
		item.Key, item.Index, item.Of = entry.Key, i, len(part.Entries)
		if made.ByLanguage {
			item.Label = languageName(entry.Key)
		}
		made.Fields = append(made.Fields, item)
	}
}

// groups shows entries that have keys of their own each.
func (f *form) groups(made *field, key load.Key, part *load.Part, path []string) {
	if part == nil {
		return
	}
	for i, entry := range part.Entries {
		name := keyOf(part, i)
		inner := append(slices.Clone(path), name)
		one := load.Key{Name: name, Form: load.Group, Section: key.Section}
		if key.Short != "" && entry.Value.Kind == load.TextPart {
			one = load.Key{Name: name, Form: load.Amount, Unit: true, Example: "15 mL"}
		}
		item := f.field(one, entry.Value, inner)
		item.Key, item.Index, item.Of = entry.Key, i, len(part.Entries)
		if part.Kind == load.KeysPart {
			item.Wrong = append(item.Wrong, f.claim(entry.KeySpan)...)
		}
		made.Fields = append(made.Fields, item)
	}
}

// keyOf names an entry in a path: its key, or its number in a list.
func keyOf(part *load.Part, i int) string {
	if part.Kind == load.ListPart {
		return strconv.Itoa(i)
	}
	return part.Entries[i].Key
}

// group shows the keys that stand there in their order, then the usual ones. The page offers
// the rest.
func (f *form) group(made *field, section load.Section, part *load.Part, path []string) {
	made.Section, made.Has = section.Name, []string{}
	if part != nil && part.Kind == load.KeysPart {
		for _, entry := range part.Entries {
			at := slices.IndexFunc(section.Keys, func(k load.Key) bool { return k.Name == entry.Key })
			key := load.Key{Name: entry.Key, Form: load.Text, Expected: "no key that is known here"}
			if at >= 0 {
				key = section.Keys[at]
			}
			made.Has = append(made.Has, entry.Key)
			inner := f.field(key, entry.Value, append(slices.Clone(path), entry.Key))
			inner.Wrong = append(inner.Wrong, f.claim(entry.KeySpan)...)
			made.Fields = append(made.Fields, inner)
		}
	}
	for _, key := range section.Keys {
		inner := append(slices.Clone(path), key.Name)
		wanted := key.Required || slices.Contains(usual[section.Name], key.Name) || f.shown[strings.Join(inner, "\x1f")]
		if wanted && !slices.Contains(made.Has, key.Name) {
			made.Fields, made.Has = append(made.Fields, f.field(key, nil, inner)), append(made.Has, key.Name)
		}
	}
}

// claim takes the findings about a place, those that no field inside it has taken.
func (f *form) claim(at source.Span) []toldFinding {
	var claimed []toldFinding
	f.open = slices.DeleteFunc(f.open, func(found diag.Finding) bool {
		if found.Where.Start < at.Start || found.Where.Start > at.End {
			return false
		}
		claimed = append(claimed, tell(f.kit, found))
		return true
	})
	return claimed
}

// A toldKey is a key as the page offers it.
type toldKey struct {
	Name     string `json:"name"`
	Expected string `json:"expected"`
}

// keysOfSections are all keys that can be added, by section; those that the box shows as
// cards are left out. A page asks for them once.
func keysOfSections() map[string][]toldKey {
	all := map[string][]toldKey{}
	for name, section := range sectionsByName() {
		for _, key := range section.Keys {
			if name != "kit" || !isShelf(key.Name) {
				all[name] = append(all[name], toldKey{key.Name, key.Expected})
			}
		}
	}
	return all
}
