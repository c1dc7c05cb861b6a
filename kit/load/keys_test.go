package load

import (
	"fmt"
	"os"
	"strings"
	"testing"

	"tallyfold/kit/diag"
	"tallyfold/kit/source"
)

// around is the least that a kit needs besides one entry of each section, and
// where the lines of that entry go (%s), set in by so many spaces.
var around = map[string]struct {
	indent   int
	required []string // keys the section itself needs, with values
	file     string
}{
	"kit":         {0, []string{"name: Gels", "makes: 6 jars", "components: {jar: {packed: 6, container: {}}, rosemary: {packed: 12 mL}}", "tools: {pan: {from: customer}, blender: {from: customer}}"}, "%s"},
	"audience":    {2, nil, "name: Gels\nmakes: 6 jars\ncomponents: {jar: {packed: 6}}\naudience:\n%s"},
	"time":        {2, nil, "name: Gels\nmakes: 6 jars\ncomponents: {jar: {packed: 6}}\ntime:\n%s"},
	"look":        {2, nil, "name: Gels\nmakes: 6 jars\ncomponents: {jar: {packed: 6}}\nlook:\n%s"},
	"measure":     {4, []string{"holds: 15 mL"}, "name: Gels\nmakes: 6 jars\ncomponents: {jar: {packed: 6}}\nmeasures:\n  scoop:\n%s"},
	"component":   {4, []string{"packed: 720 g"}, "name: Gels\nmakes: 6 jars\nhousehold: {water: {name: Tap water}, cotton: {name: Cotton}}\ncomponents:\n  jar: {packed: 6, container: {}}\n  powder:\n%s"},
	"container":   {6, nil, "name: Gels\nmakes: 6 jars\ncomponents:\n  jar:\n    packed: 6\n    container:\n%s"},
	"insert":      {6, nil, "name: Gels\nmakes: 6 jars\ncomponents:\n  pebbles:\n    packed: 6\n    insert:\n%s"},
	"household":   {4, nil, "name: Gels\nmakes: 6 jars\ncomponents: {jar: {packed: 6}, cotton: {packed: 20 g}}\nhousehold:\n  water:\n%s"},
	"tool":        {4, []string{"from: customer"}, "name: Gels\nmakes: 6 jars\ncomponents: {jar: {packed: 6}}\nhousehold: {water: {name: Tap water}}\ntools:\n  blender: {from: customer}\n  pan:\n%s"},
	"mixture":     {4, []string{"made in: pan"}, "name: Gels\nmakes: 6 jars\ncomponents: {jar: {packed: 6}}\ntools: {pan: {from: customer}}\nmixtures:\n  gel:\n%s"},
	"piece":       {4, []string{"count: 6"}, "name: Gels\nmakes: 6 jars\ncomponents: {jar: {packed: 6, container: {}}}\ntools: {pan: {from: customer}}\nmixtures: {gel: {made in: pan}}\npieces:\n  jar-gel:\n%s"},
	"run":         {4, []string{"name: Rosemary"}, "name: Gels\nmakes: 6 jars\ncomponents: {rosemary: {packed: 6}, green: {packed: 6}}\nruns:\n  -\n%s"},
	"claim":       {4, []string{"says: Six jars"}, "name: Gels\nmakes: 6 jars\ncomponents: {jar: {packed: 6}}\nclaims:\n  -\n%s"},
	"hazard":      {4, []string{"happens: It grabs.", "avoid: Hold it.", "signal: caution"}, "name: Gels\nmakes: 6 jars\ncomponents: {jar: {packed: 6}}\nhazards:\n  grab:\n%s"},
	"accept":      {4, []string{"rule: left-over", "because: to test"}, "name: Gels\nmakes: 6 jars\ncomponents: {jar: {packed: 6}}\naccept:\n  -\n%s"},
	"labels":      {2, []string{"sheet: {across: 2, down: 8, wide: 90 mm, tall: 34 mm}"}, "name: Gels\nmakes: 6 jars\ncomponents: {jar: {packed: 6}}\nlabels:\n%s"},
	"label sheet": {4, []string{"across: 2", "down: 8", "wide: 90 mm", "tall: 34 mm"}, "name: Gels\nmakes: 6 jars\ncomponents: {jar: {packed: 6}}\nlabels:\n  sheet:\n%s"},
	"review":      {6, []string{"day: 2026-02-10", "by: Dr Reed"}, "name: Gels\nmakes: 6 jars\ncomponents:\n  jar:\n    packed: 6\n    review:\n%s"},
}

