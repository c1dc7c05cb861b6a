package instructions

import (
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"golang.org/x/text/unicode/norm"
)

// plain writes letters without accents and umlauts, which come and go with endings:
// "Töpfe", "jabón".
func plain(word string) string {
	if isASCII(word) {
		return word
	}
	return strings.Map(func(r rune) rune {
		if unicode.Is(unicode.Mn, r) {
			return -1
		}
		return r
	}, norm.NFD.String(word))
}

func isASCII(word string) bool {
	return strings.IndexFunc(word, func(r rune) bool { return r >= utf8.RuneSelf }) < 0
}

// strip takes endings off as long as so many letters remain, the first that fits
// each time.
func strip(word string, remain int, endings ...string) string {
	for {
		i := slices.IndexFunc(endings, func(ending string) bool {
			return strings.HasSuffix(word, ending) && utf8.RuneCountInString(word)-len(ending) >= remain
		})
		if i < 0 {
			return word
		}
		word = strings.TrimSuffix(word, endings[i])
	}
}
