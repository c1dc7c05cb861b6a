package amend_test

import (
	"bytes"
	"io/fs"
	"iter"
	"maps"
	"math/rand/v2"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"gopkg.in/yaml.v3"

	"tallyfold/kit/amend"
)

// everyKit reads all kit.yaml of the repository that are whole kits: the examples and
// those beside the rules. Each is tried as it is, with CR LF, with a byte order mark,
// and without its last line end.
func everyKit(t testing.TB) map[string][]byte {
	t.Helper()
	kits := map[string][]byte{}
	for _, root := range []string{"../../examples", "../rules/testdata", "../../testdata"} {
		err := filepath.WalkDir(root, func(path string, entry fs.DirEntry, err error) error {
			if err != nil || entry.Name() != "kit.yaml" {
				return err
			}
			text, err := os.ReadFile(path)
			if _, isText := leavesOf(text); err != nil || !isText {
				return err
			}
			kits[path] = text
			switch len(kits) % 4 {
			case 1:
				if !bytes.Contains(text, []byte("\r")) {
					kits[path+" with CR LF"] = bytes.ReplaceAll(text, []byte("\n"), []byte("\r\n"))
				}
			case 2:
				kits[path+" with a mark"] = append([]byte("\xef\xbb\xbf"), text...)
			case 3:
				kits[path+" without its last line end"] = bytes.TrimRight(text, "\r\n")
			}
			return nil
		})
		if err != nil {
			t.Fatal(err)
		}
	}
	for i, text := range gnarled {
		kits["gnarled "+strconv.Itoa(i)] = []byte(text)
		kits["gnarled with CR LF "+strconv.Itoa(i)] = []byte(strings.ReplaceAll(text, "\n", "\r\n"))
		kits["gnarled without a last line end "+strconv.Itoa(i)] = []byte(strings.TrimRight(text, "\n"))
	}
	if len(kits) < 300 {
		t.Fatalf("only %d kits found", len(kits))
	}
	return kits
}

// inOrder goes through kits by their names, so that what one random number fails on
// fails again on the next day.
func inOrder(kits map[string][]byte) iter.Seq2[string, []byte] {
	return func(yield func(string, []byte) bool) {
		for _, name := range slices.Sorted(maps.Keys(kits)) {
			if !yield(name, kits[name]) {
				return
			}
		}
	}
}

// A leaf is one value with the way to it, read by the YAML library and not by the
// program's own reader.
type leaf struct {
	path  amend.Path
	value string
	style yaml.Style
}

func (l leaf) key() string { return strings.Join(l.path, "\x00") }

// leavesOf lists all values of a text, in order; ok is false for one that the program
// refuses whole (aliases, two documents, no YAML at all) or with a key twice.
func leavesOf(text []byte) (leaves []leaf, ok bool) {
	var root yaml.Node
	if err := yaml.Unmarshal(bytes.TrimPrefix(text, []byte("\xef\xbb\xbf")), &root); err != nil || root.Kind == 0 || root.Content[0].Kind != yaml.MappingNode {
		return nil, false
	}
	var plain map[string]any
	if yaml.Unmarshal(text, &plain) != nil {
		return nil, false
	}
	ok = true
	var walk func(n *yaml.Node, path amend.Path)
	walk = func(n *yaml.Node, path amend.Path) {
		switch {
		case n.Kind == yaml.AliasNode || n.Anchor != "" || n.Style&yaml.TaggedStyle != 0:
			ok = false
		case n.Kind == yaml.MappingNode && len(n.Content) > 0:
			for i := 0; i+1 < len(n.Content); i += 2 {
				walk(n.Content[i+1], append(slices.Clone(path), n.Content[i].Value))
			}
		case n.Kind == yaml.SequenceNode && len(n.Content) > 0:
			for i, item := range n.Content {
				walk(item, append(slices.Clone(path), strconv.Itoa(i)))
			}
		case n.Kind == yaml.ScalarNode:
			leaves = append(leaves, leaf{path, n.Value, n.Style &^ yaml.FlowStyle})
		default:
			leaves = append(leaves, leaf{append(slices.Clone(path), "(empty)"), "", 0})
		}
	}
	walk(root.Content[0], nil)
	return leaves, ok
}

func isBlock(l leaf) bool { return l.style&(yaml.LiteralStyle|yaml.FoldedStyle) != 0 }

// told writes leaves a line each. The line end of a block of text is its own.
func told(leaves []leaf) string {
	var b strings.Builder
	for _, l := range leaves {
		value := l.value
		if isBlock(l) {
			value = strings.TrimRight(value, "\n")
		}
		b.WriteString(strings.Join(l.path, "/") + " = " + strconv.Quote(value) + "\n")
	}
	return b.String()
}

// onlyStretch checks that all bytes before and behind one stretch are the same, and
// gives the lines of the old text that the stretch touches.
func onlyStretch(before, after []byte) (from, to int) {
	for from < min(len(before), len(after)) && before[from] == after[from] {
		from++
	}
	end := 0
	for end < min(len(before), len(after))-from && before[len(before)-1-end] == after[len(after)-1-end] {
		end++
	}
	return from, len(before) - end
}

