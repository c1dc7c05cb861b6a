package workbench

import (
	"fmt"
	"net/http"
	"slices"
	"strconv"
	"strings"

	"tallyfold/kit"
	"tallyfold/kit/ledger"
	"tallyfold/kit/proof"
)

// methodView is an editor for one text of the kit, and beside the steps what every vessel
// then holds.
type methodView struct {
	File  string
	Files []fileTab
	// Text and Print are the text as the editor begins with it.
	Text, Print string
	Marks       *marks
	At          int
	Names       []nameView
	Steps       []stepView
	Pictures    []string
	// Unread says why the text cannot be read.
	Unread string
}

type fileTab struct {
	Name, Title string
	Here        bool
}

// A nameView is a thing that words can be linked to, for the completion and the pickers.
type nameView struct {
	Key   string `json:"key"`
	Name  string `json:"name"`
	Kind  string `json:"kind"`
	Links string `json:"links"` // the kind of link that names it most often
	// Leads: words lead to it; its name does not stand in the text.
	Leads bool `json:"leads,omitempty"`
}

// A stepView is what one step does, and what is where after it.
type stepView struct {
	Number    int
	Title, ID string
	At        int
	Runs      []stageView
	Links     []linkForm
	Findings  []toldFinding
}

type stageView struct {
	Run     string
	Vessels []vesselView
}

type vesselView struct {
	Name, Mass, Temperature string
	Parts                   []string
}

func (d *desk) methodPage(in *http.Request) (any, error) {
	p := d.proved()
	name := fileOf(in)
	if name == "" {
		name = "method.md"
	}
	shownNow := methodView{File: name, Files: d.fileTabs(name)}
	text, err := d.read(name)
	if err != nil {
		shownNow.Unread = plain(err)
		return shownNow, nil
	}
	shownNow.Text, shownNow.Print, shownNow.Marks = string(shown(text.Typed)), string(text.TypedPrint), d.marks(name)
	shownNow.At, _ = strconv.Atoi(in.URL.Query().Get("at"))
	if p.Kit == nil {
		return shownNow, nil
	}
	shownNow.Names = append(namesOf(p.Kit), destinationsNamed(p.Kit)...)
	for _, picture := range p.Kit.Pictures {
		shownNow.Pictures = append(shownNow.Pictures, picture.Name)
	}
	if name == "method.md" && p.Ledger != nil {
		for _, step := range p.Kit.Method.Steps() {
			shownNow.Steps = append(shownNow.Steps, d.stepView(p, step))
		}
	}
	return shownNow, nil
}

// fileTabs are the texts of a kit: those every kit may have, and its translations.
func (d *desk) fileTabs(here string) []fileTab {
	tabs := []fileTab{
		{"method.md", "The steps", false}, {"trouble.md", "If something goes wrong", false},
		{"words.md", "Further words of the booklet", false}, {"kit.yaml", "kit.yaml as text", false},
	}
	for _, name := range d.translations() {
		tabs = append(tabs, fileTab{name, translationTitle(name), false})
	}
	at := slices.IndexFunc(tabs, func(t fileTab) bool { return t.Name == here })
	if at < 0 {
		tabs, at = append(tabs, fileTab{Name: here, Title: here}), len(tabs)
	}
	tabs[at].Here = true
	return tabs
}

// translationTitle tells what a translated file is: "The steps in German" for method.de.md.
func translationTitle(name string) string {
	kind, rest, _ := strings.Cut(name, ".")
	tag, _, _ := strings.Cut(rest, ".")
	titles := map[string]string{"method": "The steps", "trouble": "If something goes wrong,", "words": "Further words", "kit": "Names and texts"}
	return titles[kind] + " in " + englishName(tag)
}

// namesOf are the things that words can be linked to.
func namesOf(k *kit.Kit) []nameView {
	var all []nameView
	for _, c := range k.Components {
		switch {
		case c.Container != nil:
			all = append(all, nameView{c.ID, c.String(), "container", "fill", false})
		case c.Insert != nil:
			all = append(all, nameView{c.ID, c.String(), "insert", "place", false})
		default:
			all = append(all, nameView{c.ID, c.String(), "component", "take", false})
		}
	}
	for _, h := range k.Household {
		all = append(all, nameView{h.ID, k.Called(h.ID), "from the kitchen", "take", false})
	}
	for _, t := range k.Tools {
		link := "tool"
		if t.Holds.Given() || t.Residue.Given() {
			link = "vessel"
		}
		all = append(all, nameView{t.ID, k.Called(t.ID), "tool", link, false})
	}
	for _, m := range k.Mixtures {
		all = append(all, nameView{m.ID, k.Called(m.ID), "mixture", "move", false})
	}
	seen := map[string]bool{}
	for _, run := range k.Runs {
		for _, with := range run.With {
			if role := with.Role.Value; !seen[role] {
				seen[role] = true
				all = append(all, nameView{role, "the " + role, "role in the runs", "take", false})
			}
		}
	}
	return all
}

func (d *desk) stepView(p *proof.Proof, step *kit.Step) stepView {
	text := step.Span.File.Text
	told := stepView{Number: step.Number, Title: step.Title, ID: step.ID, At: inEditor(text, step.Span.Start)}
	for _, run := range p.Kit.Passes() {
		if stage := p.Ledger.At(run, step); stage != nil {
			told.Runs = append(told.Runs, stageOf(p.Kit, run, stage))
		}
	}
	told.Links = formRows(p, step)
	for _, f := range p.Findings {
		if f.Where.File == step.Span.File && (step.Span.Contains(f.Where) || step.Body.Contains(f.Where)) {
			told.Findings = append(told.Findings, tell(d.name, f))
		}
	}
	return told
}

// stageOf tells what every vessel holds after a step.
func stageOf(k *kit.Kit, run *kit.Run, stage *ledger.Stage) stageView {
	var told stageView
	if run != nil {
		told.Run = run.Name.Value
	}
	for i := range stage.Vessels {
		held := &stage.Vessels[i]
		if held.Empty() {
			continue
		}
		v := vesselView{Name: k.Called(held.Vessel), Mass: held.Mass().Show()}
		if held.Temperature.Known() {
			v.Temperature = held.Temperature.Show()
		}
		for _, part := range held.Parts() {
			v.Parts = append(v.Parts, fmt.Sprintf("%s %s", part.Amount.Show(), k.Called(part.Thing)))
		}
		for _, part := range held.Objects() {
			v.Parts = append(v.Parts, fmt.Sprintf("%s %s", part.Amount.Show(), k.Called(part.Thing)))
		}
		told.Vessels = append(told.Vessels, v)
	}
	return told
}
