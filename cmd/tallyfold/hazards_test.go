package main

import (
	"bytes"
	"os"
	"path/filepath"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"

	"tallyfold/kit/hazard"
)

// The hazardous actions of every example and every broken twin, as they are printed.
func TestHazardsOfAllKits(t *testing.T) {
	for _, root := range []string{"../../examples", "../../testdata/broken"} {
		folders, err := filepath.Glob(root + "/*/method.md")
		if err != nil || len(folders) == 0 {
			t.Fatalf("no kits in %s: %v", root, err)
		}
		for _, method := range folders {
			folder := filepath.Dir(method)
			p, err := prove(folder, time.Date(2026, time.January, 15, 12, 0, 0, 0, time.UTC))
			if err != nil || p.Kit == nil {
				t.Errorf("%s can't be read: %v", folder, err)
				continue
			}
			var out bytes.Buffer
			o := hazardOptions{streams: streams{out: &out, err: &out}}
			var told []toldHazard
			for _, action := range hazard.In(p.Kit, p.Ledger) {
				told = append(told, tellHazard(action))
			}
			if err := o.write(filepath.Base(folder), told); err != nil {
				t.Fatal(err)
			}
			compareHazards(t, filepath.Join("testdata", "hazards", filepath.Base(root)+"-"+filepath.Base(folder)+".txt"), out.String())
		}
	}
}

func compareHazards(t *testing.T, file, got string) {
	t.Helper()
	if os.Getenv("UPDATE_GOLDEN") != "" {
		if err := os.MkdirAll(filepath.Dir(file), 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(file, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(string(want), got); diff != "" {
		t.Errorf("%s (UPDATE_GOLDEN=1 rewrites it):\n%s", file, diff)
	}
}
