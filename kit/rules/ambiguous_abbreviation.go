package rules

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"tallyfold/kit"
	"tallyfold/kit/diag"
	"tallyfold/kit/source"
)

var ambiguousAbbreviation = Rule{
	Name:     "ambiguous-abbreviation",
	Severity: diag.ShouldFix,
	Title:    "A unit is shortened so that it can be read in two ways",
	Explanation: `“2 T” is two tablespoons to one reader and two teaspoons to the next, three times less.
“1 c.” is a cup or a centilitre, and an oven at “180°” is hot or very hot.

Searched are the running text and the cautions of the steps, trouble.md and words.md, and
the words of links that tell no amount. Amounts in links are refused already while the
method is read, and “oz” of a liquid has a rule of its own. A letter counts behind a
figure only (“bag T” and “vitamin C” are none); degrees count beside a word of heat and
without °C or °F behind them.

Write the unit out, or in the form the finding names.`,
	Check: func(s Subject) []diag.Finding {
		table, known := shortWords[language(s.Kit)]
		if !known {
			return []diag.Finding{noWords(s.Kit, "ambiguous abbreviations", shortWords)}
		}
		a := shortSearch{table: table}
		for _, step := range s.Kit.Method.Steps() {
			a.search(read(step.Body, step.Prose, step.Operations, nil), step.ID)
		}
		for _, trouble := range s.Kit.Troubles {
			a.search(read(trouble.Body, trouble.Prose, trouble.Operations, nil), trouble.ID)
		}
		for _, words := range s.Kit.Words {
			a.search(read(words.Body, words.Prose, words.Operations, nil), "")
		}
		return a.findings
	},
}

type shortSearch struct {
	table    shortTable
	findings []diag.Finding
}

func (a *shortSearch) search(text reading, about string) {
	for i, word := range text.words {
		at := text.span(i, i)
		if link := text.link(at); link != nil && readsAmount(link.Kind) {
			continue
		}
		if short, ok := a.shortAt(text, i); ok {
			a.say(text.span(i-1, i), about, "“"+text.text[word.start:word.end]+"”, "+short.reads, "a unit that all read alike", "write "+short.instead)
		}
		if a.degreesAt(text, i) {
			a.say(a.degreesPlace(text, i), about, "degrees that say neither °C nor °F", "°C or °F behind the figure", "write °C or °F",
				bothScales(word.text)...)
		}
	}
}

// readsAmount says whether an amount in a link of a kind is read, and refused where
// its unit is ambiguous.
func readsAmount(kind kit.Kind) bool {
	switch kind {
	case kit.WithVessel, kit.WithTool, kit.After, kit.Clean, kit.Hazard, kit.ToStep, kit.ToHelp, kit.ShowPicture:
		return false
	}
	return true
}

func (a *shortSearch) say(at source.Span, about, found, expected, remedy string, sum ...string) {
	text := strings.Join(strings.Fields(at.Text()), " ")
	a.findings = append(a.findings, diag.Finding{
		Where: at, About: about, Found: "“" + text + "”: " + found, Expected: expected, Sum: sum, Remedies: diag.Fix(remedy),
	})
}

// shortAt says whether word i is an ambiguous abbreviation behind a figure.
func (a *shortSearch) shortAt(text reading, i int) (shortWord, bool) {
	figure := text.neighbour(i, -1)
	if !isFigureWord(figure) || strings.Trim(text.text[text.words[i-1].end:text.words[i].start], " \n") != "" {
		return shortWord{}, false
	}
	if slices.Contains(a.table.labels, text.neighbour(i, -2)) || slices.Contains(a.table.shaped, text.neighbour(i, 1)) {
		return shortWord{}, false
	}
	written := text.text[text.words[i].start:text.words[i].end]
	for _, short := range a.table.units {
		if short.written == written && (short.below == 0 || isBelow(figure, short.below)) {
			return short, true
		}
	}
	return shortWord{}, false
}

// isFigureWord: "2", "1.5", also "½"-like figures that the cutting leaves whole.
func isFigureWord(word string) bool {
	return word != "" && strings.Trim(word, "0123456789.,/–-") == ""
}

func isBelow(figure string, n int) bool {
	whole, _, _ := strings.Cut(strings.ReplaceAll(figure, ",", "."), ".")
	value := 0
	for _, digit := range whole {
		if digit < '0' || digit > '9' {
			return true
		}
		value = min(10*value+int(digit-'0'), n)
	}
	return value < n
}

// bothScales tells a figure read in either scale; nothing for one that is no number.
func bothScales(figure string) []string {
	degrees, err := strconv.ParseFloat(figure, 64)
	if err != nil {
		return nil
	}
	return []string{fmt.Sprintf("read as °C it is %.0f °F, read as °F it is %.0f °C", degrees*9/5+32, (degrees-32)*5/9)}
}

// degreesAt says whether word i is a figure in degrees of no scale.
func (a *shortSearch) degreesAt(text reading, i int) bool {
	if !isFigureWord(text.words[i].text) || !a.isAboutHeat(text, i) {
		return false
	}
	next := text.neighbour(i, 1)
	switch {
	case strings.HasPrefix(strings.TrimLeft(text.text[text.words[i].end:], " "), "°"):
		return !slices.Contains(a.table.scales, next)
	case slices.Contains(a.table.degrees, next):
		return !slices.Contains(a.table.scales, text.neighbour(i, 2))
	}
	return false
}

func (a *shortSearch) degreesPlace(text reading, i int) source.Span {
	if slices.Contains(a.table.degrees, text.neighbour(i, 1)) {
		return text.span(i, i+1)
	}
	at := text.span(i, i)
	at.End += strings.Index(text.text[text.words[i].end:], "°") + len("°")
	return at
}

// isAboutHeat says whether a word of heat stands in the sentence of word i, and none
// of turning.
func (a *shortSearch) isAboutHeat(text reading, i int) bool {
	heat := false
	for _, word := range text.words {
		if word.sentence != text.words[i].sentence {
			continue
		}
		if slices.Contains(a.table.turning, word.text) {
			return false
		}
		heat = heat || slices.Contains(a.table.heat, word.text)
	}
	return heat
}
