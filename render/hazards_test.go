package render

import (
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"tallyfold/instructions"
	"tallyfold/kit/handbook"
	"tallyfold/kit/hazard"
	"tallyfold/kit/ledger"
	"tallyfold/templates"
)

// The caution of the booklet says in English what the handbook says, and all that a row
// names is there in every language.
func TestHazardWords(t *testing.T) {
	for _, language := range templates.Shipped().Languages() {
		words, err := templates.Shipped().Words(language)
		if err != nil {
			t.Fatal(err)
		}
		for _, h := range handbook.Hazards() {
			text := words.Say(hazardWord + strings.ToLower(h.ID))
			if want := strings.TrimSpace(h.Happens + " " + h.Avoid); language == "en" && text != want {
				t.Errorf("%s: the booklet says %q, the handbook %q", h.ID, text, want)
			}
			for _, name := range []string{h.Wear, h.Place, h.Company, h.Aid} {
				if name != "" && strings.HasPrefix(words.Say(beforeWord+name), "[") {
					t.Errorf("%s: %s asks for %q, for which there is no word", language, h.ID, name)
				}
			}
			if strings.HasPrefix(text, "[") {
				t.Errorf("%s: there is no caution of %s", language, h.ID)
			}
		}
	}
}

// The booklet's own cautions stand before the paragraph that they guard, and never behind what
// they warn of (ANSI Z535.6, by topic, from memory). "!" stands for one, with its hazards.
func TestOwnCautionsStandBesideTheirActions(t *testing.T) {
	const (
		warm = "Warm it [to 75 °C](warm:)."
		cut  = "Cut it with [the knife](tool:knife)."
		fill = "Put [all of the soda](take:soda?into=pan) in."
	)
	for _, c := range []struct{ why, text, want string }{
		{"one paragraph: all at the head of the step", "Stir. " + warm + " " + cut, "!hot,blade / P"},
		{"each before its own paragraph", "Wipe the table.\n\n" + warm + "\n\n" + cut, "P / !hot / P / !blade / P"},
		{"one hazard twice is told before the first", "Wipe.\n\n" + cut + "\n\nAgain: " + cut, "P / !blade / P / P"},
		{"the maker's caution of something else stays at its place", "Wipe.\n\n> CAUTION: The knife is sharp.\n\n" + cut + "\n\n" + warm, "P / M / P / !hot / P"},
		{"the maker's caution that comes too late does not stand for it", "Wipe.\n\n" + cut + "\n\n> CAUTION: The knife is sharp.", "P / !blade / P / M"},
		{"what a list asks for is told before the list", "Wipe.\n\n1. Stir.\n2. " + cut + "\n3. Stir.", "P / !blade / L"},
		{"and before the line that leads it in", "Wipe.\n\nThen, in this order:\n\n1. Stir.\n2. " + cut, "P / !blade / P / L"},
		{"a line between that ends otherwise keeps its place", "Wipe.\n\nThen go on.\n\n1. Stir.\n2. " + cut, "P / P / !blade / L"},
		{"a note of the maker's own is no paragraph", "<!-- mine -->\n\n" + cut, "!blade / P"},
		{"under a heading within the step", "Wipe.\n\n### Cutting\n\n" + cut, "P / H / !blade / P"},
		{"a pack's statement and a tool, far apart", fill + "\n\nStir.\n\n" + cut, "!H319 / P / P / !blade / P"},
	} {
		t.Run(c.why, func(t *testing.T) {
			k, found := instructions.Open(fstest.MapFS{
				"kit.yaml": {Data: []byte("name: One\nmakes: 1 piece\ncomponents:\n  soda: {name: Soda, packed: 10 g, hazards: H319}\n" +
					"tools:\n  pan: {name: Saucepan, from: customer}\n  knife: {name: Knife, from: customer}\n")},
				"method.md": {Data: []byte("## [Go](step:go?in=pan)\n\n" + c.text + "\n")},
			}, "one")
			if k == nil {
				t.Fatal(found)
			}
			a := assemblyOf(t, k)
			a.hazards = hazard.In(k, ledger.Follow(k))
			if got := shapeOf(a, a.stepProse(k.Method.Steps()[0], a.passes)); got != c.want {
				t.Errorf("it is %s, want %s", got, c.want)
			}
		})
	}
}

// A step that is all in its title has its caution as well.
func TestOwnCautionOfATitle(t *testing.T) {
	k, found := instructions.Open(fstest.MapFS{
		"kit.yaml":  {Data: []byte("name: One\nmakes: 1 piece\ncomponents:\n  card: {name: Card, packed: 1}\ntools:\n  knife: {name: Knife, from: customer}\n")},
		"method.md": {Data: []byte("## Cut with the knife\n\n## Go on with the knife\n\nStir.\n\nRest.\n")},
	}, "one")
	if k == nil {
		t.Fatal(found)
	}
	a := assemblyOf(t, k)
	a.hazards = hazard.In(k, ledger.Follow(k))
	for i, want := range []string{"!blade", "!blade / P / P"} {
		if got := shapeOf(a, a.stepProse(k.Method.Steps()[i], a.passes)); got != want {
			t.Errorf("step %d is %s, want %s", i+1, got, want)
		}
	}
}

// shapeOf tells the blocks of a text: P a paragraph, L a list, H a heading, M a caution of the
// maker's, ! one of the booklet's with the hazards that it is of.
func shapeOf(a *assembly, text string) string {
	var shape []string
	for _, block := range strings.Split(text, "\n\n") {
		var own []string
		for _, action := range a.hazards {
			if !slices.Contains(own, action.Hazard.ID) && strings.Contains(block, a.hazardText(action.Hazard.ID)) {
				own = append(own, action.Hazard.ID)
			}
		}
		switch {
		case len(own) > 0:
			shape = append(shape, "!"+strings.Join(own, ","))
		case strings.HasPrefix(block, ">"):
			shape = append(shape, "M")
		case strings.HasPrefix(block, "#"):
			shape = append(shape, "H")
		case strings.HasPrefix(block, "1."):
			shape = append(shape, "L")
		default:
			shape = append(shape, "P")
		}
	}
	return strings.Join(shape, " / ")
}
