package workbench

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/go-rod/rod/lib/input"
)

// A leaflet and a list of parts become a kit: what was recognised is taken or left one by one.
func TestStartFromALeaflet(t *testing.T) {
	b := newBench(t, "drawer-sachets")
	w := b.open("/start")
	w.size(1400, 1000)
	w.fill("kit-name", "Tallow lights")
	w.fill("leaflet", "Melt 200 g of wax in a pan. Stir in 10 mL of scent and wait 5 minutes. Use the rest of the wax for a melt.\n")
	w.fill("parts", "250 g wax\n12 mL scent\n3 jars\n")
	w.press("#starting button[value=read]")
	w.sees("#proposed", "200 g of wax")
	w.ready()
	w.look("proposed")
	w.eval(`() => { for (const item of document.querySelectorAll(".proposals li")) if (item.querySelector("mark").textContent.includes("10 mL")) item.querySelector("input").click() }`)
	w.press("#starting button[value=make]")
	w.sees("h1", "The method")
	w.ready()
	text := b.file("tallow-lights/method.md")
	if !strings.Contains(text, "[200 g of wax](take:wax)") || strings.Contains(text, "[10 mL") {
		t.Errorf("method.md is\n%s", text)
	}
	if parts := b.file("tallow-lights/kit.yaml"); !strings.Contains(parts, "12 mL") || !strings.Contains(parts, "3") {
		t.Errorf("kit.yaml is\n%s", parts)
	}
	w.sees("#verdict", "must be fixed") // what is unknown is told, not made up
	w.goTo("http://" + b.host + "/")
	w.sees(".shelf", "Tallow lights")
	w.fine()
}

// What can be done to a thing as a whole: duplicated, moved, given another key everywhere,
// taken out; and a unit picked, a detail added, an entry put on a list.
func TestThingsAsAWhole(t *testing.T) {
	b := newBench(t, "drawer-sachets")
	w := b.open("/kit/drawer-sachets/box")
	w.size(1400, 1000)
	w.press(`[data-act=double][data-path='["components","tag"]']`)
	w.sees("#tally .bars", "Paper tag (copy)")
	w.press(`[data-act=place][data-number="6"][data-path='["components","tag-2"]']`)
	w.wait("it moved up", `() => document.getElementById("f-components.tag-2").nextElementSibling?.id === "f-components.tag"`)

	w.fill("f-components.cedar-rename", "cedar-wood")
	w.press(`[data-rename='["components","cedar"]']`)
	w.wait("the other key", `() => !!document.getElementById("f-components.cedar-wood") && !document.getElementById("f-components.cedar")`)
	b.until("the key in the method", func() bool { return strings.Contains(b.file("drawer-sachets/method.md"), "take:cedar-wood") })
	w.sees("#verdict", "must be fixed") // the copy is packed, and nothing uses it

	w.press(`[data-act=remove][data-path='["components","tag-2"]']`)
	w.seesNot("#tally .bars", "Paper tag (copy)")
	w.sees("#verdict", "Nothing must be fixed")

	// A tool is retired, and put back on another day: not a byte is another then.
	b.until("the copy is out", func() bool { return !strings.Contains(b.file("drawer-sachets/kit.yaml"), "tag-2") })
	before := b.file("drawer-sachets/kit.yaml")
	w.press(`[data-act=remove][data-path='["tools","scissors"]']`)
	b.until("it is out", func() bool { return !strings.Contains(b.file("drawer-sachets/kit.yaml"), "  scissors:") })
	b.stop()
	b.serve()
	w = b.open("/kit/drawer-sachets/box")
	w.size(1400, 1000)
	w.sees("#retired-tools", "Scissors")
	w.sees("#retired-components", "Paper tag (copy)")
	w.look("retired")
	w.press("#retired-tools [data-act=return]")
	w.seesNot("#s-tools", "Retired")
	w.saved()
	b.until("it is back", func() bool { return b.file("drawer-sachets/kit.yaml") == before })

	// A unit is picked, a detail added, a list made longer.
	w.press(`[data-unit="f-components.ribbon.spare-in"]`)
	w.wait("the units", `() => document.querySelector("[data-unit='f-components.ribbon.spare-in']").options.length > 3`)
	w.eval(`() => { const unit = document.querySelector("[data-unit='f-components.ribbon.spare-in']"); unit.value = "mm"; unit.dispatchEvent(new Event("change", { bubbles: true })) }`)
	w.wait("the other unit", `() => document.getElementById("f-components.ribbon.spare-in").value === "10 mm"`)
	w.eval(`async () => { const more = document.getElementById("f-components.ribbon-more"); more.dispatchEvent(new Event("focusin", { bubbles: true })); while (more.options.length < 5) await new Promise(done => setTimeout(done, 20)); more.value = "also called"; more.dispatchEvent(new Event("change", { bubbles: true })) }`)
	w.wait("the new detail", `() => !!document.getElementById("f-components.ribbon.also_called")`)
	w.fill("f-components.ribbon.also_called-in", "tape")
	w.wait("the list", `() => !!document.getElementById("f-components.ribbon.also_called-next")`)
	w.fill("f-components.ribbon.also_called-next", "band")
	w.press(`[data-add="f-components.ribbon.also_called-next"]`)
	w.wait("two entries", `() => document.getElementById("f-components.ribbon.also_called.1-in")?.value === "band"`)
	b.until("list and unit on the disk", func() bool {
		text := b.file("drawer-sachets/kit.yaml")
		return strings.Contains(text, "also called: [tape, band]") && strings.Contains(text, "spare: 10 mm")
	})
	w.fine()
}

