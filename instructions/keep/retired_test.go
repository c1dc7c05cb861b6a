package keep

import (
	"fmt"
	"os"
	"path/filepath"
	"testing"
	"time"
)

// What is retired is there in the next session, newest first, until it is put back; and no more
// is kept than has room.
func TestRetired(t *testing.T) {
	f, dir := opened(t)
	if all := must(f.Retired())(t); len(all) != 0 {
		t.Fatalf("%+v", all)
	}
	for i := range mostRetired + 5 {
		if err := f.Retire(fmt.Appendf(nil, "components:\n  wax-%d: {packed: 3 g}\n", i), i); err != nil {
			t.Fatal(err)
		}
	}
	put(t, dir, home+"/retired/notes.txt", "not ours")
	f.Close()
	f = open(t, dir)
	all := must(f.Retired())(t)
	if len(all) != mostRetired || all[0].Number != mostRetired+4 || string(all[0].Text) != "components:\n  wax-104: {packed: 3 g}\n" || time.Since(all[0].When) > time.Hour {
		t.Fatalf("%d, the first %+v", len(all), all[0])
	}
	if err := f.PutBack(all[0].ID); err != nil {
		t.Fatal(err)
	}
	if err := f.PutBack(all[0].ID); err != nil {
		t.Errorf("a second time: %v", err)
	}
	if left := must(f.Retired())(t); len(left) != mostRetired-1 || left[0].ID != all[1].ID {
		t.Errorf("%d are left, the first %+v", len(left), left[0])
	}
	for _, trick := range []string{"../../kit.yaml", `..\kit.yaml`, ".gitignore"} {
		if err := f.PutBack(trick); kindOf(err) != BadName {
			t.Errorf("%q: %v", trick, err)
		}
	}
	if _, err := os.Stat(filepath.Join(dir, "kit.yaml")); err != nil {
		t.Error(err)
	}
}
