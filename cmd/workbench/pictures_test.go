package workbench

import (
	"io"
	"net/http"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// A picture is chosen in a card, and another dropped on one: both go into the folder, and the
// list of the box shows them. One that is none is refused beside the field.
func TestPicturesOfTheBox(t *testing.T) {
	b := newBench(t, "drawer-sachets")
	w := b.open("/kit/drawer-sachets/box")
	w.size(1400, 1000)
	chosen := filepath.Join(t.TempDir(), "Lavender buds.PNG")
	if err := os.WriteFile(chosen, onePicture(t), 0o644); err != nil {
		t.Fatal(err)
	}
	file, err := w.page.Timeout(patience).Element(`[id="f-components.lavender.picture-file"]`)
	w.must(err)
	w.must(file.SetFiles([]string{chosen}))
	shows := `selector => { const shown = document.querySelector(selector); shown?.scrollIntoView({block: "center"}); return shown?.naturalWidth > 0 }`
	w.wait("the picture in its card", shows, "[id='f-components.lavender.picture'] img")
	b.until("its name in kit.yaml", func() bool {
		return strings.Contains(b.file("drawer-sachets/kit.yaml"), "picture: lavender-buds.png\n")
	})

	// Dropped on the closed card of a tool, whose form does not show the field yet.
	drop := `(selector, name, text) => { const files = new DataTransfer(); files.items.add(new File([text], name)); const card = document.querySelector(selector)
		for (const type of ["dragover", "drop"]) card.querySelector("summary").dispatchEvent(new DragEvent(type, { dataTransfer: files, bubbles: true, cancelable: true })) }`
	w.eval(drop, `[id="f-tools.wooden-scoop"]`, "scoop.svg", `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 9 9"><script>alert(1)</script><circle cx="4" cy="4" r="3" onclick="alert(2)"/></svg>`)
	w.wait("the drawing in its card", shows, "[id='f-tools.wooden-scoop.picture'] img")
	b.until("its name there", func() bool { return strings.Contains(b.file("drawer-sachets/kit.yaml"), "picture: scoop.svg") })
	w.look("pictures")

	w.eval(drop, `[id="f-components.peel"]`, "peel.jpg", "no picture at all")
	w.sees(`[id="f-components.peel.picture-wrong"]`, "no picture that can be printed")
	// What the page tells stays while it looks anew for other reasons.
	b.replaceIn("drawer-sachets/kit.yaml", "Brindle Quay Workroom", "Another Workroom")
	w.wait("the other name", `() => document.getElementById("f-maker-in").value === "Another Workroom"`)
	w.sees(`[id="f-components.peel.picture-wrong"]`, "no picture that can be printed")

	// The booklet has both in its list.
	html, err := io.ReadAll(b.ask("GET", "/kit/drawer-sachets/made/booklet.html", "", b.ours()).Body)
	if shown := strings.Count(string(html), `<td><img alt="" src="data:image/`); err != nil || shown != 2 {
		t.Errorf("the list of the box shows %d pictures, and has two; %v", shown, err)
	}
	// Of the drawing only what draws is handed out.
	response := b.ask("GET", "/kit/drawer-sachets/pictures/scoop.svg", "", b.ours())
	text, err := io.ReadAll(response.Body)
	if err != nil || response.StatusCode != http.StatusOK || !strings.Contains(string(text), "<circle") || strings.Contains(string(text), "alert") {
		t.Errorf("%d %s %v", response.StatusCode, text, err)
	}
	if policy := response.Header.Get("Content-Security-Policy"); !strings.HasPrefix(policy, "default-src 'none'") {
		t.Errorf("its policy is %q", policy)
	}
	w.fine()
}
