package workbench

import (
	"net/http"
	"net/url"
	"strings"
	"testing"

	"tallyfold/examples"
)

// Kits and things may be called in any script. What they are called stands in kit.yaml; the
// folder and the keys are plain letters.
func TestNamesInAnyScript(t *testing.T) {
	b := newBench(t)
	form := b.ours()
	form["Content-Type"] = "application/x-www-form-urlencoded"
	for wished, folder := range map[string]string{
		"窓辺の灯り": "kit", "Crème № 2": "creme-2", "1,000 Kränze": "1-000-kranze", "“Quay”: sachets # 3": "quay-sachets-3",
	} {
		response := b.ask("POST", "/new", url.Values{"name": {wished}, "like": {examples.Starter}}.Encode(), form)
		if at := response.Header.Get("Location"); response.StatusCode != http.StatusSeeOther || at != "/kit/"+folder+"/box" {
			t.Errorf("%s: %d, %q", wished, response.StatusCode, at)
			continue
		}
		if called := b.value(folder, "name"); called != wished {
			t.Errorf("%s is called %s", wished, called)
		}
	}
	if response := b.ask("POST", "/new", url.Values{"name": {"灯り"}, "like": {examples.Starter}}.Encode(), form); response.Header.Get("Location") != "/kit/kit-2/box" {
		t.Errorf("the second goes to %q", response.Header.Get("Location"))
	}
	for _, name := range []string{"香り玉", "蜜蝋", "Box", strings.Repeat("very long ", 9) + "wax"} {
		if said := b.order("kit", order{Act: "add", Page: "box", Path: []string{"components"}, Name: name}); said.Wrong != "" {
			t.Errorf("%s: %s", name, said.Wrong)
		}
	}
	for key, name := range map[string]string{"thing": "香り玉", "thing-2": "蜜蝋", "the-box": "Box"} {
		if called := b.value("kit", "components", key, "name"); called != name {
			t.Errorf("%s is called %q, not %s", key, called, name)
		}
	}
	// Headings become steps, with a name of their own.
	d, err := b.desk("kit")
	if err != nil {
		t.Fatal(err)
	}
	d.lock.Lock()
	text, err := d.read("method.md")
	if err == nil {
		_, err = d.put("method.md", append(text.Typed, "\n## 香り\n\n## Mix: again\n"...), text.TypedPrint)
	}
	d.lock.Unlock()
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct{ title, settings, link string }{
		{"香り", "", "## [香り](step:step)"}, {"Mix: again", "?in=bowl", "## [Mix: again](step:mix-again?in=bowl)"},
	} {
		now := b.typed("kit", "method.md")
		at := strings.LastIndex(now, c.title)
		said := b.order("kit", order{Act: "link", Page: "method", File: "method.md", Was: c.title, Value: c.title, Destination: "step:" + c.settings,
			Start: inEditor([]byte(now), at), End: inEditor([]byte(now), at+len(c.title))})
		if now = b.typed("kit", "method.md"); said.Wrong != "" || !strings.Contains(now, c.link) {
			t.Errorf("%s: %s\n%s", c.title, said.Wrong, now)
		}
	}
	if said := b.order("kit", order{Act: "add", Page: "box", Path: []string{"components"}, Name: " "}); said.Wrong == "" {
		t.Error("a thing without a name is taken")
	}
}
