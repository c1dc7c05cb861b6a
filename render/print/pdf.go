package print

import (
	"context"

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
	// Area is what the page's own style leaves within its margins. Where it is given, page numbers are filled in and
	// it is told what does not fit. The zero value prints the page as it comes.
	Area Area
	// Type asks for the size of type to be found; nil leaves it to the page's own style.
	Type *TypeRange
}

// Printed is a document on its pages.
type Printed struct {
	PDF []byte
	// Pages is their number, and 0 where Options.Area was not given.
	Pages int
	Fit   Fit
}

// Lay prints a page, given as one HTML text with its pictures, fonts and styles inside. Margins come from the page's
// own style. Scripts don't run, and nothing outside the page can be reached. The PDF is tagged, its fonts are
// embedded, and the same page gives the same bytes from the same browser. Whatever has data-page-of="id" shows the
// number of the page on which that id begins.
//
// The error is ErrTooLarge, ErrBrowserCrashed, ErrBrowserHung, ErrClosed, ErrUnsettled, the context's, or says what is
// wrong with the page. What does not fit is no error: it is in the Fit.
func (b *Browser) Lay(ctx context.Context, html []byte, options Options) (Printed, error) {
	if err := checkSize(html); err != nil {
		return Printed{}, err
	}
	var printed Printed
	err := b.do(ctx, func(ctx context.Context, t *tab) error {
		err := t.asPage(ctx, options.Area)
		if err == nil {
			err = t.load(ctx, html)
		}
		if err == nil {
			printed, err = t.settled(ctx, options)
		}
		return err
	})
	return printed, err
}

// PDF is Lay for a page of which only the print is wanted.
func (b *Browser) PDF(ctx context.Context, html []byte, options Options) ([]byte, error) {
	printed, err := b.Lay(ctx, html, options)
	return printed.PDF, err
}

// print makes one print of a page that is laid out.

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
	if err := checkPaper(printed.Data, options.Paper); err != nil {
		return nil, err
	}
	return printed.Data, normalise(printed.Data)
}

func inches(millimetres float64) *float64 {
	inches := millimetres / millimetresPerInch
	return &inches
}
