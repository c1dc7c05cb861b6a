package load

import (
	"testing"

	"tallyfold/kit"
)

// TestDecimalComma: which languages write a comma. Source: Unicode CLDR, Numbers,
// symbol "decimal", as shipped with golang.org/x/text.
func TestDecimalComma(t *testing.T) {
	for tag, comma := range map[string]bool{
		"en": false, "en-GB": false, "en-US": false, "en-ZA": true, "fr": true, "de": true, "de-AT": true, "de-CH": false,
		"es": true, "es-MX": false, "nl": true, "it": true,
	} {
		k := &kit.Kit{Language: kit.Said[string]{Value: tag}}
		if got := Amounts(k).DecimalComma; got != comma {
			t.Errorf("%s: decimal comma %v, want %v", tag, got, comma)
		}
	}
}
