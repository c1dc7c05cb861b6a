package ledger_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"tallyfold/instructions"
	"tallyfold/kit"
	"tallyfold/kit/diag"
	"tallyfold/kit/ledger"
	"tallyfold/kit/quantity"
)

// read reads a kit from the texts of its two files. What it says must be
// readable: a test of the ledger stands on nothing half understood.
func read(t testing.TB, definition, method string) *kit.Kit {
	t.Helper()
	k, found := open(definition, method)
	if k == nil || len(found) > 0 {
		t.Fatalf("the kit cannot be read: %v", found)
	}
	return k
}

// readAnyway reads a kit in which not everything need be readable.
func readAnyway(t testing.TB, definition, method string) *kit.Kit {
	t.Helper()
	k, found := open(definition, method)
	if k == nil {
		t.Fatalf("the kit is refused whole: %v", found)
	}
	return k
}

func open(definition, method string) (*kit.Kit, diag.List) {
	folder := fstest.MapFS{
		"kit.yaml":  {Data: []byte(definition)},
		"method.md": {Data: []byte(method)},
	}
	return instructions.Open(folder, "workroom")
}

// facts are the figures of a ledger under short names, exact, in g, mL, pieces and mm:
// "wax used", "wax left", "tin 1-4 wax" (in one of them), "tin 1-4 mass",
// "pan keeps wax", "wax kept", "wax washed out". What cannot be told is "unknown".
func facts(l *ledger.Ledger) map[string]string {
	told := map[string]string{}
	for _, b := range append(slices.Clone(l.Balances), l.Household...) {
		told[b.Thing+" used"] = exact(b.Used)
		if b.Left != nil {
			told[b.Thing+" left"] = exact(b.Left)
		}
	}
	for _, f := range l.Fillings {
		name := fmt.Sprintf("%s %d-%d ", f.Container.ID, f.First, f.First+f.Count-1)
		told[name+"mass"] = exact(f.Mass())
		for _, part := range append(f.Parts(), f.Objects()...) {
			told[name+part.Thing] = exact(part.Amount)
		}
		for _, insert := range f.Inserts {
			told[name+insert.Component.ID] = fmt.Sprint(insert.Count)
		}
	}
	for _, r := range lastOf(l) {
		for _, part := range append(r.Parts(), r.Objects()...) {
			told[r.Vessel+" keeps "+part.Thing] = exact(part.Amount)
		}
	}
	for _, e := range l.Entries {
		if e.Move == ledger.LeftOver {
			told[e.Thing+" "+e.To] = exact(e.Amount)
		}
		if e.Move == ledger.WashedOut || e.Move == ledger.Evaporated || e.Move == ledger.NotChosen {
			told[e.Thing+" "+string(e.Move)] = exact(e.Amount)
		}
	}
	told["snags"] = snags(l)
	return told
}

// lastOf are the remainders when the last run is over.
func lastOf(l *ledger.Ledger) []*ledger.Remainder {
	var last []*ledger.Remainder
	for _, r := range l.Remainders {
		if r.Run == l.Stages[len(l.Stages)-1].Run {
			last = append(last, r)
		}
	}
	return last
}

func exact(f *ledger.Figure) string {
	if !f.Known() {
		return "unknown"
	}
	return f.Value().String()
}

func snags(l *ledger.Ledger) string {
	var all []string
	for _, s := range l.Snags {
		all = append(all, string(s.Trouble)+" "+s.Thing)
	}
	return strings.Join(all, ", ")
}

// holdsTrue compares facts "wax used 300" with a ledger, parted by semicolons; "snags"
// alone, or not named at all, means that there must be none.
func holdsTrue(t *testing.T, l *ledger.Ledger, want string) {
	t.Helper()
	told := facts(l)
	wantSnags := ""
	for fact := range strings.SplitSeq(want, ";") {
		fact = strings.TrimSpace(fact)
		if after, ok := strings.CutPrefix(fact, "snags "); ok {
			wantSnags = after
			continue
		}
		at := strings.LastIndex(fact, " ")
		name, value := fact[:at], fact[at+1:]
		got, there := told[name]
		if value == "none" && !there {
			continue
		}
		if got != value {
			t.Errorf("%s: %q, want %s", name, got, value)
		}
	}
	if told["snags"] != wantSnags {
		t.Errorf("snags: %q, want %q", told["snags"], wantSnags)
	}
	if t.Failed() {
		t.Logf("all facts: %v", told)
	}
}

// whole is a number for sums by hand.
func whole(n int64) quantity.Number { return quantity.Whole(n) }
