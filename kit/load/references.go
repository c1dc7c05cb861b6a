package load

import (
	"slices"
	"strings"

	"tallyfold/kit"
	"tallyfold/kit/diag"
	"tallyfold/kit/handbook"
	"tallyfold/kit/quantity"
	"tallyfold/kit/source"
)

// references checks every name in kit.yaml that stands for something else in it.
func (r *reader) references(k *kit.Kit) {
	r.rememberSections(k)
	tools, components := keysOf(k, "tools"), keysOf(k, "components")
	vessels := slices.Concat(tools, components)
	for _, t := range k.Tools {
		r.standIns(t, tools)
	}
	for _, m := range k.Mixtures {
		r.about = m.ID
		r.refer(m.MadeIn, "a vessel under “tools” or “components”", vessels)
	}
	for _, p := range k.Pieces {
		r.about = p.ID
		r.refer(p.In, "a component with “container:”", containers(k))
		r.refer(p.Of, "a mixture under “mixtures”", keysOf(k, "mixtures"))
	}
	partners := slices.Concat(containers(k), keysOf(k, "pieces"))
	for _, c := range k.Components {
		r.about = c.ID
		r.refer(c.OneForEach, "a container or a kind of piece that it goes with", partners)
		for _, hazard := range c.Hazards {
			r.refer(hazard, "a hazard: an H-statement, one of the program's (see: tallyfold hazards --known), or one under “hazards”", knownHazards(k))
		}
	}
	r.about = ""
	for _, run := range k.Runs {
		for _, b := range run.With {
			r.refer(b.Component, "a component", components)
		}
	}
	for _, c := range k.Claims {
		r.shownBy(c, k)
	}
	r.bases(k)
}

// knownHazards are those that a component may name.
func knownHazards(k *kit.Kit) []string {
	known := handbook.MaterialIDs()
	for _, own := range k.OwnHazards {
		known = append(known, own.ID)
	}
	return known
}

// rememberSections notes where each thing stands, to say so of a wrong reference.
func (r *reader) rememberSections(k *kit.Kit) {
	r.sectionOf = map[string]string{}
	for _, t := range things(k) {
		r.sectionOf[t.name.ID] = t.section
	}
}

// refer reports a name that is none of the known keys.
func (r *reader) refer(name kit.Said[string], what string, known []string) {
	if !name.Given() || slices.Contains(known, name.Value) {
		return
	}
	r.noSuch(name.Span, name.Value, what, known)
}

// noSuch reports a name for which the kit has nothing.
func (r *reader) noSuch(where source.Span, name, what string, known []string) {
	found := quote(name) + ", which is not in this kit"
	if section, ok := r.sectionOf[name]; ok {
		found = quote(name) + ", which stands under “" + section + "”"
	}
	if near := r.nearest(name, known); near != "" {
		r.report(MissingReference, where, found, "the key of "+what+"; did you mean “"+near+"”?", "write “"+near+"”")
		return
	}
	expected := "the key of " + what
	if n := len(known); n > 0 && n <= mostNamed {
		expected += ": " + list(known, "or")
	}
	r.report(MissingReference, where, found, expected, "write a key that the kit has, or add what is missing to kit.yaml")
}

// mostNamed is how many keys are told where any of them would do.
const mostNamed = 12

// keysOf gives the keys under one section, in the order of the file; all keys for "".
func keysOf(k *kit.Kit, section string) []string {
	var keys []string
	for _, t := range things(k) {
		if section == "" || t.section == section {
			keys = append(keys, t.name.ID)
		}
	}
	return keys
}

func containers(k *kit.Kit) []string {
	var keys []string
	for _, c := range k.Components {
		if c.Container != nil {
			keys = append(keys, c.ID)
		}
	}
	return keys
}

// standIns checks which tools a tool stands in for.
func (r *reader) standIns(t *kit.Tool, tools []string) {
	r.about = t.ID
	for _, other := range t.StandsInFor {
		if other.Value == t.ID {
			r.report(MissingReference, other.Span, "a tool that stands in for itself", "the key of another tool", "name the tool it may replace, or take the line out")
			continue
		}
		r.refer(other, "a tool", tools)
	}
	r.about = ""
}

// backing are the words that “shown by” may have besides keys and files.
var backing = []string{"pieces", "time"}

