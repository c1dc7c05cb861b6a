package print

import (
	"strings"
	"testing"
)

// TestNormalise holds that every byte stays in its place, that only what differs from print to print is touched, and
// that the order of names, by which readers look them up, is kept.
func TestNormalise(t *testing.T) {
	const before = "%PDF-1.4\n1 0 obj\n<</Title (Made /ModDate \\(D:1\\))\n/CreationDate (D:20261125131640+00'00')\n" +
		"/ModDate (D:20261125131640+00'00')>>\nendobj\n2 0 obj\n<</ID (node00000049) /T (/ModDate (D:2026))>>\nendobj\n" +
		"[(node00000150) (node00000049) (node00000007) \\(node00000003\\)]\n"
	blanked := strings.Repeat(" ", len("/CreationDate (D:20261125131640+00'00')")) + "\n" +
		strings.Repeat(" ", len("/ModDate (D:20261125131640+00'00')"))
	want := "%PDF-1.4\n1 0 obj\n<</Title (Made /ModDate \\(D:1\\))\n" + blanked + ">>\nendobj\n" +
		"2 0 obj\n<</ID (node00000002) /T (/ModDate (D:2026))>>\nendobj\n" +
		"[(node00000003) (node00000002) (node00000001) \\(node00000003\\)]\n"
	file := []byte(before)
	if err := normalise(file); err != nil {
		t.Fatal(err)
	}
	if string(file) != want {
		t.Errorf("got\n%s\nwant\n%s", file, want)
	}
	if err := normalise([]byte("no PDF")); err == nil {
		t.Error("what is no PDF was taken for one")
	}
}

func TestCheckPaper(t *testing.T) {
	box := func(size string) []byte { return []byte("<</Type /Page /MediaBox [0 0 " + size + "]>>") }
	for _, good := range []string{"420 595.91998", "419.53 595.28", "418.5 594.5"} {
		if err := checkPaper(box(good), A5); err != nil {
			t.Errorf("%s: %v", good, err)
		}
	}
	for _, bad := range []string{"595.91998 420", "396 612", "421.5 595", "4.2.0 595"} {
		if err := checkPaper(box(bad), A5); err == nil {
			t.Errorf("%s was taken for A5", bad)
		}
	}
	second := append(box("420 595.91998"), box("396 612")...)
	if err := checkPaper(second, A5); err == nil {
		t.Error("a second page of another size was not noticed")
	}
	if err := checkPaper([]byte("no pages"), Paper{}); err == nil {
		t.Error("what is no PDF was taken for one")
	}
}
