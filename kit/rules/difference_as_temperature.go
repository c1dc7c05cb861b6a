package rules

import (
	"slices"
	"strings"

	"tallyfold/kit"
	"tallyfold/kit/diag"
	"tallyfold/kit/ledger"
	"tallyfold/kit/quantity"
	"tallyfold/kit/source"
)

var differenceAsTemperature = Rule{
	Name:     "difference-as-temperature",
	Severity: diag.MustFix,
	Title:    "A difference of temperature is told as a reading on a thermometer",
	Explanation: `To cool something by 10 °C is to cool it by 18 °F; 50 °F is what a thermometer reads at
10 °C. A difference has no 32 in its conversion (NIST SP 811, 8.5: a difference of 1 °C
is one of 1.8 °F). And “cool it 20 °C” can be read two ways: by twenty degrees, or until
the thermometer shows twenty.

Looked at are temperatures told in two units behind “by”, “another” or “a rise of”, or
before “hotter”, “apart” and the like; and the words right before a temperature in a
warm: or cool: link.

Write “by 10 °C (18 °F)” for a difference and “to 20 °C” for a reading.`,
	Check: func(s Subject) []diag.Finding {
		var findings []diag.Finding
		for _, p := range degreePairs(s.Kit) {
			if p.isDifference() && quantity.Told(asDifference(p.first), asDifference(p.second)) != quantity.Agree {
				findings = append(findings, wrongDifference(p))
			}
		}
		return append(findings, unclearChanges(s)...)
	},
}

// Words beside a temperature which say that a difference is meant.
var (
	differenceBefore = []string{"by", "another", "further"}
	differenceOf     = []string{"rise", "drop", "fall", "increase", "decrease", "difference", "change", "gap", "swing"}
	differenceAfter  = []string{"hotter", "warmer", "cooler", "colder", "higher", "lower", "apart"}
	readingBefore    = []string{"to", "at", "is", "are", "reads", "shows", "reach", "reaches", "below", "above", "until", "between", "from"}
)

// isDifference says whether the pair tells a difference of temperature.
func (p pair) isDifference() bool {
	if !isDegrees(p.first) {
		return false
	}
	if p.first.Dimension == quantity.TemperatureDifference || p.second.Dimension == quantity.TemperatureDifference {
		return true
	}
	return saysDifference(p.before, p.after)
}

func saysDifference(before, after []string) bool {
	nearest := word0(before)
	if slices.Contains(readingBefore, nearest) {
		return false
	}
	return slices.Contains(differenceBefore, nearest) ||
		nearest == "of" && len(before) > 1 && slices.Contains(differenceOf, before[1]) ||
		slices.Contains(differenceAfter, word0(after))
}

func word0(words []string) string {
	if len(words) == 0 {
		return ""
	}
	return words[0]
}

func wrongDifference(p pair) diag.Finding {
	first, second := asDifference(p.first), asDifference(p.second)
	right := quantity.Show(first.Nominal.Over(second.Unit.Factor), quantity.Count, quantity.Digits(3)) + " " + second.Unit.Symbol
	toldFirst, toldSecond := plainDegrees(p.firstAt), plainDegrees(p.secondAt)
	finding := diag.Finding{
		Where: p.secondAt, About: p.about,
		Found:    p.where + " tells a difference of “" + toldFirst + "” as “" + toldSecond + "”",
		Expected: toldFirst + " and " + right + ", which are the same difference",
		Sum:      []string{"a difference of " + toldFirst + " is one of " + right},
		Remedies: diag.Fix("write “"+right+"” instead of “"+toldSecond+"”", "write “to” and a reading, if a temperature is meant"),
		Also:     []diag.Place{{Where: p.firstAt, Note: "the difference"}},
	}
	if p.second.Dimension == quantity.Temperature && p.isReading() {
		finding.Sum = append(finding.Sum, toldSecond+" is what a thermometer reads at "+toldFirst)
	}
	return finding
}

