package load

import (
	"bytes"
	"encoding/json"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"

	"tallyfold/kit/source"
)

// The outside check here is the published meta-schema of JSON Schema draft 2020-12
// and a validator of that draft, which is not ours.

func compiledSchema(t testing.TB) *jsonschema.Schema {
	t.Helper()
	text, err := Schema()
	if err != nil {
		t.Fatal(err)
	}
	document, err := jsonschema.UnmarshalJSON(bytes.NewReader(text))
	if err != nil {
		t.Fatal(err)
	}
	compiler := jsonschema.NewCompiler()
	compiler.AssertFormat()
	meta, err := compiler.Compile("https://json-schema.org/draft/2020-12/schema")
	if err != nil {
		t.Fatal(err)
	}
	if err := meta.Validate(document); err != nil {
		t.Fatalf("the schema is none: %v", err)
	}
	if err := compiler.AddResource("kit.json", document); err != nil {
		t.Fatal(err)
	}
	compiled, err := compiler.Compile("kit.json")
	if err != nil {
		t.Fatal(err)
	}
	return compiled
}

// valid holds a kit.yaml, as an editor reads it, against the schema. ok is false
// for a text that the YAML reader does not read, of which a schema says nothing.
func valid(t testing.TB, compiled *jsonschema.Schema, text string) (ok bool, err error) {
	t.Helper()
	root, more, _, ok := parse([]byte(strings.TrimPrefix(text, "\ufeff")))
	if !ok || more != nil || root == nil {
		return false, nil
	}
	plain, err := json.Marshal(plainValue(root.Content[0]))
	if err != nil {
		t.Fatal(err)
	}
	instance, err := jsonschema.UnmarshalJSON(bytes.NewReader(plain))
	if err != nil {
		t.Fatal(err)
	}
	return true, compiled.Validate(instance)
}

func findings(text string) int {
	_, found := Kit(source.NewFile("kit.yaml", []byte(text)))
	return len(found)
}

func TestSchemaIsASchema(t *testing.T) { compiledSchema(t) }

// TestSchemaTellsEveryKey: a title, what is expected and an example that fits.
func TestSchemaTellsEveryKey(t *testing.T) {
	compiled := compiledSchema(t)
	definitions := compiled.Properties
	eachKey(t, func(t *testing.T, section string, key Key) {
		of := definitions[key.Name]
		if section != "kit" {
			of = sectionIn(t, section)[key.Name]
		}
		if of == nil {
			t.Fatal("not in the schema")
		}
		if of.Title != key.Name || of.Description != key.Expected || len(of.Examples) != 1 {
			t.Errorf("title %q, description %q, %d examples", of.Title, of.Description, len(of.Examples))
		}
		if err := of.Validate(of.Examples[0]); err != nil {
			t.Errorf("the example does not fit: %v", err)
		}
	})
}

// sectionIn gives the keys of one section of the schema.
func sectionIn(t *testing.T, name string) map[string]*jsonschema.Schema {
	t.Helper()
	text, err := Schema()
	if err != nil {
		t.Fatal(err)
	}
	document, err := jsonschema.UnmarshalJSON(bytes.NewReader(text))
	if err != nil {
		t.Fatal(err)
	}
	compiler := jsonschema.NewCompiler()
	if err := compiler.AddResource("kit.json", document); err != nil {
		t.Fatal(err)
	}
	return compiler.MustCompile("kit.json#/$defs/" + name).Properties
}

// kitsOfTheTree are all texts of the repository that are meant as a kit.yaml.
func kitsOfTheTree(t testing.TB) map[string]string {
	t.Helper()
	kits := map[string]string{}
	err := filepath.WalkDir("../..", func(name string, entry fs.DirEntry, err error) error {
		if err != nil || entry.IsDir() || filepath.Ext(name) != ".yaml" {
			return err
		}
		text, err := os.ReadFile(name)
		kits[filepath.ToSlash(name)] = string(text)
		return err
	})
	if err != nil || len(kits) < 60 {
		t.Fatalf("%d kits, %v", len(kits), err)
	}
	return kits
}

// TestSchemaTakesEveryGoodKit: what is read without a finding is valid. The
// examples, and the kits on which every rule stays silent, are read without one.
func TestSchemaTakesEveryGoodKit(t *testing.T) {
	compiled, good := compiledSchema(t), 0
	for name, text := range kitsOfTheTree(t) {
		n := findings(text)
		if n > 0 {
			if strings.Contains(name, "/examples/") || strings.HasSuffix(name, "/clean/kit.yaml") {
				t.Errorf("%s: %d findings", name, n)
			}
			continue
		}
		good++
		if ok, err := valid(t, compiled, text); err != nil || !ok {
			t.Errorf("%s: %v", name, err)
		}
	}
	if good < 50 {
		t.Errorf("only %d good kits", good)
	}
}

