package print

import (
	"context"
	"fmt"
	"maps"
	"net"
	"net/http"
	"net/http/httptest"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"testing"
	"time"
)

// ways lists how a page may reach out, with URL where the address goes. All but the last few need no script.
var ways = map[string]string{
	"picture":            `<img src="URL">`,
	"picture-set":        `<img srcset="URL 1x, URL 2x">`,
	"picture-source":     `<picture><source srcset="URL"><img alt=""></picture>`,
	"style-background":   `<div style="background:url(URL)">x</div>`,
	"style-set":          `<div style="background:image-set(url(URL) 1x)">x</div>`,
	"style-import":       `<style>@import "URL";</style>`,
	"style-import-url":   `<style>@import url(URL) print;</style>`,
	"style-font":         `<style>@font-face{font-family:Away;src:url(URL)}</style><p style="font-family:Away">x</p>`,
	"style-list":         `<ul><li style="list-style-image:url(URL)">x</ul>`,
	"style-border":       `<div style="border:5px solid;border-image:url(URL) 5">x</div>`,
	"style-mask":         `<div style="mask-image:url(URL)">x</div>`,
	"style-content":      `<style>.c::before{content:url(URL)}</style><p class=c>x</p>`,
	"style-shape":        `<div style="float:left;width:9px;height:9px;shape-outside:url(URL)">x</div>`,
	"style-cursor":       `<style>*{cursor:url(URL),auto}</style>`,
	"style-page":         `<style>@page{margin:9mm;@top-left{content:url(URL)}}</style>`,
	"link-style":         `<link rel="stylesheet" href="URL">`,
	"link-print":         `<link rel="stylesheet" media="print" href="URL">`,
	"link-preload":       `<link rel="preload" as="image" href="URL">`,
	"link-prefetch":      `<link rel="prefetch" href="URL">`,
	"link-module":        `<link rel="modulepreload" href="URL">`,
	"link-preconnect":    `<link rel="preconnect" href="URL">`,
	"link-dns":           `<link rel="dns-prefetch" href="URL">`,
	"link-icon":          `<link rel="icon" href="URL">`,
	"link-manifest":      `<link rel="manifest" href="URL">`,
	"frame":              `<iframe src="URL"></iframe>`,
	"frame-inside":       `<iframe srcdoc="<img src='URL'>"></iframe>`,
	"frame-data":         `<iframe src="data:text/html,<img src='URL'>"></iframe>`,
	"object":             `<object data="URL"></object>`,
	"object-typed":       `<object type="image/svg+xml" data="URL"></object>`,
	"embed":              `<embed src="URL">`,
	"drawing-image":      `<svg><image href="URL" width="9" height="9"/></svg>`,
	"drawing-xlink":      `<svg xmlns:xlink="http://www.w3.org/1999/xlink"><image xlink:href="URL" width="9" height="9"/></svg>`,
	"drawing-use":        `<svg><use href="URL#a"/></svg>`,
	"drawing-filter":     `<svg><filter id="f"><feImage href="URL"/></filter><rect width="9" height="9" filter="url(#f)"/></svg>`,
	"film":               `<video src="URL" autoplay preload="auto"></video>`,
	"film-poster":        `<video poster="URL"></video>`,
	"film-source":        `<video preload="auto"><source src="URL"></video>`,
	"film-words":         `<video><track default kind="subtitles" src="URL"></video>`,
	"sound":              `<audio src="URL" autoplay preload="auto"></audio>`,
	"button-picture":     `<form><input type="image" src="URL"></form>`,
	"background":         `<table background="URL"><tr><td>x</table>`,
	"policy-report":      `<meta http-equiv="Content-Security-Policy" content="img-src 'none'; report-uri URL"><img src="/away.png">`,
	"base":               `<base href="URL/"><img src="relative.png">`,
	"script":             `<script src="URL"></script>`,
	"script-module":      `<script type="module" src="URL"></script>`,
	"script-fetch":       `<script>fetch("URL",{mode:"no-cors"})</script>`,
	"script-request":     `<script>x=new XMLHttpRequest;x.open("GET","URL");x.send()</script>`,
	"script-socket":      `<script>new WebSocket("URL".replace("http","ws"))</script>`,
	"script-beacon":      `<script>navigator.sendBeacon("URL")</script>`,
	"script-events":      `<script>new EventSource("URL")</script>`,
	"script-worker":      `<script>new Worker("data:text/javascript,importScripts(\"URL\")")</script>`,
	"script-image":       `<script>new Image().src="URL"</script>`,
	"script-form":        `<form id="s" action="URL" method="post" target="_blank"></form><script>document.getElementById("s").submit()</script>`,
	"script-window":      `<script>window.open("URL")</script>`,
	"script-speculation": `<script type="speculationrules">{"prefetch":[{"source":"list","urls":["URL"],"eagerness":"immediate"}]}</script>`,
}

