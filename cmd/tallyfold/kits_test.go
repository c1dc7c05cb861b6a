package main

import (
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"tallyfold/examples"
)

// judged is the day the kits of this repository are judged as of in tests.
var judged = time.Date(2026, 11, 25, 0, 0, 0, 0, time.UTC)

func TestExamplesCheckClean(t *testing.T) {
	for _, name := range examples.Names() {
		p, err := prove(filepath.Join("../../examples", name), judged)
		if err != nil {
			t.Fatal(err)
		}
		for _, f := range p.Findings {
			t.Errorf("%s: %s: %s at line %d", name, f.Rule, f.Found, f.Where.Position().Line)
		}
	}
	if len(examples.Names()) < 3 {
		t.Errorf("there are %d examples", len(examples.Names()))
	}
}

// Each broken twin of an example holds a dozen faults and more. Every one must be
// found at its line by the rule meant, and nothing else may be found.
func TestBrokenTwinsShowEachFaultAtItsLine(t *testing.T) {
	for _, name := range examples.Names() {
		folder := filepath.Join("../../testdata/broken", name)
		p, err := prove(folder, judged)
		if err != nil {
			t.Fatal(err)
		}
		var got []string
		for _, f := range p.Findings {
			got = append(got, fmt.Sprintf("%s:%d %s", f.Where.File.Name, f.Where.Position().Line, f.Rule))
		}
		want := wanted(t, filepath.Join(folder, "want.txt"))
		if len(want) < 12 {
			t.Errorf("%s: only %d faults", name, len(want))
		}
		for _, missing := range without(want, got) {
			t.Errorf("%s: not found: %s", name, missing)
		}
		for _, surplus := range without(got, want) {
			t.Errorf("%s: found, though no fault is meant: %s", name, surplus)
		}
	}
}

// wanted reads "file:line rule  # why" lines.
func wanted(t *testing.T, path string) []string {
	t.Helper()
	text, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	var lines []string
	for _, line := range strings.Split(string(text), "\n") {
		line, _, _ = strings.Cut(line, "#")
		if fields := strings.Fields(line); len(fields) == 2 {
			lines = append(lines, fields[0]+" "+fields[1])
		}
	}
	return lines
}

// without gives what of all is not in some, each as often as it is surplus.
func without(all, some []string) []string {
	left := slices.Clone(some)
	var rest []string
	for _, one := range all {
		if at := slices.Index(left, one); at >= 0 {
			left = slices.Delete(left, at, at+1)
			continue
		}
		rest = append(rest, one)
	}
	return rest
}

func BenchmarkCheckAnExample(b *testing.B) {
	for b.Loop() {
		if _, err := prove("../../examples/harbour-candles", judged); err != nil {
			b.Fatal(err)
		}
	}
}
