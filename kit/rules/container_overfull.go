package rules

import (
	"tallyfold/kit"
	"tallyfold/kit/diag"
	"tallyfold/kit/ledger"
	"tallyfold/kit/quantity"
)

var containerOverfull = Rule{
	Name:     "container-overfull",
	Severity: diag.MustFix,
	Sums:     true,
	Title:    "More is filled into a container than it has room for",
	Explanation: `The room in a container is what it holds up to the rim, less the headspace, less every
insert: a sunk one takes its whole volume, a floating one its weight divided by the
density of the fill (Archimedes). The fill must fit into that room.

Where the fill fits as told, but would run over the rim if every figure were at its
bad end, the finding should be fixed. So it should be where nobody says how much the
container holds.

Fill less, use a larger container, or leave the insert out.`,
	Check: func(s Subject) []diag.Finding {
		var all []perRun
		for _, f := range s.Ledger.Fillings {
			if finding, ok := overfull(s, f); ok {
				all = append(all, perRun{f.Run, finding})
			}
		}
		return overRuns(s.Kit, all)
	},
	NotLookedAt: func(s Subject) []string {
		if len(s.Ledger.Fillings) > 0 {
			return nil
		}
		return []string{"no step fills a container"}
	},
}

func overfull(s Subject, f *ledger.Filling) (diag.Finding, bool) {
	if len(f.Parts()) == 0 {
		return diag.Finding{}, false
	}
	room, volume := f.Room(), f.Volume()
	if !room.Known() {
		return roomUntold(f, room)
	}
	if !volume.Known() {
		low, _, ok := volumeBounds(s.Kit, &f.Contents)
		if !ok || low.Cmp(room.Value()) <= 0 {
			return diag.Finding{}, false // told by no-density
		}
		volume = ledger.Fixed(quantity.Volume, "at least", low)
	}
	switch over := volume.Value().Minus(room.Value()); {
	case over.Cmp(room.Value().Times(rounding)) > 0:
		finding := tooFull(s.Kit, f, room, volume)
		_, byInsert := forgotten(f)
		if _, told := isUpTo(f.Operation); told || byInsert {
			finding.Cause, finding.Follows = roomCause(f.Container.ID), true
		}
		return finding, true
	case f.Volume().Known():
		return overAtWorst(s.Kit, f, room, volume)
	}
	return diag.Finding{}, false
}

func tooFull(k *kit.Kit, f *ledger.Filling, room, volume *ledger.Figure) diag.Finding {
	name := f.Container.String()
	over := volume.Value().Minus(room.Value())
	finding := fillFinding(f, volume)
	finding.Found = "each " + name + " gets " + volume.Show() + ", and has room for " + room.Show()
	finding.Expected = "at most " + room.Show() + " in each"
	finding.Remedies = fillLess(k, f, room.Value(), volume.Value(), volume.Value())
	finding.Sum = append(finding.Sum, volume.Show()+" − "+room.Show()+" = "+show(over, quantity.Volume)+" too much")
	if line := worstCase("what stays free", f.Free()); line != "" {
		finding.Sum = append(finding.Sum, line)
	}
	return finding
}

// fillFinding has what is told of any filling.
func fillFinding(f *ledger.Filling, volume *ledger.Figure) diag.Finding {
	return diag.Finding{
		Where: amountSpan(f.Operation), About: f.Container.ID,
		Sum: append(roomSum(f), "fill: "+volume.Sum()), Also: roomPlaces(f),
	}
}

// roomSum shows how the room was reckoned: brimful less headspace less inserts.
func roomSum(f *ledger.Filling) []string {
	brimful, headspace := f.Brimful(), f.Container.Container.Headspace
	if !brimful.Known() || !headspace.Given() && len(f.Inserts) == 0 {
		return []string{"room: " + f.Room().Sum()}
	}
	line := "room: " + brimful.Show() + " (brimful)"
	if headspace.Given() {
		line += " − " + headspace.Value.Written + " (headspace)"
	}
	for _, insert := range f.Inserts {
		if takes := f.Takes(insert); takes.Known() && takes.Value().Sign() > 0 {
			line += " − " + takes.Show() + " (" + insertWords(insert) + ")"
		}
	}
	sum := []string{line + " = " + f.Room().Show()}
	for _, insert := range f.Inserts {
		if insert.Component.Insert != nil && insert.Component.Insert.Sits.Value == kit.Floats {
			sum = append(sum, insert.Component.String()+", which floats: "+f.Takes(insert).Sum())
		}
	}
	return sum
}

