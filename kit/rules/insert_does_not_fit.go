package rules

import (
	"tallyfold/kit"
	"tallyfold/kit/diag"
	"tallyfold/kit/ledger"
	"tallyfold/kit/quantity"
)

var insertDoesNotFit = Rule{
	Name:     "insert-does-not-fit",
	Severity: diag.MustFix,
	Title:    "An insert is wider or taller than the container it goes into",
	Explanation: `A shell of 40 mm does not pass a mouth of 35 mm, however it is turned; a stand of 90 mm
looks out of a jar of 80 mm, and the lid does not close.

“wide” and “tall” of an insert are held against “mouth” and “inside” of each container
that it is placed into, standing and lying. An insert that rests on top need not fit.
Where a shape narrows towards its base, the insert sits where it is as wide as the shape.
Without these figures nothing is said.

Use a smaller insert or a wider container, or put the figures right.`,
	Check: func(s Subject) []diag.Finding {
		var findings []diag.Finding
		seen := map[[2]string]bool{}
		for _, f := range s.Ledger.Fillings {
			for _, placed := range f.Inserts {
				pair := [2]string{f.Container.ID, placed.Component.ID}
				if placed.Component.Insert == nil || seen[pair] {
					continue
				}
				seen[pair] = true
				if finding, ok := unfitting(f.Container, placed); ok {
					findings = append(findings, finding)
				}
			}
		}
		return findings
	},
	NotLookedAt: func(s Subject) []string {
		return untoldFor("neither width nor height is told for ", s, func(c *kit.Component) bool {
			return c.Insert != nil && c.Insert.Sits.Value != kit.OnTop && !c.Insert.Wide.Given() && !c.Insert.Tall.Given()
		})
	},
}

// unfitting holds one insert against one container.
func unfitting(c *kit.Component, placed ledger.PlacedInsert) (diag.Finding, bool) {
	insert := placed.Component.Insert
	if insert.Sits.Value == kit.OnTop || !insert.Wide.Given() && !insert.Tall.Given() {
		return diag.Finding{}, false
	}
	body := bodyOf(insert)
	finding := diag.Finding{
		Where: amountSpan(placed.Operation), About: placed.Component.ID,
		Remedies: diag.Fix("use a smaller "+placed.Component.String(), "use a larger "+c.String(), "measure both again, and put the figures in kit.yaml right"),
	}
	for _, said := range []kit.Said[quantity.Amount]{insert.Wide, insert.Tall} {
		if said.Given() {
			finding.Also = append(finding.Also, diag.Place{Where: said.Span, Note: placed.Component.String() + ", " + said.Value.Written})
		}
	}
	if why, at, ok := stuckInMouth(c.Container, body); ok {
		finding.Found = placed.Component.String() + " does not pass the mouth of " + c.String() + ": " + why
		finding.Expected = "an insert that is narrower than the mouth, standing or lying"
		finding.Also = append(finding.Also, diag.Place{Where: at.Span, Note: "the mouth, " + at.Value.Written})
		return finding, true
	}
	if why, ok := tooBigInside(c.Container.Inside.Value, body); ok {
		finding.Found = placed.Component.String() + " does not fit into " + c.String() + ": " + why
		finding.Expected = "an insert that fits inside, standing or lying"
		finding.Also = append(finding.Also, diag.Place{Where: c.Container.Inside.Span, Note: "the inside"})
		return finding, true
	}
	return diag.Finding{}, false
}

// A body is an insert by its measures, mm; 0 is not told.
type body struct{ wide, tall quantity.Number }

func bodyOf(i *kit.Insert) body { return body{i.Wide.Value.Low, i.Tall.Value.Low} }

// lying is the same body on its side.
func (b body) lying() body { return body{wide: b.tall, tall: b.wide} }

func millimetres(n quantity.Number) string { return show(n, quantity.Length) }

// stuckInMouth: both measures are more than the mouth is wide.
func stuckInMouth(c *kit.Container, b body) (why string, mouth kit.Said[quantity.Amount], ok bool) {
	mouth = c.Mouth
	if !mouth.Given() || b.wide.Cmp(mouth.Value.High) <= 0 || b.tall.Sign() > 0 && b.tall.Cmp(mouth.Value.High) <= 0 {
		return "", mouth, false
	}
	why = "it is " + millimetres(b.wide) + " wide"
	if b.tall.Sign() > 0 {
		why += " and " + millimetres(b.tall) + " tall"
	}
	return why + ", and the mouth " + millimetres(mouth.Value.High), mouth, true
}

// tooBigInside: the body fits neither standing nor lying.
func tooBigInside(shape kit.Shape, b body) (why string, ok bool) {
	why, stands := standsInside(shape, b)
	if stands {
		return "", false
	}
	if b.wide.Sign() > 0 && b.tall.Sign() > 0 {
		if _, lies := standsInside(shape, b.lying()); lies {
			return "", false
		}
	}
	return why, true
}

// standsInside says whether a body stands in a shape; why tells the first reason against.
func standsInside(shape kit.Shape, b body) (why string, ok bool) {
	if shape.Form == kit.Sphere {
		return standsInSphere(shape.Widths[0], b)
	}
	widest, base, known := widths(shape)
	if known && widest.Less(b.wide) {
		return "it is " + millimetres(b.wide) + " wide, and the inside " + millimetres(widest), false
	}
	tall := insideHeight(shape)
	if tall.IsZero() || b.tall.IsZero() {
		return "", true
	}
	stands := sitsAt(shape, base, b.wide)
	if tall.Less(stands.Plus(b.tall)) {
		why = "it is " + millimetres(b.tall) + " tall, and the inside " + millimetres(tall)
		if stands.Sign() > 0 {
			why = "it is " + millimetres(b.wide) + " wide and sits " + millimetres(stands) + " above the base, and so its top stands at " +
				millimetres(stands.Plus(b.tall)) + " of " + millimetres(tall)
		}
		return why, false
	}
	return "", true
}

// standsInSphere: the corners of a body lie on a circle (Pythagoras).
func standsInSphere(wide quantity.Number, b body) (string, bool) {
	if b.wide.Times(b.wide).Plus(b.tall.Times(b.tall)).Cmp(wide.Times(wide)) <= 0 {
		return "", true
	}
	return "it is " + millimetres(b.wide) + " wide and " + millimetres(b.tall) + " tall, and the inside a sphere of " + millimetres(wide), false
}

// widths are those of a shape at its widest and at its base. A flat insert may stand
// along the longer side of a box.
func widths(shape kit.Shape) (widest, base quantity.Number, known bool) {
	switch shape.Form {
	case kit.Cylinder:
		return shape.Widths[0], shape.Widths[0], true
	case kit.Box:
		longer := quantity.Larger(shape.Widths[0], shape.Widths[1])
		return longer, longer, true
	case kit.Cone:
		return quantity.Larger(shape.Widths[0], shape.Widths[1]), shape.Widths[0], true
	}
	return widest, base, false
}

func insideHeight(shape kit.Shape) quantity.Number {
	if n := len(shape.Levels); n > 0 {
		return shape.Levels[n-1].Height
	}
	return shape.Tall
}

// sitsAt is how high above the base of a cone a body comes to sit, mm.
func sitsAt(shape kit.Shape, base, wide quantity.Number) quantity.Number {
	if shape.Form != kit.Cone || wide.Cmp(base) <= 0 || shape.Tall.IsZero() {
		return quantity.Number{}
	}
	return shape.Tall.Times(wide.Minus(base)).Over(shape.Widths[1].Minus(base))
}
