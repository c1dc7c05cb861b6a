package handbook

import (
	"fmt"
	"regexp"
	"strings"

	"tallyfold/kit/quantity"
)

// A Shortfall is how much less than its label says a pack may hold, up to a size.
type Shortfall struct {
	// UpTo is the largest labelled amount that it goes for, in g or mL.
	UpTo quantity.Number
	// Share of the labelled amount, or Fixed in g or mL; the other is 0.
	Share, Fixed quantity.Number
}

// Of is the shortfall of a labelled amount, in g or mL.
func (s Shortfall) Of(labelled quantity.Number) quantity.Number {
	return labelled.Times(s.Share).Plus(s.Fixed)
}

// ShortfallOf is what a requirement allows a pack of a labelled amount, g or mL; false where
// its table does not go so far.
func (r Requirement) ShortfallOf(labelled quantity.Number) (quantity.Number, bool) {
	for _, s := range r.Least {
		if !s.UpTo.Less(labelled) {
			return s.Of(labelled), true
		}
	}
	return quantity.Number{}, false
}

var shortfallRow = regexp.MustCompile(`^up to (\d+) g: (\d+(?:\.\d+)?) (%|g)$`)

// shortfalls reads "up to 36 g: 10 %; up to 54 g: 3.6 g".
func shortfalls(text string) ([]Shortfall, error) {
	var all []Shortfall
	for row := range strings.SplitSeq(text, ";") {
		row = strings.TrimSpace(row)
		if row == "" {
			continue
		}
		parts := shortfallRow.FindStringSubmatch(row)
		if parts == nil {
			return nil, fmt.Errorf("“%s” under Least is not like “up to 54 g: 3.6 g”", row)
		}
		upTo, _ := quantity.ParseNumber(parts[1])
		much, _ := quantity.ParseNumber(parts[2])
		one := Shortfall{UpTo: upTo, Fixed: much}
		if parts[3] == "%" {
			one.Share, one.Fixed = much.Over(quantity.Whole(100)), quantity.Number{}
		}
		all = append(all, one)
	}
	return all, nil
}
