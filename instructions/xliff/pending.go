package xliff

import (
	"strings"

	"tallyfold/kit"
)

// Pending leaves of the files of a kit what a translation lacks, and the steps that were
// changed since it was made. t is nil where there is none yet.
func Pending(files []*File, k *kit.Kit, t *kit.Translation, tag string) []*File {
	if t == nil {
		t = &kit.Translation{Language: tag}
	}
	p := pending{kit: k, translation: t}
	var left []*File
	for _, file := range files {
		kept := &File{Name: file.Name}
		for _, s := range file.Sections {
			if file.Name == "kit" {
				s = p.texts(s)
			}
			if s != nil && (file.Name == "kit" || p.lacks(s)) {
				kept.Sections = append(kept.Sections, s)
			}
		}
		left = append(left, kept)
	}
	return left
}

type pending struct {
	kit         *kit.Kit
	translation *kit.Translation
}

// texts are those of kit.yaml without a translation, nil for none.
func (p pending) texts(s *Section) *Section {
	left := &Section{Name: s.Name}
	for _, unit := range s.Units {
		if id, isName := strings.CutPrefix(unit.ID, "name-"); isName {
			if name, _ := p.kit.Named(id); !name.HasNameIn(p.translation.Language) {
				left.Units = append(left.Units, unit)
			}
		} else if p.translation.Texts[unit.Text()] == "" {
			left.Units = append(left.Units, unit)
		}
	}
	if len(left.Units) == 0 {
		return nil
	}
	return left
}

func (p pending) lacks(s *Section) bool {
	kind, id, _ := strings.Cut(s.Name, ":")
	switch kind {
	case "step":
		own, other := p.kit.Step(id), p.translation.Method.Step(id)
		return other == nil || other.Of.Given() && other.Of.Value != own.Fingerprint()
	case "part":
		return len(p.translation.Method.Parts) == 0
	}
	return Kept(p.translation, s.Name) == ""
}

// Kept is the text of a section as a translation has it, heading and all; "" for none.
func Kept(t *kit.Translation, name string) string {
	if t == nil {
		return ""
	}
	kind, id, _ := strings.Cut(name, ":")
	switch kind {
	case "part":
		for _, part := range t.Method.Parts {
			if part.ID == id && part.Title != "" {
				return part.Span.Text() + "\n" + part.Body.Text()
			}
		}
	case "step":
		if step := t.Method.Step(id); step != nil {
			return step.Span.Text() + "\n" + step.Body.Text()
		}
	case "trouble":
		for _, trouble := range t.Troubles {
			if trouble.ID == id {
				return trouble.Span.Text() + "\n" + trouble.Body.Text()
			}
		}
	case "words":
		for _, words := range t.Words {
			if words.ID == id {
				return words.Span.Text() + "\n" + words.Body.Text()
			}
		}
	}
	return ""
}
