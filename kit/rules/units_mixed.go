package rules

import (
	"cmp"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"tallyfold/kit"
	"tallyfold/kit/diag"
	"tallyfold/kit/quantity"
	"tallyfold/kit/source"
)

var unitsMixed = Rule{
	Name:     "units-mixed",
	Severity: diag.ShouldFix,
	Title:    "The same kind of quantity is told in units of two systems",
	Explanation: `Grams in step 2 and ounces in step 5: the customer must set the scale anew, or reckon, with
wax going cold. And what is measured with a spoon in one step and weighed in the next
wants two tools for one thing.

Compared are all weights, volumes, temperatures and lengths that the method, trouble.md
and words.md tell: metric ones against pounds, inches and °F. A place that tells both is
right whatever the others do. Spoons, cups and the kit's own measures belong to neither
system, but a thing that steps take both by the spoon and by weight or volume is told.
So is one unit written in two ways (“ml” and “mL”). What is packed is not looked at: it
may be bought in other units than it is used in.

Tell one system throughout, or both at each place: [600 g (1 lb 5 oz) of wax](take:wax).`,
	Check: func(s Subject) []diag.Finding {
		tellings := tellingsOf(s.Kit)
		findings := systemsMixed(tellings)
		findings = append(findings, waysMixed(s.Kit)...)
		return append(findings, stylesMixed(tellings)...)
	},
}

// A system is a family of units.
type system int

const (
	neither system = iota
	metric
	customary // pounds, inches, °F
)

func systemOf(a quantity.Amount) system {
	switch a.Dimension {
	case quantity.Temperature, quantity.TemperatureDifference:
		if strings.HasSuffix(a.Unit.Symbol, "F") {
			return customary
		}
		return metric
	case quantity.Mass, quantity.Volume, quantity.Length, quantity.Area:
		switch {
		case isSaying(a), a.Household || a.Unit.Household || a.Unit.Symbol == "":
			return neither
		case isMetric(a.Unit):
			return metric
		}
		return customary
	}
	return neither
}

// isSaying: “an ounce of patience”, “inch by inch” weigh and measure nothing.
func isSaying(a quantity.Amount) bool {
	return strings.HasPrefix(a.Written, "a ") || strings.HasPrefix(a.Written, "an ") || strings.HasPrefix(a.Written, "A ") || strings.HasPrefix(a.Written, "An ")
}

// kindsTold are the kinds of quantity that are compared, with what people call them.
var kindsTold = []struct {
	dimension quantity.Dimension
	called    string
}{
	{quantity.Mass, "weights"}, {quantity.Volume, "volumes"}, {quantity.Temperature, "temperatures"},
	{quantity.Length, "lengths"}, {quantity.Area, "areas"},
}

// kindOf is the kind that an amount is compared in: a difference of temperature with
// readings.
func kindOf(a quantity.Amount) quantity.Dimension {
	if a.Dimension == quantity.TemperatureDifference {
		return quantity.Temperature
	}
	return a.Dimension
}

// systemsMixed tells each kind of quantity that some places tell in one system only
// and some in the other.
func systemsMixed(tellings []telling) []diag.Finding {
	var findings []diag.Finding
	for _, kind := range kindsTold {
		only := map[system][]toldAt{}
		for _, one := range tellings {
			if amount, at, alone := one.aloneIn(kind.dimension); alone != neither {
				only[alone] = append(only[alone], toldAt{amount, at, one.about, one.where})
			}
		}
		rare, common := only[customary], only[metric]
		if len(rare) > len(common) {
			rare, common = common, rare
		}
		if len(rare) > 0 {
			findings = append(findings, mixed(kind.called, rare, common))
		}
	}
	return findings
}

// A toldAt is one amount with its place.
type toldAt struct {
	amount       quantity.Amount
	at           source.Span
	about, where string
}

// aloneIn gives the first amount of a kind, and the system where all that the place
// tells of that kind is of one system.
func (t telling) aloneIn(dimension quantity.Dimension) (first quantity.Amount, at source.Span, alone system) {
	for i, a := range t.amounts {
		is := systemOf(a)
		switch {
		case kindOf(a) != dimension || is == neither:
		case alone == neither:
			first, at, alone = a, t.spans[i], is
		case is != alone:
			return first, at, neither
		}
	}
	return first, at, alone
}

