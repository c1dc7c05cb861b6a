package instructions

import (
	"slices"
	"strings"

	"tallyfold/kit/diag"
)

// A verdict is what a link turns out to be.
type verdict int

const (
	noLink    verdict = iota // can't be read; the finding has been told
	plainLink                // to a web page or a mail address
	ours
)

func isWeb(scheme string) bool {
	return slices.Contains([]string{"http", "https", "mailto"}, strings.ToLower(scheme))
}

// isDangerous: schemes that read files of the reader's machine or run programs.
func isDangerous(scheme string) bool {
	return slices.Contains([]string{"file", "javascript", "vbscript", "data"}, strings.ToLower(scheme))
}

// judge says what a link is, and tells a finding when it is nothing.
func (p *passage) judge(l link) verdict {
	scheme := l.destination.scheme.text
	switch {
	case isDangerous(scheme):
		p.refuse(l)
	case l.isPicture:
		return p.judgePicture(l)
	case isWeb(scheme):
		return plainLink
	case scheme == "":
		p.noScheme(l)
	case meaningOf(scheme) == nil:
		p.unknownKind(l)
	case strings.ContainsAny(l.destination.target.text, " \t\n") && scheme != "picture":
		p.unreadable(l, "a space inside "+quoted(l.destination.written), "no space in the round brackets",
			"take the space out")
	default:
		return ours
	}
	return noLink
}

func (p *passage) judgePicture(l link) verdict {
	scheme := l.destination.scheme.text
	switch {
	case scheme == "picture", scheme == "" && strings.HasPrefix(l.destination.target.text, "pictures/"):
		return ours
	case scheme != "" && meaningOf(scheme) != nil:
		p.unreadable(l, "an exclamation mark before "+quoted("["+l.text.String()+"]")+", which makes it a picture",
			"a link", "take the exclamation mark out")
	default:
		p.unreadable(l, "a picture at "+quoted(l.destination.written), "a picture from the folder pictures, as nothing is fetched for a booklet",
			"put the file into pictures and write picture: and its name")
	}
	return noLink
}

func (p *passage) refuse(l link) {
	p.say(refusedLink, l.destination.span, "", "a destination beginning with "+l.destination.scheme.text+":",
		"one of our words, or a web or mail address", "take the link out")
}

// noScheme is a destination without a colon.
func (p *passage) noScheme(l link) {
	target := l.destination.target.text
	remedies := []string{"write what is done and with what, as in take:KEY"}
	switch {
	case target == "":
		p.unreadable(l, "a link that leads nowhere", "what happens, as in take:KEY, in the round brackets", remedies...)
		return
	case meaningOf(target) != nil:
		remedies = []string{"write " + target + ":, with the colon"}
	case len(p.kindsFor(target)) > 0:
		remedies = nil
		for _, kind := range p.kindsFor(target) {
			remedies = append(remedies, "write "+kind+":"+target+", which is for "+meaningOf(kind).does)
		}
	case strings.HasPrefix(target, "#"):
		remedies = []string{"point at a step by its name: step:NAME"}
	}
	p.unreadable(l, quoted(l.destination.written)+" as a destination", "a word and a colon first, or a web address", remedies...)
}

// kindsFor are up to three kinds that may name what a key stands for.
func (p *passage) kindsFor(key string) []string {
	const enough = 3
	is, known := p.names.sortOf(key)
	var kinds []string
	for _, m := range meanings {
		if known && m.sorts&is != 0 && len(kinds) < enough {
			kinds = append(kinds, string(m.kind))
		}
	}
	return kinds
}

func (p *passage) unknownKind(l link) {
	scheme := l.destination.scheme
	var remedies []string
	if near := diag.Nearest(scheme.text, kindNames()); near != "" {
		remedies = append(remedies, "write "+near+":"+strings.TrimPrefix(l.destination.written, scheme.text+":")+", if that is meant")
	}
	p.say(unreadableLink, scheme.span, "", quoted(scheme.text+":")+" in "+quoted(l.destination.written),
		"one of "+strings.Join(kindNames(), ", ")+", or a web address", append(remedies, "write one of these words before the colon")...)
}

// unreadable tells that the destination of a link can't be read.
func (p *passage) unreadable(l link, found, expected string, remedies ...string) {
	where := l.destination.span
	if l.destination.written == "" {
		where = l.span
	}
	p.say(unreadableLink, where, "", found, expected, remedies...)
}
