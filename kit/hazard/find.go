package hazard

import (
	"slices"
	"strings"
	"unicode"

	"tallyfold/kit"
	"tallyfold/kit/handbook"
	"tallyfold/kit/ledger"
	"tallyfold/kit/quantity"
	"tallyfold/kit/source"
)

// tools finds those that bring a hazard by their names.
func (f *finder) tools() {
	for _, hazard := range handbook.Hazards() {
		if hazard.Tools == nil || hazard.ID == handbook.Microwave || hazard.ID == handbook.HotGlass || hazard.ID == handbook.Glass {
			continue
		}
		for _, used := range f.used() {
			if f.is(hazard, used.name) {
				f.add(hazard.ID, used.name, nil, used.where)
			}
		}
	}
}

// toolOf is the name of the tool in this step that brings a hazard, or "".
func (f *finder) toolOf(id string) string {
	hazard, _ := handbook.Find(id)
	for _, used := range f.used() {
		if f.is(hazard, used.name) {
			return used.name
		}
	}
	return ""
}

// is says whether a tool of that name brings a hazard.
func (f *finder) is(hazard handbook.Hazard, name string) bool {
	words := split(name)
	holds := func(phrase string) bool { return hold(words, split(phrase)) }
	return slices.ContainsFunc(hazard.Tools[f.language], holds) && !slices.ContainsFunc(hazard.Unless[f.language], holds)
}

// A handling is a tool or component that a step names.
type handling struct {
	name  string
	where source.Span
}

// used are the tools that a step names outside its cautions, and what is taken or placed.
func (f *finder) used() []handling {
	var all []handling
	add := func(key string, where source.Span) {
		if f.kit.Tool(key) != nil || f.kit.Component(key) != nil {
			all = append(all, handling{f.kit.Called(key), where})
		}
	}
	for _, o := range f.step.Operations {
		if !o.Aside {
			add(o.Target, o.Span)
		}
	}
	for _, mention := range f.step.Mentions {
		if !f.inCaution(mention.Span) && !f.putAway(mention.Span) {
			add(mention.Key, mention.Span)
		}
	}
	return all
}

// putAway says whether a sentence only puts the tool back.
func (f *finder) putAway(at source.Span) bool {
	text := f.step.Body.Text()
	start, end := at.Start-f.step.Body.Start, at.End-f.step.Body.Start
	if start < 0 || end > len(text) {
		return false // named in the title
	}
	sentence := split(text[strings.LastIndexAny(text[:start], ".!?")+1:start] + " " + firstOf(text[end:]))
	return slices.ContainsFunc(sentence, func(word string) bool { return slices.Contains(handbook.PutAway[f.language], word) })
}

// firstOf is a text up to the end of its first sentence.
func firstOf(text string) string {
	if end := strings.IndexAny(text, ".!?"); end >= 0 {
		return text[:end]
	}
	return text
}

func (f *finder) inCaution(at source.Span) bool {
	return slices.ContainsFunc(f.step.Cautions, func(c kit.Caution) bool { return c.Span.Contains(at) })
}

// materials finds what is taken of components that say what can go wrong with them.
func (f *finder) materials() {
	for _, e := range f.ledger.Entries {
		if e.Step != f.step || e.Operation == nil || e.Operation.Aside || !opens(e.Operation) {
			continue
		}
		component := f.kit.Component(e.Thing)
		if component == nil {
			continue
		}
		for _, said := range component.Hazards {
			if said.Value == handbook.FoamingBath && f.adultsOnly() {
				continue // 21 CFR 740.17(b)
			}
			f.add(said.Value, component.String(), component, e.Operation.Span)
		}
		if f.isPowder(component) {
			f.add(handbook.Dust, component.String(), component, e.Operation.Span)
		}
		if f.nearFlash(component, e) {
			f.add(handbook.Flammable, component.String(), component, e.Operation.Span)
		}
	}
}

// opens says whether an operation takes something out of its pack; what is moved on is
// told where it was taken.
func opens(o *kit.Operation) bool {
	return o.Kind == kit.Take || o.Kind == kit.Use || o.Kind == kit.Place
}

func (f *finder) adultsOnly() bool {
	return f.kit.Audience.Age.Given() && f.kit.Audience.Age.Value >= 18
}

// nearFlash says whether a liquid meets its flash point in a step, or a flame.
func (f *finder) nearFlash(c *kit.Component, e ledger.Entry) bool {
	if !c.FlashPoint.Given() {
		return false
	}
	if f.toolOf(handbook.Flame) != "" {
		return true
	}
	hottest, told := f.hottest()
	return told && !hottest.Less(c.FlashPoint.Value.Low)
}

// hottest is the highest temperature that the step tells or begins with.
func (f *finder) hottest() (quantity.Number, bool) {
	var most quantity.Number
	found := false
	raise := func(temperature quantity.Number) {
		if !found || most.Less(temperature) {
			most, found = temperature, true
		}
	}
	for _, o := range f.step.Operations {
		if amount, told := o.Phrase.Amount(); told && !o.Aside && amount.Dimension == quantity.Temperature && (o.Kind == kit.Warm || o.Kind == kit.Cool) {
			raise(amount.High)
		}
	}
	return most, found
}

// split cuts a text into words in small letters.
func split(text string) []string {
	return strings.FieldsFunc(strings.ToLower(text), func(r rune) bool { return !unicode.IsLetter(r) && r != '-' })
}

// hold says whether words hold a phrase. A word may have an ending, or in one word hold
// the last of the phrase at its end, as German compounds do ("Bastelmesser"). A short word of
// a phrase does so where it is written with a hyphen ("-glas").
func hold(words, phrase []string) bool {
	for start := 0; start+len(phrase) <= len(words); start++ {
		alike := true
		for i, part := range phrase {
			word := words[start+i]
			ending, short := strings.CutPrefix(part, "-")
			alike = alike && (word == part || word == part+"s" || (short || len(part) > 4) && strings.HasSuffix(word, ending))
		}
		if alike {
			return true
		}
	}
	return false
}
