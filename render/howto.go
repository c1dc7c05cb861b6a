package render

import (
	"bytes"
	"encoding/json"
	"fmt"
	"strings"

	"golang.org/x/net/html"
	"golang.org/x/net/html/atom"

	"tallyfold/kit"
	"tallyfold/kit/ledger"
	"tallyfold/kit/quantity"
)

// howTo is a booklet as programs read it: schema.org's HowTo, as JSON-LD in the head of
// the page. Names of types and fields are those of https://schema.org/HowTo. Times are
// durations of ISO 8601.
type howTo struct {
	Context     string         `json:"@context"`
	Type        string         `json:"@type"`
	Name        string         `json:"name"`
	Description string         `json:"description,omitempty"`
	Language    string         `json:"inLanguage"`
	URL         string         `json:"url,omitempty"`
	Yield       string         `json:"yield,omitempty"`
	PerformTime string         `json:"performTime,omitempty"` // with hands on it
	TotalTime   string         `json:"totalTime,omitempty"`
	Supplies    []howToItem    `json:"supply,omitempty"`
	Tools       []howToItem    `json:"tool,omitempty"`
	Steps       []howToElement `json:"step"`
}

// howToItem is a HowToSupply or a HowToTool.
type howToItem struct {
	Type     string         `json:"@type"`
	Name     string         `json:"name"`
	Quantity *howToQuantity `json:"requiredQuantity,omitempty"`
}

// howToQuantity has the base unit of its dimension in words and by its code in UN/CEFACT
// Recommendation 20 (codes told from memory).
type howToQuantity struct {
	Type     string  `json:"@type"`
	Value    float64 `json:"value"`
	UnitText string  `json:"unitText,omitempty"`
	UnitCode string  `json:"unitCode"`
}

// howToElement is a HowToSection (a part), a HowToStep, or in a step a HowToTip (a
// caution) or a HowToDirection (what to do).
type howToElement struct {
	Type        string         `json:"@type"`
	Name        string         `json:"name,omitempty"`
	Position    int            `json:"position,omitempty"`
	Text        string         `json:"text,omitempty"`
	PerformTime string         `json:"performTime,omitempty"`
	TotalTime   string         `json:"totalTime,omitempty"`
	Elements    []howToElement `json:"itemListElement,omitempty"`
}

var howToUnits = map[quantity.Dimension][2]string{
	quantity.Mass: {"g", "GRM"}, quantity.Volume: {"mL", "MLT"}, quantity.Count: {"", "C62"},
	quantity.Length: {"mm", "MMT"}, quantity.Area: {"mm²", "MMK"},
}

func (a *assembly) howTo() howTo {
	h := howTo{
		Context: "https://schema.org", Type: "HowTo", Name: a.kit.Name.Value, Description: strings.TrimSpace(a.kit.About.Value),
		Language: a.words.Language, URL: a.kit.Page.Value, Yield: a.kit.Makes.Value.Written,
		PerformTime: claimedDuration(a.kit.Time.HandsOn), TotalTime: claimedDuration(a.kit.Time.Total),
	}
	for _, c := range a.kit.Components {
		h.Supplies = append(h.Supplies, a.howToSupply(c.ID, c.String()))
	}
	for _, one := range a.kit.Household {
		h.Supplies = append(h.Supplies, a.howToSupply(one.ID, one.String()))
	}
	for _, tool := range a.kit.Tools {
		if !a.standsIn(tool) {
			h.Tools = append(h.Tools, howToItem{Type: "HowToTool", Name: a.plainWords(a.toolWords(tool, tool.String()))})
		}
	}
	for _, part := range a.kit.Method.Parts {
		h.Steps = append(h.Steps, a.howToPart(part)...)
	}
	return h
}

func (a *assembly) howToSupply(id, name string) howToItem {
	item := howToItem{Type: "HowToSupply", Name: name}
	balance := a.ledger.Balance(id)
	if balance == nil || balance.NeverUsed() || !balance.Used.Known() {
		return item
	}
	if unit, ok := howToUnits[balance.Used.Dimension]; ok {
		item.Quantity = &howToQuantity{Type: "QuantitativeValue", Value: balance.Used.Value().Float(), UnitText: unit[0], UnitCode: unit[1]}
	}
	return item
}

// howToPart is the section of a part, or its steps where it has no title.
func (a *assembly) howToPart(part *kit.Part) []howToElement {
	passes := a.passesOfPart(part)
	intro := a.prose(passage{body: part.Body, operations: part.Operations, cautions: part.Cautions, deeper: 2, passes: passes})
	elements := a.howToDirections(intro, howToElement{Type: "HowToTip"})
	for _, step := range part.Steps {
		text := a.stepProse(step, passes)
		direction := howToElement{Type: "HowToDirection"}
		direction.PerformTime, direction.TotalTime = a.howToTimes(step)
		elements = append(elements, howToElement{Type: "HowToStep", Name: step.Title, Position: step.Number, Elements: a.howToDirections(text, direction)})
	}
	if part.Title == "" {
		return elements
	}
	return []howToElement{{Type: "HowToSection", Name: part.Title, Elements: elements}}
}

