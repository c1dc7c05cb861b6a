package load

import (
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
	"gopkg.in/yaml.v3"

	"tallyfold/kit/source"
)

// longest is how long any file may take to read: a file of MaxBytes that is
// broken in the slowest way takes about a second on a slow machine.
const longest = 5 * time.Second

// FuzzKit: whatever the bytes, reading ends in time without panic, every place
// lies in the file, the same bytes give the same findings, and a refused file
// gives no kit.
func FuzzKit(f *testing.F) {
	seeds := 0
	for _, pattern := range []string{"testdata/*.yaml", "testdata/broken/*.yaml"} {
		files, err := filepath.Glob(pattern)
		if err != nil {
			f.Fatal(err)
		}
		for _, path := range files {
			text, err := os.ReadFile(path)
			if err != nil {
				f.Fatal(err)
			}
			f.Add(text)
			seeds++
		}
	}
	for _, c := range places {
		f.Add([]byte(c.file))
	}
	for _, c := range hostile {
		f.Add([]byte(c.file(2 << 10)))
	}
	if seeds == 0 {
		f.Fatal("no seeds")
	}
	f.Fuzz(func(t *testing.T, text []byte) {
		file := source.NewFile("kit.yaml", text)
		began := time.Now()
		k, found := Kit(file)
		if took := time.Since(began); took > longest {
			t.Errorf("took %v", took)
		}
		for _, one := range found {
			if one.Found == "" || one.Expected == "" || len(one.Remedies) == 0 || !one.Where.Known() {
				t.Errorf("not a whole finding: %+v", one)
			}
			if k != nil && one.Rule == RefusedFile {
				t.Error("a kit from a refused file")
			}
		}
		if k == nil && len(found) == 0 {
			t.Error("refused without a word")
		}
		insideFile(t, file, reflect.ValueOf(found))
		insideFile(t, file, reflect.ValueOf(k))
		if _, again := Kit(source.NewFile("kit.yaml", text)); tell(again) != tell(found) {
			t.Error(cmp.Diff(tell(found), tell(again)))
		}
		plainTexts(t, file)
	})
}

// insideFile checks every place anywhere in a value.
func insideFile(t *testing.T, file *source.File, v reflect.Value) {
	if span, ok := reflect.TypeAssert[source.Span](v); ok {
		if span.Known() && (span.File != file || span.Start < 0 || span.Start > span.End || span.End > len(file.Text)) {
			t.Errorf("place %d–%d outside the file", span.Start, span.End)
		}
		return
	}
	switch v.Kind() {
	case reflect.Pointer:
		if v.IsNil() || v.Type() == reflect.TypeFor[*source.File]() {
			return
		}
		insideFile(t, file, v.Elem())
	case reflect.Struct:
		for i := range v.NumField() {
			if v.Type().Field(i).IsExported() {
				insideFile(t, file, v.Field(i))
			}
		}
	case reflect.Slice:
		for i := range v.Len() {
			insideFile(t, file, v.Index(i))
		}
	}
}

// plainTexts checks that a text without quotation marks on one line is exactly
// what stands at its place.
func plainTexts(t *testing.T, file *source.File) {
	doc, _ := open(file)
	if doc == nil || doc.root == nil {
		return
	}
	var walk func(n *yaml.Node)
	walk = func(n *yaml.Node) {
		v := doc.value(n)
		if v.isText() && !v.quoted() && !strings.ContainsAny(v.span.Text(), "\r\n") && v.span.Text() != n.Value {
			t.Errorf("%q at %q", n.Value, v.span.Text())
		}
		for _, inner := range n.Content {
			walk(inner)
		}
	}
	walk(doc.root)
}
