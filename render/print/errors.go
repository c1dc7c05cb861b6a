package print

import (
	"errors"
	"fmt"
	"strings"
	"unicode"
)

// The ways in which making a PDF can fail. Each is wrapped with what is known about the case; tell them apart with
// errors.Is. The texts are for the person at the keyboard.
var (
	// ErrNoBrowser says that no program was found that could print, and how to get one.
	ErrNoBrowser = errors.New(`a PDF needs the browser Chromium, or one built on it, and none was found
  Debian:       sudo apt install chromium-headless-shell    (chromium will do as well)
  other Linux:  install the package "chromium" (on Fedora "chromium-headless")
  macOS:        install Chromium in Applications: brew install --cask chromium
  Windows:      the browser that comes with Windows is enough; if it was removed, install Chromium
  elsewhere:    set ` + ProgramVariable + ` to the full path of the program
Everything but the PDF works without a browser`)

	// ErrBrowserCrashed says that the browser could not be started, or that it or the part of it that held the page stopped by itself.
	ErrBrowserCrashed = errors.New("the browser that makes the PDF failed")

	// ErrBrowserHung says that the browser was still not done at the end of the time limit, and was ended.
	ErrBrowserHung = errors.New("the browser that makes the PDF took too long and was ended")

	// ErrTooLarge says that the page is beyond the limits that keep the browser within the machine's memory.
	ErrTooLarge = errors.New("too large to be made into a PDF")

	// ErrUnsettled says that filling in page numbers moved the pages again at every try.
	ErrUnsettled = errors.New("the page numbers of the contents page don't settle")

	// ErrClosed says that the Browser had been closed before.
	ErrClosed = errors.New("the browser that makes the PDF was closed before")
)

// advice ends the message of every failure that another try or another browser may mend.
const advice = "Try again; if it happens again, install the browser anew or name another in " + ProgramVariable +
	". Everything but the PDF works without it"

// crashed describes a browser that ended or could not be understood.
func crashed(program, how, said string) error {
	return fmt.Errorf("%w: %s %s%s\n%s", ErrBrowserCrashed, program, how, lastWords(said), advice)
}

// hung describes a browser that ran into a time limit.
func hung(program, how string) error {
	return fmt.Errorf("%w: %s %s\n%s", ErrBrowserHung, program, how, advice)
}

// lastWords quotes the last line that the browser wrote. Browsers write codes that would disturb a terminal, and a
// program that is no browser may write anything: only what can be printed is kept.
func lastWords(said string) string {
	const longest = 200
	lines := strings.Split(strings.TrimSpace(said), "\n")
	last := strings.Map(func(r rune) rune {
		if r == unicode.ReplacementChar || !unicode.IsPrint(r) {
			return -1
		}
		return r
	}, strings.ToValidUTF8(lines[len(lines)-1], ""))
	if last = strings.TrimSpace(last); last == "" {
		return ""
	}
	if runes := []rune(last); len(runes) > longest {
		last = string(runes[:longest]) + "…"
	}
	return "; its last words: " + last
}
