package quantity

import "strings"

// A parser reads amounts out of the tokens of one text. Its methods take the
// place of a token and give the place behind what they read.
type parser struct {
	reader *Reader
	text   string
	tokens []token
	// prose: the text is running prose, where a mistake is no error but something
	// that is no amount, and doubtful readings are left alone.
	prose bool
}

func (r Reader) parser(text string, prose bool) *parser {
	const shortest = 3 // bytes that a token takes with its space, at an average
	p := &parser{
		reader: &r, text: text, prose: prose,
		tokens: tokenize(text, r.DecimalComma, make([]token, 0, len(text)/shortest+4)),
	}
	words := lexiconFor(r.Language, prose).next
	for i := range p.tokens {
		if kind := p.tokens[i].kind; kind == wordToken || kind == signToken {
			p.tokens[i].first = words[p.tokens[i].low]
		}
	}
	return p
}

// noAmount is what is told in prose, where nobody asks for the reason.
var noAmount = &Error{Found: "words", Expected: "an amount"}

// refuse makes an error about the tokens from i up to end.
func (p *parser) refuse(i, end int, expected, hint string) *Error {
	if p.prose {
		return noAmount
	}
	start, stop := p.span(i, end)
	found := "nothing more"
	if start < stop {
		found = quoted(p.text[start:stop])
	}
	return &Error{Start: start, End: stop, Found: found, Expected: expected, Hint: hint}
}

// span is the bytes of the tokens from i up to end.
func (p *parser) span(i, end int) (start, stop int) {
	end = min(end, len(p.tokens))
	if i >= end {
		return len(p.text), len(p.text)
	}
	return p.tokens[i].start, p.tokens[end-1].end
}

// written is the text of the tokens from i up to end.
func (p *parser) written(i, end int) string {
	start, stop := p.span(i, end)
	return p.text[start:stop]
}

// is says whether token i is this sign or lower-case word.
func (p *parser) is(i int, low string) bool { return i < len(p.tokens) && p.tokens[i].low == low }

// kind says whether token i exists and is of a kind.
func (p *parser) kind(i int, kind tokenKind) bool {
	return i < len(p.tokens) && p.tokens[i].kind == kind
}

// joined says whether token i follows the one before without a space.
func (p *parser) joined(i int) bool { return i > 0 && i < len(p.tokens) && !p.tokens[i].spaced }

func quoted(text string) string { return "“" + text + "”" }

func trimmed(text string) string { return strings.TrimSpace(text) }
