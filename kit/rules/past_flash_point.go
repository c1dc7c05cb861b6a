package rules

import (
	"tallyfold/kit"
	"tallyfold/kit/diag"
	"tallyfold/kit/ledger"
	"tallyfold/kit/quantity"
	"tallyfold/kit/source"
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
		f := flashes{Subject: s, told: map[string]bool{}}
		for _, e := range s.Ledger.Entries {
			if e.Operation != nil && e.Operation.Kind == kit.Take {
				f.meet(e.Run, e.Step, e.Thing, e.Temperature, amountSpan(e.Operation), "is added")
			}
		}
		for _, stage := range s.Ledger.Stages {
			for _, vessel := range stage.Vessels {
				for _, part := range vessel.Parts() {
					f.meet(stage.Run, stage.Step, part.Thing, vessel.Temperature, stage.Step.Span, "lies in what is")
				}
			}
		}
		return overRuns(s.Kit, f.all)
	},
	NotLookedAt: func(s Subject) []string {
		return untoldFor("no flash point is told for ", s, func(c *kit.Component) bool { return c.IsMaterial() && !c.FlashPoint.Given() && packedLiquid(c) })
	},
}

// packedLiquid says whether a component is packed by volume, or its density is that of a liquid.
func packedLiquid(c *kit.Component) bool {
	return c.Packed.Value.Dimension == quantity.Volume || c.DensityState == kit.Liquid
}

// flashes gathers what meets its flash point, each thing once a run.
type flashes struct {
	Subject
	all  []perRun
	told map[string]bool
}

func (f *flashes) meet(run *kit.Run, step *kit.Step, thing string, temperature *ledger.Figure, at source.Span, how string) {
	c := f.Kit.Component(thing)
	if c == nil || !c.FlashPoint.Given() || !temperature.Known() || f.told[run.Name.Value+"/"+thing] {
		return
	}
	met, flash, written := temperature.Value(), c.FlashPoint.Value.Low, c.FlashPoint.Value.Written
	if met.Less(flash) {
		return
	}
	f.told[run.Name.Value+"/"+thing] = true
	f.all = append(f.all, perRun{run, diag.Finding{
		Where: at, About: c.ID,
		Found:    c.String() + " " + how + " at " + show(met, quantity.Temperature) + " in " + inStep(step) + ", and its flash point is " + written,
		Expected: "to stay below " + written,
		Sum:      []string{show(met, quantity.Temperature) + " − " + written + " = " + show(met.Minus(flash), quantity.Temperature) + " above"},
		Remedies: diag.Fix("add it only when the rest has cooled below "+written+", and say so", "write “add below: "+written+"” under it as well"),
		Also:     []diag.Place{{Where: c.FlashPoint.Span, Note: "its flash point"}},
	}})
}
