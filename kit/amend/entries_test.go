package amend_test

import (
	"bytes"
	"errors"
	"math/rand/v2"
	"slices"
	"strconv"
	"strings"
	"testing"

	"tallyfold/kit/amend"
)

// edits are changes and the exact text that comes of them.
var edits = []struct {
	why, before string
	edit        func([]byte) ([]byte, error)
	after       string
}{
	{"a field comes behind those its section tells before it", "components:\n  wax:\n    name: Wax\n    # ours\n    density: 0.9 g/mL # at 60 °C\n",
		set("300 g", "components", "wax", "packed"), "components:\n  wax:\n    name: Wax\n    packed: 300 g\n    # ours\n    density: 0.9 g/mL # at 60 °C\n"},
	{"in braces too, and before the first", "components:\n  wax: {packed: 300 g, share: 2 % of oil}\n",
		set("Wax", "components", "wax", "name"), "components:\n  wax: {name: Wax, packed: 300 g, share: 2 % of oil}\n"},
	{"a comma in braces wants quotation marks", "components: {wax: {name: Wax}}",
		set("a, b", "components", "wax", "note"), `components: {wax: {name: Wax, note: "a, b"}}`},
	{"a group that is not there", "components:\n  jar: {name: Jar, packed: 6}\n",
		set("280 mL", "components", "jar", "container", "brimful"), "components:\n  jar: {name: Jar, packed: 6, container: {brimful: 280 mL}}\n"},
	{"a section that is not there, with a blank line as between the others", "name: A\n\ncomponents:\n  jar: {packed: 6}\n\n# the end\n",
		set("6", "pieces", "jar-gel", "count"), "name: A\n\ncomponents:\n  jar: {packed: 6}\n\npieces:\n  jar-gel: {count: 6}\n\n# the end\n"},
	{"a component like the one before it", "components:\r\n    wax:\r\n        name: Wax # soy\r\n",
		set("Jar", "components", "jar", "name"), "components:\r\n    wax:\r\n        name: Wax # soy\r\n    jar:\r\n        name: Jar\r\n"},
	{"the last line keeps having no end", "name: A\nmakes: 6",
		set("1", "edition"), "name: A\nedition: 1\nmakes: 6"},
	{"behind the last line", "name: A\ncomponents:\n  wax: {packed: 1 g}",
		set("Water", "household", "water", "name"), "name: A\ncomponents:\n  wax: {packed: 1 g}\nhousehold:\n  water: {name: Water}"},
	{"a key with nothing after it", "name: # to come\nmakes: 6\n", set("Gels", "name"), "name: Gels # to come\nmakes: 6\n"},
	{"a component with nothing under it", "components:\n  wax: # to come\n", set("Wax", "components", "wax", "name"), "components:\n  wax: # to come\n    name: Wax\n"},
	{"a file of notes", "# my kit", set("Gels", "name"), "# my kit\nname: Gels\n"},
	{"one more in a list in brackets", "components: {wax: {cautions: [Hot., Slippery.]}}\n",
		set("Sticky.", "components", "wax", "cautions", "2"), "components: {wax: {cautions: [Hot., Slippery., Sticky.]}}\n"},
	{"one more in a list with dashes", "components:\n  wax:\n    cautions:\n      - Hot.\n      # more to come\n",
		set("Sticky.", "components", "wax", "cautions", "1"), "components:\n  wax:\n    cautions:\n      - Hot.\n      - Sticky.\n      # more to come\n"},
	{"a list that is not there", "components: {wax: {name: Wax}}\n",
		set("Hot.", "components", "wax", "cautions", "0"), "components: {wax: {name: Wax, cautions: [Hot.]}}\n"},
	{"a second value makes a list of one", "components: {wax: {cautions: Hot.}}\n",
		set("Sticky, too.", "components", "wax", "cautions", "1"), "components: {wax: {cautions: [Hot., \"Sticky, too.\"]}}\n"},
	{"and its comma wants quotation marks then", "components:\n  wax:\n    also called: flakes, white # both\n",
		set("soy", "components", "wax", "also called", "1"), "components:\n  wax:\n    also called: [\"flakes, white\", soy] # both\n"},
	{"a text of lines in a list", "components:\n  wax:\n    cautions: |\n      Hot.\n      Keep away.\n    note: x\n",
		set("Sticky.", "components", "wax", "cautions", "1"), "components:\n  wax:\n    cautions: [\"Hot.\\nKeep away.\", Sticky.]\n    note: x\n"},
	{"the one value is the first of its list", "components: {wax: {share: 2 % of oil}}\n",
		set("3 % of oil", "components", "wax", "share", "0"), "components: {wax: {share: 3 % of oil}}\n"},
	{"a run more", "runs:\n  - {name: Pine}\n", set("Orange", "runs", "1", "name"), "runs:\n  - {name: Pine}\n  - {name: Orange}\n"},
	{"a word that means yes stays a word where something is called so", "name: Gels\n", set("no", "name"), "name: \"no\"\n"},
	{"and is one where yes or no is asked", "tools: {pan: {essential: yes}}\n", set("no", "tools", "pan", "essential"), "tools: {pan: {essential: no}}\n"},
	{"lines under a sign keep their indentation and note", "about: | # for the cover\n     One.\n\n     Two.\n\nname: A\n",
		set("Three.\n\nFour.", "about"), "about: | # for the cover\n     Three.\n\n     Four.\n\nname: A\n"},
	{"single marks stay", "name: 'Ann''s kit'\n", set("Bo's kit", "name"), "name: 'Bo''s kit'\n"},

	{"a field goes with the note behind it", "name: A # one\nmakes: 6 # two\n", remove("makes"), "name: A # one\n"},
	{"the last of a file without a last line end", "name: A\nmakes: 6", remove("makes"), "name: A"},
	{"a component with all its lines", "components:\n  wax:\n    name: Wax\n    note: |\n      a\n\n      b\n\n  # the jar\n  jar: {packed: 6}\n",
		remove("components", "wax"), "components:\n\n  # the jar\n  jar: {packed: 6}\n"},
	{"the first, the middle and the last in braces", "a: {b: 1, c: 2, d: 3}\n", all(remove("a", "b"), remove("a", "d")), "a: {c: 2}\n"},
	{"the only one in braces", "a: {b: 1}\n", remove("a", "b"), "a: {}\n"},
	{"the only one on a line of its own", "components: # all\n  wax: {packed: 1 g}\nname: A\n", remove("components", "wax"), "components: {} # all\nname: A\n"},
	{"the first key behind a dash", "runs:\n  - name: Pine # a\n    parts: [a]\n", remove("runs", "0", "name"), "runs:\n  - parts: [a]\n"},
	{"an entry of a list", "runs:\n  - name: Pine\n    parts: [a]\n  - {name: Orange}\n", remove("runs", "0"), "runs:\n  - {name: Orange}\n"},

	{"a copy in braces", "components:\n  wax: {packed: 1 g} # soy\n", duplicate("oil", "components", "wax"), "components:\n  wax: {packed: 1 g} # soy\n  oil: {packed: 1 g}\n"},
	{"a copy of lines, with the notes in it", "components:\n  wax:\n    packed: 1 g\n    # ours\n    density: 0.9 g/mL\n  jar: {packed: 6}\n", duplicate("oil", "components", "wax"),
		"components:\n  wax:\n    packed: 1 g\n    # ours\n    density: 0.9 g/mL\n  oil:\n    packed: 1 g\n    # ours\n    density: 0.9 g/mL\n  jar: {packed: 6}\n"},
	{"a copy of a run", "runs:\n  - name: Pine\n    parts: [a]", duplicate("", "runs", "0"), "runs:\n  - name: Pine\n    parts: [a]\n  - name: Pine\n    parts: [a]"},

	{"a component with its notes changes places; blank lines stay", "components:\n  # soy\n  wax: {packed: 1 g} # a\n\n  jar: {packed: 6}\n  lid: {packed: 6}",
		move(2, "components", "wax"), "components:\n  jar: {packed: 6}\n\n  lid: {packed: 6}\n  # soy\n  wax: {packed: 1 g} # a"},
	{"in brackets", "runs: [{name: A}, {name: B},{name: C}]\n", move(0, "runs", "2"), "runs: [{name: C}, {name: A},{name: B}]\n"},
	{"in a list with dashes", "runs:\n- {name: A}\n- name: B\n  parts: [x]\n", move(1, "runs", "0"), "runs:\n- name: B\n  parts: [x]\n- {name: A}\n"},
}

