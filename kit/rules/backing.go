package rules

import (
	"tallyfold/kit"
	"tallyfold/kit/ledger"
	"tallyfold/kit/quantity"
	"tallyfold/kit/source"
)

// A backingFigure is a figure of the kit that can back a number in a claim.
type backingFigure struct {
	// what names it so that a figure may follow: "makes says", "the steps take".
	what      string
	dimension quantity.Dimension
	value     quantity.Number
	// nouns are what is counted, cut into single words; for counts only.
	nouns []string
	where source.Span
	// stated: it is the maker's own figure, which other rules hold against the steps.
	stated bool
	// ofRun: it is of one run only, so that the words must speak of one.
	ofRun bool
}

func (f backingFigure) shown() string {
	if f.dimension == quantity.Count {
		return f.value.String()
	}
	return show(f.value, f.dimension)
}

// backingOf are the figures behind what a claim is shown by.
func backingOf(s Subject, by string) []backingFigure {
	switch by {
	case "pieces":
		return pieceFigures(s)
	case "time":
		return timeFigures(s)
	}
	return thingFigures(s, by)
}

// pieceFigures are the numbers of pieces, and what is in one and in all of them.
func pieceFigures(s Subject) []backingFigure {
	var all []backingFigure
	if makes := s.Kit.Makes; makes.Given() {
		all = append(all, backingFigure{what: "“makes” says", dimension: quantity.Count, value: makes.Value.Nominal,
			nouns: pieceNouns(s.Kit), where: makes.Span, stated: true})
	}
	for _, piece := range s.Kit.Pieces {
		all = append(all, onePiece(s, piece)...)
	}
	for _, c := range s.Kit.Components {
		if n := filled(s.Ledger, c); c.Container != nil && n > 0 {
			all = append(all, backingFigure{what: "the steps fill", dimension: quantity.Count, value: whole(n), nouns: pieceNouns(s.Kit)})
		}
	}
	perRun := map[*kit.Run]int{}
	for _, f := range s.Ledger.Fillings {
		perRun[f.Run] += f.Count
		all = append(all, fillFigures(f)...)
	}
	all = append(all, allFills(s.Ledger)...)
	for _, run := range s.Kit.Passes() {
		if n := perRun[run]; n > 0 && len(s.Kit.Runs) > 1 {
			all = append(all, backingFigure{what: "the run " + runName(s.Kit, run) + " fills", dimension: quantity.Count, value: whole(n), nouns: pieceNouns(s.Kit), ofRun: true})
		}
	}
	return all
}

func onePiece(s Subject, piece *kit.Piece) []backingFigure {
	var all []backingFigure
	if piece.Count.Given() {
		all = append(all, backingFigure{what: "“count” of " + piece.String() + " says", dimension: quantity.Count, value: piece.Count.Value.Nominal,
			nouns: wordsOf(piece.String()), where: piece.Count.Span, stated: true})
	}
	if piece.Net.Given() {
		all = append(all, backingFigure{what: "“net” of " + piece.String() + " says", dimension: piece.Net.Value.Dimension, value: piece.Net.Value.Nominal,
			where: piece.Net.Span, stated: true})
	}
	return all
}

// pieceNouns are the words by which a claim counts pieces: of "makes", of the kinds
// of piece and of their containers.
func pieceNouns(k *kit.Kit) []string {
	nouns := wordsOf(k.Makes.Value.Noun)
	for _, piece := range k.Pieces {
		nouns = append(nouns, wordsOf(piece.String())...)
	}
	for _, c := range k.Components {
		if c.Container != nil {
			nouns = append(nouns, wordsOf(c.String())...)
		}
	}
	return nouns
}

// allFills are what all pieces hold together.
func allFills(l *ledger.Ledger) []backingFigure {
	var masses, volumes []*ledger.Figure
	for _, f := range l.Fillings {
		count := ledger.Fixed(quantity.Count, f.Container.String(), whole(f.Count))
		masses = append(masses, ledger.Times(quantity.Mass, "fill", count, f.Mass()))
		volumes = append(volumes, ledger.Times(quantity.Volume, "fill", count, f.Volume()))
	}
	var all []backingFigure
	for _, figure := range []*ledger.Figure{ledger.Plus(quantity.Mass, "fills", masses...), ledger.Plus(quantity.Volume, "fills", volumes...)} {
		if figure.Known() && figure.Value().Sign() > 0 {
			all = append(all, backingFigure{what: "all pieces together get", dimension: figure.Dimension, value: figure.Value()})
		}
	}
	return all
}

func fillFigures(f *ledger.Filling) []backingFigure {
	var all []backingFigure
	for _, figure := range []*ledger.Figure{f.Mass(), f.Volume()} {
		if figure.Known() && figure.Value().Sign() > 0 {
			all = append(all, backingFigure{what: "each " + f.Container.String() + " gets", dimension: figure.Dimension, value: figure.Value()})
		}
	}
	return all
}

