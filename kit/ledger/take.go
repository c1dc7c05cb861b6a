package ledger

import (
	"slices"

	"tallyfold/kit"
	"tallyfold/kit/quantity"
)

// take moves material from its pack into a vessel, containers, or the hand.
func (f *follower) take() {
	m := f.material(f.operation.Target)
	if m == nil {
		return
	}
	into := f.worked()
	times := f.times(into)
	amount := f.amountOf(m, times)
	entry := f.takeFromPack(Taken, m, into, amount)
	if shelf := f.shelves[into]; shelf != nil {
		f.takeIntoContainers(shelf, m, entry.Amount)
		return
	}
	if v := f.vessel(into); v != nil {
		f.receive(v, portion{m, entry.Amount})
		return
	}
	if into == "" && !m.countable() && f.pours() {
		f.snag(NoVessel, m.key, nil, nil, "nothing says into which vessel")
	}
}

// pours says whether the run fills or pours anything, so that what is weighed out
// must be in some vessel by then. Clay that is taken into the hand needs none.
func (f *follower) pours() bool {
	for _, part := range f.kit.Method.Parts {
		if !f.run.Follows(part) {
			continue
		}
		for _, step := range part.Steps {
			for _, o := range step.Operations {
				if !o.Aside && (o.Kind == kit.Fill || o.Kind == kit.Move) {
					return true
				}
			}
		}
	}
	return false
}

// use takes from the pack what joins no mixture.
func (f *follower) use() {
	m := f.material(f.operation.Target)
	if m == nil {
		return
	}
	if m.packed == nil && f.operation.Phrase.Portion == kit.NoPortion {
		// Water for a bath, foil to cover: a household item need not be measured.
		f.enter(UsedUp, m.key, m.key, "", Unknown(m.dimension, m.name, "no amount is said"), nil)
		return
	}
	f.takeFromPack(UsedUp, m, "", f.amountOf(m, f.times("")))
}

// takeFromPack enters the movement and lowers what the pack still holds.
func (f *follower) takeFromPack(move Move, m *material, to string, amount *Figure) Entry {
	var temperature *Figure
	if v := f.vessels[to]; v != nil {
		temperature = v.Temperature
	}
	entry := f.enter(move, m.key, m.key, to, amount, temperature)
	m.uses = append(m.uses, entry)
	if m.left != nil {
		m.left = Minus("left of "+m.name, m.left, amount)
	}
	return entry
}

// receive puts a portion into a vessel. A vessel in which a named mixture is made
// holds that mixture from its first portion on.
func (f *follower) receive(v *vessel, p portion) {
	if len(v.portions) == 0 {
		v.Mixture = f.mixtureMadeIn(v.Vessel)
	}
	v.put(p)
}

func (f *follower) mixtureMadeIn(vessel string) *kit.Mixture {
	for _, m := range f.kit.Mixtures {
		if m.MadeIn.Value == vessel {
			return m
		}
	}
	return nil
}

// material finds what a take, use or place names, through the role where it is one.
func (f *follower) material(key string) *material { return f.materials[f.resolve(key)] }

// times is by how much "each" multiplies: the containers or pieces of this run.
func (f *follower) times(into string) *Figure {
	phrase := f.operation.Phrase
	if !phrase.Each {
		return nil
	}
	count := phrase.EachCount
	if count == 0 {
		count = f.piecesInRun(into)
	}
	return Fixed(quantity.Count, "each", quantity.Whole(int64(count)))
}

// piecesInRun is how many containers of this kind a run fills; without containers,
// the pieces the kit makes divided over the runs.
func (f *follower) piecesInRun(container string) int {
	if shelf := f.shelves[container]; shelf != nil {
		return shelf.inRun(f.run)
	}
	if only := f.onlyShelf(); only != nil {
		return only.inRun(f.run)
	}
	makes := f.kit.Makes.Value.Nominal
	return int(makes.Over(quantity.Whole(int64(len(f.kit.Passes())))).Int())
}

// onlyShelf gives the one kind of container of the kit, nil when there are more or none.
func (f *follower) onlyShelf() *shelf {
	if len(f.shelves) != 1 {
		return nil
	}
	for _, s := range f.shelves {
		return s
	}
	return nil
}

// amountOf reckons how much of a material the phrase asks for, in the dimension
// of its pack, for this run.
func (f *follower) amountOf(m *material, times *Figure) *Figure {
	phrase := f.operation.Phrase
	switch phrase.Portion {
	case kit.Exactly:
		return f.exactly(m, times)
	case kit.AllOf, kit.RestOf, kit.FractionOf:
		return f.partOfPack(m, times)
	}
	if f.operation.Text == "" && m.packed != nil {
		return f.equalPart(m)
	}
	if phrase.Plural && m.packed.Known() && m.dimension == quantity.Count {
		return f.equalPart(m)
	}
	if m.countable() {
		return f.oneEach(m, times)
	}
	f.snag(NoAmount, m.key, nil, m.left, "the words name no amount of "+m.name)
	return Unknown(m.dimension, m.name+", "+f.here(), "no amount of "+m.name+" is said in "+f.here())
}

