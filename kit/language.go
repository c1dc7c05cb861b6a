package kit

import (
	"strings"

	"golang.org/x/text/language"
	"golang.org/x/text/message"
	"golang.org/x/text/number"
)

// DecimalComma says whether the language of the kit writes 1,5 for one and a half.
func (k *Kit) DecimalComma() bool { return DecimalCommaIn(k.Language.Value) }

// DecimalCommaIn says so of a language by its BCP 47 tag.
func DecimalCommaIn(tag string) bool {
	decimal, _ := NumberMarks(tag)
	return decimal == ","
}

// NumberMarks are what stands before decimals and between thousands in a language, by
// the locale data of Unicode (CLDR), region included: "," and a no-break blank in French,
// "," and "." in German, "." and "’" in Swiss German. They are empty for a language with
// digits of its own.
func NumberMarks(tag string) (decimal, thousands string) {
	printer := message.NewPrinter(language.Make(tag))
	between := func(n float64, before, behind string) string {
		_, rest, _ := strings.Cut(printer.Sprint(number.Decimal(n)), before)
		mark, _, _ := strings.Cut(rest, behind)
		return mark
	}
	return between(1.5, "1", "5"), between(12345, "12", "345")
}
