package main

import (
	"fmt"
	"strings"

	"tallyfold/kit/label"
)

// writeIngredients tells how the list of ingredients of each filling came about.
func (o *labelsOptions) writeIngredients(p *proved) error {
	var out strings.Builder
	for _, list := range label.Lists(p.Kit, p.Ledger) {
		fmt.Fprintf(&out, "ingredients of %s\n", list.Filling.Numbered())
		if !list.Told() {
			fmt.Fprintf(&out, "  cannot be told: %s\n", list.Why)
			continue
		}
		for _, one := range list.Ingredients {
			fmt.Fprintf(&out, "  %s: %s = %s\n", one.Name, one.Sum, one.Share())
		}
		fmt.Fprintf(&out, "  by 21 CFR 701.3: %s\n  by Regulation (EC) 1223/2009: %s\n", list.US(), list.EU())
		for _, pair := range list.Unsure {
			fmt.Fprintf(&out, "  cannot tell which comes first: %s\n", pair)
		}
		for _, one := range list.Allergens {
			fmt.Fprintf(&out, "  allergen to be named: %s, %s = %s\n", one.Name, one.Sum, one.Share())
		}
		if len(list.AllergensUntold) > 0 {
			fmt.Fprintf(&out, "  allergens cannot be told of: %s\n", strings.Join(list.AllergensUntold, ", "))
		}
	}
	_, err := fmt.Fprint(o.out, out.String())
	return err
}
