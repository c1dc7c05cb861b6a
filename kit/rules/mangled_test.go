package rules_test

import (
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"testing/fstest"

	"tallyfold/instructions"
	"tallyfold/kit/ledger"
	"tallyfold/kit/rules"
	"tallyfold/kit/schedule"
)

// A maker's draft lacks a line here and there. Whatever is missing, no rule falls
// over it, and every finding is whole.
func TestKitsWithALineMissing(t *testing.T) {
	folders, err := filepath.Glob(filepath.Join("..", "..", "examples", "*", "kit.yaml"))
	if err != nil || len(folders) == 0 {
		t.Fatalf("no examples found: %v", err)
	}
	for _, file := range folders {
		files := inMemory(t, filepath.Dir(file))
		for _, name := range []string{"kit.yaml", "method.md"} {
			whole := files[name]
			lines := strings.SplitAfter(string(whole.Data), "\n")
			for i := range lines {
				files[name] = &fstest.MapFile{Data: []byte(strings.Join(lines[:i], "") + strings.Join(lines[i+1:], ""))}
				checkWhole(t, files)
			}
			files[name] = whole
		}
	}
}

func checkWhole(t *testing.T, files fstest.MapFS) {
	t.Helper()
	k, _ := instructions.Open(files, "draft")
	if k == nil {
		return
	}
	list := rules.Check(rules.Subject{Kit: k, Ledger: ledger.Follow(k), Plan: schedule.Of(k)})
	for _, finding := range list {
		checkFinding(t, finding)
	}
}

// inMemory reads the text files of a kit folder.
func inMemory(t *testing.T, folder string) fstest.MapFS {
	t.Helper()
	files := fstest.MapFS{}
	err := fs.WalkDir(os.DirFS(folder), ".", func(name string, entry fs.DirEntry, err error) error {
		if err != nil || entry.IsDir() {
			return err
		}
		data, err := os.ReadFile(filepath.Join(folder, name))
		files[name] = &fstest.MapFile{Data: data}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return files
}
