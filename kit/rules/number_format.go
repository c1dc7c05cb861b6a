package rules

import (
	"regexp"
	"slices"
	"strings"

	"tallyfold/kit"
	"tallyfold/kit/diag"
	"tallyfold/kit/quantity"
	"tallyfold/kit/source"
)

var numberFormat = Rule{
	Name:     "number-format",
	Severity: diag.ShouldFix,
	Title:    "A figure is written in the way of another language",
	Explanation: `“1.5 kg” is a kilo and a half to an English reader; a French one stumbles, and a German
one may read “1.500 g” as a kilo and a half where an English one reads a gram and a half.
A slip of a thousand is no small one, and translated texts are full of it.

The decimal mark and the mark between thousands are those of the language, region
included, by the locale data of Unicode (CLDR). Looked at are figures with a unit in the
method, its translations and trouble.md: in running text, and in links that need no
amount. A link that needs one and cannot be read is told by unreadable-amount.

Write the figure as the language does.`,
	Check: func(s Subject) []diag.Finding {
		n := numberSearch{kit: s.Kit}
		own := s.Kit.Language.Value
		for _, step := range s.Kit.Method.Steps() {
			n.search(own, step.ID, step.Prose, step.Operations, nil)
		}
		for _, trouble := range s.Kit.Troubles {
			n.search(own, trouble.ID, trouble.Prose, trouble.Operations, nil)
		}
		for _, t := range s.Kit.Translations {
			for _, step := range t.Method.Steps() {
				n.search(t.Language, step.ID, step.Prose, step.Operations, s.Kit.Step(step.ID))
			}
		}
		return n.findings
	},
}

type numberSearch struct {
	kit      *kit.Kit
	findings []diag.Finding
}

// search looks through one step or trouble. own is the step that it translates, or nil.
func (n *numberSearch) search(tag, about string, prose []kit.Prose, links []*kit.Operation, own *kit.Step) {
	for _, piece := range prose {
		n.text(tag, about, piece.Span, own)
	}
	for _, o := range links {
		if len(o.Phrase.Amounts) > 0 || !tellsAmount(o.Kind) {
			n.text(tag, about, o.TextSpan, own)
		}
	}
}

// tellsAmount: a link of this kind in which no amount was read has been told already.
func tellsAmount(kind kit.Kind) bool {
	return slices.Contains(actionKinds, kind) || kind == kit.Same
}

// marked is a figure with a point or comma in it, and what follows up to a unit.
var marked = regexp.MustCompile(`\d+(?:[.,]\d+)+`)

func (n *numberSearch) text(tag, about string, at source.Span, own *kit.Step) {
	decimal, thousands := kit.NumberMarks(tag)
	if decimal == "" {
		return
	}
	text := at.Text()
	for _, place := range marked.FindAllStringIndex(text, -1) {
		figure := text[place[0]:place[1]]
		if place[0] > 0 && strings.ContainsAny(text[place[0]-1:place[0]], ".,") || !n.isMeasured(tag, text[place[0]:]) {
			continue
		}
		if want := inLanguage(figure, decimal, thousands); want != figure {
			n.note(tag, about, at.Part(place[0], place[1]), figure, want, own)
		}
	}
}

// isMeasured says whether a text begins with a figure and a unit, read either way.
func (n *numberSearch) isMeasured(tag, text string) bool {
	const longest = 40
	text = text[:min(longest, len(text))]
	for _, comma := range []bool{false, true} {
		reader := quantity.Reader{Convention: n.kit.Kitchen.Value, Language: tag, DecimalComma: comma}
		for _, found := range reader.Find(text) {
			if found.Start == 0 && found.Amount.Dimension != quantity.Count {
				return true
			}
			break
		}
	}
	return false
}

// inLanguage writes a figure with the marks of a language. One that may be meant is
// left alone: three digits behind the right mark, or behind the mark of thousands.
func inLanguage(figure, decimal, thousands string) string {
	last := strings.LastIndexAny(figure, ".,")
	mark, behind := figure[last:last+1], figure[last+1:]
	const group = 3
	switch several := strings.Count(figure, mark) > 1; {
	case mark == decimal && !several:
		return strings.NewReplacer(".", thousands, ",", thousands).Replace(figure[:last]) + decimal + behind
	case len(behind) == group && (several || mark != decimal):
		return strings.ReplaceAll(figure, mark, thousands)
	}
	return strings.NewReplacer(".", thousands, ",", thousands).Replace(figure[:last]) + decimal + behind
}

func (n *numberSearch) note(tag, about string, at source.Span, figure, want string, own *kit.Step) {
	f := diag.Finding{
		Where: at, About: about,
		Found:    "“" + figure + "” in a text in the language " + tag,
		Expected: "figures as they are written there: " + want,
		Remedies: []diag.Remedy{{Do: "write “" + want + "”", Changes: []diag.Change{{Where: at, New: want}}}},
	}
	if own != nil {
		f.Also = besideMethod(own.Span, "the step of the method")
	} else if n.kit.Language.Given() {
		f.Also = besideMethod(n.kit.Language.Span, "the language of the kit")
	}
	n.findings = append(n.findings, f)
}
