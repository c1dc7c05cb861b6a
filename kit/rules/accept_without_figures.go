package rules

import (
	"regexp"
	"strings"

	"tallyfold/kit"
	"tallyfold/kit/diag"
)

var acceptWithoutFigures = Rule{
	Name:     "accept-without-figures",
	Severity: diag.WorthKnowing,
	Title:    "A finding is accepted whatever its figures become",
	Explanation: `An entry without “seen” accepts a finding of that rule about that thing whatever it says:
today a spoonful that is left, next month half a pan.

Write under “seen” the figure that you accept, as the finding tells it. When it tells
another one, it comes back.`,
}

func withoutFigures(k *kit.Kit, entry *kit.Accepted, finding diag.Finding) diag.Finding {
	seen := "seen: \"" + figureIn(finding.Found) + "\""
	return diag.Finding{
		Found:    told(entry) + " is accepted whatever its figures become; now it says: " + finding.Found,
		Expected: "the figure that is accepted, so that the finding comes back when it changes",
		Remedies: []diag.Remedy{{Do: "write “" + seen + "” into the entry", Changes: afterReason(entry, seen)}},
		Also:     []diag.Place{{Where: finding.Where, Note: "the finding"}},
	}
}

// afterReason puts a further key behind the reason, where that stands between braces.
func afterReason(entry *kit.Accepted, key string) []diag.Change {
	at := entry.Because.Span
	if !strings.HasPrefix(strings.TrimSpace(entry.Span.Text()), "{") || !at.Known() {
		return nil
	}
	return []diag.Change{{Where: at.File.Span(at.End, at.End), New: ", " + key}}
}

// aFigure is a number with the word behind it: "20 mL", "8.73 %".
var aFigure = regexp.MustCompile(`−?\d[\d.,]*(?: [^\s,;:.]+)?`)

// figureIn is the first figure in the words of a finding, or all of them.
func figureIn(found string) string {
	if figure := aFigure.FindString(found); figure != "" {
		return figure
	}
	return strings.ReplaceAll(found, "\"", "")
}
