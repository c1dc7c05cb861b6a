package quantity

import (
	"strings"
	"testing"
)

// Numerals as any grammar of the language lists them, for the numbers where it is
// irregular.
var numerals = map[string]map[string]int64{
	"en": {"zero": 0, "one": 1, "twelve": 12, "twenty": 20, "twenty-one": 21, "forty": 40, "forty four": 44, "ninety-nine": 99,
		"one hundred": 100, "a hundred": 100, "three hundred": 300, "a thousand": 1000},
	"fr": {"un": 1, "une": 1, "seize": 16, "dix-sept": 17, "vingt et un": 21, "vingt-deux": 22, "soixante-dix": 70,
		"soixante et onze": 71, "soixante-dix-sept": 77, "quatre-vingts": 80, "quatre-vingt-un": 81, "quatre-vingt-onze": 91,
		"quatre-vingt-dix-neuf": 99, "septante-deux": 72, "nonante": 90, "cent": 100, "deux cents": 200, "mille": 1000},
	"de": {"zwei": 2, "zwölf": 12, "sechzehn": 16, "siebzehn": 17, "einundzwanzig": 21, "dreißig": 30, "dreissig": 30,
		"sechsundsechzig": 66, "neunundneunzig": 99, "hundert": 100, "zweihundert": 200, "tausend": 1000},
	"es": {"dos": 2, "dieciséis": 16, "veintiuno": 21, "veintidós": 22, "treinta y uno": 31, "noventa y nueve": 99, "cien": 100,
		"doscientos": 200, "quinientos": 500, "setecientos": 700, "novecientos": 900, "mil": 1000},
	"nl": {"twee": 2, "veertien": 14, "eenentwintig": 21, "tweeëntwintig": 22, "drieëndertig": 33, "achtenveertig": 48,
		"tachtig": 80, "honderd": 100, "duizend": 1000},
	"it": {"due": 2, "diciassette": 17, "ventuno": 21, "ventitré": 23, "ventotto": 28, "trentuno": 31, "novantanove": 99,
		"cento": 100, "duecento": 200, "mille": 1000},
}

func TestNumerals(t *testing.T) {
	for tag, words := range numerals {
		for word, want := range words {
			if a, err := ReaderFor(tag, Metric).Amount(word + " g"); err != nil || !a.Nominal.Equal(Whole(want)) {
				t.Errorf("%s %q: %v, %v, want %d", tag, word, a.Nominal, err, want)
			}
		}
	}
}

// From nought to a hundred every language has a word for each number and none for two.
func TestNumeralsAreComplete(t *testing.T) {
	for _, l := range languages {
		values := map[string]int64{}
		seen := map[int64]bool{}
		l.numbers(func(n int64, words ...string) {
			seen[n] = true
			for _, word := range words {
				if other, twice := values[word]; twice && other != n {
					t.Errorf("%s: %q is %d and %d", l.tag, word, other, n)
				}
				values[word] = n
			}
		})
		for n := int64(0); n <= 100; n++ {
			if !seen[n] {
				t.Errorf("%s has no word for %d", l.tag, n)
			}
		}
	}
}

