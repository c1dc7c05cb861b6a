package render

import (
	"bytes"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/google/go-cmp/cmp"

	"tallyfold/instructions"
	"tallyfold/kit/ledger"
	"tallyfold/templates"
)

// exampleFolders are the kits that come with the program.
func exampleFolders(t *testing.T) []string {
	t.Helper()
	folders, err := filepath.Glob("../examples/*/kit.yaml")
	if err != nil || len(folders) == 0 {
		t.Fatalf("no examples found: %v", err)
	}
	for i, file := range folders {
		folders[i] = filepath.Dir(file)
	}
	return folders
}

func bookletIn(t *testing.T, folder fs.FS, name string) *Booklet {
	t.Helper()
	k, found := instructions.Open(folder, name)
	if k == nil {
		t.Fatalf("%s can't be read: %v", name, found)
	}
	booklet, err := Assemble(k, ledger.Follow(k), templates.Shipped(), Options{})
	if err != nil {
		t.Fatal(err)
	}
	return booklet
}

// The booklets of the examples, kept word for word: the Markdown, and the HTML
// without its style sheet. UPDATE_GOLDEN=1 writes them anew; read what changed.
func TestExampleBooklets(t *testing.T) {
	for _, folder := range exampleFolders(t) {
		name := filepath.Base(folder)
		t.Run(name, func(t *testing.T) {
			booklet := bookletIn(t, os.DirFS(folder), name)
			compareGolden(t, name+".md", booklet.Markdown)
			body := booklet.body()
			compareGolden(t, name+".html", []byte(body))
			page, err := booklet.HTML()
			if err != nil {
				t.Fatal(err)
			}
			checkPage(t, string(page))
			checkReferences(t, body)
			for _, unsaid := range []string{"cannot tell", "[step", "<no value>"} {
				if strings.Contains(body, unsaid) {
					t.Errorf("the booklet says %q", unsaid)
				}
			}
		})
	}
}

func compareGolden(t *testing.T, name string, got []byte) {
	t.Helper()
	file := filepath.Join("testdata", name)
	if os.Getenv("UPDATE_GOLDEN") != "" {
		if err := os.MkdirAll("testdata", 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(file, got, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(got, want) {
		t.Errorf("%s differs (UPDATE_GOLDEN=1 writes it anew):\n%s", file, cmp.Diff(strings.Split(string(want), "\n"), strings.Split(string(got), "\n")))
	}
}

// checkReferences fails where a link leads to a place that isn't in the booklet.
func checkReferences(t *testing.T, body string) {
	t.Helper()
	links := strings.Split(body, `href="#`)[1:]
	if len(links) == 0 {
		t.Error("the booklet has no contents")
	}
	for _, link := range links {
		id, _, _ := strings.Cut(link, `"`)
		if !strings.Contains(body, ` id="`+id+`"`) {
			t.Errorf("a link leads to %q, which isn't there", id)
		}
	}
}

// A number is written once: one changed amount changes every place that tells
// it, and leaves the old one nowhere.
func TestChangedAmountChangesEverywhere(t *testing.T) {
	folder := copyOf(t, "../examples/harbour-candles")
	method := string(folder["method.md"].Data)
	if strings.Count(method, "550 g") != 2 {
		t.Fatal("the example no longer tells 550 g twice")
	}
	folder["method.md"].Data = []byte(strings.NewReplacer("550 g (1 lb 3 1/2 oz)", "530 g", "550 g", "530 g").Replace(method))
	changed := string(bookletIn(t, folder, "harbour-candles").Markdown)
	if strings.Contains(changed, "550") {
		t.Error("the old amount still stands in the booklet")
	}
	// The table of the step, its text, the figure told again, the page of notes.
	if got := strings.Count(changed, "530 g"); got != 4 {
		t.Errorf("the new amount stands in %d places, want 4", got)
	}
}

// The steps may use the other names of a thing, so its list tells them.
func TestOtherNamesStandInTheLists(t *testing.T) {
	folder := copyOf(t, "../examples/harbour-candles")
	folder["kit.yaml"].Data = []byte(strings.NewReplacer(
		"name: Soy wax flakes\n", "name: Soy wax flakes\n    also called: [candle grain, soya wax]\n",
		"name: Tap water,", "name: Tap water, also called: cold water,").Replace(string(folder["kit.yaml"].Data)))
	booklet := string(bookletIn(t, folder, "harbour-candles").Markdown)
	for _, line := range []string{"Soy wax flakes *Also called candle grain, soya wax.*", "Tap water *Also called cold water. It fills the pan"} {
		if !strings.Contains(booklet, line) {
			t.Errorf("%q does not stand in the booklet", line)
		}
	}
}

func copyOf(t *testing.T, folder string) fstest.MapFS {
	t.Helper()
	copied := fstest.MapFS{}
	err := filepath.WalkDir(folder, func(path string, entry fs.DirEntry, err error) error {
		if err != nil || entry.IsDir() {
			return err
		}
		name, err := filepath.Rel(folder, path)
		if err != nil {
			return err
		}
		data, err := os.ReadFile(path)
		copied[filepath.ToSlash(name)] = &fstest.MapFile{Data: data}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return copied
}

// Every caution of an example stands before the steps and again at its step.
func TestNoCautionIsLost(t *testing.T) {
	for _, folder := range exampleFolders(t) {
		name := filepath.Base(folder)
		k, _ := instructions.Open(os.DirFS(folder), name)
		if k == nil {
			t.Fatalf("%s can't be read", name)
		}
		body := bookletIn(t, os.DirFS(folder), name).body()
		for _, step := range k.Method.Steps() {
			for _, caution := range step.Cautions {
				first := strings.Fields(strings.ReplaceAll(caution.Text, "'", "’"))[:3]
				if got := strings.Count(body, "<p>"+strings.Join(first, " ")); got < 2 {
					t.Errorf("%s: the caution %q stands in %d places", name, caution.Text, got)
				}
			}
		}
	}
}

// One booklet, from the kit in memory to the finished HTML.
func BenchmarkBooklet(b *testing.B) {
	folder := "../examples/harbour-candles"
	k, _ := instructions.Open(os.DirFS(folder), filepath.Base(folder))
	if k == nil {
		b.Fatal("the example can't be read")
	}
	l := ledger.Follow(k)
	for b.Loop() {
		booklet, err := Assemble(k, l, templates.Shipped(), Options{})
		if err != nil {
			b.Fatal(err)
		}
		if _, err := booklet.HTML(); err != nil {
			b.Fatal(err)
		}
	}
}
