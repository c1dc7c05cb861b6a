package ledger

import (
	"slices"

	"tallyfold/kit"
	"tallyfold/kit/quantity"
)

// Choosing is what a customer chooses where the method leaves a choice. The zero
// Choosing takes the first of every choice, and every optional component.
type Choosing struct {
	// Choice and Option are one choice that is not its first.
	Choice *kit.Choice
	Option string
	// LeftOut is an optional component that stays in the bag.
	LeftOut *kit.Component
}

// Choosings are all that differ from the first choice in one thing: what is checked
// besides the kit as it is followed first. Two choices that only go wrong together
// are not found.
func Choosings(k *kit.Kit) []Choosing {
	var all []Choosing
	for _, choice := range k.Method.Choices() {
		for _, option := range choice.Options[1:] {
			all = append(all, Choosing{Choice: choice, Option: option})
		}
	}
	for _, c := range k.Components {
		if c.Optional.Value {
			all = append(all, Choosing{LeftOut: c})
		}
	}
	return all
}

// Tell says it for people: "if the customer chooses Blue clay".
func (c Choosing) Tell(k *kit.Kit) string {
	switch {
	case c.LeftOut != nil:
		return "if the customer leaves out " + c.LeftOut.String()
	case c.Choice != nil:
		return "if the customer chooses " + k.Called(c.Option)
	}
	return ""
}

// follows says whether a link is followed; thing is the key it names in this run.
func (c Choosing) follows(part *kit.Part, o *kit.Operation, thing string) bool {
	if c.LeftOut != nil && c.LeftOut.ID == thing && (o.Kind == kit.Take || o.Kind == kit.Use || o.Kind == kit.Place) {
		return false
	}
	if o.Either == "" {
		return true
	}
	if c.Choice != nil && c.Choice.Part == part && c.Choice.Name == o.Either {
		return o.Target == c.Option
	}
	for _, step := range part.Steps {
		if i := slices.IndexFunc(step.Operations, func(other *kit.Operation) bool { return other.Either == o.Either && !other.Aside }); i >= 0 {
			return step.Operations[i].Target == o.Target
		}
	}
	return true
}

// passOver notes what a link that is not followed would have taken: another customer
// takes it, so the pack must hold it, but it joins nothing here.
func (f *follower) passOver() {
	m := f.material(f.operation.Target)
	if m == nil || m.packed == nil {
		return
	}
	into := f.worked()
	if s := f.shelves[into]; f.operation.Kind == kit.Place && s != nil {
		containers := s.inRun(f.run)
		total := f.perContainer(containers, m) * containers
		f.takeFromPack(NotChosen, m, "", Fixed(m.dimension, m.name+", "+f.here(), quantity.Whole(int64(total))))
		return
	}
	f.takeFromPack(NotChosen, m, "", f.amountOf(m, f.times(into)))
}
