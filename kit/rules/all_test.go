package rules_test

import (
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"

	"tallyfold/instructions"
	"tallyfold/kit/diag"
	"tallyfold/kit/ledger"
	"tallyfold/kit/rules"
	"tallyfold/kit/schedule"
	"tallyfold/kit/source"
)

// today is the day that all test kits are judged as of.
var today = time.Date(2026, time.January, 15, 12, 0, 0, 0, time.UTC)

func everyRule() []rules.Rule { return slices.Concat(rules.All, rules.OnAccepting) }

func TestEachRuleIsWhole(t *testing.T) {
	name := regexp.MustCompile(`^[a-z]+(-[a-z]+)*$`)
	seen := map[string]bool{}
	for _, rule := range everyRule() {
		if !name.MatchString(rule.Name) {
			t.Errorf("%q is no name of lower-case words joined by hyphens", rule.Name)
		}
		if seen[rule.Name] {
			t.Errorf("%s is there twice", rule.Name)
		}
		seen[rule.Name] = true
		if rule.Severity < diag.MustFix || rule.Severity > diag.WorthKnowing {
			t.Errorf("%s has %s", rule.Name, rule.Severity)
		}
		if rule.Title == "" || strings.HasSuffix(rule.Title, ".") {
			t.Errorf("%s: the title %q is empty or ends with a full stop", rule.Name, rule.Title)
		}
		if paragraphs := strings.Split(rule.Explanation, "\n\n"); len(paragraphs) < 2 {
			t.Errorf("%s: the explanation must say why it matters and how to put it right, in paragraphs", rule.Name)
		}
		if _, err := os.Stat(strings.ReplaceAll(rule.Name, "-", "_") + ".go"); err != nil {
			t.Errorf("%s has no file of its own: %v", rule.Name, err)
		}
		if found, ok := rules.Named(rule.Name); !ok || found.Title != rule.Title {
			t.Errorf("Named does not find %s", rule.Name)
		}
	}
	if _, ok := rules.Named("no-such-rule"); ok {
		t.Error("Named finds a rule that there is not")
	}
}

func TestEachFolderOfKitsBelongsToARule(t *testing.T) {
	entries, err := os.ReadDir("testdata")
	if err != nil {
		t.Fatal(err)
	}
	for _, entry := range entries {
		if _, ok := rules.Named(entry.Name()); !ok && entry.Name() != "practice" {
			t.Errorf("testdata/%s belongs to no rule", entry.Name())
		}
	}
}

// A failing kit gives this rule's finding and none of another rule, save those
// that its comment "# also:" names. The wording is pinned in want.txt.
func TestFailingKits(t *testing.T) {
	for _, rule := range everyRule() {
		t.Run(rule.Name, func(t *testing.T) {
			folder := filepath.Join("testdata", rule.Name, "fails")
			open, _ := judged(t, folder)
			also := comment(t, folder, "also")
			own := 0
			for _, finding := range open {
				checkFinding(t, finding)
				switch {
				case finding.Rule == rule.Name:
					own++
				case !slices.Contains(strings.Split(also, ", "), finding.Rule):
					t.Errorf("unexpected finding:\n%s", told(diag.List{finding}))
				}
			}
			if own == 0 {
				t.Errorf("no finding of %s in:\n%s", rule.Name, told(open))
			}
			for _, name := range strings.Split(also, ", ") {
				if also != "" && !slices.ContainsFunc(open, func(f diag.Finding) bool { return f.Rule == name }) {
					t.Errorf("“# also:” names %s, which is not found", name)
				}
			}
			golden(t, filepath.Join(folder, "want.txt"), told(open))
		})
	}
}

// A clean kit comes near to failing, and no rule says anything.
func TestCleanKits(t *testing.T) {
	for _, rule := range everyRule() {
		t.Run(rule.Name, func(t *testing.T) {
			if open, _ := judged(t, filepath.Join("testdata", rule.Name, "clean")); len(open) > 0 {
				t.Errorf("want no finding, got:\n%s", told(open))
			}
		})
	}
}

