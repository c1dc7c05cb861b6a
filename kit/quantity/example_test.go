package quantity_test

import (
	"fmt"

	"tallyfold/kit/quantity"
)

func ExampleReader_Amount() {
	r := quantity.Reader{Convention: quantity.Metric}
	for _, text := range []string{"62 g ± 1 g", "1½ cups", "at most 2 % of the mixture", "2 T"} {
		a, err := r.Amount(text)
		if err != nil {
			fmt.Println(err)
			continue
		}
		fmt.Printf("%s: a %v of %s to %s\n", a, a.Dimension,
			quantity.Show(a.Low, a.Dimension), quantity.Show(a.High, a.Dimension))
	}
	// Output:
	// 62 g ± 1 g: a mass of 61 g to 63 g
	// 1½ cups: a volume of 375 mL to 375 mL
	// at most 2 % of mixture: a share of 0 % to 2 %
	// found “T”; expected a unit such as g, mL, cm, min or °C, or the name of what is counted; T is a tablespoon to some and a tonne or teaspoon to others; write tbsp, tsp or kg
}

func ExampleReader_Find() {
	text := "In step 3, melt 62 g of wax at 80–85 °C for about 20 min."
	for _, found := range (quantity.Reader{}).Find(text) {
		fmt.Printf("%s, a %v\n", text[found.Start:found.End], found.Amount.Dimension)
	}
	// Output:
	// 62 g, a mass
	// 80–85 °C, a temperature
	// about 20 min, a time
}
