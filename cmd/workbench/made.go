package workbench

import (
	"context"
	"errors"
	"fmt"
	"net/http"
	"path"
	"strings"

	"tallyfold/instructions/xliff"
	"tallyfold/render"
	"tallyfold/render/labels"
	"tallyfold/render/press"
	"tallyfold/render/print"
)

// A madeFile is something that a kit can be had as.
type madeFile struct {
	kind string
	data []byte
}

// sendMade makes a file and hands it out: the booklet, sheets of labels, texts to translate.
func (w *Workbench) sendMade(out http.ResponseWriter, in *http.Request, d *desk) {
	name := in.PathValue("file")
	made, err := w.make(in, d, name)
	if err != nil {
		w.sorry(out, http.StatusConflict, plain(err))
		return
	}
	guardMade(out.Header())
	out.Header().Set("Content-Type", made.kind)
	out.Header().Set("Content-Disposition", fmt.Sprintf("attachment; filename=%q", d.base()+"-"+name))
	_, _ = out.Write(made.data)
}

func (w *Workbench) make(in *http.Request, d *desk, name string) (madeFile, error) {
	stem, ending := strings.TrimSuffix(name, path.Ext(name)), path.Ext(name)
	kind, isLabels := strings.CutPrefix(stem, "labels-")
	switch {
	case stem == "booklet":
		return w.makeBooklet(in, d, ending)
	case isLabels:
		return w.makeLabels(in, d, kind, ending)
	case ending == ".xlf":
		return d.makeXLIFF(stem)
	}
	return madeFile{}, errNoFile
}

const htmlKind, pdfKind = "text/html; charset=utf-8", "application/pdf"

func (w *Workbench) makeBooklet(in *http.Request, d *desk, ending string) (madeFile, error) {
	d.lock.Lock()
	booklet, err := d.assemble(in)
	d.lock.Unlock()
	if err != nil {
		return madeFile{}, err
	}
	switch ending {
	case ".md":
		return madeFile{"text/markdown; charset=utf-8", booklet.Text()}, nil
	case ".html":
		html, err := booklet.HTML()
		return madeFile{htmlKind, html}, err
	case ".pdf":
		pdf, err := w.printBooklet(in.Context(), booklet)
		return madeFile{pdfKind, pdf}, err
	}
	return madeFile{}, errNoFile
}

func (w *Workbench) printBooklet(ctx context.Context, booklet *render.Booklet) ([]byte, error) {
	browser, err := w.press()
	if err != nil {
		return nil, err
	}
	printed, err := press.Booklet(ctx, browser, booklet)
	if err != nil {
		return nil, err
	}
	if over := printed.Fit.Overflows; len(over) > 0 {
		return nil, fmt.Errorf("%d things have no room in the size “%s”, the first at “%s”; choose a larger size", len(over), booklet.Form.Name, over[0].Text)
	}
	if booklet.Form.Way == render.Leaf {
		form := booklet.Form
		folding := print.Folding{Sheet: print.SheetFor(form.Across(), form.Paper.Height)}
		return print.Impose(printed.PDF, print.Panels(form.Panels, print.Paper(form.Paper), folding))
	}
	return printed.PDF, nil
}

// press starts the browser that prints, once.
func (w *Workbench) press() (*print.Browser, error) {
	w.printing.Lock()
	defer w.printing.Unlock()
	if w.browser != nil {
		return w.browser, nil
	}
	browser, err := print.Open(w.running, print.Settings{Program: w.settings.Browser, Warn: w.settings.Note})
	if err != nil {
		return nil, err
	}
	w.browser = browser
	return browser, nil
}

func (w *Workbench) makeLabels(in *http.Request, d *desk, kind, ending string) (madeFile, error) {
	d.lock.Lock()
	document, err := d.labelSheet(kind)
	d.lock.Unlock()
	if err != nil {
		return madeFile{}, err
	}
	html, err := document.HTML()
	if err != nil || ending == ".html" {
		return madeFile{htmlKind, html}, err
	}
	if ending != ".pdf" {
		return madeFile{}, errNoFile
	}
	browser, err := w.press()
	if err != nil {
		return madeFile{}, err
	}
	pdf, err := press.Labels(in.Context(), browser, document, html)
	return madeFile{pdfKind, pdf}, err
}

func (d *desk) labelSheet(kind string) (*labels.Document, error) {
	p := d.proved()
	if p.Kit == nil || p.Ledger == nil {
		return nil, errUnread
	}
	made, err := labels.Make(p.Kit, p.Ledger, d.templates(), labels.Options{Kinds: []string{kind}, Start: 1, Kits: 1, Draft: p.Findings.MustFix()})
	switch {
	case err != nil:
		return nil, err
	case len(made.Misfits) > 0:
		return nil, errors.New("no room: " + made.Misfits[0].String())
	case len(made.Documents) == 0:
		return nil, errNoFile
	}
	return made.Documents[0], nil
}

// makeXLIFF hands the untranslated texts to a translator.
func (d *desk) makeXLIFF(tag string) (madeFile, error) {
	d.lock.Lock()
	defer d.lock.Unlock()
	p := d.proved()
	if p.Kit == nil {
		return madeFile{}, errUnread
	}
	words, err := d.templates().Words(tag)
	if err != nil {
		return madeFile{}, err
	}
	files := xliff.Pending(xliff.Files(p.Kit, words), p.Kit, p.Kit.Translation(tag), tag)
	return madeFile{"application/xliff+xml", xliff.Write(files, p.Kit.Language.Value, tag)}, nil
}
