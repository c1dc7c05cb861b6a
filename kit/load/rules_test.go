package load

import (
	"os"
	"path/filepath"
	"regexp"
	"testing"
)

// TestRulesAreToldAndTested: every rule is explained, and every rule is found in
// a broken file.
func TestRulesAreToldAndTested(t *testing.T) {
	files, err := filepath.Glob("testdata/broken/*.want")
	if err != nil {
		t.Fatal(err)
	}
	seen := map[string]bool{}
	for _, path := range files {
		text, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		for _, line := range regexp.MustCompile(`(?m)^\d+:\d+ ([a-z-]+)`).FindAllSubmatch(text, -1) {
			seen[string(line[1])] = true
		}
	}
	for _, rule := range Rules {
		if rule.Name == "" || rule.Title == "" || rule.Explanation == "" {
			t.Errorf("a gap: %+v", rule)
		}
		if !seen[rule.Name] {
			t.Errorf("%s is found in no broken file", rule.Name)
		}
		delete(seen, rule.Name)
	}
	for name := range seen {
		t.Errorf("%s is found and not told in Rules", name)
	}
}
