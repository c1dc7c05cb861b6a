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

// What is proposed and what is asked, a form of words each. The forms are common practice and
// those of README.md.
func TestUnlinkedForms(t *testing.T) {
	k := kitOf(t, `name: Forms
makes: 3 jars
components:
  wax: {name: Soy wax flakes, packed: 900 g}
  pine: {name: Pine fragrance, packed: 12 mL, density: 0.9 g/mL}
  rose: {name: Rose fragrance, packed: 12 mL, density: 0.9 g/mL}
  jar: {name: Glass jar with lid, packed: 3, container: {brimful: 235 mL}}
  wick: {name: Cotton wick, packed: 3, insert: {mass: 4 g, volume: 1.5 mL, floats: no}}
  label: {name: Paper label, packed: 4}
  yarn: {name: Wool yarn, packed: 2 skeins of 50 g}
  tie: {name: Tying thread, packed: 2 m}
household:
  water: {name: Tap water}
  towel: {name: Kitchen paper, amount: 6 sheets}
tools:
  jug: {name: Pouring jug, from: box, holds: 1 L, residue: 6 g}
  pan: {name: Saucepan, from: customer, holds: 2 L}
  measuring-cup: {name: Measuring cup, from: customer}
  cup: {name: Tin cup, from: customer}
  scoop: {name: Wooden scoop, from: box}
  spoon: {name: Spoon, from: box}
  bowl: {name: Mixing bowl, from: customer, holds: 500 mL, residue: 2 g}
runs:
  - {name: Pine, with: {scent: pine}}
  - {name: Rose, with: {scent: rose}}
`)
	for _, test := range []struct{ text, want string }{
		{"Pour 300 g of water into [the pan](tool:pan).", "300 g of water → take:water?into=pan"},
		{"Pour 300 g of water into [the jug](vessel:jug).", "300 g of water → take:water"},
		{"Tip out one of the paper labels.", "one of the paper labels → use:label"},
		{"Pour in 300 g of tap water. It should reach 65 °C.", "300 g of tap water → take:water; 65 °C → warm:"},
		{"Stay there for 5 minutes. Hands-on time is 20 minutes.", "5 minutes → work:; 20 minutes → work:"},
		{"Use a measuring cup.", "a measuring cup → tool:measuring-cup"},
		{"Spoon it with the scoop.", "the scoop → tool:scoop"},
		{"Put it into the jug. Wipe the jug.", "the jug → vessel:jug; the jug → clean:jug"},
		{"Warm [the jug](vessel:jug) and lift the jug.", ""},
		{"Fill each of 3 jars to 190 g (6.7 oz weight).", "each of 3 jars to 190 g (6.7 oz weight) → fill:jar"},
		{"Pour 190 g into each jar.", "190 g into each jar → fill:jar"},
		{"Share all of it out over the 3 jars.", "all of it out over the 3 jars → fill:jar"},
		{"Fill the jars with 20 g of wax.", "20 g of wax → take:wax"},
		{"Fill the jars up to the line.", ""},
		{"Stir in all of the fragrance.", "all of the fragrance → take:scent"},
		{"Weigh in 550 g (1 lb 3 1/2 oz) of wax flakes.", "550 g (1 lb 3 1/2 oz) of wax flakes → take:wax"},
		{"Go on with the same 550 g of wax.", "550 g of wax → same:wax"},
		{"Stand one wick in each jar.", "one wick → place:wick?into=jar"},
		{"Stick on 3 paper labels.", "3 paper labels → use:label"},
		{"There is one label to spare.", ""},
		{"Press both skeins under.", "both skeins → take:yarn"},
		{"Lay out 2 sheets of kitchen paper.", "2 sheets of kitchen paper → use:towel"},
		{"Cut 4 lengths of 40 cm of the tying thread.", "4 lengths of 40 cm of the tying thread → use:tie"},
		{"Fold a label, 105 mm from the edge.", ""},
		{"Leave it in a cool, dark place for 3 days.", "3 days → wait:"},
		{"Leave it until it is at 60 °C.", "at 60 °C → cool:"},
		{"Warm the wax to 75 °C.", "to 75 °C → warm:"},
		{"Let it rest until it has cooled to 65 °C.", "to 65 °C → cool:"},
		{"Keep it there for 45 minutes, turning the wool.", "45 minutes → work:"},
		{"Lay it aside for 2 hours.", "2 hours → wait:"},
		{"Stir every 10 minutes.", ""},
		{"Stir in 40 g of wax and wait 5 minutes.", "40 g of wax → take:wax; 5 minutes → wait:"},
		{"Stir, then wait for another 10 minutes.", "10 minutes → wait:"},

		{"Fold one label. Make two more.", "one label → use:label; Make two more → again:"},
		{"Repeat this four more times.", "four more times → again:"},
		{"Do the same with the other two jars.", "Do the same with the other two → again:"},
		{"Add two more.", ""},
		{"Each needs two more.", ""},

		{"Pour it into the jug. Wash the jug, and the bowl.", "the jug → vessel:jug; the jug → clean:jug; the bowl → vessel:bowl"},
		{"Pour it into [the bowl](vessel:bowl). Wash the bowl and the spoon in warm water.", "the bowl → clean:bowl; the spoon → tool:spoon"},
		{"Wash your hands.", ""},

		{"Keep the rest for the next batch.", "the rest → left:jug?as=kept"},
		{"Throw away whatever is left in [the bowl](vessel:bowl).", "whatever is left → left:bowl?as=discarded"},
		{"Throw away the rest of the wax.", "the rest of the wax → left:wax?as=discarded"},
		{"The wax that is left is yours.", "The wax that is left → left:wax?as=kept"},
		{"What is left goes down the drain.", "What is left → left:jug?as=poured-away"},
		{"What is left weighs 20 g.", ""},
		{"Keep it for a second making.", "Keep it → left:jug?as=kept"},
		{"Keep it warm.", ""},
		{"Keep it there for 45 minutes.", "45 minutes → wait:"},
		{"Pour off the water.", "Pour off the water → left:jug?as=poured-away"},
		{"Pour the alum water down the drain.", "Pour the alum water → left:jug?as=poured-away"},
		{"Pour it away.", "Pour it away → left:jug?as=poured-away"},
		{"Pour the wax off the spoon.", "the spoon → tool:spoon"},
		{"Pour the wax into the jars.", ""},

		{"Tip the contents of [the bowl](vessel:bowl) into the jug.", "the jug → vessel:jug"},
		{"Tip the contents of the bowl into the jug.", "the contents of the bowl → move:bowl; the jug → vessel:jug"},
		{"Put it in [the bowl](vessel:bowl). Scrape all of it into the jug.", "all of it → move:bowl; the jug → vessel:jug"},
		{"Scrape all of it from the jug into the bowl.", "all of it → move:jug?into=bowl; the jug → vessel:jug; the bowl → vessel:bowl"},
		{"Empty the jug into [the bowl](vessel:bowl).", "the jug → move:jug?into=bowl"},
		{"Put it in [the bowl](vessel:bowl). Pour all of it into the jars.", ""},

		{"Leave it [2 hours](wait:set). When the 2 hours are up, lift it.", "the 2 hours are up → after:set"},
		{"Leave it [1 day](wait:drying). Once the label has dried, lift it.", "the label has dried → after:drying"},
		{"Leave it [1 day](wait:drying). When the water boils, lift it.", ""},
		{"All of the water in the wool dries off.", ""},
		{"# Another part\n\nYou will warm the wax to 75 °C with the scoop.", ""},
		{"> CAUTION: It is hot.\nWeigh in 550 g of wax.", ""},
		{"See [200 g of wax](https://kits.example/wax) and [20 g of wax][1].", ""},
		{"Type `200 g of wax` <!-- 20 g of wax --> ![the jug](picture:jug.jpg).", ""},
	} {
		method := "## [Do it](step:do?in=jug)\n\n" + test.text + "\n"
		found, err := Unlinked(source.NewFile("method.md", []byte(method)), k)
		if err != nil {
			t.Fatal(err)
		}
		var told []string
		for _, one := range found.Could {
			told = append(told, method[one.Start:one.End]+" → "+one.Destination)
		}
		if got := strings.Join(told, "; "); got != test.want {
			t.Errorf("%s\n\tproposed: %s\n\twant:     %s", test.text, got, test.want)
		}
	}
}