// timeFigures are what the steps take: the work, each wait, the whole, of one run and
// of all; and the times that kit.yaml claims, which time-claimed-too-short holds
// against the steps.
func timeFigures(s Subject) []backingFigure {
	var all []backingFigure
	add := func(what string, f *ledger.Figure, ofRun bool) {
		if f.Known() && f.Value().Sign() > 0 {
			all = append(all, backingFigure{what: what, dimension: quantity.Duration, value: f.Value(), ofRun: ofRun})
		}
	}
	add("the work takes", s.Plan.HandsOn, false)
	add("from first to last it takes", s.Plan.Total, false)
	for _, claimed := range []kit.Said[quantity.Amount]{s.Kit.Time.HandsOn, s.Kit.Time.Total} {
		if claimed.Given() {
			all = append(all, backingFigure{what: "“time” says", dimension: quantity.Duration, value: claimed.Value.Nominal, where: claimed.Span, stated: true})
		}
	}
	for _, run := range s.Kit.Passes() {
		var work, both []*ledger.Figure
		for _, line := range s.Plan.Lines {
			if line.Run == run {
				work, both = append(work, line.Work), append(both, line.Work, line.Wait)
				add(inStep(line.Step)+" waits", ledger.Plus(quantity.Duration, "wait", line.Wait, line.Beside), false)
			}
		}
		if len(s.Kit.Runs) > 1 {
			add("the work of the run "+runName(s.Kit, run)+" takes", ledger.Plus(quantity.Duration, "work", work...), true)
			add("the run "+runName(s.Kit, run)+" takes", ledger.Plus(quantity.Duration, "run", both...), true)
		}
	}
	return all
}

// thingFigures are those of one thing of the kit.
func thingFigures(s Subject, key string) []backingFigure {
	if piece := s.Kit.Piece(key); piece != nil {
		all := onePiece(s, piece)
		for _, f := range s.Ledger.Fillings {
			if f.Container.ID == piece.In.Value && (piece.Of.Value == "" || f.Mixture != nil && f.Mixture.ID == piece.Of.Value) {
				all = append(all, fillFigures(f)...)
			}
		}
		return all
	}
	var packed kit.Said[quantity.Amount]
	if c := s.Kit.Component(key); c != nil {
		packed = c.Packed
	}
	if tool := s.Kit.Tool(key); tool != nil {
		packed = tool.Packed
	}
	if !packed.Given() {
		return nil
	}
	name := s.Kit.Called(key)
	return []backingFigure{{what: "the pack of " + name + " holds", dimension: packed.Value.Dimension, value: packed.Value.Nominal,
		nouns: append(wordsOf(name), wordsOf(packed.Value.Noun)...), where: packed.Span}}
}

// comparableTo are the figures of the kind of a number; a count must be of something
// that the figure counts.
func comparableTo(a quantity.Amount, figures []backingFigure) []backingFigure {
	var all []backingFigure
	for _, f := range figures {
		if f.dimension == a.Dimension && (a.Dimension != quantity.Count || countsThe(f, a.Noun)) {
			all = append(all, f)
		}
	}
	return all
}

func countsThe(f backingFigure, noun string) bool {
	for _, word := range wordsOf(noun) {
		for _, known := range f.nouns {
			if singular(word) == singular(known) {
				return true
			}
		}
	}
	return false
}

func anyFits(a quantity.Amount, figures []backingFigure) bool {
	for _, f := range figures {
		if f.fits(a) {
			return true
		}
	}
	return false
}

// longerAllowed is how much longer a claimed time may be than what the steps take: a
// claim is rounded up (common practice, no source).
var longerAllowed = quantity.Ratio(5, 4)

// fits says whether a number in a claim says no more than the figure.
func (f backingFigure) fits(a quantity.Amount) bool {
	near := f.value.Minus(a.Nominal).Abs().Cmp(a.Nominal.Times(aboutAllows)) <= 0
	switch {
	case a.Bound == quantity.About:
		return near
	case a.Bound != quantity.Exactly:
		return a.Allows(f.value)
	case f.dimension == quantity.Duration && !f.stated:
		return f.value.Cmp(a.Nominal) <= 0 && a.Nominal.Cmp(f.value.Times(longerAllowed)) <= 0
	case f.dimension == quantity.Count:
		return a.Allows(f.value)
	}
	// A round figure such as “1 kg” may stand for what it is rounded from, and no
	// further off than “about” allows.
	told := ledger.Written("claimed", a, source.Span{})
	return near && ledger.Agrees(a, told, ledger.Fixed(f.dimension, f.what, f.value))
}

// nearestTo is the figure that a number differs least from, before one of the maker's
// own, which another rule holds against the steps.
func nearestTo(a quantity.Amount, figures []backingFigure) backingFigure {
	best := figures[0]
	for _, f := range figures[1:] {
		off, least := f.value.Minus(a.Nominal).Abs(), best.value.Minus(a.Nominal).Abs()
		if best.stated && !f.stated || best.stated == f.stated && off.Less(least) {
			best = f
		}
	}
	return best
}
