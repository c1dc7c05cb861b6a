package render

import (
	"errors"
	"fmt"
	"regexp"
	"slices"
	"strings"
	"text/template"

	"tallyfold/kit"
	"tallyfold/kit/diag"
	"tallyfold/kit/hazard"
	"tallyfold/kit/ledger"
	"tallyfold/kit/picture"
	"tallyfold/kit/schedule"
	"tallyfold/render/figure"
	"tallyfold/templates"
)

// Options says which booklet is wanted of a kit.
type Options struct {
	// Form is what the booklet is made as; the zero value is A5.
	Form Form
	// Black prints in black alone: no colour carries a meaning then, or is missed.
	Black bool
	// Draft marks every page as not for sale.
	Draft bool
	// Language of the fixed words, with the region whose units are told ("en-US"); ""
	// is the kit's own.
	Language string
	// Pictures keeps those made ready for booklets of other sizes and languages.
	Pictures *picture.Kept
	// Unchecked lists what no rule could check, for the colophon: whole sentences.
	Unchecked []string
	// hazards are those of the kit as its maker wrote it, where that is not the kit handed
	// over: what a caution speaks of is known by the words of the maker's language.
	hazards []hazard.Action
	// written is the language that the maker wrote the kit in, where it is not that of
	// the kit handed over.
	written string
}

// own is the language that the maker wrote in.
func (o Options) own(k *kit.Kit) string {
	if o.written != "" {
		return o.written
	}
	return k.Language.Value
}

// Assemble puts a booklet together from the kit, its ledger and the templates.
// Every figure in it comes from the first two. The error says which template or
// words don't fit; a kit with gaps gives a booklet with gaps, never an error.
func Assemble(k *kit.Kit, l *ledger.Ledger, set templates.Set, options Options) (*Booklet, error) {
	words, unread := set.Words(language(k, options))
	if misfit := new(templates.Misfit); unread != nil && !errors.As(unread, &misfit) {
		return nil, unread
	}
	if options.Form == (Form{}) {
		options.Form = A5
	}
	a := &assembly{kit: k, ledger: l, plan: schedule.Of(k), passes: passesOf(k, l), set: set, words: words, options: options, measures: measuringIn(words.Language, options.own(k)), booklet: &Booklet{
		Title: k.Name.Value, Language: words.Language, Form: options.Form, Black: options.Black, Draft: options.Draft,
		Figures: map[string]figure.Figure{}, Pictures: map[string][]byte{},
		templates: set, words: words,
	}}
	a.hazards = options.hazards
	if a.hazards == nil {
		a.hazards = hazard.In(k, l)
	}
	a.booklet.Foot = a.foot()
	if accent := k.Look.Accent; accent.Given() {
		a.booklet.Accent = &accent.Value
	}
	markdown, err := a.markdown()
	if err := templates.Join(unread, a.fits(), err); err != nil {
		return nil, err
	}
	a.booklet.Markdown = []byte(markdown)
	howTo := a.howTo()
	a.booklet.howTo = &howTo
	return a.booklet, nil
}

func language(k *kit.Kit, options Options) string {
	switch {
	case options.Language != "":
		return options.Language
	case k.Language.Value != "":
		return k.Language.Value
	}
	return templates.SourceLanguage
}

// passesOf gives the runs as the ledger followed them: a kit without runs has one
// nameless run, which only the ledger's entries know.
func passesOf(k *kit.Kit, l *ledger.Ledger) []*kit.Run {
	if len(k.Runs) > 0 {
		return k.Runs
	}
	for _, stage := range l.Stages {
		return []*kit.Run{stage.Run}
	}
	return k.Passes()
}

// assembly is the making of one booklet.
type assembly struct {
	kit     *kit.Kit
	ledger  *ledger.Ledger
	plan    schedule.Plan
	passes  []*kit.Run
	set     templates.Set
	words   templates.Words
	options Options
	booklet *Booklet
	// hazards are the actions of the steps that can hurt someone.
	hazards []hazard.Action
	// measures is how the readers measure.
	measures measuring
	// misfits are what doesn't fit of the maker's own templates.
	misfits diag.List
}

// A part of the booklet: its template is booklet/NAME.md.
type bookletPart struct {
	name string
	// values gives what the template prints, or nil where this kit has nothing
	// for it.
	values func(*assembly) any
	// droppable parts are left out of short forms: they tell again, in order or as a
	// drawing, what stands elsewhere, or are a page to write on. No part with a
	// caution or an amount of its own is droppable.
	droppable bool
}