// leavings lists how a page may go elsewhere as a whole; each needs a page of its own.
var leavings = map[string]string{
	"refresh":        `<meta http-equiv="refresh" content="0;url=URL">`,
	"refresh-quoted": `<meta http-equiv="Refresh" content="0; URL='URL'">`,
	"refresh-later":  `<meta http-equiv="refresh" content="0.05;url=URL">`,
	"refresh-self":   `<meta http-equiv="refresh" content="0">`,
	"script-leave":   `<script>location="URL"</script>`,
	"body-leave":     `<body onload="location.replace('URL')">`,
}

const inside = "The words of the page"

// outsider is a server on the loopback interface that notes who comes.
type outsider struct {
	server *httptest.Server
	mu     sync.Mutex
	calls  int             // connections, whatever was said on them
	paths  map[string]bool // what was asked for
	page   string          // what is given at /page
}

func newOutsider(t *testing.T) *outsider {
	t.Helper()
	o := &outsider{paths: map[string]bool{}}
	o.server = httptest.NewUnstartedServer(http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		o.mu.Lock()
		defer o.mu.Unlock()
		if r.URL.Path == "/page" {
			w.Header().Set("Content-Type", "text/html; charset=utf-8")
			fmt.Fprint(w, o.page)
			return
		}
		o.paths[strings.Split(r.URL.Path, "/")[1]] = true
	}))
	o.server.Config.ConnState = func(_ net.Conn, state http.ConnState) {
		if state == http.StateNew {
			o.mu.Lock()
			o.calls++
			o.mu.Unlock()
		}
	}
	o.server.Start()
	t.Cleanup(o.server.Close)
	return o
}

// address gives where the way leads, by the number or the name of this machine.
func (o *outsider) address(way string, byName bool) string {
	url := o.server.URL + "/" + way
	if byName {
		url = strings.Replace(url, "127.0.0.1", "localhost", 1)
	}
	return url
}

// everyWay is a page that tries all ways at once. A base address would change the others', so it comes last.
func (o *outsider) everyWay(byName bool) string {
	var page strings.Builder
	page.WriteString(`<!doctype html><title>Reaching out</title><p>` + inside + `</p>`)
	for _, way := range slices.Sorted(maps.Keys(ways)) {
		if way != "base" {
			page.WriteString(strings.ReplaceAll(ways[way], "URL", o.address(way, byName)))
		}
	}
	page.WriteString(strings.ReplaceAll(ways["base"], "URL", o.address("base", byName)))
	return page.String()
}

// TestNothingReachesOut prints pages that try everything, beside a server that must not notice.
func TestNothingReachesOut(t *testing.T) {
	b := browser(t)
	o := newOutsider(t)
	pages := map[string]string{"all by number": o.everyWay(false), "all by name": o.everyWay(true)}
	for name, leaving := range leavings {
		pages[name] = `<!doctype html><p>` + inside + `</p>` + strings.ReplaceAll(leaving, "URL", o.address(name, false))
	}
	for name, page := range pages {
		file, err := b.PDF(context.Background(), []byte(page), Options{Paper: A5})
		if err != nil {
			t.Errorf("%s: %v", name, err)
		} else if text := words(t, file); !strings.Contains(text, inside) {
			t.Errorf("%s: what was printed is %q", name, text)
		}
		if _, err := b.Screenshot(context.Background(), []byte(page), 300, 300, 1); err != nil {
			t.Errorf("%s: %v", name, err)
		}
	}
	time.Sleep(300 * time.Millisecond) // for what goes out late
	o.mu.Lock()
	defer o.mu.Unlock()
	if o.calls > 0 {
		t.Errorf("%d connections came from the page, for %v", o.calls, slices.Sorted(maps.Keys(o.paths)))
	}
}

