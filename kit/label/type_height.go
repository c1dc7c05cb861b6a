package label

import (
	"math"

	"tallyfold/kit"
	"tallyfold/kit/quantity"
)

// A Panel is the part of a package that is most likely seen when it is shown for sale
// (21 CFR 701.10).
type Panel struct {
	// Area in square inches.
	Area float64
	// How says how the area was reckoned, as a sum.
	How string
}

// Rectangle is a panel of two sides in mm.
func Rectangle(wide, tall float64) Panel {
	area := wide / Inch * tall / Inch
	return Panel{area, two(wide) + " mm × " + two(tall) + " mm = " + two(area) + " in²"}
}

// CylinderPanel is 40 % of the height times the circumference, mm (21 CFR 701.10; 16 CFR
// 500.22 says the same).
func CylinderPanel(wide, tall float64) Panel {
	area := 0.4 * tall / Inch * math.Pi * wide / Inch
	return Panel{area, "40 % of " + two(tall) + " mm × π × " + two(wide) + " mm = " + two(area) + " in²"}
}

// PanelOf is the panel of a container: as the maker told it, else reckoned from its inside,
// which is a little smaller than the outside. It is false where neither is told.
func PanelOf(c *kit.Component) (Panel, bool) {
	if c.Container == nil {
		return Panel{}, false
	}
	if told := c.Container.Panel; told.Given() {
		across, along := told.Value.Across.Float(), told.Value.Along.Float()
		if across > 0 && along > 0 {
			return Rectangle(across, along), true
		}
		area := told.Value.Nominal.Float() / (Inch * Inch)
		return Panel{area, told.Value.Written + " = " + two(area) + " in²"}, true
	}
	inside := c.Container.Inside.Value
	tall := inside.Tall.Float()
	if tall == 0 {
		return Panel{}, false
	}
	var panel Panel
	switch inside.Form {
	case kit.Cylinder:
		panel = CylinderPanel(inside.Widths[0].Float(), tall)
	case kit.Cone:
		panel = CylinderPanel((inside.Widths[0].Float()+inside.Widths[1].Float())/2, tall)
	case kit.Box:
		panel = Rectangle(math.Max(inside.Widths[0].Float(), inside.Widths[1].Float()), tall)
	default:
		return Panel{}, false
	}
	panel.How += ", by its inside; the outside is a little more"
	return panel, true
}

// A tier is the smallest height of type, in sixteenths of an inch, up to an area in square
// inches, which belongs to it.
type tier struct {
	upTo       float64
	sixteenths float64
}

// netTiers are those of 21 CFR 701.13; 16 CFR 500.21 has the same in metric too.
var netTiers = []tier{{5, 1}, {25, 2}, {100, 3}, {400, 4}, {math.Inf(1), 8}}

// NetTypeHeight is the least height of the letters that net contents are told in, mm. It
// is that of a lower-case o where lower case is used (21 CFR 701.13).
func (p Panel) NetTypeHeight() float64 {
	for _, t := range netTiers {
		if p.Area <= t.upTo+exactly {
			return t.sixteenths / 16 * Inch
		}
	}
	return 0
}

// exactly is what a panel told in mm may be over a limit in square inches by rounding.
const exactly = 1e-9

// BottomOnly says whether net contents must stand in the bottom 30 % of the panel: on all
// of more than 5 square inches (21 CFR 701.13).
func (p Panel) BottomOnly() bool { return p.Area > 5+exactly }

// A CautionHeight is the least type that cautions on a hazardous substance are told in, mm
// (16 CFR 1500.121).
type CautionHeight struct{ SignalWord, Hazard, Other float64 }

// cautionTiers are in 1/64 inch: signal word, statement of hazard, other.
var cautionTiers = []struct{ upTo, signal, hazard, other float64 }{
	{2, 3, 3, 2},
	{5, 4, 3, 3},
	{10, 6, 4, 4},
	{15, 7, 6, 4},
	{30, 8, 6, 5},
	{math.Inf(1), 10, 7, 6},
}

// CautionTypeHeight gives the heights for a panel.
func (p Panel) CautionTypeHeight() CautionHeight {
	for _, t := range cautionTiers {
		if p.Area <= t.upTo+exactly {
			return CautionHeight{t.signal / 64 * Inch, t.hazard / 64 * Inch, t.other / 64 * Inch}
		}
	}
	return CautionHeight{}
}

func two(f float64) string {
	return quantity.Show(quantity.FromFloat(math.Round(f*100)/100), quantity.Count, quantity.Digits(6))
}
