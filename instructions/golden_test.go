package instructions

import (
	"fmt"
	"os"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"tallyfold/kit"
	"tallyfold/kit/diag"
	"tallyfold/kit/load"
	"tallyfold/kit/source"
)

// The method that the design shows, read whole: every link, what its words say,
// and everything around it. UPDATE_GOLDEN=1 writes the file anew.
func TestMethodOfTheDesign(t *testing.T) {
	text, err := os.ReadFile("testdata/scent-gels/method.md")
	if err != nil {
		t.Fatal(err)
	}
	k := read(t, gels)
	method, found := ReadMethod(source.NewFile("method.md", text), k, load.Amounts(k))
	got := toldMethod(method, found)
	compareGolden(t, "testdata/scent-gels/method.want", got)

	dos := strings.ReplaceAll(string(text), "\n", "\r\n")
	method, found = ReadMethod(source.NewFile("method.md", []byte(dos)), k, load.Amounts(k))
	if diff := cmp.Diff(got, strings.ReplaceAll(toldMethod(method, found), `\r\n`, `\n`)); diff != "" {
		t.Errorf("with CR LF: %s", diff)
	}
}

// toldMethod shows all that was read, a line each, with the place.
func toldMethod(method kit.Method, found diag.List) string {
	var b strings.Builder
	for _, part := range method.Parts {
		fmt.Fprintf(&b, "part %q %q\n", part.ID, part.Title)
		for _, step := range part.Steps {
			at := step.Span.Position()
			fmt.Fprintf(&b, "\nstep %d %s %q in %q at %d:%d\n", step.Number, step.ID, step.Title, step.Vessel, at.Line, at.Column)
			for _, c := range step.Cautions {
				fmt.Fprintf(&b, "  caution %s %q\n", c.Signal, c.Text)
			}
			for _, o := range step.Operations {
				at := o.Span.Position()
				fmt.Fprintf(&b, "  %d:%d %s: %s\n", at.Line, at.Column, told(o), toldPhrase(o.Phrase))
			}
			for _, m := range step.Mentions {
				at := m.Span.Position()
				fmt.Fprintf(&b, "  %d:%d names %s %q\n", at.Line, at.Column, m.Key, m.Span.Text())
			}
			for _, p := range step.Prose {
				at := p.Span.Position()
				fmt.Fprintf(&b, "  %d:%d prose %q\n", at.Line, at.Column, p.Text)
			}
		}
	}
	for _, line := range toldFindings(found) {
		fmt.Fprintln(&b, line)
	}
	return b.String()
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
	if diff := cmp.Diff(string(want), got); diff != "" {
		t.Error(diff)
	}
}
