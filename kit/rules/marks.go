package rules

import (
	"strings"

	bcp47 "golang.org/x/text/language"
	"golang.org/x/text/message"
	numeral "golang.org/x/text/number"
)

// marks are what stands before decimals and between thousands in a language, region
// included, by the locale data of Unicode (CLDR): "," and a no-break blank in French,
// "." and "’" in Swiss German. They are empty for a language with digits of its own.
func marks(tag string) (decimal, thousands string) {
	printer := message.NewPrinter(bcp47.Make(tag))
	between := func(n float64, before, behind string) string {
		_, rest, _ := strings.Cut(printer.Sprint(numeral.Decimal(n)), before)
		mark, _, _ := strings.Cut(rest, behind)
		return mark
	}
	return between(1.5, "1", "5"), between(12345, "12", "345")
}
