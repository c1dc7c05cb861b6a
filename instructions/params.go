package instructions

import (
	"slices"
	"strings"

	"tallyfold/kit"
	"tallyfold/kit/diag"
)

// operationParams reads what stands behind the question mark.
func (p *passage) operationParams(operation *kit.Operation, m *meaning, l link) {
	into := map[string]*string{"into": &operation.Into, "from": &operation.From, "in": &operation.In, "as": &operation.As}
	for _, one := range p.params(l, m.params, string(m.kind)+":") {
		*into[one.name.text] = one.value.text
		switch one.name.text {
		case "as":
			p.checkAs(one.value)
		case "from":
			p.checkTarget("?from=", one.value, vessels|mixture, p.part)
		default:
			p.checkTarget("?"+one.name.text+"=", one.value, vessels, p.part)
		}
	}
}

// params gives those parameters of a link that may stand there, each once and
// with a value; the others are findings.
func (p *passage) params(l link, known []string, use string) []param {
	var good []param
	seen := map[string]bool{}
	for _, one := range l.destination.params {
		name := one.name.text
		switch {
		case !slices.Contains(known, name):
			p.unknownParam(one, known, use)
		case seen[name]:
			p.say(unreadableLink, one.name.span, name, "?"+name+"= a second time", "each of them once", "take one of them out")
		case one.value.text == "":
			p.say(unreadableLink, one.name.span, name, "?"+name+" with nothing behind it", "?"+name+"= and a name", "name it, or take ?"+name+" out")
		default:
			good = append(good, one)
		}
		seen[name] = true
	}
	return good
}

func (p *passage) unknownParam(one param, known []string, use string) {
	written := "?" + one.name.text
	expected := "nothing behind a question mark after " + use
	var remedies []string
	if len(known) > 0 {
		expected = "after " + use + " only ?" + strings.Join(known, "=, ?") + "="
		if near := diag.Nearest(one.name.text, known); near != "" {
			remedies = append(remedies, "write ?"+near+"=, if that is meant")
		}
	}
	found := quoted(written)
	if slices.Contains(allParams, one.name.text) {
		found += ", which means nothing after " + use
	}
	p.say(unreadableLink, one.name.span, one.name.text, found, expected, append(remedies, "take it out")...)
}

// whereLeft are the words that `?as=` knows; anything else is a vessel or component.
var whereLeft = []string{"kept", "discarded"}

func (p *passage) checkAs(as word) {
	if slices.Contains(whereLeft, as.text) {
		return
	}
	if _, known := p.names.sortOf(as.text); !known {
		if near := diag.Nearest(as.text, whereLeft); near != "" {
			p.say(unknownTarget, as.span, as.text, quoted(as.text)+" after ?as=", "kept, discarded, or the key it goes to",
				"write ?as="+near+", if that is meant")
			return
		}
	}
	p.checkTarget("?as=", as, vessels, p.part)
}
