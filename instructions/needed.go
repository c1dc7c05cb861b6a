package instructions

import (
	"strings"

	"tallyfold/kit"
	"tallyfold/kit/quantity"
)

// judge says what is missing or wrong in what was understood of a phrase.
func (f *phrasing) judge() {
	switch {
	case f.problem:
	case f.meaning.kind == kit.Again:
		f.judgeAgain()
	case f.meaning.kind == kit.Fill:
		f.judgeFill()
	case f.meaning.amount == needed && f.phrase.Portion == kit.NoPortion:
		f.judgeNoAmount()
	}
	if s, ok := f.unreadTelling(); ok && !f.problem && f.meaning.amount != refused {
		f.saySlip(s)
	}
	if !f.problem && f.repeated {
		f.unreadableText("an amount and how often, "+f.written(), "the amount of one action",
			"write the amount once, and what is done again in a link of its own: [twice more](again:)")
	}
}

func (f *phrasing) judgeAgain() {
	if f.phrase.Count == 0 {
		f.unreadableText(f.written()+", which doesn't say how often", "a number from 1 to "+quantity.Whole(maxTimes).String(),
			"say how many more times: [the same five more times](again:)")
	}
}

// judgeFill finds heights that are not told from the bottom up. A fill that tells no
// figure at all is judged with the room of its container, by a rule that knows the
// words of it in English only.
func (f *phrasing) judgeFill() {
	amount, told := f.phrase.Amount()
	if told && amount.Dimension == quantity.Length && f.fromRim() {
		f.phrase.FromRim, f.phrase.To = true, true
		return
	}
	for i := range f.tokens {
		byEye := !told && f.language != english
		if f.has(i, f.language.rims) && (byEye || told && amount.Dimension == quantity.Length) {
			f.unreadableText("a height told from the rim or by eye, "+f.written(), "a weight, a volume, or the height from the bottom",
				"write how much goes in: [each jar to 200 g](fill:jar)",
				"give the inside height of the container in kit.yaml and write [each jar to 10 mm below the rim](fill:jar)")
			return
		}
	}
	if told && amount.Ranged && amount.Low.Times(quantity.Whole(widestFill)).Less(amount.High) {
		f.unreadableText(f.written()+", which reads as a range from "+strings.ReplaceAll(amount.Written, " to ", " up to "),
			"a fill whose ends are near each other", "write how many are filled in words of their own: [3 jars to 200 g](fill:jar)")
	}
}

// fromRim: "to 10 mm below the rim", which a container with an inside height tells.
func (f *phrasing) fromRim() bool {
	c := f.kit.Component(f.target)
	if c == nil || c.Container == nil || c.Container.Inside.Value.Tall.Sign() <= 0 {
		return false
	}
	for i := range f.tokens {
		n := f.at(i, f.language.below)
		next := f.skip(i+n, f.language.articles, f.language.ofThe)
		if n > 0 && i > 0 && f.tokens[i-1].isAmount && f.has(next, f.language.edge) {
			return true
		}
	}
	return false
}

// widestFill is how many times its lower end the upper end of a fill may be: "1 to
// 3 to 200 g" is no fill from 3 g to 200 g.
const widestFill = 3

// judgeNoAmount finds a link that needs an amount and tells none. A thing that is
// counted is one where no number is said; a household item that is only used
// need not be measured; an empty text of a take is written from the definition.
func (f *phrasing) judgeNoAmount() {
	if f.meaning.kind == kit.Take || f.meaning.kind == kit.Use {
		if strings.TrimSpace(f.link.text.String()) == "" || f.isCounted() || f.meaning.kind == kit.Use && f.names.sorts[f.target] == household {
			return
		}
	}
	if s, ok := f.unreadFigure(); ok {
		f.saySlip(s)
		return
	}
	if f.isUntold() {
		return // a finding of its own; nobody knows whether it is counted
	}
	f.unreadableText(f.written()+", which tells no amount", f.meaning.expected(), f.remedyForAmount())
}

// isUntold: the link is about a thing that kit.yaml does not have, or has no pack of.
func (f *phrasing) isUntold() bool {
	if f.meaning.sorts&component == 0 || f.target == "" {
		return false
	}
	if c := f.kit.Component(f.target); c != nil {
		return !c.Packed.Given()
	}
	_, known := f.names.sortOf(f.target)
	return !known
}

// isCounted says whether the target is packed by the piece, in every run.
func (f *phrasing) isCounted() bool {
	counted := func(key string) bool {
		c := f.kit.Component(key)
		return c != nil && c.Packed.Value.Dimension == quantity.Count
	}
	if !f.names.isRole(f.target) {
		return counted(f.target)
	}
	for _, run := range f.kit.Runs {
		if key, bound := run.Component(f.target); bound && !counted(key) {
			return false
		}
	}
	return true
}

// otherDimension tells that an amount is of a kind the link can't use.
func (f *phrasing) otherDimension(t token) {
	if f.meaning.kind == kit.Again {
		return // judged by its count
	}
	f.problem = true
	f.say(unreadableAmount, f.place(t), f.target, quoted(t.text)+", "+dimensionWords[t.amount.Dimension], f.meaning.expected(), f.remedyForAmount(),
		"write it outside this link, or in one of its own")
}

func (f *phrasing) unreadable(i int, found, expected string, remedies ...string) {
	f.problem = true
	f.say(unreadableAmount, f.place(f.tokens[i]), f.target, found, expected, remedies...)
}

func (f *phrasing) unreadableText(found, expected string, remedies ...string) {
	f.problem = true
	f.say(unreadableAmount, f.wholeText(), f.target, found, expected, remedies...)
}

func (f *phrasing) remedyForAmount() string {
	switch f.meaning.kind {
	case kit.Work, kit.Wait:
		return "write it like [15 minutes](" + string(f.meaning.kind) + ":)"
	case kit.Warm:
		return "write it like [to 80–85 °C](warm:)"
	case kit.Cool:
		return "write it like [below 60 °C](cool:), or make it a cue: [until it is cool to the touch](cue:)"
	case kit.Same:
		return "tell the figure: [200 g](same:" + f.target + ")"
	}
	return "write it like [30 g of it](" + string(f.meaning.kind) + ":" + f.target + "), or [all of it](" + string(f.meaning.kind) + ":" + f.target + ")"
}

// dimensionWords name what kind of amount something is.
var dimensionWords = map[quantity.Dimension]string{
	quantity.Mass: "a weight", quantity.Volume: "a volume", quantity.Count: "a count", quantity.Length: "a length",
	quantity.Area: "an area", quantity.Temperature: "a temperature", quantity.TemperatureDifference: "a difference of temperature",
	quantity.Duration: "a time", quantity.Money: "money", quantity.Share: "a share", quantity.Density: "a density",
	quantity.VolumePerMass: "a volume for each weight", quantity.Proportion: "a ratio",
}

// expected tells which amounts a link may hold.
func (m *meaning) expected() string {
	if m.dimensions == nil {
		return "an amount"
	}
	words := make([]string, len(m.dimensions))
	for i, d := range m.dimensions {
		words[i] = dimensionWords[d]
	}
	return either(words)
}
