package rules

import (
	"slices"
	"strings"

	"tallyfold/kit"
	"tallyfold/kit/diag"
	"tallyfold/kit/ledger"
	"tallyfold/kit/quantity"
)

var fillNotANumber = Rule{
	Name:     "fill-not-a-number",
	Severity: diag.ShouldFix,
	Title:    "How full a container shall be is not told as a number",
	Explanation: `“Fill each jar to just below the rim”: one customer leaves 3 mm, another 10 mm, and the
last jar comes out thin or there is wax left over. A scale, a jug or a ruler needs a
figure.

A fill: link should tell a weight, a volume or a height, or that everything is shared
out equally. One container that takes all there is needs none. A level told by eye must
be fixed; where several are filled and nothing is said, it should be. The finding says what
there is room for: brimful less headspace less inserts, as weight by the density of the
fill, and as height where kit.yaml gives the inside shape.

Write the figure into the link.`,
	Check: func(s Subject) []diag.Finding {
		if language(s.Kit) != "en" {
			return nil // a level told by eye is told as an unreadable amount
		}
		var all []perRun
		operations(s.Kit, func(o *kit.Operation, step *kit.Step) {
			if isUnnumbered(o) && s.Kit.Component(o.Target) != nil {
				all = append(all, unnumberedIn(s, o, step)...)
			}
		})
		return overRuns(s.Kit, all)
	},
}

// unnumberedIn tells a fill without a figure, in each run that follows it. Where none
// does, as in trouble.md, only the words count.
func unnumberedIn(s Subject, o *kit.Operation, step *kit.Step) []perRun {
	words := wordsOf(o.Text)
	if step != nil {
		words = sentenceOf(readStep(step), o)
	}
	byEye := hasAny(words, levelWords)
	var all []perRun
	for _, f := range s.Ledger.Fillings {
		if f.Operation == o && len(f.Parts()) > 0 && (byEye || f.Count > 1 && !hasAny(words, sharingWords)) {
			all = append(all, perRun{f.Run, unnumbered(s, f, byEye)})
		}
	}
	if len(all) == 0 && byEye && !isFilledBy(s, o) {
		all = append(all, perRun{s.Kit.Passes()[0], diag.Finding{
			Where: o.TextSpan, About: o.Target,
			Found:    "“" + onOneLine(o.TextSpan) + "” tells no figure",
			Expected: "a weight, a volume or a height for each " + s.Kit.Called(o.Target),
			Remedies: diag.Fix("write how much goes in: [each to 200 g](fill:" + o.Target + ")"),
		}})
	}
	return all
}

func isFilledBy(s Subject, o *kit.Operation) bool {
	return slices.ContainsFunc(s.Ledger.Fillings, func(f *ledger.Filling) bool { return f.Operation == o })
}

func hasAny(words, list []string) bool {
	return slices.ContainsFunc(words, func(w string) bool { return slices.Contains(list, w) })
}

// isUnnumbered says whether a fill tells no amount of any sort. One without words is
// written by the tool.
func isUnnumbered(o *kit.Operation) bool {
	return o.Kind == kit.Fill && o.Text != "" && o.Phrase.Portion == kit.NoPortion && len(o.Phrase.Amounts) == 0
}

// Words of the sentence of a fill: that all is shared out, and how full.
var (
	sharingWords = []string{"equally", "evenly", "equal", "share", "shared", "divide", "divided", "split", "between", "among", "all",
		"everything", "rest", "remaining", "alike", "same", "alternately"}
	levelWords = []string{"rim", "brim", "top", "full", "lip", "edge", "neck", "shoulder", "line", "mark"}
)

// sentenceOf are the words of the sentence that a fill stands in, without those of
// other fills in it.
func sentenceOf(text reading, o *kit.Operation) []string {
	first, _, ok := text.wordsAt(o.TextSpan)
	if !ok {
		return wordsOf(o.Text)
	}
	var words []string
	for _, w := range text.words {
		if w.sentence != text.words[first].sentence {
			continue
		}
		if link := text.link(text.at.Part(w.start, w.end)); link == nil || link == o || link.Kind != kit.Fill {
			words = append(words, w.text)
		}
	}
	return words
}

func unnumbered(s Subject, f *ledger.Filling, byEye bool) diag.Finding {
	name := f.Container.String()
	finding := diag.Finding{
		Where: f.Operation.TextSpan, About: f.Container.ID,
		Found:    inStep(f.Step) + " fills “" + onOneLine(f.Operation.TextSpan) + "” and tells no figure",
		Expected: "a weight, a volume or a height for each " + name,
		Sum:      lines(append(roomSum(f), mostInside(f)...)...),
		Also:     roomPlaces(f),
	}
	if byEye {
		finding.Severity = diag.MustFix
	}
	if told := equalShare(f); told != "" {
		stays := "all of it, shared equally"
		if free := f.Free(); free.Known() && free.Value().Sign() >= 0 {
			stays += "; " + free.Show() + " of room stays free"
		}
		finding.Remedies = append(finding.Remedies, diag.Remedy{Do: "write " + fillLink(f, told), Then: stays})
	}
	if room := f.Room(); room.Known() && room.Value().Sign() > 0 {
		finding.Remedies = append(finding.Remedies, diag.Remedy{
			Do: "write " + fillLink(f, down(room.Value(), quantity.Amount{Dimension: quantity.Volume})), Then: "as much as there is room for"})
	}
	finding.Remedies = append(finding.Remedies, diag.Remedy{Do: "write that all of it is shared out equally, if that is meant"})
	return finding
}

// fillLink is a fill that tells a figure. Without a noun, “each of 3 to 230 g” would be
// a range.
func fillLink(f *ledger.Filling, told string) string {
	noun := headNoun(f.Container.Name)
	each := "the " + noun
	if f.Count > 1 {
		each = "each of " + whole(f.Count).String() + " " + severalOf(noun)
	}
	return "[" + each + " to " + told + "](fill:" + f.Operation.Target + ")"
}

// severalOf is the plural of a name, well enough for a proposal.
func severalOf(noun string) string {
	for _, ending := range []string{"s", "x", "ch", "sh"} {
		if strings.HasSuffix(noun, ending) {
			return noun + "es"
		}
	}
	return noun + "s"
}

// equalShare is what each gets now, where it has room for it.
func equalShare(f *ledger.Filling) string {
	mass, free := f.Mass(), f.Free()
	if !mass.Known() || mass.Value().Sign() <= 0 || free.Known() && free.Value().Sign() < 0 {
		return ""
	}
	return down(mass.Value(), quantity.Amount{Dimension: quantity.Mass})
}

// mostInside tells the room of a container as weight and as height.
func mostInside(f *ledger.Filling) []string {
	room := f.Room()
	if !room.Known() || room.Value().Sign() <= 0 {
		return nil
	}
	var sum []string
	if dense := f.Density(); dense.Known() {
		sum = append(sum, "room for "+ledger.Times(quantity.Mass, "", room, dense).Sum())
	}
	under := room.Value()
	for _, insert := range f.Inserts {
		if insert.Component.Insert == nil {
			continue
		}
		takes := f.Takes(insert)
		if !takes.Known() {
			return sum
		}
		under = under.Plus(takes.Value())
	}
	if height, ok := ledger.HeightAt(f.Container.Container.Inside.Value, under); ok {
		sum = append(sum, "that stands "+quantity.Show(height, quantity.Length, quantity.Digits(3), quantity.Down())+" high inside")
	}
	return sum
}
