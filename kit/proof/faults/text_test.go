package faults_test

import (
	"fmt"
	"io/fs"
	"maps"
	"os"
	"path"
	"path/filepath"
	"regexp"
	"strings"
	"sync"
	"testing"
	"testing/fstest"
	"time"

	"tallyfold/examples"
)

// A cleanKit is an example as text, in which faults are made. Nothing here knows
// the program: what a fault ought to bring is reckoned from the words alone.
type cleanKit struct {
	name  string
	files map[string]string
	day   time.Time // it is judged as of
	// translated are the files in other languages. An edit of the method would make all
	// of them stale, so that they are left out but where they are meant.
	translated map[string]string

	once   sync.Once
	linked []link // what links gives, read once
}

// cleanKits are the examples.
func cleanKits(t testing.TB) []*cleanKit {
	t.Helper()
	var all []*cleanKit
	for _, name := range examples.Names() {
		folder, err := examples.Folder(name)
		if err != nil {
			t.Fatal(err)
		}
		all = append(all, readKit(t, name, folder, judged))
	}
	return all
}

// nearMisses are the clean twins that stand beside the rules: small kits with all
// that the examples have no use for. Only kinds that reckon nothing are tried there.
func nearMisses(t testing.TB) []*cleanKit {
	t.Helper()
	folders, err := filepath.Glob("../../rules/testdata/*/clean")
	if err != nil {
		t.Fatal(err)
	}
	var all []*cleanKit
	for _, folder := range folders {
		all = append(all, readKit(t, filepath.Base(filepath.Dir(folder)), os.DirFS(folder), judgedBesideRules))
	}
	return all
}

// judged is the day that the examples are judged as of.
var judged = time.Date(2026, 11, 25, 0, 0, 0, 0, time.UTC)

// judgedBesideRules is the day that the tests of the rules judge the near misses as of.
var judgedBesideRules = time.Date(2026, 1, 15, 0, 0, 0, 0, time.UTC)

var isTranslated = regexp.MustCompile(`^\w+\.[a-z]{2}\.md$`)

// withTranslations is the kit with its files in other languages.
func (k *cleanKit) withTranslations() *cleanKit {
	whole := &cleanKit{name: k.name, files: maps.Clone(k.files), day: k.day}
	maps.Copy(whole.files, k.translated)
	return whole
}

func readKit(t testing.TB, name string, folder fs.FS, day time.Time) *cleanKit {
	t.Helper()
	k := &cleanKit{name: name, files: map[string]string{}, translated: map[string]string{}, day: day}
	err := fs.WalkDir(folder, ".", func(file string, entry fs.DirEntry, err error) error {
		if err != nil || entry.IsDir() {
			return err
		}
		text, err := fs.ReadFile(folder, file)
		if isTranslated.MatchString(file) {
			k.translated[file] = string(text)
		} else {
			k.files[file] = string(text)
		}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return k
}

// A place is a piece of one file of a clean kit.
type place struct {
	kit      *cleanKit
	file     string
	from, to int
}

func (p place) text() string { return p.kit.files[p.file][p.from:p.to] }

// line is the whole line that the place begins in, with its line end.
func (p place) line() place {
	text := p.kit.files[p.file]
	from := strings.LastIndexByte(text[:p.from], '\n') + 1
	to := len(text)
	if end := strings.IndexByte(text[p.from:], '\n'); end >= 0 {
		to = p.from + end + 1
	}
	return place{p.kit, p.file, from, to}
}

// within moves into the place: the group of the first match, which must be there.
func (p place) within(pattern string) (place, bool) {
	at := regexp.MustCompile(pattern).FindStringSubmatchIndex(p.text())
	if at == nil {
		return place{}, false
	}
	return place{p.kit, p.file, p.from + at[2], p.from + at[3]}, true
}

// end is the place just after it.
func (p place) end() place { return place{p.kit, p.file, p.to, p.to} }

// find gives the first group of every match in a file.
func (k *cleanKit) find(file, pattern string) []place {
	var all []place
	for _, at := range regexp.MustCompile(pattern).FindAllStringSubmatchIndex(k.files[file], -1) {
		all = append(all, place{k, file, at[2], at[3]})
	}
	return all
}

// whole is a file from its first to its last byte.
func (k *cleanKit) whole(file string) place { return place{k, file, 0, len(k.files[file])} }

// markdown names the files of the kit that are read as text.
func (k *cleanKit) markdown() []string { return []string{"method.md", "trouble.md", "words.md"} }

// An edit is one fault: what is put where, and what must be said of it.
type edit struct {
	place
	with string
	// gone and renamed are for whole files.
	gone    bool
	renamed string
	// at are the places whose line the finding must name; none are the lines edited.
	at []place
	// figures must all stand in the finding.
	figures []figure
	// harmless: the sums say that nothing follows from it, so nothing may be said.
	harmless bool
}

// becomes puts another text into a place.
func (p place) becomes(with string, figures ...figure) edit {
	return edit{place: p, with: with, figures: figures}
}

// toldAt says where the finding must be, if not on the line edited.
func (e edit) toldAt(at ...place) edit { e.at = at; return e }

// harmlessIf marks an edit from which nothing follows.
func (e edit) harmlessIf(is bool) edit { e.harmless = is; return e }

func (e edit) String() string {
	what := fmt.Sprintf("%s/%s:%d: “%s” → “%s”", e.kit.name, e.file, e.kit.lineOf(e.file, e.from), short(e.text()), short(e.with))
	switch {
	case e.gone:
		what = e.kit.name + "/" + e.file + " is gone"
	case e.renamed != "":
		what = e.kit.name + "/" + e.file + " is called " + e.renamed
	}
	return what
}

func short(text string) string {
	text = strings.Join(strings.Fields(text), " ")
	if runes := []rune(text); len(runes) > 60 {
		return string(runes[:59]) + "…"
	}
	return text
}

func (k *cleanKit) lineOf(file string, at int) int {
	return strings.Count(k.files[file][:at], "\n") + 1
}

// faulty gives the files of the kit with the edit made.
func (e edit) faulty() fstest.MapFS {
	files := maps.Clone(e.kit.files)
	switch text := files[e.file]; {
	case e.gone:
		delete(files, e.file)
	case e.renamed != "":
		files[path.Join(path.Dir(e.file), e.renamed)] = text
		delete(files, e.file)
	default:
		files[e.file] = text[:e.from] + e.with + text[e.to:]
	}
	all := fstest.MapFS{}
	for name, text := range files {
		all[name] = &fstest.MapFile{Data: []byte(text)}
	}
	return all
}

// lines are the lines of the faulty kit, as “file:line”, of which the finding must
// name one.
func (e edit) lines() map[string]bool {
	lines := map[string]bool{}
	for _, at := range e.at {
		line := at.kit.lineOf(at.file, at.from)
		if at.file == e.file && at.from >= e.to {
			line += strings.Count(e.with, "\n") - strings.Count(e.text(), "\n")
		}
		lines[fmt.Sprintf("%s:%d", at.file, line)] = true
	}
	if len(e.at) > 0 {
		return lines
	}
	if e.gone || e.renamed != "" {
		lines[e.file+":1"] = true
		lines[path.Base(e.renamed)+":1"] = true
		return lines
	}
	written := strings.TrimRight(e.with, "\n")
	first := e.kit.lineOf(e.file, e.from) + len(written) - len(strings.TrimLeft(written, "\n"))
	for i := range strings.Count(strings.Trim(written, "\n"), "\n") + 1 {
		lines[fmt.Sprintf("%s:%d", e.file, first+i)] = true
	}
	return lines
}
