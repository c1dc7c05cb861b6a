package workbench

import (
	"net/http"
	"strconv"
	"strings"

	"tallyfold/instructions/adopt"
	"tallyfold/instructions/keep"
	"tallyfold/kit/quantity"
	"tallyfold/kit/source"
)

// startView is a leaflet that becomes a kit: what was recognised, one by one, and what is
// open. Nothing is kept between two requests but what the page sends along.
type startView struct {
	Single                                 bool
	Name, Leaflet, Parts, Kitchen          string
	Kitchens                               []string
	Wrong                                  string
	Read                                   bool
	Proposals                              []proposalView
	Questions                              []string
	Links, Typed, Accepted, All, Undecided int
	Definition, Method                     string
}

type proposalView struct {
	ID                         int
	Kind, Words, Meaning, Why  string
	Before, After, Open, Named string
	Others                     []otherReading
	Accepted                   bool
	// Choice is the number of the alternative taken, -1 for what was proposed first.
	Choice int
}

func (w *Workbench) showStart(out http.ResponseWriter, in *http.Request) {
	w.start(out, in, startView{})
}

func (w *Workbench) start(out http.ResponseWriter, in *http.Request, shownNow startView) {
	shownNow.Single = w.single()
	for c := quantity.USCustomary; c <= quantity.Imperial; c++ {
		shownNow.Kitchens = append(shownNow.Kitchens, c.String())
	}
	w.show(out, "start", view{Nonce: nonceOf(in.Context()), Title: "Start from what you have", Version: w.settings.Version, Body: shownNow})
}

// changeStart reads the leaflet anew with the decisions made so far, and makes the kit where
// that is asked for.
func (w *Workbench) changeStart(out http.ResponseWriter, in *http.Request) {
	if err := in.ParseMultipartForm(4 << 20); err != nil && err != http.ErrNotMultipart {
		w.sorry(out, http.StatusBadRequest, "What was sent cannot be read, or is longer than any leaflet.")
		return
	}
	shownNow := startView{
		Name: strings.TrimSpace(in.PostFormValue("name")), Leaflet: in.PostFormValue("leaflet"), Parts: in.PostFormValue("parts"), Kitchen: in.PostFormValue("kitchen"),
	}
	adopted, err := readLeaflet(shownNow)
	if err != nil {
		shownNow.Wrong = plain(err)
		w.start(out, in, shownNow)
		return
	}
	shownNow.decide(adopted, in)
	if in.PostFormValue("act") == "make" {
		name, err := w.adopt(shownNow.Name, adopted)
		if err == nil {
			http.Redirect(out, in, "/kit/"+name+"/method", http.StatusSeeOther)
			return
		}
		shownNow.Wrong = plain(err)
	}
	shownNow.tell(adopted)
	w.start(out, in, shownNow)
}

// adopt makes the kit of what was recognised and taken, under the name that the maker gave.
func (w *Workbench) adopt(name string, adopted *adopt.Adoption) (string, error) {
	return w.begin(name, keep.Files(map[string][]byte{"kit.yaml": adopted.Definition(), "method.md": adopted.Method(), "adopted.md": adopted.List()}))
}

func readLeaflet(v startView) (*adopt.Adoption, error) {
	options := adopt.Options{Name: v.Name}
	for c := quantity.USCustomary; c <= quantity.Imperial; c++ {
		if c.String() == v.Kitchen {
			options.Kitchen, options.Told = c, true
		}
	}
	var parts *source.File
	if strings.TrimSpace(v.Parts) != "" {
		parts = source.NewFile("parts", []byte(v.Parts))
	}
	return adopt.Read(source.NewFile("leaflet", shown([]byte(v.Leaflet))), parts, options)
}

// decide carries the maker's decisions over: "take-3" is yes or no, "as-3" the number of a
// reading. Proposals keep their numbers as long as the leaflet is the same.
func (v *startView) decide(a *adopt.Adoption, in *http.Request) {
	if in.PostFormValue("decided") != strconv.Itoa(len(v.Leaflet)) {
		return // another text: its proposals are others
	}
	for _, p := range a.Proposals {
		number := strconv.Itoa(p.ID)
		if reading, err := strconv.Atoi(in.PostFormValue("as-" + number)); err == nil && reading >= 0 {
			a.Choose(p.ID, reading)
		}
		if p.Open == "" {
			a.Accept(p.ID, in.PostFormValue("take-"+number) == "yes")
		}
	}
}

func (v *startView) tell(a *adopt.Adoption) {
	v.Read = true
	text := string(a.File.Text)
	for _, p := range a.Proposals {
		told := proposalView{
			ID: p.ID, Kind: string(p.Kind), Words: a.Words(p), Meaning: p.Meaning, Why: p.Why, Open: p.Open, Accepted: p.Accepted, Choice: -1,
			Before: around(text[max(0, p.Start-60):p.Start], true), After: around(text[p.End:min(len(text), p.End+60)], false),
		}
		for _, other := range p.Alternatives {
			told.Others = append(told.Others, otherReading{other.Destination, other.Meaning})
		}
		v.All++
		if p.Accepted {
			v.Accepted++
		}
		v.Proposals = append(v.Proposals, told)
	}
	for _, q := range a.Questions {
		v.Questions = append(v.Questions, a.Told(q))
	}
	v.Links, v.Typed = a.Linked()
	v.Definition, v.Method = string(a.Definition()), string(a.Method())
}

// around is what stands beside words, from the nearest space on and without line ends.
func around(text string, before bool) string {
	text = strings.ToValidUTF8(text, "")
	fields := strings.Join(strings.Fields(text), " ")
	if before {
		if at := strings.IndexByte(fields, ' '); at >= 0 && len(text) >= 60 {
			fields = "…" + fields[at+1:]
		}
		return fields
	}
	if at := strings.LastIndexByte(fields, ' '); at >= 0 && len(text) >= 60 {
		fields = fields[:at] + "…"
	}
	return fields
}
