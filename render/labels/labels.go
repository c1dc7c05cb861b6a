package labels

import (
	"fmt"
	"slices"
	"strings"

	bcp47 "golang.org/x/text/language"

	"tallyfold/kit"
	"tallyfold/kit/label"
	"tallyfold/kit/ledger"
	"tallyfold/templates"
)

// Options say which labels are wanted.
type Options struct {
	// Kinds by name; all that the kit has where none is named.
	Kinds []string
	// Grid is for all kinds; the zero Grid leaves each kind its own.
	Grid label.Grid
	// Paper chooses among the usual grids; the zero Paper goes by the language.
	Paper label.Paper
	// Start is the place of the first label on the first sheet, from 1; the places before
	// it are used up. Kits is for how many kits labels are made.
	Start, Kits int
	// Draft marks every label.
	Draft bool
	// Language is a BCP 47 tag; "" is the kit's own.
	Language string
}

// A kind of label: what its labels say, and the grids it is usually printed on.
type kind struct {
	name      string
	a4        string
	letter    string
	grid      func(kit.Labels) string
	designs   func(*maker, label.Grid) []design
	noneWords string
}

// kinds in the order they are made. To add one, write a file with its designs and a line
// here, and its key in kit/load.
var kinds = []kind{
	{"bags", "a4-70x37", "letter-4x2", func(l kit.Labels) string { return l.Bags.Value }, bagLabels, "the kit has no components"},
	{"containers", "a4-99x68", "letter-4x3.33", func(l kit.Labels) string { return l.Containers.Value }, containerLabels, "no step fills a container that “pieces” names"},
	{"lids", "a4-round-60", "letter-round-2", func(l kit.Labels) string { return l.Lids.Value }, lidLabels, "no step fills a container with a firm rim (one with “inside”, “mouth” or “opening: jar”)"},
	{"box", "a4-99x139", "letter-4x5", func(l kit.Labels) string { return l.Box.Value }, boxLabels, ""},
}

// Kinds names the kinds of label.
func Kinds() []string {
	var names []string
	for _, k := range kinds {
		names = append(names, k.name)
	}
	return names
}

// A Set is what was made: documents to print, what has no room, and what to know.
type Set struct {
	Documents []*Document
	Misfits   []Misfit
	// Notes say what was not printed and why, in whole sentences.
	Notes []string
}

// Make lays out the labels of a kit in one language. The error says what can't be done at
// all: no such language, no such sheet, words or faces that can't be read.
func Make(k *kit.Kit, l *ledger.Ledger, set templates.Set, options Options) (*Set, error) {
	m, err := newMaker(k, l, set, options)
	if err != nil {
		return nil, err
	}
	made := &Set{}
	for _, kind := range kinds {
		if len(options.Kinds) > 0 && !slices.Contains(options.Kinds, kind.name) {
			continue
		}
		grid, wanted, err := m.gridOf(kind)
		if err != nil {
			return nil, err
		}
		if !wanted {
			continue
		}
		designs := kind.designs(m, grid)
		if len(designs) == 0 {
			if len(options.Kinds) == 0 {
				continue // nobody asked for these
			}
			made.Notes = append(made.Notes, fmt.Sprintf("no labels of the kind %s: %s", kind.name, kind.noneWords))
			continue
		}
		document, misfits := m.lay(kind, grid, designs)
		made.Documents = append(made.Documents, document)
		made.Misfits = append(made.Misfits, misfits...)
	}
	made.Notes = append(made.Notes, m.notes...)
	return made, nil
}

// A maker makes the labels of one kit in one language.
type maker struct {
	kit     *kit.Kit
	ledger  *ledger.Ledger
	set     templates.Set
	words   templates.Words
	options Options
	faces   faces
	notes   []string
}

func newMaker(k *kit.Kit, l *ledger.Ledger, set templates.Set, options Options) (*maker, error) {
	own := k.Language.Value
	if own == "" {
		own = templates.SourceLanguage
	}
	if options.Language == "" {
		options.Language = own
	}
	if t := k.Translation(options.Language); t != nil {
		k = k.In(t)
		l = ledger.Follow(k)
	} else if base(options.Language) != base(own) {
		return nil, fmt.Errorf("there is no method.%s.md; labels can be made in the languages that the kit is written in", options.Language)
	}
	words, err := set.Words(options.Language)
	if err != nil {
		return nil, err
	}
	faces, err := readFaces(set)
	if err != nil {
		return nil, err
	}
	options.Start, options.Kits = max(options.Start, 1), max(options.Kits, 1)
	return &maker{kit: k, ledger: l, set: set, words: words, options: options, faces: faces}, nil
}

