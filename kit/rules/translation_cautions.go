package rules

import (
	"tallyfold/kit"
	"tallyfold/kit/diag"
)

// cautions holds cautions against those of the method: as many, with the same signal
// words, each before the same action.
func (d *difference) cautions(own, other []kit.Caution, about string) {
	if len(own) != len(other) {
		d.add(d.cautionsCounted(own, other, about))
		return
	}
	for i := range own {
		switch mine, its := before(d.own, own[i]), before(d.other, other[i]); {
		case own[i].Signal != other[i].Signal:
			d.add(diag.Finding{
				Where: other[i].Span, About: about,
				Found:    d.here() + " warns with the signal word of " + string(other[i].Signal) + ", and the method with " + string(own[i].Signal),
				Expected: "the same signal word: it says how bad it can be",
				Remedies: diag.Fix("write the word of the language for "+string(own[i].Signal), "put the signal word of the method right, if this one is meant"),
				Also:     besideMethod(own[i].Span, "the caution in the method"),
			})
		case mine != its:
			d.add(diag.Finding{
				Where: other[i].Span, About: about,
				Found:    d.here() + " warns behind " + plural(its, "action") + " of the step, and the method behind " + whole(mine).String(),
				Expected: "the caution before the same action as in the method",
				Remedies: diag.Fix("put it where the method has it"),
				Also:     besideMethod(own[i].Span, "the caution in the method"),
			})
		}
	}
}

// before is how many actions of the step stand before a caution.
func before(step *kit.Step, caution kit.Caution) int {
	n := 0
	for _, o := range actionsOf(step) {
		if o.Span.Start < caution.Span.Start {
			n++
		}
	}
	return n
}

func (d *difference) cautionsCounted(own, other []kit.Caution, about string) diag.Finding {
	f := diag.Finding{
		Where: d.other.Span, About: about,
		Found:    d.here() + " has " + plural(len(other), "caution") + ", and the method " + plural(len(own), "caution"),
		Expected: "every caution of the method and no other",
		Remedies: diag.Fix("translate the missing caution and put it where the method has it"),
	}
	if len(other) > len(own) {
		f.Where = other[len(other)-1].Span
		f.Remedies = diag.Fix("take the further caution out", "write it into the method too, if it is needed")
	}
	for _, caution := range own {
		f.Also = append(f.Also, diag.Place{Where: caution.Span, Note: string(caution.Signal) + " in the method"})
	}
	if len(own) == 0 {
		f.Also = besideMethod(d.own.Span, "the step of the method")
	}
	return f
}

// introductions counts the cautions that stand before the first step of each part.
func (d *difference) introductions() {
	for i, part := range d.Kit.Method.Parts {
		if i >= len(d.translation.Method.Parts) || len(part.Steps) == 0 || len(d.translation.Method.Parts[i].Steps) == 0 {
			continue
		}
		other := d.translation.Method.Parts[i]
		d.stepPair = stepPair{part.Steps[0], other.Steps[0]}
		d.introduction(part.Cautions, other.Cautions)
	}
}

func (d *difference) introduction(own, other []kit.Caution) {
	same := len(own) == len(other)
	for i := 0; same && i < len(own); i++ {
		same = own[i].Signal == other[i].Signal
	}
	if same {
		return
	}
	f := d.cautionsCounted(own, other, d.own.ID)
	f.Found = "before " + d.here() + " stand the cautions " + signalsOf(other) + ", and in the method " + signalsOf(own)
	d.add(f)
}

func signalsOf(cautions []kit.Caution) string {
	if len(cautions) == 0 {
		return "none"
	}
	text := ""
	for i, caution := range cautions {
		if i > 0 {
			text += ", "
		}
		text += string(caution.Signal)
	}
	return text
}