// Earlier states can be looked at beside the present one, and brought back, also by a program
// that was started later; and Undo goes on where the last one stopped.
func TestEarlierStatesAcrossStarts(t *testing.T) {
	b := newBench(t, "drawer-sachets")
	w := b.open("/kit/drawer-sachets/box")
	w.fill("f-maker-in", "First Name")
	b.until("the first name in the place of the old", func() bool {
		return strings.HasPrefix(b.file("drawer-sachets/kit.yaml"), "name: Drawer sachets\nmaker: First Name\nabout: ")
	})
	w.fill("f-maker-in", "Second Name")
	w.saved()
	b.until("the second name", func() bool { return strings.Contains(b.file("drawer-sachets/kit.yaml"), "Second Name") })
	b.stop()
	b.serve()
	w = b.open("/kit/drawer-sachets/box")
	w.size(1400, 1000)
	for range 40 { // one batch of keystrokes after the other is taken back
		if w.eval(`() => document.getElementById("f-maker-in").value`) == "Brindle Quay Workroom" {
			break
		}
		w.press("#top [data-act=undo]")
		w.wait("it is done", `() => !document.documentElement.dataset.busy`)
	}
	if got := w.eval(`() => document.getElementById("f-maker-in").value`); got != "Brindle Quay Workroom" {
		t.Errorf("all taken back, the maker is %q", got)
	}
	w.saved()
	w.goTo("http://" + b.host + "/kit/drawer-sachets/earlier?file=kit.yaml")
	w.eval(`async () => { for (const link of document.querySelectorAll(".states a")) { const text = await (await fetch(link.href)).text(); if (text.includes("Second Name")) { location.href = link.href; return } } }`)
	w.sees(".beside .differs", "Second Name")
	w.ready()
	w.look("earlier")
	w.press("[data-back]")
	b.until("the state brought back", func() bool { return strings.Contains(b.file("drawer-sachets/kit.yaml"), "Second Name") })
	w.fine()
}

// A language is begun, a name translated here, and the method opened for translation.
func TestWordsInAnotherLanguage(t *testing.T) {
	b := newBench(t, "pocket-notebooks")
	w := b.open("/kit/pocket-notebooks/words")
	w.size(1400, 1000)
	w.eval(`() => { document.getElementById("new-language").value = "fr" }`)
	w.press("[data-language=new-language]")
	w.sees("h1", "The method")
	w.ready()
	b.until("the begun translation", func() bool {
		_, err := os.Stat(filepath.Join(b.folder, "pocket-notebooks/method.fr.md"))
		return err == nil
	})
	if text := b.file("pocket-notebooks/method.fr.md"); !strings.Contains(text, "of=") {
		t.Errorf("no step names the one it translates:\n%.400s", text)
	}
	w.goTo("http://" + b.host + "/kit/pocket-notebooks/words?language=fr")
	w.sees("#missing", "texts have no words in it yet")
	w.look("words")
	before := w.eval(`() => document.querySelectorAll(".untranslated li").length`)
	w.fill("t-0", "Carnets de poche")
	w.press("[data-translate][data-for=t-0]")
	w.wait("one less", `before => document.querySelectorAll(".untranslated li").length < Number(before)`, before)
	b.until("the translated name", func() bool {
		text, err := os.ReadFile(filepath.Join(b.folder, "pocket-notebooks/kit.fr.txt"))
		return err == nil && strings.Contains(string(text), "\n  Carnets de poche\n")
	})
	w.fine()
}