// shownBy checks what backs a claim; a file is known by its point or slash and
// looked for when the folder is read.
func (r *reader) shownBy(c *kit.Claim, k *kit.Kit) {
	if strings.ContainsAny(c.ShownBy.Value, "./") {
		return
	}
	r.refer(c.ShownBy, "something in the kit, pieces, time, or a file", slices.Concat(backing, keysOf(k, "")))
}

// bases gives each share, ratio and loss its base as a key, and reports bases that
// are nothing of this kit.
func (r *reader) bases(k *kit.Kit) {
	keys := map[string]string{wholeMixture: wholeMixture}
	known := []string{wholeMixture}
	for _, t := range things(k) {
		switch t.section {
		case "components", "household", "mixtures":
			for _, called := range t.name.Names() {
				keys[alike(called)] = t.name.ID
			}
			keys[t.name.ID] = t.name.ID
			known = append(known, t.name.ID)
		}
	}
	for _, run := range k.Runs {
		for _, b := range run.With {
			keys[b.Role.Value] = b.Role.Value
			known = append(known, b.Role.Value)
		}
	}
	check := func(id string, shares []kit.Said[quantity.Amount]) {
		r.about = id
		for i, share := range shares {
			base := share.Value.Of
			key, ok := keys[alike(base)]
			if byKey, exact := keys[base]; exact {
				key, ok = byKey, true
			}
			if !ok {
				r.noSuch(baseAt(share), base, "what it is a part of", known)
				continue
			}
			shares[i].Value.Of = key
		}
		r.about = ""
	}
	for _, c := range k.Components {
		check(c.ID, c.Shares)
		check(c.ID, c.Ratios)
		r.solvents(c, keys, known)
	}
	for _, h := range k.Household {
		check(h.ID, h.Shares)
		check(h.ID, h.Ratios)
	}
	for _, t := range k.Tools {
		if t.Evaporates.Given() {
			lost := []kit.Said[quantity.Amount]{t.Evaporates}
			check(t.ID, lost)
			t.Evaporates = lost[0]
		}
	}
	for _, m := range k.Mixtures {
		check(m.ID, m.Shares)
	}
}

// solvents gives each point of solubility its solvent as a key.
func (r *reader) solvents(c *kit.Component, keys map[string]string, known []string) {
	r.about = c.ID
	for i, point := range c.Dissolves {
		key, ok := keys[alike(point.Value.Solvent)]
		if byKey, exact := keys[point.Value.Solvent]; exact { // a key may have hyphens
			key, ok = byKey, true
		}
		if !ok {
			r.noSuch(point.Span, point.Value.Solvent, "what it dissolves in", known)
			continue
		}
		c.Dissolves[i].Value.Solvent = key
	}
	r.about = ""
}

// baseAt is the place of the base in a share: its last words, as far as they
// stand in the text as they were read.
func baseAt(share kit.Said[quantity.Amount]) source.Span {
	at := strings.LastIndex(share.Span.Text(), share.Value.Of)
	if at < 0 {
		return share.Span
	}
	return share.Span.Part(at, at+len(share.Value.Of))
}

// Settle checks the names in kit.yaml that only the whole kit can settle: the
// parts of the method that a run goes through, the rules that are accepted
// (rules are the names of all there are), and what they are accepted about, which
// may be a step or a trouble.
func Settle(k *kit.Kit, rules []string) diag.List {
	r := &reader{guesses: mostGuesses}
	r.rememberSections(k)
	var parts []string
	for _, p := range k.Method.Parts {
		if p.ID != "" {
			parts = append(parts, p.ID)
		}
	}
	for _, run := range k.Runs {
		for _, part := range run.Parts {
			r.refer(part, "a part of the method (a heading with one “#”)", parts)
		}
	}
	about := abouts(k)
	for _, a := range k.Accepted {
		r.refer(a.Rule, "a rule, as it is printed with its findings", rules)
		r.refer(a.About, "what the finding is about: a thing of the kit, a step or a trouble", about)
	}
	return r.found.Sorted()
}

// abouts are all names that a finding can be about.
func abouts(k *kit.Kit) []string {
	about := keysOf(k, "")
	for _, step := range k.Method.Steps() {
		about = append(about, step.ID)
	}
	for _, t := range k.Troubles {
		about = append(about, t.ID)
	}
	for _, f := range kitKeys.fields {
		about = append(about, f.Name)
	}
	return about
}
