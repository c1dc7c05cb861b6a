package print

import (
	"bytes"
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"net/url"

	"github.com/ledongthuc/pdf"
)

// mostPrints is how often a page is printed at most until its page numbers are right. They are reckoned before the
// first print, which is most often the only one.
const mostPrints = 3

// settled lays a loaded page out and prints it. Where the print takes more pages than the layout had told and there
// may be, the type is made smaller by as little as there is, and so on.
func (t *tab) settled(ctx context.Context, options Options) (Printed, error) {
	for {
		laid, err := t.layOut(ctx, options)
		if err != nil {
			return Printed{}, err
		}
		printed, err := t.numbered(ctx, options, laid)
		if err != nil || options.Type == nil || len(laid.Overflows) > 0 || printed.Pages <= options.Type.Pages {
			return printed, err
		}
		smaller := *options.Type
		smaller.Largest = laid.Type - typeStep
		if smaller.Largest < smaller.Smallest {
			over := Overflow{Way: TooManyPages, By: float64(printed.Pages - smaller.Pages)}
			printed.Fit.Overflows = append(printed.Fit.Overflows, over)
			return printed, nil
		}
		options.Type = &smaller
	}
}

// numbered prints a page that is laid out, again if need be, until the page numbers in it are those of the print.
func (t *tab) numbered(ctx context.Context, options Options, laid laidOut) (Printed, error) {
	for range mostPrints {
		pdf, err := t.print(ctx, options)
		if err != nil || options.Area == (Area{}) {
			return Printed{PDF: pdf}, err
		}
		numbers, count, err := PageNumbers(pdf)
		if err != nil {
			return Printed{}, err
		}
		if agree(numbers, laid.Numbers) {
			return Printed{PDF: pdf, Pages: count, Fit: laid.fit()}, nil
		}
		if err := t.renumber(ctx, numbers); err != nil {
			return Printed{}, err
		}
		laid.Numbers = numbers
	}
	return Printed{}, fmt.Errorf("%w after %d prints", ErrUnsettled, mostPrints)
}

// agree says whether the print has everything on the page that was told. The print knows only the ids that a link
// leads to.
func agree(printed, told map[string]int) bool {
	for id, page := range printed {
		if told[id] != page {
			return false
		}
	}
	return true
}

// renumber fills in other page numbers.
func (t *tab) renumber(ctx context.Context, numbers map[string]int) error {
	list, err := json.Marshal(numbers)
	if err == nil {
		_, err = t.evaluate(ctx, fmt.Sprintf("{%s;writeNumbers(%s)}", writeNumbers, list))
	}
	return err
}

// PageNumbers reads from a PDF of PDF's making the page, counted from 1, of every id that a link within it points
// at, and how many pages there are.
func PageNumbers(printed []byte) (pages map[string]int, count int, err error) {
	defer func() {
		// The reader gives up on a broken file by a panic.
		if trouble := recover(); trouble != nil {
			err = fmt.Errorf("the PDF can't be read: %v", trouble)
		}
	}()
	reader, err := pdf.NewReader(bytes.NewReader(printed), int64(len(printed)))
	if err != nil {
		return nil, 0, fmt.Errorf("the PDF can't be read: %w", err)
	}
	// Pages are told apart by what is written in them: each names its own contents.
	count = reader.NumPage()
	numbers := make(map[string]int, count)
	for number := 1; number <= count; number++ {
		numbers[reader.Page(number).V.String()] = number
	}
	if count == 0 || len(numbers) != count {
		return nil, 0, errors.New("the PDF can't be read: its pages can't be told apart")
	}
	pages = map[string]int{}
	destinations := reader.Trailer().Key("Root").Key("Dests")
	for _, id := range destinations.Keys() {
		number, found := numbers[destinations.Key(id).Index(0).String()]
		if !found {
			return nil, 0, fmt.Errorf("the PDF can't be read: %q leads to no page", id)
		}
		// The browser writes ids as they stand in an address.
		if plain, err := url.PathUnescape(id); err == nil {
			id = plain
		}
		pages[id] = number
	}
	return pages, count, nil
}
