package amend_test

import (
	"bytes"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
	"testing/fstest"
	"time"

	"tallyfold/instructions"
	"tallyfold/kit"
	"tallyfold/kit/amend"
	"tallyfold/kit/load"
	"tallyfold/kit/proof"
)

// keysOf are all keys that can be renamed, in the order of the nouns.
func keysOf(k *kit.Kit) []string {
	var keys []string
	for _, c := range k.Components {
		keys = append(keys, c.ID)
	}
	for _, h := range k.Household {
		keys = append(keys, h.ID)
	}
	for _, t := range k.Tools {
		keys = append(keys, t.ID)
	}
	for _, m := range k.Mixtures {
		keys = append(keys, m.ID)
	}
	for _, p := range k.Pieces {
		keys = append(keys, p.ID)
	}
	return keys
}

// inMemory is a kit folder in memory.
func inMemory(t *testing.T, dir string) fstest.MapFS {
	t.Helper()
	files := fstest.MapFS{}
	err := fs.WalkDir(os.DirFS(dir), ".", func(name string, entry fs.DirEntry, err error) error {
		if err != nil || entry.IsDir() {
			return err
		}
		text, err := os.ReadFile(filepath.Join(dir, name))
		files[name] = &fstest.MapFile{Data: text}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return files
}

// renamed gives the folder with a thing's key changed.
func renamed(folder fstest.MapFS, key, to string) (fstest.MapFS, error) {
	changes, err := amend.Rename(folder, key, to)
	if err != nil {
		return nil, err
	}
	texts, err := amend.Renamed(folder, changes)
	if err != nil {
		return nil, err
	}
	after := fstest.MapFS{}
	for name, file := range folder {
		after[name] = file
		if text, ok := texts[name]; ok {
			after[name] = &fstest.MapFile{Data: text}
		}
	}
	return after, nil
}

// judged tells what is found in a kit, as rules, without keys and places.
func judged(folder fs.FS) string {
	p := proof.Of(folder, "kit", time.Date(2026, 6, 1, 0, 0, 0, 0, time.UTC))
	var found []string
	for _, f := range p.Findings {
		found = append(found, fmt.Sprint(f.Rule, f.Severity))
	}
	for _, f := range p.Accepted {
		found = append(found, "accepted "+f.Rule)
	}
	slices.Sort(found)
	return strings.Join(found, "\n")
}

// TestRenameInExamples: whatever thing of an example gets another key, the kit is
// judged as before, no link names the old key, and the old key given back gives the
// old bytes.
func TestRenameInExamples(t *testing.T) {
	const to = "renamed-thing"
	done, words := 0, 0
	for _, name := range []string{"drawer-sachets", "harbour-candles", "harbour-yarns", "pocket-notebooks"} {
		folder := inMemory(t, "../../examples/"+name)
		before := judged(folder)
		k, _ := instructions.Open(folder, name)
		for i, key := range keysOf(k) {
			after, err := renamed(folder, key, to)
			if err != nil {
				t.Errorf("%s: %s: %v", name, key, err)
				continue
			}
			done++
			old := regexp.MustCompile(`\((take|use|move|fill|place|left|clean|tool|vessel|same):` + key + `[?)]|[?&;](into|from|in|as)=` + key + `[&)]`)
			for file, is := range after {
				if strings.HasSuffix(file, ".md") && old.Match(is.Data) {
					t.Errorf("%s: %s still has %s", name, file, old.Find(is.Data))
				}
			}
			if i%3 == 0 {
				if now := judged(after); now != before {
					t.Errorf("%s: with %s renamed:\n%s\nwas\n%s", name, key, now, before)
				}
			}
			if !bytes.Contains(after["kit.yaml"].Data, []byte("also called: ["+key+"]")) {
				sameAgain(t, name, folder, after, to, key)
			} else {
				words++
			}
		}
	}
	if words == 0 || words > done/3 {
		t.Errorf("%d of %d things are called by their key in plain words", words, done)
	}
	if done < 60 {
		t.Errorf("only %d things renamed", done)
	}
}

func sameAgain(t *testing.T, name string, before, after fstest.MapFS, key, to string) {
	t.Helper()
	again, err := renamed(after, key, to)
	if err != nil {
		t.Errorf("%s: back to %s: %v", name, to, err)
		return
	}
	for file := range before {
		if !bytes.Equal(before[file].Data, again[file].Data) {
			t.Errorf("%s: %s is not the same when %s has its key again", name, file, to)
		}
	}
}

// TestRenameBesideRules does the same for the kits beside the rules, which name things
// in every way there is; what reading them finds stays.
func TestRenameBesideRules(t *testing.T) {
	kits, err := filepath.Glob("../rules/testdata/*/*/kit.yaml")
	if err != nil || len(kits) < 150 {
		t.Fatal(len(kits), err)
	}
	reads := func(folder fs.FS) (*kit.Kit, int) {
		k, found := instructions.Open(folder, "kit")
		if k == nil {
			return nil, 0
		}
		return k, len(found) + len(load.Settle(k, proof.RuleNames()))
	}
	done := 0
	for i, path := range kits {
		folder := inMemory(t, filepath.Dir(path))
		k, before := reads(folder)
		if k == nil {
			continue
		}
		keys := keysOf(k)
		for _, key := range []string{keys[i%len(keys)]} {
			after, err := renamed(folder, key, "renamed-thing")
			if err != nil {
				t.Errorf("%s: %s: %v", path, key, err)
				continue
			}
			if _, now := reads(after); now != before {
				t.Errorf("%s: with %s renamed, reading finds %d and not %d", path, key, now, before)
			}
			if !bytes.Contains(after["kit.yaml"].Data, []byte("also called: ["+key+"]")) {
				sameAgain(t, path, folder, after, "renamed-thing", key)
			}
			done++
		}
	}
	t.Log(done, "things renamed")
}

// TestRenamePlaces: each way to name a thing, and words that only look like it.
func TestRenamePlaces(t *testing.T) {
	folder := fstest.MapFS{
		"kit.yaml": {Data: []byte(`name: Gels
makes: 2 jars
components:
  wax: {name: Soy wax, packed: 300 g, share: at least 90 % of wax mixture}
  oil: {name: Oil, packed: 10 g, share: ["at most 2 % of wax", at most 2 % of soy wax], ratio: 1 mL per g of wax}
  jar: {name: Wax jar, packed: 2, container: {brimful: 200 mL}}
tools:
  wax-pan: {name: Wax pan, from: customer, holds: 2 L, evaporates: 1 g of wax}
mixtures:
  wax-mixture: {name: Wax mixture, made in: wax-pan}
pieces:
  candle: {count: 2, in: jar, of: wax-mixture}
runs:
  - {name: wax, with: {main: wax, scent: oil}}
claims:
  - {says: All of the wax, shown by: wax}
`)},
		"method.md": {Data: []byte("## [Melt the wax](step:melt?in=wax-pan)\n\nTake [all of the wax](take:wax) and [10 g](take:oil?into=wax&from=oil), see\n" +
			"[wax](trouble:wax), `[x](take:wax)`, [the drawing](picture:wax.svg) and [more][w], [again][w].\n\n[w]: same:wax\n")},
		"method.fr.md": {Data: []byte("## [Fondre](step:melt)\n\n[toute la cire](take:wax)\n")},
	}
	changes, err := amend.Rename(folder, "wax", "soy")
	if err != nil {
		t.Fatal(err)
	}
	texts, err := amend.Renamed(folder, changes)
	if err != nil {
		t.Fatal(err)
	}
	want := strings.NewReplacer("  wax: {", "  soy: {", `2 % of wax"`, `2 % of soy"`, "per g of wax", "per g of soy", "1 g of wax", "1 g of soy",
		"main: wax", "main: soy", "shown by: wax", "shown by: soy").Replace(string(folder["kit.yaml"].Data))
	if got := string(texts["kit.yaml"]); got != want {
		t.Errorf("got\n%s\nwant\n%s", got, want)
	}
	want = strings.NewReplacer("(take:wax) and", "(take:soy) and", "into=wax&", "into=soy&", "same:wax", "same:soy").Replace(string(folder["method.md"].Data))
	if got := string(texts["method.md"]); got != want {
		t.Errorf("got\n%s\nwant\n%s", got, want)
	}
	if got := string(texts["method.fr.md"]); !strings.Contains(got, "take:soy") {
		t.Errorf("the translation still says %s", got)
	}
	for _, to := range []string{"oil", "Soy", "yes", "main", "melt", "wax-pan"} {
		if _, err := amend.Rename(folder, "wax", to); err == nil {
			t.Errorf("wax may be called %s", to)
		}
	}
	if _, err := amend.Rename(folder, "nothing", "soy"); err == nil {
		t.Error("what is not there has another key")
	}
	folder["method.md"] = &fstest.MapFile{Data: []byte("## Other\n")}
	if _, err := amend.Renamed(folder, changes); err == nil {
		t.Error("changes are made in a text that they were not made for")
	}
}
