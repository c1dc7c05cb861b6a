package rules

import (
	"tallyfold/kit"
	"tallyfold/kit/diag"
)

var translationStale = Rule{
	Name:     "translation-stale",
	Severity: diag.ShouldFix,
	Title:    "A step has changed since it was translated",
	Explanation: `Links are compared figure by figure, and the words between them cannot be: a warning
that was added, a knack that was found, a step that was put otherwise. So the heading of
a translated step keeps a fingerprint of the step it was translated from,
“## [Faire fondre la cire](step:melt?of=1a2b3c4d)”. It changes with every word, link and
caution of that step, not with its line breaks.

Read the changed step through, put the translation right, and write the new fingerprint,
which the finding prints. Where a heading has none, nothing can be told; that is told once
a file, with the fingerprints of today.`,
	NotLookedAt: untranslated,
	Check: func(s Subject) []diag.Finding {
		return eachTranslation(s.Kit, func(t *kit.Translation) []diag.Finding { return stale(s.Kit, t) })
	},
}

func stale(k *kit.Kit, t *kit.Translation) []diag.Finding {
	var findings []diag.Finding
	var without []stepPair
	for _, pair := range stepPairs(k, t) {
		now := pair.own.Fingerprint()
		switch {
		case !pair.other.Of.Given():
			without = append(without, pair)
		case pair.other.Of.Value != now:
			findings = append(findings, diag.Finding{
				Where: pair.other.Of.Span, About: pair.own.ID, Cause: translationCause(t, pair.own), Follows: true,
				Found:    inStep(pair.other) + " of " + fileOf(t.Method) + " was translated from another state of this step: " + pair.other.Of.Value,
				Expected: "the state of today: " + now,
				Remedies: diag.Fix("read " + inStep(pair.own) + " of the method through, put right what has changed, and then write ?of=" + now),
				Also:     besideMethod(pair.own.Span, "the step as it is today"),
			})
		}
	}
	if len(without) > 0 {
		findings = append(findings, withoutFingerprint(t, without))
	}
	return findings
}

func withoutFingerprint(t *kit.Translation, pairs []stepPair) diag.Finding {
	finding := diag.Finding{
		Severity: diag.WorthKnowing, Where: pairs[0].other.Span, About: t.Language,
		Found:    "cannot check whether " + plural(len(pairs), "step") + " of " + fileOf(t.Method) + " are of today: no ?of= in the heading",
		Expected: "the fingerprint of the step that was translated, so that a change is noticed",
	}
	if len(pairs) == 1 {
		finding.Found = "cannot check whether " + inStep(pairs[0].other) + " of " + fileOf(t.Method) + " is of today: no ?of= in the heading"
	}
	for _, pair := range pairs {
		finding.Sum = append(finding.Sum, inStep(pair.other)+": (step:"+pair.own.ID+"?of="+pair.own.Fingerprint()+")")
		finding.Also = append(finding.Also, diag.Place{Where: pair.own.Span, Note: pair.own.Fingerprint()})
	}
	finding.Remedies = diag.Fix("once you have read both texts side by side, write the fingerprints as listed")
	return finding
}
