package render

import (
	"slices"
	"strings"

	"tallyfold/kit"
	"tallyfold/kit/hazard"
)

// ownCautions are those that the booklet puts before a step where the maker has none: in
// one box, under the gravest signal word, each hazard in a paragraph.
func (a *assembly) ownCautions(step *kit.Step) []kit.Caution {
	open := hazard.Open(a.kit, a.hazards, step.Number)
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
