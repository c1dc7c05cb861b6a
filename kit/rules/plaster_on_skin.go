package rules

import (
	"regexp"
	"slices"
	"strings"

	"tallyfold/kit"
	"tallyfold/kit/diag"
	"tallyfold/kit/handbook"
	"tallyfold/kit/quantity"
	"tallyfold/kit/source"
)

var plasterOnSkin = Rule{
	Name:     "plaster-on-skin",
	Severity: diag.MustFix,
	Title:    "A step puts a hand, a foot or a face into plaster, or plaster on skin",
	Explanation: `Plaster gets hot as it sets, in a thick piece hot enough to burn to the bone, and it grips: a
hand that is in it does not come out in time. People have lost fingers that way (suppliers'
sheets of gypsum plasters, from memory). Casts of a body are taken in stuff that is made for
skin, and the plaster is poured into the empty mould.

In kits with a component that has “hazards: plaster” the sentences of the steps, from the one
that takes it on and without their cautions, are searched for orders that put a part of a body
into the plaster or into what may hold it, or plaster on a part of a body. What goes into
another of your materials, such as a casting gel for skin, is not told, nor is a sentence with
“not” or “never” before it. It goes by English words, and unusual ones are not found.

Take a casting material for skin, and pour the plaster when the hand is out.`,
	Check: func(s Subject) []diag.Finding {
		if !slices.ContainsFunc(s.Kit.Components, isPlaster) {
			return nil
		}
		if language(s.Kit) != "en" {
			return []diag.Finding{noWords(s.Kit, "parts of a body in plaster", map[string]bool{"en": true})}
		}
		var findings []diag.Finding
		for _, step := range s.Kit.Method.Steps() {
			if step.Number < plasterOutAt(s) {
				continue
			}
			if where, found := bodyInPlaster(s.Kit, step); found {
				findings = append(findings, diag.Finding{
					Where: where, About: step.ID,
					Found:    "“" + strings.Join(strings.Fields(where.Text()), " ") + "”, in a kit with plaster",
					Expected: "no part of a body in plaster, and no plaster on skin",
					Remedies: diag.Fix("take the cast in a material that is made for skin, and pour plaster into the empty mould", "if it is no plaster that is meant, say in other words what goes where"),
				})
			}
		}
		return findings
	},
	NotLookedAt: func(s Subject) []string {
		if !slices.ContainsFunc(s.Kit.Components, isPlaster) {
			return []string{"no component has “hazards: plaster”"}
		}
		return nil
	},
}

func isPlaster(c *kit.Component) bool {
	return slices.ContainsFunc(c.Hazards, func(said kit.Said[string]) bool { return said.Value == handbook.Plaster })
}

// plasterOutAt is the number of the first step that takes plaster from its bag.
func plasterOutAt(s Subject) int {
	for _, step := range s.Kit.Method.Steps() {
		for _, o := range step.Operations {
			if c := s.Kit.Component(o.Target); c != nil && !o.Aside && isPlaster(c) {
				return step.Number
			}
		}
	}
	return 0 // never by a link: then any step may
}

// bodyInPlaster finds the first order of a step, outside its cautions, that brings a body and
// plaster together.
func bodyInPlaster(k *kit.Kit, step *kit.Step) (source.Span, bool) {
	text := withoutTargets(step.Body.Text())
	for _, order := range ordersOnBodies {
		for _, at := range order.words.FindAllStringSubmatchIndex(text, -1) {
			with := upToNext(text[at[2*order.with]:at[2*order.with+1]])
			where := step.Body.Part(at[0], max(at[2*order.body+1], at[2*order.with]+len(with)))
			if !inCaution(where, step.Cautions) && !forbidden(text[:at[0]]) && isOwnPart(text[at[2*order.body+1]:]) && maybePlaster(k, with, order.holds) {
				return where, true
			}
		}
	}
	return source.Span{}, false
}

// withoutTargets blanks the marks and targets of links, every byte in its place.
func withoutTargets(text string) string {
	return linkMarks.ReplaceAllStringFunc(text, func(marks string) string { return strings.Repeat(" ", len(marks)) })
}

var linkMarks = regexp.MustCompile(`\]\([^)\n]*\)|\[|\*+`)

// forbidden says whether the sentence up to a place says that something is not to be done.
func forbidden(before string) bool {
	sentence := before[strings.LastIndexAny(before, ".!?:;\n")+1:]
	return slices.ContainsFunc(wordsOf(sentence), func(word string) bool { return slices.Contains(notTo, word) })
}

// isOwnPart says whether a part of a body stands alone: "the foot of the lamp" is none.
func isOwnPart(after string) bool { return !strings.HasPrefix(strings.TrimLeft(after, " "), "of ") }

// upToNext is a text up to where the sentence goes on to something else.
func upToNext(words string) string {
	for _, word := range cut(words) {
		if slices.Contains(goesOn, word.text) {
			return strings.TrimRight(words[:word.start], " \n")
		}
	}
	return words
}

// maybePlaster says whether words can mean plaster, or what may hold it: no other material of
// the kit is named by more of them, and nothing that keeps plaster off.
func maybePlaster(k *kit.Kit, words string, holds bool) bool {
	said := wordsOf(words)
	if alikeIn(said, keepsOff) > 0 {
		return false
	}
	plaster, other, held := 0, 0, 0
	for _, c := range k.Components {
		named := alikeIn(said, wordsOf(c.String()))
		switch {
		case isPlaster(c):
			plaster = max(plaster, named)
		case c.Packed.Value.Dimension != quantity.Count:
			other = max(other, named)
		default:
			held = max(held, named)
		}
	}
	for _, t := range k.Tools {
		held = max(held, alikeIn(said, wordsOf(t.String())))
	}
	if plaster > 0 || other > 0 {
		return plaster >= other
	}
	return holds && held > 0 || alikeIn(said, plasterWords) > 0
}

// alikeIn counts the words that are in a list.
func alikeIn(words, list []string) int {
	count := 0
	for _, word := range words {
		if slices.Contains(list, word) {
			count++
		}
	}
	return count
}
