package hazard

import (
	"cmp"
	"slices"
	"strings"
	"unicode"

	"tallyfold/kit"
	"tallyfold/kit/handbook"
	"tallyfold/kit/ledger"
	"tallyfold/kit/quantity"
	"tallyfold/kit/source"
)

// heat finds what a step warms, and what it pours while it is hot.
func (f *finder) heat() {
	scalds := quantity.Whole(handbook.ScaldsAt)
	for _, o := range f.step.Operations {
		if !heats(o) {
			continue
		}
		if tool := f.toolOf(handbook.Microwave); tool != "" {
			f.add(handbook.Microwave, tool, nil, o.Span)
		}
		f.add(handbook.Hot, strings.TrimSpace(o.Text), nil, o.Span)
	}
	for _, filling := range f.ledger.Fillings {
		if filling.Step != f.step || filling.Operation == nil || filling.Operation.Kind != kit.Fill {
			continue
		}
		if temperature := filling.Temperature; temperature.Known() && !temperature.Value().Less(scalds) {
			f.add(handbook.HotPour, temperature.Show(), nil, filling.Operation.Span)
		}
	}
}

// moves finds what is hot enough to scald and goes from vessel to vessel.
func (f *finder) moves() {
	scalds := quantity.Whole(handbook.ScaldsAt)
	for _, e := range f.ledger.Entries {
		if e.Step == f.step && e.Move == ledger.Moved && e.Operation != nil && e.Moving.Known() && !e.Moving.Value().Less(scalds) {
			f.add(handbook.HotPour, e.Moving.Show(), nil, e.Operation.Span)
		}
	}
}

// heats says whether an operation warms something enough to scald, or to nobody knows what.
func heats(o *kit.Operation) bool {
	if o.Kind != kit.Warm || o.Aside {
		return false
	}
	amount, told := o.Phrase.Amount()
	return !told || amount.Dimension != quantity.Temperature || !amount.High.Less(quantity.Whole(handbook.ScaldsAt))
}

// unattended finds heat that is on while the step waits: no words between say that it is
// turned off.
func (f *finder) unattended() {
	hot := false
	since := 0
	for _, o := range f.step.Operations {
		switch {
		case heats(o):
			hot, since = true, o.Span.End
		case o.Kind == kit.Cool && !o.Aside:
			hot = false
		case o.Kind == kit.Wait && hot && !o.Aside && waitsLong(o) && !f.turnsOff(since, o.Span.Start):
			f.add(handbook.Unattended, strings.TrimSpace(o.Text), nil, o.Span)
		}
	}
}

// turnsOff says whether the step turns the heat off between two places of its text.
func (f *finder) turnsOff(from, to int) bool {
	text := f.step.Body.Text()
	from, to = from-f.step.Body.Start, to-f.step.Body.Start
	if from < 0 || to > len(text) || from > to {
		return false
	}
	between := strings.ToLower(strings.Join(strings.Fields(text[from:to]), " "))
	return slices.ContainsFunc(handbook.HeatOff[f.language], func(words string) bool { return strings.Contains(between, words) })
}

// waitsLong says whether a wait is so long that people leave the room.
func waitsLong(o *kit.Operation) bool {
	amount, told := o.Phrase.Amount()
	return told && amount.Dimension == quantity.Duration && !amount.High.Less(quantity.Whole(handbook.LeavesAt))
}

// burning finds the candle that the last step leaves behind.
func (f *finder) burning() {
	steps := f.kit.Method.Steps()
	if f.kit.SoldAs.Value == kit.Candle && f.step == steps[len(steps)-1] {
		end := f.step.Body
		end.Start = end.End
		f.add(handbook.Burning, "the finished candle", nil, end)
	}
}

// glass finds what is made of glass, by its name, and filled hot.
func (f *finder) glass() {
	hazard, _ := handbook.Find(handbook.HotGlass)
	for _, a := range f.found {
		if a.Step != f.step || a.Hazard.ID != handbook.HotPour {
			continue
		}
		for _, o := range f.step.Operations {
			into := f.kit.Called(cmp.Or(o.Into, o.Target))
			if (o.Kind == kit.Fill || o.Kind == kit.Move) && !o.Aside && slices.ContainsFunc(hazard.Tools[f.language], func(word string) bool { return hold(split(into), split(word)) }) {
				f.add(handbook.HotGlass, into, nil, o.Span)
				return
			}
		}
	}
}

// tools finds those that bring a hazard by their names.
func (f *finder) tools() {
	for _, hazard := range handbook.Hazards() {
		if hazard.Tools == nil || hazard.ID == handbook.Microwave || hazard.ID == handbook.HotGlass {
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
// the last of the phrase at its end, as German compounds do ("Bastelmesser").
func hold(words, phrase []string) bool {
	for start := 0; start+len(phrase) <= len(words); start++ {
		alike := true
		for i, part := range phrase {
			word := words[start+i]
			alike = alike && (word == part || word == part+"s" || len(part) > 4 && strings.HasSuffix(word, part))
		}
		if alike {
			return true
		}
	}
	return false
}
