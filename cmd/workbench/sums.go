package workbench

import (
	"errors"
	"html/template"
	"net/http"
	"slices"
	"strconv"
	"strings"
	"time"

	"tallyfold/kit"
	"tallyfold/kit/diag"
	"tallyfold/kit/ledger"
	"tallyfold/kit/load"
	"tallyfold/kit/proof"
	"tallyfold/kit/source"
	"tallyfold/render"
)

// sumsView is the ledger: what is packed, used and left, where it goes, how full each
// container gets, and all findings with their ways out.
type sumsView struct {
	// Unread: the steps could not be followed.
	Unread   bool
	Findings []toldFinding
	Accepted []acceptedView
	Things   []ledger.AccountThing
	Kitchen  []ledger.AccountThing
	Runs     []runView
	Gauges   []gaugeView
	Times    timesView
	// Doubtful are figures that are told three ways, as they are not exact.
	Doubtful []ledger.AccountAnswer
}

type acceptedView struct {
	toldFinding
	Because, Until string
}

type runView struct {
	Name       string
	Drawing    template.HTML
	Streams    []render.Stream
	Left       string
	Movements  []ledger.AccountMovement
	Containers []ledger.AccountFilling
}

type gaugeView struct {
	Title, Says string
	Drawing     template.HTML
}

type timesView struct{ HandsOn, Total, Untimed string }

func (d *desk) sumsPage(*http.Request) (any, error) {
	p := d.triedOut()
	var shown sumsView
	for _, f := range p.Findings.Sorted() {
		shown.Findings = append(shown.Findings, tell(d.name, f))
	}
	for _, a := range p.Accepted {
		shown.Accepted = append(shown.Accepted, acceptedView{tell(d.name, a.Finding), a.Because, a.Until})
	}
	if p.Ledger == nil {
		shown.Unread = true
		return shown, nil
	}
	account := p.Ledger.Account()
	for _, thing := range account.Things {
		if thing.Packed == nil {
			shown.Kitchen = append(shown.Kitchen, thing)
		} else {
			shown.Things = append(shown.Things, thing)
		}
	}
	shown.Doubtful = account.Answers
	for i, run := range p.Kit.Passes() {
		shown.Runs = append(shown.Runs, runOf(p, account, run, i+1))
	}
	shown.Times = timesOf(p)
	gauges, err := render.Gauges(p.Kit, p.Ledger, d.templates())
	if err != nil {
		return nil, err
	}
	for i, g := range gauges {
		shown.Gauges = append(shown.Gauges, gaugeView{Title: gaugeTitle(g), Says: g.Says, Drawing: svg(g.Figure.SVG("gauge-" + strconv.Itoa(i)))})
	}
	return shown, nil
}

// svg is a drawing of our own making, which needs no escaping.
func svg(drawing string) template.HTML { return template.HTML(drawing) }

func gaugeTitle(g render.Gauge) string {
	title := "Step " + strconv.Itoa(g.Step.Number) + ", " + g.Step.Title
	if g.Run != nil && g.Run.Name.Given() {
		title = g.Run.Name.Value + ": " + title
	}
	return title
}

func runOf(p *proof.Proof, account ledger.Account, run *kit.Run, number int) runView {
	told := runView{Name: run.Name.Value}
	if flow, ok := render.FlowOf(p.Kit, p.Ledger, run); ok {
		told.Drawing, told.Streams, told.Left = svg(flow.Figure.SVG("flow-"+strconv.Itoa(number))), flow.Streams, flow.Left
	}
	for _, m := range account.Movements {
		if m.Run == run.Name.Value {
			told.Movements = append(told.Movements, m)
		}
	}
	for _, c := range account.Containers {
		if c.Run == run.Name.Value {
			told.Containers = append(told.Containers, c)
		}
	}
	return told
}

func timesOf(p *proof.Proof) timesView {
	told := timesView{HandsOn: p.Plan.HandsOn.Show(), Total: p.Plan.Total.Show()}
	var steps []int
	for _, step := range p.Plan.Untimed {
		steps = append(steps, step.Number)
	}
	if len(steps) > 0 {
		told.Untimed = stepWords(steps) + " tell no time, so it takes at least so long"
	}
	return told
}

// errNotFound is told where a finding has gone since the page showed it.
var errNotFound = errors.New("this finding is gone or has changed since the page showed it, so nothing was done")

// finding looks one up by its name in the page. One whose place has moved since is known by
// its rule and words, if there is only one such.
func finding(p *proof.Proof, o order) (diag.Finding, error) {
	var alike diag.List
	for _, f := range p.Findings {
		if f.Rule != o.Rule || f.Found != o.Was {
			continue
		}
		if findingID(f) == o.Key {
			return f, nil
		}
		alike = append(alike, f)
	}
	if len(alike) != 1 {
		return diag.Finding{}, errNotFound
	}
	return alike[0], nil
}

// mend makes the change that a remedy names. Key, Rule and Was are those of the finding, Value
// the words of the remedy. The remedies were shown with their changes before.
func (d *desk) mend(o order) (answer, error) {
	p := d.proved()
	f, err := finding(p, o)
	if err != nil {
		return answer{}, err
	}
	at := slices.IndexFunc(f.Remedies, func(r diag.Remedy) bool { return r.Do == o.Value })
	if at < 0 || len(f.Remedies[at].Changes) == 0 {
		return answer{}, errNotFound
	}
	changes := f.Remedies[at].Changes
	files := map[string]*source.File{}
	for _, c := range changes {
		files[c.Where.File.Name] = c.Where.File
	}
	for _, name := range sortedKeys(files) {
		old, err := d.read(name)
		if err != nil {
			return answer{}, err
		}
		text, err := proof.Changed(files[name], changes)
		if err != nil || string(old.Typed) != string(files[name].Text) {
			return answer{}, errNotFound
		}
		if _, err := d.put(name, text, old.TypedPrint); err != nil {
			return answer{}, err
		}
	}
	return answer{}, nil
}

// accept puts a finding among those that the maker lives with. Value is the reason, Name the
// last day.
func (d *desk) accept(o order) (answer, error) {
	f, err := finding(d.proved(), o)
	if err != nil {
		return answer{}, err
	}
	reason := strings.TrimSpace(o.Value)
	if reason == "" {
		return answer{}, &wrong{"say why you live with it, for whoever reads this next year", findingID(f)}
	}
	if err := checkTyped(order{Path: []string{"accept"}, Value: reason}); err != nil {
		return answer{}, err
	}
	if o.Name != "" {
		if _, err := time.Parse(time.DateOnly, o.Name); err != nil {
			return answer{}, &wrong{"“" + o.Name + "” is no day; write it as 2027-06-30", findingID(f)}
		}
	}
	return d.amended(findingID(f), func(text []byte) ([]byte, error) {
		number := 0
		if part := partAt(text, []string{"accept"}); part != nil && part.Kind == load.ListPart {
			number = len(part.Entries)
		}
		for _, said := range [][2]string{{"rule", f.Rule}, {"about", f.About}, {"because", reason}, {"until", o.Name}} {
			if said[1] == "" {
				continue
			}
			var err error
			if text, err = setAt(text, number, said[0], said[1]); err != nil {
				return nil, err
			}
		}
		return text, nil
	})
}
