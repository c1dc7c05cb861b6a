package ledger

import (
	"tallyfold/kit"
	"tallyfold/kit/quantity"
)

// A Solution is a thing in its solvent after a step: how strong it is, and what the
// solvent takes up at that temperature.
type Solution struct {
	Run      *kit.Run
	Step     *kit.Step
	Vessel   string
	Solute   *kit.Component
	Solvent  string // key
	Contents *Contents
	// Strength is the mass of the solute per mass of solvent (or per volume of it,
	// g/mL, where the points are told so).
	Strength *Figure
	// Takes is what the solvent takes up, in the same way; unknown where the
	// temperature was never said or lies beyond the maker's points.
	Takes *Figure
	// Temperature of the vessel, nil when never said.
	Temperature *Figure
}

// Solutions are all solutes with points of solubility, in every vessel that holds
// them with their solvent: after each step, and as a mixture leaves its vessel.
func (l *Ledger) Solutions() []*Solution {
	var all []*Solution
	for _, stage := range l.Stages {
		for _, m := range l.Makings {
			if m.Run == stage.Run && m.Step == stage.Step {
				all = append(all, l.solutionsIn(m.Run, m.Step, &m.Contents)...)
			}
		}
		for i := range stage.Vessels {
			all = append(all, l.solutionsIn(stage.Run, stage.Step, &stage.Vessels[i])...)
		}
	}
	return all
}

func (l *Ledger) solutionsIn(run *kit.Run, step *kit.Step, contents *Contents) []*Solution {
	var all []*Solution
	for _, part := range contents.Parts() {
		c := l.Kit.Component(part.Thing)
		if c == nil || len(c.Dissolves) == 0 {
			continue
		}
		s := &Solution{Run: run, Step: step, Vessel: contents.Vessel, Solute: c, Contents: contents, Temperature: contents.Temperature}
		if s.reckon() {
			all = append(all, s)
		}
	}
	return all
}

// reckon fills in strength and solubility; false where the solvent is not there.
func (s *Solution) reckon() bool {
	first := s.Solute.Dissolves[0].Value
	s.Solvent = bound(s.Run, first.Solvent)
	solvent := s.Contents.part(s.Solvent)
	solute := s.Contents.part(s.Solute.ID)
	if solvent == nil {
		return false
	}
	name := "strength of " + s.Solute.String()
	if first.Ratio.Dimension == quantity.Density {
		s.Strength = Over(quantity.Density, name, solute.Mass, solvent.Volume)
	} else {
		s.Strength = Over(quantity.Proportion, name, solute.Mass, solvent.Mass)
	}
	s.Takes = takesUp(s.Solute, s.Temperature)
	return true
}

func (c *Contents) part(thing string) *Part {
	for _, part := range c.Parts() {
		if part.Thing == thing {
			return &part
		}
	}
	return nil
}

// takesUp reads the maker's points at a temperature, on a straight line between two
// (a model: real curves bend a little). Beyond the points nothing is told.
func takesUp(solute *kit.Component, temperature *Figure) *Figure {
	points := solute.Dissolves
	name := "what dissolves of " + solute.String()
	dimension := points[0].Value.Ratio.Dimension
	if !temperature.Known() {
		return Unknown(dimension, name, "the temperature is not said")
	}
	at := temperature.Value()
	for i, point := range points {
		to := Written(name, point.Value.Ratio, point.Span)
		warm := point.Value.At.Nominal
		if at.Equal(warm) {
			return to
		}
		if i == 0 && at.Less(warm) {
			break
		}
		if !at.Less(warm) {
			continue
		}
		cold := points[i-1].Value.At.Nominal
		from := Written(name, points[i-1].Value.Ratio, points[i-1].Span)
		part := Fixed(quantity.Share, "of the way", at.Minus(cold).Over(warm.Minus(cold)))
		return Plus(dimension, name, from, Times(dimension, "warmer", part, Minus("more", to, from)))
	}
	return Unknown(dimension, name, quantity.Show(at, quantity.Temperature)+" lies beyond the points in kit.yaml")
}

// Ratio is the amount of one thing against that of another in the same vessel, in
// the dimension of a limit: mL per g, g per g, g per mL. Solids count dry.
func (c *Contents) Ratio(dimension quantity.Dimension, thing, base string) *Figure {
	above, below := c.held(thing), c.held(base)
	name := "ratio"
	switch dimension {
	case quantity.VolumePerMass:
		return Over(dimension, name, above.Volume, below.Mass)
	case quantity.Density:
		return Over(dimension, name, above.Mass, below.Volume)
	}
	return Over(dimension, name, above.Mass, below.Mass)
}

// Holds says whether any of a thing is in it, mixed or lying in it.
func (c *Contents) Holds(thing string) bool {
	for _, list := range [][]portion{c.portions, c.objects} {
		for _, p := range list {
			if p.material.key == thing {
				return true
			}
		}
	}
	return false
}

func (c *Contents) held(thing string) Part {
	for _, part := range append(c.Parts(), c.Objects()...) {
		if part.Thing == thing {
			return part
		}
	}
	nothing := "none of it is there"
	return Part{Thing: thing, Mass: Unknown(quantity.Mass, thing, nothing), Volume: Unknown(quantity.Volume, thing, nothing)}
}
