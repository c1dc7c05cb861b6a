package rules

import (
	"strings"

	"tallyfold/kit"
	"tallyfold/kit/diag"
	"tallyfold/kit/source"
)

// What the rules on translations share.

// A stepPair is a step with its translation.
type stepPair struct{ own, other *kit.Step }

// stepPairs gives the steps that a translation has, in its order.
func stepPairs(k *kit.Kit, t *kit.Translation) []stepPair {
	var pairs []stepPair
	for _, other := range t.Method.Steps() {
		if own := k.Step(other.ID); own != nil {
			pairs = append(pairs, stepPair{own, other})
		}
	}
	return pairs
}

// eachTranslation asks for the findings on every translation of a kit.
func eachTranslation(k *kit.Kit, check func(*kit.Translation) []diag.Finding) []diag.Finding {
	if len(k.Method.Steps()) == 0 {
		return nil
	}
	var findings []diag.Finding
	for _, t := range k.Translations {
		if len(t.Method.Steps()) > 0 {
			findings = append(findings, check(t)...)
		}
	}
	return findings
}

// untranslated says so of a kit without translations.
func untranslated(s Subject) []string {
	if len(s.Kit.Translations) > 0 {
		return nil
	}
	return []string{"the method has no translation"}
}

// translationCause groups what one step of a translation has wrong: mostly the method
// was changed and the translation not.
func translationCause(t *kit.Translation, own *kit.Step) string {
	return "translation " + t.Language + " " + own.ID
}

// fileOf names the file of a translation, or of the method itself.
func fileOf(m kit.Method) string { return m.File.Name }

// besideMethod points at the place in the method that a translation is held against.
func besideMethod(own source.Span, note string) []diag.Place {
	return []diag.Place{{Where: own, Note: note}}
}

// inMarks writes the figures of a text with the decimal mark of a language.
func inMarks(text, from, to string) string {
	own, _ := kit.NumberMarks(from)
	mark, _ := kit.NumberMarks(to)
	if own == mark || own == "" || mark == "" {
		return text
	}
	var b strings.Builder
	for i, r := range text {
		if string(r) == own && i > 0 && i+1 < len(text) && isNumber(text[i-1:]) && isNumber(text[i+1:]) {
			b.WriteString(mark)
			continue
		}
		b.WriteRune(r)
	}
	return b.String()
}
