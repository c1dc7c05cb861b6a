package ledger

import (
	"tallyfold/kit"
	"tallyfold/kit/quantity"
)

// fill pours from the vessel worked in into containers, the same into each.
func (f *follower) fill() {
	shelf := f.shelves[f.resolve(f.operation.Target)]
	if shelf == nil {
		return // no container: the reader of the method has said so
	}
	source := f.vesselOf(f.source())
	if source == nil {
		f.snag(NoVessel, shelf.container.ID, nil, nil, "nothing says from which vessel")
		return
	}
	group := f.groupFor(shelf, f.said(), true)
	group.step, group.operation, group.filled = f.step, f.operation, true
	if len(source.portions) == 0 {
		f.snag(Empty, source.Vessel, nil, nil, "")
		return
	}
	f.keepMaking(source)
	source.step, source.last = f.step, f.operation
	share := f.fillShare(source, group)
	group.Mixture, group.Temperature = source.Mixture, source.Temperature
	f.pourInto(group, source, source.takeShare(share))
	f.clings(source, group)
}

// clings notes a fill that takes what cannot be poured: of a vessel's residue nothing
// comes out, so that the last container gets less.
func (f *follower) clings(source *vessel, g *group) {
	residue := f.residueOf(source)
	if residue == nil || f.operation.Phrase.Portion != kit.Exactly || f.operation.Phrase.About {
		return
	}
	left := source.measured(residue.Dimension)
	if len(source.portions) == 0 {
		left = Fixed(residue.Dimension, "left in "+source.name, quantity.Number{})
	}
	if left.Known() && left.Value().Less(residue.Value()) {
		f.snag(Clings, g.Vessel, residue, left, source.name)
	}
}

// said is the number of containers in the words, 0 when they name none.
func (f *follower) said() int {
	return max(f.operation.Phrase.EachCount, f.operation.Phrase.Count)
}

// pourInto shares portions equally over the containers of a group.
func (f *follower) pourInto(g *group, source *vessel, portions []portion) {
	count := Fixed(quantity.Count, "containers", quantity.Whole(int64(g.count)))
	for _, p := range portions {
		f.enter(Filled, p.material.key, source.Vessel, g.Vessel, p.amount, source.Temperature)
		g.add(portion{p.material, Over(p.amount.Dimension, p.material.name, p.amount, count)})
	}
}

// fillShare is which share of the vessel goes into the group; nil is all of it.
func (f *follower) fillShare(source *vessel, g *group) *Figure {
	phrase := f.operation.Phrase
	if phrase.Portion == kit.Exactly && !phrase.About {
		return f.fillExactly(source, g)
	}
	if phrase.Portion == kit.FractionOf {
		return Fixed(quantity.Share, "part", phrase.Fraction)
	}
	share := f.emptying(source)
	if phrase.About {
		f.compareAbout(source, g, share)
	}
	return share
}

// fillExactly is the told amount for each container times their number, less what
// "to" finds already in them, over what the vessel holds.
func (f *follower) fillExactly(source *vessel, g *group) *Figure {
	told := f.operation.Phrase.Amounts[0]
	span := f.operation.Phrase.AmountSpans[0]
	each := Written("in each "+f.kit.Called(g.Vessel), told, span)
	if told.Dimension == quantity.Length {
		each = f.volumeAtHeight(g, each)
	}
	if each.Dimension != quantity.Mass && each.Dimension != quantity.Volume {
		f.snag(OtherKind, g.Vessel, each, nil, "a container is filled by weight, volume or height")
		return Unknown(quantity.Share, each.Name, "the fill is not told by weight, volume or height")
	}
	f.compareFills(source, g, each)
	if f.operation.Phrase.To && len(g.portions) > 0 {
		each = f.topUp(g, each)
	}
	count := Fixed(quantity.Count, f.kit.Called(g.Vessel), quantity.Whole(int64(g.count)))
	wanted := Times(each.Dimension, "fills, "+f.here(), count, each)
	if !each.Known() {
		return Unknown(quantity.Share, "part of "+source.name, each.Why())
	}
	return f.shareWanted(source, wanted, source.measured(each.Dimension))
}

// compareFills holds the further tellings of a fill ("190 g (6.7 oz weight)") against
// the first, by the density of what is poured where one is a weight and one a volume.
func (f *follower) compareFills(source *vessel, g *group, each *Figure) {
	phrase := f.operation.Phrase
	for i := 1; i < len(phrase.Amounts); i++ {
		told := Written("told", phrase.Amounts[i], phrase.AmountSpans[i])
		converted := told
		switch {
		case told.Dimension == each.Dimension:
		case told.Dimension == quantity.Volume && each.Dimension == quantity.Mass:
			converted = Times(quantity.Mass, told.Name, told, source.Density())
		case told.Dimension == quantity.Mass && each.Dimension == quantity.Volume:
			converted = Over(quantity.Volume, told.Name, told, source.Density())
		default:
			continue
		}
		if each.Known() && converted.Known() && !Agrees(phrase.Amounts[i], converted, each) {
			f.snag(NotTheSame, g.Vessel, told, each, phrase.Amounts[i].Written)
		}
	}
}

