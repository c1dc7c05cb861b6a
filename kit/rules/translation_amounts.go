package rules

import (
	"tallyfold/kit"
	"tallyfold/kit/diag"
	"tallyfold/kit/ledger"
	"tallyfold/kit/quantity"
)

// How much the links of a translation say, against the method.

// amount judges a pair of links that do the same to the same thing.
func (d *difference) amount(own, other *kit.Operation) {
	if !d.translation.WordsRead || own.Text == "" || other.Text == "" || d.isUnread(other) {
		return // told already, or filled in by the program from one and the same figure
	}
	a, b := oneUnlessSaid(own), oneUnlessSaid(other)
	first, hasFirst := a.Amount()
	told, hasTold := b.Amount()
	switch {
	case hasFirst && hasTold && !d.same(own.Target, first, told):
		d.otherAmount(own, other, first, told)
	case a.By != b.By, a.FromRim != b.FromRim, a.InAll != b.InAll, isFilled(own) && a.About != b.About:
		d.otherMeaning(own, other)
	case a.Portion != b.Portion, a.OfPack != b.OfPack, !a.Fraction.Equal(b.Fraction), a.To != b.To, hasFirst != hasTold && a.Portion == kit.Exactly,
		a.Each != b.Each, a.Count != b.Count:
		if !d.comesToTheSame(own, other) {
			d.otherMeaning(own, other)
		}
	default:
		d.toldAgain(own, other, first)
	}
}

// isUnread says whether a link needs an amount and none could be read, which is told by
// unreadable-amount.
func (d *difference) isUnread(o *kit.Operation) bool {
	if o.Phrase.Portion != kit.NoPortion || len(o.Phrase.Amounts) > 0 {
		return false
	}
	switch o.Kind {
	case kit.Work, kit.Wait, kit.Warm, kit.Cool, kit.Same:
		return true
	case kit.Take, kit.Use:
		c := d.Kit.Component(d.thing(o.Target))
		return c != nil && c.Packed.Value.Dimension != quantity.Count
	}
	return false
}

// oneUnlessSaid is a phrase in which "a label" says one, as it does in languages in
// which "a" and "one" are the same word.
func oneUnlessSaid(o *kit.Operation) kit.Phrase {
	p := o.Phrase
	if amount, told := p.Amount(); told && amount.Dimension == quantity.Count && p.Portion == kit.Exactly && amount.Nominal.Equal(quantity.Whole(1)) && takesThings(o) {
		p.Portion, p.Amounts = kit.NoPortion, nil
	}
	return p
}

func takesThings(o *kit.Operation) bool {
	return o.Kind == kit.Take || o.Kind == kit.Use || o.Kind == kit.Place
}

// isFilled: here "about" means that all is shared out equally.
func isFilled(o *kit.Operation) bool { return o.Kind == kit.Fill || o.Kind == kit.Move }

// toldAgain holds the further figures of a link of the translation against the first
// of the method, which those of the method are held against by the ledger.
func (d *difference) toldAgain(own, other *kit.Operation, first quantity.Amount) {
	if first.Dimension == 0 || len(other.Phrase.Amounts) < 2 {
		return
	}
	for i, again := range other.Phrase.Amounts[1:] {
		if !d.same(own.Target, first, again) {
			f := d.amountFinding(own, other, first, again)
			f.Where = other.Phrase.AmountSpans[i+1]
			d.add(f)
		}
	}
}

// same says whether an amount of the translation is that of the method, units
// converted.
func (d *difference) same(thing string, own, other quantity.Amount) bool {
	if !sameBound(own.Bound, other.Bound) || own.Ranged != other.Ranged {
		return false
	}
	return d.sameFigure(thing, own, other, own.Nominal, other.Nominal) && d.sameFigure(thing, own, other, own.Low, other.Low) &&
		d.sameFigure(thing, own, other, own.High, other.High)
}

// sameBound: "about" says nothing that could differ, "up to" and "at most" the same.
func sameBound(a, b quantity.Bound) bool {
	plain := func(bound quantity.Bound) quantity.Bound {
		switch bound {
		case quantity.About:
			return quantity.Exactly
		case quantity.UpTo:
			return quantity.AtMost
		}
		return bound
	}
	return plain(a) == plain(b)
}

