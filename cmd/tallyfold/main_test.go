package main

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/rogpeppe/go-internal/testscript"
)

// The command scripts in testdata read like a terminal session.
func TestMain(m *testing.M) {
	testscript.Main(m, map[string]func(){"tallyfold": main})
}

func TestScripts(t *testing.T) {
	examples, err := filepath.Abs("../../examples")
	if err != nil {
		t.Fatal(err)
	}
	broken, err := filepath.Abs("../../testdata/broken")
	if err != nil {
		t.Fatal(err)
	}
	testscript.Run(t, testscript.Params{
		Dir:                 "testdata",
		RequireExplicitExec: true,
		RequireUniqueNames:  true,
		UpdateScripts:       os.Getenv("UPDATE_GOLDEN") != "",
		Setup: func(env *testscript.Env) error {
			env.Setenv("EXAMPLES", examples)
			env.Setenv("BROKEN", broken)
			env.Setenv("NO_COLOR", "1")
			return nil
		},
	})
}