// TestSetOverRandomEdits: whatever field of whatever kit gets whatever value, the
// text says that and else the same as before; only bytes of that field are other; and
// the old value set again gives the old bytes, unless it was written in a way that a
// value does not tell (folded over lines, with escapes, in marks that it did not need).
func TestSetOverRandomEdits(t *testing.T) {
	random := rand.New(rand.NewPCG(1, 7))
	edits, back, apart := 0, 0, 0
	for path, text := range inOrder(everyKit(t)) {
		leaves, _ := leavesOf(text)
		for range 4 {
			l := leaves[random.IntN(len(leaves))]
			if l.path[len(l.path)-1] == "(empty)" || l.value == "" {
				continue
			}
			value := oddString(random)
			changed, err := amend.Set(text, l.path, value)
			if err != nil {
				t.Errorf("%s: %v = %q: %v", path, l.path, value, err)
				continue
			}
			edits++
			checkSet(t, path, text, changed, l, value)
			again, err := amend.Set(changed, l.path, l.value)
			if err != nil {
				t.Errorf("%s: %v = %q again: %v", path, l.path, l.value, err)
				continue
			}
			if isBlock(l) || spelledApart(text, l) {
				continue
			}
			if back++; bytes.Equal(again, text) {
				continue
			}
			apart++
			from, to := onlyStretch(text, again)
			if stretch := string(text[from:to]); strings.ReplaceAll(strings.Trim(stretch, `'"`), "''", "'") != l.value || l.style&(yaml.SingleQuotedStyle|yaml.DoubleQuotedStyle) == 0 {
				t.Errorf("%s: %v set to %q and back to %q: %q", path, l.path, value, l.value, stretch)
			}
		}
	}
	// Quotation marks that nobody needed, round a value set to one that needs them and
	// back, go: nothing in the text tells that they were there before.
	if apart*100 > back {
		t.Errorf("%d of %d fields do not have their old bytes again", apart, back)
	}
	if edits < 1500 || back < 1000 {
		t.Errorf("only %d edits, %d of them back", edits, back)
	}
	t.Log(edits, "edits,", back, "set back, of which in other marks", apart)
}

// spelledApart says whether a value is not written in the file as it reads, on one
// line: folded, or with escapes.
func spelledApart(text []byte, l leaf) bool {
	return !bytes.Contains(text, []byte(l.value)) && !strings.Contains(l.value, "'") || strings.Contains(l.value, "\n") ||
		l.style == yaml.DoubleQuotedStyle && strings.ContainsAny(l.value, "\\\"")
}

func checkSet(t *testing.T, name string, text, changed []byte, l leaf, value string) {
	t.Helper()
	before, _ := leavesOf(text)
	after, _ := leavesOf(changed)
	for i := range before {
		if before[i].key() == l.key() {
			before[i].value = value
			if i < len(after) {
				before[i].style = after[i].style
			}
		}
	}
	if told(before) != told(after) {
		t.Errorf("%s: %v = %q: reads\n%s", name, l.path, value, told(after))
	}
	from, to := onlyStretch(text, changed)
	stretch := string(text[from:to])
	if !isBlock(l) && strings.Count(stretch, "\n") > strings.Count(l.value, "\n")+strings.Count(l.value, " ") {
		t.Errorf("%s: %v = %q changed %q", name, l.path, value, stretch)
	}
}

// oddString makes a value that is hard to write.
func oddString(random *rand.Rand) string {
	var b strings.Builder
	for range 1 + random.IntN(4) {
		b.WriteString(oddPieces[random.IntN(len(oddPieces))])
	}
	return b.String()
}

var oddPieces = []string{
	"\"", "'", ":", ": ", " #", "#", "- ", "-", "--- ", "...", "😀", "שלום", "مرحبا", "\n", "\n\n", "\t", "yes", "No", "null", "~", "1e3", "0o7",
	"0x1F", "1_000", "2027-06-30", "12:30:45", ".inf", "<<", "{", "}", "[", "]", ", ", ",", "&a", "*a", "!x", "!!str", "|", ">", ">-", "%", "@", "`",
	"\\", "\\n", "? ", "=", " ", "  ", "\r\n", "\r", "\x00", "\x07", "\u0085", "\u009f", "\u2028", "\ufeff", "\u202e", "e\u0301", "½", "± 5 g", "20.5 g", "60 °C",
	"wax", "Jar with lid", "a: b", "a #b", "'quoted'", "\"quoted\"", "true", "on", "y",
}

