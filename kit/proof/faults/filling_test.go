package faults_test

// Faults in what vessels hold, in what goes with a container, and in what a kit has to
// measure with.
var fillingFaults = []faultKind{
	{name: "a vessel smaller than what is in it", rule: "vessel-too-small", beside: true, edits: swaps("kit.yaml",
		"holds: 1.2 L, residue", "holds: 600 mL, residue", "holds: 4 L", "holds: 2 L", "holds: 5 L, residue", "holds: 1.9 L, residue")},
	{name: "more foam than there is room for", rule: "vessel-too-small", beside: true, edits: swaps("kit.yaml", "foam: 10 %", "foam: 150 %")},
	{name: "fewer labels than containers", rule: "lids-and-labels", beside: true, also: []string{"packed-too-little", "counts-disagree"}, edits: swaps("kit.yaml",
		"name: Burning label, packed: 6,", "name: Burning label, packed: 5,")},
	{name: "a scale too coarse for what is weighed", rule: "not-measurable", beside: true, edits: swaps("kit.yaml", "reads to: 1 g", "reads to: 500 g")},
	{name: "a jug too coarse for what is poured", rule: "not-measurable", beside: true, edits: swaps("kit.yaml", "reads to: 50 mL", "reads to: 5 L")},
	{name: "a ruler too coarse for what is cut", rule: "not-measurable", beside: true, edits: swaps("kit.yaml", "reads to: 1 mm", "reads to: 50 cm")},
	{name: "a percentage of nothing in running text", rule: "percent-of-nothing", edits: func(k *cleanKit) []edit {
		return eachStep(k, "Add 2 % rose water.")
	}},
	{name: "a difference of temperature written as a reading", rule: "difference-as-temperature", edits: func(k *cleanKit) []edit {
		return eachStep(k, "It has to cool by 10 °C (50 °F).")
	}},
	{name: "a sentence with far too many actions", rule: "too-many-actions", edits: func(k *cleanKit) []edit {
		return eachStep(k, "Fold the cloth, cut the string, tie the knot, turn the box, press the lid, fill the cup and wipe the table.")
	}},
}
