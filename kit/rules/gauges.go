package rules

import (
	"slices"
	"strings"

	"tallyfold/kit"
	"tallyfold/kit/quantity"
	"tallyfold/kit/source"
)

// A gauge is something on the list of tools, or in the box, that measures.
type gauge struct {
	name string
	// reads is its smallest step in base units, 0 where none is told.
	reads quantity.Number
	at    source.Span // where “reads to” is told
	small bool        // a spoon: not for more than mostBySpoon
}

// A gaugeList has the gauges of a kit by what they measure.
type gaugeList map[quantity.Dimension][]gauge

// fewTools is the length from which on a list of tools is meant to be whole, even
// where nothing on it measures.
const fewTools = 5

// gauges gives what a kit has to measure with. judged says whether its list of tools
// can be blamed for what is not on it: up to four tools without anything that measures
// are a list that has yet to be written.
func gauges(k *kit.Kit, words map[quantity.Dimension][]string) (all gaugeList, judged bool) {
	all = gaugeList{}
	judged = len(k.Tools) >= fewTools
	for _, t := range k.Tools {
		all.add(t.Name, words)
		if t.ReadsTo.Given() {
			all.reads(t)
			judged = true
		}
	}
	for _, d := range []quantity.Dimension{quantity.Mass, quantity.Temperature, quantity.Length} {
		judged = judged || len(all[d]) > 0
	}
	for _, c := range k.Components {
		if c.Packed.Value.Dimension == quantity.Count && c.Container == nil {
			all.add(c.Name, words)
		}
	}
	return all, judged
}

// add notes what a thing measures by the words of its name.
func (all gaugeList) add(name kit.Name, words map[quantity.Dimension][]string) {
	called := wordsOf(name.String() + " " + strings.ReplaceAll(name.ID, "-", " "))
	for d, list := range words {
		if slices.ContainsFunc(called, func(w string) bool { return slices.Contains(list, w) || slices.Contains(list, singular(w)) }) {
			small := slices.ContainsFunc(called, func(w string) bool { return slices.Contains(smallSpoons, singular(w)) })
			all[d] = append(all[d], gauge{name: name.String(), small: d == quantity.Volume && small})
		}
	}
}

// reads notes the step that a tool reads to, whatever it is called.
func (all gaugeList) reads(t *kit.Tool) {
	d := t.ReadsTo.Value.Dimension
	if d == quantity.TemperatureDifference {
		d = quantity.Temperature
	}
	for i, known := range all[d] {
		if known.name == t.String() {
			all[d][i].reads, all[d][i].at = t.ReadsTo.Value.Nominal, t.ReadsTo.Span
			return
		}
	}
	all[d] = append(all[d], gauge{name: t.String(), reads: t.ReadsTo.Value.Nominal, at: t.ReadsTo.Span})
}

// finest is the gauge with the smallest step; one without a told step goes before all
// others, since it cannot be blamed.
func finest(list []gauge) gauge {
	best := list[0]
	for _, g := range list[1:] {
		if !best.reads.IsZero() && (g.reads.IsZero() || g.reads.Less(best.reads)) {
			best = g
		}
	}
	return best
}

// gaugedIn is the dimension of the gauge that an amount needs; ok is false for what
// needs none.
func gaugedIn(a quantity.Amount) (d quantity.Dimension, ok bool) {
	switch a.Dimension {
	case quantity.Mass, quantity.Volume, quantity.Temperature, quantity.Length:
		return a.Dimension, true
	case quantity.Area:
		return quantity.Length, true
	}
	return 0, false
}