func set(value string, path ...string) func([]byte) ([]byte, error) {
	return func(text []byte) ([]byte, error) { return amend.Set(text, path, value) }
}

func remove(path ...string) func([]byte) ([]byte, error) {
	return func(text []byte) ([]byte, error) { return amend.Remove(text, path) }
}

func duplicate(key string, path ...string) func([]byte) ([]byte, error) {
	return func(text []byte) ([]byte, error) { return amend.Duplicate(text, path, key) }
}

func move(to int, path ...string) func([]byte) ([]byte, error) {
	return func(text []byte) ([]byte, error) { return amend.Move(text, path, to) }
}

func all(steps ...func([]byte) ([]byte, error)) func([]byte) ([]byte, error) {
	return func(text []byte) (_ []byte, err error) {
		for _, step := range steps {
			if text, err = step(text); err != nil {
				return nil, err
			}
		}
		return text, nil
	}
}

func TestEdits(t *testing.T) {
	for _, c := range edits {
		t.Run(c.why, func(t *testing.T) {
			after, err := c.edit([]byte(c.before))
			if err != nil {
				t.Fatal(err)
			}
			if string(after) != c.after {
				t.Errorf("got\n%q, want\n%q", after, c.after)
			}
		})
	}
}

// refusals are edits that cannot be made, and a word of what is said.
var refusals = []struct {
	why, text string
	edit      func([]byte) ([]byte, error)
	says      string
}{
	{"a value used again", "name: &a Gels\nmakes: *a\n", set("B", "name"), "“&”"},
	{"keys merged in", "base: {a: 1}\nname:\n  <<: {a: 1}\n", set("B", "name"), "“<<”"},
	{"no YAML", "name: [a\n", set("B", "name"), "kit.yaml cannot be read"},
	{"tabs", "name:\n\ta: 1\n", set("B", "name"), "tab"},
	{"a field twice", "name: A\nname: B\n", set("C", "name"), "twice"},
	{"a value where keys are meant", "time: 5 h\n", set("1 h", "time", "total"), "one value and no keys"},
	{"keys where a value is meant", "time: {total: 5 h}\n", set("1 h", "time"), "several values"},
	{"no such field", "name: A\n", remove("makes"), "not in kit.yaml"},
	{"a key that is no key", "components:\n  wax: {packed: 1 g}\n", set("A", "components", "The Wax", "name"), "lower-case letters"},
	{"a key that is taken", "components:\n  wax: {packed: 1 g}\n  jar: {packed: 6}\n", duplicate("jar", "components", "wax"), "there already"},
	{"a place that is not there", "components:\n  wax: {packed: 1 g}\n", move(1, "components", "wax"), "1 places"},
	{"an entry taken out of one value", "components: {wax: {share: 2 % of oil}}\n", remove("components", "wax", "share", "1"), "not in kit.yaml"},
	{"the only value taken out of its list", "components: {wax: {share: 2 % of oil}}\n", remove("components", "wax", "share", "0"), "the only value"},
	{"no text", "name: A\n", set("\xff", "name"), "not UTF-8"},
	{"the second entry of no list", "name: A\n", set("B", "runs", "1", "name"), "no entries yet"},
	{"the third of one with nothing in it", "name: A\nruns:\n", set("B", "runs", "2", "name"), "no entries yet"},
	{"a list entry far behind the end", "runs: [{name: A}]\n", set("B", "runs", "7", "name"), "no entry of the list"},
}

