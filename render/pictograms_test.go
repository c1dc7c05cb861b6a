package render

import (
	"io/fs"
	"os"
	"strings"
	"testing"
	"testing/fstest"

	"tallyfold/templates"
)

// Every pictogram that is asked for is there, is of the one style, and says in the file
// what it shows; in the page it has neither title nor name, as words stand beside it.
func TestPictogramsAreOfOneStyle(t *testing.T) {
	files, err := fs.Glob(os.DirFS("../templates/pictograms"), "*.svg")
	if err != nil || len(files) == 0 {
		t.Fatal("there are no pictograms")
	}
	asked := []string{"cue", "bag", "warm", "cool"}
	for _, sign := range signs {
		asked = append(asked, strings.TrimPrefix(sign, "sign-"))
	}
	for _, name := range factPictograms {
		asked = append(asked, name)
	}
	w := &writer{booklet: bookletOf(t, "")}
	for _, name := range asked {
		if drawn := w.pictogram(name); !strings.HasPrefix(drawn, `<svg class="pictogram" aria-hidden="true"`) || strings.Contains(drawn, "<title") {
			t.Errorf("the pictogram %s is drawn as %q", name, drawn)
		}
	}
	for _, file := range files {
		text, err := os.ReadFile("../templates/pictograms/" + file)
		if err != nil {
			t.Fatal(err)
		}
		for _, style := range []string{`viewBox="0 0 24 24"`, `fill="none"`, `stroke="currentColor"`, `stroke-width="1.7"`, `stroke-linecap="round"`, "<title>"} {
			if !strings.Contains(string(text), style) {
				t.Errorf("%s lacks %s", file, style)
			}
		}
		found := false
		for _, name := range asked {
			found = found || name+".svg" == file
		}
		if !found {
			t.Errorf("nobody asks for %s", file)
		}
	}
}

// A maker's own pictogram is cleaned; one that would reach the whole page is left out.
func TestMakersPictograms(t *testing.T) {
	booklet := bookletOf(t, "")
	booklet.templates = templates.Shipped().Over(fstest.MapFS{
		"pictograms/work.svg": {Data: []byte(`<svg xmlns="http://www.w3.org/2000/svg" onload="alert(1)"><path d="M0 0"/><script>alert(2)</script></svg>`)},
		"pictograms/wait.svg": {Data: []byte(`<svg xmlns="http://www.w3.org/2000/svg"><style>* { display: none }</style></svg>`)},
		"pictograms/cue.svg":  {Data: []byte("no drawing")},
	})
	if got := booklet.drawPictogram("work"); !strings.Contains(got, `<path d="M0 0">`) || strings.Contains(got, "alert") {
		t.Errorf("it is drawn as %q", got)
	}
	for _, none := range []string{"wait", "cue", "nothing"} {
		if got := booklet.drawPictogram(none); got != "" {
			t.Errorf("%s is drawn as %q", none, got)
		}
	}
}

// The words of each language bring their signs; whole words only.
func TestSignsInEveryLanguage(t *testing.T) {
	for language, text := range map[string]string{
		"en": "Wear mitts.", "de": "Trag Ofenhandschuhe.", "fr": "Mettez des gants.", "es": "Ponte guantes.",
		"nl": "Draag ovenwanten.", "it": "Mettete i guanti.", "ar": "ارتد القفازات.",
	} {
		words, err := templates.Shipped().Words(language)
		if err != nil {
			t.Fatal(err)
		}
		booklet := bookletOf(t, "")
		booklet.words = words
		w := &writer{booklet: booklet}
		if got := w.signsOf(text, cautionSigns, 3); got != w.pictogram("gloves") {
			t.Errorf("%s: %q has the signs %q", language, text, got)
		}
	}
	w := &writer{booklet: bookletOf(t, "")}
	if got := w.signsOf("Windowsill, childish, scaled.", signs, 6); got != "" {
		t.Errorf("parts of words bring %q", got)
	}
}
