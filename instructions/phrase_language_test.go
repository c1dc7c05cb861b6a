package instructions

import (
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"tallyfold/kit"
	"tallyfold/kit/load"
	"tallyfold/kit/source"
)

// What is meant in each language, as TestPhrases has it for English at length.
func TestPhrasesOfLanguages(t *testing.T) {
	k := read(t, candles)
	k.Method, _ = ReadMethod(source.NewFile("method.md", []byte("## [Try](step:try?in=jug)\n")), k, load.Amounts(k))
	for tag, table := range sentences {
		t.Run(tag, func(t *testing.T) {
			if len(table) < 25 {
				t.Errorf("%d sentences are too few", len(table))
			}
			for _, test := range table {
				text := "## [Try](step:try)\n\n[" + test.text + "](" + test.destination + ")\n"
				translation, found := ReadTranslation(source.NewFile("method."+tag+".md", []byte(text)), k, tag)
				for _, f := range found {
					t.Errorf("%s %q: %s: %s", test.destination, test.text, f.Rule, f.Found)
				}
				operations := translation.Method.Steps()[0].Operations
				if len(operations) != 1 {
					t.Fatalf("%q: %d links", test.text, len(operations))
				}
				got := strings.ReplaceAll(toldPhrase(operations[0].Phrase), "\u2019", "'")
				if diff := cmp.Diff(test.want, got); diff != "" {
					t.Errorf("%s %q: %s", test.destination, test.text, diff)
				}
			}
		})
	}
}

// A height from the rim down, where the inside height of the container is told.
func TestHeightsFromTheRimOfLanguages(t *testing.T) {
	k := read(t, strings.Replace(candles, "headspace: 15 mL}", "headspace: 15 mL, inside: \"cylinder 70 mm wide, 80 mm tall\"}", 1))
	k.Method, _ = ReadMethod(source.NewFile("method.md", []byte("## [Try](step:try?in=jug)\n")), k, load.Amounts(k))
	for _, test := range []struct{ tag, text string }{
		{"en", "each jar to 10 mm below the rim"}, {"fr", "chaque pot jusqu'à 10 mm sous le bord"}, {"fr", "chaque pot à 10 mm du bord"},
		{"de", "jedes Glas bis 10 mm unter den Rand"}, {"es", "cada vaso hasta 10 mm por debajo del borde"}, {"nl", "elke pot tot 10 mm onder de rand"},
		{"it", "ogni vasetto fino a 10 mm sotto il bordo"}, {"it", "ogni vasetto a 10 mm dal bordo"},
	} {
		text := "## [Try](step:try)\n\n[" + test.text + "](fill:jar)\n"
		translation, found := ReadTranslation(source.NewFile("method.xx.md", []byte(text)), k, test.tag)
		phrase := translation.Method.Steps()[0].Operations[0].Phrase
		if len(found) > 0 || !phrase.FromRim || !phrase.To || !phrase.Each || len(phrase.Amounts) != 1 {
			t.Errorf("%s %q: %s, %v", test.tag, test.text, toldPhrase(phrase), toldFindings(found))
		}
	}
}

// A translation calls the packs inside a pack by its own words for them.
func TestLotsOfLanguages(t *testing.T) {
	k := read(t, strings.Replace(candles, "packed: 3 m}", "packed: 2 skeins of 8 m}", 1))
	k.Method, _ = ReadMethod(source.NewFile("method.md", []byte("## [Try](step:try?in=jug)\n")), k, load.Amounts(k))
	for _, test := range []struct{ tag, text, want string }{
		{"fr", "un écheveau", `exactly 8000="un écheveau"`}, {"fr", "la moitié d'un écheveau", `exactly 4000="moitié d'un écheveau"`},
		{"de", "ein Strang", `exactly 8000="ein Strang"`}, {"de", "beide Stränge", `exactly 16000="beide Stränge" count:2`},
		{"es", "una madeja", `exactly 8000="una madeja"`}, {"nl", "een streng", `exactly 8000="een streng"`}, {"it", "due matasse", `exactly 16000="due matasse"`},
	} {
		text := "## [Try](step:try)\n\n[" + test.text + "](use:cord)\n"
		translation, found := ReadTranslation(source.NewFile("method.xx.md", []byte(text)), k, test.tag)
		got := toldPhrase(translation.Method.Steps()[0].Operations[0].Phrase)
		if len(found) > 0 || got != test.want {
			t.Errorf("%s %q: %s, want %s; %v", test.tag, test.text, got, test.want, toldFindings(found))
		}
	}
}

// What a link leaves open is found in every language.
func TestUnreadableAmountsOfLanguages(t *testing.T) {
	k := read(t, candles)
	k.Method, _ = ReadMethod(source.NewFile("method.md", []byte("## [Try](step:try?in=jug)\n")), k, load.Amounts(k))
	for _, test := range []struct{ tag, destination, text string }{
		{"fr", "take:wax", "un peu de cire"}, {"fr", "take:wax", "550 de cire"}, {"fr", "take:wax", "la cire"},
		{"fr", "fill:jar", "chaque pot à 8 mm sous le bord"}, {"fr", "warm:", "doucement"}, {"fr", "again:", "autant qu'il faut"},
		{"fr", "fill:jar", "deux des six pots à 200 g"}, {"fr", "take:wax", "la moitié des 20 g de cire"},
		{"de", "take:wax", "etwas Wachs"}, {"de", "fill:jar", "jedes Glas 8 mm unter dem Rand"}, {"de", "take:wax", "550 vom Wachs"},
		{"de", "fill:jar", "zwei der sechs Gläser auf 200 g"}, {"de", "wait:", "über Nacht"},
		{"es", "take:wax", "un poco de cera"}, {"es", "fill:jar", "cada vaso a 8 mm bajo el borde"}, {"es", "wait:", "toda la noche"},
		{"nl", "take:wax", "een beetje was"}, {"nl", "fill:jar", "elke pot 8 mm onder de rand"},
		{"it", "take:wax", "un po' di cera"}, {"it", "fill:jar", "ogni vasetto a 8 mm sotto l'orlo"},
	} {
		text := "## [Try](step:try)\n\n[" + test.text + "](" + test.destination + ")\n"
		_, found := ReadTranslation(source.NewFile("method."+test.tag+".md", []byte(text)), k, test.tag)
		if len(found) != 1 || found[0].Rule != unreadableAmount {
			t.Errorf("%s %q: %v", test.tag, test.text, toldFindings(found))
		}
	}
}

