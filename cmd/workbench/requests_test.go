package workbench

import (
	"bytes"
	"encoding/json"
	"io"
	"net/http"
	"net/http/httptest"
	"net/url"
	"os"
	"strings"
	"testing"
)

// ask sends a request to the handler as a program would, with the headers given.
func (b *bench) ask(method, path, body string, headers map[string]string) *http.Response {
	b.Helper()
	in := httptest.NewRequest(method, "http://"+b.host+"/", strings.NewReader(body))
	in.Host = b.host
	at, err := url.Parse(path)
	if err != nil {
		b.Fatal(err)
	}
	in.URL = at
	for name, value := range headers {
		if name == "Host" {
			in.Host = value
			continue
		}
		in.Header.Set(name, value)
	}
	out := httptest.NewRecorder()
	b.Handler(b.host).ServeHTTP(out, in)
	return out.Result()
}

// ours are the headers of a request that our own page sends.
func (b *bench) ours() map[string]string {
	_, port, _ := strings.Cut(b.host, ":")
	return map[string]string{"Cookie": "tallyfold-" + port + "=" + b.key, "Origin": "http://" + b.host, "Sec-Fetch-Site": "same-origin", "Content-Type": "application/json"}
}

// order has something done to a kit.
func (b *bench) order(kit string, asked order) answer {
	b.Helper()
	body, err := json.Marshal(asked)
	if err != nil {
		b.Fatal(err)
	}
	response := b.ask("POST", "/kit/"+url.PathEscape(kit)+"/change", string(body), b.ours())
	text, err := io.ReadAll(response.Body)
	if err != nil || response.StatusCode != http.StatusOK {
		b.Fatalf("%s %.200s: %d %.300s %v", asked.Act, body, response.StatusCode, text, err)
	}
	var said answer
	if err := json.Unmarshal(text, &said); err != nil {
		b.Fatal(err)
	}
	return said
}

// value is what a field holds now.
func (b *bench) value(kit string, path ...string) string {
	b.Helper()
	d, err := b.desk(kit)
	if err != nil {
		b.Fatal(err)
	}
	d.lock.Lock()
	defer d.lock.Unlock()
	text, err := d.read("kit.yaml")
	if err != nil {
		b.Fatal(err)
	}
	value, _ := valueAt(text.Typed, path)
	return value
}

func TestOnlyOurOwnPageIsLetIn(t *testing.T) {
	b := newBench(t, "drawer-sachets")
	before := b.file("drawer-sachets/kit.yaml")
	change := `{"Act":"set","Path":["name"],"Value":"Stolen","Was":"Drawer sachets"}`
	with := func(name, value string) map[string]string {
		headers := b.ours()
		if value == "" {
			delete(headers, name)
		} else {
			headers[name] = value
		}
		return headers
	}
	_, port, _ := strings.Cut(b.host, ":")
	for name, headers := range map[string]map[string]string{
		"another name for this machine":      with("Host", "evil.example"),
		"another name with our port":         with("Host", "evil.example:"+port),
		"our address at another port":        with("Host", "127.0.0.1:1"),
		"no host":                            with("Host", "x"),
		"a page from elsewhere":              with("Origin", "http://evil.example"),
		"a page of another port":             with("Origin", "http://127.0.0.1:1"),
		"a page that hides where it is from": with("Origin", "null"),
		"a page over https":                  with("Origin", "https://"+b.host),
		"no word of where it is from":        with("Origin", ""),
		"a cross-site request":               with("Sec-Fetch-Site", "cross-site"),
		"a request of the same site":         with("Sec-Fetch-Site", "same-site"),
		"no key":                             with("Cookie", ""),
		"a wrong key":                        with("Cookie", "tallyfold-"+port+"=AAAAAAAAAAAAAAAAAAAAAAAAAA"),
		"the key of another port":            with("Cookie", "tallyfold-1="+b.key),
	} {
		response := b.ask("POST", "/kit/drawer-sachets/change", change, headers)
		if response.StatusCode != http.StatusForbidden {
			t.Errorf("%s: the answer is %d", name, response.StatusCode)
		}
	}
	if response := b.ask("GET", "/open?key=wrong", "", map[string]string{}); response.StatusCode != http.StatusForbidden {
		t.Errorf("a wrong key opens: %d", response.StatusCode)
	}
	if response := b.ask("GET", "/kit/drawer-sachets/change", "", b.ours()); response.StatusCode == http.StatusOK {
		t.Errorf("something is changed by looking: %d", response.StatusCode)
	}
	if after := b.file("drawer-sachets/kit.yaml"); after != before {
		t.Error("kit.yaml has changed")
	}
	if response := b.ask("POST", "/kit/drawer-sachets/change", change, b.ours()); response.StatusCode != http.StatusOK {
		t.Errorf("our own page is turned away: %d", response.StatusCode)
	}
}

func TestEveryAnswerKeepsTheOutsideOut(t *testing.T) {
	b := newBench(t, "drawer-sachets")
	for _, path := range append(everyPage("drawer-sachets"), "/page/workbench.js", "/fonts/text-regular-latin.woff2", "/kit/drawer-sachets/booklet.html", "/kit/drawer-sachets/empty.html",
		"/kit/drawer-sachets/labels.html?kind=bags", "/kit/drawer-sachets/text/method.md") {
		response := b.ask("GET", path, "", b.ours())
		policy := response.Header.Get("Content-Security-Policy")
		for _, wanted := range []string{"default-src 'none'", "base-uri 'none'", "frame-ancestors"} {
			if !strings.Contains(policy, wanted) {
				t.Errorf("%s: the policy lacks %s: %s", path, wanted, policy)
			}
		}
		if strings.Contains(policy, "script-src") && strings.Contains(policy, "unsafe") || strings.Contains(policy, "http:") || strings.Contains(policy, "*") {
			t.Errorf("%s: the policy lets in %s", path, policy)
		}
		for name, value := range map[string]string{"X-Content-Type-Options": "nosniff", "Cross-Origin-Resource-Policy": "same-origin", "Cross-Origin-Opener-Policy": "same-origin"} {
			if got := response.Header.Get(name); got != value {
				t.Errorf("%s: %s is %q", path, name, got)
			}
		}
		if response.Header.Get("Access-Control-Allow-Origin") != "" {
			t.Errorf("%s can be read by other pages", path)
		}
	}
}

