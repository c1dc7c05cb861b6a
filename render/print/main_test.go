package print

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"os"
	"testing"

	"github.com/ledongthuc/pdf"
)

// shared is one browser for all tests that don't harm it.
var (
	shared      *Browser
	sharedError error
)

func TestMain(m *testing.M) {
	shared, sharedError = Open(context.Background(), Settings{Warn: func(message string) { fmt.Fprintln(os.Stderr, message) }})
	code := m.Run()
	if shared != nil {
		shared.Close()
	}
	os.Exit(code)
}

// browser gives the shared browser. Without one the test fails: a test that was skipped has shown nothing.
func browser(t testing.TB) *Browser {
	t.Helper()
	needsBrowser(t, sharedError)
	return shared
}

func needsBrowser(t testing.TB, err error) {
	t.Helper()
	if errors.Is(err, ErrNoBrowser) {
		t.Fatalf("this test needs a browser: run \"make browser\"\n%v", err)
	}
	if err != nil {
		t.Fatal(err)
	}
}

// fresh opens a browser of the test's own, closed at its end.
func fresh(t testing.TB, settings Settings) *Browser {
	t.Helper()
	b, err := Open(context.Background(), settings)
	needsBrowser(t, err)
	t.Cleanup(b.Close)
	return b
}

// printed makes a PDF or ends the test.
func printed(t testing.TB, html string, options Options) []byte {
	t.Helper()
	file, err := browser(t).PDF(context.Background(), []byte(html), options)
	if err != nil {
		t.Fatal(err)
	}
	return file
}

// read opens a PDF for looking into.
func read(t testing.TB, file []byte) *pdf.Reader {
	t.Helper()
	reader, err := pdf.NewReader(bytes.NewReader(file), int64(len(file)))
	if err != nil {
		t.Fatal(err)
	}
	return reader
}

// words gives the text of a PDF.
func words(t testing.TB, file []byte) string {
	t.Helper()
	plain, err := read(t, file).GetPlainText()
	if err != nil {
		t.Fatal(err)
	}
	var text bytes.Buffer
	if _, err := text.ReadFrom(plain); err != nil {
		t.Fatal(err)
	}
	return text.String()
}
