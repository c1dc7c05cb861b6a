// Package faults_test is a measure of ourselves. Each kind of fault is made at every
// place of every example where it can be, one fault a kit. It must be found by the
// rule meant, at the line meant, with the right sum, and bring no finding that has
// nothing to do with it. The table of how that went is kept; a kind that does worse
// than before fails.
//
// faults_test.go makes the faults and judges what is found; text_test.go has places
// and edits; reckoned_test.go and figures_test.go reckon from the texts alone what an
// edit ought to bring; table_test.go writes the table; innocent_test.go has what must
// stay silent. The other files are the kinds.
package faults_test

import (
	"fmt"
	"os"
	"runtime"
	"slices"
	"strings"
	"sync"
	"testing"

	"tallyfold/kit/diag"
	"tallyfold/kit/proof"
)

// A faultKind is one way to get a kit wrong.
type faultKind struct {
	name string
	// rule is the rule meant.
	rule string
	// also are rules that rightly speak up too, as the fault breaks something else.
	also []string
	// beside: the place need only be among the other places of the finding.
	beside bool
	// twins: at how many places of each near miss beside the rules it is tried too.
	twins int
	// edits makes the fault at every place of a kit.
	edits func(k *cleanKit) []edit
}

// faultKinds are all of them, in the order of the table.
var faultKinds = slices.Concat(boxFaults, limitFaults, countAndTimeFaults, amountFaults, slipFaults, linkFaults,
	methodFaults, toolFaults, nameFaults, yamlFaults, fileFaults, wordingFaults, fillingFaults, lawFaults, twinFaults)

const tableFile = "../../../testdata/faults/table.md"

// A tally is how one kind fared.
type tally struct {
	kind                          faultKind
	kits, found, placed, summed   int
	harmless, silent, falseAlarms int
	apart                         int // kits in which a consequence is told apart from its cause
	misses                        []string
}

func TestFaultsAreFound(t *testing.T) {
	kits, twins := cleanKits(t), nearMisses(t)
	tallies := make([]tally, len(faultKinds))
	var wait sync.WaitGroup
	next := make(chan int)
	for range runtime.GOMAXPROCS(0) {
		wait.Go(func() {
			for i := range next {
				tallies[i] = tallyOf(faultKinds[i], kits, twins)
			}
		})
	}
	for i := range faultKinds {
		next <- i
	}
	close(next)
	wait.Wait()
	faults, kinds := 0, 0
	for _, one := range tallies {
		faults += one.kits
		kinds += oneIf(one.kits > 0)
		if one.kits+one.harmless == 0 {
			t.Errorf("%s: no example has a place for it", one.kind.name)
		}
	}
	if kinds < 60 || faults < 300 {
		t.Errorf("%d kinds and %d faulty kits; want 60 and 300", kinds, faults)
	}
	keep(t, tallies)
}

// The measure itself must be able to fail: at a rule, a line, a figure, a finding too
// many, a harmless edit that is told.
func TestTheMeasureNoticesMisses(t *testing.T) {
	pack := func(change func(e edit) edit) func(k *cleanKit) []edit {
		return func(k *cleanKit) []edit {
			wax, ok := k.named("components", "wax")
			if !ok {
				return nil
			}
			packed, _ := wax.field("packed")
			return []edit{change(packed.becomes("1 kg ± 10 g", figure{100, "g"}))}
		}
	}
	as := func(e edit) edit { return e }
	for _, test := range []struct {
		kind                                       faultKind
		found, placed, summed, falseAlarms, misses int
	}{
		{faultKind{name: "as it is", rule: "packed-too-little", edits: pack(as)}, 1, 1, 1, 0, 0},
		{faultKind{name: "another rule", rule: "left-over", edits: pack(as)}, 0, 0, 0, 1, 2},
		{faultKind{name: "another line", rule: "packed-too-little", edits: pack(func(e edit) edit { return e.toldAt(e.kit.whole("kit.yaml")) })}, 1, 0, 0, 0, 1},
		{faultKind{name: "another figure", rule: "packed-too-little", edits: pack(func(e edit) edit { e.figures = []figure{{101, "g"}}; return e })}, 1, 1, 0, 0, 1},
		{faultKind{name: "harmless", rule: "packed-too-little", edits: pack(func(e edit) edit { return e.harmlessIf(true) })}, 0, 0, 0, 0, 1},
	} {
		one := tallyOf(test.kind, cleanKits(t), nil)
		got := []int{one.found, one.placed, one.summed, one.falseAlarms, len(one.misses)}
		if want := []int{test.found, test.placed, test.summed, test.falseAlarms, test.misses}; !slices.Equal(got, want) {
			t.Errorf("%s: %v, want %v\n%s", test.kind.name, got, want, strings.Join(one.misses, "\n"))
		}
	}
}