func mixed(called string, rare, common []toldAt) diag.Finding {
	first, other := rare[0], common[0]
	again := inUnitOf(first.amount, other.amount)
	finding := diag.Finding{
		Where: first.at, About: first.about,
		Found:    called + " are told in " + unitsOf(rare) + " in " + wheres(rare) + ", and in " + unitsOf(common) + " in " + wheres(common),
		Expected: "one system throughout, or both at each place",
		Sum:      []string{"“" + first.amount.Written + "” is " + again},
		Remedies: []diag.Remedy{
			{Do: "write " + again + " instead of “" + first.amount.Written + "”, rounded as far as it does no harm"},
			{Do: "tell both at each place, the one you use first: " + first.amount.Written + " (" + again + ")", Changes: inBoth(rare, other)},
		},
	}
	for _, one := range slices.Concat(rare[1:], common) {
		if len(finding.Also) < mostAlso {
			finding.Also = append(finding.Also, diag.Place{Where: one.at, Note: one.amount.Written + ", " + one.where})
		}
	}
	return finding
}

// inBoth tells amounts in the unit of another too, behind them in brackets.
func inBoth(all []toldAt, like toldAt) []diag.Change {
	var changes []diag.Change
	for _, one := range all {
		if one.amount.Bound == quantity.Exactly && one.at.Known() {
			end := one.at.File.Span(one.at.End, one.at.End)
			changes = append(changes, diag.Change{Where: end, New: " (" + inUnitOf(one.amount, like.amount) + ")"})
		}
	}
	return changes
}

// mostAlso is how many other places a finding names.
const mostAlso = 6

// inUnitOf tells an amount in the unit of another of its kind, to three digits.
func inUnitOf(a, like quantity.Amount) string {
	unit := like.Unit
	n := unit.FromBase(a.Nominal)
	if a.Dimension == quantity.TemperatureDifference {
		n = a.Nominal.Over(unit.Factor)
	}
	step := quantity.Whole(1)
	for ten, size := quantity.Whole(10), n.Abs(); size.Sign() > 0 && size.Less(quantity.Whole(100)) && !step.Less(quantity.Ratio(1, 100)); size = size.Times(ten) {
		step = step.Over(ten)
	}
	half := step.Over(quantity.Whole(2))
	if n.Sign() < 0 {
		half = quantity.Whole(0).Minus(half)
	}
	return rounded(n.Plus(half), step, false).String() + " " + unit.Symbol
}

func unitsOf(all []toldAt) string {
	var symbols []string
	for _, one := range all {
		symbols = append(symbols, one.amount.Unit.Symbol)
	}
	return listed(withoutDoubles(symbols))
}

// wheres names up to three places, and how many more there are.
func wheres(all []toldAt) string {
	const most = 3
	var names []string
	for _, one := range all {
		names = append(names, one.where)
	}
	names = withoutDoubles(names)
	if len(names) > most+1 {
		names = append(names[:most:most], plural(len(names)-most, "other place"))
	}
	return listed(names)
}

// waysMixed tells things that one step takes by the spoon and another by weight or
// volume.
func waysMixed(k *kit.Kit) []diag.Finding {
	var order []string
	spoons, measured := map[string][]toldAt{}, map[string][]toldAt{}
	for _, step := range k.Method.Steps() {
		for _, o := range step.Operations {
			if o.Kind != kit.Take && o.Kind != kit.Use || len(o.Phrase.Amounts) == 0 {
				continue
			}
			order = append(order, o.Target)
			inSpoons, inUnits := -1, -1
			for i, a := range o.Phrase.Amounts {
				switch {
				case a.Household && a.Dimension == quantity.Volume:
					inSpoons = i
				case a.Dimension == quantity.Mass || a.Dimension == quantity.Volume:
					inUnits = i
				}
			}
			if inSpoons >= 0 && inUnits < 0 {
				spoons[o.Target] = append(spoons[o.Target], toldAt{o.Phrase.Amounts[inSpoons], o.Phrase.AmountSpans[inSpoons], step.ID, inStep(step)})
			} else if inUnits >= 0 && inSpoons < 0 {
				measured[o.Target] = append(measured[o.Target], toldAt{o.Phrase.Amounts[inUnits], o.Phrase.AmountSpans[inUnits], step.ID, inStep(step)})
			}
		}
	}
	var findings []diag.Finding
	for _, id := range withoutDoubles(order) {
		if len(spoons[id]) > 0 && len(measured[id]) > 0 {
			findings = append(findings, twoWays(k, id, spoons[id], measured[id]))
		}
	}
	return findings
}

