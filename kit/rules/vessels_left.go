package rules

import (
	"tallyfold/kit"
	"tallyfold/kit/diag"
	"tallyfold/kit/ledger"
	"tallyfold/kit/quantity"
)

func leftInVessels(s Subject) []diag.Finding {
	var all []perRun
	for _, r := range s.Ledger.Remainders {
		if !r.UsedLater {
			all = append(all, newLeftVessel(s, r, false).findings()...)
		}
	}
	for _, r := range s.Ledger.Cleaned {
		all = append(all, newLeftVessel(s, r, true).findings()...)
	}
	for _, r := range s.Ledger.Discarded {
		if finding, ok := newLeftVessel(s, r, false).thrownAway(); ok {
			all = append(all, perRun{r.Run, finding})
		}
	}
	return overRuns(s.Kit, all)
}

// mayBeThrownAway is the part of what was made that a method may throw away after the
// last fill without a word to the maker (common practice, no source).
var mayBeThrownAway = quantity.Ratio(1, 5)

// thrownAway is for a remainder that the method throws away: a customer has paid for it.
func (v leftVessel) thrownAway() (diag.Finding, bool) {
	if v.making == nil || v.filling == nil || !v.held.Known() || !v.made.Known() {
		return diag.Finding{}, false
	}
	beyond := v.held.Value().Minus(v.keeps())
	if beyond.Cmp(v.made.Value().Times(mayBeThrownAway)) <= 0 {
		return diag.Finding{}, false
	}
	finding := v.tooMuch(beyond)
	finding.Severity = diag.ShouldFix
	finding.Found = show(beyond, v.dimension) + " from " + v.name + " is thrown away after " + inStep(v.Step) + ", " + percent(beyond.Over(v.made.Value())) + " of what was made"
	finding.Expected = "at most a fifth thrown away"
	finding.Remedies = finding.Remedies[:len(finding.Remedies)-1] // what is done with it is said
	return finding, true
}

// A leftVessel is a remainder with what is needed to judge it.
type leftVessel struct {
	Subject
	*ledger.Remainder
	name      string
	cleaned   bool // it is what was washed out
	dimension quantity.Dimension
	held      *ledger.Figure // what is left, by mass, else by volume
	making    *ledger.Making // what was poured from in this run; nil if it never was
	made      *ledger.Figure // all of that, in the same dimension
	filling   *ledger.Filling
}

func newLeftVessel(s Subject, r *ledger.Remainder, cleaned bool) leftVessel {
	v := leftVessel{Subject: s, Remainder: r, name: s.Kit.Called(r.Vessel), cleaned: cleaned, dimension: quantity.Mass, held: r.Mass()}
	if !v.held.Known() {
		v.dimension, v.held = quantity.Volume, r.Volume()
	}
	if v.making = lastMaking(s.Ledger, r.Run, r.Vessel); v.making == nil || r.Last == nil {
		v.making = nil
		return v
	}
	v.made = contentsIn(&v.making.Contents, v.dimension)
	for _, f := range s.Ledger.Fillings {
		if f.Run == r.Run && f.Operation == r.Last {
			v.filling = f
		}
	}
	return v
}

// findings tells the remainder unless it is what the vessel is expected to keep.
func (v leftVessel) findings() []perRun {
	finding, ok := v.neverEmptied()
	if v.making != nil {
		finding, ok = v.beyondResidue()
	}
	if !ok {
		finding, ok = v.stillLying()
	}
	if !ok {
		return nil
	}
	return []perRun{{v.Run, finding}}
}

