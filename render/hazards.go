package render

import (
	"math"
	"slices"
	"strings"

	"tallyfold/kit"
	"tallyfold/kit/handbook"
	"tallyfold/kit/hazard"
)

// An ownCaution is one that the booklet puts before a block of a step where the maker has none.
type ownCaution struct {
	kit.Caution
	// until is where the block ends in its file.
	until int
}

// ownCautions are the booklet's own of a step, in the order of its text: for each block in
// one box, under the gravest signal word, each hazard in a paragraph.
func (a *assembly) ownCautions(step *kit.Step) []ownCaution {
	open := hazard.Open(a.hazards, step.Number)
	if len(open) == 0 {
		return nil
	}
	var all []ownCaution
	first := math.MinInt // what the title tells is told before the first block
	for _, end := range append(blockEnds(step.Body), math.MaxInt) {
		within := slices.DeleteFunc(slices.Clone(open), func(o hazard.Action) bool { return o.Where.Start < first || o.Where.Start >= end })
		if len(within) > 0 {
			all = append(all, ownCaution{a.ownCaution(within), end})
		}
		first = end
	}
	return all
}

// ownCaution warns of some actions in one box.
func (a *assembly) ownCaution(of []hazard.Action) kit.Caution {
	one := kit.Caution{Signal: kit.Notice}
	var told []string
	for _, action := range of {
		if graver(action.Hazard.Signal, one.Signal) {
			one.Signal = action.Hazard.Signal
		}
		if text := a.hazardText(action.Hazard.ID); text != "" && !slices.Contains(told, text) {
			told = append(told, text)
		}
	}
	one.Text = strings.Join(told, "\n\n")
	return one
}

// ownBefore gives the cautions that stand before the block that ends at a place, each once.
func (a *assembly) ownBefore(all []ownCaution) func(end int) []string {
	return func(end int) []string {
		var now []string
		for ; len(all) > 0 && all[0].until <= end; all = all[1:] {
			now = append(now, "> **"+a.signalWord(all[0].Signal)+"** "+cautionText(all[0].Text))
		}
		return now
	}
}

// graver says whether the first signal word weighs more (ANSI Z535.6, ISO 3864-2).
func graver(one, other kit.Signal) bool {
	weight := func(s kit.Signal) int { return slices.Index(signals, strings.ToLower(string(s))) }
	return weight(one) < weight(other)
}

// hazardWord is before the ID of a hazard in the word for its caution.
const hazardWord = "hazard-"

// hazardText is what a caution says of a hazard: what happens, and how to avoid it.
func (a *assembly) hazardText(id string) string {
	for _, own := range a.kit.OwnHazards {
		if own.ID == id {
			return own.Happens.Value + " " + own.Avoid.Value
		}
	}
	word := hazardWord + strings.ToLower(id)
	return a.say(word)
}

// cautioned are the cautions of a step, those of the booklet first.
func (a *assembly) cautioned(step *kit.Step) []kit.Caution {
	var all []kit.Caution
	for _, own := range a.ownCautions(step) {
		all = append(all, own.Caution)
	}
	return append(all, step.Cautions...)
}

// gathered says of all hazards together what to wear, where to work and who is there.
func (a *assembly) gathered() []fact {
	var facts []fact
	for _, about := range []struct {
		word string
		of   func(handbook.Hazard) string
	}{
		{"before-wear", func(h handbook.Hazard) string { return h.Wear }},
		{"before-place", func(h handbook.Hazard) string { return h.Place }},
		{"before-company", func(h handbook.Hazard) string { return h.Company }},
	} {
		if all := a.ofHazards(about.of); len(all) > 0 {
			facts = append(facts, fact{a.say(about.word), strings.Join(all, "; ")})
		}
	}
	return facts
}

// aid is what to do if something goes wrong, each once, the suppliers' own words last.
func (a *assembly) aid() []string {
	all := a.ofHazards(func(h handbook.Hazard) string { return h.Aid })
	for _, c := range a.kit.Components {
		if c.FirstAid.Given() {
			all = append(all, strings.TrimSpace(a.bag(c.ID)+" "+escape(c.String())+": "+escape(c.FirstAid.Value)))
		}
	}
	if len(all) > 0 {
		all = append(all, a.say("before-doctor"))
	}
	return all
}

// ofHazards gives the words for one thing that the hazards of the kit say, each once, in
// the order of the steps.
func (a *assembly) ofHazards(of func(handbook.Hazard) string) []string {
	var all []string
	for _, action := range a.hazards {
		name := of(action.Hazard)
		if name == "" {
			continue
		}
		if word := a.say(beforeWord + name); !slices.Contains(all, word) {
			all = append(all, word)
		}
	}
	return all
}

// beforeWord is before what the page "before you start" gathers.
const beforeWord = "before-"
