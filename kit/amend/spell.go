package amend

import (
	"fmt"
	"strings"
	"unicode/utf8"

	"tallyfold/kit/load"
)

// unwritable says what no text file can hold, not even with an escape.
func unwritable(value string) string {
	if !utf8.ValidString(value) {
		return "a byte that is not UTF-8 text"
	}
	return ""
}

// mayBePlain says whether a value may be tried without quotation marks. Whether it
// then is read as itself is proved; what is asked here is whether it should be.
func mayBePlain(form load.Form, value string) bool {
	if value == "" || strings.TrimSpace(value) != value || hasOdd(value) || means(value) {
		return false
	}
	switch form {
	case load.Text, load.TextList, load.Bindings, load.Languages, load.Address, "":
		return !load.ReadsAsOther(value)
	case load.YesNo:
		return true
	}
	return value != "~" && !strings.EqualFold(value, "null")
}

// means says whether a value has signs that mean something in YAML where no quotation
// marks stand round them (YAML 1.2, chapter 7.3.3).
func means(value string) bool {
	return strings.ContainsAny(value[:1], ",[]{}#&*!|>'\"%@`") || strings.Contains(value, ": ") || strings.Contains(value, " #") || strings.HasSuffix(value, ":")
}

// hasOdd says whether a value has a character that only an escape can show: line
// ends, tabs, control characters, marks that text files may not have.
func hasOdd(value string) bool { return strings.ContainsFunc(value, isOdd) }

func isOdd(r rune) bool {
	return r < ' ' || r >= 0x7f && r < 0xa0 || r == 0x2028 || r == 0x2029 || r == 0xfeff || r == 0xfffe || r == 0xffff
}

func singleQuoted(value string) string { return "'" + strings.ReplaceAll(value, "'", "''") + "'" }

// doubleQuoted writes any text on one line (YAML 1.2, chapter 5.7).
func doubleQuoted(value string) string {
	var b strings.Builder
	b.WriteByte('"')
	for _, r := range value {
		switch {
		case r == '"' || r == '\\':
			b.WriteRune('\\')
			b.WriteRune(r)
		case r == '\n':
			b.WriteString(`\n`)
		case r == '\t':
			b.WriteString(`\t`)
		case r == '\r':
			b.WriteString(`\r`)
		case isOdd(r) && r <= 0xff:
			fmt.Fprintf(&b, `\x%02x`, r)
		case isOdd(r):
			fmt.Fprintf(&b, `\u%04x`, r)
		default:
			b.WriteRune(r)
		}
	}
	b.WriteByte('"')
	return b.String()
}

// spelledKey writes a key.
func spelledKey(key string) string {
	plain := key != "" && !load.ReadsAsOther(key) && strings.TrimSpace(key) == key
	for _, r := range key {
		plain = plain && (r == ' ' || r == '-' || r == '.' || r >= '0' && r <= '9' || r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z')
	}
	if plain && key[0] != '-' && key[0] != '.' {
		return key
	}
	return doubleQuoted(key)
}
