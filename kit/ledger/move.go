package ledger

import (
	"strings"

	"tallyfold/kit"
	"tallyfold/kit/quantity"
)

// move pours from one vessel into another, or lifts one thing out of a vessel.
func (f *follower) move() {
	from := f.operation.From
	if from == "" || f.vesselOf(f.operation.Target) != nil {
		from = f.operation.Target
	}
	source := f.vesselOf(from)
	if shelf := f.shelves[f.worked()]; shelf != nil && source != nil {
		f.moveIntoContainers(shelf, source)
		return
	}
	if among := strings.Split(f.operation.Into, ","); len(among) > 1 && source != nil {
		f.moveAmong(source, among)
		return
	}
	to := f.vessel(f.worked())
	switch {
	case source == nil:
		return // names nothing: the reader of the method has said so
	case to == nil:
		f.snag(NoVessel, source.Vessel, nil, nil, "nothing says into which vessel")
		return
	case source == to:
		f.snag(NoVessel, source.Vessel, nil, nil, "it would go into the vessel that it comes from")
		return
	}
	if source.Empty() {
		f.snag(Empty, source.Vessel, nil, nil, "")
		return
	}
	f.keepMaking(source)
	source.step, source.last = f.step, f.operation
	if m := f.material(f.operation.Target); m != nil && f.operation.From != "" {
		f.lift(source, to, m)
		return
	}
	f.pour(source, to)
}

// moveAmong shares what is moved equally between several vessels.
func (f *follower) moveAmong(source *vessel, among []string) {
	if source.Empty() {
		f.snag(Empty, source.Vessel, nil, nil, "")
		return
	}
	f.keepMaking(source)
	source.step, source.last = f.step, f.operation
	share, _ := f.shareOf(source)
	count := Fixed(quantity.Count, "vessels", quantity.Whole(int64(len(among))))
	for _, p := range source.takeShare(share) {
		each := Over(p.amount.Dimension, p.material.name, p.amount, count)
		for _, key := range among {
			if to := f.vessel(key); to != nil {
				f.enterMoved(p, source, to, each, to.Temperature)
				f.receiveFrom(to, source, portion{p.material, each})
			}
		}
	}
}

// enterMoved notes that a portion goes from vessel to vessel, as hot as the first is. met is
// the temperature of what it comes to.
func (f *follower) enterMoved(p portion, source, to *vessel, amount, met *Figure) {
	f.enter(Moved, p.material.key, source.Vessel, to.Vessel, amount, met)
	f.ledger.Entries[len(f.ledger.Entries)-1].Moving = source.Temperature
}

// receiveFrom puts a portion of another vessel's mixture into a vessel; an empty
// one then holds that mixture, as warm as it was.
func (f *follower) receiveFrom(to, source *vessel, p portion) {
	if len(to.portions) == 0 {
		if to.Mixture = f.mixtureMadeIn(to.Vessel); to.Mixture == nil {
			to.Mixture = source.Mixture
		}
	}
	if to.Temperature == nil {
		to.Temperature = source.Temperature
	}
	to.put(p)
}

// moveIntoContainers shares what is moved equally over the containers of the run.
func (f *follower) moveIntoContainers(s *shelf, source *vessel) {
	if len(source.portions) == 0 {
		f.snag(Empty, source.Vessel, nil, nil, "")
		return
	}
	f.keepMaking(source)
	source.step, source.last = f.step, f.operation
	g := f.groupFor(s, f.said(), true)
	g.step, g.operation, g.filled = f.step, f.operation, true
	g.Mixture, g.Temperature = source.Mixture, source.Temperature
	share, _ := f.shareOf(source)
	f.pourInto(g, source, source.takeShare(share))
}

// vesselOf finds the vessel with a key, or the one a mixture of that name is made in.
func (f *follower) vesselOf(key string) *vessel {
	if m := f.kit.Mixture(key); m != nil {
		return f.vessel(m.MadeIn.Value)
	}
	if f.kit.Tool(f.resolve(key)) == nil && f.vessels[f.resolve(key)] == nil {
		return nil
	}
	return f.vessel(key)
}

// pour moves the phrase's part of a mixture, objects with it when all goes.
func (f *follower) pour(source, to *vessel) {
	share, all := f.shareOf(source)
	met := to.Temperature
	for _, p := range source.takeShare(share) {
		f.enterMoved(p, source, to, p.amount, met)
		f.receiveFrom(to, source, p)
	}
	if all {
		for _, p := range source.takeObjects() {
			f.enter(Moved, p.material.key, source.Vessel, to.Vessel, p.amount, nil)
			to.put(p)
		}
	}
}

