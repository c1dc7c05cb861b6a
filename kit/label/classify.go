package label

import (
	"fmt"
	"strings"

	"tallyfold/kit"
	"tallyfold/kit/ledger"
	"tallyfold/kit/quantity"
)

// A Class is what published cut-offs make of a mixture for one hazard, as information: who
// classifies a mixture needs more than this, and is a competent person.
type Class struct {
	// Hazard is skin, eyes or allergy.
	Hazard string
	// Statement is the H-statement that the sum comes to, or "" where it comes to none.
	Statement string
	// Sum tells the shares and the cut-off they were held against.
	Sum string
}

// A Classification is that of one filling.
type Classification struct {
	Filling *ledger.Filling
	Classes []Class
	// Why it cannot be reckoned, or "".
	Why string
}

// Classifications reckons for each filling what its components' H-statements come to by the
// cut-offs and the additivity of 29 CFR 1910.1200, appendix A.2 to A.4 (2024; read), which
// have the structure of the UN GHS. Only H314, H315, H317, H318 and H319 of components count,
// by their share of mass. Strong acids and alkalis, some surfactants, phenols, aldehydes and
// inorganic salts do not add up so; substance-specific limits are not known here.
func Classifications(k *kit.Kit, l *ledger.Ledger) []Classification {
	var all []Classification
	for _, f := range l.Fillings {
		if f.Empty() || f.Operation == nil || !bearsAny(k, f) {
			continue
		}
		c := Classification{Filling: f}
		if whole := f.Mass(); whole.Known() && whole.Value().Sign() > 0 {
			c.Classes = classesOf(k, f, whole.Value())
		} else {
			c.Why = "the weight of what is filled cannot be told: " + whole.Why()
		}
		all = append(all, c)
	}
	return all
}

func bears(k *kit.Kit, thing string, statements ...string) bool {
	c := k.Component(thing)
	if c == nil {
		return false
	}
	for _, said := range c.Hazards {
		for _, statement := range statements {
			if said.Value == statement {
				return true
			}
		}
	}
	return false
}

func bearsAny(k *kit.Kit, f *ledger.Filling) bool {
	for _, part := range f.Parts() {
		if bears(k, part.Thing, "H314", "H315", "H317", "H318", "H319") {
			return true
		}
	}
	return false
}

func classesOf(k *kit.Kit, f *ledger.Filling, whole quantity.Number) []Class {
	// A component that is both skin 1 and eye 1 is counted once.
	sumOf := func(statements ...string) quantity.Number {
		sum := quantity.Whole(0)
		for _, part := range f.Parts() {
			if bears(k, part.Thing, statements...) {
				sum = sum.Plus(part.Mass.Value().Over(whole))
			}
		}
		return sum
	}
	skin1, skin2 := sumOf("H314"), sumOf("H315")
	eye1, eye2 := sumOf("H314", "H318"), sumOf("H319")
	return []Class{
		{Hazard: "skin", Statement: skinClass(skin1, skin2), Sum: additive("H314", skin1, "5 %", "1 %", "H315", skin2)},
		{Hazard: "eyes", Statement: eyeClass(eye1, eye2), Sum: additive("H314 or H318", eye1, "3 %", "1 %", "H319", eye2)},
		sensitised(k, f, whole),
	}
}

func additive(grave string, one quantity.Number, alone, lesser, light string, two quantity.Number) string {
	ten := quantity.Whole(10).Times(one).Plus(two)
	return fmt.Sprintf("%s: %s (cut-offs %s and %s); %s: %s (10 %%); 10 × %s + %s = %s (10 %%)",
		grave, percent(one), alone, lesser, light, percent(two), percent(one), percent(two), percent(ten))
}

func atLeast(share quantity.Number, percent int64) bool {
	return !share.Less(quantity.Ratio(percent, 100))
}

func skinClass(one, two quantity.Number) string {
	switch {
	case atLeast(one, 5):
		return "H314"
	case atLeast(one, 1), atLeast(two, 10), atLeast(quantity.Whole(10).Times(one).Plus(two), 10):
		return "H315"
	}
	return ""
}

func eyeClass(one, two quantity.Number) string {
	switch {
	case atLeast(one, 3):
		return "H318"
	case atLeast(one, 1), atLeast(two, 10), atLeast(quantity.Whole(10).Times(one).Plus(two), 10):
		return "H319"
	}
	return ""
}

// sensitised holds each sensitiser by itself against 0.1 %; those of subcategory 1B, which
// count from 1 %, are not told apart here, and CLP takes 1 % where there is no subcategory
// (from memory).
func sensitised(k *kit.Kit, f *ledger.Filling, whole quantity.Number) Class {
	class := Class{Hazard: "allergy"}
	var sums []string
	for _, part := range f.Parts() {
		if !bears(k, part.Thing, "H317") {
			continue
		}
		share := part.Mass.Value().Over(whole)
		sums = append(sums, k.Called(part.Thing)+": "+percent(share))
		if !share.Less(quantity.Ratio(1, 1000)) {
			class.Statement = "H317"
		}
	}
	class.Sum = "H317: none"
	if len(sums) > 0 {
		class.Sum = "H317: " + strings.Join(sums, ", ") + " (cut-off 0.1 % each; 1 % for subcategory 1B)"
	}
	return class
}