// stillLying is for what lies in a vessel that is cleaned or put away: no residue, but
// the yarn itself.
func (v leftVessel) stillLying() (diag.Finding, bool) {
	for _, object := range v.Objects() {
		c := v.Kit.Component(object.Thing)
		if c == nil || !c.Carries.Given() {
			continue
		}
		last := lastInto(v.Ledger, v.Run, v.Vessel)
		if last == nil {
			return diag.Finding{}, false
		}
		when := "at the end"
		if v.cleaned {
			when = "when it is cleaned"
		}
		return diag.Finding{
			Where: amountSpan(last.Operation), About: v.Vessel,
			Found:    object.Amount.Show() + " of " + c.String() + " still lies in " + v.name + " " + when,
			Expected: "a step that takes it out, or says that it is kept",
			Remedies: diag.Fix(
				"lift it out: [the "+c.String()+"](move:"+c.ID+"?from="+v.Vessel+"&into=…)",
				"say what is done with it: [Take it out](left:"+c.ID+"?from="+v.Vessel+"&as=kept)"),
		}, true
	}
	return diag.Finding{}, false
}

func (v leftVessel) beyondResidue() (diag.Finding, bool) {
	if !v.held.Known() || !v.made.Known() || len(v.Parts()) == 0 {
		return diag.Finding{}, false // told by no-density
	}
	beyond := v.held.Value().Minus(v.keeps())
	if beyond.Cmp(v.made.Value().Times(v.allowed())) <= 0 {
		return diag.Finding{}, false
	}
	return v.tooMuch(beyond), true
}

// keeps is the most that is expected to stay behind.
func (v leftVessel) keeps() quantity.Number {
	if v.Residue == nil {
		return quantity.Number{}
	}
	_, high := v.Residue.Worst()
	if v.Residue.Dimension == v.dimension {
		return high
	}
	if told := v.Density(); told.Known() {
		if v.dimension == quantity.Mass {
			return high.Times(told.Value())
		}
		return high.Over(told.Value())
	}
	return quantity.Number{}
}

// allowed is the part of what was made that may be left beyond the residue: what
// a kitchen scale shows; without a told residue also what clings to a vessel
// (common practice, no source).
func (v leftVessel) allowed() quantity.Number {
	if v.Residue == nil {
		return quantity.Ratio(1, 20)
	}
	return noticeable
}

// weight of a remainder: from a tenth of what was made or a whole piece on it must
// be fixed, from a twentieth it should be, a spoonful is worth knowing.
func (v leftVessel) weight(beyond quantity.Number) diag.Severity {
	part := beyond.Over(v.made.Value())
	switch {
	case quantity.Whole(1).Cmp(v.more(beyond)) <= 0, quantity.Ratio(1, 10).Cmp(part) <= 0:
		return diag.MustFix
	case quantity.Ratio(1, 20).Cmp(part) <= 0:
		return diag.ShouldFix
	}
	return diag.WorthKnowing
}

func (v leftVessel) tooMuch(beyond quantity.Number) diag.Finding {
	finding := diag.Finding{
		Severity: v.weight(beyond), Where: amountSpan(v.Last), About: v.Vessel,
		Found:    v.name + " still holds " + v.held.Show() + " after " + inStep(v.Step),
		Expected: v.expected(), Sum: v.sum(beyond), Remedies: v.remedies(beyond),
	}
	more := v.more(beyond)
	if v.cleaned {
		finding.Found = v.name + " holds " + v.held.Show() + " when it is cleaned after " + inStep(v.Step)
	}
	if quantity.Ratio(1, 2).Cmp(more) <= 0 {
		finding.Found += ", enough for " + oneDigit(more) + " more (" + v.filling.Container.String() + ")"
	}
	if v.filling != nil && emptyContainers(v.Subject, v.filling.Container) > 0 {
		finding.Cause, finding.Follows = containersCause(v.filling.Container.ID), true
	} else if cause := notCleanCause(v.Subject, v.Run, v.Vessel); cause != "" {
		finding.Cause, finding.Follows = cause, true
	}
	return finding
}

func (v leftVessel) expected() string {
	if v.Residue == nil {
		return "nothing left but what clings to it (kit.yaml tells no residue)"
	}
	return "no more than its residue, " + v.Residue.Show()
}

