package quantity

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// A token is a piece of a text: a number, a vulgar fraction, a word or a sign.
type token struct {
	kind tokenKind
	// spaced: a space stands before it.
	spaced     bool
	slip       slip // for slipToken: what is wrong with the figure
	start, end int  // bytes in the text
	// low is the text in lower case, with look-alikes made one (− is kept apart
	// from -, the long dash is taken for the short one).
	low    string
	number Number // for numberToken and vulgarToken
	// first is where the phrases begin that begin with it, nil where none does.
	first *lexicon
}

type tokenKind uint8

const (
	numberToken tokenKind = iota // digits, with separators and decimals
	vulgarToken                  // ½
	wordToken                    // letters; "cm2" and "cm²" too
	signToken                    // anything else, one character
	slipToken                    // begins like a number and is none: 0x10, 12:30
)

// tokenize cuts a text into tokens. It never fails; what cannot be a number says so.
func tokenize(text string, comma bool, into []token) []token {
	spaced := false
	for i := 0; i < len(text); {
		c, size := rune(text[i]), 1
		if c >= utf8.RuneSelf {
			c, size = utf8.DecodeRuneInString(text[i:])
		}
		t := token{start: i, spaced: spaced}
		switch {
		case unicode.IsSpace(c):
			spaced = true
			i += size
			continue
		case isDigit(text[i]) || c == '.' && pointLeads(text, i, comma):
			t.readNumeral(text, comma)
		case unicode.IsLetter(c):
			t.readWord(text)
		default:
			t.readSign(text, c, size)
		}
		into = append(into, t)
		spaced = false
		i = t.end
	}
	return into
}

// pointLeads says whether the point at i begins a number: ".5", but not the one
// behind a word whose next sentence lacks its space.
func pointLeads(text string, i int, comma bool) bool {
	if comma || i+1 == len(text) || !isDigit(text[i+1]) {
		return false
	}
	before, _ := utf8.DecodeLastRuneInString(text[:i])
	return i == 0 || !unicode.IsLetter(before) && !unicode.IsDigit(before) && before != '.'
}

// readWord takes letters, and the 2 or 3 of "cm2" but not the 20 of "1h20".
func (t *token) readWord(text string) {
	t.kind = wordToken
	i := t.start
	lower := true
	for i < len(text) {
		c, size := rune(text[i]), 1
		if c >= utf8.RuneSelf {
			c, size = utf8.DecodeRuneInString(text[i:])
		}
		if !unicode.IsLetter(c) && !unicode.Is(unicode.M, c) && c != '²' && c != '³' {
			break
		}
		lower = lower && c < utf8.RuneSelf && (c < 'A' || c > 'Z')
		i += size
	}
	if i-t.start > 1 || text[t.start] == 'm' {
		i = squareOrCube(text, i)
	}
	t.end = i
	t.low = text[t.start:i]
	if !lower {
		t.low = strings.ToLower(strings.ReplaceAll(t.low, "\u00b5", "μ")) // the micro sign and the Greek letter
	}
}

// squareOrCube takes in a lone 2 or 3 at i.
func squareOrCube(text string, i int) int {
	if i == len(text) || text[i] != '2' && text[i] != '3' {
		return i
	}
	next, _ := utf8.DecodeRuneInString(text[i+1:])
	if i+1 < len(text) && (unicode.IsLetter(next) || unicode.IsDigit(next)) {
		return i
	}
	return i + 1
}

func (t *token) readSign(text string, c rune, size int) {
	t.kind = signToken
	t.end = t.start + size
	t.low = text[t.start:t.end]
	switch c {
	case '‐', '‑': // the true hyphen and the no-break hyphen
		t.low = "-"
	case '—', '‒':
		t.low = "–"
	case '’', 'ʼ':
		t.low = "'"
	case '⁄':
		t.low = "/"
	case '∶':
		t.low = ":"
	case '˚':
		t.low = "°"
	case '≥', '⩾':
		t.low = "≥"
	case '≤', '⩽':
		t.low = "≤"
	}
	if n, ok := vulgar(c); ok {
		t.kind, t.number = vulgarToken, n
	}
}

// vulgar gives the value of a fraction that is one character.
func vulgar(c rune) (Number, bool) {
	const characters = "½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅐⅛⅜⅝⅞⅑⅒"
	values := [...][2]int64{{1, 2}, {1, 3}, {2, 3}, {1, 4}, {3, 4}, {1, 5}, {2, 5}, {3, 5}, {4, 5}, {1, 6}, {5, 6},
		{1, 7}, {1, 8}, {3, 8}, {5, 8}, {7, 8}, {1, 9}, {1, 10}}
	if c < '¼' { // the first of them in Unicode
		return Number{}, false
	}
	at := 0
	for _, each := range characters {
		if each == c {
			return Ratio(values[at][0], values[at][1]), true
		}
		at++
	}
	return Number{}, false
}

// vulgarText is the character for a fraction, or "".
func vulgarText(n Number) string {
	for _, c := range "½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞" {
		if v, _ := vulgar(c); v.Equal(n) {
			return string(c)
		}
	}
	return ""
}
