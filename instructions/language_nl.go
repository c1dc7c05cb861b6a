package instructions

import (
	"strings"

	"tallyfold/kit"
)

var dutch = &language{
	tag:         "nl",
	articles:    say("de", "het", "je", "jouw", "uw", "deze", "dit", "die", "dat", "zijn", "hun"),
	indefinite:  say("een"),
	of:          say("van", "van de", "van het"),
	ofThe:       say("van de", "van het", "van je", "van uw", "van deze", "van dit", "van die"),
	ofThem:      say("ervan", "hiervan", "daarvan"),
	each:        say("elk", "elke", "ieder", "iedere", "per", "per stuk"),
	every:       say("elke", "iedere", "om de"),
	inAll:       say("in totaal", "in het geheel", "bij elkaar", "alles bij elkaar", "samen"),
	about:       say("ongeveer", "circa", "ca", "zo'n", "rond", "omstreeks", "grofweg", "rond de"),
	aboutBehind: say("ongeveer"),
	exactly:     say("precies", "exact", "de", "het"),
	to:          say("tot", "tot op", "op"),
	upTo:        say("tot wel", "tot maximaal"),
	by:          say("met"),
	both:        say("beide", "allebei", "de beide"),
	multiples: map[string]int{"eenmaal": 1, "één keer": 1, "een keer": 1, "tweemaal": 2, "driemaal": 3, "viermaal": 4, "vijfmaal": 5,
		"zesmaal": 6},
	times:  say("keer", "maal", "keren"),
	more:   say("meer", "andere", "extra", "overige"),
	again:  say("opnieuw", "nogmaals", "nog eens", "weer", "nog een keer"),
	all:    say("alle", "allen"),
	whole:  say("al het", "al de", "al je", "alles", "hele", "gehele", "volledige", "complete"),
	notAll: say("de hele tijd"),
	rest: say("rest", "resterende", "overige", "overgebleven", "overblijvende", "wat over is", "over is", "wat overblijft", "overblijft",
		"wat er nog is", "restant", "over zijn"),
	fractions: map[string]int64{
		"helft": 2, "half": 2, "halve": 2, "derde": 3, "derden": 3, "kwart": 4, "vierde": 4, "vijfde": 5, "zesde": 6, "achtste": 8,
		"tiende": 10,
	},
	notHalf: say("vol", "volle", "gevuld", "leeg"),
	halves:  say("half", "halve"),
	last:    say("andere", "overige", "laatste", "resterende"),
	second:  say("tweede"),
	itself:  []string{"ervan", "hiervan", "daarvan", "rest", "wat"},
	packs: []string{"pak", "pakje", "verpakking", "zak", "zakje", "fles", "flesje", "bus", "blik", "doos", "doosje", "tube", "streng",
		"rol", "vel", "spoel", "blok", "reep", "envelop", "pot", "potje", "ampul", "bol", "karton"},
	lotsOf:   say("van", "à"),
	ordinals: say("een", "eerste", "tweede", "derde", "vierde", "vijfde", "zesde", "volgende", "laatste", "andere"),
	rims:     say("onder", "rand", "randje", "streep", "lijn", "markering", "hals", "schouder", "bovenkant"),
	below:    say("onder", "van"),
	edge:     say("rand", "bovenkant"),
	labels:   say("zak", "zakje", "pak", "stap", "stappen", "maat", "nr", "nummer", "deel", "pagina", "afbeelding", "type", "soort", "pot", "figuur"),
	joins:    say("van", "keer", "maal", "meer", "andere", "en", "of", "tot", "op"),
	signals: map[kit.Signal][]string{kit.Danger: {"GEVAAR"}, kit.Warning: {"WAARSCHUWING"}, kit.CautionWord: {"VOORZICHTIG"},
		kit.Notice: {"LET OP", "OPMERKING"}},
	stem: dutchStem,
}

// dutchStem takes the plural off and writes doubled letters once, as they come and
// go with it: "potten" and "pot", "schalen" and "schaal", "glazen" and "glas".
func dutchStem(word string) string {
	word = strip(plain(word), 4, "en", "s")
	var b strings.Builder
	var before rune
	for _, r := range word {
		if r != before {
			b.WriteRune(r)
		}
		before = r
	}
	word = b.String()
	switch {
	case strings.HasSuffix(word, "z"):
		return word[:len(word)-1] + "s"
	case strings.HasSuffix(word, "v"):
		return word[:len(word)-1] + "f"
	}
	return word
}
