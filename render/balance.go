package render

import (
	"fmt"

	"tallyfold/kit"
	"tallyfold/kit/ledger"
	"tallyfold/kit/quantity"
	"tallyfold/render/figure"
	"tallyfold/templates"
)

// BalancePage gives the ledger as one HTML file for the maker: bars of what is packed,
// used and left, and for each run the flow from packs to pieces, each with a table of the
// same figures.
func BalancePage(k *kit.Kit, l *ledger.Ledger, set templates.Set) ([]byte, error) {
	words, err := set.Words(templates.SourceLanguage)
	if err != nil {
		return nil, err
	}
	b := &Booklet{
		Title: k.Name.Value, Language: words.Language, Form: A5, Figures: map[string]figure.Figure{}, templates: set, words: words,
	}
	a := &assembly{kit: k, ledger: l, words: words, booklet: b}
	text, err := set.Execute("balance.md", nil, a.balanceView())
	if err != nil {
		return nil, err
	}
	b.Markdown = []byte(manyBlankLines.ReplaceAllString(text, "\n\n"))
	return b.HTML()
}

// balanceView is what the template fills in. Strings are Markdown.
type balanceView struct {
	Name, Bars string
	Rows       []balanceRow
	Flows      []flowView
}

type balanceRow struct{ Letter, Name, Packed, Used, Left string }

// flowView is the flow of one run. Left tells what is not drawn.
type flowView struct {
	Run, Anchor, Figure string
	Streams             []streamRow
	Left                []string
}

type streamRow struct{ From, To, Amount string }

func (a *assembly) balanceView() balanceView {
	view := balanceView{Name: escape(a.kit.Name.Value)}
	bars := figure.Bars{Title: "Packed, used, left"}
	for _, balance := range a.ledger.Balances {
		c := a.kit.Component(balance.Thing)
		row := balanceRow{
			Letter: escape(c.Letter), Name: escape(c.String()),
			Packed: escape(balance.Packed.Show()), Used: escape(balance.Used.Show()), Left: escape(balance.Left.Show()),
		}
		view.Rows = append(view.Rows, row)
		bars.Rows = append(bars.Rows, figure.Bar{
			Letter: c.Letter, Name: c.String(), Says: BalanceSays(balance),
			Packed: lengthOf(balance.Packed), Used: lengthOf(balance.Used), Spare: lengthOf(balance.Spare),
		})
	}
	view.Bars = a.draw("bars", bars.Draw())
	for i, run := range passesOf(a.kit, a.ledger) {
		if flow, ok := a.flowOf(run, i+1); ok {
			view.Flows = append(view.Flows, flow)
		}
	}
	return view
}

// BalanceSays tells a balance beside its bar, which never tells anything by its length alone.
func BalanceSays(b *ledger.Balance) string {
	switch {
	case !b.Used.Known():
		return "used: " + b.Used.Show()
	case !b.Packed.Known():
		return "packed: " + b.Packed.Show()
	case b.Left.Known() && b.Left.Value().Sign() < 0:
		return fmt.Sprintf("%s packed, %s too little", b.Packed.Show(), quantity.Show(b.Left.Value().Abs(), b.Dimension))
	case b.Left.Known() && b.Left.Value().IsZero():
		return b.Packed.Show() + ", all used"
	}
	return fmt.Sprintf("%s of %s, %s left", b.Used.Show(), b.Packed.Show(), b.Left.Show())
}

// lengthOf a bar, -1 where the figure isn't known.
func lengthOf(f *ledger.Figure) float64 {
	if !f.Known() {
		return -1
	}
	return f.Value().Float()
}

// flowOf puts the flow of one run into the page. ok is false where nothing is weighed.
func (a *assembly) flowOf(run *kit.Run, number int) (flowView, bool) {
	flow, ok := FlowOf(a.kit, a.ledger, run)
	if !ok {
		return flowView{}, false
	}
	view := flowView{Run: escape(run.Name.Value), Anchor: fmt.Sprintf("flow-%d", number)}
	for _, s := range flow.Streams {
		view.Streams = append(view.Streams, streamRow{escape(s.From), escape(s.To), escape(s.Amount)})
	}
	if flow.Left != "" {
		view.Left = append(view.Left, escape(flow.Left))
	}
	view.Figure = a.draw(fmt.Sprintf("flow-%d", number), flow.Figure)
	return view, true
}
