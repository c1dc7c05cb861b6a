package rules

import (
	"slices"
	"strings"

	"tallyfold/kit"
	"tallyfold/kit/diag"
	"tallyfold/kit/source"
)

// How the links of a translated step are held against those of the method.

// mentioned is a tool or vessel that a step names, by a link or a bare word.
type mentioned struct {
	key    string
	linked bool
	at     source.Span
}

// named are the tools and vessels of a step, each once. Vessels that its actions name
// are held with these; a container in running text is no tool.
func named(k *kit.Kit, step *kit.Step) []mentioned {
	var all []mentioned
	for _, o := range ofKind(step, kit.WithTool, kit.WithVessel) {
		all = append(all, mentioned{o.Target, true, o.Span})
	}
	for _, m := range step.Mentions {
		if k.Tool(m.Key) != nil && !isAmongNamed(all, m.Key) {
			all = append(all, mentioned{m.Key, false, m.Span})
		}
	}
	return slices.DeleteFunc(all, func(m mentioned) bool { return !m.linked && worksWith(step, m.key) })
}

// isSure says whether a mention certainly means the thing: a link, or the whole name.
// "Spoon" for a wooden spoon may be something else, "spoon it into the jars".
func (m mentioned) isSure(called string) bool {
	return m.linked || len(wordsOf(m.at.Text())) >= len(wordsOf(called))
}

func isAmongNamed(all []mentioned, key string) bool {
	return slices.ContainsFunc(all, func(m mentioned) bool { return m.key == key })
}

// worksWith says whether the step is worked in a vessel or an action names it.
func worksWith(step *kit.Step, key string) bool {
	return step.Vessel == key || slices.ContainsFunc(actionsOf(step), func(o *kit.Operation) bool {
		return slices.Contains([]string{o.Target, o.Into, o.From, o.In, o.As}, key)
	})
}

// actionKinds are what makes something happen; their order counts.
var actionKinds = []kit.Kind{kit.Take, kit.Use, kit.Move, kit.Fill, kit.Place, kit.Work, kit.Wait, kit.After, kit.Again, kit.Left,
	kit.Clean, kit.Warm, kit.Cool}

func actionsOf(step *kit.Step) []*kit.Operation {
	return slices.DeleteFunc(ofKind(step, actionKinds...), func(o *kit.Operation) bool { return o.Aside })
}

// An alignment pairs a link of the method with one of the translation. One of them is
// nil where the other has none.
type alignment struct {
	own, other *kit.Operation
	// behind is the last link of the translation before the place of a missing one.
	behind *kit.Operation
}

// align pairs links that do the same, as many as can be without crossing. Between
// them, links are paired one by one, whatever they do.
func align(own, other []*kit.Operation) []alignment {
	common := longestCommon(own, other)
	var pairs []alignment
	i, j := 0, 0
	var last *kit.Operation
	for _, next := range append(common, [2]int{len(own), len(other)}) {
		for i < next[0] || j < next[1] {
			pair := alignment{behind: last}
			if i < next[0] {
				pair.own = own[i]
				i++
			}
			if j < next[1] {
				pair.other = other[j]
				last = other[j]
				j++
			}
			pairs = append(pairs, pair)
		}
		if i < len(own) && j < len(other) {
			pairs = append(pairs, alignment{own: own[i], other: other[j]})
			last = other[j]
			i, j = i+1, j+1
		}
	}
	return pairs
}

// longestCommon gives the places of the longest row of links that both have in order.
func longestCommon(own, other []*kit.Operation) [][2]int {
	longest := make([][]int, len(own)+1)
	for i := range longest {
		longest[i] = make([]int, len(other)+1)
	}
	for i := len(own) - 1; i >= 0; i-- {
		for j := len(other) - 1; j >= 0; j-- {
			longest[i][j] = max(longest[i+1][j], longest[i][j+1])
			if own[i].Does() == other[j].Does() {
				longest[i][j] = longest[i+1][j+1] + 1
			}
		}
	}
	var common [][2]int
	for i, j := 0, 0; i < len(own) && j < len(other); {
		switch {
		case own[i].Does() == other[j].Does():
			common = append(common, [2]int{i, j})
			i, j = i+1, j+1
		case longest[i+1][j] >= longest[i][j+1]:
			i++
		default:
			j++
		}
	}
	return common
}

