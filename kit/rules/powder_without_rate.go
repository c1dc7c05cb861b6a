package rules

import (
	"slices"
	"strings"

	"tallyfold/kit"
	"tallyfold/kit/diag"
	"tallyfold/kit/ledger"
	"tallyfold/kit/quantity"
)

var powderWithoutRate = Rule{
	Name:     "powder-without-rate",
	Severity: diag.ShouldFix,
	Sums:     true,
	Title:    "A powder that clumps meets a liquid, and nothing says how fast",
	Explanation: `A gelling powder tipped into water all at once makes lumps that no stirring gets out. A
maker knows that and sprinkles; a stranger does what is written.

A component with “clumps: yes” is followed to the first vessel in which it meets a liquid,
in every run. The text beside it must say how it goes in: “a little at a time”,
“sprinkle”, “while stirring”, “in three goes”. It goes by words, so it should be fixed,
not must. A powder that is made into a paste first is looked at there, and not again when
the paste goes into the water.

Say how it goes in, and whether the powder goes into the liquid or the liquid onto the
powder.`,
	Check: func(s Subject) []diag.Finding {
		if !anyClumps(s.Kit) {
			return nil
		}
		rates, known := rateWords[language(s.Kit)]
		if !known {
			return []diag.Finding{noWords(s.Kit, "how a powder goes in", rateWords)}
		}
		w := wetting{Subject: s, rates: rates, in: map[string]wet{}}
		for _, e := range s.Ledger.Entries {
			w.follow(e)
		}
		return overRuns(s.Kit, w.all)
	},
	NotLookedAt: func(s Subject) []string {
		return untoldFor("it is not told whether these powders clump: ", s, func(c *kit.Component) bool {
			return c.DensityState == kit.Loose && !c.Clumps.Given()
		})
	},
}

func anyClumps(k *kit.Kit) bool {
	return slices.ContainsFunc(k.Components, func(c *kit.Component) bool { return c.Clumps.Value })
}

// rateWords by language: phrases that say how fast or in which portions something
// goes in.
var rateWords = map[string][][]string{
	"en": cutAll([]string{ // the last few tell an order
		"at a time", "little by little", "bit by bit", "gradually", "slowly", "gently", "sprinkle", "sprinkling", "sift", "sifting",
		"dust", "spoon by spoon", "by the spoon", "pinch by pinch", "by the pinch", "thin stream", "in small amounts",
		"in small portions", "in portions", "in batches", "in two goes", "in three goes", "in four goes", "drop by drop", "trickle",
		"while stirring", "while whisking", "while mixing", "while blending", "whisking all the time", "stirring all the time",
		"stirring constantly", "whisking constantly", "keep stirring", "keep whisking", "sieve", "shake over", "first", "on top of", "onto",
	}),
}

// wetting follows powders that clump until they are wet.
type wetting struct {
	Subject
	rates [][]string
	in    map[string]wet // by vessel
	all   []perRun
}

// A wet is what a vessel holds: powders that are dry yet, and whether there is any
// liquid to wet them.
type wet struct {
	dry    []ledger.Entry
	liquid bool
}

func (w *wetting) follow(e ledger.Entry) {
	if e.From != "" && w.Kit.Tool(e.From) != nil && empties(e.Operation) {
		defer delete(w.in, e.From)
	}
	if w.Kit.Tool(e.To) == nil {
		return
	}
	v := w.in[e.To]
	switch from, moved := w.in[e.From]; {
	case moved && e.Move == ledger.Moved:
		v.liquid = v.liquid || from.liquid
		if !from.liquid {
			v.dry = append(v.dry, moving(from.dry, e)...)
		}
	case w.clumps(e.Thing):
		v.dry = append(v.dry, e)
	default:
		v.liquid = v.liquid || isLiquid(w.Kit, e)
	}
	if v.liquid {
		for _, powder := range v.dry {
			w.meets(powder, e)
		}
		v.dry = nil
	}
	w.in[e.To] = v
}

