package instructions

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"tallyfold/kit"
	"tallyfold/kit/diag"
)

// operationParams reads what stands behind the question mark.
func (p *passage) operationParams(operation *kit.Operation, m *meaning, l link) {
	strands, edition := "", ""
	into := map[string]*string{"into": &operation.Into, "from": &operation.From, "in": &operation.In, "as": &operation.As,
		"either": &operation.Either, "strands": &strands, "drawn-for": &edition}
	for _, one := range p.params(l, m.params, string(m.kind)+":") {
		*into[one.name.text] = one.value.text
		switch one.name.text {
		case "as":
			p.checkAs(one.value, l)
		case "either":
			p.checkEither(one.value)
		case "strands":
			operation.Strands = p.strands(one.value, operation.Target)
		case "drawn-for":
			operation.DrawnFor = p.edition(one.value)
		case "from":
			p.checkTarget("?from=", one.value, vessels|mixture, p.part)
			p.checkLeaves(operation, m, l)
		default:
			for _, vessel := range p.among(one.value, m) {
				p.checkTarget("?"+one.name.text+"=", vessel, vessels, p.part)
			}
		}
	}
}

// checkLeaves: what leaves a vessel by itself is a thing that can lie or flow in it, and
// no vessel.
func (p *passage) checkLeaves(operation *kit.Operation, m *meaning, l link) {
	if m.kind != kit.Left {
		return
	}
	if is, known := p.names.sortOf(operation.Target); known && is&material == 0 {
		p.unreadable(l, quoted(l.destination.written)+", in which a vessel leaves a vessel", "the thing that leaves, and behind ?from= the vessel it leaves",
			"write it like left:water?from=pan&as=evaporated", "take ?from out, if all that is left in it is meant")
	}
}

// among takes apart the vessels that a mixture is moved into in equal parts:
// "?into=bowl-a,bowl-b".
func (p *passage) among(value word, m *meaning) []word {
	names := strings.Split(value.text, ",")
	if m.kind != kit.Move || len(names) == 1 {
		return []word{value}
	}
	words := make([]word, len(names))
	at := 0
	for i, name := range names {
		span := value.span
		if span.Text() == value.text {
			span = span.Part(at, at+len(name))
		}
		words[i] = word{text: name, span: span}
		at += len(name) + 1
	}
	return words
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
var whereLeft = []string{"kept", "discarded", "poured-away", "evaporated", "dried-out", "trimmed", "rinsed-away"}

// Fates are the words for what becomes of a rest that `?as=` knows besides keys of the kit.
func Fates() []string { return slices.Clone(whereLeft) }

// ofOneThing are those of which a mixture loses one thing only, which must be named.
var ofOneThing = []string{"evaporated", "dried-out"}

func (p *passage) checkAs(as word, l link) {
	if slices.Contains(ofOneThing, as.text) {
		named := slices.ContainsFunc(l.destination.params, func(one param) bool { return one.name.text == "from" })
		if !named {
			p.unreadable(l, quoted(l.destination.written)+", which does not say what leaves", "the thing that leaves, and the vessel it leaves",
				"write it like left:water?from=pan&as="+as.text)
		}
		return
	}
	if slices.Contains(whereLeft, as.text) {
		return
	}
	if _, known := p.names.sortOf(as.text); !known {
		if near := diag.Nearest(as.text, whereLeft); near != "" {
			p.say(unknownTarget, as.span, as.text, quoted(as.text)+" after ?as=", either(whereLeft)+", or the key it goes to",
				"write ?as="+near+", if that is meant")
			return
		}
	}
	p.checkTarget("?as=", as, vessels, p.part)
}

// checkEither: the name of a choice is one that the maker makes up.
func (p *passage) checkEither(name word) {
	if !isName(name.text) {
		p.say(unreadableLink, name.span, name.text, quoted(name.text)+" after ?either=", "a name of lower-case letters, digits and hyphens",
			"write a name for the choice, the same on each of its links, such as ?either=tint")
	}
}

// strands reads of how many strands a thread is used; 0 where that can't be.
func (p *passage) strands(value word, target string) int {
	n, err := strconv.Atoi(value.text)
	laid := 0
	if c := p.kit.Component(target); c != nil {
		laid = c.Strands.Value
	}
	switch {
	case err != nil || n < 1:
		p.say(unreadableLink, value.span, target, quoted(value.text)+" after ?strands=", "a whole number of strands", "write it like ?strands=2")
	case laid == 0:
		p.say(unreadableLink, value.span, target, "?strands="+value.text+", and kit.yaml does not say how many strands "+p.kit.Called(target)+" has",
			"a thread with “strands:” in kit.yaml", "write “strands: 6” under it in kit.yaml, or take ?strands out")
	case n > laid:
		p.say(unreadableLink, value.span, target, fmt.Sprintf("%d strands of a thread that is laid of %d", n, laid), "no more strands than it has",
			"correct the number")
	default:
		return n
	}
	return 0
}

// edition reads the number of an edition; nothing where it is none.
func (p *passage) edition(value word) kit.Said[int] {
	n, err := strconv.Atoi(value.text)
	if err != nil || n < 1 {
		p.say(unreadableLink, value.span, value.text, quoted(value.text)+" after ?drawn-for=", "the number of an edition, a whole number from 1",
			"write it like ?drawn-for=1")
		return kit.Said[int]{}
	}
	return kit.Said[int]{Value: n, Span: value.span}
}