// A link that is taken is the only change of the text, and is read as it was meant; so is
// each other reading that is offered.
func TestEachLinkIsReadAsMeant(t *testing.T) {
	examples := kitsOf(t, "../../examples")
	tried := 0
	for name, k := range examples {
		plain := withoutLinks(k.Method.File.Text).text
		found, err := Unlinked(source.NewFile("method.md", plain), k)
		if err != nil {
			t.Fatal(err)
		}
		for _, one := range found.Could {
			for _, way := range append([]Alternative{{Destination: one.Destination}}, one.Alternatives...) {
				if one.Destination = way.Destination; way.Destination == "" {
					continue
				}
				tried++
				if wrong := notAsMeant(plain, one, k); wrong != "" {
					t.Errorf("%s: “%s” → %s: %s", name, plain[one.Start:one.End], one.Destination, wrong)
				}
			}
		}
	}
	if tried < 200 {
		t.Errorf("only %d links were tried", tried)
	}
}

// notAsMeant says what is wrong with a link that was written, "" for nothing.
func notAsMeant(text []byte, one Could, k *kit.Kit) string {
	linked, _ := with(text, []Could{one})
	words := string(text[one.Start:one.End])
	if want := string(text[:one.Start]) + "[" + words + "](" + one.Destination + ")" + string(text[one.End:]); string(linked) != want {
		return "other bytes were changed"
	}
	read, found := instructions.ReadMethod(source.NewFile("method.md", linked), k, load.Amounts(k))
	if one.Kind == StepStart {
		for _, step := range read.Steps() {
			if step.Named && strings.HasPrefix(one.Destination, "step:"+step.ID) {
				return ""
			}
		}
		return "no step has this name"
	}
	o := operationsAt(read)[one.Start]
	switch {
	case o == nil:
		return "no link is read there"
	case o.Does() != one.Destination:
		return "it is read as " + o.Does()
	case one.Kind != Cue && blamed(found, o):
		return "its words are not understood"
	}
	return ""
}