// isReading says whether the second figure is the first one converted as a reading.
func (p pair) isReading() bool {
	first := p.first
	if first.Dimension == quantity.TemperatureDifference {
		first.Dimension = quantity.Temperature
		for _, n := range []*quantity.Number{&first.Nominal, &first.Low, &first.High} {
			*n = n.Over(first.Unit.Factor)
		}
		unit, ok := quantity.UnitNamed(first.Unit.Symbol, quantity.USCustomary)
		if !ok {
			return false
		}
		first.Unit = unit
		for _, n := range []*quantity.Number{&first.Nominal, &first.Low, &first.High} {
			*n = unit.ToBase(*n)
		}
	}
	return quantity.Told(first, p.second) == quantity.Agree
}

// plainDegrees is a temperature as written, without the “by” of a difference or words
// of about.
func plainDegrees(at source.Span) string {
	text := onOneLine(at)
	for _, word := range []string{"by ", "about ", "some ", "roughly "} {
		text = strings.TrimPrefix(text, word)
	}
	return text
}

// changing are words right before a temperature behind which a difference is heard,
// or as well a reading.
var changing = []string{
	"cool", "cooled", "cools", "warm", "warmed", "heat", "heated", "raise", "raised", "lower", "lowered", "drop", "drops", "dropped",
	"another", "further", "extra", "more", "it", "down", "up",
}

// unclearChanges are warm: and cool: links that can be read as a difference.
func unclearChanges(s Subject) []diag.Finding {
	var findings []diag.Finding
	for _, step := range s.Kit.Method.Steps() {
		text := read(step.Body, step.Prose, step.Operations, nil)
		p := toldText{text: text.text, at: text.at}
		for _, o := range step.Operations {
			told, ok := o.Phrase.Amount()
			if o.Kind != kit.Warm && o.Kind != kit.Cool || !ok || o.Phrase.By || told.Dimension != quantity.Temperature ||
				told.Bound == quantity.Below || told.Bound == quantity.Above {
				continue
			}
			before := p.wordsBefore(o.Phrase.AmountSpans[0].Start - p.at.Start)
			after := p.wordsAfter(o.Phrase.AmountSpans[0].End - p.at.Start)
			if slices.Contains(changing, word0(before)) || saysDifference(before, after) {
				findings = append(findings, unclearChange(s, step, o, told, word0(before)))
			}
		}
	}
	return findings
}

func unclearChange(s Subject, step *kit.Step, o *kit.Operation, told quantity.Amount, before string) diag.Finding {
	written := onOneLine(o.Phrase.AmountSpans[0])
	finding := diag.Finding{
		Where: o.Phrase.AmountSpans[0], About: step.ID,
		Found:    inStep(step) + " tells “" + written + "” so that it can be read as a difference or as a temperature",
		Expected: "“by” before a difference, “to” before a temperature",
		Remedies: diag.Fix(
			"write “by "+written+"”, if it changes by so much",
			"write “to "+written+"”, if the thermometer shall show it"),
	}
	if before != "" {
		finding.Found = inStep(step) + " tells “" + before + " " + written + "”, which can be read as a difference or as a temperature"
	}
	if was := temperatureBefore(s.Ledger, step, o); was != nil {
		finding.Sum = []string{"told last: " + show(was.Value(), quantity.Temperature) + "; the figure is counted as a reading of " + show(told.Nominal, quantity.Temperature)}
	}
	return finding
}

// temperatureBefore is what the vessels of a step last were brought to before it.
func temperatureBefore(l *ledger.Ledger, step *kit.Step, o *kit.Operation) *ledger.Figure {
	var last *ledger.Figure
	for _, stage := range l.Stages {
		if stage.Step.Number >= step.Number {
			continue
		}
		for _, v := range stage.Vessels {
			if v.Vessel == warmed(stage.Run, o, step) && v.Temperature != nil && v.Temperature.Known() {
				last = v.Temperature
			}
		}
	}
	return last
}
