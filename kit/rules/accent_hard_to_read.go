package rules

import (
	"fmt"

	"tallyfold/kit/colour"
	"tallyfold/kit/diag"
)

var accentHardToRead = Rule{
	Name:     "accent-hard-to-read",
	Severity: diag.WorthKnowing,
	Title:    "The accent colour is too pale to be read on paper",
	Explanation: `Step numbers and the words beside cues are printed in the accent colour, and bag letters in
white on it. WCAG 2.2 (W3C, success criterion 1.4.3) asks for a contrast of 4.5 : 1 between
text and its ground; a colour with less is lost on readers with weak eyes, and on everyone
in the light of a kitchen.

The booklet is printed all the same: with your colour made darker by as little as reaches
4.5 : 1. Write that colour into kit.yaml, so that box and booklet have the same one, or
choose another.`,
	Check: func(s Subject) []diag.Finding {
		accent := s.Kit.Look.Accent
		if !accent.Given() {
			return nil
		}
		printed := accent.Value.Readable(colour.White, colour.ForText)
		if printed == accent.Value {
			return nil
		}
		return []diag.Finding{{
			Where: accent.Span, About: "accent",
			Found:    fmt.Sprintf("the accent %s has a contrast of %.2f : 1 on white", accent.Value, colour.Contrast(accent.Value, colour.White)),
			Expected: fmt.Sprintf("at least %.1f : 1 for text (WCAG 2.2, 1.4.3); it is printed as %s, %.2f : 1", colour.ForText, printed, colour.Contrast(printed, colour.White)),
			Sum: []string{fmt.Sprintf("(%.4f + 0.05) ÷ (%.4f + 0.05) = %.2f, from the luminance of white and of the accent",
				colour.White.Luminance(), accent.Value.Luminance(), colour.Contrast(accent.Value, colour.White))},
			Remedies: []diag.Remedy{
				{Do: fmt.Sprintf("write accent: \"%s\"", printed), Changes: []diag.Change{{Where: accent.Span, New: "\"" + printed.String() + "\""}}},
				{Do: "choose a darker colour"},
			},
		}}
	},
	NotLookedAt: func(s Subject) []string {
		if !s.Kit.Look.Accent.Given() {
			return []string{"no accent colour is told; the program's own is printed"}
		}
		return nil
	},
}
