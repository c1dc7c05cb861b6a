package instructions

import (
	"os"
	"path/filepath"
	"reflect"
	"testing"
	"time"

	"tallyfold/kit"
	"tallyfold/kit/diag"
	"tallyfold/kit/load"
	"tallyfold/kit/source"
)

// FuzzMethod reads any text as a method of the sample kit: it never fails, every
// place lies inside the file, the same text gives the same findings, and all in
// bounded time. The methods of the example kits are its seeds.
func FuzzMethod(f *testing.F) {
	seeds, err := filepath.Glob("../examples/*/method.md")
	if err != nil || len(seeds) == 0 {
		f.Fatalf("there are no seeds: %v", err)
	}
	for _, seed := range seeds {
		text, err := os.ReadFile(seed)
		if err != nil {
			f.Fatal(err)
		}
		f.Add(text)
	}
	for _, text := range []string{
		"## [Stir](step:stir?in=pan)\n\n[half of the powder](take:powder?into=cup)\n",
		"[720 g of wax] (take:wax)", "(take:powder)", "[x](take:powder", "## [a](step:a)\r\n> CAUTION: hot\r\n",
		"## A\n\n[the remaining two to 180 g](fill:jar) [3 × 10 minutes](work:) [two of the six jars](fill:jar)\n",
		"## A\n\n> DANGER: hot\n> > - [570&nbsp;g <!-- x --> (1 lb 5 oz)](take:water)\n\n<div>\n<!-- a\n\n-->",
		"\ufeffA pan\r\n===\r## B\r| a |\n|-|\n| [half of it](move:cup?into=pan) |",
		"[a][b]\n\n[b]: take:powder", "`[1 g](take:powder)`", "<b>[1 g](take:powder)</b>",
	} {
		f.Add([]byte(text))
	}
	definition := source.NewFile("kit.yaml", []byte(gels))
	f.Fuzz(func(t *testing.T, text []byte) {
		if len(text) > 8<<10 {
			return // longer texts only take longer
		}
		k, _ := load.Kit(definition)
		start := time.Now()
		method, found := ReadMethod(source.NewFile("method.md", text), k, load.Amounts(k))
		if took := time.Since(start); took > 2*time.Second {
			t.Fatalf("%d bytes took %v", len(text), took)
		}
		inside(t, text, method, found)
		again, foundAgain := ReadMethod(source.NewFile("method.md", text), k, load.Amounts(k))
		if len(again.Steps()) != len(method.Steps()) || !reflect.DeepEqual(toldFindings(found), toldFindings(foundAgain)) {
			t.Fatal("the same text was read in two ways")
		}
		k.Method = method
		_, inTrouble := ReadTrouble(source.NewFile("method.md", text), k, load.Amounts(k))
		_, inWords := ReadWords(source.NewFile("method.md", text), k, load.Amounts(k))
		inside(t, text, kit.Method{}, append(inTrouble, inWords...))
	})
}

// inside holds every place of a method against its text.
func inside(t *testing.T, text []byte, method kit.Method, found diag.List) {
	t.Helper()
	within := func(what string, s source.Span) {
		if s.Known() && s.File.Name == "method.md" && (s.Start < 0 || s.End > len(text) || s.Start > s.End) {
			t.Fatalf("%s stands at %d to %d of %d bytes", what, s.Start, s.End, len(text))
		}
	}
	for _, f := range found {
		within(f.Rule, f.Where)
	}
	for _, step := range method.Steps() {
		within("a step", step.Span)
		within("a body", step.Body)
		for _, o := range step.Operations {
			within("a link", o.Span)
			within("a destination", o.TargetSpan)
			if !o.Span.Contains(o.TextSpan) {
				t.Fatalf("the text %q stands outside its link %q", o.TextSpan.Text(), o.Span.Text())
			}
			if len(o.Phrase.Amounts) != len(o.Phrase.AmountSpans) {
				t.Fatal("there are not as many places as amounts")
			}
			for _, s := range o.Phrase.AmountSpans {
				if !o.TextSpan.Contains(s) {
					t.Fatalf("the amount %q stands outside its text %q", s.Text(), o.TextSpan.Text())
				}
			}
			if o.Phrase.Count < 0 || o.Phrase.Count > maxTimes || o.Phrase.EachCount < 0 || o.Phrase.EachCount > maxTimes {
				t.Fatalf("%d times, each of %d", o.Phrase.Count, o.Phrase.EachCount)
			}
		}
		for _, c := range step.Cautions {
			within("a caution", c.Span)
		}
		for _, m := range step.Mentions {
			within("a mention", m.Span)
		}
		for _, p := range step.Prose {
			if p.Span.Text() != p.Text {
				t.Fatalf("prose %q stands where %q is", p.Text, p.Span.Text())
			}
		}
	}
}

func BenchmarkMethod(b *testing.B) {
	text, err := os.ReadFile("../examples/harbour-candles/method.md")
	if err != nil {
		b.Fatal(err)
	}
	definition, err := os.ReadFile("../examples/harbour-candles/kit.yaml")
	if err != nil {
		b.Fatal(err)
	}
	k, _ := load.Kit(source.NewFile("kit.yaml", definition))
	for b.Loop() {
		ReadMethod(source.NewFile("method.md", text), k, load.Amounts(k))
	}
}

// FuzzPhrases reads any text of a link in every language whose words are read: it
// never fails, its places lie inside the text, and it reads the same twice.
func FuzzPhrases(f *testing.F) {
	for _, table := range sentences {
		for _, one := range table {
			f.Add(one.destination, one.text)
		}
	}
	f.Add("fill:jar", "l'l'l'd'demi-demi-' qu’")
	f.Add("take:wax", "la la la de de d' d' du du un un tiers tiers")
	definition := source.NewFile("kit.yaml", []byte(candles))
	f.Fuzz(func(t *testing.T, destination, text string) {
		if len(text)+len(destination) > 2<<10 {
			return // longer texts only take longer
		}
		k, _ := load.Kit(definition)
		k.Method, _ = ReadMethod(source.NewFile("method.md", []byte("## [Try](step:try?in=jug)\n")), k, load.Amounts(k))
		for _, l := range languages {
			file := []byte("## [Try](step:try)\n\n[" + text + "](" + destination + ")\n")
			start := time.Now()
			translation, found := ReadTranslation(source.NewFile("method.md", file), k, l.tag)
			if took := time.Since(start); took > 2*time.Second {
				t.Fatalf("%s: %d bytes took %v", l.tag, len(file), took)
			}
			if translation == nil {
				continue
			}
			inside(t, file, translation.Method, found)
			again, _ := ReadTranslation(source.NewFile("method.md", file), k, l.tag)
			if toldMethod(translation.Method, nil) != toldMethod(again.Method, nil) {
				t.Fatalf("%s: the same text was read in two ways", l.tag)
			}
		}
	})
}
