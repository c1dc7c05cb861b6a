package rules

import (
	"cmp"
	"slices"
	"strings"

	"tallyfold/kit"
	"tallyfold/kit/quantity"
	"tallyfold/kit/source"
)

// A telling is the amounts at one place: those of a link or side by side in prose.
type telling struct {
	at source.Span
	// about is the key of the step or trouble, "" elsewhere; where names it.
	about, where string
	amounts      []quantity.Amount
	spans        []source.Span
}

// tellingsOf gives all of them in the order they are read.
func tellingsOf(k *kit.Kit) []telling {
	reader := amountReader(k)
	var all []telling
	gather := func(about, where string, prose []kit.Prose, links []*kit.Operation) {
		all = append(all, together(append(inProse(reader, about, where, prose), inLinks(about, where, links)...))...)
	}
	for _, part := range k.Method.Parts {
		gather("", "the introduction", part.Prose, part.Operations)
		for _, step := range part.Steps {
			gather(step.ID, inStep(step), step.Prose, step.Operations)
		}
	}
	for _, trouble := range k.Troubles {
		gather(trouble.ID, inTrouble(trouble), trouble.Prose, trouble.Operations)
	}
	for _, words := range k.Words {
		gather("", "“"+words.Title+"”", words.Prose, words.Operations)
	}
	return all
}

func inLinks(about, where string, links []*kit.Operation) []telling {
	var all []telling
	for _, o := range links {
		if len(o.Phrase.Amounts) > 0 {
			all = append(all, telling{o.Span, about, where, o.Phrase.Amounts, o.Phrase.AmountSpans})
		}
	}
	return all
}

// inProse gives amounts of running text. Lengths are left out: "a 6 inch hoop" is
// rather a name.
func inProse(reader quantity.Reader, about, where string, prose []kit.Prose) []telling {
	var all []telling
	for _, piece := range prose {
		for _, found := range reader.Find(piece.Text) {
			if found.Amount.Dimension == quantity.Length || found.Amount.Dimension == quantity.Area {
				continue
			}
			at := piece.Span.Part(found.Start, found.End)
			all = append(all, telling{at, about, where, []quantity.Amount{found.Amount}, []source.Span{at}})
		}
	}
	return all
}

// together joins tellings that stand side by side: "600 g (1 lb 5 oz)", "60 °C/140 °F".
func together(all []telling) []telling {
	slices.SortStableFunc(all, func(a, b telling) int { return cmp.Compare(a.at.Start, b.at.Start) })
	var joined []telling
	for _, one := range all {
		last := len(joined) - 1
		if last >= 0 && isBeside(joined[last].at, one.at) {
			joined[last].at.End = max(joined[last].at.End, one.at.End)
			joined[last].amounts = slices.Concat(joined[last].amounts, one.amounts)
			joined[last].spans = slices.Concat(joined[last].spans, one.spans)
			continue
		}
		joined = append(joined, one)
	}
	return joined
}

func isBeside(a, b source.Span) bool {
	if b.Start < a.End {
		return true
	}
	gap := string(a.File.Text[a.End:b.Start])
	return strings.Trim(gap, " \n(/=[") == "" && gap != "" && strings.ContainsAny(gap, "(/=")
}
