package rules

import (
	"slices"

	"tallyfold/kit"
	"tallyfold/kit/diag"
)

var noEndPoint = Rule{
	Name:     "no-end-point",
	Severity: diag.ShouldFix,
	Sums:     true,
	Title:    "Something is heated, mixed or left, and nothing says until when",
	Explanation: `“Melt the wax.” “Stir.” “Leave it to dry.” The maker sees when it is enough; a stranger
stops at once, or goes on until it burns.

The running text of each step is searched for orders to heat, to mix, and to let something
dry, set, cool or soak. Silent is a step that tells anywhere a time, a temperature or what
to look for, in a link or in words (“until …”, “ten times”), and one after which the next
step begins with when it may begin. Where the step's vessel is to be warmed or heated, a time
alone is not enough: two minutes are right for one oven only. It goes by words, so it should be fixed, not must.

Write what to look for, how long it takes, or to what temperature; best two of them.`,
	Check: func(s Subject) []diag.Finding {
		words, known := endless[language(s.Kit)]
		if !known {
			return []diag.Finding{noWords(s.Kit, "heating, mixing and setting", endless)}
		}
		var findings []diag.Finding
		for _, step := range s.Kit.Method.Steps() {
			if finding, ok := withoutEnd(s.Kit, step, words); ok {
				findings = append(findings, finding)
			}
		}
		return findings
	},
}

// endless are the verbs of one language for what goes on until it is ended.
type endlessVerbs struct {
	heating, mixing []string
	// degrees are heating verbs that a time alone does not end: stoves differ.
	degrees []string
	// leaving verbs let something be, settling verbs behind them say what it does.
	leaving, settling []string
}

var endless = map[string]endlessVerbs{
	"en": {
		heating:  []string{"melt", "heat", "warm", "boil", "simmer", "bake", "cook", "reheat"},
		degrees:  []string{"heat", "warm", "reheat"},
		mixing:   []string{"mix", "stir", "whisk", "blend", "beat", "knead", "dissolve"},
		leaving:  []string{"let", "leave", "allow", "set", "put", "hang"},
		settling: []string{"dry", "set", "cool", "harden", "cure", "soak", "steep", "rest", "drain", "chill", "stiffen", "thicken", "prove"},
	},
}

func withoutEnd(k *kit.Kit, step *kit.Step, words endlessVerbs) (diag.Finding, bool) {
	text, end := readStep(step), ends[language(k)]
	for _, one := range orders(k, text) {
		verb := text.words[one.word].text
		byDegrees := slices.Contains(words.degrees, verb) && step.Vessel != "" && !saysHowHot(step, text, one, words.degrees)
		byClock := byDegrees && text.endsIn(one.sentence, end) && !text.looksIn(one.sentence, end) && !text.looksIn(one.sentence+1, end)
		if text.endsIn(one.sentence, end) && !byClock || !byDegrees && (hasEnd(step) || text.endsIn(one.sentence+1, end)) {
			continue
		}
		switch {
		case byClock:
			finding := endMissing(step, text, one.word, one.word, "heats", "to what temperature or until what it is heated, besides how long",
				"say it in a link: [to 75 °C](warm:), or [no flakes are left](cue:)")
			finding.Found = inStep(step) + " heats by the clock alone, and stoves and ovens differ"
			return finding, true
		case slices.Contains(words.heating, verb):
			return endMissing(step, text, one.word, one.word, "heats", "to what temperature, how long, or until what it is heated",
				"say it in a link: [to 75 °C](warm:), or [no flakes are left](cue:)"), true
		case slices.Contains(words.mixing, verb):
			return endMissing(step, text, one.word, one.word, "mixes", "how long it is mixed, or until what",
				"say what to look for or how long: [no specks show](cue:), [2 minutes](work:)"), true
		case slices.Contains(words.leaving, verb):
			settles := text.settles(one.word, words.settling)
			if settles > 0 && !takenUp(k, step, end) {
				return endMissing(step, text, one.word, settles, "leaves something", "how long it is left, or until what",
					"say how long and what to look for: [2 hours](wait:), until [it feels dry](cue:)"), true
			}
		}
	}
	return diag.Finding{}, false
}

// saysHowHot says whether a step tells a temperature or what to look for behind an
// order to heat and before the next one.
func saysHowHot(step *kit.Step, text reading, heats order, degrees []string) bool {
	from, to := text.at.Start+text.words[heats.word].start, text.at.End
	for i := heats.word + 1; i < len(text.words); i++ {
		if text.words[i].sentence > heats.sentence && slices.Contains(degrees, text.words[i].text) {
			to = text.at.Start + text.words[i].start
			break
		}
	}
	return slices.ContainsFunc(step.Operations, func(o *kit.Operation) bool {
		tells := o.Kind == kit.Warm || o.Kind == kit.Cool || o.Kind == kit.Cue
		return tells && from <= o.Span.Start && o.Span.Start < to
	})
}

// settles gives the word in the sentence of a leaving verb that says what happens
// meanwhile, 0 for none: "leave it to dry", "let the gel set".
func (r reading) settles(verb int, settling []string) int {
	for i := verb + 1; i < len(r.words) && r.words[i].sentence == r.words[verb].sentence; i++ {
		if !slices.Contains(settling, r.words[i].text) {
			continue
		}
		if before := r.neighbour(i, -1); before == "to" || r.words[verb].text == "let" && i > verb+1 {
			return i
		}
	}
	return 0
}

func endMissing(step *kit.Step, text reading, first, last int, does, expected, remedy string) diag.Finding {
	where := text.span(first, min(last+2, text.lastOf(first)))
	return diag.Finding{
		Where: where, About: step.ID,
		Found:    inStep(step) + " " + does + ", and nothing in it says until when",
		Expected: expected,
		Remedies: diag.Fix(remedy, "write it in words: “until …”, with what the customer sees, hears or feels then"),
	}
}

// lastOf is the last word of the sentence of a word.
func (r reading) lastOf(i int) int {
	for i+1 < len(r.words) && r.words[i+1].sentence == r.words[i].sentence {
		i++
	}
	return i
}