// No address leads out of the folder, whatever is written in it.
func TestNoWayOut(t *testing.T) {
	b := newBench(t, "drawer-sachets")
	if err := os.WriteFile(b.folder+"/secret.md", []byte("SECRET"), 0o644); err != nil {
		t.Fatal(err)
	}
	if err := os.Symlink(b.folder+"/secret.md", b.folder+"/drawer-sachets/trouble.md"); err == nil {
		defer os.Remove(b.folder + "/drawer-sachets/trouble.md")
	}
	if err := os.Symlink(b.folder+"/secret.md", b.folder+"/drawer-sachets/pictures/secret.png"); err != nil {
		t.Log(err)
	}
	tricks := []string{
		"/kit/..%2F..%2Fetc/box", "/kit/../secret.md", "/kit/%2e%2e/box", "/kit/drawer-sachets/text/..%2Fsecret.md", "/kit/drawer-sachets/text/%2e%2e%2fsecret.md",
		"/kit/drawer-sachets/text/..%5Csecret.md", "/kit/drawer-sachets/text/.tallyfold", "/kit/drawer-sachets/text/trouble.md", "/kit/drawer-sachets/pictures/secret.png",
		"/kit/drawer-sachets/pictures/..%2F..%2Fsecret.md", "/kit/drawer-sachets/pictures/..%2Fkit.yaml", "/page/../workbench.go", "/page/..%2Fdoor.go", "/page/frame.html",
		"/page/editor/package.json", "/fonts/..%2Fbook.css", "/fonts/OFL-text.txt", "/kit/drawer-sachets/made/..%2Fkit.yaml", "/kit/drawer-sachets/method?file=../secret.md",
		"/kit/drawer-sachets/method?file=/etc/passwd", "/kit/drawer-sachets/earlier?file=..%2Fsecret.md&state=../../secret", "/kit/drawer-sachets/clash?file=../secret.md",
		"/kit//box", "/kit/%00/box", "/kit/drawer-sachets/text/%00.md",
	}
	for _, path := range tricks {
		at, err := url.Parse(path)
		if err != nil {
			t.Fatal(err)
		}
		in := httptest.NewRequest("GET", "http://"+b.host+"/", nil)
		in.URL, in.Host = at, b.host
		for name, value := range b.ours() {
			in.Header.Set(name, value)
		}
		out := httptest.NewRecorder()
		b.Handler(b.host).ServeHTTP(out, in)
		if text := out.Body.String(); strings.Contains(text, "SECRET") || strings.Contains(text, "root:") || strings.Contains(text, "package workbench") || out.Code == http.StatusInternalServerError {
			t.Errorf("%s: %d %.200s", path, out.Code, text)
		}
	}
	for _, name := range []string{"../secret.md", "/etc/x.md", "..\\secret.md", ".tallyfold/x.md", "a/b.md", "", "x.sh", "C:\\x.md"} {
		if said := b.order("drawer-sachets", order{Act: "type", File: name, Text: "gone"}); said.Wrong == "" {
			t.Errorf("%q is typed into", name)
		}
	}
	if text := b.file("secret.md"); text != "SECRET" {
		t.Errorf("the file outside is %q now", text)
	}
}

// Pictures are looked at before they are unpacked, and only what can be printed is kept.
func TestPicturesAreBounded(t *testing.T) {
	b := newBench(t, "drawer-sachets")
	bomb := []byte("\x89PNG\r\n\x1a\n\x00\x00\x00\rIHDR\x00\x01\x00\x00\x00\x01\x00\x00\x08\x06\x00\x00\x00")
	for name, data := range map[string][]byte{
		"bomb.png": bomb, "page.png": []byte("<script>alert(1)</script>"), "page.html": []byte("<svg xmlns='http://www.w3.org/2000/svg'/>"), "none.jpg": nil,
	} {
		if response := b.ask("POST", "/kit/drawer-sachets/pictures/"+name, string(data), b.ours()); response.StatusCode == http.StatusOK {
			t.Errorf("%s is kept", name)
		}
	}
	good := onePicture(t)
	for range 2 { // of one name, neither is written over
		response := b.ask("POST", "/kit/drawer-sachets/pictures/"+url.PathEscape("../../My Picture!.PNG"), string(good), b.ours())
		if text, _ := io.ReadAll(response.Body); response.StatusCode != http.StatusOK || !strings.HasPrefix(string(text), "my-picture") {
			t.Errorf("a picture is answered with %d %s", response.StatusCode, text)
		}
	}
	for _, name := range []string{"my-picture.png", "my-picture-2.png"} {
		if got := b.file("drawer-sachets/pictures/" + name); !bytes.Equal([]byte(got), good) {
			t.Errorf("%s is another picture", name)
		}
	}
	large := strings.Repeat("x", largestBody+1)
	if response := b.ask("POST", "/kit/drawer-sachets/pictures/large.png", large, b.ours()); response.StatusCode != http.StatusRequestEntityTooLarge {
		t.Errorf("25 MB are answered with %d", response.StatusCode)
	}
}
