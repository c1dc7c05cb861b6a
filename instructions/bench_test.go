package instructions

import (
	"fmt"
	"os"
	"strings"
	"testing"
	"time"

	"tallyfold/kit/load"
	"tallyfold/kit/source"
)

// thirtySteps is the method of the design fifteen times over.
func thirtySteps(t testing.TB) []byte {
	t.Helper()
	text, err := os.ReadFile("testdata/scent-gels/method.md")
	if err != nil {
		t.Fatal(err)
	}
	var b strings.Builder
	for i := range 15 {
		again := strings.NewReplacer("step:dissolve", fmt.Sprintf("step:dissolve-%d", i), "step:fill", fmt.Sprintf("step:fill-%d", i),
			"wait:set", fmt.Sprintf("wait:set-%d", i))
		b.WriteString(again.Replace(string(text)))
	}
	return []byte(b.String())
}

func BenchmarkThirtySteps(b *testing.B) {
	text, k := thirtySteps(b), read(b, gels)
	amounts := load.Amounts(k)
	b.SetBytes(int64(len(text)))
	for b.Loop() {
		method, found := ReadMethod(source.NewFile("method.md", text), k, amounts)
		if len(method.Steps()) != 30 || len(found) != 0 {
			b.Fatalf("%d steps, %d findings", len(method.Steps()), len(found))
		}
	}
}

// The largest files that are read, of what takes the longest, take bounded time.
func TestHostileMethods(t *testing.T) {
	k := read(t, gels)
	amounts := load.Amounts(k)
	for _, piece := range []string{
		"[a](b", "[", "](", "[a](<b", "> ", "1. ", "- a\n  ", "*a", "**a _b ", "`` ", "<", "<!-- ", "<a b=\"", "|a\n|-\n", "&", "~~~\n",
		"[x]: y\n", "![a](picture:", "# a\n", "## a\n", "## [a](step:a?in=pn)\n", "take:a ", "(take:powder ", "[2 min](wait:a)",
		"[720 g of 1 2 3 4 5](take:water) ", "[all half the rest](take:powder)", "[x](take:powder?into=", "CAUTION: x\n\n", "a pan a scale ",
	} {
		text := "## [S](step:s?in=pan)\n" + strings.Repeat(piece, (maxText-30)/len(piece))
		checkTime(t, piece, func() { ReadMethod(source.NewFile("method.md", []byte(text)), k, amounts) })
	}
	for _, text := range []string{
		"[" + strings.Repeat("a ", 30000) + "](take:water)",
		"[" + strings.Repeat("5 g of 3 jars each half ", 2500) + "](take:water)",
		"[x](take:powder?" + strings.Repeat("into=cup&", 7000) + ")",
	} {
		checkTime(t, text[:20], func() { ReadMethod(source.NewFile("method.md", []byte("## S\n\n"+text)), k, amounts) })
	}
}

// checkTime allows far more than is needed, for busy machines: what grows with the
// square of its length takes minutes here.
func checkTime(t *testing.T, what string, do func()) {
	t.Helper()
	start := time.Now()
	do()
	if took := time.Since(start); took > 10*time.Second {
		t.Errorf("%q took %v", what, took)
	}
}
