package rules

import (
	"slices"
	"strings"

	"tallyfold/kit"
	"tallyfold/kit/diag"
	"tallyfold/kit/quantity"
	"tallyfold/kit/source"
)

var claimNotBacked = Rule{
	Name:     "claim-not-backed",
	Severity: diag.ShouldFix,
	Sums:     true,
	Title:    "A claim on the box rests on nothing, or on a figure that says otherwise",
	Explanation: `What stands on the box must be shown by something: an inspector asks for it, and so does a
customer whose kit makes five. “shown by” names what: “pieces”, “time”, the key of a thing
in the kit, or a file of the folder, such as trials/burn.yaml. A claim without it, or with
a file that is not there or empty, is not backed. What stands in a file is not read: that
it shows the claim is for people to see.

The numbers in the words of a claim are compared with what backs it: counts with “makes”
and the kinds of piece, or what the steps fill; weights and volumes with the fills and the
net contents; times with the work, the waits and the whole, of one run or all. “About”
allows one part in twenty; a time may be up to a quarter longer than the steps take, never
shorter. A number that is wrong must be fixed. A claim none of whose numbers can be
compared with what is said to show it is worth knowing: it was not checked.

Name what shows the claim, put the number right, or take the claim off the box.`,
	Check: func(s Subject) []diag.Finding {
		var findings []diag.Finding
		for _, claim := range s.Kit.Claims {
			if claim.Says.Given() {
				findings = append(findings, unbacked(s, claim)...)
			}
		}
		return findings
	},
	NotLookedAt: func(s Subject) []string {
		if len(s.Kit.Claims) == 0 {
			return []string{"kit.yaml lists no claim"}
		}
		var files []string
		for _, claim := range s.Kit.Claims {
			if slices.Contains(s.Kit.Documents, claim.ShownBy.Value) && !slices.Contains(files, claim.ShownBy.Value) {
				files = append(files, claim.ShownBy.Value)
			}
		}
		if len(files) == 0 {
			return nil
		}
		return []string{"what stands in " + listed(files) + " is not read"}
	},
}

func unbacked(s Subject, claim *kit.Claim) []diag.Finding {
	by := claim.ShownBy.Value
	switch {
	case !claim.ShownBy.Given():
		return []diag.Finding{shownByNothing(s.Kit, claim)}
	case strings.ContainsAny(by, "./"):
		if slices.Contains(s.Kit.Documents, by) {
			return nil
		}
		return []diag.Finding{noSuchDocument(claim)}
	}
	if _, known := s.Kit.Named(by); !known && by != "pieces" && by != "time" {
		return nil // told when kit.yaml is read
	}
	return wrongNumbers(s, claim, backingOf(s, by))
}

// aboutClaim begins a finding on a claim.
func aboutClaim(claim *kit.Claim, found, expected string) diag.Finding {
	return diag.Finding{
		Where: claim.Says.Span, About: "claims",
		Found: "“" + claim.Says.Value + "”: " + found, Expected: expected,
	}
}

func shownByNothing(k *kit.Kit, claim *kit.Claim) diag.Finding {
	finding := aboutClaim(claim, "nothing is said to show it, so it is not backed", "“shown by:” with what shows it")
	by := "trials/… with the file that shows it"
	if numbers := amountReader(k).Find(claim.Says.Value); len(numbers) > 0 {
		switch numbers[0].Amount.Dimension {
		case quantity.Duration:
			by = "time"
		case quantity.Count:
			by = "pieces"
		}
	}
	finding.Remedies = diag.Fix("write “shown by: "+by+"” beside it", "take the claim off the box")
	return finding
}

func noSuchDocument(claim *kit.Claim) diag.Finding {
	finding := aboutClaim(claim, "said to be shown by "+claim.ShownBy.Value+", and the folder has no such file with anything in it", "a file of the kit folder")
	finding.Where = claim.ShownBy.Span
	finding.Remedies = diag.Fix("put the file there", "name another file, or what else shows it", "take the claim off the box")
	return finding
}

