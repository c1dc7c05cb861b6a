package keep

import (
	"strings"
	"testing"
)

func TestBeside(t *testing.T) {
	rows := Beside([]byte("a\nb\nc\nd\n"), []byte("a\nB\nc\nd\ne"))
	var told []string
	for _, r := range rows {
		mark := "≠"
		if r.Same {
			mark = "="
		}
		told = append(told, r.Left+mark+r.Right)
	}
	if got, want := strings.Join(told, " "), "a=a b≠B c=c d=d ≠e"; got != want {
		t.Errorf("%s, want %s", got, want)
	}
	if last := rows[len(rows)-1]; last.LeftLine != 0 || last.RightLine != 5 {
		t.Errorf("the last row is %+v", last)
	}
}

// Both texts can be read off the rows again, whatever they are.
func FuzzBeside(f *testing.F) {
	f.Add("a\nb\n", "b\nc")
	f.Add("", "\n\n")
	f.Fuzz(func(t *testing.T, left, right string) {
		var a, b []string
		for _, r := range Beside([]byte(left), []byte(right)) {
			if r.LeftLine > 0 {
				a = append(a, r.Left)
			}
			if r.RightLine > 0 {
				b = append(b, r.Right)
			}
		}
		for i, pair := range [][2]string{{strings.Join(a, "\n"), left}, {strings.Join(b, "\n"), right}} {
			var want []string
			for _, line := range linesOf([]byte(pair[1])) {
				want = append(want, bare(line))
			}
			if pair[0] != strings.Join(want, "\n") {
				t.Errorf("text %d: %q, want %q", i, pair[0], want)
			}
		}
	})
}