func TestRefusals(t *testing.T) {
	for _, c := range refusals {
		t.Run(c.why, func(t *testing.T) {
			after, err := c.edit([]byte(c.text))
			var refused *amend.Refused
			if !errors.As(err, &refused) || refused.Do == "" || !strings.Contains(err.Error(), c.says) {
				t.Errorf("got %q, %v; want %q said", after, err, c.says)
			}
		})
	}
}

// TestEntriesOverRandomKits: any entry of any kit is taken out, doubled and taken out
// again, or moved there and back; what else is said stays, and so do the bytes.
func TestEntriesOverRandomKits(t *testing.T) {
	random := rand.New(rand.NewPCG(5, 5))
	done, refused := 0, 0
	for name, text := range inOrder(everyKit(t)) {
		leaves, _ := leavesOf(text)
		for range 2 {
			l := leaves[random.IntN(len(leaves))]
			path := l.path[:1+random.IntN(len(l.path))]
			if path[len(path)-1] == "(empty)" {
				continue
			}
			checkRemove(t, name, text, path, leaves)
			if _, err := strconv.Atoi(path[len(path)-1]); err != nil && checkDuplicate(t, name, text, path) {
				done++
			}
			there, err := amend.Move(text, path, 0)
			if err != nil {
				refused++
				continue
			}
			checkMove(t, name, text, there, path, leaves)
		}
	}
	if done < 300 || refused > 10 {
		t.Errorf("%d doubled, %d not moved", done, refused)
	}
}

