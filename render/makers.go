package render

import (
	"strconv"
	"strings"

	"github.com/yuin/goldmark/ast"

	"tallyfold/kit"
	"tallyfold/kit/picture"
	"tallyfold/kit/source"
)

// passage is a maker's text together with what its links and cautions mean.
type passage struct {
	body       source.Span
	operations []*kit.Operation
	cautions   []kit.Caution
	// deeper moves its headings down.
	deeper int
	// passes are the runs it is followed in, for what a link with no text says.
	passes []*kit.Run
	// own are the booklet's own cautions for it.
	own []ownCaution
}

// prose writes a maker's passage for the booklet.
func (a *assembly) prose(passage passage) string {
	p := &prose{
		deeper: passage.deeper,
		link: func(p *prose, at int, link *ast.Link) string {
			return a.link(p, passage, operationAt(passage.operations, at), link)
		},
		picture: a.picture,
		signal:  func(at int, head string) string { return a.signalAt(passage.cautions, at, head) },
	}
	if len(passage.own) > 0 {
		p.before = a.ownBefore(passage.own)
	}
	return p.rewrite(passage.body)
}

// stepProse is the text of a step, with the booklet's own cautions before the blocks that they
// guard.
func (a *assembly) stepProse(step *kit.Step, passes []*kit.Run) string {
	return a.prose(passage{
		body: step.Body, operations: step.Operations, cautions: step.Cautions, deeper: 1, passes: passes, own: a.ownCautions(step),
	})
}

func operationAt(operations []*kit.Operation, at int) *kit.Operation {
	for _, o := range operations {
		if o.Span.Start == at {
			return o
		}
	}
	return nil
}

// signalAt gives the signal word of the quotation at a place. In words.md no
// cautions are kept, so there the head of the quotation tells.
func (a *assembly) signalAt(cautions []kit.Caution, at int, head string) string {
	for _, c := range cautions {
		if c.Span.Start <= at && at < c.Span.End {
			return a.signalWord(c.Signal)
		}
	}
	for _, signal := range signals {
		if strings.HasPrefix(head, strings.ToUpper(signal)) {
			return a.say(signal)
		}
	}
	return ""
}

// signalWord is the signal word in the booklet's language.
func (a *assembly) signalWord(signal kit.Signal) string {
	return a.say(strings.ToLower(string(signal)))
}

// link writes what a customer reads of a link: its text, set in bold where it
// tells an amount, a time or a temperature; references lead to their place.
func (a *assembly) link(p *prose, passage passage, o *kit.Operation, link *ast.Link) string {
	words := p.inlines(link)
	if o == nil {
		return words
	}
	if strings.TrimSpace(words) == "" {
		words = a.filledIn(o, passage.passes)
	}
	switch o.Kind {
	case kit.ToStep:
		return a.stepReference(o, words)
	case kit.ToHelp:
		return a.troubleReference(o, words)
	case kit.ShowPicture:
		p.after = append(p.after, a.pictureOf(o.Target, words, words, picture.InText))
		return words
	case kit.Cue:
		p.after = append(p.after, "> **"+a.say("look-for")+"** "+strings.TrimSpace(words))
		return words
	}
	words += a.inReadersUnits(o)
	if tellsHowMuch(o) {
		return bold(words)
	}
	return words
}

// tellsHowMuch says whether a link's text holds something to measure, count or
// wait for: what a reader looks for when coming back to a line.
func tellsHowMuch(o *kit.Operation) bool {
	switch o.Kind {
	case kit.Take, kit.Use, kit.Fill, kit.Place, kit.Move, kit.Left, kit.Wait, kit.Warm, kit.Cool, kit.Same:
		return o.Phrase.Portion != kit.NoPortion || len(o.Phrase.Amounts) > 0 || o.Phrase.Each || o.Text == ""
	}
	return false
}