func insertWords(insert ledger.PlacedInsert) string {
	if insert.Count > 1 {
		return whole(insert.Count).String() + " × " + insert.Component.String()
	}
	return insert.Component.String()
}

func roomPlaces(f *ledger.Filling) []diag.Place {
	var all []diag.Place
	container := f.Container.Container
	if container.Brimful.Given() {
		all = append(all, diag.Place{Where: container.Brimful.Span, Note: "holds " + container.Brimful.Value.Written})
	}
	for _, insert := range f.Inserts {
		all = append(all, diag.Place{Where: amountSpan(insert.Operation), Note: insert.Component.String() + " goes in, " + inStep(insert.Step)})
	}
	return all
}

// fillLess offers a fill that has room, in the unit of the link where it told one,
// or a container that has room for what is wanted (all mL).
func fillLess(k *kit.Kit, f *ledger.Filling, room, volume, wanted quantity.Number) []diag.Remedy {
	bigger := diag.Remedy{Do: "use a container with room for " + up(wanted, quantity.Amount{Dimension: quantity.Volume}) + " under its headspace"}
	if room.Sign() <= 0 {
		return []diag.Remedy{bigger}
	}
	part := room.Over(volume)
	fits := down(room, quantity.Amount{Dimension: quantity.Volume})
	less := diag.Remedy{Do: "fill each with " + fits + " at most"}
	if told, ok := f.Operation.Phrase.Amount(); ok && f.Operation.Kind == kit.Fill && told.Nominal.Sign() > 0 &&
		(told.Dimension == quantity.Mass || told.Dimension == quantity.Volume) {
		fill := down(told.Nominal.Times(part), told)
		less = diag.Remedy{Do: "fill each to " + fill + " instead of " + told.Written, Changes: retell(k, f.Operation, told.Nominal.Times(part), false)}
		if told.Dimension == quantity.Mass {
			less.Then = fits
		}
	}
	return []diag.Remedy{less, bigger}
}

// overAtWorst is a fill that fits as told but can run over the rim.
func overAtWorst(k *kit.Kit, f *ledger.Filling, room, volume *ledger.Figure) (diag.Finding, bool) {
	underRim := ledger.Plus(quantity.Volume, "free up to the rim", f.Free(), f.Headspace())
	low, _ := underRim.Worst()
	if low.Sign() >= 0 {
		return diag.Finding{}, false
	}
	over := low.Negated()
	finding := fillFinding(f, volume)
	finding.Remedies = fillLess(k, f, volume.Value().Minus(over), volume.Value(), room.Value().Plus(over))
	finding.Severity = diag.ShouldFix
	finding.Found = "each " + f.Container.String() + " has room as told, but can run over by " +
		show(over, quantity.Volume) + " where every figure is at its bad end"
	finding.Expected = "a fill that stays under the rim within all tolerances"
	finding.Sum = append(finding.Sum, worstCase("what stays free up to the rim", underRim))
	return finding, true
}

// roomUntold: nothing in kit.yaml says how much goes in.
func roomUntold(f *ledger.Filling, room *ledger.Figure) (diag.Finding, bool) {
	c := f.Container
	return diag.Finding{
		Severity: diag.ShouldFix, Where: c.IDSpan, About: c.ID,
		Found:    "cannot check whether " + c.String() + " has room for its fill: " + room.Why(),
		Expected: "how much goes into it up to the rim, the headspace, and the volume of every insert",
		Remedies: diag.Fix(
			"fill one with water up to the rim, weigh the water, and write “brimful: … mL” under container",
			"give its inside shape, such as “inside: cylinder 68 mm wide, 80 mm tall”"),
		Also: []diag.Place{{Where: amountSpan(f.Operation), Note: "filled here, " + inStep(f.Step)}},
	}, true
}