// keep compares the table with the one that is kept, or writes it.
func keep(t *testing.T, tallies []tally) {
	t.Helper()
	got := faultTable(tallies) + innocentTable()
	if os.Getenv("SHOW_FAULTS") == "1" {
		fmt.Print(got)
	}
	if os.Getenv("UPDATE_GOLDEN") == "1" {
		if err := os.WriteFile(tableFile, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	want, err := os.ReadFile(tableFile)
	if err != nil {
		t.Fatalf("%v; write it with UPDATE_GOLDEN=1, and read it", err)
	}
	for _, line := range strings.Split(got, "\n") {
		if !strings.Contains(string(want), line+"\n") && line != "" {
			t.Errorf("now:  %s", line)
		}
	}
	for _, line := range strings.Split(string(want), "\n") {
		if !strings.Contains(got, line+"\n") && line != "" {
			t.Errorf("kept: %s", line)
		}
	}
}

func tallyOf(kind faultKind, kits, twins []*cleanKit) tally {
	one := tally{kind: kind}
	one.try(kits, mostPlaces)
	one.try(twins, kind.twins)
	return one
}

// try makes the fault at so many places of each kit.
func (one *tally) try(kits []*cleanKit, places int) {
	if places == 0 {
		return
	}
	for _, k := range kits {
		for _, e := range thinned(one.kind.edits(k), places) {
			findings := proof.Of(e.faulty(), k.name, k.day).Findings
			if e.harmless {
				one.judgeHarmless(e, findings)
			} else {
				one.judge(e, findings)
			}
		}
	}
}

// mostPlaces is how many places of one example a kind is tried at.
const mostPlaces = 4

// few is enough in each near miss, of which there are many.
const few = 1

// thinned leaves so many of the edits, spread evenly: all of them take too long for
// every day. FAULTS=all tries them all, for a look and not for the table.
// An edit at a place that the kit does not have is none.
func thinned(edits []edit, places int) []edit {
	edits = slices.DeleteFunc(edits, func(e edit) bool { return e.kit == nil })
	if len(edits) <= places || os.Getenv("FAULTS") == "all" {
		return edits
	}
	var some []edit
	for i := range places {
		some = append(some, edits[i*len(edits)/places])
	}
	return some
}

func (one *tally) miss(e edit, what string) {
	one.misses = append(one.misses, fmt.Sprintf("%s: %s: %s", one.kind.name, e, what))
}

func (one *tally) judgeHarmless(e edit, findings diag.List) {
	one.harmless++
	findings = slices.DeleteFunc(slices.Clone(findings), func(f diag.Finding) bool { return slices.Contains(one.kind.also, f.Rule) })
	if len(findings) == 0 {
		one.silent++
		return
	}
	one.miss(e, "harmless, but told: "+toldShortly(findings[0]))
}

// judge looks for the finding meant: at its place, and there with the right sum.
func (one *tally) judge(e edit, findings diag.List) {
	one.kits++
	lines, causes := e.lines(), map[string]bool{}
	found, placed, summed := false, false, false
	for _, f := range findings {
		if f.Rule != one.kind.rule {
			continue
		}
		found, causes[f.Cause] = true, true
		if one.isPlaced(f, lines) {
			placed = true
			summed = summed || isSummed(f, e.figures)
		}
	}
	one.found, one.placed, one.summed = one.found+oneIf(found), one.placed+oneIf(placed), one.summed+oneIf(summed)
	switch {
	case !found:
		one.miss(e, "not found")
	case !placed:
		one.miss(e, fmt.Sprintf("found, but not told at %v", sortedKeys(lines)))
	case !summed:
		one.miss(e, fmt.Sprintf("found, but not with the figures %v", e.figures))
	}
	one.judgeOthers(e, findings, causes)
}

// judgeOthers looks through what else is told. What one mistake brings about is to
// be told under it; a rule that is told apart must be among those that may speak up.
func (one *tally) judgeOthers(e edit, findings diag.List, causes map[string]bool) {
	apart := false
	for _, f := range findings {
		if f.Rule == one.kind.rule || f.Cause != "" && causes[f.Cause] {
			continue
		}
		if !slices.Contains(one.kind.also, f.Rule) {
			one.falseAlarms++
			one.miss(e, "brings "+toldShortly(f))
			return
		}
		apart = true
	}
	one.apart += oneIf(apart)
}

func (one *tally) isPlaced(f diag.Finding, lines map[string]bool) bool {
	if lines[lineOf(f.Where)] {
		return true
	}
	return one.kind.beside && slices.ContainsFunc(f.Also, func(p diag.Place) bool { return lines[lineOf(p.Where)] })
}

// isSummed says whether a finding shows all figures, and is whole otherwise.
func isSummed(f diag.Finding, figures []figure) bool {
	if f.Found == "" || f.Expected == "" || len(f.Remedies) == 0 {
		return false
	}
	for _, is := range figures {
		if !is.isShown(append([]string{f.Found}, f.Sum...)) {
			return false
		}
	}
	return true
}
