package rules

import (
	"slices"

	"tallyfold/kit"
	"tallyfold/kit/diag"
	"tallyfold/kit/ledger"
	"tallyfold/kit/quantity"
)

var timeClaimedTooShort = Rule{
	Name:     "time-claimed-too-short",
	Severity: diag.MustFix,
	Sums:     true,
	Title:    "The time claimed is shorter than the steps take",
	Explanation: `The work of all steps in all runs is added up and compared with the hands-on time on the
box; work and waits together with the total. A named wait runs alongside the steps up to
where “after” names it; every other wait is waited for. “About” in a claim allows one
part in twenty.

A step that tells no time is not guessed. Which steps those are is worth knowing: the
claim may be short by what they take. Clearing up counts: a step that cleans a vessel, or
is called “Clear up”, must tell time with hands, not only a wait.

Claim the longer time, or make the steps shorter.`,
	Check: func(s Subject) []diag.Finding {
		time := s.Kit.Time
		var findings []diag.Finding
		if finding, ok := tooShort(s, "hands-on", time.HandsOn, s.Plan.HandsOn); ok {
			finding.Sum = lines(append(workSum(s), finding.Sum...)...)
			findings = append(findings, finding)
		}
		if finding, ok := tooShort(s, "total", time.Total, s.Plan.Total); ok {
			finding.Sum = lines(append(clockSum(s), finding.Sum...)...)
			findings = append(findings, finding)
		}
		if time.HandsOn.Given() || time.Total.Given() {
			findings = append(findings, untimed(s)...)
		}
		return findings
	},
	NotLookedAt: func(s Subject) []string {
		var not []string
		if !s.Kit.Time.HandsOn.Given() {
			not = append(not, "no hands-on time is claimed")
		}
		if !s.Kit.Time.Total.Given() {
			not = append(not, "no total time is claimed")
		}
		return not
	},
}

// aboutAllows is how much “about” in a claim allows.
var aboutAllows = quantity.Ratio(1, 20)

// claimed is the longest time that a claim covers; ok is false for a claim that
// has no upper end.
func claimed(told quantity.Amount) (most quantity.Number, ok bool) {
	switch told.Bound {
	case quantity.AtLeast, quantity.Above:
		return most, false
	case quantity.About:
		return told.Nominal.Times(quantity.Whole(1).Plus(aboutAllows)), true
	}
	return quantity.Larger(told.Nominal, told.High), true
}

func tooShort(s Subject, what string, claim kit.Said[quantity.Amount], takes *ledger.Figure) (diag.Finding, bool) {
	most, bounded := claimed(claim.Value)
	if !claim.Given() || !bounded || !takes.Known() || takes.Value().Cmp(most) <= 0 {
		return diag.Finding{}, false
	}
	short := takes.Value().Minus(most)
	return diag.Finding{
		Where: claim.Span, About: "time",
		Found:    what + " time: " + claim.Value.Written + " claimed, and the steps take " + takes.Show(),
		Expected: "at least " + takes.Show(),
		Sum: []string{takes.Show() + " − " + show(most, quantity.Duration) + " = " +
			show(short, quantity.Duration) + " too short"},
		Remedies: []diag.Remedy{
			{Do: "write “" + what + ": " + longer(takes) + "” in kit.yaml", Changes: rewrite(s.Kit, claim.Span, longer(takes))},
			{Do: "make a step shorter"}},
	}, true
}

// longer is the least time to claim, rounded up as people tell it.
func longer(takes *ledger.Figure) string {
	return show(rounded(takes.Value(), step(takes.Value(), quantity.Duration), true), quantity.Duration)
}

// workSum lists the work of each step.
func workSum(s Subject) []string {
	var sum []string
	for _, line := range s.Plan.Lines {
		if line.Work.Known() && line.Work.Value().Sign() > 0 {
			sum = append(sum, lineName(s.Kit, line.Run, line.Step)+": "+line.Work.Show())
		}
	}
	return append(sum, "hands-on in all: "+s.Plan.HandsOn.Show())
}

