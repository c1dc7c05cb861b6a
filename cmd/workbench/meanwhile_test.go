package workbench

import (
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"
	"time"

	"github.com/go-rod/rod/lib/input"
)

// slowAnswers has each answer to an order of the page come late, by so many milliseconds.
func (w *window) slowAnswers(late int) {
	w.bench.Helper()
	w.eval(`late => {
		window.late = late
		if (window.promptly) return
		window.promptly = window.fetch
		window.fetch = async (address, ...rest) => {
			const answer = await window.promptly(address, ...rest)
			if (String(address).endsWith("/change")) await new Promise(done => setTimeout(done, window.late))
			return answer
		}
	}`, late)
}

// What is typed while the program makes a link stays, before the link and behind it.
func TestTypingWhileALinkIsMade(t *testing.T) {
	b := newBench(t, "drawer-sachets")
	w := b.open("/kit/drawer-sachets/method")
	w.size(1400, 1000)
	w.typeAtEnd("\n\n## [Again](step:again?in=bowl)\n\nTip in 2 g of dried lavender")
	w.sees("#could", "2 g of dried lavender")
	w.wait("it is sent", `() => !document.documentElement.dataset.busy`)
	w.slowAnswers(600)
	w.chord(input.Enter, input.ControlLeft)
	b.until("the program to have made it", func() bool {
		return strings.Contains(b.typed("drawer-sachets", "method.md"), "Tip in [2 g of dried lavender](take:lavender)")
	})
	w.must(w.page.InsertText(" and mix"))
	w.must(w.page.Keyboard.Type(input.Home))
	w.must(w.page.InsertText("Now: "))
	const whole = "\n\nNow: Tip in [2 g of dried lavender](take:lavender) and mix"
	b.until("the link and what was typed meanwhile", func() bool { return strings.Contains(b.typed("drawer-sachets", "method.md"), whole) })
	w.slowAnswers(0)
	w.press("#show-links")
	w.reads("Now: Tip in [2 g of dried lavender](take:lavender) and mix", input.End)
	w.fine()
}

// Words are linked before the program has been told of them, and of what is typed before
// them after that.
func TestLinkingWordsThatAreStillOnTheirWay(t *testing.T) {
	b := newBench(t, "drawer-sachets")
	w := b.open("/kit/drawer-sachets/method")
	w.size(1400, 1000)
	w.typeAtEnd("\n\nLet it be")
	w.wait("it is sent", `() => !document.documentElement.dataset.busy`)
	w.slowAnswers(600)
	w.must(w.page.InsertText(" quite alone"))
	b.until("words on their way", func() bool { return strings.Contains(b.typed("drawer-sachets", "method.md"), "Let it be quite alone") })
	w.must(w.page.InsertText(" overnight"))
	w.chord(input.ArrowLeft, input.ControlLeft, input.ShiftLeft)
	w.eval(`() => { document.getElementById("link-kind").value = "wait"; document.getElementById("link-do").click() }`)
	w.must(w.page.Keyboard.Type(input.Home))
	w.must(w.page.InsertText("Now: "))
	b.until("the link at its words", func() bool {
		return strings.Contains(b.typed("drawer-sachets", "method.md"), "\n\nNow: Let it be quite alone [overnight](wait:)")
	})
	w.fine()
}

// What is chosen in a picker stays chosen when another program puts a thing before it.
func TestAChoiceStaysWhenThingsCome(t *testing.T) {
	b := newBench(t, "drawer-sachets")
	w := b.open("/kit/drawer-sachets/method")
	w.size(1400, 1000)
	w.eval(`() => { document.getElementById("link-what").value = "cedar" }`)
	b.replaceIn("drawer-sachets/kit.yaml", "components:\n", "components:\n  moss:\n    name: Oak moss\n    packed: 10 g\n")
	w.sees("#link-what", "Oak moss")
	if chosen := w.eval(`() => document.getElementById("link-what").value`); chosen != "cedar" {
		t.Errorf("“%s” is chosen now", chosen)
	}
	w.fine()
}