func TestWordsOfLanguages(t *testing.T) {
	for _, c := range []struct{ tag, text, want string }{
		{"fr", "1,5 kg", "1500 g"},
		{"fr", "1\u202f500 g", "1500 g"},
		{"fr", "une demi-heure", "1800 s"},
		{"fr", "une heure et demie", "5400 s"},
		{"fr", "trois quarts d'heure", "2700 s"},
		{"fr", "1 h 20", "4800 s"},
		{"fr", "une douzaine de bocaux", "12"},
		{"fr", "2 c. à soupe", "30 mL"},
		{"fr", "2 cuillères à soupe rases", "30 mL"},
		{"fr", "une demi-tasse", "125 mL"},
		{"fr", "un quart de litre", "250 mL"},
		{"fr", "au plus 2 % du mélange", "1/50 of mélange"},
		{"fr", "jusqu'à 5 g", "5 g"},
		{"fr", "environ 20 minutes", "1200 s"},
		{"fr", "de 30 à 40 g", "35 g"},
		{"fr", "entre 30 et 40 g", "35 g"},
		{"de", "1,5 kg", "1500 g"},
		{"de", "1.500 g", "1500 g"},
		{"de", "eine halbe Stunde", "1800 s"},
		{"de", "anderthalb Stunden", "5400 s"},
		{"de", "ein Dutzend Gläser", "12"},
		{"de", "2 gehäufte EL", "30 mL"},
		{"de", "zwei Teelöffel", "10 mL"},
		{"de", "eine halbe Tasse", "125 mL"},
		{"de", "höchstens 2 % der Mischung", "1/50 of Mischung"},
		{"de", "bis zu 5 g", "5 g"},
		{"de", "ca. 20 Min.", "1200 s"},
		{"de", "30 bis 40 g", "35 g"},
		{"de", "um 5 °C", "5 °C"},
		{"es", "1,5 kg", "1500 g"},
		{"es", "media hora", "1800 s"},
		{"es", "una hora y media", "5400 s"},
		{"es", "una docena de frascos", "12"},
		{"es", "2 cucharadas colmadas", "30 mL"},
		{"es", "un cuarto de litro", "250 mL"},
		{"es", "como máximo 2 % de la mezcla", "1/50 of mezcla"},
		{"es", "unos 20 minutos", "1200 s"},
		{"es", "entre 30 y 40 g", "35 g"},
		{"nl", "1,5 kg", "1500 g"},
		{"nl", "een half uur", "1800 s"},
		{"nl", "anderhalf uur", "5400 s"},
		{"nl", "een dozijn potten", "12"},
		{"nl", "2 afgestreken eetlepels", "30 mL"},
		{"nl", "hoogstens 2 % van het mengsel", "1/50 of mengsel"},
		{"nl", "ten minste 5 g", "5 g"},
		{"nl", "30 tot 40 g", "35 g"},
		{"it", "1,5 kg", "1500 g"},
		{"it", "mezz'ora", "1800 s"},
		{"it", "un'ora e mezza", "5400 s"},
		{"it", "una dozzina di vasetti", "12"},
		{"it", "2 cucchiai colmi", "30 mL"},
		{"it", "un quarto di litro", "250 mL"},
		{"it", "al massimo 2 % della miscela", "1/50 of miscela"},
		{"it", "tra 30 e 40 g", "35 g"},
		{"fr", "at most 2 %", "1/50"}, // English is understood in a field, whatever the language
		{"de", "up to 5 cups", "1250 mL"},
	} {
		a, err := ReaderFor(c.tag, Metric).Amount(c.text)
		base := map[Dimension]string{Mass: " g", Volume: " mL", Duration: " s", TemperatureDifference: " °C"}[a.Dimension]
		got := fractionOrWhole(a.Nominal) + base
		if a.Of != "" {
			got += " of " + a.Of
		}
		if err != nil || got != c.want {
			t.Errorf("%s %q: %s, %v, want %s", c.tag, c.text, got, err, c.want)
		}
	}
}

func fractionOrWhole(n Number) string {
	if n.IsWhole() {
		return n.String()
	}
	return fractionText(n)
}

func TestDecimalCommaIn(t *testing.T) {
	for tag, want := range map[string]bool{
		"en": false, "en-GB": false, "fr": true, "fr-CA": true, "de": true, "de-CH": false, "es": true, "es-MX": false, "": false,
		"DE": true, "xx": false,
	} {
		if got := DecimalCommaIn(tag); got != want {
			t.Errorf("decimal comma in %q: %v", tag, got)
		}
	}
}

// Every language can tell every bound, every unit it has a word for, and every fill,
// and reads what it tells.
func TestLanguagesAreComplete(t *testing.T) {
	for _, l := range languages {
		for bound := AtMost; bound <= About; bound++ {
			if len(l.bounds[bound]) == 0 {
				t.Errorf("%s cannot say %q", l.tag, bound)
			}
		}
		for fill := range english.fills {
			if len(l.fills[fill]) == 0 {
				t.Errorf("%s cannot say %q", l.tag, fill)
			}
		}
		for symbol, names := range l.units {
			if rowOf(symbol) < 0 || len(names) < 2 {
				t.Errorf("%s names the unit %q %v", l.tag, symbol, names)
			}
			for _, name := range names {
				unit, _, ok := ReaderFor(l.tag, Australian).parser(strings.TrimPrefix(name, "="), false).tableUnit(0)
				if !ok || unit.Symbol != symbol {
					t.Errorf("%s: %q is %q, want %q", l.tag, name, unit.Symbol, symbol)
				}
			}
		}
	}
}
