package main

import (
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"tallyfold/render"

	"tallyfold/kit/proof"
)

// reported gives the report of a kit, judged as of the day of the tests.
func reported(t *testing.T, folder string) string {
	t.Helper()
	p, err := prove(folder, judged)
	if err != nil {
		t.Fatal(err)
	}
	text, err := render.Report{
		Folder: p.name, Kit: p.Kit, AsOf: judged, Version: "1", Findings: p.Findings, Accepted: p.Accepted, Rules: asked(p, judged),
	}.Markdown()
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

// A report names every rule once, and gives no verdict.
func TestReportsNameEveryRuleAndGiveNoVerdict(t *testing.T) {
	verdict := regexp.MustCompile(`(?i)\b(compliant|compliance|complies|safe|safely|certified|passed)\b`)
	for _, folder := range everyKit(t) {
		text := reported(t, folder)
		asked := text[strings.Index(text, "## What was asked"):]
		names := namesOf(judgingRules(), proof.ReadingRules())
		for _, rule := range regexp.MustCompile(`(?m)^\*\*([a-z-]+)\*\*`).FindAllStringSubmatch(text, -1) {
			if !slices.Contains(names, rule[1]) {
				t.Errorf("%s: %s found something and is not among the rules that were asked", folder, rule[1])
			}
		}
		for _, name := range names {
			if n := strings.Count(asked, "\n| "+name+" | "); n != 1 {
				t.Errorf("%s: %s is told %d times", folder, name, n)
			}
		}
		// The kit's own words may say what they like; what it is asked by name may not.
		if at := verdict.FindString(text[:strings.Index(text, "## What was found")] + asked); at != "" {
			t.Errorf("%s: the report says %q", folder, at)
		}
		if strings.Contains(text, "<no value>") || strings.Contains(text, "\n\n\n") {
			t.Errorf("%s: a gap in the report:\n%s", folder, text)
		}
	}
}

// Every finding of a broken kit is in its report, with its sum and its ways out.
func TestReportsTellEveryFinding(t *testing.T) {
	folder := "../../testdata/broken/harbour-candles"
	p, err := prove(folder, judged)
	if err != nil {
		t.Fatal(err)
	}
	text := reported(t, folder)
	if got := strings.Count(text, "\n- Found: "); got != len(p.Findings) || got < 15 {
		t.Errorf("%d findings told, want %d", got, len(p.Findings))
	}
	for _, want := range []string{
		"- Sum: 550 g (Soy wax flakes, step 2, Harbour Pine) + 550 g (Soy wax flakes, step 2, Orange Dock) = 1.1 kg",
		"- Way out: pack at least 1.11 kg of Soy wax flakes (enough even where a pack is 10 g light)",
		`- Way out: put it right and make a link of it, so that it is compared from now on: \[550 g\](same:wax)`,
		"- See also: method.md, line 28: 550 g, step 2, Harbour Pine, Orange Dock",
	} {
		if !strings.Contains(text, want) {
			t.Errorf("%q is missing", want)
		}
	}
}

// What a rule could not check is told as such and never as nothing found.
func TestReportsTellWhatCouldNotBeChecked(t *testing.T) {
	text := reported(t, "../../kit/rules/testdata/no-density/fails")
	row := regexp.MustCompile(`(?m)^\| no-density \|.*`).FindString(text)
	if !strings.Contains(row, "could not be checked") || strings.Contains(row, "nothing found") {
		t.Errorf("the row is %q", row)
	}
	_, after, _ := strings.Cut(text, "## What could not be checked")
	if !strings.Contains(after, "cannot check: no density is given for") {
		t.Errorf("not told:\n%s", after)
	}
	claims := t.TempDir()
	for name, content := range map[string]string{
		"kit.yaml":  "name: Jar\nmakes: 1 jar\ncomponents: {jar: {packed: 1}}\nclaims: [{says: Burns 30 hours, shown by: trials/burn.yaml}]\n",
		"method.md": "## [Set it](step:set)\n\nSet [the jar](use:jar) on the table.\n",
	} {
		if err := os.WriteFile(filepath.Join(claims, name), []byte(content), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	if text := reported(t, claims); !strings.Contains(text, "- The claim “Burns 30 hours” rests on trials/burn.yaml, which was not opened.") {
		t.Errorf("an unopened document is not told:\n%s", text)
	}
}

// Without steps to follow no rule on them is told as having found nothing: neither
// with a kit.yaml that cannot be read, nor with a method that is not there.
func TestReportsOfWhatCannotBeFollowed(t *testing.T) {
	for why, files := range map[string]map[string]string{
		"kit.yaml cannot be read": {"kit.yaml": "name: [\n", "method.md": "## [Set it](step:set)\n"},
		"no method":               {"kit.yaml": "name: Jar\nmakes: 1 jar\ncomponents: {jar: {packed: 1}}\n"},
	} {
		folder := t.TempDir()
		for name, content := range files {
			if err := os.WriteFile(filepath.Join(folder, name), []byte(content), 0o644); err != nil {
				t.Fatal(err)
			}
		}
		text := reported(t, folder)
		for _, rule := range judgingRules() {
			row := regexp.MustCompile(`(?m)^\| ` + rule.Name + ` \|.*`).FindString(text)
			if !strings.HasSuffix(row, "| not asked |") {
				t.Errorf("%s: %q", why, row)
			}
		}
		if !strings.Contains(text, "None of the rules on the steps was asked") || !strings.Contains(text, "the steps could not be followed") {
			t.Errorf("%s: not told:\n%s", why, text)
		}
	}
}

// What SAFETY.md says is not looked at, a report says too.
func TestReportsSayWhatSafetySays(t *testing.T) {
	text, err := os.ReadFile("../../SAFETY.md")
	if err != nil {
		t.Fatal(err)
	}
	_, after, found := strings.Cut(string(text), "## What is not looked at")
	lines := regexp.MustCompile(`(?m)^- (.*)[;.]$`).FindAllStringSubmatch(after, -1)
	if !found || len(lines) < 5 {
		t.Fatalf("%d lines", len(lines))
	}
	report := reported(t, "../../examples/pocket-notebooks")
	for _, line := range lines {
		if !strings.Contains(report, "- "+line[1]) {
			t.Errorf("the report does not say: %s", line[1])
		}
	}
}

// A maker's words become no markup of the report, and steer no reader.
func TestReportsShowAMakersWordsAsTheyAre(t *testing.T) {
	folder := t.TempDir()
	for name, content := range map[string]string{
		"kit.yaml":  "name: \"# <b>Jar</b> | [x](y) \u202e\"\nmakes: 1 jar\ncomponents: {jar: {packed: 1}}\n",
		"method.md": "## [Set it](step:set)\n\nSet [the jar](use:jar) on the table.\n",
	} {
		if err := os.WriteFile(filepath.Join(folder, name), []byte(content), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	if text := reported(t, folder); !strings.Contains(text, `| Kit | \# \<b\>Jar\</b\> \| \[x\](y) � |`) {
		t.Errorf("got:\n%s", text[:600])
	}
}
