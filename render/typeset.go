package render

import (
	"html"
	"regexp"
	"strings"
	"unicode"
)

// typeset escapes text and gives it what a compositor would: a number stays
// with its unit, apostrophes are curved, fractions are set as fractions, and an
// empty ballot box becomes one that can be ticked.
func (w *writer) typeset(text string) string {
	text = curveApostrophes(keepTogether(setFractions(text)))
	var out strings.Builder
	for _, r := range text {
		switch {
		case r == '☐':
			out.WriteString(w.tick(w.booklet.word("tick")))
		case builtFractions[r] != "":
			out.WriteString(`<span class="fraction">` + builtFractions[r] + `</span>`)
		default:
			out.WriteString(html.EscapeString(string(r)))
		}
	}
	return out.String()
}

// setFractions writes "2 1/2" with the fraction as one letter.
func setFractions(text string) string {
	return slashed.ReplaceAllStringFunc(text, func(found string) string {
		written := strings.TrimLeft(found, " ")
		built := fractions[written]
		if built == "" {
			return found
		}
		return found[:len(found)-len(written)] + built
	})
}

// keepTogether ties a number to its fraction and its unit, so that no line ends
// between them. "2 ½ cups" needs two goes, as the fraction stands in both pairs.
func keepTogether(text string) string {
	for range 2 {
		text = numberAndUnit.ReplaceAllString(text, "$1\u00a0$2")
	}
	return text
}

// numberAndUnit: a figure, a space and a short word or a degree sign.
var numberAndUnit = regexp.MustCompile(`([0-9½¼¾⅓⅔⅛⅜⅝⅞]) (°|%|[\pL²³]{1,4}(?:\P{L}|$)|±|[½¼¾⅓⅔⅛⅜⅝⅞])`)

// slashed is a fraction written with a stroke, alone or after a whole number.
var slashed = regexp.MustCompile(`(?:^| )[1-7]/[2-8]\b`)

// fractions are those that a household measure has.
var fractions = map[string]string{
	"1/2": "½", "1/4": "¼", "3/4": "¾", "1/3": "⅓", "2/3": "⅔", "1/8": "⅛", "3/8": "⅜", "5/8": "⅝", "7/8": "⅞",
}

// builtFractions are those that the faces have no letter for; they are set from
// figures and a fraction bar.
var builtFractions = map[rune]string{
	'⅓': "1⁄3", '⅔': "2⁄3", '⅛': "1⁄8", '⅜': "3⁄8", '⅝': "5⁄8", '⅞': "7⁄8",
}

// curveApostrophes turns a straight apostrophe between two letters into a
// curved one. Other straight quotes may mean inches or minutes and stay.
func curveApostrophes(text string) string {
	if !strings.Contains(text, "'") {
		return text
	}
	runes := []rune(text)
	for i := 1; i+1 < len(runes); i++ {
		if runes[i] == '\'' && unicode.IsLetter(runes[i-1]) && unicode.IsLetter(runes[i+1]) {
			runes[i] = '’'
		}
	}
	return string(runes)
}
