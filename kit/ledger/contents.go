package ledger

import (
	"slices"

	"tallyfold/kit"
	"tallyfold/kit/quantity"
)

// A portion is an amount of one material, in the dimension of its pack.
type portion struct {
	material *material
	amount   *Figure
}

// Contents is what one vessel or container holds at one moment.
type Contents struct {
	// Vessel is the key of the vessel or container.
	Vessel string
	// Mixture is the named mixture it is, or is becoming; nil when it has no name.
	Mixture *kit.Mixture
	// Temperature in °C as last brought to, nil when never said.
	Temperature *Figure

	portions []portion // what mixes
	objects  []portion // what lies in it: counted, measured in lengths, or solid
}

// A Part is one thing's part of what a vessel or container holds.
type Part struct {
	Thing string // key
	// Amount is in the dimension that the thing is packed in.
	Amount *Figure
	// Mass (g) and Volume (mL) are unknown where no density tells them.
	Mass, Volume *Figure
}

// Empty says whether it holds nothing at all.
func (c *Contents) Empty() bool { return len(c.portions) == 0 && len(c.objects) == 0 }

// Parts lists what mixes, in the order it came in.
func (c *Contents) Parts() []Part { return parts(c.portions) }

// Objects lists the countable things in it.
func (c *Contents) Objects() []Part { return parts(c.objects) }

func parts(portions []portion) []Part {
	list := make([]Part, len(portions))
	for i, p := range portions {
		list[i] = Part{
			Thing: p.material.key, Amount: p.amount,
			Mass: p.material.mass(p.amount), Volume: p.material.volume(p.amount),
		}
	}
	return list
}

// Mass of all that mixes, g; objects do not count.
func (c *Contents) Mass() *Figure {
	masses := make([]*Figure, len(c.portions))
	for i, p := range c.portions {
		masses[i] = p.material.mass(p.amount)
	}
	return c.total(quantity.Mass, masses)
}

// Volume of all that mixes, mL: by the measured density of the mixture where one
// is given, else the volumes added up (a model that leaves out shrinking).
func (c *Contents) Volume() *Figure {
	if c.Mixture != nil && c.Mixture.Density.Given() {
		density := Written("density of "+c.Mixture.String(), c.Mixture.Density.Value, c.Mixture.Density.Span)
		return Over(quantity.Volume, "volume", c.Mass(), density)
	}
	volumes := make([]*Figure, len(c.portions))
	for i, p := range c.portions {
		volumes[i] = p.material.volume(p.amount)
	}
	return c.total(quantity.Volume, volumes)
}

// Added says whether Volume is the sum of the parts, not a measured density.
func (c *Contents) Added() bool { return c.Mixture == nil || !c.Mixture.Density.Given() }

// Share is the part of one thing in the whole by mass.
func (c *Contents) Share(thing string) *Figure {
	return Over(quantity.Share, "share of "+thing, c.MassOf(thing), c.Mass())
}

// MassOf one thing in it, g; nothing of it is 0 g.
func (c *Contents) MassOf(thing string) *Figure {
	for _, list := range [][]portion{c.portions, c.objects} {
		for _, p := range list {
			if p.material.key == thing {
				return p.material.mass(p.amount).Called(p.material.name)
			}
		}
	}
	return Fixed(quantity.Mass, thing, quantity.Number{})
}

// total adds up; a single figure stands for itself, so that sums stay short.
func (c *Contents) total(dimension quantity.Dimension, figures []*Figure) *Figure {
	if len(figures) == 1 {
		return figures[0]
	}
	return Plus(dimension, "all of it", figures...)
}

// measured gives the mass or volume of the contents.
func (c *Contents) measured(dimension quantity.Dimension) *Figure {
	if dimension == quantity.Volume {
		return c.Volume()
	}
	return c.Mass()
}

// copy keeps the moment: later changes of the vessel do not reach it.
func (c *Contents) copy() Contents {
	kept := *c
	kept.portions = slices.Clone(c.portions)
	kept.objects = slices.Clone(c.objects)
	return kept
}

// add puts a portion in, joined with what is already there of the same thing.
func (c *Contents) add(p portion) {
	list := &c.portions
	if p.material.countable() || p.material.solid() {
		list = &c.objects
	}
	for i, old := range *list {
		if old.material == p.material {
			(*list)[i].amount = Plus(p.amount.Dimension, p.material.name, old.amount, p.amount)
			return
		}
	}
	*list = append(*list, p)
}

// takeShare removes the same share of everything that mixes and gives it. A nil
// share takes all; what then stays is nothing, as after a share of one.
func (c *Contents) takeShare(share *Figure) []portion {
	if share == nil {
		taken := c.portions
		c.portions = nil
		return taken
	}
	whole := isWhole(share)
	if whole {
		defer func() { c.portions = nil }()
	}
	taken := make([]portion, len(c.portions))
	for i, p := range c.portions {
		part := partOf(p.material.name, p.amount, share)
		if whole { // nothing stays that could make up for what is rounded
			part = Times(p.amount.Dimension, p.material.name, p.amount, share)
		}
		taken[i] = portion{p.material, part}
		c.portions[i].amount = Minus(p.material.name, p.amount, part)
	}
	return taken
}

// isWhole: a told amount that is exactly what was there leaves nothing behind.
func isWhole(share *Figure) bool { return share.Known() && share.Value().Equal(quantity.Whole(1)) }

// takeObjects removes all objects and gives them.
func (c *Contents) takeObjects() []portion {
	taken := c.objects
	c.objects = nil
	return taken
}
