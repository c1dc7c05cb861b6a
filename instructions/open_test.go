package instructions

import (
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/google/go-cmp/cmp"

	"tallyfold/kit/diag"
)

const oneStep = "## [Warm the water](step:warm?in=pan)\n\nWarm [570 g of water](take:water) [to 80 °C](warm:).\n"

const png = "\x89PNG\r\n\x1a\n"

func folder(files map[string]string) fstest.MapFS {
	f := fstest.MapFS{}
	for name, content := range files {
		f[name] = &fstest.MapFile{Data: []byte(content)}
	}
	return f
}

// filesTold shows findings as lines: rule and file.
func filesTold(found diag.List) string {
	var lines []string
	for _, f := range found {
		name := ""
		if f.Where.Known() {
			name = f.Where.File.Name
		}
		lines = append(lines, f.Rule+" "+name)
	}
	return strings.Join(lines, " | ")
}

func TestOpen(t *testing.T) {
	k, found := Open(folder(map[string]string{
		"kit.yaml":              gels,
		"method.md":             oneStep,
		"trouble.md":            "## [Water on top](trouble:weeping)\n\nPour it off.\n",
		"words.md":              "# Words\n\n## Welcome\n\nGood day.\n",
		"pictures/pan.png":      png,
		"pictures/drawing.svg":  "<?xml version='1.0'?>\n<!-- ours -->\n<svg viewBox='0 0 1 1'></svg>",
		"pictures/.DS_Store":    "x",
		"pictures/original.psd": "8BPS",
		"packing/2026.yaml":     "",
	}), "quayside")
	if want, got := "not-a-picture pictures/original.psd", filesTold(found); got != want {
		t.Errorf("findings: %s, want %s\n%v", got, want, found)
	}
	if k == nil {
		t.Fatal("no kit")
	}
	if k.Folder != "quayside" || len(k.Method.Steps()) != 1 || k.Trouble("weeping") == nil || k.WordsAbout("welcome") == nil {
		t.Errorf("read %+v", k)
	}
	if len(k.Words) != 1 {
		t.Errorf("the title of words.md is no section: %v", k.Words)
	}
	var names []string
	for _, p := range k.Pictures {
		names = append(names, p.Name)
		if int(p.Size) != len(p.Data) || p.Size == 0 {
			t.Errorf("%s: %d bytes, size %d", p.Name, len(p.Data), p.Size)
		}
	}
	if diff := cmp.Diff([]string{"drawing.svg", "pan.png"}, names); diff != "" {
		t.Error(diff)
	}
}

// Each file that is missing or can't be read is a finding that names it.
func TestOpenBroken(t *testing.T) {
	for _, test := range []struct {
		why    string
		files  map[string]string
		noKit  bool
		want   string
		remedy string
	}{
		{"an empty folder", nil, true, "missing-file kit.yaml | missing-file method.md", "write it: a kit needs a kit.yaml, which says what is in the box, and a method.md with the steps"},
		{"no definition", map[string]string{"method.md": oneStep}, true, "missing-file kit.yaml", ""},
		{"no method", map[string]string{"kit.yaml": gels}, false, "missing-file method.md", ""},
		{"called a little otherwise", map[string]string{"Kit.YML": gels, "method.md": oneStep}, true, "missing-file kit.yaml", "rename Kit.YML to kit.yaml"},
		{"capital letters", map[string]string{"kit.yaml": gels, "METHOD.md": oneStep}, false, "missing-file method.md", "rename METHOD.md to method.md"},
		{"troubles that nobody would read", map[string]string{"kit.yaml": gels, "method.md": oneStep, "troubles.md": ""}, false, "misnamed-file troubles.md", "rename it to trouble.md"},
		{"a method too long", map[string]string{"kit.yaml": gels, "method.md": oneStep + strings.Repeat("word ", maxText/5)}, false, "refused-file method.md", "make it smaller"},
		{"a definition too long", map[string]string{"kit.yaml": strings.Repeat("#", maxDefinition+1), "method.md": oneStep}, true, "refused-file kit.yaml", "make it smaller"},
		{"no text", map[string]string{"kit.yaml": gels, "method.md": oneStep + "\xff"}, false, "refused-file method.md", ""},
		{"NUL", map[string]string{"kit.yaml": gels, "method.md": oneStep + "\x00"}, false, "refused-file method.md", ""},
		{"a line end that editors count differently", map[string]string{"kit.yaml": gels, "method.md": oneStep + "a\u2028b"}, false, "refused-file method.md", ""},
		{"nested beyond reading", map[string]string{"kit.yaml": gels, "method.md": oneStep, "trouble.md": strings.Repeat("> ", maxNesting+1) + "x"}, false, "refused-file trouble.md", ""},
		{"nested by lists", map[string]string{"kit.yaml": gels, "method.md": oneStep, "words.md": strings.Repeat("1. ", maxNesting+1) + "x"}, false, "refused-file words.md", ""},
		{"nothing but brackets", map[string]string{"kit.yaml": gels, "method.md": oneStep, "words.md": strings.Repeat("[", maxBrackets+1)}, false, "refused-file words.md", ""},
		{"a file called pictures", map[string]string{"kit.yaml": gels, "method.md": oneStep, "pictures": "x"}, false, "refused-file pictures", ""},
		{"a folder in pictures", map[string]string{"kit.yaml": gels, "method.md": oneStep, "pictures/old/pan.png": png}, false, "not-a-picture pictures/old", ""},
		{"text that is called a picture", map[string]string{"kit.yaml": gels, "method.md": oneStep, "pictures/pan.png": "pan"}, false, "not-a-picture pictures/pan.png", ""},
	} {
		t.Run(test.why, func(t *testing.T) {
			k, found := Open(folder(test.files), "quayside")
			if (k == nil) != test.noKit {
				t.Errorf("kit: %v", k)
			}
			if diff := cmp.Diff(test.want, filesTold(found)); diff != "" {
				t.Fatalf("%s\n%v", diff, found)
			}
			if test.remedy != "" && found[0].Remedies[0].Do != test.remedy {
				t.Errorf("remedy %q, want %q", found[0].Remedies[0].Do, test.remedy)
			}
		})
	}
}

