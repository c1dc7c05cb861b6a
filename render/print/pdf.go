package print

import (
	"context"
	"encoding/json"
	"fmt"

	"github.com/go-rod/rod/lib/proto"
)

// Options says how a page is printed.
type Options struct {
	// Paper is the sheet, in portrait. The zero value leaves the size to the page's own style, or else the browser.
	Paper Paper
	// Title and Language (a BCP 47 tag, such as en or fr-CA) describe the PDF; empty takes those of the page.
	Title, Language string
	// Outline lists the headings beside the pages in a reader.
	Outline bool
}

// PDF prints a page, given as one HTML text with its pictures, fonts and styles inside. Margins come from the page's
// own style. Scripts don't run, and nothing outside the page can be reached. The PDF is tagged, its fonts are
// embedded, and the same page gives the same bytes from the same browser.
//
// The error is ErrTooLarge, ErrBrowserCrashed, ErrBrowserHung, ErrClosed, the context's, or says what is wrong with
// the page.
func (b *Browser) PDF(ctx context.Context, html []byte, options Options) ([]byte, error) {
	if err := checkSize(html); err != nil {
		return nil, err
	}
	var pdf []byte
	err := b.do(ctx, func(ctx context.Context, t *tab) error {
		err := t.load(ctx, html)
		if err == nil {
			err = t.settle(ctx, options)
		}
		if err == nil {
			pdf, err = t.print(ctx, options)
		}
		return err
	})
	if err != nil {
		return nil, err
	}
	if err := checkPaper(pdf, options.Paper); err != nil {
		return nil, err
	}
	return pdf, normalise(pdf)
}

// ready is what we run in the page, whose own scripts don't: it describes the page and waits for its fonts. Without
// being asked, a browser doesn't read those that only the margins of the printed page use.
const ready = `(async (title, language) => {
	if (title) document.title = title
	if (language) document.documentElement.lang = language
	await Promise.allSettled(Array.from(document.fonts, font => font.load()))
})(%s, %s)`

// settle makes a loaded page ready for print.
func (t *tab) settle(ctx context.Context, options Options) error {
	title, err := json.Marshal(options.Title)
	if err != nil {
		return err
	}
	language, err := json.Marshal(options.Language)
	if err != nil {
		return err
	}
	result, err := proto.RuntimeEvaluate{
		Expression:   fmt.Sprintf(ready, title, language),
		AwaitPromise: true,
	}.Call(t.page.Context(ctx))
	if err == nil && result.ExceptionDetails != nil {
		err = fmt.Errorf("the browser can't read the page: %s", result.ExceptionDetails.Text)
	}
	return err
}

func (t *tab) print(ctx context.Context, options Options) ([]byte, error) {
	request := proto.PagePrintToPDF{
		MarginTop:               new(float64),
		MarginBottom:            new(float64),
		MarginLeft:              new(float64),
		MarginRight:             new(float64),
		PrintBackground:         true,
		PreferCSSPageSize:       true,
		GenerateTaggedPDF:       true,
		GenerateDocumentOutline: options.Outline,
		TransferMode:            proto.PagePrintToPDFTransferModeReturnAsBase64,
	}
	if options.Paper != (Paper{}) {
		request.PaperWidth = inches(options.Paper.Width)
		request.PaperHeight = inches(options.Paper.Height)
	}
	printed, err := request.Call(t.page.Context(ctx))
	if err != nil {
		return nil, err
	}
	return printed.Data, nil
}

func inches(millimetres float64) *float64 {
	inches := millimetres / millimetresPerInch
	return &inches
}
