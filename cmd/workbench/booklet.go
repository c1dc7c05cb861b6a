package workbench

import (
	"encoding/json"
	"errors"
	"fmt"
	"net/http"
	"net/url"
	"slices"

	"tallyfold/kit/proof"
	"tallyfold/render"
)

// bookletView is the choice of a booklet; the page fetches the booklet itself.
type bookletView struct {
	Unread    bool
	Forms     []choiceView
	Languages []choiceView
	Black     bool
	// Draft says why every page is marked as a draft, "" for no draft.
	Draft string
	// Stamp changes with the booklet.
	Stamp string
}

type choiceView struct {
	Name, Says string
	Here       bool
}

// A wanted booklet is one form in one or more languages.
type wantedBooklet struct {
	form  render.Form
	tags  []string
	black bool
}

// wantedOf reads what a page asks for; what it does not say is the usual.
func wantedOf(p *proof.Proof, in *http.Request) (wantedBooklet, error) {
	query := in.URL.Query()
	wanted := wantedBooklet{form: render.A5, black: query.Get("black") == "yes"}
	if name := query.Get("form"); name != "" {
		form, ok := render.FormNamed(name)
		if !ok {
			return wanted, fmt.Errorf("there is no size “%s”", name)
		}
		wanted.form = form
	}
	if tag := query.Get("language"); tag != "" {
		if !slices.Contains(render.Languages(p.Kit), tag) {
			return wanted, fmt.Errorf("the kit has no words in the language “%s”", tag)
		}
		wanted.tags = []string{tag}
	}
	return wanted, nil
}

func (d *desk) bookletPage(in *http.Request) (any, error) {
	p := d.proved()
	if p.Kit == nil || p.Ledger == nil {
		return bookletView{Unread: true}, nil
	}
	wanted, err := wantedOf(p, in)
	if err != nil {
		wanted = wantedBooklet{form: render.A5}
	}
	shownNow := bookletView{Black: wanted.black, Draft: d.whyDraft(p, wanted), Stamp: d.proven}
	for _, form := range render.Forms() {
		shownNow.Forms = append(shownNow.Forms, choiceView{form.Name, form.Tells(), form.Name == wanted.form.Name})
	}
	for i, tag := range render.Languages(p.Kit) {
		here := len(wanted.tags) == 0 && i == 0 || slices.Contains(wanted.tags, tag)
		shownNow.Languages = append(shownNow.Languages, choiceView{tag, languageName(tag), here})
	}
	return shownNow, nil
}

// whyDraft says why a booklet must not go into a box yet: something must be fixed, or its
// reader could not read a caution.
func (d *desk) whyDraft(p *proof.Proof, wanted wantedBooklet) string {
	if p.Findings.MustFix() {
		return "Something must be fixed, so every page is marked as a draft."
	}
	for _, tag := range wanted.tags {
		missing, err := render.UntranslatedIn(p.Kit, d.templates(), tag)
		if p.Kit.Translation(tag) == nil || err != nil {
			continue
		}
		if slices.ContainsFunc(missing, func(one render.Untranslated) bool { return one.Caution }) {
			return "A caution has no words in this language yet, so every page is marked as a draft. The page “Words” lists it."
		}
	}
	return ""
}

// errUnread is told where there is nothing to make a booklet of.
var errUnread = errors.New("the kit cannot be read as it is now, so there is nothing to print; the first reason stands above")

// assemble puts a booklet together as the kit is typed now. The lock is held.
func (d *desk) assemble(in *http.Request) (*render.Booklet, error) {
	p := d.proved()
	if p.Kit == nil || p.Ledger == nil {
		return nil, errUnread
	}
	wanted, err := wantedOf(p, in)
	if err != nil {
		return nil, err
	}
	options := render.Options{Form: wanted.form, Black: wanted.black, Draft: d.whyDraft(p, wanted) != "", Pictures: &d.pictures}
	return render.InLanguages(p.Kit, p.Ledger, d.templates(), options, wanted.tags)
}

// sendBooklet hands out the booklet as one page of HTML, with its form for the preview.
func (w *Workbench) sendBooklet(out http.ResponseWriter, in *http.Request, d *desk) {
	d.lock.Lock()
	booklet, err := d.assemble(in)
	d.lock.Unlock()
	var html []byte
	if err == nil {
		html, err = booklet.HTML()
	}
	if err != nil {
		http.Error(out, plain(err), http.StatusConflict)
		return
	}
	form, err := json.Marshal(booklet.Preview())
	if err != nil {
		http.Error(out, plain(err), http.StatusInternalServerError)
		return
	}
	guardMade(out.Header())
	out.Header().Set("X-Form", url.PathEscape(string(form)))
	out.Header().Set("Content-Type", "text/html; charset=utf-8")
	_, _ = out.Write(html)
}

// sendEmpty is the page that the preview fills: it has the rules of a booklet and nothing
// else.
func (w *Workbench) sendEmpty(out http.ResponseWriter, _ *http.Request, _ *desk) {
	guardMade(out.Header())
	out.Header().Set("Content-Type", "text/html; charset=utf-8")
	_, _ = out.Write([]byte("<!DOCTYPE html><html lang=\"en\"><head><meta charset=\"utf-8\"><title>Booklet</title></head><body></body></html>"))
}

// sendLabels shows sheets of labels inside the page.
func (w *Workbench) sendLabels(out http.ResponseWriter, in *http.Request, d *desk) {
	d.lock.Lock()
	document, err := d.labelSheet(in.URL.Query().Get("kind"))
	d.lock.Unlock()
	var html []byte
	if err == nil {
		html, err = document.HTML()
	}
	if err != nil {
		http.Error(out, plain(err), http.StatusConflict)
		return
	}
	guardMade(out.Header())
	out.Header().Set("Content-Type", "text/html; charset=utf-8")
	_, _ = out.Write(html)
}
