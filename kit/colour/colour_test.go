package colour

import (
	"math"
	"testing"
)

func read(t *testing.T, written string) Colour {
	t.Helper()
	c, ok := Read(written)
	if !ok {
		t.Fatalf("%q is not read as a colour", written)
	}
	return c
}

func TestColoursAreReadAndWritten(t *testing.T) {
	for written, want := range map[string]string{"#17566B": "#17566b", "#fff": "#ffffff", "#0a9": "#00aa99"} {
		if got := read(t, written).String(); got != want {
			t.Errorf("%s is %s, want %s", written, got, want)
		}
	}
	for _, none := range []string{"", "#", "17566b", "#17566", "#17566bb", "#12345g", "#+1234", "teal"} {
		if got, ok := Read(none); ok {
			t.Errorf("%q is read as %s", none, got)
		}
	}
}

// The formula of WCAG 2.2 (W3C), values reckoned from it for the project's check
// values; #767676 is the usual example of the lightest grey that passes for text,
// #949494 of the lightest that passes for marks.
func TestContrast(t *testing.T) {
	for _, pair := range []struct {
		a, b string
		want float64
	}{
		{"#000000", "#ffffff", 21}, {"#767676", "#ffffff", 4.542}, {"#777777", "#ffffff", 4.478},
		{"#949494", "#ffffff", 3.034}, {"#959595", "#ffffff", 2.995}, {"#595959", "#ffffff", 7.005},
		{"#ff0000", "#ffffff", 3.998}, {"#0000ff", "#ffffff", 8.592}, {"#ffff00", "#ffffff", 1.074},
		{"#ff0000", "#000000", 5.252}, {"#ff8800", "#000000", 8.774},
	} {
		a, b := read(t, pair.a), read(t, pair.b)
		if got := Contrast(a, b); math.Abs(got-pair.want) > 0.0006 || got != Contrast(b, a) {
			t.Errorf("%s on %s is %.3f, want %.3f", a, b, got, pair.want)
		}
	}
}

// What is readable stays; what is not becomes so by as little as can be: one step less
// would not do.
func TestReadable(t *testing.T) {
	for _, test := range []struct{ colour, ground string }{
		{"#17566b", "#ffffff"}, {"#767676", "#ffffff"}, {"#777777", "#ffffff"}, {"#ffd100", "#ffffff"}, {"#ffffff", "#ffffff"},
		{"#17566b", "#14191b"}, {"#000000", "#14191b"}, {"#ff0000", "#ffffff"},
	} {
		c, ground := read(t, test.colour), read(t, test.ground)
		got := c.Readable(ground, ForText)
		if Contrast(got, ground) < ForText {
			t.Errorf("%s on %s became %s, %.2f : 1", c, ground, got, Contrast(got, ground))
		}
		if Contrast(c, ground) >= ForText && got != c {
			t.Errorf("%s on %s was readable and became %s", c, ground, got)
		}
		if over := Contrast(got, ground); Contrast(c, ground) < ForText && over > ForText+0.15 {
			t.Errorf("%s on %s was changed further than need be: %s, %.2f : 1", c, ground, got, over)
		}
	}
	if got := read(t, "#777777").Readable(White, ForText).String(); got != "#767676" {
		t.Errorf("#777777 on white became %s, want #767676", got)
	}
}

// Rec. ITU-R BT.709: the primaries' shares of luminance are 0.2126, 0.7152 and 0.0722.
// A grey stays the grey it is.
func TestGrey(t *testing.T) {
	for written, want := range map[string]float64{"#ff0000": 0.2126, "#00ff00": 0.7152, "#0000ff": 0.0722, "#ffffff": 1} {
		c := read(t, written)
		if got := c.Luminance(); math.Abs(got-want) > 1e-9 {
			t.Errorf("%s has luminance %v, want %v", c, got, want)
		}
		if grey := c.Grey(); grey.R != grey.G || grey.G != grey.B || math.Abs(grey.Luminance()-want) > 0.004 {
			t.Errorf("%s in grey is %s", c, grey)
		}
	}
	for channel := range 256 {
		c := Colour{uint8(channel), uint8(channel), uint8(channel)}
		if c.Grey() != c {
			t.Errorf("the grey %s became %s", c, c.Grey())
		}
	}
}

// L*a*b* of the primaries as the tables of sRGB give them (known by heart: red 53.2,
// 80.1, 67.2; green 87.7, −86.2, 83.2; white 100, 0, 0).
func TestLab(t *testing.T) {
	for written, want := range map[string][3]float64{
		"#ff0000": {53.2, 80.1, 67.2}, "#00ff00": {87.7, -86.2, 83.2}, "#ffffff": {100, 0, 0}, "#000000": {0, 0, 0},
	} {
		got := read(t, written).lab()
		for i := range got {
			if math.Abs(got[i]-want[i]) > 0.1 {
				t.Errorf("%s is %.1f, want %.1f", written, got, want)
				break
			}
		}
	}
}

// Both eyes see greys as they are (each row of the published matrices adds up to one),
// and a red and a green of like lightness nearly alike.
func TestRedGreenBlindEyes(t *testing.T) {
	for _, eye := range []Eye{RedBlind, GreenBlind} {
		for _, row := range eyes[eye] {
			if sum := row[0] + row[1] + row[2]; math.Abs(sum-1) > 2e-6 {
				t.Errorf("a row of eye %d adds up to %v", eye, sum)
			}
		}
		if got := read(t, "#808080").SeenBy(eye).String(); got != "#808080" {
			t.Errorf("eye %d sees grey as %s", eye, got)
		}
	}
	red, green := read(t, "#b03a2e"), read(t, "#5d7a1f")
	if before, after := Difference(red, green), Difference(red.SeenBy(GreenBlind), green.SeenBy(GreenBlind)); after > before/3 {
		t.Errorf("red and green differ by %.0f, and to the green-blind eye by %.0f", before, after)
	}
	if blue, yellow := read(t, "#0b5cad"), read(t, "#ffd100"); Difference(blue.SeenBy(RedBlind), yellow.SeenBy(RedBlind)) < 50 {
		t.Error("blue and yellow are no longer told apart")
	}
}
