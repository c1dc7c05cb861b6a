package ledger

import (
	"tallyfold/kit/quantity"
	"tallyfold/kit/source"
)

// A Figure is a quantity together with the sum that gave it. It knows its exact
// nominal value, and, through what it was reckoned from, how far it may be off.
// Values are in the base units of kit/quantity (g, mL, 1, mm, mm², s, °C).
//
// A Figure that rests on something the maker has not told has no value: it says
// why instead, and so does everything reckoned from it. Nothing unknown becomes
// zero.
//
// Figures are never changed once made, so that they can be shared: the same
// density used twice errs the same way twice.
type Figure struct {
	Dimension quantity.Dimension
	// Name says what it is, in words that fit into a sum ("Soy wax in step 2").
	Name string
	// Where is the place the figure was written, for what a maker wrote.
	Where source.Span

	how       operation
	from      []*Figure
	value     quantity.Number
	low, high quantity.Number // only for written figures
	unknown   string
	// short: the value is kept to forty decimals where its fraction grows too long.
	short bool
}

// operation is how a figure came about.
type operation int

const (
	written operation = iota // by the maker
	sum
	difference
	product
	quotient
	smaller
	larger
)

// Written makes a figure of an amount the maker wrote, with its tolerance.
func Written(name string, amount quantity.Amount, where source.Span) *Figure {
	return &Figure{
		Dimension: amount.Dimension, Name: name, Where: where,
		value: amount.Nominal, low: amount.Low, high: amount.High,
	}
}

// Fixed makes a figure without tolerance.
func Fixed(dimension quantity.Dimension, name string, value quantity.Number) *Figure {
	return &Figure{Dimension: dimension, Name: name, value: value, low: value, high: value}
}

// Between makes a figure with a given nominal value and the ends it may reach.
func Between(dimension quantity.Dimension, name string, value, low, high quantity.Number) *Figure {
	return &Figure{Dimension: dimension, Name: name, value: value, low: low, high: high}
}

// Unknown makes a figure without a value; why completes "cannot tell: …".
func Unknown(dimension quantity.Dimension, name, why string) *Figure {
	return &Figure{Dimension: dimension, Name: name, unknown: why}
}

// Known says whether the figure has a value. A nil Figure has none.
func (f *Figure) Known() bool { return f != nil && f.unknown == "" }

// Why says what is missing, or "" for a known figure.
func (f *Figure) Why() string {
	if f == nil {
		return "nothing was said of it"
	}
	return f.unknown
}

// Value is the nominal value, exact. An unknown figure has none: ask Known first.
func (f *Figure) Value() quantity.Number {
	if f == nil {
		return quantity.Number{}
	}
	return f.value
}

// Called gives the same figure another name in sums.
func (f *Figure) Called(name string) *Figure {
	named := *f
	named.Name = name
	// A written figure must stay the same quantity under both names, or its error
	// would be counted as two independent ones: the new name stands before it.
	if f.how == written {
		named.how, named.from = sum, []*Figure{f}
	}
	return &named
}

// Plus adds figures of one dimension; of none it gives zero.
func Plus(dimension quantity.Dimension, name string, all ...*Figure) *Figure {
	if why := firstUnknown(all); why != "" {
		return Unknown(dimension, name, why)
	}
	result := &Figure{Dimension: dimension, Name: name, how: sum, from: all}
	for _, f := range all {
		result.value = result.value.Plus(f.value)
	}
	return result
}

// Minus gives a − b.
func Minus(name string, a, b *Figure) *Figure {
	return join(difference, a.Dimension, name, a, b, quantity.Number.Minus)
}

// Times gives a × b in the given dimension.
func Times(dimension quantity.Dimension, name string, a, b *Figure) *Figure {
	return join(product, dimension, name, a, b, quantity.Number.Times)
}

// Over gives a ÷ b in the given dimension. Dividing by nothing cannot be told.
func Over(dimension quantity.Dimension, name string, a, b *Figure) *Figure {
	if a.Known() && b.Known() && b.value.IsZero() {
		return Unknown(dimension, name, b.Name+" is nothing, and nothing can be divided by it")
	}
	return join(quotient, dimension, name, a, b, quantity.Number.Over)
}

// partOf is a part that is taken of an amount, shareOf the share that a wanted amount
// is of what is held: product and quotient, exact up to the point where fractions have
// grown beyond all use (quantity.Number.Shortened). What stays is the exact difference,
// so that nothing is lost or made by the rounding.
func partOf(name string, amount, share *Figure) *Figure {
	return Times(amount.Dimension, name, amount, share).shortened()
}

func shareOf(name string, wanted, held *Figure) *Figure {
	return Over(quantity.Share, name, wanted, held).shortened()
}

func (f *Figure) shortened() *Figure {
	f.short = true
	f.value = f.value.Shortened()
	return f
}

// Smaller gives the lesser of two figures.
func Smaller(name string, a, b *Figure) *Figure {
	return join(smaller, a.Dimension, name, a, b, quantity.Smaller)
}

// Larger gives the greater of two figures.
func Larger(name string, a, b *Figure) *Figure {
	return join(larger, a.Dimension, name, a, b, quantity.Larger)
}

func join(how operation, dimension quantity.Dimension, name string, a, b *Figure,
	reckon func(a, b quantity.Number) quantity.Number) *Figure {
	if why := firstUnknown([]*Figure{a, b}); why != "" {
		return Unknown(dimension, name, why)
	}
	return &Figure{Dimension: dimension, Name: name, how: how, from: []*Figure{a, b}, value: reckon(a.value, b.value)}
}

func firstUnknown(all []*Figure) string {
	for _, f := range all {
		if !f.Known() {
			return f.Why()
		}
	}
	return ""
}