// wrongNumbers holds each number of a claim against the figures that back it. If
// none of them can be compared, the claim was not checked.
func wrongNumbers(s Subject, claim *kit.Claim, figures []backingFigure) []diag.Finding {
	numbers := numbersIn(s.Kit, claim.Says.Value)
	if !saysEach(s.Kit, claim.Says.Value) {
		figures = slices.DeleteFunc(figures, func(f backingFigure) bool { return f.ofRun })
	}
	var findings []diag.Finding
	compared := false
	for _, number := range numbers {
		told := claim.Says.Value[number.Start:number.End]
		comparable := comparableTo(number.Amount, figures)
		compared = compared || len(comparable) > 0
		if len(comparable) > 0 && !anyFits(number.Amount, comparable) {
			findings = append(findings, wrongNumber(s.Kit, claim, told, number.Amount, comparable))
		}
	}
	if len(numbers) > 0 && !compared {
		return []diag.Finding{notComparable(claim, claim.Says.Value[numbers[0].Start:numbers[0].End])}
	}
	return findings
}

// eachWords of a language speak of one run or piece rather than of all.
var eachWords = map[string][]string{"en": {"each", "per", "every", "apiece", "batch"}}

// saysEach says whether a claim speaks of one run: by such a word or by its name.
func saysEach(k *kit.Kit, says string) bool {
	words := wordsOf(says)
	for _, run := range k.Runs {
		for _, word := range wordsOf(run.Name.Value) {
			if slices.Contains(words, word) {
				return true
			}
		}
	}
	return slices.ContainsFunc(words, func(word string) bool { return slices.Contains(eachWords[language(k)], word) })
}

// beyond are words of a language before a figure that make it a bound.
var beyond = map[string]map[string]quantity.Bound{"en": {"over": quantity.Above, "above": quantity.Above, "under": quantity.Below, "below": quantity.Below}}

// numbersIn finds the amounts in a claim. In running text "over 1 kg" may mean a
// place; in a claim it is a bound.
func numbersIn(k *kit.Kit, says string) []quantity.Found {
	numbers := amountReader(k).Find(says)
	for i, number := range numbers {
		before := cut(says[:number.Start])
		if len(before) == 0 || number.Amount.Bound != quantity.Exactly {
			continue
		}
		last := before[len(before)-1]
		if bound, ok := beyond[language(k)][last.text]; ok {
			numbers[i].Amount.Bound, numbers[i].Start = bound, last.start
		}
	}
	return numbers
}

func wrongNumber(k *kit.Kit, claim *kit.Claim, told string, amount quantity.Amount, figures []backingFigure) diag.Finding {
	near := nearestTo(amount, figures)
	finding := aboutClaim(claim, "“"+told+"” is claimed, and "+near.what+" "+near.shown(), near.shown())
	finding.Severity = diag.MustFix
	if amount.Dimension == quantity.Duration && near.value.Less(amount.Nominal) {
		finding.Severity = diag.ShouldFix
	}
	for _, figure := range figures {
		if !figure.stated || near.stated {
			finding.Sum = append(finding.Sum, figure.what+" "+figure.shown())
		}
	}
	finding.Sum = lines(finding.Sum...)
	is := strings.TrimSpace(near.shown() + " " + amount.Noun)
	finding.Remedies = []diag.Remedy{
		{Do: "write what is so: “" + is + "” instead of “" + told + "”", Changes: rewrite(k, partSaid(claim.Says, told), is)},
		{Do: "change the kit so that the claim is true"},
	}
	if near.where.Known() {
		finding.Also = []diag.Place{{Where: near.where, Note: near.what + " " + near.shown()}}
	}
	return finding
}

// partSaid is the place of some words in a text of kit.yaml, where they stand there
// once and as they are read.
func partSaid(text kit.Said[string], words string) source.Span {
	written := text.Span.Text()
	at := strings.Index(written, words)
	if at < 0 || strings.Count(written, words) > 1 {
		return source.Span{}
	}
	return text.Span.Part(at, at+len(words))
}

func notComparable(claim *kit.Claim, told string) diag.Finding {
	finding := aboutClaim(claim, "", "something that shows this figure")
	finding.Found = "cannot check “" + told + "” in “" + claim.Says.Value + "” against “" + claim.ShownBy.Value + "”, which has no figure of that kind"
	finding.Severity = diag.WorthKnowing
	finding.Remedies = diag.Fix("name what does show it: a file such as trials/….yaml, or another thing of the kit")
	return finding
}
