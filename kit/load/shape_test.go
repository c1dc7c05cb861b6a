package load

import (
	"fmt"
	"testing"

	"tallyfold/kit"
	"tallyfold/kit/quantity"
)

// TestShapes: lengths are exact and in mm, whatever the unit (1 in = 25.4 mm: NIST
// SP 811, B.8).
func TestShapes(t *testing.T) {
	names := map[kit.Form]string{kit.Cylinder: "cylinder", kit.Cone: "cone", kit.Box: "box", kit.Sphere: "sphere"}
	for _, c := range []struct {
		text, want string
		comma      bool
	}{
		{"cylinder 68 mm wide", "cylinder [68] 0", false},
		{"cylinder 68 mm wide, 70 mm tall", "cylinder [68] 70", false},
		{"Cylinder  6.8 cm  wide,  7 cm  tall ", "cylinder [68] 70", false},
		{"cylinder 2 1/2 in wide", "cylinder [63.5] 0", false},
		{"cylinder 6,8 cm wide, 7,25 cm tall", "cylinder [68] 72.5", true},
		{"cone 60 mm wide at the base, 72 mm wide at the rim, 80 mm tall", "cone [60 72] 80", false},
		{"cone 60 mm wide at the base, 72 mm wide at the rim", "cone [60 72] 0", false},
		{"box 60 mm by 40 mm, 30 mm tall", "box [60 40] 30", false},
		{"box 60 mm by 40 mm", "box [60 40] 0", false},
		{"sphere 5 cm wide", "sphere [50] 0", false},
	} {
		shape, err := parseShape(c.text, quantity.Reader{DecimalComma: c.comma})
		if err != nil {
			t.Errorf("%s: %+v", c.text, *err)
			continue
		}
		if got := fmt.Sprintf("%s %v %v", names[shape.Form], shape.Widths, shape.Tall); got != c.want {
			t.Errorf("%s: %s, want %s", c.text, got, c.want)
		}
	}
}

// TestLevels: the ways of writing levels read the same.
func TestLevels(t *testing.T) {
	for why, inside := range map[string]string{
		"lines of a list":    "\n        - 0 mm: 0 mL\n        - 1 cm: 30 mL\n        - 25 mm: 0.1 L\n",
		"lines of keys":      "\n        0 mm: 0 mL\n        1 cm: 30 mL\n        25 mm: 0.1 L\n",
		"a list in brackets": "[0 mm: 0 mL, \"1 cm: 30 mL\", '25 mm: 0.1 L']\n",
		"braces":             "{0 mm: 0 mL, 1 cm: 30 mL, 25 mm: 0.1 L}\n",
	} {
		k, found := readText("name: Gels\nmakes: 6 jars\ncomponents:\n  jar:\n    packed: 6\n    container:\n      inside: " + inside)
		if len(found) > 0 {
			t.Errorf("%s\n%s", why, tell(found))
			continue
		}
		shape := k.Component("jar").Container.Inside.Value
		if got := fmt.Sprint(shape.Form == kit.Table, shape.Levels); got != "true [{0 0} {10 30} {25 100}]" {
			t.Errorf("%s: %s", why, got)
		}
	}
}

// TestLevelPlaces: what is wrong inside a level between quotation marks is shown
// at its own bytes.
func TestLevelPlaces(t *testing.T) {
	_, found := readText("name: Gels\nmakes: 6 jars\ncomponents: {jar: {packed: 6, container: {inside: ['10 mm: 30 mL', \"20 mm: \\u0036x0 mL\"]}}}\n")
	if len(found) != 1 || found[0].Where.Text() != "x0 mL" {
		t.Errorf("want one finding at x0 mL:\n%s", tell(found))
	}
}
