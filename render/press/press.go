// Package press prints booklets and labels: what render and render/labels put together goes
// through the browser of render/print, with the paper, margins and type that each has.
package press

import (
	"context"

	"tallyfold/render"
	"tallyfold/render/labels"
	"tallyfold/render/print"
)

// Booklet lays a booklet on its pages. What has no room is in the Fit, and no error.
func Booklet(ctx context.Context, browser *print.Browser, booklet *render.Booklet) (print.Printed, error) {
	html, err := booklet.HTML()
	if err != nil {
		return print.Printed{}, err
	}
	form := booklet.Form
	width, height := form.Area()
	options := print.Options{
		Paper: print.Paper(form.Paper), Title: booklet.Title, Language: booklet.Language, Outline: true,
		Area: print.Area{Width: width, Height: height},
	}
	if form.Smallest > 0 {
		options.Type = &print.TypeRange{Largest: form.Type, Smallest: form.Smallest, Pages: form.Pages}
	}
	return browser.Lay(ctx, html, options)
}

// Labels prints sheets of labels whose HTML is made already.
func Labels(ctx context.Context, browser *print.Browser, document *labels.Document, html []byte) ([]byte, error) {
	paper := document.Grid.Paper
	return browser.PDF(ctx, html, print.Options{
		Paper: print.Paper{Name: paper.Name, Width: paper.Wide, Height: paper.Tall}, Title: document.Title, Language: document.Language,
	})
}
