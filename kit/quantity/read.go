package quantity

// MaxText is how many bytes an amount may be written in. The longest sensible one,
// a range of mixed units with a base, is half of that; the limit keeps the time
// for a hostile file small.
const MaxText = 200

// A Reader reads amounts the way one kit writes them. The zero Reader reads
// English with US customary spoons and cups.
type Reader struct {
	// Convention says which spoons, cups and pints are meant.
	Convention Convention
	// DecimalComma: 1,5 is one and a half, and 1.500 is fifteen hundred.
	DecimalComma bool
	// Language is a BCP 47 tag. Known are en, fr, de, es, nl and it; others read as
	// English. Amount understands English too, whatever the language.
	Language string
	// Measures are the kit's own, by the name of one in lower case ("drop"). They go
	// before the table of units.
	Measures map[string]Amount
	// Counted, where given, says whether the kit counts things of this name (singular
	// or plural, as written). Find then tells only counts of those.
	Counted func(noun string) bool
	// Loose: the prose was not written for this reader, and a person looks at what is
	// found in it. Find then takes more for an amount than it can be sure of.
	Loose bool
}

// Amount reads a text that is an amount from end to end:
//
//	1.2 kg ± 10 g      30–40 g       at most 2 % of mixture    up to 1 tsp
//	1 1/2 cups         2 lb 3 oz     half an hour              5 heaped tsp
//	6 jars             30 × 20 cm    80–85 °C                  £12.50
//	0.50–0.70 g/mL     20 mL per g   5 g per 100 g             70 : 100
//
// An error is always an *Error. Not read as amounts, each with its reason told:
// exponents, hexadecimal, underscores, times of day, dates, two units of different
// dimension, figures below nothing other than temperatures, more than MaxDigits
// digits, texts longer than MaxText, and abbreviations that mean two things (T, c, C).
//
// A plain "oz" is read as a weight and marked PlainOunce: whether it can be one
// depends on what is measured, which the Reader does not know.
func (r Reader) Amount(text string) (Amount, error) {
	p, err := r.field(text)
	if err != nil {
		return Amount{}, err
	}
	amount, next, err := p.amount(0)
	if err == nil {
		err = p.leftOver(next, &amount)
	}
	if err != nil {
		return Amount{}, err
	}
	return amount, nil
}

// Difference reads a difference of temperature: "5 °C", "9–18 °F", "by 5 °C". (Amount
// takes "5 °C" for a reading, "by 5 °C" for a difference.)
func (r Reader) Difference(text string) (Amount, error) {
	amount, err := r.Amount(text)
	switch {
	case err != nil:
		return Amount{}, err
	case amount.Dimension == TemperatureDifference:
		return amount, nil
	case amount.Dimension != Temperature:
		return Amount{}, &Error{
			End: len(text), Found: quoted(text) + ", a " + amount.Dimension.String(),
			Expected: "a difference of temperature", Hint: "tell it as 5 °C or 9 °F",
		}
	}
	return amount.AsDifference(), nil
}

// field prepares a text that is to be one amount.
func (r Reader) field(text string) (*parser, *Error) {
	if len(text) > MaxText {
		return nil, &Error{
			End: len(text), Found: "a text of more than 200 characters", Expected: "an amount",
			Hint: "write only the amount here, such as 20 g ± 1 g",
		}
	}
	p := r.parser(text, false)
	if len(p.tokens) == 0 {
		return nil, &Error{End: len(text), Found: "nothing", Expected: "an amount", Hint: "write a figure and a unit, such as 20 g"}
	}
	for i := range p.tokens {
		if p.tokens[i].kind == slipToken {
			return nil, p.slipError(i)
		}
	}
	return p, nil
}

// A Solubility is one point of what a solvent can take up.
type Solubility struct {
	// Ratio is the mass dissolved per mass of solvent, a Proportion, or per volume of
	// it, a Density.
	Ratio Amount
	// Solvent is its name as written ("water").
	Solvent string
	// At is the temperature.
	At Amount
	// Written is the text as the maker wrote it.
	Written string
}

// Solubility reads "5 g per 100 g of water at 20 °C". An error is always an *Error.
func (r Reader) Solubility(text string) (Solubility, error) {
	p, err := r.field(text)
	if err != nil {
		return Solubility{}, err
	}
	ratio, next, err := p.amount(0)
	if err != nil {
		return Solubility{}, err
	}
	if ratio.Dimension != Proportion && ratio.Dimension != Density || ratio.Of == "" {
		return Solubility{}, p.refuse(0, len(p.tokens), "a solubility, such as 5 g per 100 g of water at 20 °C", "")
	}
	_, next2 := p.find(next, atWord)
	if next2 == 0 {
		return Solubility{}, p.refuse(next, len(p.tokens), "the temperature it holds at", "add one: "+text+" at 20 °C")
	}
	at, end, err := p.amount(next2)
	if err == nil && (at.Dimension != Temperature || at.Bound != Exactly) {
		err = p.refuse(next2, end, "a temperature, such as 20 °C", "")
	}
	if err == nil {
		err = p.leftOver(end, &at)
	}
	if err != nil {
		return Solubility{}, err
	}
	return Solubility{Ratio: ratio, Solvent: ratio.Of, At: at, Written: trimmed(text)}, nil
}
