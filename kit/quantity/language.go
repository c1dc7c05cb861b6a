package quantity

import "strings"

// A language is the words that one language has for amounts. To add one, write
// its file and put it into languages. The first phrase of a list is the one used
// to tell an amount; the others are only understood.
type language struct {
	tag string
	// decimalComma: 1,5 is one and a half.
	decimalComma bool
	// singularBelowTwo: 1½ takes the singular.
	singularBelowTwo bool
	// fillBehind: "level" stands behind the spoon, not before it.
	fillBehind bool
	// numbers gives number words; numerals that are built regularly are made by
	// the function of each language.
	numbers func(add func(n int64, words ...string))
	// dozens are worth twelve, behind "a", a number or "half a".
	dozens []string
	// fractions stand before a unit, more behind a number or a unit ("and a half").
	fractions, more map[string][2]int64
	bounds          map[Bound][]string
	// fieldBounds count only where a text is nothing but an amount.
	fieldBounds map[Bound][]string
	trailing    map[Bound][]string
	words       map[role][]string
	// fills maps "level", "heaped", … to the words for them.
	fills map[string][]string
	// units maps the symbol of a unit to its names: first one, then several.
	units map[string][]string
}

var languages = []*language{english, french, german, spanish, dutch, italian}

var lexiconByTag = func() map[string]lexicons {
	all := map[string]lexicons{}
	for _, l := range languages {
		all[l.tag] = lexiconsOf(l)
	}
	return all
}()

// lexiconFor gives the words of a language by its BCP 47 tag; of a language that
// this package does not know, English.
func lexiconFor(tag string, prose bool) *lexicon {
	known, ok := lexiconByTag[baseOf(tag)]
	if !ok {
		known = lexiconByTag[english.tag]
	}
	if prose {
		return known.prose()
	}
	return known.field()
}

// languageFor is the language with this tag, English where there is none.
func languageFor(tag string) *language {
	base := baseOf(tag)
	for _, l := range languages {
		if l.tag == base {
			return l
		}
	}
	return english
}

func baseOf(tag string) string {
	base, _, _ := strings.Cut(tag, "-")
	return strings.ToLower(base)
}

// DecimalCommaIn says whether numbers are written with a decimal comma in a
// language ("fr"), as far as this package knows it. Switzerland and Mexico write
// a point.
func DecimalCommaIn(tag string) bool {
	switch strings.ToUpper(tag[min(len(tag), 2):]) {
	case "-CH", "-LI", "-MX":
		return false
	}
	return languageFor(tag).decimalComma
}

// ReaderFor is the reader for texts in a language.
func ReaderFor(tag string, c Convention) Reader {
	return Reader{Convention: c, Language: tag, DecimalComma: DecimalCommaIn(tag)}
}

// fill puts the words of the language into a lexicon.
func (l *language) fill(into *lexicon) {
	l.numbers(func(n int64, words ...string) {
		for _, word := range words {
			into.add(word, entry{role: numberWord, number: Whole(n)})
		}
	})
	for _, word := range l.dozens {
		into.add(word, entry{role: dozenWord, number: Whole(12)})
	}
	for word, f := range l.fractions {
		into.add(word, entry{role: fractionWord, number: Ratio(f[0], f[1])})
	}
	for word, f := range l.more {
		into.add(word, entry{role: moreWord, number: Ratio(f[0], f[1])})
	}
	for role, words := range l.words {
		for _, word := range words {
			into.add(word, entry{role: role})
		}
	}
	for fill, words := range l.fills {
		for _, word := range words {
			into.add(word, entry{role: fillWord, fill: fill})
		}
	}
	addBounds(into, l.bounds, entry{role: boundWord})
	addBounds(into, l.fieldBounds, entry{role: boundWord, field: true})
	addBounds(into, l.trailing, entry{role: trailingWord})
	l.fillUnits(into)
}

func addBounds(into *lexicon, phrases map[Bound][]string, e entry) {
	for bound, words := range phrases {
		e.bound = bound
		for _, word := range words {
			into.add(word, e)
		}
	}
}

func (l *language) fillUnits(into *lexicon) {
	for i := range table {
		row := &table[i]
		names := l.units[row.Symbol]
		if l == english {
			names = append([]string{row.Name, row.Plural}, row.names...)
		}
		for _, name := range names {
			into.addUnit(name, i)
		}
	}
}