// stepReference leads to a step and tells its number.
func (a *assembly) stepReference(o *kit.Operation, words string) string {
	step := a.kit.Step(o.Target)
	if step == nil {
		return words
	}
	number := strconv.Itoa(step.Number)
	if !strings.Contains(words, number) {
		words += " (" + a.say("step", "number", number) + ")"
	}
	return "[" + words + "](#" + stepAnchor(step) + ")"
}

func (a *assembly) troubleReference(o *kit.Operation, words string) string {
	trouble := a.kit.Trouble(o.Target)
	if trouble == nil {
		return words
	}
	return "[" + words + "](#" + a.troubleAnchor(trouble) + ")"
}

// filledIn is what stands for a link without a text: the tool's own words, from
// the definition and the ledger.
func (a *assembly) filledIn(o *kit.Operation, passes []*kit.Run) string {
	switch o.Kind {
	case kit.Take, kit.Use, kit.Place, kit.Fill:
		return a.amountAndName(o, passes)
	case kit.ToStep:
		if step := a.kit.Step(o.Target); step != nil {
			return a.say("step", "number", step.Number)
		}
	case kit.ToHelp:
		if trouble := a.kit.Trouble(o.Target); trouble != nil {
			return escape(trouble.Title)
		}
	case kit.ShowPicture:
		return ""
	}
	if name, ok := a.kit.Named(o.Target); ok {
		return a.say("the-thing", "thing", escape(a.small(name.String())))
	}
	return ""
}

// amountAndName tells an amount that is the same in all runs, with the name.
func (a *assembly) amountAndName(o *kit.Operation, passes []*kit.Run) string {
	needs := a.needsOf([]*kit.Operation{o}, passes)
	name := escape(a.small(a.roleOrName(o.Target)))
	if len(needs) == 0 {
		return name
	}
	amount := needs[0].amount
	for _, n := range needs[1:] {
		if n.amount != amount {
			return name
		}
	}
	if amount == "" {
		return name
	}
	if needs[0].counted {
		return a.say("count-of", "amount", escape(amount), "thing", name)
	}
	return a.say("amount-of", "amount", escape(amount), "thing", name)
}

// roleOrName is what people call a thing; a role goes by its own word.
func (a *assembly) roleOrName(target string) string {
	if a.kit.IsRole(target) {
		return strings.ReplaceAll(target, "-", " ")
	}
	return a.kit.Called(target)
}

// picture writes a picture of the maker's; one that isn't there leaves its words.
func (a *assembly) picture(p *prose, image *ast.Image) string {
	words := p.inlines(image)
	name, _, _ := strings.Cut(strings.TrimPrefix(strings.TrimPrefix(string(image.Destination), "picture:"), "pictures/"), "?")
	caption := words
	if len(image.Title) > 0 {
		caption = escape(decodeMarkdown(image.Title))
	}
	shown := a.pictureOf(name, words, caption, picture.InText)
	if shown == "" {
		return words
	}
	return shown
}

// pictureOf puts a picture of the kit folder into the booklet, made ready for its
// place. The caption stands under it; "" leaves it out.
func (a *assembly) pictureOf(name, words, caption string, place picture.Place) string {
	own := a.kit.Picture(name)
	if own == nil {
		return ""
	}
	ready, err := a.options.Pictures.Prepare(own.Data, a.options.Form.roomFor(place), a.options.Black)
	if err != nil {
		return "" // a finding says so
	}
	key := "picture-" + strconv.Itoa(a.pictureNumber(own)) + sizes[place] // one may be shown in two places
	a.booklet.Pictures[key] = ready.Data
	if caption != "" {
		caption = ` "` + strings.ReplaceAll(capital(caption), `"`, `\"`) + `"`
	}
	return "![" + words + "](picture:" + key + caption + ")"
}

// sizes tell one picture made ready for several places apart.
var sizes = map[picture.Place]string{picture.InList: "-in-list", picture.OnCover: "-on-cover"}

// pictureNumber gives a picture a plain name in the booklet, whatever its file
// is called.
func (a *assembly) pictureNumber(own *kit.Picture) int {
	for i, p := range a.kit.Pictures {
		if p == own {
			return i + 1
		}
	}
	return 0
}
