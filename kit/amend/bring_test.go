package amend

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"tallyfold/kit/load"
	"tallyfold/kit/source"
)

// Whatever a kit of the tree has under a key of its own is taken out and put back where it was:
// not a byte is another then.
func TestTakenOutAndPutBack(t *testing.T) {
	kits, _ := filepath.Glob("../../examples/*/kit.yaml")
	others, _ := filepath.Glob("../rules/testdata/*/clean/kit.yaml")
	tried, sameBytes := 0, 0
	for _, name := range append(kits, others...) {
		content, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		root, _ := load.Tree(source.NewFile("kit.yaml", content))
		for _, section := range root.Entries {
			if levelOf(At(section.Key)).form != load.NamedGroups || section.Value.Kind != load.KeysPart {
				continue
			}
			for number, e := range section.Value.Entries {
				tried++
				if putBack(t, name, content, root, At(section.Key, e.Key), number) {
					sameBytes++
				}
			}
		}
	}
	if tried < 500 || sameBytes < tried {
		t.Errorf("of %d that were put back %d gave the same bytes again", tried, sameBytes)
	}
}

// putBack says whether the text is the same again to the byte.
func putBack(t *testing.T, name string, content []byte, root *load.Part, path Path, number int) bool {
	t.Helper()
	entry, err := Entry(content, path)
	if err != nil {
		t.Fatalf("%s: %s: %v", name, path, err)
	}
	without, err := Remove(content, path)
	if err != nil {
		t.Fatalf("%s: %s: %v", name, path, err)
	}
	again, err := Bring(without, entry, path, number)
	if err != nil {
		t.Fatalf("%s: %s: %v\n%s", name, path, err, entry)
	}
	got, _ := load.Tree(source.NewFile("kit.yaml", again))
	if got == nil || !same(got, root) {
		t.Errorf("%s: %s: it says something else now", name, path)
	}
	return string(again) == string(content)
}

func TestBring(t *testing.T) {
	const wax = "components:\n    wax:\n        name: Wax  # soy\n        packed: 3 g\n"
	for _, test := range []struct{ content, entry, want string }{
		{"name: A\n", wax, "name: A\ncomponents:\n  wax:\n      name: Wax  # soy\n      packed: 3 g\n"},
		{"components: {}  # none\nname: A\n", wax, "components:  # none\n  wax:\n      name: Wax  # soy\n      packed: 3 g\nname: A\n"},
		{"components:\nname: A\n", wax, "components:\n  wax:\n      name: Wax  # soy\n      packed: 3 g\nname: A\n"},
		{"components:\r\n  jar: {packed: 3}\r\n", wax, "components:\r\n  wax:\r\n      name: Wax  # soy\r\n      packed: 3 g\r\n  jar: {packed: 3}\r\n"},
		{"components: {jar: {packed: 3}}\n", "components: {wax: {packed: 3 g}}\n", "components: {wax: {packed: 3 g}, jar: {packed: 3}}\n"},
		{"components: {jar: {packed: 3}}\n", wax, "cannot be put back"},
		{"components:\n  wax: {packed: 2 g}\n", wax, "“wax” is there already"},
	} {
		got, err := Bring([]byte(test.content), []byte(test.entry), At("components", "wax"), 0)
		if err != nil {
			got = []byte(err.Error())
		}
		if string(got) != test.want && !(err != nil && strings.Contains(err.Error(), test.want)) {
			t.Errorf("into\n%s\ncame\n%s\nwanted\n%s", test.content, got, test.want)
		}
	}
}
