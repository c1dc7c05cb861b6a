package render

import (
	"strings"

	"tallyfold/kit"
)

// cardView is the method for one who has made the kit before: of each step what is
// taken, how long, how hot and what to look for, in order, with every caution. Markdown.
type cardView struct {
	Statements []string
	Parts      []cardPart
	Supplied   []suppliedCaution
	Remedies   []cardRemedy
}

type cardPart struct {
	Title    string
	Cautions []gatheredCaution
	Steps    []cardStep
}

type cardStep struct {
	Number        int
	Title, Anchor string
	Cautions      []gatheredCaution
	Line          string
	Needs         needsView
}

// cardRemedy is a problem whose remedy has cautions; the remedy stands in the booklet.
type cardRemedy struct {
	Title    string
	Cautions []gatheredCaution
}

func cardValues(a *assembly) any {
	view := cardView{Statements: a.statements(), Supplied: a.suppliedCautions()}
	for _, part := range a.kit.Method.Parts {
		p := cardPart{Title: escape(part.Title), Cautions: a.cautionsOf(part.Cautions)}
		passes := a.passesOfPart(part)
		for _, step := range part.Steps {
			p.Steps = append(p.Steps, cardStep{
				Number: step.Number, Title: escape(step.Title), Anchor: stepAnchor(step),
				Cautions: a.cautionsOf(a.cautioned(step)), Line: a.cardLine(step, passes), Needs: a.needs(step, passes),
			})
		}
		view.Parts = append(view.Parts, p)
	}
	for _, trouble := range a.kit.Troubles {
		if len(trouble.Cautions) > 0 {
			view.Remedies = append(view.Remedies, cardRemedy{escape(trouble.Title), a.cautionsOf(trouble.Cautions)})
		}
	}
	return view
}

func (a *assembly) cautionsOf(cautions []kit.Caution) []gatheredCaution {
	var all []gatheredCaution
	for _, caution := range cautions {
		all = append(all, gatheredCaution{Word: a.signalWord(caution.Signal), Text: cautionText(caution.Text)})
	}
	return all
}

// cardLine tells what a step does in the customer's own words: those that were linked.
func (a *assembly) cardLine(step *kit.Step, passes []*kit.Run) string {
	var said []string
	for _, o := range step.Operations {
		if words := a.cardWords(o, passes); words != "" && !o.Aside {
			said = append(said, words)
		}
	}
	return strings.Join(said, " · ")
}

func (a *assembly) cardWords(o *kit.Operation, passes []*kit.Run) string {
	words := escape(strings.Join(strings.Fields(o.Text), " "))
	if words == "" {
		words = a.filledIn(o, passes)
	}
	switch o.Kind {
	case kit.WithVessel, kit.WithTool, kit.ToStep, kit.ToHelp, kit.ShowPicture, kit.Hazard, kit.Same:
		return ""
	case kit.Cue:
		return "*" + words + "*"
	}
	// "All of it" says nothing where the sentence around it is left out.
	if name, ok := a.kit.Named(o.Target); ok && o.Phrase.Portion != kit.NoPortion {
		if thing := a.small(name.String()); !namedIn(o.Text, thing) {
			words += " (" + escape(thing) + ")"
		}
	}
	words += a.inReadersUnits(o)
	if tellsHowMuch(o) {
		return bold(words)
	}
	return words
}

// namedIn says whether a text has a word of a thing's name: "half of the lavender" needs
// no "dried lavender" beside it.
func namedIn(text, thing string) bool {
	for _, word := range strings.Fields(strings.ToLower(thing)) {
		if len(word) >= 3 && strings.Contains(strings.ToLower(text), word) {
			return true
		}
	}
	return false
}
