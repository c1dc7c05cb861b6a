package instructions

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"tallyfold/kit/quantity"
)

// A token is a word or an amount in the text of a link.
type token struct {
	text       string // in lower case
	start, end int    // bytes in the flat text
	// amount is what is told, where isAmount; elsewhere it says nothing.
	amount   *quantity.Amount
	isAmount bool
	// used: its meaning has been found, so that it is not told as an amount too.
	used bool
}

// unsaid is the amount of a token that is none.
var unsaid = &quantity.Amount{}

// A count is a number of things, if a word is one.
type count struct {
	number quantity.Number
	is     bool
}

// countOf reads a token as a number of things, with or without a noun. Words are
// asked for once in a file.
func (r *reader) countOf(t token) count {
	if t.isAmount {
		return asCount(*t.amount)
	}
	known, asked := r.counts[t.text]
	if !asked {
		if amount, err := r.amounts.Amount(t.text); err == nil {
			known = asCount(amount)
		}
		r.counts[t.text] = known
	}
	return known
}

func asCount(a quantity.Amount) count {
	if a.Dimension != quantity.Count || a.Ranged {
		return count{}
	}
	return count{a.Nominal, true}
}

// tokensOf cuts a text into amounts and the words between them.
func tokensOf(text string, amounts quantity.Reader, l *language) []token {
	var tokens []token
	at := 0
	for _, found := range amounts.Find(text) {
		if found.Start < at {
			continue
		}
		tokens = append(tokens, plainWords(text, at, found.Start, l)...)
		tokens = append(tokens, token{
			text: strings.ToLower(text[found.Start:found.End]), start: found.Start, end: found.End,
			amount: &found.Amount, isAmount: true,
		})
		at = found.End
	}
	return append(tokens, plainWords(text, at, len(text), l)...)
}

// plainWords cuts bytes start to end of a text into words, "~" and "×".
func plainWords(text string, start, end int, l *language) []token {
	var words []token
	from := -1
	for i := start; i <= end; {
		r, size := utf8.DecodeRuneInString(text[i:end])
		inside := i < end && (inWord(r) || betweenDigits(text, i))
		if inside && from < 0 {
			from = i
		}
		if !inside && from >= 0 {
			words = append(words, wordTokens(text, from, i, l)...)
			from = -1
		}
		switch r {
		case '~', '≈':
			words = append(words, token{text: l.about.all[0][0], start: i, end: i + size, amount: unsaid})
		case '×':
			words = append(words, token{text: "×", start: i, end: i + size, amount: unsaid})
		}
		i += max(size, 1)
	}
	return words
}

// wordTokens makes a token of bytes start to end, two where its head is joined to it.
func wordTokens(text string, start, end int, l *language) []token {
	word := func(from, to int) token {
		return token{text: plainWord(text[from:to]), start: from, end: to, amount: unsaid}
	}
	head := l.head(plainWord(text[start:end]))
	if head == 0 {
		return []token{word(start, end)}
	}
	middle := start
	for range head {
		_, size := utf8.DecodeRuneInString(text[middle:end])
		middle += size
	}
	return append([]token{word(start, middle)}, wordTokens(text, middle, end, l)...)
}

func inWord(r rune) bool {
	return unicode.IsLetter(r) || unicode.IsDigit(r) || unicode.Is(unicode.No, r) || strings.ContainsRune("-'’/%", r)
}

// betweenDigits: the point of "1.5" and the comma of "5,000" end no word.
func betweenDigits(text string, i int) bool {
	isMark := text[i] == '.' || text[i] == ','
	return isMark && i > 0 && i+1 < len(text) && unicode.IsDigit(rune(text[i-1])) && unicode.IsDigit(rune(text[i+1]))
}

// plainWord is a word in lower case with a plain apostrophe.
func plainWord(text string) string {
	return strings.ToLower(strings.ReplaceAll(text, "’", "'"))
}
