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
			for i, s := range o.Phrase.AmountSpans {
				within("an amount", s)
				if len(o.Phrase.Amounts) <= i {
					t.Fatal("there are more places than amounts")
				}
			}
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
