package adopt

import (
	"bytes"
	"os"
	"slices"
	"strings"
	"testing"

	"tallyfold/instructions"
	"tallyfold/kit"
	"tallyfold/kit/load"
	"tallyfold/kit/source"
)

func kitOf(t testing.TB, definition string) *kit.Kit {
	t.Helper()
	k, found := load.Kit(source.NewFile("kit.yaml", []byte(definition)))
	if k == nil {
		t.Fatal(found)
	}
	return k
}

const waxKit = `name: Wax
makes: 2 jars
components:
  wax: {name: Soy wax flakes, packed: 400 g, also called: wax}
  pine: {name: Pine fragrance, packed: 12 mL, density: 0.9 g/mL}
  jar: {name: Jar, packed: 2, container: {brimful: 235 mL}}
household:
  water: {name: Tap water}
tools:
  pan: {name: Saucepan, from: customer, holds: 2 L, also called: pan}
runs:
  - {name: Pine, with: {scent: pine}}
`

func TestUnlinked(t *testing.T) {
	method := `## Melt the wax

> CAUTION: 200 g of wax is hot.

Put 200 g of wax into the pan and stir for 5 minutes. <!-- 100 g of wax -->
Add [10 mL of scent](take:scent). Pour in 300 g of tap water and 20 g of glitter.
Leave it to stand for 2 hours. Use the rest.
`
	found, err := Unlinked(source.NewFile("method.md", []byte(method)), kitOf(t, waxKit))
	if err != nil {
		t.Fatal(err)
	}
	var told []string
	for _, one := range found.Could {
		told = append(told, method[one.Start:one.End]+" → "+one.Destination)
	}
	want := []string{
		"Melt the wax → step:melt-the-wax?in=pan", "200 g of wax → take:wax", "the pan → vessel:pan", "5 minutes → work:",
		"300 g of tap water → take:water", "2 hours → wait:",
	}
	if !slices.Equal(told, want) {
		t.Errorf("proposed:\n%s\nwant:\n%s", strings.Join(told, "\n"), strings.Join(want, "\n"))
	}
	var asked []string
	for _, q := range found.Questions {
		asked = append(asked, method[q.Start:q.End]+": "+q.Asks)
	}
	if all := strings.Join(asked, "\n"); !strings.Contains(all, "glitter") || !strings.Contains(all, "the rest of what?") || len(asked) != 2 {
		t.Errorf("asked:\n%s", all)
	}
}

func TestUnlinkedInAnotherLanguageSaysSo(t *testing.T) {
	if _, err := Unlinked(source.NewFile("method.md", nil), kitOf(t, "language: fr\n"+waxKit)); err == nil {
		t.Error("nothing is said of a language that is not read")
	}
}

// Whatever is typed: nothing fails, and every link that is proposed can be written.
func FuzzUnlinked(f *testing.F) {
	f.Add("## Melt\n\nPut 200 g of wax in.\n")
	f.Add("[200 g of wax](take:wax) and 10 g (½ oz) of wax\n\n> 3 jars\n")
	f.Add("## 5 minutes\n```\n20 g of wax\n")
	k := kitOf(f, waxKit)
	f.Fuzz(func(t *testing.T, text string) {
		found, err := Unlinked(source.NewFile("method.md", []byte(text)), k)
		if err != nil {
			return
		}
		end := 0
		for _, one := range found.Could {
			if one.Start < end || one.End > len(text) || one.Start >= one.End {
				t.Fatalf("%q: %+v", text, one)
			}
			end = one.End
		}
		for _, q := range found.Questions {
			if q.Start > q.End || q.End > len(text) {
				t.Fatalf("%q: %+v", text, q)
			}
		}
	})
}

// A method of 30 steps is gone through on every pause in typing: it should take less than 20 ms.
func BenchmarkUnlinked(b *testing.B) {
	k, _ := instructions.Open(os.DirFS("../../examples/harbour-candles"), "harbour-candles")
	const steps = 30
	text := withoutLinks(k.Method.File.Text).text
	long := bytes.Repeat(append(text, '\n'), (steps+len(k.Method.Steps())-1)/len(k.Method.Steps()))
	for b.Loop() {
		if _, err := Unlinked(source.NewFile("method.md", long), k); err != nil {
			b.Fatal(err)
		}
	}
}
