package ledger

import (
	"slices"
	"strings"

	"tallyfold/kit/quantity"
)

// shareOfAnother is an amount told as a share of something else: "10 % of the yarn" of
// alum. It is a mass (g): the share of the mass of that thing in the vessel worked in,
// else of what the run has taken of it so far; of the mixture, of all that mixes there.
func (f *follower) shareOfAnother(m *material, share *Figure, of string) *Figure {
	base := f.massOfBase(of)
	if !base.Known() {
		f.snag(NoAmount, m.key, share, m.left, base.Why())
		return Unknown(m.dimension, share.Name, base.Why())
	}
	return Times(quantity.Mass, share.Name, share, base)
}

// wholeMixture are the words for all that mixes in a vessel.
var wholeMixture = []string{"mixture", "mix", "whole", "total", "batch", "base", "bath"}

func (f *follower) massOfBase(of string) *Figure {
	words := strings.Fields(strings.ToLower(of))
	v := f.vessels[f.worked()]
	base := f.named(words)
	switch {
	case base == nil && v != nil && slices.Contains(wholeMixture, words[len(words)-1]):
		return v.Mass().Called("the mixture")
	case base == nil:
		return Unknown(quantity.Mass, of, "nothing says what “"+of+"” is")
	case v != nil && v.Holds(base.key):
		return v.MassOf(base.key)
	}
	var taken []*Figure
	for _, use := range base.uses {
		if use.Run == f.run && use.Move != NotChosen {
			taken = append(taken, base.mass(use.Amount))
		}
	}
	if len(taken) == 0 {
		return Unknown(quantity.Mass, of, "none of "+base.name+" is taken before "+f.here())
	}
	return Plus(quantity.Mass, base.name, taken...)
}

// named is the one thing of the kit that words name, by key, role or a word of its name;
// nil where none or several would do.
func (f *follower) named(words []string) *material {
	if m := f.materials[f.resolve(strings.Join(words, "-"))]; m != nil {
		return m
	}
	var found *material
	for key, m := range f.materials {
		names := append(strings.Fields(strings.ToLower(m.name)), key)
		if !slices.ContainsFunc(words, func(word string) bool { return slices.Contains(names, word) }) {
			continue
		}
		if found != nil {
			return nil
		}
		found = m
	}
	return found
}
