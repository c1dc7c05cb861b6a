package load

import (
	"slices"
	"strings"

	"tallyfold/kit"
	"tallyfold/kit/diag"
	"tallyfold/kit/source"
)

// key reads a key of the maker's own. A bad one is reported and used all the
// same, so that what is said of the thing is still checked.
func (r *reader) key(v value) kit.Name {
	id := v.text()
	expected := "lower-case letters a to z, digits and single hyphens, beginning with a letter"
	switch meaning, taken := reserved[id]; {
	case taken:
		r.report(BadKeyName, v.span, quote(id)+", which already means "+meaning, "a key that means only this thing",
			"give it another key, such as “"+id+"-1” or what it is made of")
	case len(id) > longestKey:
		r.report(BadKeyName, v.span, quote(id), "a key of at most 40 letters", "give it a short key, and the long name under “name:”")
	case Slug(id) != id || !startsWithLetter(id):
		order := "begin it with a letter"
		if near := Slug(id); startsWithLetter(near) {
			order = "write “" + near + "”, and put what people read under “name:”"
		}
		r.report(BadKeyName, v.span, quote(id)+" as a key", expected, order)
	}
	return kit.Name{ID: id, IDSpan: v.span, Called: kit.Said[string]{Value: id}}
}

// A thing is anything in the kit with a key, and the section it stands in.
type thing struct {
	name    *kit.Name
	section string
}

// things are all things of the kit in the order of the file.
func things(k *kit.Kit) []thing {
	var all []thing
	for _, m := range k.Measures {
		all = append(all, thing{&m.Name, "measures"})
	}
	for _, c := range k.Components {
		all = append(all, thing{&c.Name, "components"})
	}
	for _, h := range k.Household {
		all = append(all, thing{&h.Name, "household"})
	}
	for _, t := range k.Tools {
		all = append(all, thing{&t.Name, "tools"})
	}
	for _, m := range k.Mixtures {
		all = append(all, thing{&m.Name, "mixtures"})
	}
	for _, p := range k.Pieces {
		all = append(all, thing{&p.Name, "pieces"})
	}
	slices.SortStableFunc(all, func(a, b thing) int { return a.name.IDSpan.Start - b.name.IDSpan.Start })
	return all
}

// uniqueNames reports keys and names that two things share, and roles that are
// called like a thing.
func (r *reader) uniqueNames(k *kit.Kit) {
	keys, called := map[string]thing{}, map[string]thing{}
	for _, t := range things(k) {
		first, twice := keys[t.name.ID]
		if twice {
			r.twice(t.name.ID, t.name.ID, t.name.IDSpan, first.name.IDSpan, "the key of something under “"+first.section+"” already",
				"a key for each thing in the whole kit", "give one of the two another key, here and where it is meant")
		} else {
			keys[t.name.ID] = t
		}
		words := alike(t.name.String())
		if first, same := called[words]; same && !twice {
			r.nameTwice(t.name, t.name.String(), calledAt(t.name), first.name, calledAt(first.name))
		} else if !same {
			called[words] = t
		}
	}
	r.uniqueAlso(k, called)
	r.uniqueRuns(k, keys)
}

// nameTwice reports a name of one thing that is also that of another.
func (r *reader) nameTwice(name *kit.Name, written string, at source.Span, first *kit.Name, firstAt source.Span) {
	r.twice(name.ID, written, at, firstAt, "the name of “"+first.ID+"” already",
		"a name for each thing, so that nobody takes one for the other", "give one of the two another name")
}

// uniqueAlso reports other names that are a name of another thing.
func (r *reader) uniqueAlso(k *kit.Kit, called map[string]thing) {
	type other struct {
		name *kit.Name
		at   source.Span
	}
	others := map[string]other{}
	for _, t := range things(k) {
		for _, also := range t.name.AlsoCalled {
			words := alike(also.Value)
			first, isOther := others[words]
			if named, is := called[words]; is && named.name != t.name {
				r.nameTwice(t.name, also.Value, also.Span, named.name, calledAt(named.name))
			} else if isOther && first.name != t.name {
				r.nameTwice(t.name, also.Value, also.Span, first.name, first.at)
			} else if !isOther {
				others[words] = other{t.name, also.Span}
			}
		}
	}
}

// uniqueRuns reports runs with one name, and roles that are called like a thing.
func (r *reader) uniqueRuns(k *kit.Kit, keys map[string]thing) {
	runs, roles := map[string]*kit.Run{}, map[string]bool{}
	for _, run := range k.Runs {
		words := alike(run.Name.Value)
		if first, twice := runs[words]; twice && words != "" {
			r.twice("", run.Name.Value, run.Name.Span, first.Name.Span, "the name of another run already", "a name for each run", "give one of the two another name")
		} else {
			runs[words] = run
		}
		for _, b := range run.With {
			if first, taken := keys[b.Role.Value]; taken && !roles[b.Role.Value] {
				r.twice(b.Role.Value, b.Role.Value, b.Role.Span, first.name.IDSpan, "the key of something under “"+first.section+"”",
					"a role named unlike any thing in the kit", "give the role another name, here and in the method")
			}
			roles[b.Role.Value] = true
		}
	}
}

// twice reports a name that is taken.
func (r *reader) twice(about, name string, at, first source.Span, is, expected, order string) {
	r.about = about
	f := r.report(DuplicateName, at, quote(name)+", "+is, expected, order)
	f.Also = []diag.Place{{Where: first, Note: "the first one"}}
	r.about = ""
}

// calledAt is where a thing's name stands: its key where it has no other.
func calledAt(n *kit.Name) source.Span {
	if n.Called.Given() {
		return n.Called.Span
	}
	return n.IDSpan
}

// alike makes names equal that a reader would take for the same.
func alike(name string) string {
	return strings.Join(strings.Fields(strings.ToLower(strings.ReplaceAll(name, "-", " "))), " ")
}
