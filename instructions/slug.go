package instructions

import (
	"strings"
	"unicode"

	"golang.org/x/text/unicode/norm"
)

// slug makes a name from words: lower-case letters without accents, digits, and
// hyphens for what stands between. "Fill the jars" is "fill-the-jars". It may be
// empty, as for words in another script.
func slug(words string) string {
	var b strings.Builder
	gap := false
	for _, r := range norm.NFD.String(words) {
		if unicode.Is(unicode.Mn, r) || r == '\'' || r == '’' {
			continue
		}
		r = unicode.ToLower(r)
		if (r < 'a' || r > 'z') && (r < '0' || r > '9') {
			gap = true
			continue
		}
		if gap && b.Len() > 0 {
			b.WriteByte('-')
		}
		gap = false
		b.WriteRune(r)
	}
	return b.String()
}
