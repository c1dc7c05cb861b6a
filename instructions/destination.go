package instructions

import (
	"net/url"
	"strings"

	"github.com/yuin/goldmark/util"

	"tallyfold/kit/source"
)

// A destination is what stands in the round brackets of a link, taken apart:
// "take:powder?into=cup".
type destination struct {
	written string // as it stands
	span    source.Span
	scheme  word // before the colon; empty when there is no colon
	target  word // between the colon and the question mark
	params  []param
	// followed: the span holds what is written, byte for byte.
	followed bool
}

// A word is a piece of a destination with its place.
type word struct {
	text string
	span source.Span
}

// A param is one "name=value" behind the question mark.
type param struct{ name, value word }

// takeApart splits a destination. Nothing can be wrong with it yet.
func takeApart(written string, span source.Span) destination {
	d := destination{written: written, span: span, followed: span.Text() == written}
	rest, at := written, 0
	if colon := strings.IndexByte(rest, ':'); colon >= 0 {
		d.scheme = d.piece(at, colon)
		at, rest = colon+1, rest[colon+1:]
	}
	target, params, asked := strings.Cut(rest, "?")
	d.target = d.piece(at, at+len(target))
	if !asked {
		return d
	}
	at += len(target) + 1
	for _, one := range strings.Split(params, "&") {
		d.params = append(d.params, d.param(at, at+len(one)))
		at += len(one) + 1
	}
	return d
}

// param takes apart "into=cup"; "&amp;into=cup" is an "&" written for HTML.
func (d *destination) param(start, end int) param {
	if strings.HasPrefix(d.written[start:end], "amp;") {
		start += len("amp;")
	}
	equals := strings.IndexByte(d.written[start:end], '=')
	if equals < 0 {
		return param{name: d.piece(start, end), value: d.piece(end, end)}
	}
	return param{name: d.piece(start, start+equals), value: d.piece(start+equals+1, end)}
}

// piece gives bytes start to end of what is written, escapes resolved, and their place.
func (d *destination) piece(start, end int) word {
	written := d.written[start:end]
	resolved := string(util.ResolveEntityNames(util.ResolveNumericReferences(util.UnescapePunctuations([]byte(written)))))
	if plain, err := url.PathUnescape(resolved); err == nil {
		resolved = plain
	}
	span := d.span
	if d.followed {
		span = d.span.Part(start, end)
	}
	return word{text: resolved, span: span}
}

// isName says whether a piece is written as a name is: lower-case letters, digits
// and hyphens.
func isName(text string) bool {
	for _, r := range text {
		if (r < 'a' || r > 'z') && (r < '0' || r > '9') && r != '-' {
			return false
		}
	}
	return text != ""
}
