package render

import (
	"fmt"

	"tallyfold/kit"
	"tallyfold/kit/source"
	"tallyfold/templates"
)

// An Untranslated is something that a booklet in another language still needs.
type Untranslated struct {
	// Kind is what it is ("name", "step"); Text is it in the kit's own language.
	Kind, Text string
	// Where it stands; the zero Span for the fixed words.
	Where source.Span
	// Advice says where its translation goes.
	Advice string
	// Caution: a booklet without it would not warn its reader.
	Caution bool
	// InTexts: a line of kit.XX.txt, and one under it, translate it.
	InTexts bool
}

// UntranslatedIn lists what has no words in a language: fixed words of the booklet,
// texts and names of kit.yaml, steps, troubles and sections of words.md. It is empty for
// the kit's own language when all fixed words are there.
func UntranslatedIn(k *kit.Kit, set templates.Set, tag string) ([]Untranslated, error) {
	list := untranslated{tag: tag}
	if err := list.fixedWords(set); err != nil {
		return nil, err
	}
	t := k.Translation(tag)
	if t == nil {
		if base(tag) == base(k.Language.Value) {
			return list.all, nil
		}
		t = &kit.Translation{Language: tag}
	}
	list.texts(k, t)
	list.names(k)
	list.steps(k, t)
	list.sections(k, t)
	return list.all, nil
}

type untranslated struct {
	tag string
	all []Untranslated
}

func (l *untranslated) lacks(kind, text string, where source.Span, advice string, values ...any) {
	l.all = append(l.all, Untranslated{Kind: kind, Text: text, Where: where, Advice: fmt.Sprintf(advice, values...)})
}

func (l *untranslated) fixedWords(set templates.Set) error {
	english, err := set.Words(templates.SourceLanguage)
	if err != nil {
		return err
	}
	words, err := set.Words(l.tag)
	if err != nil {
		words = templates.Words{Language: l.tag} // of a language without any, all are missing
	}
	for _, name := range words.Missing(english) {
		l.lacks("fixed word", name, source.Span{}, "write it into templates/words/%s.txt in the kit's folder", l.tag)
	}
	return nil
}

func (l *untranslated) texts(k *kit.Kit, t *kit.Translation) {
	for _, text := range k.Texts() {
		if t.Texts[text.Value] != "" {
			continue
		}
		l.lacks("text", text.Value, text.Span, "write it into kit.%s.txt, and under it, set in, its translation", l.tag)
		last := &l.all[len(l.all)-1]
		last.Caution, last.InTexts = isCaution(k, text.Value), true
	}
}

func isCaution(k *kit.Kit, text string) bool {
	for _, c := range k.Components {
		for _, caution := range c.Cautions {
			if caution.Value == text {
				return true
			}
		}
	}
	return false
}

func (l *untranslated) names(k *kit.Kit) {
	for _, name := range k.Names() {
		if !name.HasNameIn(l.tag) {
			l.lacks("name", name.String(), name.IDSpan, "write “names: {%s: …}” under %s in kit.yaml, or both names into kit.%s.txt", l.tag, name.ID, l.tag)
			l.all[len(l.all)-1].InTexts = true
		}
	}
}

func (l *untranslated) steps(k *kit.Kit, t *kit.Translation) {
	for _, step := range k.Method.Steps() {
		if t.Method.Step(step.ID) == nil {
			l.lacks("step", step.Title, step.Span, "translate it in method.%s.md, under ## [its title](step:%s?of=%s)", l.tag, step.ID, step.Fingerprint())
		}
	}
}

// sections are the troubles and the maker's further texts.
func (l *untranslated) sections(k *kit.Kit, t *kit.Translation) {
	translated := map[string]bool{}
	for _, trouble := range t.Troubles {
		translated["trouble:"+trouble.ID] = true
	}
	for _, words := range t.Words {
		translated["words:"+words.ID] = true
	}
	for _, trouble := range k.Troubles {
		if name := "trouble:" + trouble.ID; !translated[name] {
			l.lacks("trouble", trouble.Title, trouble.Span, "translate it in trouble.%s.md, under ## [its title](%s)", l.tag, name)
		}
	}
	for _, words := range k.Words {
		if name := "words:" + words.ID; !translated[name] {
			l.lacks("section", words.Title, words.Span, "translate it in words.%s.md, under ## [its title](%s)", l.tag, name)
		}
	}
}
