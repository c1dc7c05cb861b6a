package rules

import (
	"tallyfold/kit"
	"tallyfold/kit/diag"
	"tallyfold/kit/ledger"
	"tallyfold/kit/quantity"
)

var noDensity = Rule{
	Name:     "no-density",
	Severity: diag.MustFix,
	Sums:     true,
	Title:    "Grams and millilitres meet, and no density joins them",
	Explanation: `A spoon of powder has a weight only when its density is known, and none is ever
assumed: not for water either. Where an amount, a fill or a share rests on a density
that kit.yaml does not give, it cannot be checked. Every such figure is listed under
the one thing that is missing.

Where only the room in a container cannot be told closely, the finding should be
fixed; everything else must be.

Give the density of the thing; for a powder that goes into a mixture also its true
density, since the air between its grains does not go with it; or measure the
density of the mixture and give it under mixtures.`,
	Check: func(s Subject) []diag.Finding {
		c := densityCheck{Subject: s, missing: map[string]*missingDensity{}}
		c.snags()
		c.shares()
		c.fills()
		return c.findings()
	},
}

// A densityCheck gathers what cannot be told, by the thing that lacks a density.
type densityCheck struct {
	Subject
	order   []string
	missing map[string]*missingDensity
}

type missingDensity struct {
	thing    string
	grave    bool // more than the room in a container rests on it
	volume   bool // its true density is what is missing
	untold   []string
	also     []diag.Place
	reported map[*kit.Operation]bool
}

func (c *densityCheck) note(thing string, dimension quantity.Dimension, grave bool, untold string, o *kit.Operation) {
	m := c.missing[thing]
	if m == nil {
		m = &missingDensity{thing: thing, reported: map[*kit.Operation]bool{}}
		c.missing[thing] = m
		c.order = append(c.order, thing)
	}
	m.grave = m.grave || grave
	m.volume = m.volume || dimension == quantity.Volume && isLoose(c.Kit, thing)
	m.untold = append(m.untold, "cannot check: "+untold)
	if o != nil && !m.reported[o] {
		m.reported[o] = true
		m.also = append(m.also, diag.Place{Where: amountSpan(o), Note: untold})
	}
}

func (c *densityCheck) snags() {
	for _, snag := range c.Ledger.Snags {
		if snag.Trouble != ledger.NoDensity {
			continue
		}
		if _, isMaterial := reckonedIn(c.Ledger, snag.Thing); isMaterial && c.Kit.Tool(snag.Thing) == nil {
			c.note(snag.Thing, quantity.Mass, true, c.untold(snag), snag.Operation)
			continue
		}
		making := lastMakingUpTo(c.Ledger, snag.Run, snag.Thing, snag.Step)
		if making == nil {
			continue
		}
		dimension := quantity.Mass
		if snag.Wanted != nil {
			dimension = snag.Wanted.Dimension
		}
		for _, thing := range lacking(c.Ledger, &making.Contents, dimension) {
			c.note(thing, dimension, true, c.untold(snag), snag.Operation)
		}
	}
}

// untold says what a snag keeps from being told.
func (c *densityCheck) untold(snag ledger.Snag) string {
	told := "how much " + c.Kit.Called(snag.Thing) + " " + inStep(snag.Step) + " takes"
	if c.Kit.Tool(snag.Thing) != nil {
		told = "how much " + inStep(snag.Step) + " takes out of " + c.Kit.Called(snag.Thing)
	}
	if amount, ok := snag.Operation.Phrase.Amount(); ok {
		told += " (" + amount.Written + ")"
	}
	return told
}

// shares notes limits on shares that cannot be held against a mixture.
func (c *densityCheck) shares() {
	for _, l := range limits(c.Kit) {
		for _, m := range l.mixtures(c.Subject) {
			if m.share.Known() {
				continue
			}
			for _, thing := range lacking(c.Ledger, m.contents, quantity.Mass) {
				c.note(thing, quantity.Mass, true,
					"the share of "+c.Kit.Called(l.thing)+", "+l.told.Value.Written, m.operation)
			}
		}
	}
}

// fills notes containers whose room cannot be held against what goes in.
func (c *densityCheck) fills() {
	for _, f := range c.Ledger.Fillings {
		room := f.Room()
		if len(f.Parts()) == 0 || f.Volume().Known() || !room.Known() {
			continue
		}
		low, high, ok := volumeBounds(c.Kit, &f.Contents)
		if ok && (high.Cmp(room.Value()) <= 0 || room.Value().Less(low)) {
			continue // it fits, or does not, whatever the density
		}
		untold := "whether " + f.Container.String() + " has room for what " + inStep(f.Step) + " puts in"
		if ok {
			untold += ": " + show(low, quantity.Volume) + " to " + show(high, quantity.Volume) + " for a room of " + room.Show()
		}
		for _, thing := range lacking(c.Ledger, &f.Contents, quantity.Volume) {
			c.note(thing, quantity.Volume, false, untold, f.Operation)
		}
	}
}

func (c *densityCheck) findings() []diag.Finding {
	var findings []diag.Finding
	for _, thing := range c.order {
		findings = append(findings, c.missing[thing].finding(c.Kit))
	}
	return findings
}

func (m *missingDensity) finding(k *kit.Kit) diag.Finding {
	name := k.Called(m.thing)
	finding := diag.Finding{
		Where: keySpan(k, m.thing), About: m.thing, Sum: lines(m.untold...), Also: m.also,
		Found:    "cannot check: no density is given for " + name,
		Expected: "a density, since amounts of it are told both by weight and by volume",
		Remedies: diag.Fix("write “density: … g/mL” under " + m.thing + " in kit.yaml; weigh a measured spoon or jug of it to find it"),
	}
	if isCalled(name, "water") {
		finding.Remedies = diag.Fix("write “density: 0.998 g/mL” under " + m.thing + " in kit.yaml, if it is plain water at about 20 °C")
	}
	if m.volume {
		finding.Found = "cannot check: only the loose density of " + name + " is given"
		finding.Expected = "its true density too, since the air between its grains does not go into the mixture"
		finding.Remedies = diag.Fix(
			"write “true density: … g/mL” under "+m.thing+" in kit.yaml",
			"measure the density of the finished mixture and give it under mixtures")
	}
	if !m.grave {
		finding.Severity = diag.ShouldFix
		if !m.volume {
			finding.Expected = "a density, which says how much room its weight takes"
		}
	}
	return finding
}