// A link could lead anywhere on the maker's machine, and out of the folder that
// is copied and sold; a pipe may never end.
func TestOpenLinksAndPipes(t *testing.T) {
	secret := filepath.Join(t.TempDir(), "secret")
	write(t, secret, "a secret")
	dir := t.TempDir()
	write(t, filepath.Join(dir, "kit.yaml"), gels)
	for _, link := range []string{"method.md", "trouble.md", "pictures"} {
		if err := os.Symlink(secret, filepath.Join(dir, link)); err != nil {
			t.Fatal(err)
		}
	}
	if err := os.Mkdir(filepath.Join(dir, "words.md"), 0o755); err != nil {
		t.Fatal(err)
	}
	k, found := Open(os.DirFS(dir), "quayside")
	want := "refused-file method.md | refused-file pictures | refused-file trouble.md | refused-file words.md"
	if got := filesTold(found); got != want {
		t.Errorf("findings: %s, want %s", got, want)
	}
	if k == nil || len(k.Method.Parts) != 0 || k.Troubles != nil || k.Pictures != nil {
		t.Errorf("something was read: %+v", k)
	}
}

func write(t *testing.T, name, content string) {
	t.Helper()
	if err := os.WriteFile(name, []byte(content), 0o644); err != nil {
		t.Fatal(err)
	}
}

// lockedFS is a folder in which one file may not be opened.
type lockedFS struct {
	fstest.MapFS
	locked string
}

func (f lockedFS) Open(name string) (fs.File, error) {
	if name == f.locked {
		return nil, &fs.PathError{Op: "open", Path: name, Err: fs.ErrPermission}
	}
	return f.MapFS.Open(name)
}

func TestOpenWithoutPermission(t *testing.T) {
	for _, locked := range []string{"kit.yaml", "method.md", "trouble.md", "pictures/pan.png"} {
		files := folder(map[string]string{"kit.yaml": gels, "method.md": oneStep, "trouble.md": "", "pictures/pan.png": png})
		_, found := Open(lockedFS{files, locked}, "quayside")
		if got, want := filesTold(found), "refused-file "+locked; got != want {
			t.Errorf("findings: %s, want %s", got, want)
			continue
		}
		if !strings.Contains(found[0].Found, "permission denied") {
			t.Errorf("%s: %s", locked, found[0].Found)
		}
	}
}

// Pictures are limited one by one and together.
func TestOpenManyPictures(t *testing.T) {
	files := folder(map[string]string{"kit.yaml": gels, "method.md": oneStep})
	for i := range maxPictures + 5 {
		files["pictures/"+strings.Repeat("a", i+1)+".png"] = &fstest.MapFile{Data: []byte(png)}
	}
	files["pictures/AA.png"] = &fstest.MapFile{Data: append([]byte(png), make([]byte, maxPicture)...)}
	k, found := Open(files, "quayside")
	if got, want := filesTold(found), "refused-file pictures/AA.png | refused-file pictures"; got != want {
		t.Errorf("findings: %s, want %s", got, want)
	}
	if len(k.Pictures) != maxPictures {
		t.Errorf("%d pictures", len(k.Pictures))
	}
}
