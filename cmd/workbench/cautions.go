package workbench

import (
	"cmp"
	"fmt"
	"net/http"
	"strings"

	"tallyfold/kit/handbook"
	"tallyfold/kit/hazard"
	"tallyfold/kit/label"
	"tallyfold/kit/market"
	"tallyfold/kit/proof"
	"tallyfold/render/labels"
)

// cautionsView is what can hurt someone, which caution speaks of it, and what has to be read
// on boxes, bags and containers.
type cautionsView struct {
	Unread bool
	// OnlySome says what was not looked for in this kit's language.
	OnlySome string
	Actions  []actionView
	Kinds    []labelView
	NoRoom   []string
	Notes    []string
	Wrong    string
	Markets  []marketView
	Classes  []string
}

type actionView struct {
	Step                            int
	What, By, Caution, Place, Least string
	Source, Go                      string
	Own                             bool // the caution is the maker's
}

type labelView struct {
	Kind, Title    string
	Labels, Sheets int
	Sheet          string
}

type marketView struct {
	Name, LookedAt, NotCovered string
	Rows                       []marketRow
}

type marketRow struct {
	Asks, Of, Why, Says, Yours, Source string
	On, Missing                        []string
}

func (d *desk) cautionsPage(*http.Request) (any, error) {
	p := d.proved()
	if p.Kit == nil || p.Ledger == nil {
		return cautionsView{Unread: true}, nil
	}
	var shownNow cautionsView
	if !hazard.Readable(p.Kit) {
		shownNow.OnlySome = fmt.Sprintf("Tools and cautions are not known by their words in the language “%s”: only temperatures and materials were looked at.", p.Kit.Language.Value)
	}
	for _, a := range hazard.In(p.Kit, p.Ledger) {
		shownNow.Actions = append(shownNow.Actions, d.action(a))
	}
	d.labels(p, &shownNow)
	shownNow.Markets = marketsOf(p)
	for _, c := range label.Classifications(p.Kit, p.Ledger) {
		shownNow.Classes = append(shownNow.Classes, classWords(c)...)
	}
	return shownNow, nil
}

func (d *desk) action(a hazard.Action) actionView {
	told := actionView{
		Step: a.Step.Number, What: a.Hazard.What, By: a.By, Least: string(a.Hazard.Signal), Go: placeAddress(d.name, a.Where),
		Source: sourceWords(a.Hazard.Source, a.Hazard.Known),
	}
	if a.Answered() {
		told.Caution, told.Place, told.Own = a.Caution.Text, string(a.Place), true
		return told
	}
	told.Caution, told.Place = a.Hazard.Happens+" "+a.Hazard.Avoid, "printed by the program, before it in the step"
	if a.Caution != nil {
		told.Place += "; one of yours stands " + string(a.Place)
	}
	return told
}

// labels lays the labels out and tells what has no room.
func (d *desk) labels(p *proof.Proof, shownNow *cautionsView) {
	made, err := labels.Make(p.Kit, p.Ledger, d.templates(), labels.Options{Start: 1, Kits: 1, Draft: p.Findings.MustFix()})
	if err != nil {
		shownNow.Wrong = plain(err)
		return
	}
	for _, document := range made.Documents {
		shownNow.Kinds = append(shownNow.Kinds, labelView{document.Kind, labelTitle(document.Kind), document.Labels, document.Sheets, document.Grid.Name})
	}
	for _, misfit := range made.Misfits {
		shownNow.NoRoom = append(shownNow.NoRoom, misfit.String())
	}
	shownNow.Notes = made.Notes
}

// labelTitle is what people call a kind of label: "bags" are the labels of the bags.
func labelTitle(kind string) string { return "Labels: " + strings.ReplaceAll(kind, "-", " ") }

func classWords(c label.Classification) []string {
	if c.Why != "" {
		return []string{c.Filling.Numbered() + ": cannot be reckoned: " + c.Why}
	}
	var all []string
	for _, class := range c.Classes {
		all = append(all, fmt.Sprintf("%s: %s: %s. %s", c.Filling.Numbered(), class.Hazard, cmp.Or(class.Statement, "no statement"), class.Sum))
	}
	return all
}

// marketsOf holds the kit against what each of its markets asks. What is not asked is left
// out: “tallyfold markets” tells it with its reasons.
func marketsOf(p *proof.Proof) []marketView {
	var all []marketView
	for _, said := range p.Kit.Markets {
		pack, known := handbook.PackFor(said.Value)
		if !known {
			all = append(all, marketView{Name: said.Value, NotCovered: "everything: there are no requirements for it here, and nothing was looked at"})
			continue
		}
		told := marketView{Name: pack.Name, LookedAt: pack.LookedAt.Format("2 January 2006"), NotCovered: pack.NotCovered}
		for _, r := range market.Against(pack, p.Kit, p.Ledger) {
			if r.Answer != market.NotAsked {
				told.Rows = append(told.Rows, rowOf(r))
			}
		}
		all = append(all, told)
	}
	return all
}

func rowOf(r market.Ruling) marketRow {
	row := marketRow{
		Asks: r.Requirement.Asks, Of: cmp.Or(r.About(), "the kit"), Why: r.Why, Says: r.Says, Yours: r.Requirement.Yours,
		Source: sourceWords(r.Requirement.Source+", "+r.Requirement.Dated, r.Requirement.Known),
	}
	if r.Answer == market.CannotTell {
		row.Missing = append(row.Missing, "cannot check: "+r.Why+"; "+r.ToTell)
	}
	for _, missing := range r.Missing {
		row.Missing = append(row.Missing, missing.Found+"; "+missing.Write)
	}
	for _, on := range r.Requirement.On {
		row.On = append(row.On, string(on))
	}
	return row
}
