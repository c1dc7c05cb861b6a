package main

import (
	"context"
	"fmt"

	"github.com/spf13/pflag"

	"tallyfold/render"
	"tallyfold/render/print"
)

// Where sheets are printed.
const (
	foldAtHome = "home"
	foldAtShop = "shop"
)

// The edges at which a printer turns a sheet over.
const (
	shortEdge = "short"
	longEdge  = "long"
)

// shopBleed is what a print shop wants beyond the cut, in millimetres (common practice, from memory).
const shopBleed = 3

// foldingOptions say how pages are laid on sheets.
type foldingOptions struct {
	where     string
	turn      string
	thickness float64
}

func (f *foldingOptions) flags(flags *pflag.FlagSet) {
	flags.StringVar(&f.where, "fold", "", "lay the pages on sheets to fold, printed at `home` or by a shop (home, shop)")
	flags.StringVar(&f.turn, "turn", shortEdge, "the `edge` at which the printer turns a sheet over (short, long)")
	flags.Float64Var(&f.thickness, "thickness", 0.1, "of the paper, in `mm`: inner pages are moved in by as much a sheet")
}

func (f *foldingOptions) check() error {
	switch {
	case f.where != "" && f.where != foldAtHome && f.where != foldAtShop:
		return fmt.Errorf("--fold %q is not known; there are: %s, %s", f.where, foldAtHome, foldAtShop)
	case f.turn != shortEdge && f.turn != longEdge:
		return fmt.Errorf("--turn %q is not known; there are: %s, %s", f.turn, shortEdge, longEdge)
	case f.thickness < 0 || f.thickness > 1:
		return fmt.Errorf("--thickness %g mm is no paper; 80 g/m² has about 0.1 mm", f.thickness)
	}
	return nil
}

// sheets are the pages laid on sheets, and a trial of the same folds with nothing but
// page numbers and how to fold. pages counts those of the sheets, blank ones too.
type sheets struct {
	folded, trial []byte
	pages         int
}

// fold lays a booklet on sheets where it is to be folded: a leaflet always is.
func (f *foldingOptions) fold(ctx context.Context, browser *print.Browser, booklet *render.Booklet, printed print.Printed) (sheets, error) {
	form := booklet.Form
	if form.Way == render.Single || form.Way == render.Bound && f.where == "" {
		return sheets{}, nil
	}
	sides, pages := f.sides(form, printed.Pages)
	folded, err := print.Impose(printed.PDF, sides)
	if err != nil || f.where == "" {
		return sheets{folded: folded, pages: pages}, err
	}
	page, err := booklet.FoldTrial(pages, f.turn == longEdge)
	if err != nil {
		return sheets{}, err
	}
	trial, err := browser.PDF(ctx, page, print.Options{Paper: print.Paper(form.Paper), Title: booklet.Title, Language: booklet.Language})
	if err == nil {
		trial, err = print.Impose(trial, sides)
	}
	return sheets{folded: folded, trial: trial, pages: pages}, err
}

func (f *foldingOptions) sides(form render.Form, pages int) ([]print.Side, int) {
	folding := print.Folding{LongEdge: f.turn == longEdge, Thickness: f.thickness}
	if f.where == foldAtShop {
		folding.Bleed = shopBleed
	} else {
		folding.Sheet = print.SheetFor(form.Across(), form.Paper.Height)
	}
	if form.Way == render.Leaf {
		return print.Panels(form.Panels, print.Paper(form.Paper), folding), 2 * form.Panels
	}
	return print.Stitched(pages, print.Paper(form.Paper), folding), (pages + 3) / 4 * 4
}
