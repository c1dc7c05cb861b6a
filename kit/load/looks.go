package load

import (
	"fmt"
	"regexp"
	"strings"
)

// looks are the known ways for a line to be unreadable, the surest first.
var looks = []func(badLine) (trouble, bool){
	openQuote, afterQuote, backslash, oddBeginning, ratioColon, openBracket, secondColon, strayItem, noColon,
}

// openQuote finds a quotation mark that is opened and not closed on its line.
func openQuote(l badLine) (trouble, bool) {
	if !l.quoted() || closed(l.text[l.value:]) {
		return trouble{}, false
	}
	return trouble{l.span(l.value, l.value+1), "a quotation mark that is not closed", "one at the beginning and one at the end of the words",
		"close the words with " + l.text[l.value:l.value+1]}, true
}

func (l badLine) quoted() bool {
	return l.value < len(l.text) && (l.text[l.value] == '"' || l.text[l.value] == '\'')
}

// closed says whether the quotation mark at the head of text has its partner.
func closed(text string) bool {
	return quoteEnd([]byte(text+"\n"), 0, text[0]) <= len(text)
}

// afterQuote finds words behind a closing quotation mark, often an apostrophe
// between single ones.
func afterQuote(l badLine) (trouble, bool) {
	if !l.quoted() {
		return trouble{}, false
	}
	end := l.value + quoteEnd([]byte(l.text[l.value:]), 0, l.text[l.value])
	at := skipBlanks(l.text, end)
	if at == len(l.text) || l.text[at] == '#' && at > end {
		return trouble{}, false
	}
	return trouble{l.span(at, len(l.text)), "words after the closing quotation mark", "nothing more on the line",
		"put all the words between double quotation marks (\"…\"); an apostrophe may stand between those"}, true
}

// backslash finds a backslash that means nothing between double quotation marks.
func backslash(l badLine) (trouble, bool) {
	if !l.quoted() || l.text[l.value] != '"' {
		return trouble{}, false
	}
	for at := l.value; at+1 < len(l.text); at++ {
		if l.text[at] != '\\' {
			continue
		}
		if at++; !strings.ContainsRune("0abtnvfre \"/\\N_LPxuU\t", rune(l.text[at])) {
			return trouble{l.span(at-1, at+1), "“" + l.text[at-1:at+1] + "” between double quotation marks", "no backslash there, or two",
				"write two backslashes for one, or use single quotation marks"}, true
		}
	}
	return trouble{}, false
}

// oddBeginning finds a value that begins with a character YAML keeps for itself.
func oddBeginning(l badLine) (trouble, bool) {
	if l.value >= len(l.text) {
		return trouble{}, false
	}
	first := l.text[l.value : l.value+1]
	switch {
	case l.value == 0 && first == "%":
		return trouble{l.span(0, len(l.text)), "a line that begins with “%”", "only keys and values, and notes that begin with “#”", "take the line out"}, true
	case l.colon && strings.HasPrefix(l.text[l.value:], "- "), l.colon && l.text[l.value:] == "-":
		return trouble{l.span(l.value, l.value+1), "a list that begins on the line of its key", "each “-” on a line of its own under the key, or [one, two]",
			"begin a new line before “-” and set it in by two spaces"}, true
	case strings.Contains("@`%&*!|>,]}", first):
		return trouble{l.span(l.value, l.value+1), "a value that begins with “" + first + "”", "a value that begins with a letter or a number, or stands between quotation marks",
			"put the whole value between quotation marks"}, true
	}
	return trouble{}, false
}

// openBracket finds brackets that do not match, or words behind them.
func openBracket(l badLine) (trouble, bool) {
	if l.value >= len(l.text) || l.text[l.value] != '{' && l.text[l.value] != '[' {
		return trouble{}, false
	}
	var open []int
	for at := l.value; at < len(l.text); at++ {
		switch l.text[at] {
		case '"', '\'':
			if end := quoteEnd([]byte(l.text[at:]), 0, l.text[at]); strings.ContainsAny(l.text[at-1:at], " {[,") {
				at += end - 1
			}
		case '{', '[':
			open = append(open, at)
		case '}', ']':
			if t, ok := l.wrongClosing(open[len(open)-1], at); ok {
				return t, true
			}
			if open = open[:len(open)-1]; len(open) == 0 {
				return l.afterBracket(at + 1)
			}
		}
	}
	return trouble{l.span(open[0], open[0]+1), "a bracket “" + l.text[open[0]:open[0]+1] + "” that is not closed", "its partner at the end",
		"close it with “" + partner(l.text[open[0]]) + "”"}, true
}

