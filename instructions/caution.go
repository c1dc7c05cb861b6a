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

// signals are the words that may head a caution, the heaviest first (ANSI Z535.6).
var signals = []kit.Signal{kit.Danger, kit.Warning, kit.CautionWord, kit.Notice}

// quotation reads a quotation. One that begins with a signal word is a caution.
func (p *passage) quotation(n *ast.Blockquote) {
	first, isParagraph := n.FirstChild().(*ast.Paragraph)
	if p.quotes == 0 && isParagraph {
		words := p.document.flatten(first).String()
		if signal, rest := signalOf(words); signal != "" {
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

// signalOf gives the signal word at the head of a text and what follows it. In
// capitals it may end with any mark, otherwise only with a colon: "Notice the
// steam" is no notice.
func signalOf(text string) (signal kit.Signal, rest string) {
	text = strings.TrimSpace(text)
	for _, signal := range signals {
		if len(text) < len(signal) || !strings.EqualFold(text[:len(signal)], string(signal)) {
			continue
		}
		rest := text[len(signal):]
		next, _ := utf8.DecodeRuneInString(rest)
		inCapitals := strings.HasPrefix(text, string(signal)) && !unicode.IsLetter(next) && !unicode.IsDigit(next)
		if next == ':' || inCapitals {
			return signal, strings.TrimLeft(rest, " :.!-–—\u00a0")
		}
	}
	return "", text
}

// signalWord notices a caution that is written as a plain paragraph.
func (p *passage) signalWord(n *ast.Paragraph) {
	if p.quotes > 0 || !p.mayWarn(n) {
		return
	}
	words := p.document.flatten(n)
	signal, _ := signalOf(words.String())
	if signal == "" || !strings.Contains(words.String(), string(signal)) {
		return
	}
	at := strings.Index(words.String(), string(signal))
	p.say(unmarkedCaution, words.span(at, at+len(signal)), strings.ToLower(string(signal)),
		"the signal word "+string(signal)+" at the head of a plain paragraph",
		"a quotation, so that it is printed as a caution",
		"put “> ” before each of its lines")
}

// mayWarn says whether a signal word stands in the first line at all.
func (p *passage) mayWarn(n *ast.Paragraph) bool {
	if n.Lines().Len() == 0 {
		return false
	}
	first := n.Lines().At(0)
	return slices.ContainsFunc(signals, func(signal kit.Signal) bool {
		return bytes.Contains(p.document.text[first.Start:first.Stop], []byte(signal))
	})
}