// actions holds what happens in a step against the method.
func (d *difference) actions() {
	own, other := actionsOf(d.own), actionsOf(d.other)
	if d.otherOrder(own, other) {
		return
	}
	for _, pair := range align(own, other) {
		d.aligned(pair)
	}
}

// otherOrder tells a step that does the same in another order, once.
func (d *difference) otherOrder(own, other []*kit.Operation) bool {
	sorted := func(all []*kit.Operation) []string {
		var texts []string
		for _, o := range all {
			texts = append(texts, o.Does())
		}
		slices.Sort(texts)
		return texts
	}
	if !slices.Equal(sorted(own), sorted(other)) {
		return false
	}
	i := 0
	for i < len(own) && own[i].Does() == other[i].Does() {
		i++
	}
	if i == len(own) {
		return false
	}
	d.add(diag.Finding{
		Where:    other[i].Span,
		Found:    d.here() + " does what the method does in another order: " + quotedLink(other[i]) + " where the method has " + quotedLink(own[i]),
		Expected: "the same order, as the customer does one thing after the other",
		Sum:      []string{"the method: " + inOrder(own), fileOf(d.translation.Method) + ": " + inOrder(other)},
		Remedies: diag.Fix("put the actions into the order of the method"),
		Also:     besideMethod(own[i].Span, "here in the method"),
	})
	return true
}

func inOrder(all []*kit.Operation) string {
	var texts []string
	for _, o := range all {
		texts = append(texts, o.Does())
	}
	return strings.Join(texts, ", ")
}

func quotedLink(o *kit.Operation) string {
	return "“[" + strings.Join(strings.Fields(o.Text), " ") + "](" + o.Does() + ")”"
}

// aligned judges one pair.
func (d *difference) aligned(pair alignment) {
	switch {
	case pair.own == nil:
		d.add(diag.Finding{
			Where:    pair.other.Span,
			Found:    d.here() + " has " + quotedLink(pair.other) + ", and the method has nothing of it",
			Expected: "what the method does and no more",
			Remedies: diag.Fix("take it out", "write it into the method too, if it is needed"),
			Also:     besideMethod(d.own.Span, "the step of the method"),
		})
	case pair.other == nil:
		where := d.other.Span
		if pair.behind != nil {
			where = pair.behind.Span
		}
		d.add(diag.Finding{
			Where:    where,
			Found:    d.here() + " leaves " + quotedLink(pair.own) + " of the method out",
			Expected: "everything that the method does",
			Remedies: diag.Fix("translate it and put it in" + behindLink(pair.behind) + ": [" + pair.own.Text + "](" + pair.own.Does() + ")"),
			Also:     besideMethod(pair.own.Span, "in the method"),
		})
	case pair.own.Does() != pair.other.Does():
		d.add(diag.Finding{
			Where:    pair.other.TargetSpan,
			Found:    d.here() + " has " + quotedLink(pair.other) + " where the method has " + quotedLink(pair.own),
			Expected: pair.own.Does(),
			Remedies: []diag.Remedy{{
				Do:      "write (" + pair.own.Does() + ")",
				Changes: []diag.Change{{Where: pair.other.TargetSpan, New: pair.own.Does()}},
			}},
			Also: besideMethod(pair.own.Span, "in the method"),
		})
	default:
		d.amount(pair.own, pair.other)
	}
}

func behindLink(o *kit.Operation) string {
	if o == nil {
		return ""
	}
	return " behind “" + strings.Join(strings.Fields(o.Text), " ") + "”"
}
