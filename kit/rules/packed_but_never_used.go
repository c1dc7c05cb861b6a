package rules

import (
	"slices"
	"strings"

	"tallyfold/kit"
	"tallyfold/kit/diag"
)

var packedButNeverUsed = Rule{
	Name:     "packed-but-never-used",
	Severity: diag.MustFix,
	Sums:     true,
	Title:    "The box holds something that no step uses",
	Explanation: `A customer who finds a bag in the box that no step speaks of will think that they have
missed something, or write to ask.

A step uses a component when a link takes, uses or places it, or names it as vessel or
container. A remedy in trouble.md counts too, and so does what the method says of
leftovers. Printed matter such as a booklet, and what is marked “optional: yes”, may
stay unused. Where running text names the component without a link, the amount is
lost to every sum: that should be fixed.

Use it in a step, take it out of the box, or mark it optional.`,
	Check: func(s Subject) []diag.Finding {
		var findings []diag.Finding
		linked := linkedKeys(s.Kit)
		for _, c := range s.Kit.Components {
			if linked[c.ID] || c.Optional.Value || isPrinted(c) {
				continue
			}
			findings = append(findings, neverUsed(s.Kit, c))
		}
		return findings
	},
}

func neverUsed(k *kit.Kit, c *kit.Component) diag.Finding {
	finding := diag.Finding{
		Where: c.IDSpan, About: c.ID,
		Found:    c.String() + " is packed, and no step uses it",
		Expected: "a use for everything in the box",
		Remedies: diag.Fix(
			"use it in the step where it belongs: [amount of "+c.String()+"](take:"+c.ID+")",
			"take it out of the box and out of kit.yaml",
			"write “optional: yes” under "+c.ID+", if it may stay in the bag"),
	}
	if role := roleWithoutComponent(k); role != "" {
		finding.Cause, finding.Follows = "role "+role, true
	}
	for _, step := range k.Method.Steps() {
		text := readStep(step)
		if at, ok := text.find(c.String()); ok {
			finding.Severity = diag.ShouldFix
			finding.Where = at
			finding.Found = inStep(step) + " names " + c.String() + " without a link, so no sum knows that it is used"
			finding.Expected = "a link that takes, uses or places it"
			finding.Remedies = diag.Fix("make a link of it: [amount of "+c.String()+"](take:"+c.ID+"), or place: or use:", "write “optional: yes” under "+c.ID+", if it may stay in the bag")
			finding.Also = []diag.Place{{Where: c.IDSpan, Note: "packed here"}}
			break
		}
	}
	return finding
}

// roleWithoutComponent is the first role that a step needs in a run which gives no
// component for it, "" where there is none: what no step uses was then most likely
// meant for it. The reader of the method tells it.
func roleWithoutComponent(k *kit.Kit) string {
	for _, run := range k.Passes() {
		for _, step := range followed(k, run) {
			for _, o := range step.Operations {
				for _, key := range []string{o.Target, o.Into, o.From, o.In} {
					if _, bound := run.Component(key); k.IsRole(key) && !bound {
						return key
					}
				}
			}
		}
	}
	return ""
}

// linkedKeys are all keys that links speak of, roles resolved in every run.
func linkedKeys(k *kit.Kit) map[string]bool {
	linked := map[string]bool{}
	operations(k, func(o *kit.Operation, _ *kit.Step) {
		for _, key := range []string{o.Target, o.Into, o.From, o.In, o.As} {
			linked[key] = true
			for _, run := range k.Runs {
				if id, bound := run.Component(key); bound {
					linked[id] = true
				}
			}
		}
	})
	for _, step := range k.Method.Steps() {
		linked[step.Vessel] = true
	}
	for _, piece := range k.Pieces {
		linked[piece.In.Value] = true
	}
	return linked
}

// printed are words for what is read and not used.
var printed = []string{"booklet", "leaflet", "instructions", "card"}

func isPrinted(c *kit.Component) bool {
	words := strings.Fields(strings.ToLower(c.String()))
	return len(words) > 0 && slices.Contains(printed, words[len(words)-1])
}
