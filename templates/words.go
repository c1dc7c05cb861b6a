package templates

import (
	"fmt"
	"slices"
	"strings"
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
// differ.
func (s Set) Words(language string) (Words, error) {
	words := Words{Language: language, says: map[string]string{}}
	name := "words/" + language + ".txt"
	if strings.ContainsAny(language, "/\\.") {
		return words, fmt.Errorf("%q is no language", language)
	}
	found := false
	for i := len(s.layers) - 1; i >= 0; i-- { // the maker's words come last and win
		text, err := (Set{layers: s.layers[i : i+1]}).File(name)
		if err != nil {
			continue
		}
		found = true
		if err := words.read(name, string(text)); err != nil {
			return words, err
		}
	}
	if !found {
		return words, fmt.Errorf("there are no fixed words in the language %q", language)
	}
	return words, nil
}

func (w Words) read(file, text string) error {
	for i, line := range strings.Split(text, "\n") {
		line = strings.TrimSpace(line)
		if line == "" || strings.HasPrefix(line, "#") {
			continue
		}
		name, says, ok := strings.Cut(line, ":")
		if !ok {
			return fmt.Errorf("%s:%d: expected a name, a colon and the words", file, i+1)
		}
		w.says[strings.TrimSpace(name)] = strings.TrimSpace(says)
	}
	return nil
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

// Count says a word with its number: name + ".one" for one, name + ".more" for
// any other.
func (w Words) Count(name string, number int) string {
	if number == 1 {
		return w.Say(name+".one", "number", number)
	}
	return w.Say(name+".more", "number", number)
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

// Missing lists the names of other that w has no words for, sorted.
func (w Words) Missing(other Words) []string {
	var missing []string
	for _, name := range other.Names() {
		if _, ok := w.says[name]; !ok {
			missing = append(missing, name)
		}
	}
	return missing
}
