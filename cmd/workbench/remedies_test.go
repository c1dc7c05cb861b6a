package workbench

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/go-rod/rod/lib/input"
)

// Where a finding stands its change can be made: beside the field, and beside the step. Of two
// findings with the same words that one is mended whose button was pressed.
func TestRemediesWhereTheFindingsStand(t *testing.T) {
	b := newBench(t, "drawer-sachets")
	b.replaceIn("drawer-sachets/kit.yaml", "packed: 40 g ± 1 g", "packed: 20 g ± 1 g")
	b.replaceIn("drawer-sachets/method.md", "Wipe out", "9 crumbs may fall.\n\nThen look. 9 crumbs may fall.\n\nWipe out")
	w := b.open("/kit/drawer-sachets/box")
	w.size(1400, 1000)
	field := `[id="f-components.peel.packed"]`
	w.sees(field, "9.28 g too little")
	w.press(field + ` .remedy summary`)
	w.sees(field+` .change ins`, "33 g")
	w.look("beside-the-field")
	w.press(field + ` [data-act=mend]`)
	w.seesNot(field, "too little")
	b.until("the change on the disk", func() bool { return strings.Contains(b.file("drawer-sachets/kit.yaml"), "packed: 33 g") })

	w.goTo("http://" + b.host + "/kit/drawer-sachets/method")
	w.wait("both findings", `() => document.querySelectorAll("#step-clear [data-act=mend]").length === 2`)
	w.eval(`() => { [...document.querySelectorAll("#step-clear [data-act=mend]")][1].id = "the-second" }`)
	w.press("#the-second")
	b.until("the second changed", func() bool { return strings.Contains(b.file("drawer-sachets/method.md"), "Then look. Nine crumbs") })
	if text := b.file("drawer-sachets/method.md"); !strings.Contains(text, "\n9 crumbs may fall.") {
		t.Error("the first was changed as well")
	}
	w.cursor(input.End) // the editor draws only the lines that can be seen
	w.sees("#editor .cm-content", "Then look. Nine crumbs")
	w.fine()
}

// A finding that the page showed and that is there no more is not mended by what is like it.
func TestARemedyForWhatIsGone(t *testing.T) {
	b := newBench(t, "drawer-sachets")
	b.replaceIn("drawer-sachets/method.md", "Wipe out", "9 crumbs may fall.\n\nThen look. 9 crumbs may fall.\n\nWipe out")
	said := b.order("drawer-sachets", order{
		Act: "mend", Key: "found-00000000", Rule: "number-at-sentence-head",
		Was: "step 7: “9 crumbs may fall.” begins with a figure", Value: "write “Nine” instead of “9”",
	})
	if !strings.Contains(said.Wrong, "is gone or has changed") {
		t.Errorf("it said %q", said.Wrong)
	}
	if text, err := os.ReadFile(filepath.Join(b.folder, "drawer-sachets/method.md")); err != nil || strings.Contains(string(text), "Nine") {
		t.Error("one of two was changed, and nobody knows whether it was meant", err)
	}
}