func base(tag string) string {
	base, _ := bcp47.Make(tag).Base()
	return base.String()
}

// gridOf is the grid of a kind: that asked for, else the maker's, else the usual one for
// the paper. It is not wanted where the maker says none and nobody asked.
func (m *maker) gridOf(k kind) (grid label.Grid, wanted bool, err error) {
	named := k.grid(m.kit.Labels)
	switch {
	case m.options.Grid != (label.Grid{}):
		return m.options.Grid, true, nil
	case named == kit.NoLabels && len(m.options.Kinds) == 0:
		return grid, false, nil
	case named == kit.OwnSheet:
		grid, err = OwnGrid(m.kit)
		return grid, true, err
	case named == "" || named == kit.NoLabels || m.options.Paper != (label.Paper{}):
		named = k.a4
		if m.paper() == label.Letter {
			named = k.letter
		}
	}
	grid, known := label.GridNamed(named)
	if !known {
		return grid, true, fmt.Errorf("there is no sheet %q", named)
	}
	return grid, true, nil
}

// paper is letter where people read a language of the United States or Canada (common
// practice, no source), else A4.
func (m *maker) paper() label.Paper {
	if m.options.Paper != (label.Paper{}) {
		return m.options.Paper
	}
	region, sure := bcp47.Make(m.options.Language).Region()
	if sure == bcp47.Exact && slices.Contains([]string{"US", "CA"}, region.String()) {
		return label.Letter
	}
	return label.A4
}

// OwnGrid is the sheet that the maker measured; the error says that there is none, or what
// is wrong with it.
func OwnGrid(k *kit.Kit) (label.Grid, error) {
	if k.Labels.Sheet == nil {
		return label.Grid{}, fmt.Errorf("the sheet of your own is not told; write it in kit.yaml, such as “labels: {sheet: {across: 2, down: 8, wide: 90 mm, tall: 34 mm}}”")
	}
	return label.Own(k.Labels.Sheet)
}

// say gives fixed words.
func (m *maker) say(name string, fill ...any) string { return m.words.Say(name, fill...) }

// nameAndEdition of the kit on one line.
func (m *maker) nameAndEdition() string {
	if !m.kit.Edition.Given() {
		return m.kit.Name.Value
	}
	return m.kit.Name.Value + ", " + m.say("edition", "number", fmt.Sprint(m.kit.Edition.Value))
}

// firm tells who made and who sells it.
func (m *maker) firm() []string {
	var lines []string
	if name := m.kit.Maker.Value; name != "" {
		lines = append(lines, m.say("label-made-by", "maker", joined(name, m.kit.Labels.Address.Value)))
	}
	if other := m.kit.Labels.DistributedBy.Value; other != "" {
		lines = append(lines, m.say("label-distributed-by", "name", other))
	}
	told := m.kit.Labels
	for _, one := range []struct {
		said        kit.Said[string]
		word, value string
	}{
		{told.InEU, "label-responsible-eu", "name"},
		{told.InUK, "label-responsible-uk", "name"},
		{told.Contact, "label-contact", "contact"},
		{told.MadeIn, "label-made-in", "country"},
	} {
		if one.said.Given() {
			lines = append(lines, m.say(one.word, one.value, one.said.Value))
		}
	}
	return lines
}

// keeping tells how long a finished piece keeps, in months.
func (m *maker) keeping() []string {
	var lines []string
	if keeps := m.kit.Labels.Keeps; keeps.Given() {
		lines = append(lines, m.words.Count("label-keeps", keeps.Value))
	}
	if opened := m.kit.Labels.OnceOpened; opened.Given() {
		lines = append(lines, m.words.Count("label-once-opened", opened.Value))
	}
	return lines
}

// lot is room for a lot number, unless the maker wants none.
func (m *maker) lot() []item {
	if said := m.kit.Labels.Lot; said.Given() && !said.Value {
		return nil
	}
	return []item{{text: m.say("label-lot"), face: regular, largest: 8, smallest: smallestType, toWrite: true, gap: 1}}
}

// joined puts parts that are there behind one another with commas.
func joined(parts ...string) string {
	return strings.Join(slices.DeleteFunc(parts, func(part string) bool { return part == "" }), ", ")
}
