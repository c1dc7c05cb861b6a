package workbench

import (
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"time"

	"github.com/go-rod/rod"
	"github.com/go-rod/rod/lib/input"
	"github.com/go-rod/rod/lib/proto"
)

// A window is one page in the browser, as a person has it.
type window struct {
	bench *bench
	page  *rod.Page

	lock sync.Mutex
	// complaints are errors of scripts and of the content policy, and what was asked for
	// from outside.
	complaints []string
}

// watch listens for what must not happen.
func (w *window) watch() {
	complain := func(words string) {
		w.lock.Lock()
		w.complaints = append(w.complaints, words)
		w.lock.Unlock()
	}
	go w.page.EachEvent(func(e *proto.RuntimeExceptionThrown) {
		complain("script: " + e.ExceptionDetails.Text + " " + e.ExceptionDetails.Exception.Description)
	}, func(e *proto.LogEntryAdded) {
		if e.Entry.Level == proto.LogLogEntryLevelError && !strings.Contains(e.Entry.Text, "net::ERR") && !strings.Contains(e.Entry.Text, "status of 4") {
			complain("log: " + e.Entry.Text)
		}
	}, func(e *proto.PageJavascriptDialogOpening) {
		complain("asks before leaving: " + e.Message)
		_ = proto.PageHandleJavaScriptDialog{Accept: true}.Call(w.page)
	}, func(e *proto.NetworkRequestWillBeSent) {
		if at := e.Request.URL; strings.HasPrefix(at, "http") && !strings.HasPrefix(at, "http://"+w.bench.host) {
			complain("asked for " + at)
		}
	})()
	_ = proto.LogEnable{}.Call(w.page)
	_ = proto.RuntimeEnable{}.Call(w.page)
	_ = proto.NetworkEnable{}.Call(w.page)
}

// fine fails the test if anything was complained of.
func (w *window) fine() {
	w.bench.Helper()
	w.lock.Lock()
	defer w.lock.Unlock()
	for _, words := range w.complaints {
		w.bench.Error(words)
	}
	w.complaints = nil
}

func (w *window) must(err error) {
	w.bench.Helper()
	if err != nil {
		w.look("failed")
		w.bench.Fatal(err)
	}
}

func (w *window) goTo(address string) {
	w.bench.Helper()
	w.must(w.page.Timeout(patience).Navigate(address))
	w.must(w.page.Timeout(patience).WaitLoad())
	w.ready()
}

// ready waits until the scripts of the page listen.
func (w *window) ready() {
	w.bench.Helper()
	w.wait("the page's scripts", `() => document.documentElement.dataset.ready === "yes" && (!document.getElementById("editor") || document.getElementById("editor").dataset.seenReady === "yes")`)
}

// wait waits for something to be true in the page.
func (w *window) wait(what, condition string, about ...any) {
	w.bench.Helper()
	for end := time.Now().Add(patience); ; time.Sleep(15 * time.Millisecond) {
		result, err := w.page.Timeout(patience).Eval(condition, about...)
		if err == nil && result.Value.Bool() {
			return
		}
		if time.Now().After(end) {
			w.look("waited")
			w.fine()
			w.bench.Fatalf("waited in vain for %s; %v\n%s", what, err, w.text("main"))
		}
	}
}

// sees waits until words can be read in a part of the page.
func (w *window) sees(selector, words string) {
	w.bench.Helper()
	w.wait("“"+words+"” in "+selector, `(selector, words) => [...document.querySelectorAll(selector)].some(one => one.textContent.includes(words))`, selector, words)
}

func (w *window) seesNot(selector, words string) {
	w.bench.Helper()
	w.wait("no “"+words+"” in "+selector, `(selector, words) => ![...document.querySelectorAll(selector)].some(one => one.textContent.includes(words))`, selector, words)
}

// text is what can be read in a part of the page.
func (w *window) text(selector string) string {
	result, err := w.page.Timeout(patience).Eval(`selector => document.querySelector(selector)?.innerText || ""`, selector)
	if err != nil {
		return err.Error()
	}
	return result.Value.Str()
}

func (w *window) eval(script string, about ...any) string {
	w.bench.Helper()
	result, err := w.page.Timeout(patience).Eval(script, about...)
	w.must(err)
	var text string
	if json.Unmarshal([]byte(result.Value.JSON("", "")), &text) == nil {
		return text
	}
	return result.Value.JSON("", "")
}

// press clicks what a person would click, opening what it stands in, once the page is still.
func (w *window) press(selector string) {
	w.bench.Helper()
	w.wait("the page to be still", `() => !document.documentElement.dataset.busy`)
	w.wait(selector, `selector => { const at = document.querySelector(selector); for (let up = at; up; up = up.parentElement) if (up.nodeName === "DETAILS" && up.querySelector(":scope > summary") !== at) up.open = true; at?.scrollIntoView({block: "center"}); return !!at }`, selector)
	element, err := w.page.Timeout(patience).Element(selector)
	w.must(err)
	w.must(element.Click(proto.InputMouseButtonLeft, 1))
}

// chord presses a key while others are held down.
func (w *window) chord(key input.Key, held ...input.Key) {
	w.bench.Helper()
	w.must(w.page.KeyActions().Press(held...).Type(key).Release(held...).Do())
}

// fill types into a field in place of what it holds, key by key.
func (w *window) fill(id, words string) {
	w.bench.Helper()
	selector := "[id='" + id + "']"
	w.wait(id, `selector => { const at = document.querySelector(selector); for (let up = at; up; up = up.parentElement) if (up.nodeName === "DETAILS") up.open = true; at?.scrollIntoView({block: "center"}); return !!at }`, selector)
	element, err := w.page.Timeout(patience).Element(selector)
	w.must(err)
	w.must(element.Focus())
	w.must(element.SelectAllText())
	w.must(w.page.Timeout(patience).Keyboard.Type(input.Backspace))
	w.must(element.Input(words))
}

// saved waits until everything is on the disk.
func (w *window) saved() {
	w.bench.Helper()
	w.wait("all is sent", `() => !document.documentElement.dataset.busy`)
	w.sees("#kept", "All saved")
}

// size makes the window as wide and high as a device.
func (w *window) size(wide, high int) {
	w.must(w.page.SetViewport(&proto.EmulationSetDeviceMetricsOverride{Width: wide, Height: high, DeviceScaleFactor: 1}))
}

// look keeps a picture of the page where the variable LOOK names a folder.
func (w *window) look(name string) {
	folder := os.Getenv("LOOK")
	if folder == "" {
		return
	}
	picture, err := w.page.Timeout(patience).Screenshot(true, &proto.PageCaptureScreenshot{Format: proto.PageCaptureScreenshotFormatPng})
	if err == nil {
		err = os.WriteFile(filepath.Join(folder, strings.ReplaceAll(w.bench.Name(), "/", "-")+"-"+name+".png"), picture, 0o644)
	}
	if err != nil {
		w.bench.Log(err)
	}
}