// Whatever is typed while links are made, another program changes the file, and answers come
// late, is in the text afterwards, once: on the page, in the program and on the disk.
func TestNothingTypedIsLost(t *testing.T) {
	random := rand.New(rand.NewPCG(11, 7))
	b := newBench(t, "drawer-sachets")
	w := b.open("/kit/drawer-sachets/method")
	w.size(1400, 1000)
	w.typeAtEnd("\n\n## [Again](step:again?in=bowl)\n\nThen")
	var typed []string
	outside := 0
	for i := range 50 {
		switch random.IntN(8) {
		case 0: // an amount is linked by one key, if it is known by then
			w.must(w.page.InsertText(fmt.Sprintf(" %d g of cedar", 7000+i)))
			typed = append(typed, fmt.Sprint(7000+i))
			w.chord(input.Enter, input.ControlLeft)
		case 1: // the word before the cursor is chosen and linked
			w.chord(input.ArrowLeft, input.ControlLeft, input.ShiftLeft)
			w.eval(`() => { document.getElementById("link-kind").value = "cue"; document.getElementById("link-do").click() }`)
			w.must(w.page.Keyboard.Type(input.End))
		case 2: // another program writes into the title of a step
			outside++
			b.replaceIn("drawer-sachets/method.md", "## [Tie", fmt.Sprintf("## [Tie o%d and", outside))
		case 3:
			w.slowAnswers(random.IntN(400))
			time.Sleep(time.Duration(random.IntN(500)) * time.Millisecond)
		case 4:
			w.chord(input.ArrowLeft, input.ControlLeft)
		default:
			w.must(w.page.InsertText(fmt.Sprintf(" w%dw ", i)))
			typed = append(typed, fmt.Sprintf("w%dw", i))
		}
	}
	w.slowAnswers(0)
	w.must(w.page.InsertText(" the end"))
	b.until("the last of it", func() bool { return strings.Contains(b.typed("drawer-sachets", "method.md"), "the end") })
	w.saved()
	for _, words := range append(typed, fmt.Sprintf("## [Tie o%d and", outside)) {
		if n := strings.Count(b.typed("drawer-sachets", "method.md"), words); n != 1 {
			t.Errorf("“%s” is in the program's text %d times", words, n)
		}
		if n := strings.Count(b.file("drawer-sachets/method.md"), words); n != 1 {
			t.Errorf("“%s” is on the disk %d times", words, n)
		}
	}
	if t.Failed() {
		t.Log(b.typed("drawer-sachets", "method.md"))
	}
	w.fine()
}

// Of words typed into an empty field and handed over, those typed after them stay; what is
// refused comes back.
func TestTheNextWordsOfAList(t *testing.T) {
	b := newBench(t, "drawer-sachets")
	w := b.open("/kit/drawer-sachets/box")
	w.size(1400, 1000)
	w.slowAnswers(600)
	w.eval(`() => { const form = document.querySelector("[data-add-to]"); form.querySelector("input").value = "Oak moss"; form.requestSubmit(); form.querySelector("input").value = "Myrrh" }`)
	w.wait("the new card", `() => [...document.querySelectorAll("[data-set]")].some(field => field.value === "Oak moss")`)
	w.wait("it is done", `() => !document.documentElement.dataset.busy`)
	if next := w.eval(`() => document.querySelector("[data-add-to] input").value`); next != "Myrrh" {
		t.Errorf("“%s” is left of “Myrrh”", next)
	}
	w.eval(`() => { const form = document.querySelector("[data-add-to]"); form.querySelector("input").value = "moss ".repeat(900); form.requestSubmit() }`)
	w.wait("the refusal", `() => !!document.querySelector(".refused[data-told]")`)
	w.wait("it is done", `() => !document.documentElement.dataset.busy`)
	if back := w.eval(`() => document.querySelector("[data-add-to] input").value`); !strings.HasPrefix(back, "moss moss") {
		t.Errorf("“%.20s” is in the field after it was refused", back)
	}
	w.fine()
}
