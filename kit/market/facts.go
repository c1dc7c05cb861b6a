package market

import (
	"maps"
	"regexp"
	"slices"
	"strings"

	"tallyfold/kit"
	"tallyfold/kit/handbook"
	"tallyfold/kit/label"
)

// facts are what a requirement can need, by the names that packs use. Each gives what is
// missing, or nil. To add one, write its function and a line here.
var facts = map[string]func(subject, handbook.Requirement) *Missing{
	"maker": func(s subject, _ handbook.Requirement) *Missing {
		return given(s.kit.Maker, "no maker is told", "write “maker:” with the name of the firm")
	},
	"address": func(s subject, _ handbook.Requirement) *Missing {
		return given(s.kit.Labels.Address, "no address is told", "write “address:” under labels")
	},
	"US address": usAddress,
	"contact": func(s subject, _ handbook.Requirement) *Missing {
		return given(s.kit.Labels.Contact, "no contact is told", "write “contact:” under labels: a telephone number, an e-mail or a web address")
	},
	"responsible in eu": func(s subject, _ handbook.Requirement) *Missing {
		return given(s.kit.Labels.InEU, "it is not told who answers for it in the European Union", "write “responsible in eu:” under labels, with the address")
	},
	"responsible in uk": func(s subject, _ handbook.Requirement) *Missing {
		return given(s.kit.Labels.InUK, "it is not told who answers for it in the United Kingdom", "write “responsible in uk:” under labels, with the address")
	},
	"made in": func(s subject, _ handbook.Requirement) *Missing {
		return given(s.kit.Labels.MadeIn, "the country that it is from is not told", "write “made in:” under labels")
	},
	"lot": func(s subject, _ handbook.Requirement) *Missing {
		if lot := s.kit.Labels.Lot; lot.Given() && !lot.Value {
			return &Missing{Found: "the labels have no room for a lot number (“lot: no”)", Write: "write “lot: yes” under labels"}
		}
		return nil
	},
	"keeps or once opened": func(s subject, _ handbook.Requirement) *Missing {
		if s.kit.Labels.Keeps.Given() || s.kit.Labels.OnceOpened.Given() {
			return nil
		}
		return &Missing{Found: "it is not told how long it keeps", Write: "write “keeps:” or “once opened:” under labels, such as 12 months, from your own trials"}
	},
	"review":       review,
	"net contents": netContents,
	"ingredients":  ingredients,
	"allergens":    allergens,
}

func given[T any](said kit.Said[T], found, write string) *Missing {
	if said.Given() {
		return nil
	}
	return &Missing{Found: found, Write: write}
}

// zip is a ZIP code behind a state: "OR 97103".
var zip = regexp.MustCompile(`\b[A-Z]{2}\.? \d{5}(-\d{4})?\b`)

// usAddress looks for a state and a ZIP code in the maker's address or that of who sells it.
func usAddress(s subject, _ handbook.Requirement) *Missing {
	if zip.MatchString(s.kit.Labels.Address.Value) || zip.MatchString(s.kit.Labels.DistributedBy.Value) {
		return nil
	}
	return &Missing{
		Found: "no address with a state and a ZIP code is told",
		Write: "write “address:” or “distributed by:” under labels with street, city, state and ZIP code",
	}
}

func review(s subject, _ handbook.Requirement) *Missing {
	if s.component.Review != nil {
		return nil
	}
	return &Missing{
		Of:    s.component,
		Found: "no toxicologist's look at the recipe of " + s.component.String() + " is told",
		Write: "ask for one, and write “review: {day: …, by: …}” under it",
	}
}

func netContents(s subject, _ handbook.Requirement) *Missing {
	why := label.WhyNoNet(s.kit, s.ledger, s.filling)
	if why == "" {
		return nil
	}
	return &Missing{Found: "net contents cannot be told: " + why, Write: "tell what is missing, or write them by hand"}
}

// listOf is the list of ingredients of the filling; nil where there is none.
func (s subject) listOf() *label.List {
	for _, list := range label.Lists(s.kit, s.ledger) {
		if list.Filling == s.filling {
			return &list
		}
	}
	return nil
}

func ingredients(s subject, _ handbook.Requirement) *Missing {
	list := s.listOf()
	switch {
	case list == nil:
		return &Missing{Found: "no list of ingredients can be made", Write: "link what is taken and filled"}
	case !list.Told():
		return &Missing{Found: "the list of ingredients cannot be made: " + list.Why, Write: "tell the density or the weight that is missing"}
	}
	return nil
}

func allergens(s subject, _ handbook.Requirement) *Missing {
	list := s.listOf()
	if list == nil || len(list.AllergensUntold) == 0 {
		return nil
	}
	names := strings.Join(list.AllergensUntold, ", ")
	return &Missing{
		Found: "which allergens " + names + " brings is not told",
		Write: "write “allergens:” under it, from its supplier's breakdown, such as 0.3 % Linalool",
	}
}

// Names are those of the conditions and of the facts that a pack can name, sorted.
func Names() (conditionNames, factNames []string) {
	return slices.Sorted(maps.Keys(conditions)), slices.Sorted(maps.Keys(facts))
}
