package load

import (
	"strings"
	"time"

	"golang.org/x/text/language"

	"tallyfold/kit"
	"tallyfold/kit/colour"
	"tallyfold/kit/quantity"
)

// This file has the fields that are read like no other.

// languageOf reads the language of the written texts, which also says how decimals
// and number words are written.
func languageOf() field[kit.Kit] {
	k := Key{Name: "language", Expected: "the language of the texts as a code such as en, fr or de-AT; en unless said", Example: "en", Form: Text}
	return field[kit.Kit]{k, func(r *reader, into *kit.Kit, v value) {
		tag, err := language.Parse(v.text())
		if !v.isText() || err != nil {
			r.wrong(v, k)
			return
		}
		into.Language = said(v, tag.String())
		r.amounts = Amounts(into)
	}}
}

// Amounts gives the way in which a kit writes its amounts: its kitchen, its
// language and its own measures, by key and by name.
func Amounts(k *kit.Kit) quantity.Reader { return AmountsIn(k, k.Language.Value) }

// AmountsIn gives the way in which a translation of a kit writes its amounts.
func AmountsIn(k *kit.Kit, written string) quantity.Reader {
	tag := language.Make(written)
	base, _ := tag.Base()
	amounts := quantity.Reader{
		Convention: k.Kitchen.Value, Language: base.String(), Measures: map[string]quantity.Amount{},
		DecimalComma: kit.DecimalCommaIn(written),
	}
	for _, m := range k.Measures {
		if m.Holds.Given() {
			amounts.Measures[m.ID] = m.Holds.Value
			for _, called := range m.AllIn(written) {
				amounts.Measures[strings.ToLower(called)] = m.Holds.Value
			}
		}
	}
	return amounts
}

// kitchens are the conventions of spoons and cups.
var kitchens = []choice[quantity.Convention]{
	{"US customary", quantity.USCustomary}, {"US label", quantity.USLabel}, {"metric", quantity.Metric},
	{"Australian", quantity.Australian}, {"imperial", quantity.Imperial},
}

// kitchenOf reads which spoons and cups are meant.
func kitchenOf() field[kit.Kit] {
	f := oneOf("kitchen", "which spoons and cups are meant: US customary, US label, metric, Australian or imperial; US customary unless said", "metric",
		kitchens, func(k *kit.Kit) *kit.Said[quantity.Convention] { return &k.Kitchen })
	read := f.read
	f.read = func(r *reader, into *kit.Kit, v value) {
		read(r, into, v)
		r.amounts = Amounts(into)
	}
	return f
}

// measuresOf reads the kit's own measures, which then may be used in amounts.
// “scoop: 15 mL” is short for “scoop: {holds: 15 mL}”.
func measuresOf() field[kit.Kit] {
	k := Key{Name: "measures", Expected: "the kit's own measures, each with what it holds", Example: "{scoop: 15 mL}", Form: NamedGroups, Section: measureKeys.name, Short: "holds"}
	holds := Key{Name: k.Short, Expected: "a volume such as 15 mL", Example: "15 mL"}
	return field[kit.Kit]{k, func(r *reader, into *kit.Kit, v value) {
		if !v.isKeys() {
			r.wrong(v, k)
			return
		}
		for _, e := range r.entries(v).all {
			r.about = e.key.text()
			m := &kit.Measure{Name: r.key(e.key)}
			if e.value.isText() && !e.value.nothing() {
				if a, ok := r.amount(e.value, holds, aVolume); ok {
					m.Holds = said(e.value, a)
				}
			} else {
				r.entry(e, measureKeys.section, func() { readKeys(r, measureKeys, m, e.key.span, e.value) })
			}
			into.Measures = append(into.Measures, m)
			r.about = ""
		}
		r.amounts = Amounts(into)
	}}
}

// states are the words that may stand after a density.
var states = []choice[kit.State]{{"loose", kit.Loose}, {"liquid", kit.Liquid}, {"set", kit.Set}}

// density reads a density and, where one stands behind it, the state it was
// measured in.
func density[T any](expected, example string, at func(*T) (*kit.Said[quantity.Amount], *kit.State)) field[T] {
	k := aDensity.key(Key{Name: "density", Expected: expected, Example: example, Form: Amount})
	return field[T]{k, func(r *reader, into *T, v value) {
		figure, state := v, kit.NoState
		if v.isText() {
			figure, state = r.state(v)
		}
		if a, ok := r.amount(figure, k, aDensity); ok {
			amount, of := at(into)
			*amount, *of = said(v, a), state
		}
	}}
}

// state takes the last word off a density if it is a state, or nearly one.
func (r *reader) state(v value) (figure value, state kit.State) {
	text := strings.TrimRight(v.text(), " \n")
	space := strings.LastIndexByte(text, ' ')
	if space < 0 {
		return v, kit.NoState
	}
	word, words := text[space+1:], []string{}
	for _, s := range states {
		if s.word == word {
			return v.piece(0, space), s.means
		}
		words = append(words, s.word)
	}
	if near := r.nearest(word, words); near != "" {
		r.report(BadAmount, v.part(space+1, len(text)), quote(word)+" after a density",
			list(words, "or")+", or nothing; did you mean “"+near+"”?", "write “"+near+"”")
		return v.piece(0, space), kit.NoState
	}
	return v, kit.NoState
}

