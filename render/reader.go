package render

import (
	"strings"

	bcp47 "golang.org/x/text/language"

	"tallyfold/kit"
	"tallyfold/kit/ledger"
	"tallyfold/kit/quantity"
)

// A measuring is how the readers of a booklet measure.
type measuring int

const (
	// asWritten: as the maker wrote, spoons and cups of the kit's kitchen beside it.
	asWritten measuring = iota
	// inMetric: grams, millilitres and degrees Celsius beside anything else.
	inMetric
	// inUSCustomary: spoons, cups and degrees Fahrenheit beside anything else.
	inUSCustomary
)

// measuringIn is how people measure who read a language: in spoons, cups and °F where
// its tag names the United States, else in metric units. The maker's own language
// without a region stays as it was written.
func measuringIn(tag, own string) measuring {
	region, sure := bcp47.Make(tag).Region()
	switch {
	case sure == bcp47.Exact && region.String() == "US":
		return inUSCustomary
	case strings.EqualFold(tag, own):
		return asWritten
	}
	return inMetric
}

// show tells a number in the language of the booklet.
func (a *assembly) show(n quantity.Number, d quantity.Dimension, how ...quantity.Style) string {
	return quantity.Show(n, d, append([]quantity.Style{quantity.Language(a.words.Language)}, how...)...)
}

// figure tells a figure that is exact, or why it is none.
func (a *assembly) figure(f *ledger.Figure) string {
	if !f.Known() {
		return f.Show()
	}
	return a.show(f.Value(), f.Dimension)
}

// shown tells a figure with no more digits than its tolerance bears.
func (a *assembly) shown(f *ledger.Figure) string {
	if !f.Known() {
		return f.Show()
	}
	low, high := f.Worst()
	return a.show(f.Value(), f.Dimension, quantity.Within(high.Minus(low).Over(quantity.Whole(2))))
}

// inReadersUnits is what a single amount is in the units of the readers, in brackets, or
// "" where it is in them already or they are told beside it.
func (a *assembly) inReadersUnits(o *kit.Operation) string {
	if a.measures == asWritten || len(o.Phrase.Amounts) != 1 || o.Kind == kit.Cue {
		return ""
	}
	amount := o.Phrase.Amounts[0]
	if a.measures == inUSCustomary && amount.Dimension != quantity.Temperature {
		return "" // cups and spoons stand in the list of the step
	}
	text, ok := quantity.Other(amount, a.measures == inMetric, a.kit.Kitchen.Value, a.words.Language)
	if !ok || amount.Unit.Household && amount.Dimension == quantity.Volume {
		return "" // who is told to take a spoon takes a spoon
	}
	return " (" + escape(text) + ")"
}

// small gives a name as it stands within a sentence. German nouns keep their capitals.
func (a *assembly) small(name string) string {
	if base(a.words.Language) == "de" {
		return name
	}
	return small(name)
}
