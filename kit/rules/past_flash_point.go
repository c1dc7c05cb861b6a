package rules

import (
	"tallyfold/kit"
	"tallyfold/kit/diag"
	"tallyfold/kit/quantity"
)

var pastFlashPoint = Rule{
	Name:     "past-flash-point",
	Severity: diag.MustFix,
	Sums:     true,
	Title:    "A liquid meets heat above its flash point",
	Explanation: `Above its flash point a liquid gives off vapour enough to catch fire from a spark or a hot
plate. The supplier's sheet tells it, in section 9; “flash point” under a component keeps
it.

The temperature of what a component is added to, and what a step warms it to, as the
steps tell them, are held against its flash point; of a range the upper end counts. A
mixture may catch fire higher or lower than its parts: that is not reckoned, and nothing
here says that a mixture cannot burn.

Let it cool first, add less heat, or use another liquid.`,
	Check: func(s Subject) []diag.Finding {
		var all []perRun
		for _, e := range s.Ledger.Entries {
			c := s.Kit.Component(e.Thing)
			if c == nil || !c.FlashPoint.Given() || e.Operation == nil || e.Operation.Kind != kit.Take || !e.Temperature.Known() {
				continue
			}
			met, flash := e.Temperature.Value(), c.FlashPoint.Value.Low
			if met.Less(flash) {
				continue
			}
			all = append(all, perRun{e.Run, diag.Finding{
				Where: amountSpan(e.Operation), About: c.ID,
				Found:    c.String() + " is added at " + show(met, quantity.Temperature) + " in " + inStep(e.Step) + ", and its flash point is " + c.FlashPoint.Value.Written,
				Expected: "to be added below " + c.FlashPoint.Value.Written,
				Sum:      []string{show(met, quantity.Temperature) + " − " + c.FlashPoint.Value.Written + " = " + show(met.Minus(flash), quantity.Temperature) + " above"},
				Remedies: diag.Fix("let the mixture cool below "+c.FlashPoint.Value.Written+" before it is added, and say so", "write “add below: "+c.FlashPoint.Value.Written+"” under it as well"),
				Also:     []diag.Place{{Where: c.FlashPoint.Span, Note: "its flash point"}},
			}})
		}
		return overRuns(s.Kit, all)
	},
	NotLookedAt: func(s Subject) []string {
		return untoldFor("no flash point is told for ", s, func(c *kit.Component) bool { return isMaterial(c) && !c.FlashPoint.Given() && packedLiquid(c) })
	},
}

// packedLiquid says whether a component is packed by volume, or its density is that of a liquid.
func packedLiquid(c *kit.Component) bool {
	return c.Packed.Value.Dimension == quantity.Volume || c.DensityState == kit.Liquid
}