// exactly is a told amount, turned into the dimension of the pack.
func (f *follower) exactly(m *material, times *Figure) *Figure {
	phrase := f.operation.Phrase
	told := phrase.Amounts[0]
	if told.PlainOunce && m.liquid {
		f.snag(PlainOunce, m.key, nil, nil, told.Written)
	}
	m.settle(told.Dimension)
	amount := Written(m.name+", "+f.here(), told, phrase.AmountSpans[0])
	if told.Dimension == quantity.Share && told.Of != "" {
		amount = f.shareOfAnother(m, amount, told.Of)
		if !amount.Known() {
			return amount
		}
	}
	if m.lots > 0 && phrase.Lots.Sign() > 0 {
		// A skein too light is too light in the pack as well: one figure, not two.
		amount = Times(m.dimension, amount.Name, Fixed(quantity.Share, "of the pack", phrase.Lots.Over(quantity.Whole(m.lots))), m.packed)
	}
	amount, trouble := m.inPackDimension(amount)
	if trouble != "" {
		f.snag(trouble, m.key, Written(m.name, told, phrase.AmountSpans[0]), m.left, amount.Why())
		if trouble != OtherKind || !m.reckonAs(told.Dimension) {
			return amount
		}
		amount = Written(m.name+", "+f.here(), told, phrase.AmountSpans[0])
	}
	f.compareTellings(m, amount)
	switch {
	case m.dimension == quantity.Length && amount.Known():
		amount = f.cutLength(m, amount, times)
	case m.dimension == quantity.Area && amount.Known():
		amount = f.cutArea(m, amount, times)
	case times != nil:
		amount = Times(m.dimension, m.name+", "+f.here(), times, amount)
	}
	if phrase.InAll {
		passes := Fixed(quantity.Count, "runs", quantity.Whole(int64(f.passesOf(f.step))))
		amount = Over(m.dimension, m.name+", "+f.here(), amount, passes)
	}
	return amount
}

// partOfPack is all, the rest, or a fraction of what the pack holds.
func (f *follower) partOfPack(m *material, times *Figure) *Figure {
	phrase := f.operation.Phrase
	name := m.name + ", " + f.here()
	if m.packed == nil {
		f.snag(NoAmount, m.key, nil, nil, m.name+" comes from the customer, so there is no pack to take a part of")
		return Unknown(m.dimension, name, "no amount of "+m.name+" is said in "+f.here())
	}
	if m.left.Known() && m.left.Value().Sign() <= 0 {
		f.snag(Empty, m.key, nil, m.left, "")
		return Fixed(m.dimension, name, quantity.Number{})
	}
	amount := m.left.Called(name)
	if phrase.Portion == kit.FractionOf {
		whole := m.left
		if phrase.OfPack {
			whole = m.packed
		}
		amount = Times(m.dimension, name, Fixed(quantity.Share, "part", phrase.Fraction), whole)
		if times != nil {
			amount = Times(m.dimension, name, times, amount)
		}
	}
	f.compareTellings(m, amount)
	return amount
}

// equalPart is what an empty link text stands for: the packed amount without its
// spare, shared equally over the runs that take it.
func (f *follower) equalPart(m *material) *Figure {
	amount := m.packed
	if m.spare != nil {
		amount = Minus(m.name+" without spare", amount, m.spare)
	}
	passes := Fixed(quantity.Count, "runs", quantity.Whole(int64(f.passesTaking(m))))
	return Over(m.dimension, m.name+", "+f.here(), amount, passes)
}

// passesTaking is how many runs go through this step and mean this material by
// the name in the link: a role is another material in another run.
func (f *follower) passesTaking(m *material) int {
	count := 0
	for _, run := range f.kit.Passes() {
		if bound(run, f.operation.Target) == m.key && follows(f.kit, run, f.step) {
			count++
		}
	}
	return max(1, count)
}

// oneEach: a countable thing named without a number is one, or one for each.
func (f *follower) oneEach(m *material, times *Figure) *Figure {
	count := Fixed(quantity.Count, m.name+", "+f.here(), quantity.Whole(int64(max(1, f.operation.Phrase.Count))))
	if m.dimension != quantity.Count {
		f.snag(NoAmount, m.key, nil, m.left, "the words name no length or area of "+m.name)
		return Unknown(m.dimension, count.Name, "no amount of "+m.name+" is said in "+f.here())
	}
	if times != nil {
		count = Times(quantity.Count, count.Name, times, count)
	}
	return count
}

// passesOf is how many runs go through a step.
func (f *follower) passesOf(step *kit.Step) int {
	count := 0
	for _, run := range f.kit.Passes() {
		if follows(f.kit, run, step) {
			count++
		}
	}
	return count
}

func follows(k *kit.Kit, run *kit.Run, step *kit.Step) bool {
	for _, part := range k.Method.Parts {
		if run.Follows(part) && slices.Contains(part.Steps, step) {
			return true
		}
	}
	return false
}