// clockSum lists what each step adds to the clock.
func clockSum(s Subject) []string {
	var sum []string
	for _, line := range s.Plan.Lines {
		text := ""
		for _, part := range []struct {
			time *ledger.Figure
			what string
		}{{line.Work, "work"}, {line.Wait, "wait"}, {line.Beside, "beside later steps"}} {
			if part.time.Known() && part.time.Value().Sign() > 0 {
				text += ", " + part.time.Show() + " " + part.what
			}
		}
		if text != "" {
			sum = append(sum, lineName(s.Kit, line.Run, line.Step)+": "+text[len(", "):])
		}
	}
	return append(sum, "from first to last: "+s.Plan.Total.Show())
}

func lineName(k *kit.Kit, run *kit.Run, step *kit.Step) string {
	if name := runName(k, run); name != "" {
		return inStep(step) + ", " + name
	}
	return inStep(step)
}

// untimed tells once which steps tell no time. A step in which nothing at all
// happens is told of when the method is read.
func untimed(s Subject) []diag.Finding {
	var steps []*kit.Step
	for _, line := range s.Plan.Lines {
		untold := slices.Contains(s.Plan.Untimed, line.Step) && doesSomething(line.Step)
		if !slices.Contains(steps, line.Step) && (untold || clearsUp(s.Kit, line.Step) && hasNone(line.Work)) {
			steps = append(steps, line.Step)
		}
	}
	if len(steps) == 0 {
		return nil
	}
	sum := []string{"the steps that tell a time add up to " + s.Plan.HandsOn.Show() + " of work, " + s.Plan.Total.Show() + " in all"}
	var numbers []string
	var also []diag.Place
	for i, step := range steps {
		numbers = append(numbers, whole(step.Number).String())
		if clearsUp(s.Kit, step) {
			sum = append(sum, "clearing up in "+inStep(step)+" is not in it")
		}
		if i > 0 {
			also = append(also, diag.Place{Where: step.Span, Note: inStep(step)})
		}
	}
	word := "steps "
	verb := " tell no time with hands"
	if len(numbers) == 1 {
		word, verb = "step ", " tells no time with hands"
	}
	first := steps[0]
	return []diag.Finding{{
		Severity: diag.WorthKnowing, Where: first.Span, About: first.ID, Also: also,
		Found:    "cannot check all of the time claimed: " + word + listed(numbers) + verb,
		Expected: "in every step how long it takes, as in [5 minutes](work:)",
		Sum:      sum,
		Remedies: diag.Fix("write into each of these steps about how long it takes: [5 minutes](work:)"),
	}}
}

func hasNone(f *ledger.Figure) bool { return f.Known() && f.Value().IsZero() }

// clearing are phrases of a heading that make a step one of clearing up.
var clearing = map[string][][]string{
	"en": cutAll([]string{"clear up", "clean up", "wash up", "tidy up", "clearing up", "cleaning up", "washing up", "clear away", "tidy away"}),
}

// clearsUp says whether a step cleans a vessel, or is called so and does anything.
func clearsUp(k *kit.Kit, step *kit.Step) bool {
	for _, o := range step.Operations {
		if o.Kind == kit.Clean && !o.Aside {
			return true
		}
	}
	return doesSomething(step) && slices.ContainsFunc(clearing[language(k)], func(phrase []string) bool { return holdsPhrase(wordsOf(step.Title), phrase) })
}

func doesSomething(step *kit.Step) bool {
	for _, o := range step.Operations {
		switch o.Kind {
		case kit.Take, kit.Use, kit.Move, kit.Fill, kit.Place, kit.Left, kit.Clean, kit.Warm, kit.Cool, kit.Again, kit.After:
			if !o.Aside {
				return true
			}
		}
	}
	return false
}
