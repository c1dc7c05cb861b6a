package workbench

import (
	"encoding/json"
	"os"
	"strings"
	"testing"
)

// The bundled editor says what it is made of: the versions that the lock file has, with hashes,
// each with its licence beside it.
func TestTheEditorIsTheOneThatIsLocked(t *testing.T) {
	read := func(name string) string {
		text, err := os.ReadFile("page/" + name)
		if err != nil {
			t.Fatal(err)
		}
		return string(text)
	}
	var wanted struct{ Dependencies map[string]string }
	if err := json.Unmarshal([]byte(read("editor/package.json")), &wanted); err != nil {
		t.Fatal(err)
	}
	var lock struct {
		Packages map[string]struct {
			Version, Integrity, License string
			Dev, Optional               bool
		}
	}
	if err := json.Unmarshal([]byte(read("editor/package-lock.json")), &lock); err != nil {
		t.Fatal(err)
	}
	banner, _, _ := strings.Cut(read("editor.js"), "\n")
	licences := read("editor/LICENSES.txt")
	bundled := 0
	for path, one := range lock.Packages {
		name, ok := strings.CutPrefix(path, "node_modules/")
		if !ok || one.Dev || strings.Contains(name, "esbuild") {
			continue
		}
		bundled++
		if !strings.Contains(banner, name+" "+one.Version+" (MIT)") || !strings.Contains(licences, name+" "+one.Version+"\n") {
			t.Errorf("%s %s is locked, and the bundle or its licences tell another", name, one.Version)
		}
		if !strings.HasPrefix(one.Integrity, "sha512-") {
			t.Errorf("%s has no hash in the lock file", name)
		}
	}
	for name, version := range wanted.Dependencies {
		if lock.Packages["node_modules/"+name].Version != version {
			t.Errorf("%s %s is asked for, and %s is locked", name, version, lock.Packages["node_modules/"+name].Version)
		}
	}
	if bundled < 5 {
		t.Errorf("only %d packages are locked", bundled)
	}
}
