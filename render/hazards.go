package render

import (
	"slices"
	"strings"

	"tallyfold/kit"
	"tallyfold/kit/handbook"
	"tallyfold/kit/hazard"
)

// ownCautions are those that the booklet puts before a step where the maker has none: in
// one box, under the gravest signal word, each hazard in a paragraph.
func (a *assembly) ownCautions(step *kit.Step) []kit.Caution {
	open := hazard.Open(a.hazards, step.Number)
	if len(open) == 0 {
		return nil
	}
	one := kit.Caution{Signal: kit.Notice}
	var told []string
	for _, action := range open {
		if graver(action.Hazard.Signal, one.Signal) {
			one.Signal = action.Hazard.Signal
		}
		if text := a.hazardText(action.Hazard.ID); text != "" && !slices.Contains(told, text) {
			told = append(told, text)
		}
	}
	one.Text = strings.Join(told, "\n\n")
	return []kit.Caution{one}
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

// cautioned are the cautions of a step, those of the booklet first: they stand before all
// that is done in it.
func (a *assembly) cautioned(step *kit.Step) []kit.Caution {
	return append(a.ownCautions(step), step.Cautions...)
}

// withOwnCautions puts the booklet's own cautions before the text of a step.
func (a *assembly) withOwnCautions(step *kit.Step, text string) string {
	var all []string
	for _, caution := range a.ownCautions(step) {
		all = append(all, "> **"+a.signalWord(caution.Signal)+"** "+cautionText(caution.Text))
	}
	return strings.Join(append(all, text), "\n\n")
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