// In the editor: a name is completed, behind an amount as a link; one key links what is typed;
// chosen words become what the maker says they are; a link is changed in the form of its step.
func TestLinkingInTheEditor(t *testing.T) {
	b := newBench(t, "drawer-sachets")
	w := b.open("/kit/drawer-sachets/method")
	w.size(1400, 1000)
	w.typeAtEnd("\n\n## [Again](step:again-mix?in=bowl)\n\nTip in 3 g of ced")
	w.wait("the completion", `() => !!document.querySelector(".cm-tooltip-autocomplete")`)
	time.Sleep(200 * time.Millisecond) // the editor takes no key for a list that has only just come up
	w.must(w.page.Keyboard.Type(input.Enter))
	b.until("the completed link", func() bool {
		return strings.Contains(b.typed("drawer-sachets", "method.md"), "[3 g of Cedar shavings](take:cedar)")
	})
	w.must(w.page.InsertText(", and 2 g of dried lavender"))
	w.sees("#could", "2 g of dried lavender")
	w.chord(input.Enter, input.ControlLeft)
	b.until("the link by one key", func() bool {
		return strings.Contains(b.typed("drawer-sachets", "method.md"), "[2 g of dried lavender](take:lavender)")
	})
	// Words are chosen by the keyboard and said to be a wait.
	w.cursor(input.End)
	w.must(w.page.InsertText(". Let it be overnight"))
	w.wait("it is sent", `() => !document.documentElement.dataset.busy`)
	w.chord(input.ArrowLeft, input.ControlLeft, input.ShiftLeft)
	w.eval(`() => { document.getElementById("link-kind").value = "wait" }`)
	w.press("#link-do")
	b.until("the wait", func() bool { return strings.Contains(b.typed("drawer-sachets", "method.md"), "[overnight](wait:)") })
	// The form of the step: other words for a link.
	w.fill("w-again-mix-1", "4 g of cedar")
	w.press("[data-relink='again-mix-1']")
	b.until("the other words", func() bool {
		return strings.Contains(b.typed("drawer-sachets", "method.md"), "[4 g of cedar](take:cedar)")
	})
	// And the words are said to be something else, of another thing, into another vessel.
	row := "[data-relink='again-mix-1']"
	choose := `(button, picker, value) => { const select = document.querySelector(button).closest("li").querySelector(picker); select.dispatchEvent(new Event("focusin", { bubbles: true })); if (![...select.options].some(one => one.value === value)) throw new Error(value + " is not offered in " + picker); select.value = value; select.dispatchEvent(new Event("change", { bubbles: true })) }`
	w.wait("the row", `button => !!document.querySelector(button)`, row)
	w.eval(choose, row, ".of", "lavender")
	w.eval(choose, row, ".way[data-name=into]", "bag")
	w.press(row)
	b.until("the other thing", func() bool {
		return strings.Contains(b.typed("drawer-sachets", "method.md"), "[4 g of cedar](take:lavender?into=bag)")
	})
	w.wait("it is shown", `() => !!document.getElementById("into-again-mix-1-bag")`)
	w.eval(choose, row, ".is", "same")
	w.press(row)
	b.until("the other kind, without what only the first could say", func() bool {
		return strings.Contains(b.typed("drawer-sachets", "method.md"), "[4 g of cedar](same:lavender)")
	})
	// A wait is given a name, so that another step can tell that it is over.
	rowOfWait := "[data-relink='again-mix-3']"
	w.wait("the row", `button => !!document.querySelector(button)`, rowOfWait)
	w.eval(choose, rowOfWait, ".of", "again-wait")
	w.press(rowOfWait)
	b.until("the name of the wait", func() bool {
		return strings.Contains(b.typed("drawer-sachets", "method.md"), "[overnight](wait:again-wait)")
	})
	w.sees("#link-what", "overnight in “Again” (wait)")
	// Of what must be fixed, what may come of an amount that cannot be read is told with it.
	w.sees("#tally .worst", "“overnight”, which tells no amount and 3 more that may come of it")
	w.look("editor")
	// Over a link stands what it does, with its sum; over a finding what is wrong.
	w.cursor(input.End)
	element, err := w.page.Timeout(patience).Element("#editor .linked.is-take:last-of-type")
	w.must(err)
	w.must(element.Hover())
	w.sees(".cm-tooltip", "taken from its pack")

	// The destination is out of sight, and can be shown.
	w.seesNot("#editor .cm-content", "same:lavender")
	w.press("#show-links")
	w.cursor(input.End)
	w.sees("#editor .cm-content", "(same:lavender)")
	w.ready() // what the page was made anew for has not taken the editor's own marks off it
	w.fine()
}