// TestReachingOutIsNoticed is the other half: the same page in the same browser, unprotected, does reach the server.
// Were this not so, the test above would show nothing.
func TestReachingOutIsNoticed(t *testing.T) {
	browser(t)
	o := newOutsider(t)
	o.page = o.everyWay(false)
	plainly(t, o.server.URL+"/page")
	o.mu.Lock()
	defer o.mu.Unlock()
	if len(o.paths) < 20 {
		t.Errorf("only %d ways led anywhere: %v", len(o.paths), slices.Sorted(maps.Keys(o.paths)))
	}
	for way := range ways {
		if !o.paths[way] {
			t.Logf("%s led nowhere even without protection", way)
		}
	}
}

// TestNoFiles has a page that tries to show a file that anyone may read.
func TestNoFiles(t *testing.T) {
	browser(t)
	const marker = "Marker of the house" // no letters that a font may join into one
	folder := openFolder(t)
	file := filepath.Join(folder, "marker.html")
	if err := os.WriteFile(file, []byte("<!doctype html><p>"+marker), 0o644); err != nil {
		t.Fatal(err)
	}
	url := "file://" + filepath.ToSlash(file)
	page := strings.ReplaceAll(`<!doctype html><link rel="stylesheet" href="URL"><p>`+inside+`</p><iframe src="URL"></iframe>
		<object data="URL"></object><embed src="URL"><img src="URL"><svg><use href="URL#a"/><image href="URL"/></svg>
		<style>p::after{content:url(URL)}</style><meta http-equiv="refresh" content="0;url=URL">
		<script>fetch("URL").then(r=>r.text()).then(t=>document.body.append(t))</script>`, "URL", url)
	text := words(t, printed(t, page, Options{Paper: A5}))
	if !strings.Contains(text, inside) || strings.Contains(text, marker) {
		t.Errorf("what was printed is %q", text)
	}

	// The same as a file of its own, unprotected, does show it.
	whole := filepath.Join(folder, "page.html")
	if err := os.WriteFile(whole, []byte(strings.Replace(page, "refresh", "nothing", 1)), 0o644); err != nil {
		t.Fatal(err)
	}
	if text := words(t, plainly(t, "file://"+filepath.ToSlash(whole))); !strings.Contains(text, marker) {
		t.Errorf("an unprotected browser printed only %q, so the check above shows nothing", text)
	}
}

// plainly prints an address by the browser's own command, as one would who thought of nothing.
func plainly(t *testing.T, url string) []byte {
	t.Helper()
	program, err := Find("")
	needsBrowser(t, err)
	folder := t.TempDir()
	file := filepath.Join(folder, "out.pdf")
	ctx, cancel := context.WithTimeout(context.Background(), time.Minute)
	defer cancel()
	cmd := exec.CommandContext(ctx, program, "--headless", "--no-sandbox", "--disable-gpu", "--disable-dev-shm-usage",
		"--no-first-run", "--disable-popup-blocking", "--user-data-dir="+filepath.Join(folder, "profile"),
		"--timeout=3000", "--print-to-pdf="+file, url)
	said, _ := cmd.CombinedOutput() // a page that is never done loading is printed, but called a failure
	printed, err := os.ReadFile(file)
	if err != nil {
		t.Fatalf("%v: %s", err, said)
	}
	return printed
}

// openFolder is a temporary folder that every user of the machine can read in.
func openFolder(t *testing.T) string {
	t.Helper()
	folder, err := os.MkdirTemp("", "open")
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { os.RemoveAll(folder) })
	if err := os.Chmod(folder, 0o755); err != nil {
		t.Fatal(err)
	}
	return folder
}
