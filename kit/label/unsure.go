package label

import "fmt"

// Unsure are two ingredients whose order cannot be told, as their shares overlap.
type Unsure struct {
	First, Second Ingredient
	// EUOnly: only the European rule asks for the order. One of them reaches 1 % and does not
	// pass it, which the American rule lets stand anywhere.
	EUOnly bool
}

// String names them with their shares: "Alcohol (15–18 %) or Glycerin (10–20 %)".
func (u Unsure) String() string {
	text := fmt.Sprintf("%s (%s) or %s (%s)", u.First.Name, u.First.Share(), u.Second.Name, u.Second.Share())
	if u.EUOnly {
		text += ", by the European rule alone"
	}
	return text
}

// Share tells the share of an ingredient with its range: "15–18 %".
func (one Ingredient) Share() string {
	if one.Low.Equal(one.High) {
		return percent(one.High)
	}
	return fmt.Sprintf("%.3g–%s", 100*one.Low.Float(), percent(one.High))
}

// unsure are the pairs whose order may be the other way round, not only neighbours: a wide
// range reaches past several. Both must be able to reach what binds them to their place: in
// Europe 1 % (“less than 1 %” is free; Regulation (EC) 1223/2009, article 19(1)(g)), in the
// United States more than that (“not more than 1 percent” is free; 21 CFR 701.3(f)).
func unsure(sorted []Ingredient) []Unsure {
	var pairs []Unsure
	for i, one := range sorted {
		for _, next := range sorted[i+1:] {
			if one.Colour || next.Colour || one.High.Less(onePercent) || next.High.Less(onePercent) || !one.Low.Less(next.High) {
				continue
			}
			free := !onePercent.Less(one.High) || !onePercent.Less(next.High)
			pairs = append(pairs, Unsure{one, next, free})
		}
	}
	return pairs
}
