package workbench

import (
	"errors"
	"fmt"
	"net/http"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"tallyfold/instructions/keep"
	"tallyfold/instructions/xliff"
	"tallyfold/kit"
	"tallyfold/render"
)

// wordsView is the languages of a kit: which there are, and what each still lacks.
type wordsView struct {
	Unread    bool
	Own       string
	Languages []choiceView
	// Offered are languages that the booklet has its fixed words in.
	Offered []choiceView
	// Here is the language that is looked at, "" for none.
	Here    string
	Called  string
	Missing []missingView
	Wrong   string
	// Files are the texts of the language, for the editor.
	Files []fileTab
}

type missingView struct {
	Kind, Text, Advice, Go string
	Caution                bool
	// Short texts are translated here, into the file kit.XX.txt.
	Short bool
}

func (d *desk) wordsPage(in *http.Request) (any, error) {
	p := d.proved()
	if p.Kit == nil {
		return wordsView{Unread: true}, nil
	}
	shownNow := wordsView{Own: languageName(languageOf(p.Kit)), Here: in.URL.Query().Get("language")}
	known := render.Languages(p.Kit)
	for _, tag := range known {
		shownNow.Languages = append(shownNow.Languages, choiceView{tag, languageName(tag), tag == shownNow.Here})
	}
	for _, tag := range d.templates().Languages() {
		if !slices.Contains(known, tag) {
			shownNow.Offered = append(shownNow.Offered, choiceView{Name: tag, Says: languageName(tag)})
		}
	}
	if shownNow.Here == "" {
		return shownNow, nil
	}
	shownNow.Called = languageName(shownNow.Here)
	missing, err := render.UntranslatedIn(p.Kit, d.templates(), shownNow.Here)
	if err != nil {
		shownNow.Wrong = plain(err)
		return shownNow, nil
	}
	for _, one := range missing {
		shownNow.Missing = append(shownNow.Missing, missingView{
			Kind: one.Kind, Text: one.Text, Advice: one.Advice, Caution: one.Caution, Go: placeAddress(d.name, one.Where),
			Short: one.InTexts && !strings.Contains(one.Text, "\n"),
		})
	}
	for _, name := range d.translations() {
		if strings.Contains(name, "."+shownNow.Here+".") {
			shownNow.Files = append(shownNow.Files, fileTab{Name: name, Title: name})
		}
	}
	return shownNow, nil
}

func languageOf(k *kit.Kit) string {
	if k.Language.Value == "" {
		return "en"
	}
	return k.Language.Value
}

// translations are the files of the kit folder in other languages.
func (d *desk) translations() []string {
	var all []string
	for _, pattern := range []string{"method.*.md", "trouble.*.md", "words.*.md", "kit.*.txt"} {
		found, _ := filepath.Glob(filepath.Join(escaped(d.path), pattern))
		for _, path := range found {
			all = append(all, filepath.Base(path))
		}
	}
	return all
}

// escaped is a path in which nothing counts as a pattern.
func escaped(path string) string {
	return strings.NewReplacer(`*`, `\*`, `?`, `\?`, `[`, `\[`).Replace(path)
}

// translateText says what stands for a text of kit.yaml in a language: a line of the file
// kit.XX.txt, and under it, set in, its translation.
func (d *desk) translateText(o order) (answer, error) {
	value := strings.TrimSpace(o.Value)
	switch {
	case value == "":
		return answer{}, &wrong{"write the translation first", "translate"}
	case strings.ContainsAny(value, "\r\n"), strings.ContainsAny(o.Was, "\r\n"), !isTag(o.Key):
		return answer{}, &wrong{"a text of one line is translated here; write longer ones in the file itself", "translate"}
	}
	if err := checkTyped(order{Path: []string{"words"}, Value: value}); err != nil {
		return answer{}, err
	}
	name := "kit." + o.Key + ".txt"
	old, err := d.read(name)
	if err != nil {
		return answer{}, err
	}
	text := string(old.Typed)
	if text != "" && !strings.HasSuffix(text, "\n") {
		text += "\n"
	}
	_, err = d.put(name, []byte(text+o.Was+"\n  "+value+"\n"), old.TypedPrint)
	return answer{}, err
}

// isTag says whether a word can be the tag of a language in the name of a file.
func isTag(tag string) bool {
	return tag != "" && len(tag) <= 20 && strings.Trim(tag, "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789-") == ""
}

// takeWords takes the texts back that a translator has sent. Text is the XLIFF document.
func (d *desk) takeWords(o order) (answer, error) {
	p := d.proved()
	if p.Kit == nil {
		return answer{}, errUnread
	}
	told, err := xliff.Read([]byte(o.Text))
	if err != nil {
		return answer{}, &wrong{plain(err), "translated"}
	}
	words, err := d.templates().Words(told.To)
	if err != nil || !isTag(told.To) {
		return answer{}, &wrong{"the file is for a language that the booklet has no words in", "translated"}
	}
	before := map[string]keep.Text{}
	made, troubles := told.Made(xliff.Files(p.Kit, words), p.Kit.Translation(told.To), func(name string) string {
		text, err := d.folder.Read(name)
		if err != nil {
			return ""
		}
		before[name] = text
		return string(text.Typed)
	})
	if len(troubles) > 0 {
		return answer{}, &wrong{fmt.Sprintf("%d texts cannot be taken over, the first is “%s”: %s. Nothing was written.", len(troubles), troubles[0].Text, troubles[0].Why), "translated"}
	}
	for _, one := range made {
		if _, err := d.put(one.Name, []byte(one.Text), before[one.Name].TypedPrint); err != nil {
			return answer{}, err
		}
	}
	return answer{Go: "words?language=" + told.To}, nil
}

// beginLanguage starts a translation: the method with its links, each step to be put into
// other words.
func (d *desk) beginLanguage(o order) (answer, error) {
	p := d.proved()
	if p.Kit == nil {
		return answer{}, errUnread
	}
	if !isTag(o.Key) || !slices.Contains(d.templates().Languages(), o.Key) {
		return answer{}, &wrong{"the booklet has no words in this language yet", "language"}
	}
	name := "method." + o.Key + ".md"
	if _, err := os.Stat(filepath.Join(d.path, name)); err == nil {
		return answer{}, errors.New(name + " is there already")
	}
	text, err := d.read(name)
	if err != nil {
		return answer{}, err
	}
	if _, err := d.put(name, startOfTranslation(p.Kit), text.TypedPrint); err != nil {
		return answer{}, err
	}
	return answer{Go: "method?file=" + name}, nil
}

// startOfTranslation is the method itself, with the fingerprint of each step in its heading,
// so that a step that changes later is known to need a new translation.
func startOfTranslation(k *kit.Kit) []byte {
	source := k.Method.File.Text
	var out []byte
	at := 0
	for _, step := range k.Method.Steps() {
		link, ok := headingLink(step.Span)
		if !ok {
			continue
		}
		sign := "?"
		if strings.Contains(link.Destination, "?") {
			sign = "&"
		}
		heading := source[step.Span.Start:step.Span.End]
		end := step.Span.Start + strings.LastIndexByte(string(heading), ')')
		out = append(append(out, source[at:end]...), sign+"of="+step.Fingerprint()...)
		at = end
	}
	return append(out, source[at:]...)
}
