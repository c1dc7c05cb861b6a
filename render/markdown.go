package render

import (
	"regexp"
	"strings"
	"unicode"
	"unicode/utf8"
)

// escaper puts a backslash before every character that Markdown could take as
// markup in the middle of a line.
var escaper = strings.NewReplacer(
	`\`, `\\`, "`", "\\`", `*`, `\*`, `_`, `\_`, `[`, `\[`, `]`, `\]`, `<`, `\<`, `>`, `\>`,
	`|`, `\|`, `&`, `\&`, `~`, `\~`, `{`, `\{`, `}`, `\}`, "\r", " ", "\n", " ",
)

// lineStart is what would begin a list, heading, quotation or line under a heading.
var lineStart = regexp.MustCompile(`^\s*(?:[-+#=:]|[0-9]{1,9}[.)](?:\s|$))`)

// lineMark is the last of its marks, before which the backslash goes.
var lineMark = regexp.MustCompile(`[-+#=:.)]`)

// escape writes plain text so that Markdown reads exactly that text: a name
// that a maker chose never becomes a heading, a link or a table cell.
func escape(text string) string { return escapeStart(escaper.Replace(text)) }

// escapeStart keeps a line from being read as a block: "1\." "\#".
func escapeStart(line string) string {
	return lineStart.ReplaceAllStringFunc(line, func(start string) string {
		return lineMark.ReplaceAllString(start, `\$0`)
	})
}

// cell is text for a table cell, escaped; an empty one stays empty.
func cell(text string) string { return escape(strings.TrimSpace(text)) }

// bold sets Markdown text in bold, leaving spaces outside, where the marks would
// not be read as such.
func bold(markdown string) string {
	inner := strings.TrimSpace(markdown)
	if inner == "" || strings.Contains(inner, "**") {
		return markdown
	}
	before, after, _ := strings.Cut(markdown, inner)
	return before + "**" + inner + "**" + after
}

// capital gives text with a capital at its head.
func capital(text string) string {
	first, size := utf8.DecodeRuneInString(text)
	if size == 0 {
		return text
	}
	return string(unicode.ToUpper(first)) + text[size:]
}

// small gives a name as it stands within a sentence: "Kitchen scale" becomes
// "kitchen scale", while "A4 paper" and "PVA glue" stay.
func small(name string) string {
	first, size := utf8.DecodeRuneInString(name)
	second, _ := utf8.DecodeRuneInString(name[size:])
	if unicode.IsUpper(second) || unicode.IsDigit(second) {
		return name
	}
	return string(unicode.ToLower(first)) + name[size:]
}

// fence is a row of backticks longer than any in the code.
func fence(code string, least int) string {
	longest, run := 0, 0
	for _, r := range code {
		if r == '`' {
			run++
			longest = max(longest, run)
		} else {
			run = 0
		}
	}
	return strings.Repeat("`", max(least, longest+1))
}

// indent puts a prefix before every line; the first may have one of its own.
func indent(text, first, rest string) string {
	lines := strings.Split(text, "\n")
	for i, line := range lines {
		switch {
		case i == 0:
			lines[i] = first + line
		case line == "" && strings.TrimSpace(rest) == "":
			// a blank line needs no spaces before it
		default:
			lines[i] = strings.TrimRight(rest+line, " ")
		}
	}
	return strings.Join(lines, "\n")
}
