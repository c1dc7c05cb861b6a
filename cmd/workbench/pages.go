package workbench

import (
	"bytes"
	"embed"
	"encoding/json"
	"fmt"
	"html/template"
	"io/fs"
	"net/http"
	"path"
	"strings"

	"tallyfold/render/print"
	"tallyfold/templates"
)

// A page is one view of a kit. To add one: a row here, a file that fills it, and a template
// of its name in page/, which defines "main".
type page struct {
	name, title string
	// shown says what the template is given; the lock of the desk is held.
	shown func(d *desk, in *http.Request) (any, error)
	// aside pages have no tab of their own.
	aside bool
}

var pages = []page{
	{name: "box", title: "The box", shown: (*desk).boxPage},
	{name: "method", title: "The method", shown: (*desk).methodPage},
	{name: "sums", title: "Does it add up", shown: (*desk).sumsPage},
	{name: "cautions", title: "Cautions and labels", shown: (*desk).cautionsPage},
	{name: "booklet", title: "Booklet", shown: (*desk).bookletPage},
	{name: "words", title: "Words", shown: (*desk).wordsPage},
	{name: "earlier", title: "Earlier states", shown: (*desk).earlierPage, aside: true},
	{name: "clash", title: "Two changes of one place", shown: (*desk).clashPage, aside: true},
}

//go:embed page/*.html page/*.js page/*.css page/*.svg page/editor/LICENSES.txt
var files embed.FS

// paper is the templates, one for each page.
type paper struct {
	sheets map[string]*template.Template
	// served are the files of page/ that a browser may ask for.
	served fs.FS
}

func readPages() (*paper, error) {
	served, err := fs.Sub(files, "page")
	if err != nil {
		return nil, err
	}
	frame, err := template.New("").Funcs(functions).ParseFS(served, "frame.html", "parts.html", "field.html")
	if err != nil {
		return nil, fmt.Errorf("the pages cannot be read: %w", err)
	}
	p := &paper{sheets: map[string]*template.Template{}, served: served}
	names := []string{"shelf", "start", "sorry"}
	for _, page := range pages {
		names = append(names, page.name)
	}
	for _, name := range names {
		sheet, err := template.Must(frame.Clone()).ParseFS(served, name+".html")
		if err != nil {
			return nil, fmt.Errorf("the page %s cannot be read: %w", name, err)
		}
		p.sheets[name] = sheet
	}
	return p, nil
}

// functions are what the templates may call.
var functions = template.FuncMap{
	"json": func(value any) (string, error) {
		text, err := json.Marshal(value)
		return string(text), err
	},
	"kitPath": kitPath,
	"some":    some,
	"add":     func(a, b int) int { return a + b },
	// row gives a link of a step its name in the page.
	"row": func(step string, number int, link linkForm) map[string]any {
		return map[string]any{"At": fmt.Sprintf("%s-%d", step, number), "Link": link}
	},
	// kinds are what chosen words can be said to be.
	"kinds": func() []linkKind { return linkKinds },
}

func (p *paper) fill(name string, view any) ([]byte, error) {
	var out bytes.Buffer
	err := p.sheets[name].ExecuteTemplate(&out, "frame", view)
	return out.Bytes(), err
}

// show answers with a page.
func (w *Workbench) show(out http.ResponseWriter, name string, view any) {
	text, err := w.pages.fill(name, view)
	if err != nil {
		w.settings.Note("the page " + name + " cannot be shown: " + err.Error())
		http.Error(out, "This page cannot be shown. Nothing of yours is lost; look at what the program says where it was started.", http.StatusInternalServerError)
		return
	}
	out.Header().Set("Content-Type", "text/html; charset=utf-8")
	_, _ = out.Write(text)
}

// sorry tells that something cannot be done, as a page.
func (w *Workbench) sorry(out http.ResponseWriter, status int, why string) {
	out.Header().Set("Content-Type", "text/html; charset=utf-8")
	text, err := w.pages.fill("sorry", view{Title: "Not here", Version: w.settings.Version, Body: why})
	if err != nil {
		text = []byte(why)
	}
	out.WriteHeader(status)
	_, _ = out.Write(text)
}

// showPage answers with a page of a kit.
func (w *Workbench) showPage(out http.ResponseWriter, in *http.Request, d *desk) {
	for _, p := range pages {
		if p.name == in.PathValue("page") {
			text, err := d.page(p, in)
			if err != nil {
				w.sorry(out, http.StatusInternalServerError, err.Error())
				return
			}
			out.Header().Set("Content-Type", "text/html; charset=utf-8")
			_, _ = out.Write(text)
			return
		}
	}
	w.sorry(out, http.StatusNotFound, "There is no such page.")
}

// page fills a page in as the kit is now.
func (d *desk) page(p page, in *http.Request) ([]byte, error) {
	d.lock.Lock()
	defer d.lock.Unlock()
	view := d.view(p, in)
	body, err := p.shown(d, in)
	if err != nil {
		return nil, err
	}
	view.Body = body
	return d.bench.pages.fill(p.name, view)
}

// servePage hands out a script or a style of ours.
func (w *Workbench) servePage(out http.ResponseWriter, in *http.Request) {
	name := strings.TrimPrefix(path.Clean(in.URL.Path), "/page/")
	text, err := fs.ReadFile(w.pages.served, name)
	switch name {
	case fitScript:
		text, err = []byte(print.FitScript()), nil
	case keyList:
		text, err = json.Marshal(keysOfSections())
	}
	kind := map[string]string{".js": "text/javascript; charset=utf-8", ".css": "text/css; charset=utf-8", ".svg": "image/svg+xml", ".txt": "text/plain; charset=utf-8", ".json": "application/json"}[path.Ext(name)]
	if err != nil || kind == "" {
		http.NotFound(out, in)
		return
	}
	out.Header().Set("Content-Type", kind)
	_, _ = out.Write(text)
}

// fitScript is the name under which a page asks for the script that reckons before a print,
// keyList that for the keys of kit.yaml.
const fitScript, keyList = "fit.js", "keys.json"

// serveFont hands out one of the faces of the booklet, which the page uses too.
func (w *Workbench) serveFont(out http.ResponseWriter, in *http.Request) {
	name := path.Base(in.PathValue("name"))
	text, err := templates.Shipped().File("fonts/" + name)
	if err != nil || path.Ext(name) != ".woff2" {
		http.NotFound(out, in)
		return
	}
	out.Header().Set("Content-Type", "font/woff2")
	out.Header().Set("Cache-Control", "max-age=86400")
	_, _ = out.Write(text)
}
