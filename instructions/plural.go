package instructions

import "tallyfold/kit"

// plural: "the labels" without a number, of what is counted, are all there are for the
// run, and not one.
func (f *phrasing) plural() {
	f.onlyLot()
	if f.phrase.Portion != kit.NoPortion || f.phrase.Count > 0 || f.phrase.Each || !f.isCounted() {
		return
	}
	for i, t := range f.tokens {
		if !t.isAmount && !t.used && f.namesTarget(i) && isPluralOf(t.text, f.kit.Called(f.target)) {
			f.phrase.Plural = true
		}
	}
}

// onlyLot: of what is packed as one sheet or skein, "the cloth" is all of it.
func (f *phrasing) onlyLot() {
	c := f.kit.Component(f.target)
	takes := f.meaning.kind == kit.Take || f.meaning.kind == kit.Use
	if c == nil || c.Lots.Count != 1 || !takes || f.phrase.Portion != kit.NoPortion || f.phrase.Each {
		return
	}
	for i, t := range f.tokens {
		if !t.isAmount && !t.used && f.namesTarget(i) {
			f.phrase.Portion = kit.AllOf
		}
	}
}

// isPluralOf says whether a word is the plural of the last word of a name that is itself
// in the singular: "labels" of "Care label", and not of "Labels".
func isPluralOf(word, name string) bool {
	words := wordsOf(name)
	if len(words) == 0 {
		return false
	}
	last := words[len(words)-1].text
	return last != word && singular(word) == last
}
