package kit_test

import (
	"go/parser"
	"go/token"
	"io/fs"
	"path"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
)

// The package table of DEVELOPERS.md, lowest first: a package imports only those
// above it here. Tests of a package may use any, and are not looked at.
var packageTable = []string{
	"kit/quantity",
	"kit/source",
	"kit/diag",
	"kit/colour",
	"kit/picture",
	"kit",
	"kit/handbook",
	"kit/ledger",
	"kit/hazard",
	"kit/schedule",
	"kit/label",
	"kit/market",
	"kit/readability",
	"kit/rules",
	"kit/load",
	"instructions",
	"instructions/adopt",
	"instructions/keep",
	"kit/proof",
	"kit/amend",
	"templates",
	"instructions/xliff",
	"render/figure",
	"render",
	"render/labels",
	"render/print",
	"render/press",
	"examples",
	"cmd/workbench",
	"cmd/tallyfold",
}

// Each library has one door: the packages that may import it.
var doors = map[string][]string{
	"gopkg.in/yaml.v3":              {"kit/load"},
	"github.com/yuin/goldmark":      {"instructions", "render"},
	"github.com/go-rod/rod":         {"render/print"},
	"github.com/spf13/cobra":        {"cmd/tallyfold"},
	"net/http":                      {"cmd/workbench"},
	"github.com/andybalholm/brotli": {"templates"},
	"golang.org/x/image/font/sfnt":  {"templates"},
	"github.com/pdfcpu/pdfcpu":      {"render/print"},
	"github.com/ysmood/leakless":    {},
	// Locks of files on Windows; elsewhere the standard library has them.
	"golang.org/x/sys": {"instructions/keep"},
	"rsc.io/qr":        {"render/figure"},
	// Tests alone read codes back.
	"github.com/makiuchi-d/gozxing": {},
	// Tests alone hold output against published schemas.
	"github.com/santhosh-tekuri/jsonschema": {},
}

func TestPackagesImportOnlyThoseAboveThem(t *testing.T) {
	seen := map[string]bool{}
	for file, imports := range importsOf(t, "..") {
		pkg := path.Dir(file)
		place := slices.Index(packageTable, pkg)
		if place < 0 {
			t.Errorf("%s: package %s is not in the table", file, pkg)
			continue
		}
		seen[pkg] = true
		for _, imported := range imports {
			own, isOwn := strings.CutPrefix(imported, "tallyfold/")
			if isOwn && slices.Index(packageTable, own) >= place {
				t.Errorf("%s imports %s, which stands below %s in the table", file, own, pkg)
			}
			for library, allowed := range doors {
				if (imported == library || strings.HasPrefix(imported, library+"/")) && !slices.Contains(allowed, pkg) {
					t.Errorf("%s imports %s, whose only door is %v", file, imported, allowed)
				}
			}
		}
	}
	for _, pkg := range packageTable {
		if !seen[pkg] {
			t.Errorf("the table names %s, which has no Go file", pkg)
		}
	}
}

// importsOf reads the imports of every Go file under root that is no test.
func importsOf(t *testing.T, root string) map[string][]string {
	imports := map[string][]string{}
	err := filepath.WalkDir(root, func(name string, entry fs.DirEntry, err error) error {
		if err == nil && entry.IsDir() && strings.HasPrefix(entry.Name(), ".") && len(entry.Name()) > 2 {
			return filepath.SkipDir // .git, .ci
		}
		if err != nil || entry.IsDir() || !strings.HasSuffix(name, ".go") || strings.HasSuffix(name, "_test.go") {
			return err
		}
		parsed, err := parser.ParseFile(token.NewFileSet(), name, nil, parser.ImportsOnly)
		if err != nil {
			return err
		}
		relative, err := filepath.Rel(root, name)
		if err != nil {
			return err
		}
		key := filepath.ToSlash(relative)
		imports[key] = nil
		for _, spec := range parsed.Imports {
			imported, err := strconv.Unquote(spec.Path.Value)
			if err != nil {
				return err
			}
			imports[key] = append(imports[key], imported)
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	return imports
}
