package render

import (
	"os"
	"strings"
	"testing"

	"tallyfold/kit/colour"
	"tallyfold/templates"
)

func palettesOf(t *testing.T, style string) []string {
	t.Helper()
	all := palette.FindAllString(style, -1)
	if len(all) < 2 {
		t.Fatalf("%d palettes, want one for paper and one for a dark screen", len(all))
	}
	return all[:2]
}

func shippedStyle(t *testing.T) string {
	t.Helper()
	style, err := templates.Shipped().File("book.css")
	if err != nil {
		t.Fatal(err)
	}
	return string(style)
}

func inPalette(t *testing.T, colours, name string) colour.Colour {
	t.Helper()
	c, ok := colourNamed(colours, name)
	if !ok {
		t.Fatalf("no colour %s in %s", name, colours)
	}
	return c
}

// Whatever accent a kit has, it can be read on paper and on a dark screen, and what
// stands on it can be read too (WCAG 2.2, SC 1.4.3).
func TestAnyAccentIsReadable(t *testing.T) {
	for _, chosen := range []string{"#ffd100", "#ffffff", "#000000", "#777777", "#17566b", "#ff0000", "#7f7f7f", "#00ff00"} {
		accent, _ := colour.Read(chosen)
		for i, colours := range palettesOf(t, withAccent(shippedStyle(t), accent)) {
			paper, printed, on := inPalette(t, colours, "paper"), inPalette(t, colours, "accent"), inPalette(t, colours, "on-accent")
			if got := colour.Contrast(printed, paper); got < colour.ForText {
				t.Errorf("%s became %s in palette %d: %.2f : 1 on its ground", chosen, printed, i, got)
			}
			if got := colour.Contrast(on, printed); got < colour.ForText {
				t.Errorf("%s: what stands on it in palette %d has %.2f : 1", chosen, i, got)
			}
			if i == 0 && colour.Contrast(accent, colour.White) >= colour.ForText && printed != accent {
				t.Errorf("%s is readable and was printed as %s", chosen, printed)
			}
		}
	}
}

func TestAccentOfAKitIsPrinted(t *testing.T) {
	folder := copyOf(t, "../examples/harbour-candles")
	folder["kit.yaml"].Data = append(folder["kit.yaml"].Data, "\nlook: {accent: \"#7a1f3d\"}\n"...)
	page, err := bookletIn(t, folder, "harbour-candles").HTML()
	if err != nil || !strings.Contains(string(page), "--accent: #7a1f3d;") {
		t.Errorf("the accent is not in the booklet; %v", err)
	}
	plain, err := bookletIn(t, os.DirFS("../examples/harbour-candles"), "harbour-candles").HTML()
	if err != nil || !strings.Contains(string(plain), "--accent: #17566b;") {
		t.Errorf("a kit without an accent has another than ours; %v", err)
	}
}

// Signal colours and accent as the red-blind and the green-blind see them (Machado and
// others, 2009) and in grey: the word on each stays readable, so that none of them
// rests on its colour; and the colours themselves are told apart by such eyes. In grey
// they need not be: each has its word and, but for NOTICE, its symbol.
func TestSignalsWithoutRedAndGreen(t *testing.T) {
	colours := palettesOf(t, shippedStyle(t))[0]
	ways := map[string]func(colour.Colour) colour.Colour{
		"red-blind":   func(c colour.Colour) colour.Colour { return c.SeenBy(colour.RedBlind) },
		"green-blind": func(c colour.Colour) colour.Colour { return c.SeenBy(colour.GreenBlind) },
		"in grey":     colour.Colour.Grey,
	}
	for way, seen := range ways {
		for i, name := range signals {
			if got := colour.Contrast(seen(inPalette(t, colours, "on-"+name)), seen(inPalette(t, colours, name))); got < colour.ForText {
				t.Errorf("%s: the word on %s has %.2f : 1", way, name, got)
			}
			for _, other := range append([]string{"accent"}, signals[i+1:]...) {
				apart := colour.Difference(seen(inPalette(t, colours, name)), seen(inPalette(t, colours, other)))
				if way != "in grey" && apart < 10 {
					t.Errorf("%s: %s and %s differ by %.0f", way, name, other, apart)
				}
			}
		}
	}
	// The word and the symbol, without which the above would not do.
	for _, name := range signals {
		body := bookletOf(t, "> **"+strings.ToUpper(name)+"** Mind.").body()
		if !strings.Contains(body, "<b>"+strings.ToUpper(name)+"</b>") || strings.Contains(body, "<svg") == (name == "notice") {
			t.Errorf("%s has no word, or not its symbol:\n%s", name, body)
		}
	}
}
