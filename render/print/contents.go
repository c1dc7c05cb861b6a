package print

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"maps"
	"net/url"

	"github.com/ledongthuc/pdf"
)

// mostPrints is how often a page is printed at most until its page numbers are right. Numbers that are filled in
// seldom move anything, so two prints are usual.
const mostPrints = 3

// PDFWithContents prints a page that tells in which page of the PDF its own parts are. It calls html first with nil,
// prints, and calls it again with the page, from 1, of every id that a link of the document points at (href="#id").
// This goes on until the numbers that were filled in are those of the print, else the error is ErrUnsettled. The
// integer is the number of pages. html should keep room for the numbers in the first call, so that nothing moves.
func (b *Browser) PDFWithContents(ctx context.Context, html func(pages map[string]int) []byte, options Options) ([]byte, int, error) {
	var filledIn map[string]int
	page := html(nil)
	for range mostPrints {
		printed, err := b.PDF(ctx, page, options)
		if err != nil {
			return nil, 0, err
		}
		pages, count, err := PageNumbers(printed)
		if err != nil {
			return nil, 0, err
		}
		if filledIn != nil && maps.Equal(pages, filledIn) {
			return printed, count, nil
		}
		next := html(pages)
		if bytes.Equal(next, page) {
			return printed, count, nil
		}
		filledIn, page = pages, next
	}
	return nil, 0, fmt.Errorf("%w after %d prints", ErrUnsettled, mostPrints)
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
