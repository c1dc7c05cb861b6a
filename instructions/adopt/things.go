package adopt

import (
	"slices"
	"strings"

	"tallyfold/kit/load"
	"tallyfold/kit/quantity"
	"tallyfold/kit/rules"
)

// A Thing is what will stand in kit.yaml under components or household.
type Thing struct {
	Key, Name string
	// Also are further names by which the leaflet speaks of it.
	Also []string
	// Packed is the amount that a list tells, "" for unknown.
	Packed string
	// Household: the customer brings it.
	Household bool
	// Why says how it was recognised, with its place.
	Why string
	// Listed: it stands on a list of parts.
	Listed bool
}

// thing gives what a name of the leaflet stands for, known or new; nil where that is
// no name.
func (r *reading) thing(name string, at [2]int) *Thing {
	if known := r.thingCalled(name, at[0]); known != nil {
		r.alsoCalled(known, name)
		return known
	}
	if owner := r.owner(name); owner != "" {
		return r.thingOf(owner)
	}
	if !hasLetter(name) {
		return nil
	}
	t := &Thing{Key: r.freeKey(name), Name: oneLine(name), Why: "beside an amount " + r.placeOf(at[0]), Household: isWater(name)}
	if t.Household {
		t.Why += "; taken for water from the customer's tap, by its name"
	}
	r.Things = append(r.Things, t)
	return t
}

// freeKey makes a key that nothing else has.
func (r *reading) freeKey(name string) string {
	return load.FreeKey(name, func(key string) bool {
		return slices.ContainsFunc(r.Things, func(t *Thing) bool { return t.Key == key }) ||
			slices.ContainsFunc(r.Tools, func(t *ToolFound) bool { return t.Key == key })
	})
}

// alsoCalled adds a name that nothing has yet.
func (r *reading) alsoCalled(t *Thing, name string) {
	if name = oneLine(name); r.owner(name) == "" && hasLetter(name) {
		t.Also = append(t.Also, name)
	}
}

// owner is the key of the thing or tool that has a name, "" for none. Names of a kit are
// held to be the same in any case, and where hyphens stand for blanks.
func (r *reading) owner(name string) string {
	same := func(other string) bool { return plainName(other) == plainName(name) }
	for _, t := range r.Things {
		if same(t.Name) || same(t.Key) || slices.ContainsFunc(t.Also, same) {
			return t.Key
		}
	}
	for _, t := range r.Tools {
		if same(t.Name) || same(t.Key) {
			return t.Key
		}
	}
	return ""
}

func plainName(name string) string {
	return strings.ToLower(oneLine(strings.ReplaceAll(name, "-", " ")))
}

// thingOf finds a thing by its key, or nil.
func (r *reading) thingOf(key string) *Thing {
	i := slices.IndexFunc(r.Things, func(t *Thing) bool { return t.Key == key })
	if i < 0 {
		return nil
	}
	return r.Things[i]
}

// thingNamed finds the thing that a name stands for: one of the same words, whatever
// their endings; or the only one on a list of parts that has all words of the name, or
// whose words the name has and ends with the same. Of two that fit none is meant.
func (r *reading) thingNamed(name string) *Thing {
	words := stems(name)
	if len(words) == 0 {
		return nil
	}
	var within []*Thing
	for _, t := range r.Things {
		for _, called := range append([]string{t.Name}, t.Also...) {
			have := stems(called)
			if slices.Equal(have, words) {
				return t
			}
			sameHead := len(have) > 0 && have[len(have)-1] == words[len(words)-1]
			if t.Listed && (hasAll(have, words) || hasAll(words, have) && sameHead) && !slices.Contains(within, t) {
				within = append(within, t)
			}
		}
	}
	if len(within) == 1 {
		return within[0]
	}
	return nil
}

func stems(name string) []string {
	var all []string
	for _, w := range rules.Words(strings.ReplaceAll(name, "-", " ")) {
		if !beginsName[w.Text] {
			all = append(all, rules.Singular(w.Text))
		}
	}
	return all
}

func hasAll(have, words []string) bool {
	return len(have) > 0 && !slices.ContainsFunc(words, func(w string) bool { return !slices.Contains(have, w) })
}

// isWater says whether a name is one of water as it comes from a tap or a kettle, and
// not rose-water.
func isWater(name string) bool {
	words := stems(name)
	if len(words) == 0 || words[len(words)-1] != "water" {
		return false
	}
	plain := wordSet("tap cold hot warm boiling lukewarm soft rain spring clean fresh distilled water")
	return !slices.ContainsFunc(words, func(w string) bool { return !plain[w] })
}

func oneLine(text string) string { return strings.Join(strings.Fields(text), " ") }

// placeOf tells a byte of the leaflet as line and column.
func (a *Adoption) placeOf(at int) string {
	p := a.File.Span(at, at).Position()
	return "at " + quantity.Whole(int64(p.Line)).String() + ":" + quantity.Whole(int64(p.Column)).String()
}
