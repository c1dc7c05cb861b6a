package instructions

import (
	"strings"

	bcp47 "golang.org/x/text/language"

	"tallyfold/kit"
	"tallyfold/kit/diag"
	"tallyfold/kit/load"
	"tallyfold/kit/source"
)

// ReadTranslation reads the steps of a method in another language. tag is its BCP 47
// tag; k has its own method already. Each step names the one it translates:
//
//	## [Faire fondre la cire](step:melt?of=1a2b3c4d)
//
// Whether it says the same is judged elsewhere. Nil for a file that is refused.
func ReadTranslation(file *source.File, k *kit.Kit, tag string) (*kit.Translation, diag.List) {
	if refused := refuse(file); refused != nil {
		return nil, refused
	}
	amounts := load.AmountsIn(k, tag)
	translation := &kit.Translation{Language: tag, Method: kit.Method{File: file}}
	_, translation.WordsRead = languageFor(amounts.Language)
	m := methodReader{reader: newReader(file, k, amounts), method: &translation.Method}
	m.translates = &k.Method
	m.checkLanguage(tag, file.Whole())
	for _, s := range m.document.sections() {
		m.section(s)
	}
	m.judge()
	found := m.finish()
	if !translation.WordsRead {
		found = withoutRule(found, unreadableAmount) // nobody can tell whether it is one
	}
	return translation, found
}

func withoutRule(found diag.List, rule string) diag.List {
	var rest diag.List
	for _, f := range found {
		if f.Rule != rule {
			rest = append(rest, f)
		}
	}
	return rest
}

// inSource gives a part the name of the one it translates, as a heading in another
// language makes another name.
func (m *methodReader) inSource(part *kit.Part) {
	if m.translates == nil {
		return
	}
	if i := len(m.method.Parts); i < len(m.translates.Parts) {
		part.ID = m.translates.Parts[i].ID
	}
}

// vesselOfSource is the vessel that a translated step works in where its heading
// names none: that of the step it translates.
func (m *methodReader) vesselOfSource(step *kit.Step) {
	if m.translates == nil || step.Vessel != "" {
		return
	}
	if source := m.translates.Step(step.ID); source != nil {
		step.Vessel = source.Vessel
	}
}

// translations reads the files method.XX.md of the folder.
func (r *folderReader) translations(k *kit.Kit) {
	for _, name := range r.entries() {
		middle, isMethod := strings.CutPrefix(name, "method.")
		written, isText := strings.CutSuffix(middle, ".md")
		if !isMethod || !isText || written == "" {
			continue
		}
		tag, ok := r.translationTag(k, name, written)
		if !ok {
			continue
		}
		file := r.text(name, maxText)
		if file == nil {
			continue
		}
		texts := r.textsOfKit(k, tag, written)
		translation, found := ReadTranslation(file, k, tag)
		r.found = append(r.found, found...)
		if translation != nil {
			translation.Texts = texts
			r.besideMethod(k, translation, written)
			k.Translations = append(k.Translations, translation)
		}
	}
}

// textsOfKit reads kit.XX.txt. It comes before the method, which may use the names that
// it gives.
func (r *folderReader) textsOfKit(k *kit.Kit, tag, written string) map[string]string {
	file := r.text("kit."+written+".txt", maxText)
	if file == nil {
		return nil
	}
	texts, found := ReadTexts(file)
	r.found = append(r.found, found...)
	k.NamedBy(&kit.Translation{Language: tag, Texts: texts})
	return texts
}

// besideMethod reads what goes with a method in another language: trouble.XX.md and
// words.XX.md. written is the language as their names have it.
func (r *folderReader) besideMethod(k *kit.Kit, t *kit.Translation, written string) {
	amounts := load.AmountsIn(k, t.Language)
	var troubles, words diag.List
	if file := r.text("trouble."+written+".md", maxText); file != nil {
		t.Troubles, troubles = ReadTrouble(file, k, amounts)
	}
	if file := r.text("words."+written+".md", maxText); file != nil {
		t.Words, words = ReadWords(file, k, amounts)
	}
	r.found = append(append(r.found, troubles...), words...)
}

// translationTag is the language in the name of a file. A name that tells none, or
// the kit's own language, is a finding.
func (r *folderReader) translationTag(k *kit.Kit, name, written string) (tag string, ok bool) {
	nowhere := source.NewFile(name, nil).Whole()
	parsed, err := bcp47.Parse(written)
	first, _, _ := strings.Cut(written, "-")
	const letters = 2 // of a code such as fr; of three letters are words too, method.new.md
	if err != nil || len(first) != letters {
		f := finding(misnamedFile, nowhere, name, "a file "+name+", which is not read", "method.md, or the code of a language in the name of a translation, such as method.fr.md",
			"give a translation the code of its language", "rename it, if it is something else")
		f.Severity = diag.WorthKnowing
		r.found = append(r.found, f)
		return "", false
	}
	if parsed.String() == k.Language.Value {
		r.found = append(r.found, finding(misnamedFile, nowhere, name, "a file "+name+" in the language of the kit itself, which is not read",
			"the steps in the kit's own language in method.md alone", "take it out", "say under language in kit.yaml which language method.md is written in"))
		return "", false
	}
	return parsed.String(), true
}