func twoWays(k *kit.Kit, id string, spoons, measured []toldAt) diag.Finding {
	rare, common := spoons, measured
	if len(rare) > len(common) {
		rare, common = common, rare
	}
	again, sum := "… "+common[0].amount.Unit.Symbol, []string(nil)
	if rare[0].amount.Dimension == common[0].amount.Dimension {
		again = inUnitOf(rare[0].amount, common[0].amount)
		sum = []string{"“" + rare[0].amount.Written + "” is " + again}
	}
	return diag.Finding{
		Severity: diag.WorthKnowing, Where: rare[0].at, About: id, Sum: sum,
		Found:    k.Called(id) + " is told in " + unitsOf(rare) + " in " + wheres(rare) + ", and in " + unitsOf(common) + " in " + wheres(common),
		Expected: "one way to measure one thing, or both at each place",
		Remedies: diag.Fix("write “"+rare[0].amount.Written+"” in "+common[0].amount.Unit.Symbol+" too, or the others as it is told here",
			"tell both at each place, such as “"+rare[0].amount.Written+" ("+again+")”"),
		Also: []diag.Place{{Where: common[0].at, Note: common[0].amount.Written + ", " + common[0].where}},
	}
}

// stylesMixed tells a unit that is written with small letters in one place and with
// capitals in another.
func stylesMixed(tellings []telling) []diag.Finding {
	var order []string
	styles := map[string]map[string][]toldAt{}
	for _, one := range tellings {
		for i, a := range one.amounts {
			written := unitWritten(a)
			if written == "" {
				continue
			}
			low := strings.ToLower(written)
			if styles[low] == nil {
				styles[low] = map[string][]toldAt{}
				order = append(order, low)
			}
			styles[low][written] = append(styles[low][written], toldAt{a, one.spans[i], one.about, one.where})
		}
	}
	var findings []diag.Finding
	for _, low := range order {
		if len(styles[low]) > 1 {
			findings = append(findings, twoStyles(styles[low]))
		}
	}
	return findings
}

// unitWritten is the unit symbol of an amount as its maker wrote it; "" for a unit
// that is written out or told in two parts.
func unitWritten(a quantity.Amount) string {
	written := strings.TrimRight(a.Written, ".")
	at := strings.LastIndexFunc(written, func(r rune) bool { return !unicode.IsLetter(r) })
	if at < 0 {
		return ""
	}
	_, size := utf8.DecodeRuneInString(written[at:])
	if at += size; a.Unit.Symbol == "" || !strings.EqualFold(written[at:], a.Unit.Symbol) {
		return ""
	}
	return written[at:]
}

func twoStyles(styles map[string][]toldAt) diag.Finding {
	var written []string
	for style := range styles {
		written = append(written, style)
	}
	slices.SortFunc(written, func(a, b string) int {
		return cmp.Or(cmp.Compare(len(styles[a]), len(styles[b])), -cmp.Compare(a, b)) // “ml” before “mL”
	})
	rare, common := written[0], written[len(written)-1]
	symbol := styles[common][0].amount.Unit.Symbol
	var changes []diag.Change
	for _, style := range written {
		for _, one := range styles[style] {
			if at := strings.LastIndex(one.at.Text(), style); at >= 0 && style != symbol {
				changes = append(changes, diag.Change{Where: one.at.Part(at, at+len(style)), New: symbol})
			}
		}
	}
	return diag.Finding{
		Severity: diag.WorthKnowing, Where: styles[rare][0].at, About: styles[rare][0].about,
		Found:    "“" + rare + "” in " + wheres(styles[rare]) + ", and “" + common + "” in " + wheres(styles[common]),
		Expected: "a unit written one way throughout",
		Remedies: []diag.Remedy{{Do: "write “" + symbol + "” everywhere", Changes: changes}},
		Also:     []diag.Place{{Where: styles[common][0].at, Note: styles[common][0].amount.Written + ", " + styles[common][0].where}},
	}
}
