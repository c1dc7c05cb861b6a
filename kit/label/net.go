package label

import (
	"slices"
	"strings"

	"tallyfold/kit"
	"tallyfold/kit/ledger"
	"tallyfold/kit/quantity"
)

// A Net is what may be declared as the net contents of one finished piece.
type Net struct {
	Piece *kit.Piece
	// Container holds it; nil for a piece that lies in none.
	Container *kit.Component
	// Fillings are those of the piece, over all runs.
	Fillings []*ledger.Filling
	// Declared is the lowest likely fill, or what the maker claims where that is less; in
	// base units of Dimension. It is 0 where Why says that it cannot be told.
	Declared  quantity.Number
	Dimension quantity.Dimension
	// Sum tells how it was reckoned, lines.
	Sum string
	// Why it cannot be told, or "".
	Why string
	// Short: the maker claims more than the lowest likely fill.
	Short bool
}

// Told says whether net contents can be told.
func (n Net) Told() bool { return n.Why == "" }

// seed is that of the draws, so that a kit declares the same each time.
const seed = 1

// Nets gives the declared net contents of each kind of finished piece that the steps fill
// into a container.
//
// The figure is that of the lowest likely fill over all runs, not of the average: 39 of 40
// pieces hold at least so much, when every written figure falls anywhere within its
// tolerance (ledger.Draw). A maker's smaller claim stands; of a larger one it is said that
// it is Short. Liquids that run are told by volume, all else by weight (21 CFR 701.13);
// a claim says which.
func Nets(k *kit.Kit, l *ledger.Ledger) []Net {
	all := filled(k, l)
	for i := range all {
		all[i].declare()
	}
	return all
}

// WhyNoNet says why the net contents of a filling cannot be told, or "". It draws nothing.
func WhyNoNet(k *kit.Kit, l *ledger.Ledger, f *ledger.Filling) string {
	for _, n := range filled(k, l) {
		if slices.Contains(n.Fillings, f) {
			_, why := n.held()
			return why
		}
	}
	return "no kind of piece under “pieces” is this filling"
}

// filled are the kinds of piece that the steps fill, nothing reckoned yet.
func filled(k *kit.Kit, l *ledger.Ledger) []Net {
	var all []Net
	for _, piece := range k.Pieces {
		n := Net{Piece: piece}
		for _, f := range l.Fillings {
			if f.Container.ID == piece.In.Value && !f.Empty() && f.Operation != nil && isOf(f, piece) {
				n.Container, n.Fillings = f.Container, append(n.Fillings, f)
			}
		}
		if n.Container == nil {
			continue
		}
		n.Dimension = dimensionOf(piece, n.Fillings[0])
		all = append(all, n)
	}
	return all
}

func isOf(f *ledger.Filling, piece *kit.Piece) bool {
	return !piece.Of.Given() || f.Mixture == nil || f.Mixture.ID == piece.Of.Value
}

func dimensionOf(piece *kit.Piece, f *ledger.Filling) quantity.Dimension {
	switch {
	case piece.Net.Given():
		return piece.Net.Value.Dimension
	case f.Mixture != nil && f.Mixture.Flows.Value == kit.Thin:
		return quantity.Volume
	}
	return quantity.Mass
}

// held are what each filling holds in the dimension that is declared, or why that cannot be
// told.
func (n *Net) held() (figures []*ledger.Figure, why string) {
	for _, f := range n.Fillings {
		held := f.Dried()
		if n.Dimension == quantity.Volume {
			held = f.Volume()
		}
		if held.Dimension != n.Dimension || !held.Known() {
			return nil, whyNot(n.Fillings, f, held)
		}
		figures = append(figures, held)
	}
	if len(figures) == 0 {
		return nil, "no step fills it"
	}
	return figures, ""
}

// Ends are what the emptiest filling holds as written, and at its worst, in base units; false
// where that cannot be told.
func (n *Net) Ends() (written, worst quantity.Number, ok bool) {
	figures, why := n.held()
	if why != "" {
		return written, worst, false
	}
	for i, figure := range figures {
		low, _ := figure.Worst()
		if i == 0 || figure.Value().Less(written) {
			written = figure.Value()
		}
		if i == 0 || low.Less(worst) {
			worst = low
		}
	}
	return written, worst, true
}

