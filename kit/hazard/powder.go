package hazard

import (
	"slices"

	"tallyfold/kit"
	"tallyfold/kit/handbook"
	"tallyfold/kit/quantity"
)

// isPowder says whether a component is a dry powder, by its name or what it looks like: it
// dusts when its bag is opened, whether or not its maker says so.
func (f *finder) isPowder(c *kit.Component) bool {
	if c.Packed.Value.Dimension != quantity.Mass {
		return false
	}
	words := append(split(c.String()), split(c.Looks.Value)...)
	return slices.ContainsFunc(handbook.Powders[f.language], func(word string) bool { return hold(words, split(word)) })
}