// fileWith is a kit.yaml in which one key of one section has this value.
func fileWith(t *testing.T, section, key, value string) string {
	t.Helper()
	a, ok := around[section]
	if !ok {
		t.Fatalf("no file around section %q", section)
	}
	var lines []string
	for _, line := range a.required {
		if !strings.HasPrefix(line, key+":") {
			lines = append(lines, line)
		}
	}
	lines = append(lines, key+": "+value)
	indent := strings.Repeat(" ", a.indent)
	return fmt.Sprintf(a.file, indent+strings.Join(lines, "\n"+indent)+"\n")
}

// eachKey runs a test for every key of every section.
func eachKey(t *testing.T, test func(t *testing.T, section string, key Key)) {
	for _, s := range Keys() {
		for _, key := range s.Keys {
			t.Run(s.Name+"/"+strings.ReplaceAll(key.Name, " ", "-"), func(t *testing.T) { test(t, s.Name, key) })
		}
	}
}

// TestExamples: the example of every key is read without a finding.
func TestExamples(t *testing.T) {
	eachKey(t, func(t *testing.T, section string, key Key) {
		text := fileWith(t, section, key.Name, key.Example)
		if k, found := Kit(source.NewFile("kit.yaml", []byte(text))); k == nil || len(found) > 0 {
			t.Errorf("%s\n%s", text, tell(found))
		}
	})
}

// TestWrongValues: a value that fits no key is found at its place whatever the key,
// and so is a key with nothing after it.
func TestWrongValues(t *testing.T) {
	eachKey(t, func(t *testing.T, section string, key Key) {
		for value, rule := range map[string]string{"[[[z]]]": "", "{Zz: {Zz: {zz: {zz: 1}}}}": "", "1:30": "", "": MissingField} {
			text := fileWith(t, section, key.Name, value)
			k, found := Kit(source.NewFile("kit.yaml", []byte(text)))
			if k == nil {
				t.Fatal("refused whole\n" + tell(found))
			}
			line := strings.Count(text[:strings.LastIndex(text, key.Name+": "+value)], "\n") + 1
			if !foundOn(found, line, rule) {
				t.Errorf("nothing found on line %d of\n%s\n%s", line, text, tell(found))
			}
		}
	})
}

func foundOn(found diag.List, line int, rule string) bool {
	for _, f := range found {
		if f.Where.Position().Line == line && (rule == "" || f.Rule == rule) {
			return true
		}
	}
	return false
}

// TestEveryKeyFile: the file with every key is read without a finding, and no key
// that a section has is missing from it.
func TestEveryKeyFile(t *testing.T) {
	text, err := os.ReadFile("testdata/every-key.yaml")
	if err != nil {
		t.Fatal(err)
	}
	file := source.NewFile("kit.yaml", text)
	if _, found := Kit(file); len(found) > 0 {
		t.Error(tell(found))
	}
	doc, _ := open(file)
	sections, seen := map[string]Section{}, map[string]bool{}
	for _, s := range Keys() {
		sections[s.Name] = s
	}
	var visit func(s Section, v value)
	visit = func(s Section, v value) {
		r := &reader{doc: doc}
		given := r.entries(v)
		for _, key := range s.Keys {
			e, ok := given.take(key.Name)
			if !ok {
				continue
			}
			seen[s.Name+"/"+key.Name] = true
			for _, inner := range insideOf(r, key, e.value) {
				visit(sections[key.Section], inner)
			}
		}
	}
	visit(sections["kit"], doc.value(doc.root))
	eachKey(t, func(t *testing.T, section string, key Key) {
		if !seen[section+"/"+key.Name] {
			t.Error("not in testdata/every-key.yaml")
		}
	})
}

// insideOf gives the entries that hold the keys of another section.
func insideOf(r *reader, key Key, v value) (inner []value) {
	switch key.Form {
	case Group:
		return []value{v}
	case GroupList:
		return v.items()
	case NamedGroups:
		for _, e := range r.entries(v).all {
			if e.value.isKeys() {
				inner = append(inner, e.value)
			}
		}
	}
	return inner
}

// TestKeysAreWhole: what schemas and documentation are made from has no gaps.
func TestKeysAreWhole(t *testing.T) {
	sections := map[string]bool{}
	for _, s := range Keys() {
		if s.Name == "" || s.About == "" || len(s.Keys) == 0 || sections[s.Name] {
			t.Errorf("section %q has a gap or comes twice", s.Name)
		}
		sections[s.Name] = true
	}
	eachKey(t, func(t *testing.T, _ string, key Key) {
		if key.Expected == "" || key.Example == "" || key.Form == "" {
			t.Errorf("a gap: %+v", key)
		}
		switch key.Form {
		case Group, GroupList, NamedGroups:
			if !sections[key.Section] {
				t.Errorf("no section %q", key.Section)
			}
		case OneOf:
			if len(key.Choices) < 2 {
				t.Error("no choice")
			}
		}
		if isSwitch(key.Name) || key.Name != strings.ToLower(key.Name) {
			t.Error("a key that YAML may read as yes or no, or with capitals")
		}
	})
}