// moving is the dry powder that an entry takes along.
func moving(dry []ledger.Entry, e ledger.Entry) []ledger.Entry {
	var along []ledger.Entry
	for _, powder := range dry {
		if powder.Thing == e.Thing {
			along = append(along, e)
		}
	}
	return along
}

func (w *wetting) clumps(thing string) bool {
	c := w.Kit.Component(thing)
	return c != nil && c.Clumps.Value
}

// liquidNames are household items that are liquid, by the words of their name.
var liquidNames = map[string][]string{"en": {"water", "oil", "milk", "vinegar", "juice", "alcohol", "spirit", "spirits", "syrup", "honey", "glycerin", "glycerine"}}

// isLiquid says whether what an entry adds is one, as far as kit.yaml and the words
// tell: a density of a liquid, an amount in mL, a name.
func isLiquid(k *kit.Kit, e ledger.Entry) bool {
	if c := k.Component(e.Thing); c != nil {
		switch {
		case c.DensityState != kit.NoState:
			return c.DensityState == kit.Liquid
		case c.TrueDensity.Given():
			return false
		case c.Packed.Value.Dimension == quantity.Volume:
			return !c.Packed.Value.Household
		}
		return c.Density.Given() && isFlowing(c.Density.Value)
	}
	told, ok := e.Operation.Phrase.Amount()
	if ok && told.Dimension == quantity.Volume && !told.Household {
		return true
	}
	for _, word := range wordsOf(k.Called(e.Thing)) {
		if slices.Contains(liquidNames[language(k)], word) {
			return true
		}
	}
	return false
}

// isFlowing: liquids of a workroom weigh 0.7 g/mL and more and are told closely;
// loose powders mostly weigh less, or are told as a wide range (common practice, no
// source).
func isFlowing(density quantity.Amount) bool {
	close := density.High.Cmp(density.Low.Times(quantity.Ratio(115, 100))) <= 0
	return close && quantity.Ratio(7, 10).Cmp(density.Nominal) <= 0
}

// meets tells a powder and a liquid that come together without a word of how. The
// words may stand in the step that takes the powder or in the one that wets it.
func (w *wetting) meets(powder, wets ledger.Entry) {
	if w.saysHow(powder) || w.saysHow(wets) {
		return
	}
	name := w.Kit.Called(powder.Thing)
	c := w.Kit.Component(powder.Thing)
	finding := diag.Finding{
		Where: amountSpan(powder.Operation), About: powder.Thing,
		Found:    inStep(wets.Step) + " brings " + name + ", which clumps, and " + w.other(powder, wets) + " together, and nothing says how",
		Expected: "in which portions or how fast it goes in, such as “a little at a time”",
		Remedies: diag.Fix(
			"write how it goes in: sprinkle "+strings.ToLower(name)+" over the liquid a little at a time, stirring all the while",
			"take “clumps: yes” off "+powder.Thing+" in kit.yaml, if it goes in well all at once"),
		Also: []diag.Place{{Where: c.Clumps.Span, Note: "said to clump"}},
	}
	if wets.Operation != powder.Operation {
		finding.Also = append(finding.Also, diag.Place{Where: amountSpan(wets.Operation), Note: "wetted here, " + inStep(wets.Step)})
	}
	w.all = append(w.all, perRun{wets.Run, finding})
}

// other is what it is brought together with.
func (w *wetting) other(powder, wets ledger.Entry) string {
	if wets.Thing != powder.Thing {
		return w.Kit.Called(wets.Thing)
	}
	return "the liquid in " + w.Kit.Called(wets.To)
}

// saysHow looks at the sentence of an action and the ones beside it.
func (w *wetting) saysHow(e ledger.Entry) bool {
	text := readStep(e.Step)
	at := text.sentenceOf(e.Operation)
	for _, phrase := range w.rates {
		for i, word := range text.words {
			if word.sentence >= at-1 && word.sentence <= at+1 && text.phrase(i, phrase) > 0 {
				return true
			}
		}
	}
	return false
}