// shareOf gives which share of a vessel's mixture the phrase moves. All of it is
// a nil share when no residue stays behind; all says that the vessel is emptied.
func (f *follower) shareOf(v *vessel) (share *Figure, all bool) {
	phrase := f.operation.Phrase
	switch phrase.Portion {
	case kit.Exactly:
		return f.exactShare(v), false
	case kit.FractionOf:
		return Fixed(quantity.Share, "part", phrase.Fraction), false
	}
	return f.emptying(v), true
}

// exactShare is a told amount over what the vessel holds.
func (f *follower) exactShare(v *vessel) *Figure {
	phrase := f.operation.Phrase
	told := Written("from "+v.name+", "+f.here(), phrase.Amounts[0], phrase.AmountSpans[0])
	held := v.measured(told.Dimension)
	if told.Dimension != quantity.Mass && told.Dimension != quantity.Volume {
		f.snag(OtherKind, v.Vessel, told, held, "a mixture is poured by weight or volume")
		return Unknown(quantity.Share, told.Name, "it is not told by weight or volume")
	}
	return f.shareWanted(v, told, held)
}

// shareWanted is wanted over held; more than is held notes a snag and takes all.
func (f *follower) shareWanted(v *vessel, wanted, held *Figure) *Figure {
	if !held.Known() {
		f.snag(NoDensity, v.Vessel, wanted, held, held.Why())
		return Unknown(quantity.Share, "part of "+v.name, held.Why())
	}
	if held.Value().Less(wanted.Value()) {
		f.snag(Short, v.Vessel, wanted, held, "")
		return nil
	}
	if held.Value().IsZero() {
		return nil // nothing of nothing is all of it
	}
	return shareOf("part of "+v.name, wanted, held)
}

// emptying is the share that leaves a vessel when it is emptied: all but its residue.
func (f *follower) emptying(v *vessel) *Figure {
	residue := f.residueOf(v)
	if residue == nil || len(v.portions) == 0 {
		return nil
	}
	held := v.measured(residue.Dimension)
	if !held.Known() {
		f.snag(NoDensity, v.Vessel, residue, held, held.Why())
		return nil
	}
	if held.Value().IsZero() {
		return nil // came from an empty pack: there is nothing to stay behind
	}
	stays := Smaller("stays in "+v.name, residue, held)
	return shareOf("part of "+v.name, Minus("leaves "+v.name, held, stays), held)
}

// residueOf a vessel: its own, or the one said once for the mixture in it.
func (f *follower) residueOf(v *vessel) *Figure {
	if v.residue == nil && v.Mixture != nil && v.Mixture.Residue.Given() {
		v.residue = Written("residue of "+v.Mixture.String(), v.Mixture.Residue.Value, v.Mixture.Residue.Span)
	}
	return v.residue
}

// keepMaking notes the mixture as it leaves its vessel, once for each making.
func (f *follower) keepMaking(v *vessel) {
	if len(v.portions) == 0 || v.noted {
		return
	}
	v.noted = true
	f.ledger.Makings = append(f.ledger.Makings, &Making{
		Contents: v.Contents.copy(), Run: f.run, Step: f.step, Operation: f.operation,
	})
}

// clean empties a vessel of its residue, and of whatever else is in it.
func (f *follower) clean() {
	if v := f.vesselOf(f.operation.Target); v != nil {
		if !v.Empty() {
			f.ledger.Cleaned = append(f.ledger.Cleaned, f.remainderIn(v))
		}
		for _, p := range append(v.takeShare(nil), v.takeObjects()...) {
			f.enter(WashedOut, p.material.key, v.Vessel, "", p.amount, nil)
		}
		v.Mixture, v.Temperature, v.step, v.last = nil, nil, nil, nil
	}
}

// bring sets the temperature of what a vessel holds.
func (f *follower) bring() {
	key := f.worked()
	if f.operation.Target != "" {
		key = f.operation.Target
	}
	v := f.vesselOf(key)
	amount, told := f.operation.Phrase.Amount()
	if v == nil || !told {
		return
	}
	temperature := Written("temperature of "+v.name, amount, f.operation.Phrase.AmountSpans[0])
	if f.operation.Phrase.By {
		if v.Temperature == nil {
			return
		}
		temperature = f.changeBy(v, temperature)
	}
	v.Temperature = temperature
	if f.operation.Kind == kit.Warm {
		f.evaporate(v)
	}
}

func (f *follower) changeBy(v *vessel, change *Figure) *Figure {
	if f.operation.Kind == kit.Cool {
		return Minus(v.Temperature.Name, v.Temperature, change)
	}
	return Plus(quantity.Temperature, v.Temperature.Name, v.Temperature, change)
}
