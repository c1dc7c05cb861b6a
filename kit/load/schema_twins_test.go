package load

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"gopkg.in/yaml.v3"
)

// A twin is a good kit with one mistake of form in it.
type twin struct{ why, text string }

// wrongForms are values that fit no key of a form. Nothing at all fits none.
func wrongForms(form Form) []string {
	switch form {
	case Group, NamedGroups, Bindings, Languages:
		return []string{"[[[z]]]", "zz", "7", "~"}
	case GroupList:
		return []string{"[[[z]]]", "[zz]", "{Zz: {zz: 1}}", "zz", "7", "~"}
	case Date:
		return []string{"[[[z]]]", "{Zz: {zz: 1}}", "7", "June 2027", "2027-6-30", "2027-02-30", "~"}
	case Address:
		return []string{"[[[z]]]", "{Zz: {zz: 1}}", "7", "example.com/kit", "ftp://example.com", "https://", "https://exam ple.com", "https://me@example.com/", "https://example.com/käse",
			"javascript:alert(1)", "https://example.com/" + strings.Repeat("a", 90), "~"}
	case WholeNumber:
		return []string{"[[[z]]]", "{Zz: {zz: 1}}", "0", "1.5", "-1", "1000000", "many", "yes", "~"}
	case YesNo, OneOf:
		return []string{"[[[z]]]", "{Zz: {zz: 1}}", "7", "perhaps", "yesno", "~"}
	case Inside:
		return []string{"[[[z]]]", "{Zz: {Zz: {zz: 1}}}", "{10 mm: 1 mL}", "7", "a jar", "true", "[]", "~"}
	case Amount, AmountList:
		return []string{"[[[z]]]", "{Zz: {zz: 1}}", "true", "-1", "~"}
	}
	return []string{"[[[z]]]", "{Zz: {zz: 1}}", `"12"`, "~"} // words
}

// twins gives the kit with one mistake each: every key of it with each wrong form,
// an unknown key in every place with keys, and every needed key missing.
func twins(t *testing.T, text string) []twin {
	t.Helper()
	sections := map[string]Section{}
	for _, s := range Keys() {
		sections[s.Name] = s
	}
	var all []twin
	var root yaml.Node
	if err := yaml.Unmarshal([]byte(text), &root); err != nil {
		t.Fatal(err)
	}
	write := func(why string) {
		var out bytes.Buffer
		if err := yaml.NewEncoder(&out).Encode(&root); err != nil {
			t.Fatal(err)
		}
		all = append(all, twin{why, out.String()})
	}
	var visit func(s Section, keys *yaml.Node)
	visit = func(s Section, keys *yaml.Node) {
		whole := keys.Content
		keys.Content = append(whole[:len(whole):len(whole)], node(t, "colur"), node(t, "red"))
		write(s.Name + " with an unknown key")
		for i := 0; i < len(whole); i += 2 {
			key := keyNamed(t, s, whole[i].Value)
			good := whole[i+1]
			keys.Content = whole
			for _, wrong := range wrongForms(key.Form) {
				whole[i+1] = node(t, wrong)
				write(s.Name + "/" + key.Name + ": " + wrong)
			}
			whole[i+1] = good
			if key.Required {
				keys.Content = append(append([]*yaml.Node{}, whole[:i]...), whole[i+2:]...)
				write(s.Name + " without " + key.Name)
			}
			keys.Content = whole
			for _, inner := range innerKeys(key, good) {
				visit(sections[key.Section], inner)
			}
		}
	}
	visit(sections["kit"], root.Content[0])
	return all
}

func node(t *testing.T, text string) *yaml.Node {
	t.Helper()
	var n yaml.Node
	if err := yaml.Unmarshal([]byte(text), &n); err != nil {
		t.Fatal(err)
	}
	return n.Content[0]
}

func keyNamed(t *testing.T, s Section, name string) Key {
	t.Helper()
	for _, key := range s.Keys {
		if key.Name == name {
			return key
		}
	}
	t.Fatalf("%s has no key %s", s.Name, name)
	return Key{}
}

// innerKeys gives the places with keys inside a value.
func innerKeys(key Key, v *yaml.Node) []*yaml.Node {
	var inner []*yaml.Node
	switch key.Form {
	case Group:
		return []*yaml.Node{v}
	case GroupList:
		return v.Content
	case NamedGroups:
		for i := 1; i < len(v.Content); i += 2 {
			if v.Content[i].Kind == yaml.MappingNode {
				inner = append(inner, v.Content[i])
			}
		}
	}
	return inner
}

// TestSchemaRefusesBrokenTwins: every broken twin of every example, and of the kit
// with every key, is refused by the schema; and the reader, who has the last word,
// has a finding for each of them too.
func TestSchemaRefusesBrokenTwins(t *testing.T) {
	files, err := filepath.Glob("../../examples/*/kit.yaml")
	if err != nil || len(files) < 3 {
		t.Fatal(files, err)
	}
	compiled, told := compiledSchema(t), 0
	for _, name := range append(files, "testdata/every-key.yaml") {
		text, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		for _, twin := range twins(t, string(text)) {
			told++
			if ok, err := valid(t, compiled, twin.text); !ok || err == nil {
				t.Errorf("%s: the schema takes %s", name, twin.why)
			}
			if findings(twin.text) == 0 {
				t.Errorf("%s: the reader takes %s", name, twin.why)
			}
		}
	}
	if told < 1000 {
		t.Errorf("only %d twins", told)
	}
	t.Log(told, "twins")
}