func (n *Net) declare() {
	var figures []*ledger.Figure
	if figures, n.Why = n.held(); n.Why != "" {
		return
	}
	show := func(q quantity.Number) string { return quantity.Show(q, n.Dimension, quantity.Down()) }
	var sums []string
	for i, spread := range ledger.Draw(figures, ledger.Drawings, seed) {
		low := figures[i].Value()
		sum := n.Fillings[i].Numbered() + ": " + figures[i].Sum()
		if figures[i].Uncertain() {
			worst, _ := figures[i].Worst()
			low = quantity.Larger(worst, quantity.FromFloat(spread.Low))
			sum += "; 39 of 40 hold at least " + show(low)
		}
		if i == 0 || low.Less(n.Declared) {
			n.Declared = low
		}
		sums = append(sums, sum)
	}
	if claim := n.Piece.Net; claim.Given() {
		n.Short = n.Declared.Less(claim.Value.Nominal)
		sums = append(sums, "claimed: "+claim.Value.Written+"; the lowest likely fill is "+show(n.Declared))
		n.Declared = quantity.Smaller(n.Declared, claim.Value.Nominal)
	}
	n.Sum = strings.Join(sums, "\n")
}

func whyNot(all []*ledger.Filling, f *ledger.Filling, held *ledger.Figure) string {
	why := held.Why()
	if why == "" {
		why = "what is in it is not told in the same kind of unit as the claim"
	}
	if len(all) > 1 {
		return f.Numbered() + ": " + why
	}
	return why
}

// A Statement is net contents as they are printed, in both systems.
type Statement struct {
	Metric string // "578 g"
	// Customary is in ounces; InLarger tells the same in pounds, pints or quarts, or is "".
	Customary, InLarger string
}

// String joins them, metric first: "578 g · 20.4 oz (1 lb 4.4 oz)".
func (s Statement) String() string {
	text := s.Metric
	if s.Customary != "" {
		text += " · " + s.Customary
	}
	if s.InLarger != "" {
		text += " (" + s.InLarger + ")"
	}
	return text
}

// larger are the units above the ounce, with how many ounces each has.
var larger = map[quantity.Dimension][]struct {
	name   string
	ounces int64
}{
	quantity.Mass:   {{"lb", 16}},
	quantity.Volume: {{"gal", 128}, {"qt", 32}, {"pt", 16}},
}

// State tells net contents, g or mL, in both systems. Both are cut to three digits, and
// ounces to two decimals, never rounded up: so neither promises more than there is (NIST SP
// 1038, 4.4.1.2; 16 CFR 500.27 cuts its examples so; 21 CFR 701.13 allows two decimals).
// From a pound or pint on the larger units follow in brackets, from 4 lb or a gallon on
// they stand alone (21 CFR 701.13(m)). language is a BCP 47 tag.
func State(net quantity.Number, d quantity.Dimension, language string) Statement {
	how := []quantity.Style{quantity.Language(language), quantity.Down(), quantity.Digits(3)}
	s := Statement{Metric: quantity.Show(net, d, how...)}
	units, known := larger[d]
	if !known {
		return s
	}
	unit := "oz"
	if d == quantity.Volume {
		unit = "fl oz"
	}
	ounce, _ := quantity.UnitNamed(unit, quantity.USCustomary)
	ounces := cut(net.Over(ounce.Factor))
	figure := func(n quantity.Number) string {
		return quantity.Show(n, quantity.Count, quantity.Language(language), quantity.Down(), quantity.Digits(5))
	}
	s.Customary = figure(ounces) + " " + unit
	if ounces.Less(quantity.Whole(units[len(units)-1].ounces)) {
		return s
	}
	var parts []string
	rest := ounces
	for _, u := range units {
		if n := rest.Over(quantity.Whole(u.ounces)).Int(); n > 0 {
			parts = append(parts, figure(quantity.Whole(n))+" "+u.name)
			rest = rest.Minus(quantity.Whole(n * u.ounces))
		}
	}
	if rest.Sign() > 0 {
		parts = append(parts, figure(rest)+" oz")
	}
	s.InLarger = strings.Join(parts, " ")
	if most := quantity.Whole(largest[d]); !ounces.Less(most) {
		s.Customary, s.InLarger = s.InLarger, ""
	}
	return s
}

// largest is from how many ounces on the larger units stand alone: 4 lb, 1 gal.
var largest = map[quantity.Dimension]int64{quantity.Mass: 64, quantity.Volume: 128}

// cut takes ounces down to three digits and at most two decimals.
func cut(n quantity.Number) quantity.Number {
	places := int64(100)
	switch {
	case !n.Less(quantity.Whole(100)):
		places = 1
	case !n.Less(quantity.Whole(10)):
		places = 10
	}
	return quantity.Ratio(n.Times(quantity.Whole(places)).Int(), places)
}
