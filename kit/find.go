package kit

import (
	"slices"
	"strings"
)

// Component finds a component by key, or nil.
func (k *Kit) Component(id string) *Component { return byID(k.Components, id) }

// HouseholdItem finds a household item by key, or nil.
func (k *Kit) HouseholdItem(id string) *Household { return byID(k.Household, id) }

// Tool finds a tool by key, or nil.
func (k *Kit) Tool(id string) *Tool { return byID(k.Tools, id) }

// Mixture finds a mixture by key, or nil.
func (k *Kit) Mixture(id string) *Mixture { return byID(k.Mixtures, id) }

// Piece finds a kind of finished piece by key, or nil.
func (k *Kit) Piece(id string) *Piece { return byID(k.Pieces, id) }

// Trouble finds a trouble by its name, or nil.
func (k *Kit) Trouble(id string) *Trouble {
	for _, t := range k.Troubles {
		if t.ID == id {
			return t
		}
	}
	return nil
}

// Step finds a step by its name, or nil.
func (k *Kit) Step(id string) *Step {
	return k.Method.Step(id)
}

// Picture finds a picture by its file name, or nil.
func (k *Kit) Picture(name string) *Picture {
	for _, p := range k.Pictures {
		if p.Name == name {
			return p
		}
	}
	return nil
}

// WordsAbout finds a section of words.md, or nil.
func (k *Kit) WordsAbout(id string) *Words {
	for _, w := range k.Words {
		if w.ID == id {
			return w
		}
	}
	return nil
}

// Called is what people call the thing with this key; the key itself if it is
// no thing of this kit.
func (k *Kit) Called(id string) string {
	if name, ok := k.Named(id); ok {
		return name.String()
	}
	return id
}

// Named finds the name of anything in the kit that has a key: component,
// household item, tool, mixture, kind of piece.
func (k *Kit) Named(id string) (Name, bool) {
	switch {
	case k.Component(id) != nil:
		return k.Component(id).Name, true
	case k.HouseholdItem(id) != nil:
		return k.HouseholdItem(id).Name, true
	case k.Tool(id) != nil:
		return k.Tool(id).Name, true
	case k.Mixture(id) != nil:
		return k.Mixture(id).Name, true
	case k.Piece(id) != nil:
		return k.Piece(id).Name, true
	}
	return Name{}, false
}

// IsRole says whether any run binds this role.
func (k *Kit) IsRole(role string) bool {
	for _, run := range k.Runs {
		if _, ok := run.Component(role); ok {
			return true
		}
	}
	return false
}

// Passes gives the runs the method is followed in: those of kit.yaml, or one
// nameless run when the kit has none.
func (k *Kit) Passes() []*Run {
	if len(k.Runs) == 0 {
		return []*Run{onlyRun}
	}
	return k.Runs
}

// onlyRun is the nameless run of every kit without runs: always the same one, so
// that what was reckoned for it can be found again.
var onlyRun = &Run{}

// Follows says whether the run goes through the part.
func (r *Run) Follows(part *Part) bool {
	if len(r.Parts) == 0 {
		return true
	}
	for _, id := range r.Parts {
		if id.Value == part.ID {
			return true
		}
	}
	return false
}

// String is what people call it; the key where no name was given.
func (n Name) String() string {
	if n.Called.Value != "" {
		return n.Called.Value
	}
	return n.ID
}

// In is what readers of a language call it; what it is called in the kit's own
// where no name in that language was given.
func (n Name) In(tag string) string {
	if other, ok := n.other(tag); ok {
		return other.Called[0]
	}
	return n.String()
}

// AllIn are all names by which a text in a language may call it. Those in the kit's
// own language are always among them.
func (n Name) AllIn(tag string) []string {
	other, _ := n.other(tag)
	return append(slices.Clone(other.Called), n.Names()...)
}

// HasNameIn says whether a name was given in a language.
func (n Name) HasNameIn(tag string) bool {
	_, ok := n.other(tag)
	return ok
}

// other finds the names in a language, by the whole tag or else by its first part.
func (n Name) other(tag string) (OtherName, bool) {
	base := func(tag string) string {
		before, _, _ := strings.Cut(strings.ToLower(tag), "-")
		return before
	}
	for _, other := range n.Others {
		if strings.EqualFold(other.Language.Value, tag) {
			return other, true
		}
	}
	for _, other := range n.Others {
		if base(other.Language.Value) == base(tag) {
			return other, true
		}
	}
	return OtherName{}, false
}

// Names are all that people call it: its name first, then what it is also called.
func (n Name) Names() []string {
	names := []string{n.String()}
	for _, also := range n.AlsoCalled {
		names = append(names, also.Value)
	}
	return names
}

func (n Name) key() string { return n.ID }

func byID[T interface {
	comparable
	key() string
}](all []T, id string) T {
	var none T
	for _, one := range all {
		if one.key() == id {
			return one
		}
	}
	return none
}
