package main

import (
	"bytes"
	"context"
	"path/filepath"
	"strings"
	"testing"
)

// Kits are judged side by side and told in the order they were named.
func TestCataloguesKeepTheirOrder(t *testing.T) {
	folders := everyKit(t)
	outcomes, err := proveAll(context.Background(), folders, judged, nil)
	if err != nil {
		t.Fatal(err)
	}
	for i, one := range outcomes {
		if one.err != nil || one.folder != filepath.ToSlash(folders[i]) || one.proof.folder != one.folder {
			t.Errorf("place %d: %+v, want %s", i, one, folders[i])
		}
		alone, err := prove(folders[i], judged)
		if err != nil || len(alone.Findings) != len(one.proof.Findings) {
			t.Errorf("%s: %d findings beside others, %d alone", folders[i], len(one.proof.Findings), len(alone.Findings))
		}
	}
}

// A person who looks sees how far the work is, on the other stream and on one line
// that is gone at the end; nobody else sees it.
func TestProgressIsForPersonsOnly(t *testing.T) {
	args := []string{"check", "../../examples"}
	var plain, watched, quiet, told bytes.Buffer
	if code := run(args, streams{out: &plain, err: &quiet}); code != exitDone || quiet.Len() > 0 {
		t.Fatalf("exit %d, said %q", code, quiet.String())
	}
	if code := run(args, streams{out: &watched, err: &told, watched: true}); code != exitDone {
		t.Fatalf("exit %d", code)
	}
	if plain.String() != watched.String() {
		t.Error("the findings differ when a person looks")
	}
	if got := told.String(); !strings.Contains(got, "checked 4 of 4: ") || !strings.HasSuffix(got, lineStart) || strings.Contains(got, "\n") {
		t.Errorf("said %q", got)
	}
	told.Reset()
	run([]string{"check", "../../examples/pocket-notebooks"}, streams{out: &watched, err: &told, watched: true})
	if told.Len() > 0 {
		t.Errorf("one kit needs no progress: %q", told.String())
	}
}

func TestStoppedWorkSaysSo(t *testing.T) {
	ctx, stop := context.WithCancel(context.Background())
	stop()
	if _, err := proveAll(ctx, everyKit(t), judged, nil); err == nil || !strings.Contains(err.Error(), "stopped") {
		t.Errorf("got %v", err)
	}
}

func BenchmarkCheckACatalogue(b *testing.B) {
	folders := kitFolders([]string{"../../examples", "../../testdata/broken"})
	for b.Loop() {
		if _, err := proveAll(context.Background(), folders, judged, nil); err != nil {
			b.Fatal(err)
		}
	}
}
