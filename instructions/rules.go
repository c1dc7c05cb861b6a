package instructions

import (
	"tallyfold/kit/diag"
	"tallyfold/kit/source"
)

// The findings this package has to tell, by name. All must be fixed unless the
// table of weights says otherwise.
const (
	missingFile       = "missing-file"           // kit.yaml or method.md is not there
	refusedFile       = "refused-file"           // too large, a link to elsewhere, odd characters …
	misnamedFile      = "misnamed-file"          // looks like trouble.md, is called otherwise
	notAPicture       = "not-a-picture"          // a file in pictures/ that cannot be shown
	unreadableLink    = "unreadable-link"        // looks like one of ours
	refusedLink       = "refused-link"           // file:, javascript:, data:
	unknownTarget     = "unknown-target"         // names nothing, or a thing of the wrong sort
	roleUnbound       = "role-without-component" // some run that follows the step binds no component
	unreadableAmount  = "unreadable-amount"      // a link that needs an amount tells none that can be read
	duplicateStep     = "duplicate-step"
	duplicateHeading  = "duplicate-heading" // of parts, troubles, words
	duplicateName     = "duplicate-name"    // a step or wait called like something else
	noSteps           = "no-steps"
	stepWithoutTitle  = "step-without-title"
	stepWithoutAction = "step-without-action"
	outsideAStep      = "outside-a-step"    // something happens where no step is
	outsideAHeading   = "outside-a-heading" // text that goes into no booklet
	unmarkedCaution   = "unmarked-caution"  // a signal word outside a quotation
	rawHTML           = "raw-html"
	unclosedNote      = "unclosed-note" // <!-- without -->
	languageNotRead   = "language-not-read"
)

var weights = map[string]diag.Severity{
	misnamedFile:      diag.ShouldFix,
	notAPicture:       diag.WorthKnowing,
	outsideAHeading:   diag.ShouldFix,
	unmarkedCaution:   diag.ShouldFix,
	languageNotRead:   diag.ShouldFix,
	stepWithoutAction: diag.WorthKnowing,
	rawHTML:           diag.WorthKnowing,
}

// finding makes a finding of one of the rules above.
func finding(rule string, where source.Span, about, found, expected string, remedies ...string) diag.Finding {
	severity, lighter := weights[rule]
	if !lighter {
		severity = diag.MustFix
	}
	return diag.Finding{
		Rule: rule, Severity: severity, Where: where, About: about,
		Found: found, Expected: expected, Remedies: diag.Fix(remedies...),
	}
}

// quoted puts what a maker wrote into quotation marks, shortened where it is long.
func quoted(text string) string {
	const longest = 60
	short := []rune(text)
	if len(short) > longest {
		short = append(short[:longest-1], '…')
	}
	return "“" + string(short) + "”"
}