func (v leftVessel) sum(beyond quantity.Number) []string {
	sum := []string{"made: " + v.made.Sum()}
	if v.filling != nil && v.filling.Operation.Kind == kit.Fill {
		count := whole(v.filling.Count)
		each := contentsIn(&v.filling.Contents, v.dimension)
		if each.Known() {
			sum = append(sum, "filled: "+count.String()+" × "+each.Show()+" = "+show(count.Times(each.Value()), v.dimension))
		}
	}
	left := "left: " + v.held.Show()
	if v.Residue != nil {
		left += ", of which " + show(v.keeps(), v.dimension) + " may stay behind, so " + show(beyond, v.dimension) + " too much"
	}
	part := show(beyond, v.dimension) + " ÷ " + v.made.Show() + " = " + percent(beyond.Over(v.made.Value())) + " of what was made"
	return lines(append(sum, left, part)...)
}

// more is how many pieces of the last filling the remainder would make.
func (v leftVessel) more(beyond quantity.Number) quantity.Number {
	each := v.each()
	if each == nil || each.Value().Sign() <= 0 {
		return quantity.Number{}
	}
	return beyond.Over(each.Value())
}

// each is what one container of the last filling took from this vessel.
func (v leftVessel) each() *ledger.Figure {
	if v.filling == nil {
		return nil
	}
	if each := contentsIn(&v.filling.Contents, v.dimension); each.Known() {
		return each
	}
	return nil
}

func (v leftVessel) remedies(beyond quantity.Number) []diag.Remedy {
	var remedies []diag.Remedy
	if fuller, ok := v.fillMore(beyond); ok {
		remedies = append(remedies, fuller)
	}
	if less, ok := v.makeLess(beyond); ok {
		remedies = append(remedies, less)
	}
	if more := v.more(beyond); more.Cmp(quantity.Whole(1)) >= 0 {
		remedies = append(remedies, diag.Remedy{
			Do: "pack and fill " + plural(int(more.Int()), "container") + " more" + v.forEachRun(), Changes: v.addContainers(int(more.Int()))})
	}
	return append(remedies, diag.Remedy{
		Do: "say what is done with it: [Keep the rest](left:" + v.Vessel + "?as=kept), and for what"})
}

func (v leftVessel) forEachRun() string {
	if len(v.Kit.Runs) > 1 {
		return " in the run"
	}
	return ""
}

// fillMore offers a fuller container where the container has room for it.
func (v leftVessel) fillMore(beyond quantity.Number) (diag.Remedy, bool) {
	each := v.each()
	if each == nil || each.Value().Sign() <= 0 || v.Last.Kind != kit.Fill || !v.Last.Phrase.To && v.Last.Phrase.Portion != kit.Exactly {
		return diag.Remedy{}, false
	}
	told, ok := v.Last.Phrase.Amount()
	if !ok || told.Dimension != v.dimension && told.Dimension != quantity.Volume {
		return diag.Remedy{}, false
	}
	grow := quantity.Whole(1).Plus(beyond.Over(each.Value().Times(whole(v.filling.Count))))
	volume, room := v.filling.Volume(), v.filling.Room()
	if !volume.Known() || !room.Known() || room.Value().Less(volume.Value().Times(grow)) {
		return diag.Remedy{}, false
	}
	return diag.Remedy{
		Do:      "fill each to " + down(told.Nominal.Times(grow), told) + " instead of " + told.Written,
		Then:    "there is room for " + room.Show() + " in each",
		Changes: retell(v.Kit, v.Last, told.Nominal.Times(grow), false),
	}, true
}

// makeLess offers the amounts of a smaller batch, the shares kept.
func (v leftVessel) makeLess(beyond quantity.Number) (diag.Remedy, bool) {
	part := v.made.Value().Minus(beyond).Over(v.made.Value())
	var amounts []string
	changes, exact := []diag.Change{}, true
	for _, p := range v.making.Parts() {
		if !p.Amount.Known() {
			continue
		}
		like := likePacked(v.Kit, p.Thing, p.Amount.Dimension)
		less, now := up(p.Amount.Value().Times(part), like), up(p.Amount.Value(), like)
		if less != now {
			amounts = append(amounts, less+" of "+v.Kit.Called(p.Thing)+" instead of "+now)
			change := v.takeLess(p.Thing, part)
			changes, exact = append(changes, change...), exact && change != nil
		}
	}
	if !exact {
		changes = nil
	}
	return diag.Remedy{
		Do:      "make less: " + listed(amounts),
		Then:    show(v.made.Value().Minus(beyond), v.dimension) + " instead of " + v.made.Show() + " would do",
		Changes: changes,
	}, len(amounts) > 0
}