// TestThousandOddStrings: a thousand odd values go into fields of every spelling and
// come back as they were.
func TestThousandOddStrings(t *testing.T) {
	text := []byte("name: Plain # a note\nabout: 'single'\nmaker: \"double\"\nemergency: |\n  lines\n  of text\n" +
		"components: {wax: {name: In braces, packed: 300 g, cautions: [one, 'two']}}\nedition: 1\n")
	paths := []amend.Path{amend.At("name"), amend.At("about"), amend.At("maker"), amend.At("emergency"), amend.At("components", "wax", "name"),
		amend.At("components", "wax", "packed"), amend.At("components", "wax", "cautions", "0"), amend.At("components", "wax", "cautions", "1"),
		amend.At("components", "wax", "note"), amend.At("components", "jar", "name"), amend.At("labels", "contact"), amend.At("components", "wax", "cautions", "2")}
	random := rand.New(rand.NewPCG(3, 9))
	values := append([]string{""}, oddPieces...)
	for len(values) < 1000 {
		values = append(values, oddString(random))
	}
	for i, value := range values {
		for _, path := range []amend.Path{paths[i%len(paths)], paths[(i+5)%len(paths)]} {
			changed, err := amend.Set(text, path, value)
			if err != nil {
				t.Errorf("%v = %q: %v", path, value, err)
				continue
			}
			if got := valueAt(changed, path); got != value && strings.TrimSuffix(got, "\n") != strings.TrimSuffix(value, "\n") || got != value && path[0] != "emergency" {
				t.Errorf("%v = %q came back as %q in\n%s", path, value, got, changed)
			}
			for _, other := range paths[:8] {
				if other.String() != path.String() && valueAt(changed, other) != valueAt(text, other) {
					t.Errorf("%v = %q changed %v", path, value, other)
				}
			}
		}
	}
}

func valueAt(text []byte, path amend.Path) string {
	leaves, _ := leavesOf(text)
	for _, l := range leaves {
		if slices.Equal(l.path, path) {
			return l.value
		}
	}
	return "(not there)"
}

// FuzzSet: whatever the file and the value, setting ends, and what is handed out
// reads as it should.
func FuzzSet(f *testing.F) {
	for path, text := range everyKit(f) {
		if strings.Contains(path, "examples") || strings.Contains(path, "practice") {
			f.Add(text, "components", "wax", "packed", "300 g")
			f.Add(text, "name", "", "", "a: b")
		}
	}
	f.Add([]byte("components:\n  wax: # a note\n"), "components", "wax", "name", "Wax")
	f.Add([]byte("# nothing yet\n"), "name", "", "", "~")
	f.Add([]byte("components: {wax: {cautions: Hot.}}"), "components", "wax", "cautions", "[x")
	for _, text := range gnarled {
		f.Add([]byte(text), "components", "wax", "note", "- a\n b")
		f.Add([]byte(text), "runs", "1", "name", "a, b")
	}
	f.Fuzz(func(t *testing.T, text []byte, one, two, three, value string) {
		path := slices.DeleteFunc(amend.At(one, two, three), func(key string) bool { return key == "" })
		changed, err := amend.Set(text, path, value)
		if err != nil {
			return
		}
		if _, ok := leavesOf(changed); !ok {
			return // the YAML library alone knows nothing of what was refused and what is a key twice
		}
		got := valueAt(changed, path)
		if got != value && strings.TrimRight(got, "\n") != strings.TrimRight(value, "\n") {
			t.Errorf("%v = %q came back as %q in\n%q", path, value, got, changed)
		}
	})
}

// gnarled are files written as nobody should, and somebody will.
var gnarled = []string{
	"--- # the start\n# a note\nname:   Gels   # wide\n\"makes\": 6\n'about':\n  on a line\n  of its own\n\n\ncomponents:\n# at the margin\n      wax:   {name: Wax,packed:  300 g  ,  # in\n         # between\n   density: 0.9 g/mL\n   ,}\n" +
		"\n      jar:\n          # deep\n          packed: 6   # six\n\n          # deeper\n          container:\n\n            brimful: 280 mL\n      # after the jar\n\n# after all\nedition: 1\n...\n",
	"name: a plain text\n  over three\n  lines\nmaker: \"in marks\n  over two\"\nabout: >-\n  folded\n  text\n\n  of two\n\nemergency: |+\n  kept\n\n\nruns:\n-   name: Pine\n    with: {scent: pine,\n      tint: green}\n-\n  name: Orange # o\n" +
		"  parts:\n  - one\n  - 'two'\n  - \"three\"\n- {name: Both}\nclaims: [{says: \"a, b\", shown by: time},\n  {says: c}]\n",
	"{name: Gels, makes: 6, components: {wax: {packed: 300 g, cautions: [Hot., \"Keep, away\"]}, jar: {packed: 6}}, edition: 1}\n",
	"name: é😀 – “q” # ü\ncomponents:\n  wax: {name: Wäx – 1, note: 'it''s', looks: \"a\\u00e9\\tb\"}\n  jar: {name: שלום, also called: [مرحبا, x]}\n",
	"components:\n  wax:\n    cautions:\n      - |\n        Hot wax.\n\n        Burns.\n      - >\n        Keep\n        away.\n    note: |2-\n        set in\n      more\n  jar:\n    packed: 6\n",
}
