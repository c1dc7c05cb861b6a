package workbench

import (
	"fmt"
	"net/http"
	"slices"
	"strings"

	"tallyfold/kit"
	"tallyfold/kit/handbook"
	"tallyfold/kit/ledger"
	"tallyfold/kit/load"
	"tallyfold/kit/proof"
	"tallyfold/kit/source"
)

// boxView is the box: the kit itself, and a section of cards for each kind of thing.
type boxView struct {
	// Refused says why kit.yaml cannot be shown as a form; it is put right as text.
	Refused  []toldFinding
	Kit      field
	Sections []sectionView
	// Loose are findings about kit.yaml that no field here has.
	Loose []toldFinding
}

type sectionView struct {
	Name, Title, About, Noun string
	Path                     []string
	Cards                    []field
	// Retired was taken out and can be put back.
	Retired []retiredView
}

// cardView is what a card tells besides its fields.
type cardView struct {
	Title, Letter, Key string
	// Shows leads to the picture of what the card is of, ShowsID is the field of that; nil
	// and "" where it has none.
	Shows   []string
	ShowsID string
	Bar     *bar
	// Changes says what else a change here changes: "steps 2 and 5, the bag label B".
	Changes string
	// Named are the places that name it, for whoever takes it out.
	Named []toldPlace
	// Elsewhere are findings about it that stand in other files.
	Elsewhere []toldFinding
}

// shelves are the sections that are shown as cards, in the order in which a box is thought
// of, each with what it is called.
var shelves = []struct{ name, title, noun string }{
	{"components", "Packed in the box", "component"},
	{"household", "From the customer's kitchen", "household item"},
	{"tools", "Tools", "tool"},
	{"mixtures", "Mixtures", "mixture"},
	{"pieces", "Finished pieces", "kind of piece"},
	{"runs", "Runs", "run"},
	{"measures", "The kit's own measures", "measure"},
	{"claims", "Claims on the box", "claim"},
	{"hazards", "Hazards of your own", "hazard"},
	{"accept", "Findings you live with", "accepted finding"},
}

func isShelf(name string) bool {
	return slices.ContainsFunc(shelves, func(s struct{ name, title, noun string }) bool { return s.name == name })
}

func (d *desk) boxPage(in *http.Request) (any, error) {
	p := d.proved()
	text, err := d.read("kit.yaml")
	if err != nil {
		return boxView{Refused: []toldFinding{{Found: err.Error(), Class: "must-fix", Severity: "must fix"}}}, nil
	}
	file := source.NewFile("kit.yaml", text.Typed)
	root, refused := load.Tree(file)
	if root == nil || root.Kind != load.KeysPart {
		shown := boxView{}
		for _, f := range append(p.Findings, refused...).Sorted() { // both tell the same; each is told once
			shown.Refused = append(shown.Refused, tell(d.name, f))
		}
		return shown, nil
	}
	b := box{desk: d, proof: p, form: d.form(p, in)}
	return b.view(root), nil
}

// form prepares the making of fields.
func (d *desk) form(p *proof.Proof, in *http.Request) *form {
	f := &form{kit: d.name, shown: map[string]bool{}, offers: func(path []string) []offer { return offersFor(p.Kit, path) }}
	for _, path := range in.URL.Query()["show"] {
		f.shown[path] = true
	}
	units := unitsOf(p.Kit)
	f.units = units.of
	for _, found := range p.Findings {
		if found.Where.File != nil && found.Where.File.Name == "kit.yaml" {
			f.open = append(f.open, found)
		}
	}
	return f
}

// A box is the page being filled in.
type box struct {
	desk  *desk
	proof *proof.Proof
	form  *form
}

func (b *box) view(root *load.Part) boxView {
	var shown boxView
	section := sectionsByName()["kit"]
	whole := field{Control: "group", ID: "f-kit"}
	b.form.group(&whole, section, root, nil)
	retired := b.desk.retiredOf(root)
	for _, shelf := range shelves {
		at := slices.IndexFunc(section.Keys, func(k load.Key) bool { return k.Name == shelf.name })
		key := section.Keys[at]
		held := sectionView{
			Name: shelf.name, Title: shelf.title, Noun: shelf.noun, About: sectionsByName()[key.Section].About,
			Path: []string{shelf.name}, Retired: retired[shelf.name],
		}
		for _, f := range whole.Fields {
			if f.Label == shelf.name {
				held.Cards = b.cards(f.Fields, shelf.name)
			}
		}
		shown.Sections = append(shown.Sections, held)
	}
	whole.Fields = slices.DeleteFunc(whole.Fields, func(f field) bool { return isShelf(f.Label) })
	shown.Kit = whole
	for _, f := range b.form.open {
		shown.Loose = append(shown.Loose, tell(b.desk.name, f))
	}
	return shown
}

