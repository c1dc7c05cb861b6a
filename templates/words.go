package templates

import (
	"fmt"
	"io/fs"
	"path"
	"slices"
	"strings"

	"golang.org/x/text/feature/plural"
	bcp47 "golang.org/x/text/language"

	"tallyfold/kit/diag"
	"tallyfold/kit/source"
)

// Words are the fixed words of one language, by name.
type Words struct {
	// Language is the BCP 47 tag.
	Language string
	says     map[string]string
}

// SourceLanguage is the language that the words are first written in. Every
// other is compared with it.
const SourceLanguage = "en"

// Words reads words/LANGUAGE.txt. Each line is a name, a colon and what is said;
// lines beginning with # are notes. A maker's file need only hold the words that
// differ. A line that can't be read is a Misfit, and the words are those of all other lines.
// A language of a region ("fr-CA") has the words of the language, and over
// them its own where there are any.
func (s Set) Words(language string) (Words, error) {
	words := Words{Language: language, says: map[string]string{}}
	if strings.ContainsAny(language, "/\\.") {
		return words, fmt.Errorf("%q is no language", language)
	}
	found, unread := false, diag.List(nil)
	for _, tag := range broadestFirst(language) {
		for i := len(s.layers) - 1; i >= 0; i-- { // the maker's words come last and win
			name := "words/" + tag + ".txt"
			text, err := (Set{layers: s.layers[i : i+1]}).File(name)
			if err != nil {
				continue
			}
			found = true
			unread = append(unread, words.read(source.NewFile(OwnFolder+"/"+name, text))...)
		}
	}
	if !found {
		return words, fmt.Errorf("there are no fixed words in the language %q; there are in %s, and templates/words/%s.txt in the kit's folder may hold your own",
			language, strings.Join(s.Languages(), ", "), language)
	}
	if len(unread) > 0 {
		return words, &Misfit{unread}
	}
	return words, nil
}

// broadestFirst gives "zh", "zh-Hant", "zh-Hant-TW" for the last.
func broadestFirst(language string) []string {
	var tags []string
	for i := range language {
		if language[i] == '-' {
			tags = append(tags, language[:i])
		}
	}
	return append(tags, language)
}

// Languages lists the languages that there are fixed words in, sorted.
func (s Set) Languages() []string {
	var languages []string
	for _, layer := range s.layers {
		names, _ := fs.Glob(layer, "words/*.txt")
		for _, name := range names {
			languages = append(languages, strings.TrimSuffix(path.Base(name), ".txt"))
		}
	}
	slices.Sort(languages)
	return slices.Compact(languages)
}

// read takes the words of a file and tells of lines that are none.
func (w Words) read(file *source.File) diag.List {
	var unread diag.List
	for n := 1; n <= file.Lines(); n++ {
		line := strings.TrimSpace(file.Line(n))
		if line == "" || strings.HasPrefix(line, "#") {
			continue
		}
		name, says, ok := strings.Cut(line, ":")
		if !ok {
			unread = append(unread, noColon(file, n))
			continue
		}
		w.says[strings.TrimSpace(name)] = strings.TrimSpace(says)
	}
	return unread
}

func noColon(file *source.File, line int) diag.Finding {
	start := file.LineStart(line)
	f := misfit(file.Span(start, start+len(file.Line(line))), strings.TrimSpace(file.Line(line)),
		"this line has no colon", "a name, a colon and the words, such as “bag: Pouch”", "put a # before it, if it is a note")
	f.Rule = "word-does-not-fit"
	return f
}

// Say gives the words under a name. Pairs of a name and a value fill the places
// written {name}. A name that isn't there is said in brackets, so that a reader
// of the booklet sees it and Missing tells the maker.
func (w Words) Say(name string, fill ...any) string {
	says, ok := w.says[name]
	if !ok {
		return "[" + name + "]"
	}
	for i := 0; i+1 < len(fill); i += 2 {
		says = strings.ReplaceAll(says, fmt.Sprintf("{%v}", fill[i]), fmt.Sprint(fill[i+1]))
	}
	return says
}

// Count says a word with its number, in the form that Unicode's plural rules (CLDR)
// give the language: name + ".one", ".other" and so on.
func (w Words) Count(name string, number int) string {
	return w.Say(name+"."+pluralForm(w.Language, number), "number", number)
}

// pluralForm is the form of a whole number in a language: one, few, other …
func pluralForm(language string, number int) string {
	return pluralForms[plural.Cardinal.MatchPlural(bcp47.Make(language), number, 0, 0, 0, 0)]
}

var pluralForms = map[plural.Form]string{
	plural.Other: "other", plural.Zero: "zero", plural.One: "one", plural.Two: "two", plural.Few: "few", plural.Many: "many",
}

// formsOf are the forms that the numbers met in a booklet take in a language.
func formsOf(language string) []string {
	const most = 200
	var forms []string
	for n := range most {
		if form := pluralForm(language, n); !slices.Contains(forms, form) {
			forms = append(forms, form)
		}
	}
	return forms
}

// Names lists what there is to say, sorted.
func (w Words) Names() []string {
	names := make([]string, 0, len(w.says))
	for name := range w.says {
		names = append(names, name)
	}
	slices.Sort(names)
	return names
}

// Missing lists the names of other that w has no words for, sorted. Of a word with a
// number those forms are asked for that w's own language has.
func (w Words) Missing(other Words) []string {
	var missing []string
	for _, name := range other.Names() {
		wanted := []string{name}
		if word, counted := strings.CutSuffix(name, ".other"); counted {
			wanted = nil
			for _, form := range formsOf(w.Language) {
				wanted = append(wanted, word+"."+form)
			}
		} else if strings.Contains(name, ".") {
			continue // asked for with its .other
		}
		for _, name := range wanted {
			if w.says[name] == "" {
				missing = append(missing, name)
			}
		}
	}
	slices.Sort(missing)
	return missing
}
