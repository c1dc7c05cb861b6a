package load

import (
	"testing"

	"tallyfold/kit/quantity"
)

func TestNudge(t *testing.T) {
	reader := quantity.Reader{Language: "en"}
	for _, c := range []struct{ text, right, down string }{
		{"1 mm right, 0.5 mm down", "1", "1/2"},
		{"2 mm up", "0", "-2"},
		{"0.1 cm left, 1 mm up", "-1", "-1"},
		{"1 mm", "", ""},
		{"1 mm sideways", "", ""},
		{"1 g right", "", ""},
		{"1 mm right, 2 mm left", "", ""}, // one way told twice
		{"30 mm right", "", ""},           // that is another sheet
	} {
		nudge, ok := parseNudge(c.text, reader)
		if ok != (c.right != "") || ok && (nudge.Right.Rat().RatString() != c.right || nudge.Down.Rat().RatString() != c.down) {
			t.Errorf("%q: %s right, %s down, %v", c.text, nudge.Right, nudge.Down, ok)
		}
	}
}

// FuzzNudge: whatever is taken lies within what may be told, and nothing makes it panic.
func FuzzNudge(f *testing.F) {
	for _, seed := range []string{"1 mm right, 0.5 mm down", "2 mm up", "left", ", ", "1 mm right,", "-3 mm down", "1/2 in left"} {
		f.Add(seed)
	}
	reader := quantity.Reader{Language: "en"}
	f.Fuzz(func(t *testing.T, text string) {
		nudge, ok := parseNudge(text, reader)
		most := quantity.Whole(mostNudged)
		if ok && (most.Less(nudge.Right.Abs()) || most.Less(nudge.Down.Abs())) {
			t.Errorf("%q: %s, %s", text, nudge.Right, nudge.Down)
		}
	})
}
