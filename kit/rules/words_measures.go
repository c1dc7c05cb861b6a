package rules

import "tallyfold/kit/quantity"

// measuresByWord are words in the name of a tool which say that it measures, by
// language. They are generous: a kit is only blamed where nothing on its list can be
// meant. A further language is one more entry (common practice, no source).
var measuresByWord = map[string]map[quantity.Dimension][]string{
	"en": {
		quantity.Mass: {"scale", "scales", "balance"},
		quantity.Volume: {"jug", "measuring", "measure", "beaker", "cylinder", "syringe", "pipette", "dropper", "cup",
			"spoon", "teaspoon", "tablespoon", "scoop", "pitcher", "flask", "graduated"},
		quantity.Temperature: {"thermometer", "probe"},
		quantity.Length: {"ruler", "rule", "tape", "measure", "yardstick", "guide", "gauge", "template", "pattern", "square",
			"mat", "caliper", "calipers"},
	},
}

// smallSpoons measure up to four tablespoons; for more nobody counts (common
// practice, no source).
var (
	smallSpoons = []string{"spoon", "teaspoon", "tablespoon", "pipette", "dropper", "syringe"}
	mostBySpoon = quantity.Whole(75)
)

// measureNames say what is missing, and an example of it for kit.yaml.
var measureNames = map[quantity.Dimension][2]string{
	quantity.Mass:        {"a scale", "scale: {name: Kitchen scale, from: customer, essential: true, reads to: 1 g}"},
	quantity.Volume:      {"a measuring jug or spoon", "measuring-jug: {name: Measuring jug, from: customer, essential: true, reads to: 25 mL}"},
	quantity.Temperature: {"a thermometer", "thermometer: {name: Thermometer, from: box, essential: true, reads to: 1 °C}"},
	quantity.Length:      {"a ruler", "ruler: {name: Ruler, from: customer, essential: true, reads to: 1 mm}"},
}

// spoonParts are the parts of a spoon or cup that sets have: halves, quarters, thirds
// and an eighth. 21 CFR 101.9(b)(5)(i) has the same for labels, by measure.
var spoonParts = []quantity.Number{
	{}, quantity.Ratio(1, 8), quantity.Ratio(1, 4), quantity.Ratio(1, 3), quantity.Ratio(1, 2), quantity.Ratio(2, 3), quantity.Ratio(3, 4),
}