// goodLines are good ways to write a value that are not the plainest.
var goodLines = []struct{ why, section, key, value string }{
	{"a quoted number", "kit", "edition", `"3"`},
	{"a quoted count", "component", "packed", `"6"`},
	{"a single-quoted count", "piece", "count", `'6'`},
	{"a half", "component", "packed", "2.5"},
	{"no spare", "component", "spare", "0 g"},
	{"an age without a plus", "audience", "age", "14"},
	{"a quoted age", "audience", "age", `"14+"`},
	{"yes in capitals", "component", "optional", "YES"},
	{"true", "tool", "essential", "true"},
	{"True", "tool", "essential", "True"},
	{"a quoted no", "container", "used again", `"no"`},
	{"yes with blanks around", "insert", "floats", `" yes "`},
	{"a choice in capitals", "audience", "skill", "Beginner"},
	{"a choice over two lines", "audience", "skill", "some\n   practice"},
	{"a long s, which is an s in another dress", "insert", "sits", "ſunk"},
	{"a sentence that is a word of YAML", "component", "note", "true"},
	{"a name that is a number to YAML", "component", "name", "1e3"},
	{"another", "component", "name", "0xCAFE"},
	{"a name that is infinite to YAML", "component", "name", ".inf"},
	{"a sentence with a date in it", "claim", "says", `"Best before 2027-06-30"`},
	{"a folded text", "component", "note", ">-\n     two\n     lines"},
	{"a literal text", "component", "note", "|\n     two\n     lines"},
	{"a text of many words in quotation marks", "component", "note", `"a \"big\" bag: the larger\ttwo"`},
	{"one caution", "component", "cautions", "Hot"},
	{"several", "component", "cautions", "[Hot, Heavy]"},
	{"no caution", "component", "cautions", "[]"},
	{"one share", "component", "share", "at most 2 % of mixture"},
	{"several shares", "component", "share", "[at least 1 % of mixture, at most 2 % of mixture]"},
	{"levels as a list of keys", "container", "inside", "[{0 mm: 0 mL}, {10 mm: 30 mL}]"},
	{"levels as a list of texts", "container", "inside", `["0 mm: 0 mL", "10 mm: 30 mL"]`},
	{"levels as keys", "container", "inside", "{0 mm: 0 mL, 10 mm: 30 mL}"},
	{"levels in one entry of a list", "container", "inside", "[{0 mm: 0 mL, 10 mm: 30 mL}]"},
	{"levels one a line", "container", "inside", "\n        - 0 mm: 0 mL\n        - 10 mm: 30 mL"},
	{"a shape in capitals", "container", "inside", "Sphere 50 mm wide"},
	{"a number word", "kit", "makes", "six jars"},
	{"a fraction", "component", "packed", "1 1/2 cups"},
	{"a range", "component", "packed", "30–40 g"},
	{"packs inside the pack", "component", "packed", "2 skeins of 8 m"},
	{"two densities of a mixture", "mixture", "density", "[0.87 g/mL liquid, 0.93 g/mL set]"},
	{"points of solubility", "component", "dissolves", "[5 g per 100 g of water at 20 °C, 9 g per 100 g of water at 60 °C]"},
	{"a measure told short", "kit", "measures", "{scoop: 15 mL, drop: {holds: 0.05 mL}}"},
	{"no measure", "kit", "measures", "{}"},
	{"no run", "kit", "runs", "[]"},
	{"no role", "run", "with", "{}"},
	{"no container keys", "component", "container", "{}"},
	{"a language with a region", "kit", "language", "de-AT"},
	{"Norwegian", "kit", "language", "nb"},
	{"an address in capitals with a port", "kit", "page", "HTTP://EXAMPLE.COM:8080/Kit#x"},
	{"an address without a path", "kit", "page", "https://www.example.com"},
	{"a quoted date", "accept", "until", `"2027-06-30"`},
}

func TestSchemaTakesOddGoodWays(t *testing.T) {
	compiled := compiledSchema(t)
	for _, c := range goodLines {
		text := fileWith(t, c.section, c.key, c.value)
		if n := findings(text); n > 0 {
			t.Errorf("%s: not good to the reader:\n%s", c.why, text)
		}
		if ok, err := valid(t, compiled, text); err != nil || !ok {
			t.Errorf("%s: %v\n%s", c.why, err, text)
		}
	}
	for why, text := range map[string]string{
		"all in brackets":        `{name: Gels, makes: 6 jars, components: {jar: {packed: 6}}}`,
		"all in JSON":            `{"name": "Gels", "makes": "6 jars", "components": {"jar": {"packed": 6, "optional": true}}}`,
		"a byte order mark":      "\ufeffname: Gels\nmakes: 6 jars\ncomponents: {jar: {packed: 6}}\n",
		"line ends of Windows":   "name: Gels\r\nmakes: 6 jars\r\ncomponents:\r\n  jar: {packed: 6}\r\n",
		"a decimal comma":        "language: de\nname: Gele\nmakes: 6 Gläser\ncomponents:\n  wachs: {packed: \"1,5 kg\"}\n",
		"document marks":         "---\nname: Gels\nmakes: 6 jars\ncomponents: {jar: {packed: 6}}\n...\n",
		"a remark for an editor": "# yaml-language-server: $schema=kit.schema.json\nname: Gels\nmakes: 6\ncomponents: {jar: {packed: 6}}\n",
	} {
		if n := findings(text); n > 0 {
			t.Errorf("%s: not good to the reader", why)
		}
		if ok, err := valid(t, compiled, text); err != nil || !ok {
			t.Errorf("%s: %v", why, err)
		}
	}
}

// FuzzSchema: nothing that is read without a finding is held against the maker.
func FuzzSchema(f *testing.F) {
	for _, text := range kitsOfTheTree(f) {
		f.Add(text)
	}
	compiled := compiledSchema(f)
	f.Fuzz(func(t *testing.T, text string) {
		if findings(text) > 0 {
			return
		}
		if ok, err := valid(t, compiled, text); ok && err != nil {
			t.Errorf("%v\n%s", err, text)
		}
	})
}
