package load

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"tallyfold/kit/diag"
	"tallyfold/kit/source"
)

// TestBroken reads one file for each way a kit.yaml can be broken, and compares
// everything that is found, and where, with the file beside it.
func TestBroken(t *testing.T) {
	files, err := filepath.Glob("testdata/broken/*.yaml")
	if err != nil || len(files) == 0 {
		t.Fatal("no broken files:", err)
	}
	for _, path := range files {
		t.Run(strings.TrimSuffix(filepath.Base(path), ".yaml"), func(t *testing.T) {
			text, err := os.ReadFile(path)
			if err != nil {
				t.Fatal(err)
			}
			if !strings.Contains(string(text), "# ") {
				t.Error("the file does not say why it is here")
			}
			k, found := Kit(source.NewFile("kit.yaml", text))
			if len(found) == 0 {
				t.Error("nothing found in a broken file")
			}
			first, _, _ := strings.Cut(filepath.Base(path), "-")
			if refused := first == "unreadable" || first == "refused"; refused != (k == nil) {
				t.Errorf("refused whole: %v", k == nil)
			}
			compareGolden(t, strings.TrimSuffix(path, ".yaml")+".want", tell(found))
		})
	}
}

// compareGolden compares got with a file, or writes the file with UPDATE_GOLDEN=1.
func compareGolden(t *testing.T, path, got string) {
	t.Helper()
	if os.Getenv("UPDATE_GOLDEN") == "1" {
		if err := os.WriteFile(path, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	want, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if difference := cmp.Diff(string(want), got); difference != "" {
		t.Error(difference)
	}
}

// tell writes findings in full, with the bytes they point at.
func tell(found diag.List) string {
	var b strings.Builder
	for _, f := range found {
		at := f.Where.Position()
		fmt.Fprintf(&b, "%d:%d %s", at.Line, at.Column, f.Rule)
		if f.About != "" {
			fmt.Fprintf(&b, " (%s)", f.About)
		}
		fmt.Fprintf(&b, "\n  at:       %q\n  found:    %s\n  expected: %s\n", f.Where.Text(), f.Found, f.Expected)
		for _, r := range f.Remedies {
			fmt.Fprintf(&b, "  fix:      %s\n", r.Do)
		}
		for _, p := range f.Also {
			at := p.Where.Position()
			fmt.Fprintf(&b, "  also:     %d:%d %q %s\n", at.Line, at.Column, p.Where.Text(), p.Note)
		}
	}
	return b.String()
}
