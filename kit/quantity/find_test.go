package quantity

import (
	"strings"
	"testing"
)

// found marks what Find tells in a text, so that a test shows each span in place.
func found(r Reader, text string) string {
	var b strings.Builder
	end := 0
	for _, f := range r.Find(text) {
		b.WriteString(text[end:f.Start] + "[" + text[f.Start:f.End] + "]")
		end = f.End
	}
	return b.String() + text[end:]
}

func TestFind(t *testing.T) {
	for _, want := range []string{
		"Melt [62 g] of wax at [80–85 °C] for [about 20 min].",
		"Stir in [1 1/2 cups] of water, then [2 lb 3 oz] of soap.",
		"Wait [half an hour], or [an hour and a half] in a cold room.",
		"Cut [3 lengths] of [30 cm]; lay out [30 × 20 cm] of cloth.",
		"Warm it [by 5 °C]. Keep it [below 60 °C] but [at least 40 °C].",
		"Use [6 jars] and [a dozen lids].",
		"Add [2 % of the mixture], [at most 3 %].",
		"Add [2 % of part-1] to it, and [2 % of beeswax-pellets].",
		"Take [2 % of the finished mixture weight] now.",
		"Pour it into the [250-mL] jar ([60 mL] are left).",
		"It costs [£4] or [£12.50]; mix [70 : 100] with [20 mL per g].",
		"Add [2 tsp]. Then [3 tbsp]. Stir.",
		"Add [5 g] to [10 g] of wax; add [5 to 10 g]; [from 5 g to 10 g].",
		"Pour [a cup] of water in, then [half a cup] more.",
		"Cut strips [4 in] wide, to [4 in].",
		"Fill [six teaspoons], [5 heaped tsp] and [½ tsp].",
		"[1,200 g] or [1\u202f200 g] of sand",
	} {
		text := strings.NewReplacer("[", "", "]", "").Replace(want)
		if got := found(Reader{}, text); got != want {
			t.Errorf("%s\nwant %s", got, want)
		}
	}
}

// Numbers that measure nothing.
func TestFindNothing(t *testing.T) {
	for _, text := range []string{
		"In step 3 use a size 24 needle and 2-ply yarn.",
		"See page 4, figure 2 and no. 3 of part 1.",
		"Use a 6-strand cord on the 1st day.",
		"On 2026-03-05 at 10:30 use A4 paper.",
		"Take jar-20, #5, v1.2 and folder/3.",
		"A serial number is 1234567890123456789012345678901 g.",
		"A cup holds the brushes; a second coat follows.",
		"Put it in and stir. I was there at 3.",
		"It moves at 50 m/s.",
		"The code is 0x1F g or 1e3 g.",
		"",
		"Nothing at all.",
	} {
		if got := found(Reader{}, text); got != text {
			t.Errorf("found %s", got)
		}
	}
}

// The amounts are those that Amount reads in the same span.
func TestFindAgreesWithAmount(t *testing.T) {
	text := "Melt 62 g ± 1 g of wax at 80–85 °C for about 20 min, add 2 % of part-1, 1 1/2 cups and 2 lb 3 oz."
	all := Reader{}.Find(text)
	if len(all) != 6 {
		t.Fatalf("%d amounts, want 6", len(all))
	}
	for _, f := range all {
		span := text[f.Start:f.End]
		if a := mustRead(t, Reader{}, span); !a.Equal(f.Amount) || f.Amount.Written != span {
			t.Errorf("%q: found %v, written %q, read alone %v", span, f.Amount, f.Amount.Written, a)
		}
	}
}

// With Counted, only what the kit counts is a count.
func TestFindCounted(t *testing.T) {
	r := Reader{Counted: func(noun string) bool { return noun == "jars" || noun == "jar lids" || noun == "jar" }}
	for _, want := range []string{
		"There are 3 ways to turn two sides.",
		"Wash [6 jars] and [six small jars].",
		"Close with [6 jar lids], in [1 jar].",
	} {
		text := strings.NewReplacer("[", "", "]", "").Replace(want)
		if got := found(r, text); got != want {
			t.Errorf("%s\nwant %s", got, want)
		}
	}
	if all := r.Find("six small jars"); len(all) != 1 || all[0].Amount.Noun != "jars" {
		t.Errorf("six small jars: %+v", all)
	}
}

func TestFindInOtherLanguages(t *testing.T) {
	for _, c := range []struct{ language, want string }{
		{"de", "[500 g] Wachs [höchstens 20 min] bei [80–85 °C] schmelzen, dann [2 EL] Öl."},
		{"fr", "Faire fondre [500 g] de cire pendant [20 minutes], puis [2 cuillères à soupe] d'huile."},
		{"es", "Derrita [500 g] de cera durante [20 minutos]."},
		{"nl", "Smelt [500 g] was gedurende [20 minuten]."},
		{"it", "Sciogli [500 g] di cera per [20 minuti]."},
	} {
		text := strings.NewReplacer("[", "", "]", "").Replace(c.want)
		if got := found(Reader{Language: c.language, Convention: Metric, DecimalComma: true}, text); got != c.want {
			t.Errorf("%s: %s\nwant %s", c.language, got, c.want)
		}
	}
}
