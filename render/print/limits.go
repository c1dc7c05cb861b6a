package print

import (
	"bytes"
	"errors"
	"fmt"
)

// A time limit doesn't bound memory: a table of 25,000 rows took a browser 5 GB before its time was up. So the page
// is measured before it is sent.
const (
	// maxPage bounds the page with its pictures, which come as data inside it. Twelve pages of photographs at 300
	// dots an inch come to about 15 MB.
	maxPage = 64 << 20
	// maxWritten bounds what is not pictures or fonts: text, tags, drawings. A booklet of 12 pages has some 100 KB;
	// 4 MB of text, 1,500 pages, took a browser 1 GB.
	maxWritten = 4 << 20
	// maxTags bounds the opening and closing tags. A booklet of 12 pages has some thousands; 40,000 in one table, the
	// worst case, took a browser 1.5 GB.
	maxTags = 40_000
)

// checkSize refuses what is empty and what could exhaust the machine.
func checkSize(html []byte) error {
	if len(html) == 0 {
		return errors.New("there is nothing to print: the page is empty")
	}
	if len(html) > maxPage {
		return fmt.Errorf("the page has %d MB, the limit is %d MB: %w; use smaller pictures",
			len(html)>>20, maxPage>>20, ErrTooLarge)
	}
	if written := len(html) - embedded(html); written > maxWritten {
		return fmt.Errorf("the page has %d KB of text and drawings, the limit is %d KB: %w",
			written>>10, maxWritten>>10, ErrTooLarge)
	}
	if tags := bytes.Count(html, []byte{'<'}); tags > maxTags {
		return fmt.Errorf("the page has %d tags, the limit is %d: %w", tags, maxTags, ErrTooLarge)
	}
	return nil
}

// embedded counts the bytes of pictures and fonts written as base64 data.
func embedded(html []byte) int {
	mark := []byte(";base64,")
	total := 0
	for {
		at := bytes.Index(html, mark)
		if at < 0 {
			return total
		}
		html = html[at+len(mark):]
		length := 0
		for length < len(html) && isBase64(html[length]) {
			length++
		}
		total += length
		html = html[length:]
	}
}

func isBase64(c byte) bool {
	return c >= 'A' && c <= 'Z' || c >= 'a' && c <= 'z' || c >= '0' && c <= '9' || c == '+' || c == '/' || c == '='
}
