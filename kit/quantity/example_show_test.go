package quantity_test

import (
	"fmt"

	"tallyfold/kit/quantity"
)

func ExampleReader_Find_counted() {
	reader := quantity.Reader{Counted: func(noun string) bool { return noun == "jars" }}
	text := "There are 3 ways to fill six small jars."
	for _, found := range reader.Find(text) {
		fmt.Println(text[found.Start:found.End])
	}
	// Output:
	// six small jars
}

func ExampleShow() {
	kilo := quantity.Whole(1250)
	third := quantity.Ratio(1, 3)
	fmt.Println(quantity.Show(kilo, quantity.Mass))
	fmt.Println(quantity.Show(third, quantity.Share))
	fmt.Println(quantity.Show(quantity.Whole(4800), quantity.Duration))
	fmt.Println(quantity.Show(kilo.Times(third), quantity.Mass, quantity.Within(quantity.Whole(5))))
	fmt.Println(quantity.Show(kilo, quantity.Mass, quantity.Language("fr")))
	// Output:
	// 1.25 kg
	// 33.3 %
	// 1 h 20 min
	// 417 g
	// 1,25 kg
}

func ExampleShowRange() {
	// A level cup of powder of 0.50–0.70 g/mL, by US customary cups.
	cup, _ := quantity.UnitNamed("cup", quantity.USCustomary)
	powder := quantity.Range{Low: quantity.Ratio(50, 100), High: quantity.Ratio(70, 100)}
	mass := powder.Times(quantity.Exact(cup.Factor))
	fmt.Println(quantity.ShowRange(mass.Low, mass.High, quantity.Mass))
	// Output:
	// 118–166 g
}

func ExampleHousehold() {
	text, off, _ := quantity.Household(quantity.Whole(35), quantity.Metric)
	fmt.Println(text, "off by", quantity.Show(off, quantity.Share))
	// Output:
	// 2 tbsp + 1 tsp off by 0 %
}

func ExampleDualNet() {
	fmt.Println(quantity.DualNet(quantity.Whole(195), quantity.Mass))
	fmt.Println(quantity.DualNet(quantity.Whole(500), quantity.Volume))
	// Output:
	// 195 g (6.87 oz)
	// 500 mL (16.9 fl oz)
}

func ExampleConvert() {
	fahrenheit, _ := quantity.UnitNamed("°F", quantity.USCustomary)
	celsius, _ := quantity.UnitNamed("°C", quantity.USCustomary)
	n, err := quantity.Convert(quantity.Whole(140), fahrenheit, celsius)
	fmt.Println(n, err)
	gram, _ := quantity.UnitNamed("g", quantity.USCustomary)
	_, err = quantity.Convert(quantity.Whole(140), gram, celsius)
	fmt.Println(err)
	// Output:
	// 60 <nil>
	// found a mass (g); expected a temperature, as it is to be told in °C
}
