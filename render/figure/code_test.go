package figure

import (
	"regexp"
	"strconv"
	"strings"
	"testing"
)

// The side of a code in modules is that of ISO/IEC 18004, 4 × version + 17, for the
// capacity in bytes at level M of table 7 (from memory: version 1 holds 14, 3 holds 42,
// 6 holds 106).
func TestCodeSize(t *testing.T) {
	for _, test := range []struct{ letters, side int }{{14, 21}, {42, 29}, {43, 33}, {106, 41}, {107, 45}} {
		drawn, ok := Code{Title: "Code", Says: strings.Repeat("a", test.letters)}.Draw()
		if want := float64((test.side + 8) * module); !ok || drawn.Width != want || drawn.Height != want {
			t.Errorf("%d letters: %v wide, want %v", test.letters, drawn.Width, want)
		}
	}
	if _, ok := (Code{Says: strings.Repeat("a", 5000)}).Draw(); ok {
		t.Error("5000 letters were drawn")
	}
}

// Nothing is drawn in the light room around the code.
func TestQuietZone(t *testing.T) {
	drawn, _ := Code{Title: "Code", Says: "https://example.com/"}.Draw()
	for _, at := range regexp.MustCompile(`M(\d+) (\d+)h(\d+)`).FindAllStringSubmatch(drawn.shapes, -1) {
		x, _ := strconv.ParseFloat(at[1], 64)
		y, _ := strconv.ParseFloat(at[2], 64)
		long, _ := strconv.ParseFloat(at[3], 64)
		const room = quietZone * module
		if x < room || y < room || x+long > drawn.Width-room || y+module > drawn.Height-room {
			t.Fatalf("%s lies in the light room", at[0])
		}
	}
}
