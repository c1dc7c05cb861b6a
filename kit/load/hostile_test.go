package load

import (
	"fmt"
	"strings"
	"testing"
	"time"

	"tallyfold/kit/source"
)

// hostile are files made to take long: each grows with n bytes.
var hostile = []struct {
	why  string
	file func(n int) string
}{
	{"aliases that double at each step", func(n int) string {
		var b strings.Builder
		for i := 1; b.Len() < n; i++ {
			fmt.Fprintf(&b, "a%d: &a%d [*a%d, *a%d]\n", i, i, i-1, i-1)
		}
		return "a0: &a0 [x, x]\n" + b.String()
	}},
	{"an alias inside itself", func(int) string { return "a: &a [*a]\n" }},
	{"open brackets", func(n int) string { return strings.Repeat("[", n) }},
	{"open braces", func(n int) string { return strings.Repeat("{a: ", n/4) }},
	{"dashes in a row", func(n int) string { return strings.Repeat("- ", n/2) }},
	{"one huge text", func(n int) string { return "name: " + strings.Repeat("x", n) }},
	{"one huge amount", func(n int) string { return "makes: " + strings.Repeat("9", n) }},
	{"one huge key", func(n int) string { return "components: {" + strings.Repeat("x", n) + ": 1}" }},
	{"thousands of keys", func(n int) string { return lines("k%d: 1\n", n) }},
	{"thousands of the same key", func(n int) string { return lines("name: %d\n", n) }},
	{"thousands of components", func(n int) string { return "components:\n" + lines("  c%d: {packd: 1}\n", n) }},
	{"thousands of references to nothing", func(n int) string {
		return "components:\n" + lines("  c%d: {packed: 1}\n", n/2) + "mixtures:\n" + lines("  m%d: {made in: pot}\n", n/2)
	}},
	{"thousands of shares", func(n int) string {
		return "components: {c: {packed: 1 g, share: [" + strings.Repeat("1 % of wax, ", n/12) + "]}}"
	}},
	{"thousands of levels", func(n int) string {
		return "components: {c: {packed: 1, container: {inside: {" + lines("%d mm: 1 mL, ", n) + "}}}}"
	}},
	{"a quotation mark open from the first line on", func(n int) string { return "name: \"x\n" + lines("k%d: 1\n", n) }},
	{"an open brace with good lines before it", func(n int) string { return lines("k%d: 1\n", n) + "x: {a: 1\n" }},
	{"a bad line between good ones", func(n int) string { return lines("k%d: 1\n", n/2) + "b\n" + lines("j%d: 1\n", n/2) }},
	{"brackets that never match on many lines", func(n int) string { return "a: [\n" + strings.Repeat("]\n[\n", n/4) }},
	{"wide characters on one long line", func(n int) string { return "é: {" + strings.Repeat("a: é, ", n/7) + "}" }},
	{"notes and blank lines", func(n int) string { return strings.Repeat("a: 1 # c\n# d\n\n", n/14) }},
	{"NUL after NUL", func(n int) string { return strings.Repeat("\x00", n) }},
	{"tabs", func(n int) string { return strings.Repeat("\ta: b\n", n/6) }},
	{"thousands of odd keys", func(n int) string { return "household:\n" + lines("  Key %d: {}\n", n) }},
}

func lines(format string, n int) string {
	var b strings.Builder
	for i := 0; b.Len() < n; i++ {
		fmt.Fprintf(&b, format, i)
	}
	return b.String()
}

// TestHostile: files of the full size that is read end in time.
func TestHostile(t *testing.T) {
	for _, c := range hostile {
		t.Run(c.why, func(t *testing.T) {
			text := c.file(MaxBytes - 1<<10)
			began := time.Now()
			_, found := Kit(source.NewFile("kit.yaml", []byte(text)))
			if took := time.Since(began); took > longest {
				t.Errorf("%d bytes took %v", len(text), took)
			} else {
				t.Log(len(text), "bytes", len(found), "findings", took.Round(time.Millisecond))
			}
			if len(found) == 0 {
				t.Error("nothing found")
			}
		})
	}
}
