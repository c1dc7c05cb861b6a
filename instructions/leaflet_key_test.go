package instructions

import (
	"strings"
	"testing"
)

func TestKeyOf(t *testing.T) {
	for words, key := range map[string]string{
		"Fill the jars": "fill-the-jars", "Crème brûlée, 2 L": "creme-brulee-2-l", "墨": "",
		"Leave everything as it stands until the very last of it has set": "leave-everything-as-it-stands-until-the-very",
		strings.Repeat("u", 3000): strings.Repeat("u", longestKey),
	} {
		if got := KeyOf(words); got != key {
			t.Errorf("%.40q gives %q, not %q", words, got, key)
		}
	}
}
