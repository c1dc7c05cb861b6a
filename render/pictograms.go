package render

import (
	"bytes"
	"regexp"
	"strconv"
	"strings"
	"unicode"

	"tallyfold/kit/picture"
)

// Pictograms are small drawings of one style in templates/pictograms. Each stands beside
// words that say the same, and so is hidden from who has the page read aloud.

// factPictograms are what stands before a fact, by the word that it begins with.
var factPictograms = map[string]string{"time": "work", "wait": "wait", "temperature": "temperature", "in": "vessel"}

// The arrows that say in the Markdown which way a temperature goes.
const (
	rising  = "↑ "
	falling = "↓ "
)

// pictogram gives the drawing of that name, in the colour of the words around it. One
// of a maker's own is cleaned like any drawing; it needs no styles and no names inside,
// as they would reach the whole page.
func (w *writer) pictogram(name string) string {
	if drawn, known := w.pictograms[name]; known {
		return drawn
	}
	if w.pictograms == nil {
		w.pictograms = map[string]string{}
	}
	w.pictograms[name] = w.booklet.drawPictogram(name)
	return w.pictograms[name]
}

func (b *Booklet) drawPictogram(name string) string {
	file, err := b.templates.File("pictograms/" + name + ".svg")
	if err != nil {
		return ""
	}
	ready, err := picture.Prepare(file, picture.InText, false)
	if err != nil || ready.Wide > 0 || reachesThePage.Match(ready.Data) {
		return ""
	}
	drawn := pictogramTitle.ReplaceAll(ready.Data, nil)
	return string(bytes.Replace(drawn, []byte("<svg"), []byte(`<svg class="pictogram" aria-hidden="true"`), 1))
}

var (
	pictogramTitle = regexp.MustCompile(`(?s)<(title|desc)[^>]*>.*?</(title|desc)>`)
	reachesThePage = regexp.MustCompile(`<style|<image|\s(?:style|id|class)=`)
)

// signs name the words at which a pictogram goes with what a text speaks of. A thermometer comes before a scale, since
// in some languages it is a scale for heat.
var signs = []string{"sign-gloves", "sign-glasses", "sign-ventilate", "sign-adult", "sign-temperature", "sign-scale"}

// cautionSigns are those that a caution may have beside it, toolSigns a tool.
var (
	cautionSigns = signs[:4]
	toolSigns    = []string{"sign-gloves", "sign-glasses", "sign-temperature", "sign-scale"}
)

// signsOf gives the pictograms for what a text speaks of, at most so many.
func (w *writer) signsOf(text string, among []string, most int) string {
	words := onlyWords(text)
	drawn := ""
	for _, sign := range among {
		for _, phrase := range strings.Split(w.booklet.word(sign), ",") {
			if strings.Contains(words, onlyWords(phrase)) && most > 0 {
				drawn += w.pictogram(strings.TrimPrefix(sign, "sign-"))
				most--
				break
			}
		}
	}
	return drawn
}

// onlyWords gives the words of a text in small letters, each between blanks.
func onlyWords(text string) string {
	words := strings.FieldsFunc(strings.ToLower(text), func(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsMark(r) })
	return " " + strings.Join(words, " ") + " "
}

// readyPictogram goes with what one ticks off before the first step.
func (w *writer) readyPictogram(text string) string {
	if w.class() != "before" && w.class() != "plain" {
		return ""
	}
	text = strings.TrimSpace(text)
	for name, pictogram := range map[string]string{"have-read": "cue", "have-all": "bag"} {
		if text == w.booklet.word(name) {
			return w.pictogram(pictogram)
		}
	}
	if age, err := strconv.Atoi(strings.TrimFunc(text, func(r rune) bool { return !unicode.IsDigit(r) })); err == nil && text == w.booklet.words.Count("adult-nearby", age) {
		return w.pictogram("adult")
	}
	return ""
}
