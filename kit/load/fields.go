package load

import (
	"slices"
	"strings"

	"tallyfold/kit"
	"tallyfold/kit/quantity"
	"tallyfold/kit/source"
)

// This file has one way of making a field for each form that a value can take.
// at says where in a T the value goes.

func said[V any](v value, what V) kit.Said[V] { return kit.Said[V]{Value: what, Span: v.span} }

// name is what people call something: it has a letter and fits on a line.
func name[T any](key, expected, example string, at func(*T) *kit.Said[string]) field[T] {
	k := Key{Name: key, Expected: expected, Example: example, Form: Text}
	return field[T]{k, func(r *reader, into *T, v value) {
		if !r.isWords(v, k) {
			return
		}
		if !v.quoted() && isSwitch(v.oneLine()) {
			r.switchWord(v, k)
			return
		}
		*at(into) = said(v, v.oneLine())
	}}
}

// isSwitch says whether an unquoted word is one of those that stand for yes, no
// and nothing.
func isSwitch(word string) bool {
	switch strings.ToLower(word) {
	case "yes", "no", "true", "false", "on", "off", "null":
		return true
	}
	return false
}

// switchWord reports a word that stands for yes, no or nothing where one is called
// or told something.
func (r *reader) switchWord(v value, k Key) {
	r.report(WrongType, v.span, v.told()+", which reads like yes, no or nothing", k.Expected,
		"if it really is called so, put it between quotation marks: “"+k.Name+": \""+v.oneLine()+"\"”")
}

// prose is a sentence or several; line ends are kept.
func prose[T any](key, expected, example string, at func(*T) *kit.Said[string]) field[T] {
	k := Key{Name: key, Expected: expected, Example: example, Form: Text, Words: true}
	return field[T]{k, func(r *reader, into *T, v value) {
		if r.isWords(v, k) {
			*at(into) = said(v, strings.TrimSpace(v.text()))
		}
	}}
}

// texts is one text or a list of them.
func texts[T any](key, expected, example string, at func(*T) *[]kit.Said[string]) field[T] {
	k := Key{Name: key, Expected: expected, Example: example, Form: TextList, Words: true}
	return field[T]{k, func(r *reader, into *T, v value) {
		for _, one := range oneOrMore(v) {
			if r.isWords(one, k) {
				*at(into) = append(*at(into), said(one, strings.TrimSpace(one.text())))
			}
		}
	}}
}

// oneOrMore gives the entries of a list, or the one value that is no list.
func oneOrMore(v value) []value {
	if v.isList() {
		return v.items()
	}
	return []value{v}
}

// isWords says whether v is a text with a letter in it and nothing hidden, and
// reports it if not.
func (r *reader) isWords(v value, k Key) bool {
	switch {
	case !v.isText() || !hasLetter(v.text()):
		r.wrong(v, k)
	case v.isNull():
		r.switchWord(v, k)
	case v.smuggled():
		r.report(WrongType, v.span, "a character that no text may hold, written with a backslash", k.Expected, "take it out")
	default:
		return true
	}
	return false
}

// yesNo reads yes, no, true or false from the text itself.
func yesNo[T any](key, expected string, at func(*T) *kit.Said[bool]) field[T] {
	k := Key{Name: key, Expected: expected, Example: "yes", Form: YesNo}
	return field[T]{k, func(r *reader, into *T, v value) {
		if is, ok := r.isYes(v, k); ok {
			*at(into) = said(v, is)
		}
	}}
}

func (r *reader) isYes(v value, k Key) (is, ok bool) {
	if v.isText() {
		switch strings.ToLower(v.oneLine()) {
		case "yes", "true":
			return true, true
		case "no", "false":
			return false, true
		}
	}
	r.report(WrongType, v.span, v.told(), k.Expected, "write yes or no")
	return false, false
}

// whole reads a whole number from at least to at most; behind it may stand
// after ("+").
func whole[T any](key, expected, example string, least, most int, after string, at func(*T) *kit.Said[int]) field[T] {
	k := Key{Name: key, Expected: expected, Example: example, Form: WholeNumber, Least: least, Most: most, After: after}
	return field[T]{k, func(r *reader, into *T, v value) {
		if n, ok := wholeNumber(strings.TrimSuffix(v.text(), after)); v.isText() && ok && n >= least && n <= most {
			*at(into) = said(v, n)
			return
		}
		r.wrong(v, k)
	}}
}

// mostDigits is how many digits a whole number may have.
const mostDigits = 6

// wholeNumber reads plain digits; no sign, no leading zero, no underscore.
func wholeNumber(text string) (n int, ok bool) {
	if text == "" || len(text) > mostDigits || text[0] == '0' && text != "0" {
		return 0, false
	}
	for _, digit := range text {
		if digit < '0' || digit > '9' {
			return 0, false
		}
		n = n*10 + int(digit-'0')
	}
	return n, true
}