// howToTimes are the work of a step, and the time from its start to its end.
func (a *assembly) howToTimes(step *kit.Step) (perform, total string) {
	for _, line := range a.plan.Lines {
		if line.Step == step {
			return duration(line.Work), duration(ledger.Plus(quantity.Duration, "", line.Work, line.Wait))
		}
	}
	return "", ""
}

func duration(time *ledger.Figure) string {
	if !some(time) || !time.Known() {
		return ""
	}
	return isoDuration(time.Value())
}

func claimedDuration(claimed kit.Said[quantity.Amount]) string {
	if !claimed.Given() || claimed.Value.Dimension != quantity.Duration {
		return ""
	}
	return isoDuration(claimed.Value.Nominal)
}

// isoDuration writes seconds as a duration of ISO 8601-1:2019, 5.5.2: P4D, PT1H30M. Part
// of a second is rounded up. No time at all is "".
func isoDuration(seconds quantity.Number) string {
	left := seconds.Int()
	if !seconds.IsWhole() {
		left++
	}
	if left <= 0 {
		return ""
	}
	out := "P"
	if days := left / 86400; days > 0 {
		out += fmt.Sprintf("%dD", days)
	}
	if left %= 86400; left > 0 {
		out += "T"
	}
	for _, unit := range []struct {
		seconds int64
		letter  string
	}{{3600, "H"}, {60, "M"}, {1, "S"}} {
		if n := left / unit.seconds; n > 0 {
			out += fmt.Sprintf("%d%s", n, unit.letter)
		}
		left %= unit.seconds
	}
	return out
}

// howToDirections gives the cautions of a text as tips, and all else as one direction,
// which is given with its kind and times.
func (a *assembly) howToDirections(markdown string, direction howToElement) []howToElement {
	var elements []howToElement
	var lines []string
	for _, block := range a.readBlocks(markdown) {
		if strings.HasPrefix(classOf(block), "signal ") {
			elements = append(elements, howToElement{Type: "HowToTip", Text: spaced(block)})
		} else if text := spaced(block); text != "" && block.DataAtom != atom.Figure {
			lines = append(lines, text)
		}
	}
	if direction.Text = strings.Join(lines, "\n"); direction.Text != "" {
		elements = append(elements, direction)
	}
	return elements
}

// readBlocks are the blocks of some Markdown, read as the booklet is.
func (a *assembly) readBlocks(markdown string) []*html.Node {
	var blocks []*html.Node
	var walk func(*html.Node)
	walk = func(node *html.Node) {
		for child := node.FirstChild; child != nil; child = child.NextSibling {
			switch child.DataAtom {
			case atom.Html, atom.Body, atom.Section:
				walk(child)
			case atom.Head:
			default:
				blocks = append(blocks, child)
			}
		}
	}
	walk(a.read(markdown))
	return blocks
}

// plainWords gives the words of some Markdown without any marks.
func (a *assembly) plainWords(markdown string) string {
	var words []string
	for _, block := range a.readBlocks(markdown) {
		if text := spaced(block); text != "" {
			words = append(words, text)
		}
	}
	return strings.Join(words, " ")
}

// spaced is the text of a block with one space between words, and between the blocks in it.
func spaced(node *html.Node) string {
	var out strings.Builder
	var walk func(*html.Node)
	walk = func(node *html.Node) {
		if node.Type == html.TextNode {
			out.WriteString(node.Data)
		}
		for child := node.FirstChild; child != nil; child = child.NextSibling {
			walk(child)
		}
		switch node.DataAtom {
		case atom.P, atom.Li, atom.Td, atom.Th, atom.Div, atom.Br:
			out.WriteByte(' ')
		}
	}
	walk(node)
	return strings.Join(strings.Fields(out.String()), " ")
}

// data is the booklet in all its languages as JSON-LD, "" where there is none. Nothing in
// it can end the element that it stands in: the library writes < as \u003c.
func (b *Booklet) data() (string, error) {
	if b.howTo == nil {
		return "", nil
	}
	all := []howTo{*b.howTo}
	for _, further := range b.Further {
		all = append(all, *further.howTo)
	}
	var told any = all
	if len(all) == 1 {
		told = all[0]
	}
	var out bytes.Buffer
	encoder := json.NewEncoder(&out)
	encoder.SetIndent("", " ")
	if err := encoder.Encode(told); err != nil {
		return "", fmt.Errorf("the description for programs can't be written: %w", err)
	}
	return strings.TrimSpace(out.String()), nil
}