// Whatever is typed: nothing fails, every link that is proposed lies in the text, before the
// next one, and is read as it is meant when it is written alone.
func FuzzUnlinked(f *testing.F) {
	for _, name := range []string{"drawer-sachets", "harbour-candles"} {
		text, err := os.ReadFile("../../examples/" + name + "/method.md")
		if err != nil {
			f.Fatal(err)
		}
		f.Add(string(text))
		f.Add(string(withoutLinks(text).text))
	}
	f.Add("## Melt\n\nPut 200 g of wax in.\n")
	f.Add("[200 g of wax](take:wax) and 10 g (½ oz) of wax\n\n> 3 jars\n")
	f.Add("## 5 minutes\n```\n20 g of wax\n")
	f.Add("## A\n\nFill each of 2 jars to 190 g (6.7 oz) and both jars with the pan\r\n[x]: take:wax\n")
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
		if n := len(found.Could); n > 0 {
			one := found.Could[len(text)%n]
			if wrong := notAsMeant([]byte(text), one, k); wrong != "" {
				t.Fatalf("%q: “%s” → %s: %s", text, text[one.Start:one.End], one.Destination, wrong)
			}
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
	text := append(withoutLinks(k.Method.File.Text).text, '\n')
	pieces := bytes.SplitAfterN(bytes.Repeat(text, steps), []byte("\n## "), steps+1)
	long := bytes.Join(pieces[:steps], nil)
	for b.Loop() {
		if _, err := Unlinked(source.NewFile("method.md", long), k); err != nil {
			b.Fatal(err)
		}
	}
}