// A choice is a word the maker may write, and what it means.
type choice[V any] struct {
	word  string
	means V
}

// oneOf reads one of a few words.
func oneOf[T, V any](key, expected, example string, choices []choice[V], at func(*T) *kit.Said[V]) field[T] {
	k := Key{Name: key, Expected: expected, Example: example, Form: OneOf}
	for _, c := range choices {
		k.Choices = append(k.Choices, c.word)
	}
	return field[T]{k, func(r *reader, into *T, v value) {
		for _, c := range choices {
			if v.isText() && strings.EqualFold(v.oneLine(), c.word) {
				*at(into) = said(v, c.means)
				return
			}
		}
		r.noChoice(v, k)
	}}
}

func (r *reader) noChoice(v value, k Key) {
	near := ""
	if v.isText() {
		near = r.nearest(v.oneLine(), k.Choices)
	}
	if near == "" {
		r.report(WrongType, v.span, v.told(), k.Expected, "write “"+k.Name+": "+k.Example+"”, or another of these words")
		return
	}
	r.report(WrongType, v.span, v.told(), k.Expected+"; did you mean “"+near+"”?", "write “"+k.Name+": "+near+"”")
}

// amount reads one amount.
func amount[T any](key, expected, example string, fits fit, at func(*T) *kit.Said[quantity.Amount]) field[T] {
	k := fits.key(Key{Name: key, Expected: expected, Example: example, Form: Amount})
	return field[T]{k, func(r *reader, into *T, v value) {
		if a, ok := r.amount(v, k, fits); ok {
			*at(into) = said(v, a)
		}
	}}
}

// amounts reads one amount or a list of them.
func amounts[T any](key, expected, example string, fits fit, at func(*T) *[]kit.Said[quantity.Amount]) field[T] {
	k := fits.key(Key{Name: key, Expected: expected, Example: example, Form: AmountList})
	return field[T]{k, func(r *reader, into *T, v value) {
		for _, one := range oneOrMore(v) {
			if a, ok := r.amount(one, k, fits); ok {
				*at(into) = append(*at(into), said(one, a))
			}
		}
	}}
}

// group reads lines of keys into a part of T.
func group[T, U any](key, expected, example string, t table[U], begin func(*T, source.Span) *U) field[T] {
	k := Key{Name: key, Expected: expected, Example: example, Form: Group, Section: t.name}
	return field[T]{k, func(r *reader, into *T, v value) {
		if !v.isKeys() {
			r.wrong(v, k)
			return
		}
		readKeys(r, t, begin(into, v.span), v.head(), v)
	}}
}

// groupList reads a list of entries, each with lines of keys.
func groupList[T, U any](key, expected, example string, t table[U], add func(*T, source.Span) *U) field[T] {
	k := Key{Name: key, Expected: expected, Example: example, Form: GroupList, Section: t.name}
	return field[T]{k, func(r *reader, into *T, v value) {
		if !v.isList() {
			r.report(WrongType, v.span, v.told(), expected, "begin each entry with “- ” on a line of its own under “"+key+":”")
			return
		}
		for _, item := range v.items() {
			if !item.isKeys() {
				r.wrong(item, k)
				continue
			}
			readKeys(r, t, add(into, item.span), item.head(), item)
		}
	}}
}

// named reads entries under names of the maker's own, each with lines of keys;
// example is one entry.
func named[T, U any](key, expected, example string, t table[U], nameOf func(*U) *kit.Name, add func(*T, *U)) field[T] {
	k := Key{Name: key, Expected: expected, Example: "{" + example + "}", Form: NamedGroups, Section: t.name}
	return field[T]{k, func(r *reader, into *T, v value) {
		if !v.isKeys() {
			r.report(WrongType, v.span, v.told(), expected, "give each a name of its own on a line under “"+key+":”, such as “"+example+"”")
			return
		}
		for _, e := range r.entries(v).all {
			one := new(U)
			r.about = e.key.text()
			*nameOf(one) = r.key(e.key)
			r.entry(e, t.section, func() { readKeys(r, t, one, e.key.span, e.value) })
			add(into, one)
			r.about = ""
		}
	}}
}

// entry reads what stands under a name, which must be lines of keys of a section.
func (r *reader) entry(e entry, section func() Section, read func()) {
	if e.value.isKeys() {
		read()
		return
	}
	keys := section().Keys
	first := keys[max(slices.IndexFunc(keys, func(k Key) bool { return k.Required }), 0)]
	expected := "keys under it, set in by two spaces, such as “" + first.Name + ": " + first.Example + "”"
	switch {
	case e.value.nothing():
		r.report(MissingField, e.key.span, "nothing under “"+short(e.key.oneLine())+":”", expected, "add the keys, or take it out")
	default:
		r.report(WrongType, e.value.span, e.value.told(), expected, "put each value under a key of its own")
	}
}
