package ledger_test

import (
	"os"
	"path/filepath"
	"testing"

	"tallyfold/instructions"
	"tallyfold/kit/ledger"
	"tallyfold/kit/quantity"
)

// Whatever goes into vessels and containers is found again, to the last exact
// gram: in a container, in a vessel at the end, kept, poured away or washed out.
func TestNothingIsLostOrMade(t *testing.T) {
	folders, err := filepath.Glob("../../examples/*/kit.yaml")
	if err != nil || len(folders) < 3 {
		t.Fatalf("%d examples, %v", len(folders), err)
	}
	broken, err := filepath.Glob("../../testdata/broken/*/kit.yaml")
	if err != nil || len(broken) < 3 {
		t.Fatalf("%d broken kits, %v", len(broken), err)
	}
	rules, err := filepath.Glob("../rules/testdata/*/*/kit.yaml")
	if err != nil || len(rules) < 30 {
		t.Fatalf("%d kits of rules, %v", len(rules), err)
	}
	checked := 0
	for _, file := range append(append(folders, broken...), rules...) {
		folder := filepath.Dir(file)
		k, _ := instructions.Open(os.DirFS(folder), filepath.Base(folder))
		if k == nil {
			continue // refused whole: there is nothing to follow
		}
		l := ledger.Follow(k)
		for _, balance := range append(l.Balances, l.Household...) {
			packIsAccountedFor(t, folder, l, balance)
			if holds(t, folder, l, balance.Thing) {
				checked++
			}
		}
	}
	if checked < 50 {
		t.Errorf("only %d things were followed from the pack to their end", checked)
	}
}

// packIsAccountedFor: what was packed is what is left in the pack and what all
// movements took out of it, whatever they took it for.
func packIsAccountedFor(t *testing.T, folder string, l *ledger.Ledger, b *ledger.Balance) {
	t.Helper()
	if b.Packed == nil || !b.Left.Known() {
		return
	}
	total := b.Left.Value()
	for _, e := range l.Entries {
		if e.Thing == b.Thing && e.From == b.Thing {
			total = total.Plus(e.Amount.Value())
		}
	}
	if !total.Equal(b.Packed.Value()) {
		t.Errorf("%s: %s of %s is packed, and %s is left or taken", folder, exact(b.Packed), b.Thing, total)
	}
}

// holds checks one thing, and says whether any of it went in.
func holds(t *testing.T, folder string, l *ledger.Ledger, thing string) bool {
	t.Helper()
	in, known := entered(l, thing)
	out := found(l, thing)
	for _, f := range out {
		known = known && f.Known()
	}
	if !known {
		return false // what cannot be told cannot be added up, and says so elsewhere
	}
	var total quantity.Number
	for _, f := range out {
		total = total.Plus(f.Value())
	}
	if !total.Equal(in) {
		t.Errorf("%s: %s went in, and %s of %s is found again", folder,
			in.String(), total.String(), thing)
	}
	return in.Sign() > 0
}

// entered adds up what came out of the pack into a vessel or container.
func entered(l *ledger.Ledger, thing string) (total quantity.Number, known bool) {
	known = true
	for _, e := range l.Entries {
		if e.Thing != thing || e.From != thing || e.To == "" || isInsert(l, e) {
			continue
		}
		known = known && e.Amount.Known()
		total = total.Plus(e.Amount.Value())
	}
	return total, known
}

// isInsert: objects placed into containers are counted there, not mixed.
func isInsert(l *ledger.Ledger, e ledger.Entry) bool {
	c := l.Kit.Component(e.To)
	return e.Move == ledger.Placed && c != nil && c.Container != nil
}

// found lists everything of a thing that is somewhere when all is done.
func found(l *ledger.Ledger, thing string) []*ledger.Figure {
	var all []*ledger.Figure
	for _, f := range l.Fillings {
		count := ledger.Fixed(quantity.Count, "", quantity.Whole(int64(f.Count)))
		for _, part := range append(f.Parts(), f.Objects()...) {
			if part.Thing == thing {
				all = append(all, ledger.Times(part.Amount.Dimension, "", count, part.Amount))
			}
		}
	}
	last := l.Stages[len(l.Stages)-1].Run
	for _, r := range l.Remainders {
		for _, part := range append(r.Parts(), r.Objects()...) {
			if r.Run == last && part.Thing == thing {
				all = append(all, part.Amount)
			}
		}
	}
	for _, e := range l.Entries {
		if e.Thing == thing && (e.Move == ledger.LeftOver || e.Move == ledger.WashedOut || e.Move == ledger.Evaporated) {
			all = append(all, e.Amount)
		}
	}
	return all
}
