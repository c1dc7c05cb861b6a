package kit

import (
	"strings"

	"golang.org/x/text/language"
	"golang.org/x/text/message"
	"golang.org/x/text/number"
)

// DecimalComma says whether the language of the kit writes 1,5 for one and a half. It
// is taken from the locale data of Unicode (CLDR), region included: German does,
// Swiss German and Mexican Spanish do not.
func (k *Kit) DecimalComma() bool {
	printer := message.NewPrinter(language.Make(k.Language.Value))
	return strings.Contains(printer.Sprint(number.Decimal(1.5)), ",")
}
