package render

import (
	"os"
	"regexp"
	"strings"
	"testing"

	"tallyfold/instructions"
	"tallyfold/kit/ledger"
	"tallyfold/templates"
)

func balanceOf(t *testing.T, name string) string {
	t.Helper()
	k, _ := instructions.Open(os.DirFS("../examples/"+name), name)
	page, err := BalancePage(k, ledger.Follow(k), templates.Shipped())
	if err != nil {
		t.Fatal(err)
	}
	return string(page)
}

// The first example, reckoned by hand from its method: a run takes 550 g of wax, 2 g of
// tint and 34 g of fragrance, fills 3 × 190 g and keeps what is left but for the 6 g that
// cling to the jug: 586 − 570 − 6 = 10 g. Twice 550 g leave 20 g of 1.12 kg.
func TestBalancePageOfAnExample(t *testing.T) {
	page := balanceOf(t, "harbour-candles")
	checkPage(t, page)
	for _, told := range []string{
		"A, Soy wax flakes, 1.1 kg of 1.12 kg, 20 g left", "550 g from Soy wax flakes to Pouring jug", "34 g from Pine fragrance to Pouring jug",
		"570 g from Pouring jug to Glass jar with lid", "10 g from Pouring jug to kept", "6 g from Pouring jug to washed out", "From packs to pieces: Orange Dock",
	} {
		if !strings.Contains(strings.ReplaceAll(page, " ", " "), strings.ReplaceAll(told, " ", " ")) {
			t.Errorf("the page does not tell %q", told)
		}
	}
	if got := strings.Count(page, `<svg class="figure bars"`); got != 1 {
		t.Errorf("%d drawings of bars", got)
	}
	if got := strings.Count(page, `<svg class="figure flow"`); got != 2 {
		t.Errorf("%d flows, want one for each run that weighs something", got)
	}
	// A pack stands where streams begin, and not once more where they end.
	for _, flow := range regexp.MustCompile(`(?s)<svg class="figure flow".*?</svg>`).FindAllString(page, -1) {
		if got := strings.Count(flow, ">Soy wax flakes</text>"); got != 1 {
			t.Errorf("the wax stands in a flow %d times", got)
		}
	}
}

// Whatever is poured from one place to another and back, as much leaves the page as came
// onto it: nothing is drawn that the ledger does not have.
func TestFlowKeepsWhatItGets(t *testing.T) {
	for _, folder := range exampleFolders(t) {
		k, _ := instructions.Open(os.DirFS(folder), folder)
		l := ledger.Follow(k)
		for _, run := range passesOf(k, l) {
			g := &gathering{kit: k, numbers: map[string]int{}, packs: map[int]bool{}}
			for _, e := range l.Entries {
				if e.Run == run {
					g.add(e)
				}
			}
			g.stayBehind()
			in, out := 0.0, 0.0
			places := g.places()
			for _, s := range g.streams {
				if places[s.from].Begins {
					in += s.grams.Float()
				}
				if places[s.to].Ends {
					out += s.grams.Float()
				}
			}
			if in < out-1 || in > out+1 {
				t.Errorf("%s, %s: %.1f g come in and %.1f g go out", folder, run.Name.Value, in, out)
			}
		}
	}
}
