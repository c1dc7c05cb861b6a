package instructions

import (
	"slices"
	"strings"

	"tallyfold/kit"
	"tallyfold/kit/diag"
)

// names are the keys and roles of a kit with the sort of each.
type names struct {
	kit    *kit.Kit
	sorts  map[string]thing // of keys
	roles  map[string]thing // of roles: what all components bound to one are
	order  []string         // keys as they stand in kit.yaml, then roles
	called callNames        // of tools and containers
	pieces callNames        // of containers and kinds of piece
	tag    string           // the language that names are read in
	near   map[near]string  // answers already given
}

// near is a question for the name most likely meant.
type near struct {
	written string
	wanted  thing
}

func namesOf(k *kit.Kit, tag string, l *language) *names {
	n := &names{kit: k, tag: tag, sorts: map[string]thing{}, roles: map[string]thing{}, near: map[near]string{}}
	n.called, n.pieces = callNamesOf(k, tag, l.stem)
	for _, c := range k.Components {
		if c.Container != nil {
			n.add(c.ID, component|container)
		} else {
			n.add(c.ID, component)
		}
	}
	for _, h := range k.Household {
		n.add(h.ID, household)
	}
	for _, t := range k.Tools {
		n.add(t.ID, tool)
	}
	for _, m := range k.Mixtures {
		n.add(m.ID, mixture)
	}
	for _, p := range k.Pieces {
		n.add(p.ID, piece)
	}
	for _, run := range k.Runs {
		for _, binding := range run.With {
			n.bind(binding.Role.Value, binding.Component.Value)
		}
	}
	return n
}

func (n *names) add(key string, s thing) {
	if n.sorts[key] == 0 {
		n.order = append(n.order, key)
	}
	n.sorts[key] |= s
}

// bind notes that a run gives a role this component. One that kit.yaml doesn't
// have is a finding of its reader and limits nothing here.
func (n *names) bind(role, key string) {
	if n.sorts[role] != 0 {
		return
	}
	if n.roles[role] == 0 {
		n.roles[role] = component | container
		n.order = append(n.order, role)
	}
	if is := n.sorts[key]; is != 0 {
		n.roles[role] &= is | component
	}
}

// sortOf gives the sort of a key or role. known is false for a word that kit.yaml
// doesn't have and no run binds.
func (n *names) sortOf(name string) (s thing, known bool) {
	if s, known = n.sorts[name]; known {
		return s, true
	}
	s, known = n.roles[name]
	return s, known
}

// allCalled are all names of a thing in the language, the key where it has none.
func (n *names) allCalled(key string) []string {
	if name, ok := n.kit.Named(key); ok {
		return name.AllIn(n.tag)
	}
	return []string{key}
}

func (n *names) isRole(name string) bool { return n.roles[name] != 0 }

// of gives the keys and roles that are of one of these sorts.
func (n *names) of(wanted thing) []string {
	var all []string
	for _, name := range n.order {
		if s, _ := n.sortOf(name); s&wanted != 0 {
			all = append(all, name)
		}
	}
	return all
}

// nearest is the key of these sorts that was most likely meant: the one whose
// name people use is written, or one that differs by a slip. "" when none is.
func (n *names) nearest(written string, wanted thing) string {
	question := near{written, wanted}
	answer, asked := n.near[question]
	if !asked && len(n.near) < maxGuesses {
		answer = n.guess(written, n.of(wanted))
		n.near[question] = answer
	}
	return answer
}

func (n *names) guess(written string, keys []string) string {
	for _, key := range keys {
		if called, ok := n.kit.Named(key); ok && slices.ContainsFunc(called.Names(), func(name string) bool { return strings.EqualFold(name, written) }) {
			return key
		}
	}
	return diag.Nearest(written, keys)
}

// sortWords name the sorts to people.
var sortWords = []struct {
	thing thing
	one   string
}{
	{component, "component"}, {container, "container"}, {household, "household item"}, {tool, "tool"},
	{mixture, "mixture"}, {piece, "kind of piece"}, {namedStep, "step"}, {namedWait, "named wait"},
}

// String tells the sorts: "component, household item or tool".
func (s thing) String() string {
	var words []string
	for _, w := range sortWords {
		if s&w.thing != 0 {
			words = append(words, w.one)
		}
	}
	return either(words)
}

// either joins words with commas and "or".
func either(words []string) string {
	if len(words) < 2 {
		return strings.Join(words, "")
	}
	return strings.Join(words[:len(words)-1], ", ") + " or " + words[len(words)-1]
}

// article puts "a" or "an" before a word.
func article(word string) string {
	if word != "" && strings.ContainsRune("aeiou", rune(word[0])) {
		return "an " + word
	}
	return "a " + word
}