// topUp is what "to" still adds to each container. From one that holds more already
// nothing is poured back: it stays as it is, and the maker hears of it.
func (f *follower) topUp(g *group, to *Figure) *Figure {
	held := g.measured(to.Dimension)
	added := Minus("added to each", to, held)
	if added.Known() && added.Value().Sign() < 0 {
		f.snag(NotTheSame, g.Vessel, to, held.Called("already in each"), "")
		return Fixed(to.Dimension, added.Name, quantity.Number{})
	}
	return added
}

// volumeAtHeight reads a fill height told from the base by the container's shape.
func (f *follower) volumeAtHeight(g *group, height *Figure) *Figure {
	container := f.kit.Component(g.Vessel).Container
	up := height.Value()
	if f.operation.Phrase.FromRim {
		up = container.Inside.Value.Tall.Minus(up)
	}
	volume, ok := VolumeTo(container.Inside.Value, up)
	if !ok {
		return Unknown(quantity.Volume, height.Name, "a height was told, and the inside shape of "+
			f.kit.Called(g.Vessel)+" is not given or not that tall")
	}
	return Fixed(quantity.Volume, height.Name, volume)
}

// aboutAllows is how far an "about" figure may be from the equal share.
var aboutAllows = quantity.Ratio(5, 100)

// compareAbout holds the figure of an "about" fill against the equal share.
func (f *follower) compareAbout(source *vessel, g *group, share *Figure) {
	told := Written("told", f.operation.Phrase.Amounts[0], f.operation.Phrase.AmountSpans[0])
	held := source.measured(told.Dimension)
	if share != nil {
		held = Times(told.Dimension, "leaves "+source.name, share, held)
	}
	count := Fixed(quantity.Count, f.kit.Called(g.Vessel), quantity.Whole(int64(g.count)))
	equal := Over(told.Dimension, "equal share", held, count)
	if !equal.Known() {
		f.snag(NoDensity, source.Vessel, told, equal, equal.Why())
		return
	}
	allowed := equal.Value().Times(aboutAllows)
	if allowed.Less(told.Value().Minus(equal.Value()).Abs()) {
		f.snag(NotTheSame, g.Vessel, told, equal, "an equal share")
	}
}

// takeIntoContainers puts what was taken from a pack straight into containers.
func (f *follower) takeIntoContainers(s *shelf, m *material, amount *Figure) {
	g := f.groupFor(s, f.operation.Phrase.EachCount, false)
	g.step, g.operation, g.filled = f.step, f.operation, true
	count := Fixed(quantity.Count, "containers", quantity.Whole(int64(g.count)))
	g.add(portion{m, Over(m.dimension, m.name, amount, count)})
}

// place puts countable things into containers or a vessel, one each unless said.
func (f *follower) place() {
	m := f.material(f.operation.Target)
	if m == nil {
		return
	}
	into := f.worked()
	s := f.shelves[into]
	if s == nil {
		f.placeInVessel(m, into)
		return
	}
	g := f.groupFor(s, f.operation.Phrase.EachCount, false)
	if f.operation.Phrase.EachCount == 0 {
		f.placeInAll(s, m)
		return
	}
	f.placeIn(g, m, f.perContainer(g.count, m))
}

// placeInAll serves every group of the run alike.
func (f *follower) placeInAll(s *shelf, m *material) {
	each := f.perContainer(s.takenInRun, m)
	for _, g := range s.groups {
		if g.run == f.run {
			f.placeIn(g, m, each)
		}
	}
}

func (f *follower) placeIn(g *group, m *material, each int) {
	total := quantity.Whole(int64(each * g.count))
	f.takeFromPack(Placed, m, g.Vessel, Fixed(quantity.Count, m.name+", "+f.here(), total))
	component := f.kit.Component(m.key)
	if component == nil {
		return
	}
	if g.operation == nil {
		g.step, g.operation = f.step, f.operation
	}
	g.inserts = append(g.inserts, PlacedInsert{Component: component, Step: f.step, Operation: f.operation, Count: each})
}

// perContainer is how many of a thing go into one container. "Three wicks" for
// three jars is one each; "one bag" is one in each; the number must divide.
func (f *follower) perContainer(containers int, m *material) int {
	phrase := f.operation.Phrase
	count := max(1, phrase.Count)
	if phrase.Plural && m.packed.Known() {
		count = max(1, int(f.equalPart(m).Value().Int()))
	}
	if amount, ok := phrase.Amount(); ok && amount.Dimension == quantity.Count {
		count = int(amount.Nominal.Int())
	}
	switch phrase.Portion {
	case kit.AllOf, kit.RestOf:
		if m.left.Known() {
			count = int(m.left.Value().Int())
		}
	}
	if phrase.Each || count == 1 || containers == 0 {
		return max(1, count)
	}
	if count%containers != 0 {
		f.snag(Uneven, m.key, Fixed(quantity.Count, m.name, quantity.Whole(int64(count))),
			Fixed(quantity.Count, "containers", quantity.Whole(int64(containers))), "")
	}
	return max(1, count/containers)
}

func (f *follower) placeInVessel(m *material, into string) {
	entry := f.takeFromPack(Placed, m, into, f.amountOf(m, f.times(into)))
	if v := f.vessel(into); v != nil {
		f.receive(v, portion{m, entry.Amount})
	}
}
