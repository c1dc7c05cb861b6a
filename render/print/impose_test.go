package print

import (
	"bytes"
	"fmt"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
)

// numbered is a document of so many A5 pages, each with its number.
func numbered(pages int) string {
	var html strings.Builder
	html.WriteString(`<!doctype html><html lang="en"><title>Numbers</title><style>@page{margin:10mm} p{break-after:page;margin:0}</style>`)
	for page := 1; page <= pages; page++ {
		fmt.Fprintf(&html, "<p>page%d.</p>", page)
	}
	return strings.Replace(html.String(), "break-after:page;margin:0}", "break-after:page;margin:0} p:last-child{break-after:auto}", 1)
}

// TestImpose reads the sheets back with a reader of another hand: which page's words are on which half of which side.
func TestImpose(t *testing.T) {
	file := printed(t, numbered(8), Options{Paper: A5, Outline: true})
	sheets, err := Impose(file, Stitched(8, pageA5, Folding{Sheet: A4}))
	if err != nil {
		t.Fatal(err)
	}
	reader := read(t, sheets)
	if reader.NumPage() != 4 {
		t.Fatalf("%d sides, not 4", reader.NumPage())
	}
	for i, names := range [][]string{{"Page1", "Page8"}, {"Page2", "Page7"}, {"Page3", "Page6"}, {"Page4", "Page5"}} {
		side := reader.Page(i + 1)
		box := side.V.Key("MediaBox")
		if w, h := box.Index(2).Float64()/72*25.4, box.Index(3).Float64()/72*25.4; math.Abs(w-297) > 0.01 || math.Abs(h-210) > 0.01 {
			t.Errorf("side %d is %.2f × %.2f mm, not A4 across", i+1, w, h)
		}
		if got := side.V.Key("Resources").Key("XObject").Keys(); len(got) != 2 || !contains(got, names[0]) || !contains(got, names[1]) {
			t.Errorf("side %d shows %v, not %v", i+1, got, names)
		}
	}
	for _, gone := range []string{"/StructTreeRoot", "/Outlines", "/MarkInfo"} {
		if bytes.Contains(sheets, []byte(gone)) {
			t.Errorf("a sheet has no order of reading, but the file holds %s", gone)
		}
	}
}

func contains(list []string, wanted string) bool {
	for _, one := range list {
		if one == wanted {
			return true
		}
	}
	return false
}

// TestImposeTwice: the same pages make the same bytes.
func TestImposeTwice(t *testing.T) {
	file := printed(t, numbered(5), Options{Paper: A5})
	first, err := Impose(bytes.Clone(file), Stitched(5, pageA5, Folding{Bleed: 3, Thickness: 0.1}))
	if err != nil {
		t.Fatal(err)
	}
	second, err := Impose(bytes.Clone(file), Stitched(5, pageA5, Folding{Bleed: 3, Thickness: 0.1}))
	if err != nil || !bytes.Equal(first, second) {
		t.Errorf("two files of %d and %d bytes differ (error %v)", len(first), len(second), err)
	}
	for _, box := range []string{"/TrimBox", "/BleedBox"} {
		if !bytes.Contains(first, []byte(box)) {
			t.Errorf("a print shop needs %s", box)
		}
	}
}

func TestImposeNonsense(t *testing.T) {
	for _, nonsense := range []string{"", "no PDF", "%PDF-1.4\n%%EOF"} {
		if _, err := Impose([]byte(nonsense), nil); err == nil {
			t.Errorf("%q was laid on sheets", nonsense)
		}
	}
}

// TestSheetsAreSound lets qpdf, a checker of another hand, look at the files where the machine has it.
func TestSheetsAreSound(t *testing.T) {
	checker, err := exec.LookPath("qpdf")
	if err != nil {
		t.Log("qpdf is not here: the files are read back by two readers instead, in the tests beside this one")
		return
	}
	file := printed(t, numbered(6), Options{Paper: A5})
	for name, folding := range map[string]Folding{"home": {Sheet: A4}, "long": {Sheet: A4, LongEdge: true}, "shop": {Bleed: 3}} {
		sheets, err := Impose(bytes.Clone(file), Stitched(6, pageA5, folding))
		if err != nil {
			t.Fatal(err)
		}
		path := filepath.Join(t.TempDir(), name+".pdf")
		if err := os.WriteFile(path, sheets, 0o600); err != nil {
			t.Fatal(err)
		}
		if said, err := exec.Command(checker, "--check", path).CombinedOutput(); err != nil {
			t.Errorf("%s: %v\n%s", name, err, said)
		}
	}
}