// takeLess changes the one amount by which a thing came into the vessel, or its pack
// where all of that goes in; nil where several links or none tell it.
func (v leftVessel) takeLess(thing string, part quantity.Number) []diag.Change {
	entry := lastTaken(v.Ledger, v.Run, thing)
	if entry == nil || entry.To != v.Vessel || entry.Operation.Phrase.Each {
		return nil
	}
	if c := v.Kit.Component(thing); c != nil && isWholePack(entry) && entry.Amount.Value().Equal(c.Packed.Value.Nominal) {
		return repack(v.Kit, c, packUp(c.Packed.Value.Nominal.Times(part), c))
	}
	if entry.Operation.Phrase.Portion != kit.Exactly {
		return nil
	}
	for _, e := range v.Ledger.Entries {
		if e.Run == v.Run && e.Thing == thing && e.Move == ledger.Taken && e.Operation != entry.Operation {
			return nil
		}
	}
	told := entry.Operation.Phrase.Amounts[0]
	return retell(v.Kit, entry.Operation, told.Nominal.Times(part), true)
}

// neverEmptied is a vessel that something was put into and nothing says what then.
// Water that a customer rinses a brush in may be poured away without a word.
func (v leftVessel) neverEmptied() (diag.Finding, bool) {
	tool := v.Kit.Tool(v.Vessel)
	if len(v.Parts()) == 0 && (tool == nil || !tool.Holds.Given()) {
		return diag.Finding{}, false // beads on a tray are taken off it
	}
	last := lastInto(v.Ledger, v.Run, v.Vessel)
	if last == nil || v.cleaned && v.onlyHousehold() {
		return diag.Finding{}, false // an earlier run put it there, and was judged
	}
	if v.goesAway() {
		return diag.Finding{}, false // only what clings is left of what was kept or poured away
	}
	var holds []string
	for _, p := range append(v.Parts(), v.Objects()...) {
		holds = append(holds, p.Amount.Show()+" of "+v.Kit.Called(p.Thing))
	}
	found := v.name + " is filled in " + inStep(last.Step) + " and never emptied"
	if v.cleaned {
		found = v.name + " is cleaned with all that " + inStep(last.Step) + " put into it"
	}
	cause := noVesselCause(v.Ledger, v.Run)
	if cause == "" {
		cause = usedTooEarlyCause(v.Subject, v.Run, v.Vessel)
	}
	return diag.Finding{
		Where: amountSpan(last.Operation), About: v.Vessel, Cause: cause, Follows: cause != "",
		Found:    found,
		Expected: "a step that pours it out, fills it into something, or says that it is kept",
		Sum:      []string{"it holds " + listed(holds) + " at the end"},
		Remedies: diag.Fix(
			"pour it on: [all of it](move:"+v.Vessel+"?into=…)",
			"say what is done with it: [Keep it](left:"+v.Vessel+"?as=kept)"),
	}, true
}

func (v leftVessel) onlyHousehold() bool {
	for _, p := range append(v.Parts(), v.Objects()...) {
		if v.Kit.HouseholdItem(p.Thing) == nil {
			return false
		}
	}
	return true
}

// goesAway says whether a step of the run says what is done with all that is in the
// vessel.
func (v leftVessel) goesAway() bool {
	last := false
	for _, e := range v.Ledger.Entries {
		switch {
		case e.Run != v.Run:
		case e.To == v.Vessel && e.Move != ledger.LeftOver:
			last = false
		case e.From == v.Vessel && e.Move == ledger.LeftOver && empties(e.Operation):
			last = true
		}
	}
	return last
}
