package rules

import (
	"slices"
	"strings"

	"tallyfold/kit"
	"tallyfold/kit/diag"
	"tallyfold/kit/ledger"
	"tallyfold/kit/quantity"
	"tallyfold/kit/source"
)

// keySpan is where a thing's key stands in kit.yaml.
func keySpan(k *kit.Kit, id string) source.Span {
	name, _ := k.Named(id)
	return name.IDSpan
}

// inStep names a step for a sentence: "step 3".
func inStep(step *kit.Step) string { return "step " + whole(step.Number).String() }

// amountSpan is the amount in a link, else its text, else the whole link.
func amountSpan(o *kit.Operation) source.Span {
	switch {
	case len(o.Phrase.AmountSpans) > 0:
		return o.Phrase.AmountSpans[0]
	case o.TextSpan.Known() && o.TextSpan.End > o.TextSpan.Start:
		return o.TextSpan
	}
	return o.Span
}

// places lists where a thing is taken, one for each link.
func places(k *kit.Kit, entries []ledger.Entry) []diag.Place {
	var all []diag.Place
	at := map[*kit.Operation]int{}
	for _, e := range entries {
		if e.Amount.Known() && e.Amount.Value().IsZero() {
			continue
		}
		if i, known := at[e.Operation]; known {
			if name := runName(k, e.Run); name != "" && !strings.Contains(all[i].Note, name) {
				all[i].Note += ", " + name
			}
			continue
		}
		at[e.Operation] = len(all)
		note := e.Amount.Show() + ", " + inStep(e.Step)
		if name := runName(k, e.Run); name != "" {
			note += ", " + name
		}
		all = append(all, diag.Place{Where: amountSpan(e.Operation), Note: note})
	}
	return all
}

// density of a component or household item as told in kit.yaml.
func density(k *kit.Kit, id string) (told kit.Said[quantity.Amount], state kit.State) {
	if c := k.Component(id); c != nil {
		return c.Density, c.DensityState
	}
	if h := k.HouseholdItem(id); h != nil {
		return h.Density, h.DensityState
	}
	return kit.Said[quantity.Amount]{}, kit.NoState
}

// packCause groups what a too small pack brings about.
func packCause(id string) string { return "pack " + id }

// vesselCause groups what a vessel that runs empty brings about.
func vesselCause(id string) string { return "vessel " + id }

// resolved is the component that a key or role stands for in a run.
func resolved(run *kit.Run, key string) string {
	if id, ok := run.Component(key); ok {
		return id
	}
	return key
}

// operations gives every link of the method and of trouble.md.
func operations(k *kit.Kit, visit func(o *kit.Operation, step *kit.Step)) {
	for _, step := range k.Method.Steps() {
		for _, o := range step.Operations {
			visit(o, step)
		}
	}
	for _, trouble := range k.Troubles {
		for _, o := range trouble.Operations {
			visit(o, nil)
		}
	}
}

// followed gives the steps of a run in order.
func followed(k *kit.Kit, run *kit.Run) []*kit.Step {
	var steps []*kit.Step
	for _, part := range k.Method.Parts {
		if run.Follows(part) {
			steps = append(steps, part.Steps...)
		}
	}
	return steps
}

// plural adds an s where a count is not one: "3 jars". Only for our own words.
func plural(n int, word string) string {
	if n == 1 {
		return "1 " + word
	}
	return whole(n).String() + " " + word + "s"
}

// balanceSum shows how a balance was reckoned. Equal takings by one link are told
// as so many times one of them.
func balanceSum(b *ledger.Balance) []string {
	if len(b.Uses) < 3 {
		return b.Sum()
	}
	var terms []string
	for i := 0; i < len(b.Uses); {
		same := 1
		for i+same < len(b.Uses) && isSameTaking(b.Uses[i], b.Uses[i+same]) {
			same++
		}
		term := b.Uses[i].Amount.Show() + " (" + b.Uses[i].Amount.Name + ")"
		if same > 1 {
			term = whole(same).String() + " × " + term
		}
		terms = append(terms, term)
		i += same
	}
	sum := []string{strings.Join(terms, " + ") + " = " + b.Used.Show()}
	if b.Left != nil {
		sum = append(sum, b.Left.Sum())
	}
	return sum
}

func isSameTaking(a, b ledger.Entry) bool {
	return a.Operation == b.Operation && a.Run == b.Run && a.Amount.Known() && b.Amount.Known() && a.Amount.Value().Equal(b.Amount.Value())
}

// nameEnds begin what only describes in a name: “Cork for a bottle”, “Wick on a metal foot”.
var nameEnds = []string{"for", "on", "of", "with", "to", "in"}

// headNoun is the last word of a name before what only describes: "jar" of “Glass jar
// with lid”.
func headNoun(name kit.Name) string {
	words := wordsOf(name.String())
	if end := slices.IndexFunc(words, func(w string) bool { return slices.Contains(nameEnds, w) }); end > 0 {
		words = words[:end]
	}
	if len(words) == 0 {
		return name.ID
	}
	return words[len(words)-1]
}