// cards adds to each entry of a section what a card tells besides.
func (b *box) cards(fields []field, section string) []field {
	for i := range fields {
		f := &fields[i]
		card := &cardView{Title: titleOf(*f), Key: f.Key}
		f.card = card
		if section == "components" || section == "tools" {
			card.Shows = append(slices.Clone(f.Path), "picture")
			card.ShowsID = fieldID(card.Shows)
		}
		if f.Key == "" || b.proof.Kit == nil {
			continue
		}
		k, l := b.proof.Kit, b.proof.Ledger
		card.Changes = alsoChanges(k, l, f.Key)
		card.Named = b.namedBy(f.Key)
		if c := k.Component(f.Key); section == "components" && c != nil {
			card.Letter = c.Letter
			if balance := l.Balance(f.Key); balance != nil {
				drawn := barOf(b.desk.name, b.proof, balance)
				card.Bar = &drawn
			}
		}
		for _, found := range b.proof.Findings {
			if found.About == f.Key && (found.Where.File == nil || found.Where.File.Name != "kit.yaml") {
				card.Elsewhere = append(card.Elsewhere, tell(b.desk.name, found))
			}
		}
	}
	return fields
}

// titleOf is what people call an entry: its name, else its key, else its words.
func titleOf(f field) string {
	for _, wanted := range []string{"name", "says", "rule"} {
		for _, inner := range f.Fields {
			if inner.Label == wanted && inner.Value != "" {
				return inner.Value
			}
		}
	}
	if f.Key != "" {
		return f.Key
	}
	return "Number " + fmt.Sprint(f.Index+1)
}

// namedBy lists the places that name a thing by its key: in kit.yaml and in the steps.
func (b *box) namedBy(key string) []toldPlace {
	var all []toldPlace
	add := func(at source.Span, what string) {
		if place := (toldPlace{what + " (" + placeWords(at) + ")", placeAddress(b.desk.name, at)}); !slices.Contains(all, place) {
			all = append(all, place)
		}
	}
	for _, at := range load.Mentions(b.proof.Kit, key) {
		add(at, "named in kit.yaml")
	}
	for _, part := range b.proof.Kit.Method.Parts {
		for _, step := range part.Steps {
			if step.Vessel == key {
				add(step.Span, fmt.Sprintf("step %d works in it", step.Number))
			}
			for _, o := range step.Operations {
				if o.Target == key || o.Into == key || o.From == key || o.In == key {
					add(o.Span, fmt.Sprintf("step %d: “%s”", step.Number, o.Text))
				}
			}
		}
	}
	return all
}

// alsoChanges says what a change of a thing changes besides: the steps that use it, its bag
// label, the labels of what it goes into, its place on the list of the box.
func alsoChanges(k *kit.Kit, l *ledger.Ledger, key string) string {
	var all []string
	if steps := stepsUsing(l, key); len(steps) > 0 {
		all = append(all, stepWords(steps))
	}
	if c := k.Component(key); c != nil {
		all = append(all, "the list of the box")
		if c.Letter != "" {
			all = append(all, "the bag label "+c.Letter)
		}
	}
	for _, into := range filledWith(l, key) {
		all = append(all, "the label of "+k.Called(into))
	}
	return strings.Join(all, ", ")
}

func stepsUsing(l *ledger.Ledger, key string) []int {
	var steps []int
	for _, e := range l.Entries {
		if e.Step == nil || e.Thing != key && e.From != key && e.To != key || slices.Contains(steps, e.Step.Number) {
			continue
		}
		steps = append(steps, e.Step.Number)
	}
	slices.Sort(steps)
	return steps
}

func stepWords(steps []int) string {
	if len(steps) == 1 {
		return fmt.Sprintf("step %d", steps[0])
	}
	var words []string
	for _, number := range steps[:len(steps)-1] {
		words = append(words, fmt.Sprint(number))
	}
	return fmt.Sprintf("steps %s and %d", strings.Join(words, ", "), steps[len(steps)-1])
}

// filledWith are the containers that hold a thing in the end.
func filledWith(l *ledger.Ledger, key string) []string {
	var all []string
	for _, f := range l.Fillings {
		if f.Container.ID != key && f.Holds(key) && !slices.Contains(all, f.Container.ID) {
			all = append(all, f.Container.ID)
		}
	}
	return all
}

// offersFor gives what the handbook has for a field: densities of materials by their names.
func offersFor(k *kit.Kit, path []string) []offer {
	if k == nil || len(path) != 3 || path[2] != "density" {
		return nil
	}
	var all []offer
	for _, d := range handbook.DensitiesOf(k.Called(path[1])) {
		says := fmt.Sprintf("%s: %s, found from %s to %s", d.Material, d.Offered, d.Low, d.High)
		if d.Note != "" {
			says += "; " + d.Note
		}
		from := d.Source
		if d.Known != d.Source {
			from = sourceWords(d.Source, d.Known)
		}
		all = append(all, offer{Value: d.Offered, Says: says, Source: from})
	}
	return all
}
