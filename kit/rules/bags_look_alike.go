package rules

import (
	"slices"
	"strings"

	"tallyfold/kit"
	"tallyfold/kit/diag"
)

var bagsLookAlike = Rule{
	Name:     "bags-look-alike",
	Severity: diag.ShouldFix,
	Title:    "Two bags look alike and carry different warnings",
	Explanation: `A bag of washing soda and a bag of citric acid are both a white powder in clear film. The
letter on the bag tells them apart for whoever looks at it; a customer with a spoon in one
hand often does not.

“looks” under a component says what one sees in its bag. Components whose words for it are
the same are compared by their cautions: where those differ, taking one bag for the other
can hurt. Components that do not say what they look like are not looked at.

Pack one of them so that it cannot be taken for the other, and say so in “looks”.`,
	Check: func(s Subject) []diag.Finding {
		var findings []diag.Finding
		for _, group := range byLooks(s.Kit.Components) {
			if hazardsDiffer(group) {
				findings = append(findings, alikeBags(group))
			}
		}
		return findings
	},
	NotLookedAt: func(s Subject) []string {
		return untoldFor("it is not told what is seen in the bag of ", s, func(c *kit.Component) bool { return c.IsMaterial() && !c.Looks.Given() })
	},
}

// byLooks gathers the components that say the same of what they look like, in the
// order of kit.yaml.
func byLooks(components []*kit.Component) [][]*kit.Component {
	var order []string
	groups := map[string][]*kit.Component{}
	for _, c := range components {
		looks := strings.Join(wordsOf(c.Looks.Value), " ")
		if looks == "" {
			continue
		}
		if groups[looks] == nil {
			order = append(order, looks)
		}
		groups[looks] = append(groups[looks], c)
	}
	var all [][]*kit.Component
	for _, looks := range order {
		if len(groups[looks]) > 1 {
			all = append(all, groups[looks])
		}
	}
	return all
}

func hazardsDiffer(group []*kit.Component) bool {
	for _, c := range group[1:] {
		if !slices.Equal(hazards(c), hazards(group[0])) {
			return true
		}
	}
	return false
}

// hazards are the cautions of a component, so that their order and marks do not
// count.
func hazards(c *kit.Component) []string {
	var all []string
	for _, caution := range c.Cautions {
		all = append(all, strings.Join(wordsOf(caution.Value), " "))
	}
	slices.Sort(all)
	return all
}

func alikeBags(group []*kit.Component) diag.Finding {
	// The one with the most to warn of is the one not to be taken for another.
	worst := slices.MaxFunc(group, func(a, b *kit.Component) int { return len(a.Cautions) - len(b.Cautions) })
	finding := diag.Finding{Where: worst.Looks.Span, About: worst.ID, Expected: "bags that cannot be taken for one another where their warnings differ"}
	var names []string
	for _, c := range group {
		name := c.String()
		if c.Letter != "" {
			name += " (bag " + c.Letter + ")"
		}
		names = append(names, name)
		finding.Sum = append(finding.Sum, name+": "+warnings(c))
		if c != worst {
			finding.Also = append(finding.Also, diag.Place{Where: c.Looks.Span, Note: name})
		}
	}
	finding.Found = listed(names) + " look alike, “" + worst.Looks.Value + "”, and do not carry the same warnings"
	finding.Remedies = diag.Fix(
		"pack "+worst.String()+" in another kind of bag or with a coloured label, and say so: “looks: "+worst.Looks.Value+", red label”",
		"put it into a bag of its own that is opened only in the step that needs it, and say so under “looks”")
	return finding
}

func warnings(c *kit.Component) string {
	if len(c.Cautions) == 0 {
		return "no warning"
	}
	var all []string
	for _, caution := range c.Cautions {
		all = append(all, "“"+strings.TrimSuffix(caution.Value, ".")+"”")
	}
	return listed(all)
}