func checkFinding(t *testing.T, f diag.Finding) {
	t.Helper()
	if f.Found == "" || f.Expected == "" || len(f.Remedies) == 0 || !f.Where.Known() {
		t.Errorf("found, expected, a remedy and the place must be filled in:\n%s", told(diag.List{f}))
	}
	for _, text := range []string{f.Found, f.Expected} {
		if strings.HasSuffix(text, ".") || strings.Contains(text, "  ") {
			t.Errorf("%s: %q ends with a full stop or has two blanks in a row", f.Rule, text)
		}
	}
	for _, remedy := range f.Remedies {
		if remedy.Do == "" {
			t.Errorf("%s: a remedy says nothing", f.Rule)
		}
	}
}

// subject opens a kit folder and follows it.
func subject(t testing.TB, folder string) (rules.Subject, diag.List) {
	t.Helper()
	k, reading := instructions.Open(os.DirFS(folder), filepath.Base(folder))
	if k == nil {
		t.Fatalf("%s cannot be read:\n%s", folder, told(reading))
	}
	return rules.Subject{Kit: k, Ledger: ledger.Follow(k), Plan: schedule.Of(k), Today: today}, reading
}

// judged runs a kit folder through the whole chain.
func judged(t testing.TB, folder string) (open diag.List, accepted []diag.Accepted) {
	t.Helper()
	if why := comment(t, folder, "why"); why == "" {
		t.Errorf("%s: the first line must say why the kit exists: “# why: …”", folder)
	}
	s, reading := subject(t, folder)
	if day := comment(t, folder, "as of"); day != "" {
		at, err := time.Parse(time.DateOnly, day)
		if err != nil {
			t.Fatalf("%s: “# as of: %s” is no day", folder, day)
		}
		s.Today = at
	}
	return rules.Accept(append(reading, rules.Check(s)...), s.Kit, s.Today)
}

// comment gives what the head of kit.yaml says after "# name: ".
func comment(t testing.TB, folder, name string) string {
	t.Helper()
	text, err := os.ReadFile(filepath.Join(folder, "kit.yaml"))
	if err != nil {
		t.Fatal(err)
	}
	for _, line := range strings.Split(string(text), "\n") {
		if !strings.HasPrefix(line, "#") {
			return ""
		}
		if rest, ok := strings.CutPrefix(line, "# "+name+": "); ok {
			return strings.TrimSpace(rest)
		}
	}
	return ""
}

// told writes findings in full, with all that a maker reads and what groups them.
func told(list diag.List) string {
	var b strings.Builder
	for _, f := range list {
		b.WriteString(f.Severity.String() + ": " + f.Rule + " (" + f.About + ")\n")
		line := func(label, text string) { b.WriteString("    " + label + ": " + text + "\n") }
		line("at", place(f.Where)+" “"+shortened(f.Where.Text())+"”")
		line("found", f.Found)
		line("expected", f.Expected)
		for _, sum := range f.Sum {
			line("sum", sum)
		}
		for _, remedy := range f.Remedies {
			text := remedy.Do
			if remedy.Then != "" {
				text += " (" + remedy.Then + ")"
			}
			line("to do", text)
		}
		for _, also := range f.Also {
			line("see", place(also.Where)+" "+also.Note)
		}
		if f.Cause != "" {
			follows := ""
			if f.Follows {
				follows = ", follows"
			}
			line("cause", f.Cause+follows)
		}
		b.WriteString("\n")
	}
	return b.String()
}

func place(at source.Span) string {
	if !at.Known() {
		return "nowhere"
	}
	position := at.Position()
	return fmt.Sprintf("%s:%d:%d", at.File.Name, position.Line, position.Column)
}

func shortened(text string) string {
	text = strings.Join(strings.Fields(text), " ")
	if runes := []rune(text); len(runes) > 50 {
		return string(runes[:49]) + "…"
	}
	return text
}

// golden compares with a file; UPDATE_GOLDEN=1 writes it. Read what it writes.
func golden(t *testing.T, file, got string) {
	t.Helper()
	if os.Getenv("UPDATE_GOLDEN") == "1" {
		if err := os.WriteFile(file, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	want, err := os.ReadFile(file)
	if err != nil {
		t.Fatalf("%v; write it with UPDATE_GOLDEN=1 go test ./kit/rules, and read it", err)
	}
	if diff := cmp.Diff(string(want), got); diff != "" {
		t.Errorf("%s (-want +got):\n%s", file, diff)
	}
}
