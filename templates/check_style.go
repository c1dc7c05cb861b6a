package templates

import (
	"fmt"
	"regexp"
	"strings"

	"tallyfold/kit/diag"
	"tallyfold/kit/source"
)

// checkStyle holds a maker's style sheet against what a page that needs nothing else can
// show, and against hiding what must be read.
func checkStyle(file *source.File) diag.List {
	return append(reachesOut(file, addressInStyle), hidesCautions(file)...)
}

// What a page fetches from elsewhere (CSS Values and Units, url(); CSS Cascading, @import;
// HTML Living Standard, the attributes src, href and srcset). In a group what is fetched.
var (
	addressInStyle = regexp.MustCompile(`(?i)@import\s+(?:url\()?\s*["']?([^"');]+)|(?:url|src)\(\s*["']?([^"')]+)|["']((?:https?:)?//[^"']+)["']`)
	addressInPage  = regexp.MustCompile(`(?i)\b(?:src|srcset|href|action|data)\s*=\s*["']?([^"'\s>]+)|` + addressInStyle.String())
)

func reachesOut(file *source.File, address *regexp.Regexp) diag.List {
	var found diag.List
	for _, at := range address.FindAllSubmatchIndex(withoutNotes(file.Text), -1) {
		for i := 2; i < len(at); i += 2 {
			if at[i] < 0 {
				continue
			}
			target := string(file.Text[at[i]:at[i+1]])
			if strings.HasPrefix(target, "data:") || strings.HasPrefix(target, "#") || strings.HasPrefix(target, "{{") {
				continue
			}
			f := misfit(file.Span(at[i], at[i+1]), target, fmt.Sprintf("%s lies outside of the page", target),
				"a page that needs nothing else: from a box it can reach nothing, and it must not tell anybody who reads it",
				"put it into the page as data:…, or leave it out")
			f.Rule = "style-reaches-out"
			found = append(found, f)
		}
	}
	return found
}

var (
	styleNotes = regexp.MustCompile(`(?s)/\*.*?\*/`)
	styleRule  = regexp.MustCompile(`([^{}]*)\{([^{}]*)\}`)
	hiding     = regexp.MustCompile(`(?i)display\s*:\s*none|visibility\s*:\s*(?:hidden|collapse)|content-visibility\s*:\s*hidden|opacity\s*:\s*0(?:\.0*)?\s*(?:[;!]|$)|font-size\s*:\s*0(?:\.0*)?(?:[a-z%;!\s]|$)`)
	cautionary = regexp.MustCompile(`\.(?:signal|says|word|before|label|line|warns)\b|(?:^|,)\s*\*\s*(?:,|$)`)
)

// withoutNotes blanks the notes of a style sheet, every byte staying in its place.
func withoutNotes(text []byte) []byte {
	return styleNotes.ReplaceAllFunc(text, func(note []byte) []byte { return []byte(strings.Repeat(" ", len(note))) })
}

// hidesCautions looks for rules that would take a caution from the page.
func hidesCautions(file *source.File) diag.List {
	var found diag.List
	text := withoutNotes(file.Text)
	for _, at := range styleRule.FindAllSubmatchIndex(text, -1) {
		selector, body := text[at[2]:at[3]], text[at[4]:at[5]]
		if strings.Contains(string(selector), "::") || !cautionary.Match(selector) {
			continue
		}
		if hides := hiding.FindIndex(body); hides != nil {
			f := misfit(file.Span(at[4]+hides[0], at[4]+hides[1]), strings.TrimSpace(string(selector)),
				fmt.Sprintf("%s would be hidden", strings.TrimSpace(string(selector))), "cautions that everybody can see", "take this out")
			f.Rule = "style-hides-caution"
			found = append(found, f)
		}
	}
	return found
}