func isUnder(path, above amend.Path) bool {
	return len(path) >= len(above) && slices.Equal(path[:len(above)], above)
}

func checkRemove(t *testing.T, name string, text []byte, path amend.Path, leaves []leaf) {
	t.Helper()
	after, err := amend.Remove(text, path)
	if len(path) == 1 && isUnder(leaves[0].path, path) && isUnder(leaves[len(leaves)-1].path, path) {
		if err == nil {
			t.Errorf("%s: nothing is left of it", name)
		}
		return
	}
	if err != nil {
		t.Errorf("%s: remove %v: %v", name, path, err)
		return
	}
	left := slices.DeleteFunc(slices.Clone(leaves), func(l leaf) bool { return isUnder(l.path, path) })
	got, ok := leavesOf(after)
	got = slices.DeleteFunc(got, func(l leaf) bool { return l.path[len(l.path)-1] == "(empty)" })
	left = slices.DeleteFunc(left, func(l leaf) bool { return l.path[len(l.path)-1] == "(empty)" })
	// Entries of a list are counted anew.
	if values(got) != values(left) || !ok && len(left) > 0 {
		t.Errorf("%s: remove %v: reads\n%s", name, path, told(got))
	}
}

func values(leaves []leaf) string {
	var b strings.Builder
	for _, l := range leaves {
		b.WriteString(strings.TrimRight(l.value, "\n") + "\x00")
	}
	return b.String()
}

func checkDuplicate(t *testing.T, name string, text []byte, path amend.Path) bool {
	t.Helper()
	copied, err := amend.Duplicate(text, path, "a-copy-of-it")
	if err != nil {
		t.Errorf("%s: duplicate %v: %v", name, path, err)
		return false
	}
	again, err := amend.Remove(copied, append(slices.Clone(path[:len(path)-1]), "a-copy-of-it"))
	if err != nil || !bytes.Equal(again, text) {
		from, to := onlyStretch(text, again)
		t.Errorf("%s: duplicate %v and remove: %v, %q", name, path, err, text[from:to])
	}
	return true
}

func checkMove(t *testing.T, name string, text, there []byte, path amend.Path, leaves []leaf) {
	t.Helper()
	siblings := 0
	seen := map[string]bool{}
	number := 0
	for _, l := range leaves {
		if len(l.path) < len(path) || !slices.Equal(l.path[:len(path)-1], path[:len(path)-1]) || seen[l.path[len(path)-1]] {
			continue
		}
		if l.path[len(path)-1] == path[len(path)-1] {
			number = siblings
		}
		seen[l.path[len(path)-1]] = true
		siblings++
	}
	moved := slices.Clone(path)
	if _, err := strconv.Atoi(path[len(path)-1]); err == nil {
		moved[len(moved)-1] = "0"
	}
	again, err := amend.Move(there, moved, number)
	if err != nil || !bytes.Equal(again, text) {
		t.Errorf("%s: move %v to the front and back to %d: %v\n%s", name, path, number, err, again)
	}
	got, _ := leavesOf(there)
	if sorted(got) != sorted(leaves) {
		t.Errorf("%s: move %v: reads\n%s", name, path, told(got))
	}
}

func sorted(leaves []leaf) string {
	lines := strings.Split(values(leaves), "\x00")
	slices.Sort(lines)
	return strings.Join(lines, "\n")
}