// sameFigure compares one end of two amounts. In one unit they must be equal; in two
// they agree to the last digit written, or within 2 %.
func (d *difference) sameFigure(thing string, own, other quantity.Amount, mine, its quantity.Number) bool {
	if own.Dimension == other.Dimension && (mine.Equal(its) || own.Unit.Symbol == other.Unit.Symbol) {
		return mine.Equal(its)
	}
	figure := ledger.Fixed(own.Dimension, "the method", mine)
	reckoned, ok := converted(d.Kit, d.thing(thing), figure, other.Dimension)
	if !ok || !reckoned.Known() {
		return false
	}
	const percent = 2
	near := reckoned.Value().Times(quantity.Ratio(percent, 100)).Abs()
	if !near.Less(its.Minus(reckoned.Value()).Abs()) {
		return true
	}
	return ledger.Agrees(other, ledger.Fixed(other.Dimension, "told", its), reckoned)
}

// thing is the component that a key or role stands for in the first run.
func (d *difference) thing(key string) string { return resolved(d.Kit.Passes()[0], key) }

func (d *difference) otherAmount(own, other *kit.Operation, first, told quantity.Amount) {
	d.add(d.amountFinding(own, other, first, told))
}

func (d *difference) amountFinding(own, other *kit.Operation, first, told quantity.Amount) diag.Finding {
	written := inMarks(first.Written, d.Kit.Language.Value, d.translation.Language)
	f := diag.Finding{
		Where:    amountSpan(other),
		Found:    d.here() + " says “" + told.Written + "”, and the method “" + first.Written + "” (" + own.Does() + ")",
		Expected: "the same amount, in this or another unit",
		Remedies: diag.Fix("write “"+written+"”, in the words of the language", "put the method right, if the translation is"),
		Also:     besideMethod(amountSpan(own), "in the method"),
	}
	if first.Dimension == told.Dimension && first.Unit.Symbol != told.Unit.Symbol {
		f.Sum = lines(toldAs(told.Written, ledger.Written("told", told, amountSpan(other))), toldAs(first.Written, ledger.Written("told", first, amountSpan(own))))
	}
	return f
}

// otherMeaning tells words that say another portion, or for how many.
func (d *difference) otherMeaning(own, other *kit.Operation) {
	d.add(diag.Finding{
		Where:    amountSpan(other),
		Found:    d.here() + " says “" + other.Text + "”, which is " + meant(other.Phrase) + "; the method says “" + own.Text + "”, " + meant(own.Phrase),
		Expected: "the same part, for as many",
		Remedies: diag.Fix("say in the words of the language: "+meant(own.Phrase), "put the method right, if the translation is"),
		Also:     besideMethod(amountSpan(own), "in the method"),
	})
}

// meant tells what the words of a link say, in plain words.
func meant(p kit.Phrase) string {
	text := ""
	amount, told := p.Amount()
	switch {
	case p.Portion == kit.AllOf:
		text = "all of it"
	case p.Portion == kit.RestOf:
		text = "what is left"
	case p.Portion == kit.FractionOf && p.OfPack:
		text = p.Fraction.Rat().RatString() + " of the pack"
	case p.Portion == kit.FractionOf:
		text = p.Fraction.Rat().RatString() + " of what is there"
	case told && p.By:
		text = "by " + amount.Written
	case told && p.FromRim:
		text = "filled to " + amount.Written + " below the rim"
	case told && p.To:
		text = "filled to " + amount.Written
	case told && p.About:
		text = "about " + amount.Written
	case told:
		text = amount.Written
	case p.Count > 0:
		return whole(p.Count).String()
	default:
		text = "one"
	}
	switch {
	case p.Count > 0:
		text += ", for " + whole(p.Count).String()
	case p.Each:
		text += ", for each"
	}
	if p.InAll {
		text += ", in all"
	}
	return text
}

// followedTwice is what each link moves, in the method and in the translation.
type followedTwice struct {
	own, other map[*kit.Operation]quantity.Number
}

// comesToTheSame says whether two links that say it in other words move the same: "the
// label" and "one label", "each jar" and "each of 3 jars".
func (d *difference) comesToTheSame(own, other *kit.Operation) bool {
	if d.amounts.own == nil {
		translated := *d.Kit
		translated.Method = d.translation.Method
		d.amounts = followedTwice{moved(d.Ledger), moved(ledger.Follow(&translated))}
	}
	mine, known := d.amounts.own[own]
	its, knownToo := d.amounts.other[other]
	return known && knownToo && mine.Equal(its)
}

// moved adds up what each link moves over all runs, in base units. Links of which
// anything is unknown are left out.
func moved(l *ledger.Ledger) map[*kit.Operation]quantity.Number {
	sums := map[*kit.Operation]quantity.Number{}
	unknown := map[*kit.Operation]bool{}
	for _, e := range l.Entries {
		if e.Amount == nil || !e.Amount.Known() {
			unknown[e.Operation] = true
			continue
		}
		sums[e.Operation] = sums[e.Operation].Plus(e.Amount.Value())
	}
	for o := range unknown {
		delete(sums, o)
	}
	return sums
}
