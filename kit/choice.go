package kit

import "slices"

// A Choice is left to the customer: of all links of a part with one name behind
// `?either=`, those of one thing are followed.
type Choice struct {
	Part *Part
	Name string
	// Options are the keys or roles to choose from, in the order they are told.
	Options []string
	// First is the first link that offers it.
	First *Operation
}

// Choices lists what the method leaves to the customer, in reading order.
func (m Method) Choices() []*Choice {
	var all []*Choice
	for _, part := range m.Parts {
		var here []*Choice
		for _, step := range part.Steps {
			for _, o := range step.Operations {
				if o.Either != "" && !o.Aside {
					here = offered(here, part, o)
				}
			}
		}
		all = append(all, here...)
	}
	return all
}

func offered(choices []*Choice, part *Part, o *Operation) []*Choice {
	i := slices.IndexFunc(choices, func(c *Choice) bool { return c.Name == o.Either })
	if i < 0 {
		return append(choices, &Choice{Part: part, Name: o.Either, Options: []string{o.Target}, First: o})
	}
	if c := choices[i]; !slices.Contains(c.Options, o.Target) {
		c.Options = append(c.Options, o.Target)
	}
	return choices
}
