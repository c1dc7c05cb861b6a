package amend

import (
	"slices"
	"sync"

	"tallyfold/kit/load"
)

// A level is what the tables of kit.yaml say of the place that a path leads to.
type level struct {
	// form is what the value there holds; "" where the tables do not say.
	form load.Form
	// keys are those that may stand there, in the order they are told in.
	keys []load.Key
	// inner are the keys of each entry, where the entries have names of the maker's
	// own or are a list.
	inner []load.Key
}

// sections are the keys of all sections of kit.yaml by their names.
var sections = sync.OnceValue(func() map[string][]load.Key {
	keys := map[string][]load.Key{}
	for _, s := range load.Keys() {
		keys[s.Name] = s.Keys
	}
	return keys
})

// levelOf goes along a path through the tables.
func levelOf(path Path) level {
	sections := sections()
	here := level{form: load.Group, keys: sections["kit"]}
	for _, name := range path {
		i := slices.IndexFunc(here.keys, func(k load.Key) bool { return k.Name == name })
		switch {
		case here.inner != nil:
			here = level{form: load.Group, keys: here.inner}
		case here.keys == nil:
			// An entry of a list of texts or amounts is what the list is.
			here = level{form: here.form}
		case i < 0:
			return level{}
		default:
			key := here.keys[i]
			here = level{form: key.Form}
			switch key.Form {
			case load.Group:
				here.keys = sections[key.Section]
			case load.NamedGroups, load.GroupList:
				here.inner = sections[key.Section]
			}
		}
	}
	return here
}

// isList says whether the value is written as a list where it has entries.
func (l level) isList() bool {
	return l.form == load.TextList || l.form == load.AmountList || l.form == load.GroupList
}

// place is how early a key is told in its section; those the tables do not have come
// last.
func (l level) place(key string) int {
	i := slices.IndexFunc(l.keys, func(k load.Key) bool { return k.Name == key })
	if i < 0 {
		return len(l.keys)
	}
	return i
}
