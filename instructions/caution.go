package instructions

import (
	"bytes"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"github.com/yuin/goldmark/ast"

	"tallyfold/kit"
)

// signals are what may head a caution, the heaviest first (ANSI Z535.6).
var signals = []kit.Signal{kit.Danger, kit.Warning, kit.CautionWord, kit.Notice}

// signalWords are the words for a signal, those of the language first.
func (l *language) signalWords(signal kit.Signal) []string {
	if l == english {
		return english.signals[signal]
	}
	return slices.Concat(l.signals[signal], english.signals[signal])
}

// quotation reads a quotation. One that begins with a signal word is a caution.
func (p *passage) quotation(n *ast.Blockquote) {
	first, isParagraph := n.FirstChild().(*ast.Paragraph)
	if p.quotes == 0 && isParagraph {
		words := p.document.flatten(first).String()
		if signal, _, rest := p.language.signalOf(words); signal != "" {
			p.cautions = append(p.cautions, kit.Caution{Signal: signal, Text: p.cautionText(n, rest), Span: p.lines(n)})
		}
	}
	p.quotes++
	for child := n.FirstChild(); child != nil; child = child.NextSibling() {
		p.block(child)
	}
	p.quotes--
}

// cautionText is what is said behind the signal word; a blank line parts paragraphs.
func (p *passage) cautionText(n *ast.Blockquote, first string) string {
	var paragraphs []string
	if first != "" {
		paragraphs = append(paragraphs, first)
	}
	for child := n.FirstChild().NextSibling(); child != nil; child = child.NextSibling() {
		if words := strings.Fields(p.document.flatten(child).String()); len(words) > 0 {
			paragraphs = append(paragraphs, strings.Join(words, " "))
		}
	}
	return strings.Join(paragraphs, "\n\n")
}

// signalOf gives the signal at the head of a text, the word for it, and what follows.
// In capitals it may end with any mark, otherwise only with a colon: "Notice the
// steam" is no notice.
func (l *language) signalOf(text string) (signal kit.Signal, word, rest string) {
	text = strings.TrimSpace(text)
	for _, signal := range signals {
		for _, word := range l.signalWords(signal) {
			if len(text) < len(word) || !strings.EqualFold(text[:len(word)], word) {
				continue
			}
			rest := text[len(word):]
			next, _ := utf8.DecodeRuneInString(strings.TrimLeft(rest, "\u00a0\u202f ")) // French writes a blank before a colon
			inCapitals := strings.HasPrefix(text, word) && !startsWithLetter(rest)
			if next == ':' || inCapitals {
				return signal, word, strings.TrimLeft(rest, " :.!-–—\u00a0\u202f")
			}
		}
	}
	return "", "", text
}

func startsWithLetter(text string) bool {
	next, _ := utf8.DecodeRuneInString(text)
	return unicode.IsLetter(next) || unicode.IsDigit(next)
}

// signalWord notices a caution that is written as a plain paragraph.
func (p *passage) signalWord(n *ast.Paragraph) {
	if p.quotes > 0 || !p.mayWarn(n) {
		return
	}
	words := p.document.flatten(n)
	signal, word, _ := p.language.signalOf(words.String())
	if signal == "" || !strings.Contains(words.String(), word) {
		return
	}
	at := strings.Index(words.String(), word)
	p.say(unmarkedCaution, words.span(at, at+len(word)), strings.ToLower(string(signal)),
		"the signal word "+word+" at the head of a plain paragraph",
		"a quotation, so that it is printed as a caution",
		"put “> ” before each of its lines")
}

// mayWarn says whether a signal word stands in the first line at all.
func (p *passage) mayWarn(n *ast.Paragraph) bool {
	if n.Lines().Len() == 0 {
		return false
	}
	first := n.Lines().At(0)
	line := p.document.text[first.Start:first.Stop]
	return slices.ContainsFunc(signals, func(signal kit.Signal) bool {
		return slices.ContainsFunc(p.language.signalWords(signal), func(word string) bool { return bytes.Contains(line, []byte(word)) })
	})
}