// Tools and containers are named in the cases and plurals of a language.
func TestMentionsOfLanguages(t *testing.T) {
	k := read(t, candles)
	k.Method, _ = ReadMethod(source.NewFile("method.md", []byte("## [Try](step:try)\n")), k, load.Amounts(k))
	for _, test := range []struct{ tag, text, want string }{
		{"fr", "Posez les pots en verre près du pichet.", "jar:pots en verre jug:pichet"},
		{"fr", "L’eau du pot et la cuillère en bois", "jar:pot ladle:cuillère en bois"},
		{"de", "Stell die Gläser neben die Kanne.", "jar:Gläser jug:Kanne"},
		{"de", "Rühr mit dem hölzernen Löffel in der Schmelzkanne.", "ladle:hölzernen Löffel jug:Schmelzkanne"},
		{"es", "Pon los vasos junto a la jarra.", "jar:vasos jug:jarra"},
		{"nl", "Zet de potten naast de kan, met de houten lepels.", "jar:potten jug:kan ladle:houten lepels"},
		{"it", "Metti i vasetti accanto alla caraffa.", "jar:vasetti jug:caraffa"},
		{"it", "l'acqua del vasetto", "jar:vasetto"},
	} {
		translation, _ := ReadTranslation(source.NewFile("method.xx.md", []byte("## [Try](step:try)\n\n"+test.text+"\n")), k, test.tag)
		var told []string
		for _, m := range translation.Method.Steps()[0].Mentions {
			told = append(told, m.Key+":"+m.Span.Text())
		}
		if got := strings.Join(told, " "); got != test.want {
			t.Errorf("%s %q: %s, want %s", test.tag, test.text, got, test.want)
		}
	}
}

// The signal words of ISO 3864-2 and ANSI Z535.6 in each language; from memory.
func TestSignalWordsOfLanguages(t *testing.T) {
	k := read(t, candles)
	k.Method, _ = ReadMethod(source.NewFile("method.md", []byte("## [Try](step:try)\n")), k, load.Amounts(k))
	for _, test := range []struct {
		tag, text string
		want      kit.Signal
	}{
		{"fr", "DANGER : brûlant.", kit.Danger}, {"fr", "AVERTISSEMENT : brûlant.", kit.Warning}, {"fr", "Attention\u00a0: chaud.", kit.CautionWord},
		{"fr", "Attention à la vapeur.", ""}, {"de", "GEFAHR: heiß.", kit.Danger}, {"de", "Warnung: heiß.", kit.Warning},
		{"de", "VORSICHT: heiß.", kit.CautionWord}, {"de", "HINWEIS: Deck den Tisch ab.", kit.Notice}, {"de", "CAUTION: heiß.", kit.CautionWord},
		{"es", "PELIGRO: quema.", kit.Danger}, {"es", "ADVERTENCIA: quema.", kit.Warning}, {"es", "PRECAUCIÓN: quema.", kit.CautionWord},
		{"nl", "WAARSCHUWING: heet.", kit.Warning}, {"nl", "LET OP: heet.", kit.Notice}, {"it", "ATTENZIONE: scotta.", kit.CautionWord},
		{"it", "AVVERTENZA: scotta.", kit.Warning},
	} {
		translation, _ := ReadTranslation(source.NewFile("method.xx.md", []byte("## [Try](step:try)\n\n> "+test.text+"\n")), k, test.tag)
		var got kit.Signal
		for _, c := range translation.Method.Steps()[0].Cautions {
			got = c.Signal
		}
		if got != test.want {
			t.Errorf("%s %q: %q, want %q", test.tag, test.text, got, test.want)
		}
	}
}

// Every phrase of a language is cut into words as the text of a link is, else it
// would never be found.
func TestPhrasesAreCutAsTextsAre(t *testing.T) {
	for _, l := range languages {
		for _, all := range []phrases{l.articles, l.indefinite, l.of, l.ofThe, l.ofThem, l.each, l.every, l.per, l.inAll, l.about,
			l.aboutBehind, l.exactly, l.to, l.upTo, l.fillTo, l.by, l.byHead, l.both, l.times, l.more, l.again, l.all, l.whole, l.rest, l.notAll, l.halves,
			l.notHalf, l.last, l.second, l.remaining, l.lotsOf, l.ordinals, l.rims, l.below, l.edge, l.labels, l.joins} {
			for _, phrase := range all.all {
				text := strings.ReplaceAll(strings.Join(phrase, " "), "' ", "'")
				var words []string
				for _, word := range plainWords(text+" x", 0, len(text), l) {
					words = append(words, word.text)
				}
				if diff := cmp.Diff(phrase, words); diff != "" {
					t.Errorf("%s %q: %s", l.tag, text, diff)
				}
			}
		}
	}
}
