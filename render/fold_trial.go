package render

import "strings"

// foldTrial is what the trial of a fold shows: a number on each page, and on the first
// how to fold.
type foldTrial struct {
	Language, Direction, Title, Style string
	Width, Height                     string
	Steps                             []string
	Pages                             []int
}

// FoldTrial gives a page of HTML for each page of the booklet that has nothing but its
// number, and on the first how the sheets are printed and folded: to be laid on sheets
// as the booklet is, and tried before a hundred are printed.
func (b *Booklet) FoldTrial(pages int, longEdge bool) ([]byte, error) {
	steps := b.foldSteps(longEdge)
	style, err := b.templates.FaceRules(b.word("fold-title") + strings.Join(steps, ""))
	if err != nil {
		return nil, err
	}
	trial := foldTrial{
		Language: b.Language, Direction: b.word("direction"), Title: b.word("fold-title"), Style: style,
		Width: millimetres(b.Form.Paper.Width), Height: millimetres(b.Form.Paper.Height), Steps: steps,
	}
	for page := range pages {
		trial.Pages = append(trial.Pages, page+1)
	}
	shell, err := b.templates.Execute("fold.html", nil, trial)
	return []byte(shell), err
}

func (b *Booklet) foldSteps(longEdge bool) []string {
	turn := "fold-short"
	if longEdge {
		turn = "fold-long"
	}
	steps := []string{b.word("fold-print"), b.word(turn)}
	switch {
	case b.Form.Way == Bound:
		steps = append(steps, b.word("fold-stitched"), b.word("fold-staple"))
	case b.Form.Panels == 3:
		steps = append(steps, b.word("fold-in-three"))
	default:
		steps = append(steps, b.word("fold-in-four"))
	}
	return append(steps, b.word("fold-right"), b.word("fold-wrong"))
}
