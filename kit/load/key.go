package load

import (
	"strconv"
	"strings"
	"unicode"

	"golang.org/x/text/unicode/norm"
)

// reserved are words that mean something of their own in kit.yaml or in the links
// of a method, and so cannot be the key of a thing.
var reserved = map[string]string{
	wholeMixture: "the whole of what is in the vessel",
	"box":        "what comes in the kit",
	"customer":   "who makes the kit",
	"pack":       "what a bag or bottle of the kit holds",
	"all":        "everything there",
	"rest":       "what is left",
	"kept":       "what is not thrown away",
	"discarded":  "what is thrown away",
	"pieces":     "what is made",
	"time":       "how long it takes",
	"yes":        "yes", "no": "no", "true": "yes", "false": "no", "on": "yes", "off": "no", "null": "nothing", "y": "yes", "n": "no",
}

// longestKey is the longest key of a thing; it stands in every link to it.
const longestKey = 40

// IsKey says whether a word may be the key of a thing, and if not, why, as a phrase
// for the maker.
func IsKey(id string) (why string, ok bool) {
	switch meaning, taken := reserved[id]; {
	case taken:
		return quote(id) + " already means " + meaning, false
	case len(id) > longestKey:
		return quote(id) + " has more than 40 letters", false
	case Slug(id) != id || !startsWithLetter(id):
		return quote(id) + " is not made of lower-case letters a to z, digits and single hyphens, beginning with a letter", false
	}
	return "", true
}

// Slug makes a name from words: lower-case letters without accents, digits, and hyphens
// for what stands between. "Fill the jars" is "fill-the-jars". It may be empty, as for
// words in another script, and may be too long or taken for a key.
func Slug(words string) string {
	var b strings.Builder
	gap := false
	for _, letter := range norm.NFD.String(words) {
		if unicode.Is(unicode.Mn, letter) || letter == '\'' || letter == '’' {
			continue
		}
		letter = unicode.ToLower(letter)
		if (letter < 'a' || letter > 'z') && (letter < '0' || letter > '9') {
			gap = true
			continue
		}
		if gap && b.Len() > 0 {
			b.WriteByte('-')
		}
		gap = false
		b.WriteRune(letter)
	}
	return b.String()
}

// KeyOf is Slug for names that people type and files are called by: of many words only
// the first ones are taken, as far as a key may be long. It may be empty.
func KeyOf(words string) string { return shortened(Slug(words), longestKey) }

// FreeKey makes the key of a new thing from its name: with “the-” before it where the
// name alone could not be a key, and with a number behind it where it is taken. A name
// without a letter from a to z or a digit is “thing”.
func FreeKey(name string, taken func(key string) bool) string {
	key := KeyOf(name)
	if key == "" {
		key = "thing"
	}
	if _, ok := IsKey(key); !ok {
		key = shortened("the-"+key, longestKey)
	}
	free := key
	for number := 2; taken(free); number++ {
		behind := "-" + strconv.Itoa(number)
		free = shortened(key, longestKey-len(behind)) + behind
	}
	return free
}

// shortened cuts a name between two of its words, or inside one that is very long.
func shortened(name string, longest int) string {
	if len(name) <= longest {
		return name
	}
	cut := strings.LastIndexByte(name[:longest+1], '-')
	if cut < longest/2 {
		cut = longest
	}
	return name[:cut]
}

func startsWithLetter(id string) bool { return id != "" && id[0] >= 'a' && id[0] <= 'z' }