// floats reads yes or no for the two ways most inserts sit.
func floats() field[kit.Insert] {
	k := Key{Name: "floats", Expected: "yes if it floats in the fill, no if it sinks", Example: "no", Form: YesNo}
	return field[kit.Insert]{k, func(r *reader, into *kit.Insert, v value) {
		if is, ok := r.isYes(v, k); ok {
			into.Sits = said(v, kit.Sunk)
			if is {
				into.Sits.Value = kit.Floats
			}
		}
	}}
}

// sits reads every way an insert can sit; it may not contradict “floats”.
func sits() field[kit.Insert] {
	f := oneOf("sits", "how it sits in the fill: sunk, floats, on top or flooded", "sunk",
		[]choice[kit.Sitting]{{"sunk", kit.Sunk}, {"floats", kit.Floats}, {"on top", kit.OnTop}, {"flooded", kit.Flooded}},
		func(i *kit.Insert) *kit.Said[kit.Sitting] { return &i.Sits })
	read := f.read
	f.read = func(r *reader, into *kit.Insert, v value) {
		before := into.Sits
		read(r, into, v)
		if before.Given() && before.Value != into.Sits.Value {
			r.report(DuplicateKey, v.span, v.told()+", where “floats” says otherwise", "one of the two keys", "take out “floats”")
		}
	}
	return f
}

// withOf reads which component takes which role in a run.
func withOf() field[kit.Run] {
	k := Key{Name: "with", Expected: "roles of the method, each with the key of a component", Example: "{scent: rosemary, tint: green}", Form: Bindings}
	return field[kit.Run]{k, func(r *reader, into *kit.Run, v value) {
		if !v.isKeys() {
			r.wrong(v, k)
			return
		}
		for _, e := range r.entries(v).all {
			role := r.key(e.key)
			if !e.value.isText() || e.value.nothing() {
				r.report(WrongType, e.key.span, e.value.told()+" for the role “"+short(role.ID)+"”", "the key of one component", "write it like “"+k.Example+"”")
				continue
			}
			into.With = append(into.With, kit.Binding{
				Role: kit.Said[string]{Value: role.ID, Span: role.IDSpan}, Component: said(e.value, e.value.text()),
			})
		}
	}}
}

// namesOf reads what a thing is called in other languages. A name has further ones
// behind a stroke: “Pot à couvercle / pot”.
func namesOf[T any](at func(*T) *kit.Name) field[T] {
	k := Key{Name: "names", Expected: "what it is called in other languages, each after the code of its language; further names of it behind “ / ”",
		Example: "{fr: Pot à couvercle / pot, de: Deckelglas}", Form: Languages}
	return field[T]{k, func(r *reader, into *T, v value) {
		if !v.isKeys() {
			r.wrong(v, k)
			return
		}
		for _, e := range r.entries(v).all {
			tag, err := language.Parse(e.key.text())
			if err != nil {
				r.report(WrongType, e.key.span, quote(e.key.text())+" as a language", "the code of a language, such as fr or de-AT", "write it like “names: "+k.Example+"”")
				continue
			}
			if !r.isWords(e.value, k) {
				continue
			}
			other := kit.OtherName{Language: kit.Said[string]{Value: tag.String(), Span: e.key.span}, Span: e.value.span}
			for _, one := range strings.Split(e.value.oneLine(), " / ") {
				if one = strings.TrimSpace(one); one != "" {
					other.Called = append(other.Called, one)
				}
			}
			name := at(into)
			name.Others = append(name.Others, other)
		}
	}}
}

// colourOf reads a colour in figures. Without quotation marks YAML takes it for a remark.
func colourOf[T any](key, expected, example string, at func(*T) *kit.Said[colour.Colour]) field[T] {
	k := Key{Name: key, Expected: expected, Example: example, Form: Colour}
	return field[T]{k, func(r *reader, into *T, v value) {
		read, ok := colour.Read(v.text())
		if !v.isText() || !ok {
			r.wrong(v, k)
			return
		}
		*at(into) = said(v, read)
	}}
}

// picture reads the name of a file in the folder pictures.
func picture[T any](key, expected, example string, at func(*T) *kit.Said[string]) field[T] {
	k := Key{Name: key, Expected: expected, Example: example, Form: Picture}
	return field[T]{k, func(r *reader, into *T, v value) {
		switch name := v.oneLine(); {
		case !r.isWords(v, k):
		case strings.ContainsAny(name, `/\`):
			r.report(WrongType, v.span, v.told()+", which leads into a folder", k.Expected, "put the picture into the folder pictures, and write its name alone")
		default:
			*at(into) = said(v, name)
		}
	}}
}

// date reads a day as year-month-day.
func date[T any](key, expected, example string, at func(*T) *kit.Said[string]) field[T] {
	k := Key{Name: key, Expected: expected, Example: example, Form: Date}
	return field[T]{k, func(r *reader, into *T, v value) {
		if _, err := time.Parse(time.DateOnly, v.text()); !v.isText() || err != nil {
			r.wrong(v, k)
			return
		}
		*at(into) = said(v, v.text())
	}}
}