func partner(bracket byte) string {
	if bracket == '{' {
		return "}"
	}
	return "]"
}

func (l badLine) wrongClosing(open, at int) (trouble, bool) {
	want := partner(l.text[open])
	if l.text[at:at+1] == want {
		return trouble{}, false
	}
	return trouble{l.span(at, at+1), "“" + l.text[at:at+1] + "” where “" + l.text[open:open+1] + "” is open", "“" + want + "”", "write “" + want + "” here"}, true
}

func (l badLine) afterBracket(end int) (trouble, bool) {
	at := skipBlanks(l.text, end)
	if at == len(l.text) || l.text[at] == '#' {
		return trouble{}, false
	}
	return trouble{l.span(at, len(l.text)), "words after the closing bracket", "nothing more on the line", "take them out, or move them inside the bracket"}, true
}

// secondColon finds a colon and a space inside a value without quotation marks.
func secondColon(l badLine) (trouble, bool) {
	if !l.colon || l.value >= len(l.text) || strings.Contains("{[\"'", l.text[l.value:l.value+1]) {
		return trouble{}, false
	}
	at := keyEnd(l.text[l.value:])
	if at < 0 {
		return trouble{}, false
	}
	return trouble{l.span(l.value+at, l.value+at+1), "a second colon on one line", "one key and one value; a value with a colon stands between quotation marks",
		"put what follows the first colon between quotation marks, or begin a new line"}, true
}

// twoFigures have a colon and blanks between them: "1.3 : 1".
var twoFigures = regexp.MustCompile(`\d+(?:[.,]\d+)?\s+:\s+\d`)

// ratioColon finds a ratio whose colon reads as the end of a key, between braces.
func ratioColon(l badLine) (trouble, bool) {
	at := twoFigures.FindStringIndex(l.text)
	if at == nil || strings.ContainsAny(l.text[:at[0]], "\"'#") {
		return trouble{}, false
	}
	return trouble{l.span(at[0], at[1]), "“" + l.text[at[0]:at[1]] + "”, whose colon reads as that behind a key", "a ratio between quotation marks",
		"put the whole value between quotation marks, as in “ratio: \"1.3 : 1 of water\"”"}, true
}

// strayItem finds a list line among keys, or a key among list lines.
func strayItem(l badLine) (trouble, bool) {
	above, ok := l.above()
	if !l.dashed || !ok || above.dashed {
		return trouble{}, false
	}
	return trouble{l.span(skipBlanks(l.text, 0), len(l.text)), "a list line (“-”) that belongs to no key", "a list under the key it belongs to",
		"put it under its key, set in by two spaces more than the key"}, true
}

// noColon finds a line without a key.
func noColon(l badLine) (trouble, bool) {
	if above, ok := l.above(); ok && l.colon && !above.colon && !above.dashed {
		l = above
	}
	if l.colon || l.body >= len(l.text) {
		return trouble{}, false
	}
	return trouble{l.span(l.body, len(l.text)), "a line without a key", "a key, a colon, a space and a value, such as “packed: 720 g”",
		"write a key and a colon before it, or join it to the line above"}, true
}

// misplaced is what is left: a line that would be good elsewhere.
func misplaced(l badLine) trouble {
	indent := skipBlanks(l.text, 0)
	found := fmt.Sprintf("a line set in by %d spaces, which fits no line above it", indent)
	if above, ok := l.above(); ok && above.value < len(above.text) && above.colon && skipBlanks(above.text, 0) < indent {
		found = "a line set in under one that already has its value"
	}
	return trouble{l.span(indent, len(l.text)), found, "keys that belong together begin in the same column; what belongs to a key stands two spaces further in",
		"move the line to the column of the keys that it belongs with"}
}
