package print

import (
	"context"
	"errors"
	"strings"
	"testing"
)

// TestTooLarge holds each limit from both sides.
func TestTooLarge(t *testing.T) {
	picture := `<img src="data:image/png;base64,`
	for name, page := range map[string]string{
		"pictures": strings.Repeat(picture+strings.Repeat("A", 1<<20)+`">`, 65),
		"text":     strings.Repeat("word ", maxWritten/5+1),
		"tags":     strings.Repeat("<b>", maxTags+1),
		"one mark": picture + strings.Repeat("-", maxWritten), // which is no picture
	} {
		_, err := browser(t).PDF(context.Background(), []byte(page), Options{Paper: A5})
		if !errors.Is(err, ErrTooLarge) {
			t.Errorf("%s, PDF: the error is %v", name, err)
		}
		if _, err = browser(t).Screenshot(context.Background(), []byte(page), 10, 10, 1); !errors.Is(err, ErrTooLarge) {
			t.Errorf("%s, picture: the error is %v", name, err)
		}
	}
	for name, page := range map[string]string{
		"pictures": strings.Repeat(picture+strings.Repeat("A", 1<<20)+`">`, 60),
		"text":     strings.Repeat("word ", maxWritten/5-1),
		"tags":     strings.Repeat("<b>", maxTags),
	} {
		if err := checkSize([]byte(page)); err != nil {
			t.Errorf("%s just within the limit: %v", name, err)
		}
	}
	if _, err := browser(t).PDF(context.Background(), nil, Options{Paper: A5}); err == nil {
		t.Error("nothing was printed")
	}
}
