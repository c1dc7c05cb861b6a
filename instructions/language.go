package instructions

import (
	"slices"
	"strings"
	"unicode/utf8"

	"tallyfold/kit"
	"tallyfold/kit/source"
)

// A language is the words by which one language tells how much, beside the amounts
// themselves, which quantity reads: "half of the", "each of 3 jars to". To add one,
// write its file and put it into languages.
//
// A phrase of several words is written with blanks. An article or preposition that
// is joined to the next word by an apostrophe is a word of its own, "l'".
type language struct {
	tag string
	// elided are the words that an apostrophe joins to the next ("l'", "d'"), and
	// joined those that a hyphen does ("demi-").
	elided, joined []string
	// articles stand before a noun and say nothing of how much; indefinite are "a"
	// and "an".
	articles, indefinite phrases
	// of stands between a part and its whole; ofThe is both words where the whole is
	// a definite one ("of the", "du"), and ofThem stands for it.
	of, ofThe, ofThem phrases
	// each: the amount holds for every one. Every is what of it tells how often, with
	// a time behind it ("every 5 minutes"). Per means each only before a container
	// or a piece.
	each, every, per phrases
	// inAll: for the whole box.
	inAll phrases
	// about stands before an amount, aboutBehind behind it; exactly says nothing.
	about, aboutBehind, exactly phrases
	// to tells a total or a temperature; upTo is what holds it and means a limit.
	// fillTo is what quantity reads as a limit and a fill or a fire means as "to".
	to, upTo, fillTo phrases
	// by tells a difference; byHead does so only as the first word.
	by, byHead phrases
	// both are two; multiples are "twice" and the like, of one word or two; times stands
	// behind a number.
	both      phrases
	multiples map[string]int
	times     phrases
	// more stands between a number and times, or behind it; again is once more.
	more, again phrases
	// all, whole and rest speak of what is there; all of containers means each of them.
	// notAll are phrases with such a word that mean something else ("tout doucement").
	all, whole, rest, notAll phrases
	// fractions are the parts with a name of their own; notHalf stands behind a half
	// that is none ("half full"). Halves say half only right before what is halved
	// ("media bolsa", and not "a fuego medio").
	fractions       map[string]int64
	notHalf, halves phrases
	// last stands before a part that is the rest ("the other half"), second before
	// such a half, remaining behind it.
	last, second, remaining phrases
	// itself is what a share may be of that is the thing itself ("25 % of it").
	itself []string
	// packs are what a pack is called.
	packs []string
	// lotsOf stands between lots and the length of one ("two lengths of 40 cm").
	lotsOf phrases
	// ordinals show that one of several is meant.
	ordinals phrases
	// rims tell a height from the rim down, or only by eye. Below an edge tells it from
	// the rim where an amount stands before it ("10 mm below the rim").
	rims, below, edge phrases
	// labels stand before a number that is a name: "bag 2".
	labels phrases
	// joins stand behind a figure that needs no unit.
	joins phrases
	// signals are the words at the head of a caution (ISO 3864-2, ANSI Z535.6), for each
	// the usual one first. The English ones are understood in every language.
	signals map[kit.Signal][]string
	// stem takes the ending off a word in lower case, well enough to compare two.
	stem func(word string) string
}

// phrases are several phrases, each cut into words, found by their first and last.
type phrases struct {
	all             [][]string
	byFirst, byLast map[string][][]string
}

// say makes phrases of texts.
func say(texts ...string) phrases {
	p := phrases{byFirst: map[string][][]string{}, byLast: map[string][][]string{}}
	for _, text := range texts {
		words := strings.Fields(text)
		first, last := words[0], words[len(words)-1]
		p.all = append(p.all, words)
		p.byFirst[first] = append(p.byFirst[first], words)
		p.byLast[last] = append(p.byLast[last], words)
	}
	return p
}

// hasWord says whether one of the phrases is this word alone.
func (p phrases) hasWord(word string) bool {
	return slices.ContainsFunc(p.byFirst[word], func(words []string) bool { return len(words) == 1 })
}

var languages = []*language{english, french, german, spanish, dutch, italian}

// languageFor gives the language with this base tag, English where there is none.
func languageFor(tag string) (l *language, known bool) {
	i := slices.IndexFunc(languages, func(l *language) bool { return l.tag == tag })
	if i < 0 {
		return english, tag == ""
	}
	return languages[i], true
}

// head gives how many characters of a word are another one joined to it, "l'huile",
// "demi-sachet"; 0 for a word that is one.
func (l *language) head(word string) int {
	for _, head := range slices.Concat(l.elided, l.joined) {
		if len(word) > len(head) && strings.HasPrefix(word, head) {
			return utf8.RuneCountInString(head)
		}
	}
	return 0
}

// isPack says whether a word is one for a pack.
func (l *language) isPack(word string) bool {
	return slices.ContainsFunc(l.packs, func(pack string) bool { return pack == word || l.stem(pack) == l.stem(word) })
}

// tags are the languages that are read, for people.
func tags() []string {
	all := make([]string, len(languages))
	for i, l := range languages {
		all[i] = l.tag
	}
	return all
}

// checkLanguage says so for a text in another language.
func (r *reader) checkLanguage(tag string, where source.Span) {
	if _, known := languageFor(r.amounts.Language); known {
		return
	}
	r.say(languageNotRead, where, "language", "a method in the language "+quoted(tag)+": cannot check what its words say",
		"one of "+strings.Join(tags(), ", ")+", as words like “half of the” and “each of” are read only in these so far",
		"look at what `balance` made of every link", "write amounts as figures with units")
}
