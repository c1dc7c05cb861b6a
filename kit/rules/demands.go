package rules

import (
	"slices"
	"strings"

	"tallyfold/kit"
	"tallyfold/kit/quantity"
)

// A demand is what a step asks of whoever does it: a tool or material that is not
// for every age or every beginner. The table is our own: common practice, no source.
type demand struct {
	// words are names of the tool or material; unless are names that hold one of
	// them and are harmless. Both are cut into words.
	words, unless [][]string
	// age from which makers usually let someone use it alone, 0 for any.
	age int
	// skill that makers usually ask for, "" for none.
	skill string
}

var demands = map[string][]demand{
	"de": demandsDE, "fr": demandsFR, "es": demandsES, "nl": demandsNL, "it": demandsIT,
	"en": {
		{words: cutAll([]string{"scissors", "needle"}), unless: cutAll([]string{"blunt needle", "plastic needle"}), age: 6},
		{words: cutAll([]string{"awl", "bradawl"}), age: 8},
		{words: cutAll([]string{"glue gun"}), age: 10},
		{words: cutAll([]string{"iron"}), unless: cutAll([]string{"soldering iron", "cast iron", "iron powder"}), age: 10},
		{words: cutAll([]string{"knife", "scalpel", "craft blade"}), unless: cutAll([]string{"butter knife", "table knife", "palette knife", "clay knife", "plastic knife"}), age: 12},
		{words: cutAll([]string{"saw", "hacksaw", "fretsaw"}), age: 12},
		{words: cutAll([]string{"oven", "stove", "hob"}), unless: cutAll([]string{"oven glove", "oven mitt", "oven cloth"}), age: 12},
		{words: cutAll([]string{"sewing machine"}), age: 10, skill: "some practice"},
		{words: cutAll([]string{"drill"}), unless: cutAll([]string{"hand drill"}), age: 14, skill: "some practice"},
		{words: cutAll([]string{"soldering iron"}), age: 14, skill: "some practice"},
		{words: cutAll([]string{"heat gun"}), age: 16},
		{words: cutAll([]string{"lye", "caustic soda", "sodium hydroxide"}), age: 16, skill: "some practice"},
		{words: cutAll([]string{"blowtorch", "gas torch"}), age: 18, skill: "experienced"},
		{words: cutAll([]string{"kiln", "lathe", "bandsaw", "router"}), age: 18, skill: "experienced"},
	},
}

// hot is the temperature from which a splash burns, °C, and the age from which
// makers usually let someone handle it alone (common practice, no source).
const (
	hot    = 60
	hotAge = 12
)

// grownUps are words of a language that call a grown-up in.
var grownUps = map[string][]string{
	"en": {"adult", "adults", "grown-up", "grown-ups", "grownup", "parent", "parents", "supervise", "supervision"},
	"de": {"erwachsene", "erwachsener", "erwachsenen", "eltern", "aufsicht"},
	"fr": {"adulte", "adultes", "parent", "parents", "surveillance"},
	"es": {"adulto", "adulta", "adultos", "padres", "supervisión"},
	"nl": {"volwassene", "volwassenen", "ouder", "ouders", "toezicht"},
	"it": {"adulto", "adulta", "adulti", "genitore", "genitori", "sorveglianza"},
}

// A demanding is a step with what it demands, and how that is called there.
type demanding struct {
	demand
	step   *kit.Step
	called string
}

// demandsOf lists what the steps demand, in the order of the steps.
func demandsOf(k *kit.Kit) []demanding {
	var all []demanding
	for _, step := range k.Method.Steps() {
		for _, called := range handled(k, step) {
			name := wordsOf(called)
			for _, d := range demands[language(k)] {
				if d.isFor(name) {
					all = append(all, demanding{d, step, called})
				}
			}
		}
		if temperature, ok := hottest(step); ok && quantity.Whole(hot).Less(temperature) {
			all = append(all, demanding{demand{age: hotAge}, step, show(temperature, quantity.Temperature)})
		}
	}
	return all
}

func (d demand) isFor(name []string) bool {
	holds := func(phrase []string) bool { return holdsPhrase(name, phrase) }
	return slices.ContainsFunc(d.words, holds) && !slices.ContainsFunc(d.unless, holds)
}

// handled are the names of the tools and materials that a step works with.
func handled(k *kit.Kit, step *kit.Step) []string {
	var names []string
	for _, key := range toolsOf(k, step) {
		names = append(names, k.Called(key))
	}
	for _, o := range step.Operations {
		if (o.Kind == kit.Take || o.Kind == kit.Use) && !o.Aside {
			names = append(names, k.Called(o.Target))
		}
	}
	slices.Sort(names)
	return slices.Compact(names)
}

// hottest is the highest temperature that a step warms to.
func hottest(step *kit.Step) (quantity.Number, bool) {
	var most quantity.Number
	found := false
	for _, o := range step.Operations {
		told, ok := o.Phrase.Amount()
		if o.Kind == kit.Warm && ok && !o.Aside && told.Dimension == quantity.Temperature && (!found || most.Less(told.High)) {
			most, found = told.High, true
		}
	}
	return most, found
}

// callsGrownUp says whether a step, its cautions or the opening of its part call a
// grown-up in.
func callsGrownUp(k *kit.Kit, step *kit.Step) bool {
	text := step.Body.Text()
	for _, part := range k.Method.Parts {
		if slices.Contains(part.Steps, step) && part.Body.Known() {
			text += " " + part.Body.Text()
		}
	}
	return slices.ContainsFunc(wordsOf(strings.ToLower(text)), func(word string) bool { return slices.Contains(grownUps[language(k)], word) })
}
