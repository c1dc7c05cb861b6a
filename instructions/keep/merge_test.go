package keep

import (
	"bytes"
	"fmt"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
)

func TestMerge(t *testing.T) {
	for _, c := range []struct{ why, base, mine, theirs, merged string }{
		{"nothing", "a\nb\n", "a\nb\n", "a\nb\n", "a\nb\n"},
		{"one side", "a\nb\nc\n", "a\nB\nc\n", "a\nb\nc\n", "a\nB\nc\n"},
		{"the other", "a\nb\nc\n", "a\nb\nc\n", "b\nc\n", "b\nc\n"},
		{"both, apart", "a\nb\nc\nd\n", "A\nb\nc\nd\n", "a\nb\nc\nD\nE\n", "A\nb\nc\nD\nE\n"},
		{"both the same", "a\nb\nc\n", "a\nX\nc\n", "a\nX\nc\n", "a\nX\nc\n"},
		{"line ends of their own", "a\r\nb\nc\r\nd", "a\r\nB\nc\r\nd", "a\r\nb\nc\r\nD", "a\r\nB\nc\r\nD"},
		{"one more line at either end", "b\n", "a\nb\n", "b\nc\n", "a\nb\nc\n"},
		{"same line", "a\nb\nc\n", "a\nX\nc\n", "a\nY\nc\n", ""},
		{"lines that touch", "a\nb\nc\n", "A\nb\nc\n", "a\nB\nc\n", ""},
		{"put in at one place", "a\nb\n", "a\nX\nb\n", "a\nY\nb\n", ""},
		{"taken out and changed", "a\nb\nc\n", "a\nc\n", "a\nB\nc\n", ""},
	} {
		merged, clean := Merge([]byte(c.base), []byte(c.mine), []byte(c.theirs))
		if clean != (c.merged != "") || string(merged) != c.merged {
			t.Errorf("%s: %q, %v", c.why, merged, clean)
		}
		other, _ := Merge([]byte(c.base), []byte(c.theirs), []byte(c.mine))
		if !bytes.Equal(other, merged) {
			t.Errorf("%s: the other way round: %q", c.why, other)
		}
	}
}

// TestMergeAgainstDiff3 holds merges against GNU diff3 (diffutils), which every system
// with a C compiler has.
func TestMergeAgainstDiff3(t *testing.T) {
	random := rand.New(rand.NewPCG(4, 4))
	dir := t.TempDir()
	clean, clashes, apart := 0, 0, 0
	for range 400 {
		base := randomLines(random, 5+random.IntN(30))
		mine, theirs := edited(random, base), edited(random, base)
		want, isClean := byDiff3(t, dir, mine, base, theirs)
		got, ok := Merge([]byte(base), []byte(mine), []byte(theirs))
		switch {
		case ok && isClean && string(got) != want:
			apart++ // of lines that are alike, another pair was taken for the same
		case ok && !isClean, !ok && isClean:
			apart++
		case ok:
			clean++
		default:
			clashes++
		}
	}
	// Where lines repeat there are several shortest ways from one text to another.
	if apart > 12 || clean < 80 || clashes < 80 {
		t.Errorf("%d merged alike, %d clash alike, %d not alike", clean, clashes, apart)
	}
	t.Log(clean, "merged alike,", clashes, "clash alike,", apart, "not alike")
}

func byDiff3(t *testing.T, dir string, mine, base, theirs string) (merged string, clean bool) {
	t.Helper()
	var paths []string
	for i, text := range []string{mine, base, theirs} {
		path := filepath.Join(dir, fmt.Sprint(i))
		if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
		paths = append(paths, path)
	}
	out, err := exec.Command("diff3", append([]string{"-m"}, paths...)...).Output()
	if exit, isExit := err.(*exec.ExitError); isExit && exit.ExitCode() == 1 {
		return "", false
	}
	if err != nil {
		t.Fatal(err)
	}
	return string(out), true
}

func randomLines(random *rand.Rand, n int) string {
	var b strings.Builder
	for range n {
		fmt.Fprintf(&b, "line %d\n", random.IntN(60))
	}
	return b.String()
}

// edited takes some lines out, puts some in and changes some.
func edited(random *rand.Rand, text string) string {
	lines := strings.SplitAfter(strings.TrimSuffix(text, "\n"), "\n")
	var b strings.Builder
	for _, line := range lines {
		line = strings.TrimSuffix(line, "\n") + "\n"
		switch random.IntN(25) {
		case 0:
		case 1:
			b.WriteString(fmt.Sprintf("new %d\n", random.IntN(1000)) + line)
		case 2:
			fmt.Fprintf(&b, "other %d\n", random.IntN(1000))
		default:
			b.WriteString(line)
		}
	}
	return b.String()
}

// FuzzMerge: a change on one side is taken as it is, whatever the texts, and a merge is
// the same whoever is asked first.
func FuzzMerge(f *testing.F) {
	f.Add("a\nb\nc\n", "a\nB\nc\n", "a\nb\nC\n")
	f.Add("a\r\nb", "", "x\n\n")
	f.Fuzz(func(t *testing.T, base, mine, theirs string) {
		if got, clean := Merge([]byte(base), []byte(mine), []byte(base)); !clean || string(got) != mine {
			t.Errorf("one side: %q", got)
		}
		one, ok := Merge([]byte(base), []byte(mine), []byte(theirs))
		other, also := Merge([]byte(base), []byte(theirs), []byte(mine))
		if ok != also || !bytes.Equal(one, other) {
			t.Errorf("%q one way, %q the other", one, other)
		}
	})
}

// TestVeryDifferentTexts: two long texts with nothing in common take no time to speak of.
func TestVeryDifferentTexts(t *testing.T) {
	random := rand.New(rand.NewPCG(1, 1))
	a, b := randomLines(random, 20_000), strings.ReplaceAll(randomLines(random, 20_000), "line", "row")
	if got, clean := Merge([]byte(a), []byte(b), []byte(a)); !clean || string(got) != b {
		t.Error("not merged")
	}
}
