package market

import (
	"slices"
	"strings"

	"tallyfold/kit"
	"tallyfold/kit/handbook"
	"tallyfold/kit/ledger"
)

// An Answer says whether a requirement is asked of a kit.
type Answer int

// The answers. CannotTell is the first, so that what nobody answered is not passed over.
const (
	CannotTell Answer = iota
	Asked
	NotAsked
)

// A Ruling is one requirement held against a kit, one of its packs or one of its fillings.
type Ruling struct {
	Pack        handbook.Pack
	Requirement handbook.Requirement
	// Component or Filling is what it is asked of; both are nil for the kit.
	Component *kit.Component
	Filling   *ledger.Filling

	Answer Answer
	// Why it is asked or not, or what is not told; ToTell is what to write so that it can be
	// told.
	Why, ToTell string
	// Says is the statement with its gaps filled, "" where the law gives no words.
	Says string
	// Missing are the facts that it cannot be met without.
	Missing []Missing
}

// Missing is a fact that kit.yaml does not tell.
type Missing struct {
	// Of is the pack that it is missing of, or nil.
	Of *kit.Component
	// Found says what is missing, Write what to write.
	Found, Write string
}

// About names what a ruling is of: "Foam base", "jar 1", or "" for the kit.
func (r Ruling) About() string {
	switch {
	case r.Component != nil:
		return r.Component.String()
	case r.Filling != nil:
		return r.Filling.Numbered()
	}
	return ""
}

// IsOn says whether a requirement that is asked has to be read at a place.
func (r Ruling) IsOn(place handbook.Place) bool {
	return r.Answer == Asked && slices.Contains(r.Requirement.On, place)
}

// Prints says whether the program prints words of the ruling's own: a statement, or the
// hazards of a pack. It does so though a fact is missing: half a warning is better than none.
func (r Ruling) Prints() bool {
	return r.Answer == Asked && (r.Says != "" || r.Requirement.Word != "" || r.Requirement.Tells != "")
}

// Rulings holds a kit against all markets that it names and there is a pack for, in the
// order of kit.yaml and of the packs.
func Rulings(k *kit.Kit, l *ledger.Ledger) []Ruling {
	var all []Ruling
	for _, said := range k.Markets {
		if pack, known := handbook.PackFor(said.Value); known {
			all = append(all, Against(pack, k, l)...)
		}
	}
	return all
}

// Against holds a kit against one pack.
func Against(pack handbook.Pack, k *kit.Kit, l *ledger.Ledger) []Ruling {
	var all []Ruling
	for _, r := range pack.Requirements {
		for _, s := range subjects(r, k, l) {
			all = append(all, s.rule(pack, r))
		}
	}
	return all
}

// Unpacked are the markets of a kit that there is no pack for.
func Unpacked(k *kit.Kit) []kit.Said[string] {
	var all []kit.Said[string]
	for _, said := range k.Markets {
		if _, known := handbook.PackFor(said.Value); !known {
			all = append(all, said)
		}
	}
	return all
}

// A subject is what a requirement is held against.
type subject struct {
	kit       *kit.Kit
	ledger    *ledger.Ledger
	component *kit.Component
	filling   *ledger.Filling
}

// subjects are the kit, its packs of something, or what the steps fill. Two fillings with
// the same container and runs of their own are two. Where nothing is filled the kit stands
// for its fillings, so that a requirement on them is not passed over.
func subjects(r handbook.Requirement, k *kit.Kit, l *ledger.Ledger) []subject {
	whole := subject{kit: k, ledger: l}
	var all []subject
	switch r.Of {
	case handbook.OfPack:
		for _, c := range k.Components {
			one := whole
			one.component = c
			all = append(all, one)
		}
	case handbook.OfFilling:
		for _, f := range l.Fillings {
			if !f.Empty() && f.Operation != nil && isPiece(k, f) {
				one := whole
				one.filling = f
				all = append(all, one)
			}
		}
		if len(all) == 0 {
			all = append(all, whole)
		}
	default:
		all = append(all, whole)
	}
	return all
}

// isPiece says whether a filling is one of the finished pieces, and no mould or trial.
func isPiece(k *kit.Kit, f *ledger.Filling) bool {
	return slices.ContainsFunc(k.Pieces, func(p *kit.Piece) bool {
		return p.In.Value == f.Container.ID && (!p.Of.Given() || f.Mixture == nil || f.Mixture.ID == p.Of.Value)
	})
}

// rule asks all conditions of a requirement. One that does not hold settles it, whatever the
// others are; else the first that cannot be told leaves it open, as the others hang on it.
func (s subject) rule(pack handbook.Pack, r handbook.Requirement) Ruling {
	ruling := Ruling{Pack: pack, Requirement: r, Component: s.component, Filling: s.filling, Answer: Asked}
	var because []string
	for _, condition := range r.Applies {
		name, negated := strings.CutPrefix(condition, "not ")
		held := conditions[name](s)
		if negated {
			held.holds = map[Answer]Answer{Asked: NotAsked, NotAsked: Asked}[held.holds]
		}
		switch held.holds {
		case NotAsked:
			ruling.Answer, ruling.Why = NotAsked, held.why
			return ruling
		case CannotTell:
			if ruling.Answer == Asked {
				ruling.Answer, ruling.Why, ruling.ToTell = CannotTell, held.why, held.toTell
			}
		default:
			because = append(because, held.why)
		}
	}
	if ruling.Answer == CannotTell {
		return ruling
	}
	if r.Of == handbook.OfFilling && s.filling == nil {
		ruling.Answer, ruling.Why = CannotTell, "no step fills a finished piece into a container, so there is nothing that this can be read on"
		ruling.ToTell = "write “in:” under the piece, and link the step that fills it"
		return ruling
	}
	ruling.Why, ruling.Says = strings.Join(because, "; "), s.filled(r.Says)
	for _, fact := range r.Needs {
		if missing := facts[fact](s, r); missing != nil {
			ruling.Missing = append(ruling.Missing, *missing)
		}
	}
	return ruling
}

// filled puts what differs by kit into a statement.
func (s subject) filled(says string) string {
	if s.component != nil && s.component.Review != nil {
		says = strings.ReplaceAll(says, "{warns}", s.component.Review.Warns.Value)
	}
	return strings.ReplaceAll(says, "{warned materials}", strings.Join(warnedMaterials(s.kit), ", "))
}