// bookletParts in the order they are bound. To add one, write a template, a Go
// file with its values, and a line here.
var bookletParts = []bookletPart{
	{name: "cover", values: coverValues},
	{name: "glance", values: glanceValues, droppable: true},
	{name: "box", values: boxValues},
	{name: "kitchen", values: kitchenValues},
	{name: "before", values: beforeValues},
	{name: "method", values: methodValues},
	{name: "gauges", values: gaugesValues, droppable: true},
	{name: "trouble", values: troubleValues},
	{name: "batch", values: batchValues, droppable: true},
	{name: "storing", values: storingValues},
	{name: "more", values: moreValues},
	{name: "colophon", values: colophonValues},
}

// cardParts make the card: the method alone, told short.
var cardParts = []bookletPart{
	{name: "cover", values: coverValues},
	{name: "card", values: cardValues},
}

// parts are those of the form that is made.
func (a *assembly) parts() []bookletPart {
	if a.options.Form.Card {
		return cardParts
	}
	return slices.DeleteFunc(slices.Clone(bookletParts), func(part bookletPart) bool {
		return part.droppable && a.options.Form.Short
	})
}

// markdown executes the templates. The contents, which stand after the cover,
// are made last, when all headings are known.
func (a *assembly) markdown() (string, error) {
	var texts []string
	for _, part := range a.parts() {
		values := part.values(a)
		if values == nil {
			continue
		}
		text, err := a.execute(part.name, values)
		if err != nil {
			return "", err
		}
		texts = append(texts, text)
	}
	if a.options.Form.Short {
		return strings.Join(texts, "\n\n") + "\n", nil
	}
	contents, err := a.execute("contents", contentsValues(a, strings.Join(texts[1:], "\n\n")))
	if err != nil {
		return "", err
	}
	texts = append([]string{texts[0], contents}, texts[1:]...)
	return strings.Join(texts, "\n\n") + "\n", nil
}

var manyBlankLines = regexp.MustCompile(`\n{3,}`)

func (a *assembly) execute(part string, values any) (string, error) {
	name, functions := "booklet/"+part+".md", template.FuncMap{"say": a.say, "count": a.words.Count}
	if !a.judgeOwn(name, functions, values) {
		return "", nil // told with all others at the end
	}
	text, err := a.set.Execute(name, functions, values)
	if err != nil {
		return "", err
	}
	a.judgeLost(name, text, values)
	return strings.TrimSpace(manyBlankLines.ReplaceAllString(text, "\n\n")), nil
}

// say gives fixed words; the values filled in are Markdown already.
func (a *assembly) say(name string, fill ...any) string { return a.words.Say(name, fill...) }

// foot names the kit and its edition at the bottom of each page.
func (a *assembly) foot() string {
	return strings.Join(a.nameAndEdition(func(text string) string { return text }), ", ")
}

// nameAndEdition of the kit, each written by the given function.
func (a *assembly) nameAndEdition(write func(string) string) []string {
	parts := []string{write(a.kit.Name.Value)}
	if a.kit.Edition.Given() {
		parts = append(parts, a.say("edition", "number", fmt.Sprint(a.kit.Edition.Value)))
	}
	return parts
}

// runs are those with a name: what differs from pass to pass is worth telling.
func (a *assembly) runs() []*kit.Run {
	if len(a.kit.Runs) < 2 {
		return nil
	}
	return a.kit.Runs
}

// passesOf are the runs that follow the part a step stands in.
func (a *assembly) passesOf(step *kit.Step) []*kit.Run {
	for _, part := range a.kit.Method.Parts {
		for _, s := range part.Steps {
			if s == step {
				return a.passesOfPart(part)
			}
		}
	}
	return nil
}

func (a *assembly) passesOfPart(part *kit.Part) []*kit.Run {
	var passes []*kit.Run
	for _, run := range a.passes {
		if run.Follows(part) {
			passes = append(passes, run)
		}
	}
	return passes
}

// stepAnchor is the id of a step's section.
func stepAnchor(step *kit.Step) string { return fmt.Sprintf("step-%d", step.Number) }

// troubleAnchor is the id of a trouble's section.
func (a *assembly) troubleAnchor(trouble *kit.Trouble) string {
	for i, t := range a.kit.Troubles {
		if t == trouble {
			return fmt.Sprintf("trouble-%d", i+1)
		}
	}
	return "trouble"
}
