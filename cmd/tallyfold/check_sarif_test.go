package main

import (
	"bytes"
	"encoding/json"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
	"unicode/utf16"

	"github.com/santhosh-tekuri/jsonschema/v6"

	"tallyfold/examples"

	"tallyfold/kit/proof"
)

// output runs a command and gives what it prints.
func output(t *testing.T, args ...string) string {
	t.Helper()
	var out, err bytes.Buffer
	if code := run(args, streams{out: &out, err: &err}); code == exitFailed {
		t.Fatalf("%v: %s", args, err.String())
	}
	return out.String()
}

// everyKit are the examples, their broken twins, and the kits beside the rules.
func everyKit(t *testing.T) []string {
	t.Helper()
	var folders []string
	for _, name := range examples.Names() {
		folders = append(folders, filepath.Join("../../examples", name), filepath.Join("../../testdata/broken", name))
	}
	beside, err := filepath.Glob("../../kit/rules/testdata/*/*/kit.yaml")
	if err != nil || len(beside) < 40 {
		t.Fatal(len(beside), err)
	}
	for _, file := range beside {
		folders = append(folders, filepath.Dir(file))
	}
	return folders
}

// A log as another program reads it: only what the standard names.
type readLog struct {
	Runs []struct {
		Results []struct {
			RuleID, Level string
			Message       struct{ Text string }
			Locations     []readLocation
			Related       []readLocation    `json:"relatedLocations"`
			Fingerprints  map[string]string `json:"partialFingerprints"`
		}
	}
}

type readLocation struct {
	Physical struct {
		Artifact struct{ URI string } `json:"artifactLocation"`
		Region   *struct{ StartLine, StartColumn, EndLine, EndColumn int }
	} `json:"physicalLocation"`
}

// What is printed of every kit in this repository, one by one and all in one log, is
// valid by the schema of the standard (OASIS, SARIF 2.1.0; kit/diag/testdata).
func TestSARIFOfEveryKitIsValid(t *testing.T) {
	text, err := os.ReadFile("../../kit/diag/testdata/sarif-schema-2.1.0.json")
	if err != nil {
		t.Fatal(err)
	}
	document, err := jsonschema.UnmarshalJSON(bytes.NewReader(text))
	if err != nil {
		t.Fatal(err)
	}
	compiler := jsonschema.NewCompiler()
	compiler.AssertFormat()
	if err := compiler.AddResource("sarif.json", document); err != nil {
		t.Fatal(err)
	}
	schema := compiler.MustCompile("sarif.json")
	folders := everyKit(t)
	for _, kits := range append([][]string{folders}, slices.Collect(slices.Chunk(folders, 1))...) {
		log := output(t, append([]string{"check", "--format", "sarif"}, kits...)...)
		instance, err := jsonschema.UnmarshalJSON(strings.NewReader(log))
		if err != nil {
			t.Fatal(err)
		}
		if err := schema.Validate(instance); err != nil {
			t.Errorf("%v: %v", kits, err)
		}
	}
}

// Every rule is in the log with its words, so that a viewer can explain a finding, and
// the one that a result names is the one it points at.
func TestSARIFExplainsEveryRule(t *testing.T) {
	var log struct {
		Runs []struct {
			Tool struct {
				Driver struct {
					Rules []struct {
						ID    string
						Short struct{ Text string } `json:"shortDescription"`
						Full  struct{ Text string } `json:"fullDescription"`
					}
				}
			}
			Results []struct {
				RuleID    string
				RuleIndex int
			}
		}
	}
	if err := json.Unmarshal([]byte(output(t, append([]string{"check", "--format", "sarif"}, everyKit(t)...)...)), &log); err != nil {
		t.Fatal(err)
	}
	rules := log.Runs[0].Tool.Driver.Rules
	if want := len(namesOf(judgingRules(), proof.ReadingRules())); len(rules) != want {
		t.Errorf("%d rules, want %d", len(rules), want)
	}
	for _, rule := range rules {
		if rule.Short.Text == "" || rule.Full.Text == "" {
			t.Errorf("%s is not explained", rule.ID)
		}
	}
	for _, result := range log.Runs[0].Results {
		if got := rules[result.RuleIndex].ID; got != result.RuleID {
			t.Errorf("a result of %s points at %s", result.RuleID, got)
		}
	}
}

// The log tells the same findings as the JSON output, at the same places: the text
// that a reader finds by line and UTF-16 column is the text at those bytes.
func TestSARIFAndJSONTellTheSame(t *testing.T) {
	for _, folder := range everyKit(t) {
		var log readLog
		if err := json.Unmarshal([]byte(output(t, "check", "--format", "sarif", "--as-of", "2026-01-15", folder)), &log); err != nil {
			t.Fatal(err)
		}
		var plain struct{ Kits []checkedKit }
		if err := json.Unmarshal([]byte(output(t, "check", "--format", "json", "--as-of", "2026-01-15", folder)), &plain); err != nil {
			t.Fatal(err)
		}
		results, found := log.Runs[0].Results, plain.Kits[0].Findings
		for _, accepted := range plain.Kits[0].Accepted {
			found = append(found, accepted.PlainFinding)
		}
		if len(results) != len(found) {
			t.Fatalf("%s: %d results, %d findings", folder, len(results), len(found))
		}
		fingerprints := map[string]bool{}
		for i, result := range results {
			f := found[i]
			if level := map[string]string{"must fix": "error", "should fix": "warning", "worth knowing": "note"}[f.Severity]; result.RuleID != f.Rule || result.Level != level {
				t.Errorf("%s: %s (%s), want %s (%s)", folder, result.RuleID, result.Level, f.Rule, level)
			}
			for _, sum := range f.Sum {
				if marks := regexp.MustCompile(`[][{}\\]`); !marks.MatchString(sum) && !strings.Contains(result.Message.Text, sum) {
					t.Errorf("%s: the sum %q is not in %q", folder, sum, result.Message.Text)
				}
			}
			if len(result.Related) != len(f.Also) {
				t.Errorf("%s: %d related places, want %d", folder, len(result.Related), len(f.Also))
			}
			if f.Place != nil && result.Locations[0].Physical.Region != nil {
				sameText(t, folder, f.Place.File, result.Locations[0], f.Place.Start, f.Place.End)
			}
			for _, fingerprint := range result.Fingerprints {
				if fingerprints[fingerprint] {
					t.Errorf("%s: two findings with one fingerprint", folder)
				}
				fingerprints[fingerprint] = true
			}
		}
	}
}

// sameText reads a region out of the file as the standard says and compares it with
// the bytes of it.
func sameText(t *testing.T, folder, file string, at readLocation, start, end int) {
	t.Helper()
	text, err := os.ReadFile(filepath.Join(folder, file))
	if err != nil {
		t.Fatal(err)
	}
	region := at.Physical.Region
	lines := strings.SplitAfter(string(text), "\n")
	var read []uint16
	for line := region.StartLine; line <= region.EndLine; line++ {
		units := utf16.Encode([]rune(lines[line-1]))
		from, to := 0, len(units)
		if line == region.StartLine {
			from = region.StartColumn - 1
		}
		if line == region.EndLine {
			to = region.EndColumn - 1
		}
		read = append(read, units[from:to]...)
	}
	if got, want := string(utf16.Decode(read)), string(text[start:end]); got != want {
		t.Errorf("%s/%s: region holds %q, want %q", folder, file, got, want)
	}
}
