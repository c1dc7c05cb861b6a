package diag

import (
	"bytes"
	"encoding/json"
	"os"
	"strings"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"

	"tallyfold/kit/source"
)

// validSARIF holds a log against the JSON Schema of the standard (OASIS, SARIF
// 2.1.0; testdata/NOTICE.md), formats of URIs included.
func validSARIF(t *testing.T, log []byte) {
	t.Helper()
	text, err := os.Open("testdata/sarif-schema-2.1.0.json")
	if err != nil {
		t.Fatal(err)
	}
	defer text.Close()
	document, err := jsonschema.UnmarshalJSON(text)
	if err != nil {
		t.Fatal(err)
	}
	compiler := jsonschema.NewCompiler()
	compiler.AssertFormat()
	if err := compiler.AddResource("sarif.json", document); err != nil {
		t.Fatal(err)
	}
	instance, err := jsonschema.UnmarshalJSON(bytes.NewReader(log))
	if err != nil {
		t.Fatal(err)
	}
	if err := compiler.MustCompile("sarif.json").Validate(instance); err != nil {
		t.Errorf("not as the standard's schema has it: %v", err)
	}
}

// written writes a log and reads the one run of it.
func written(t *testing.T, log Log) sarifRun {
	t.Helper()
	var out bytes.Buffer
	if err := WriteSARIF(&out, log); err != nil {
		t.Fatal(err)
	}
	validSARIF(t, out.Bytes())
	var read sarifLog
	if err := json.Unmarshal(out.Bytes(), &read); err != nil || len(read.Runs) != 1 {
		t.Fatalf("%v, %d runs", err, len(read.Runs))
	}
	return read.Runs[0]
}

func checked(list ...Finding) Log {
	return Log{Rules: []Told{{Name: "packed-too-little", Title: "Too little", Explanation: "Pack\nmore.", Severity: MustFix}},
		Kits: []Checked{{Name: "lanterns", Folder: "kits/lanterns", Findings: list}}}
}

func TestSARIFTellsAllOfAFinding(t *testing.T) {
	list, _ := sample()
	run := written(t, checked(list...))
	if len(run.Results) != 3 {
		t.Fatalf("%d results", len(run.Results))
	}
	got := run.Results[1]
	want := "720 g of wax are taken.\nExpected: at most 700 g.\nSum: 360 g + 360 g = 720 g.\n" +
		"To do: pack at least 720 g.\nOr: take 350 g."
	if got.Message.Text != want {
		t.Errorf("message:\n%s\nwant:\n%s", got.Message.Text, want)
	}
	place := got.Locations[0].Physical
	if place.Artifact.URI != "kits/lanterns/kit.yaml" || place.Artifact.Base != baseID || *place.Region != (sarifRegion{2, 13, 2, 18}) {
		t.Errorf("place %+v %+v", place.Artifact, place.Region)
	}
	if len(got.Related) != 1 || got.Related[0].Message.Text != "step 2" {
		t.Errorf("related %+v", got.Related)
	}
	if rule := run.Tool.Driver.Rules[got.RuleIndex]; rule.ID != "packed-too-little" || rule.Full.Text != "Pack more." {
		t.Errorf("rule %+v", rule)
	}
	if levels := run.Results[0].Level + run.Results[2].Level; levels != "errorwarning" {
		t.Errorf("levels %s, want error for must fix and warning for should fix", levels)
	}
	if run.ColumnKind != "utf16CodeUnits" {
		t.Errorf("columns are said to be in %q", run.ColumnKind)
	}
}

// A column counts UTF-16 code units: one for é, two for a character beyond the
// basic plane (The Unicode Standard, chapter 3.9, definition D91).
func TestSARIFCountsColumnsInUTF16(t *testing.T) {
	for _, c := range []struct {
		why, before, at string
		want            sarifRegion
	}{
		{"at the head", "", "wax", sarifRegion{1, 1, 1, 4}},
		{"behind é", "é: ", "wax", sarifRegion{1, 4, 1, 7}},
		{"behind a candle", "🕯🕯 ", "wax", sarifRegion{1, 6, 1, 9}},
		{"a candle itself", "a ", "🕯", sarifRegion{1, 3, 1, 5}},
		{"on the next line", "name: x\n  ", "wax", sarifRegion{2, 3, 2, 6}},
		{"behind CR LF", "name: x\r\n", "wax", sarifRegion{2, 1, 2, 4}},
		{"over two lines", "a: ", "one\n two", sarifRegion{1, 4, 2, 5}},
		{"a byte order mark does not count", "\ufeffa: ", "wax", sarifRegion{1, 4, 1, 7}},
		{"nor on the next line", "\ufeffa:\n", "wax", sarifRegion{2, 1, 2, 4}},
		{"no width", "abc", "", sarifRegion{1, 4, 1, 4}},
	} {
		file := source.NewFile("kit.yaml", []byte(c.before+c.at+" more"))
		if got := *region(file.Span(len(c.before), len(c.before)+len(c.at))); got != c.want {
			t.Errorf("%s: %+v, want %+v", c.why, got, c.want)
		}
	}
}

func TestSARIFFilesThatAreNoPlaceOrLieElsewhere(t *testing.T) {
	gone := source.NewFile("method.md", nil)
	run := written(t, checked(
		Finding{Rule: "a", Severity: MustFix, Where: gone.Whole(), Found: "no method.md"},
		Finding{Rule: "b", Severity: WorthKnowing, Found: "nowhere"}))
	if run.Results[0].Locations[0].Physical.Region != nil || len(run.Results[1].Locations) != 0 {
		t.Errorf("%+v", run.Results)
	}
	if run.Results[1].Level != "note" {
		t.Errorf("worth knowing is %q", run.Results[1].Level)
	}
	for folder, want := range map[string]string{
		".": "method.md", "my kits/été": "my%20kits/%C3%A9t%C3%A9/method.md", "a:b": "./a:b/method.md",
		"/srv/kits/x": "file:///srv/kits/x/method.md",
	} {
		log := checked(Finding{Rule: "a", Severity: MustFix, Where: gone.Whole(), Found: "x"})
		log.Kits[0].Folder = folder
		got := written(t, log).Results[0].Locations[0].Physical.Artifact
		if got.URI != want || (got.Base == "") != strings.HasPrefix(want, "file:") {
			t.Errorf("%s: %+v, want %s", folder, got, want)
		}
	}
}

// Link and place marks of a maker's text are no links and places of the message.
func TestSARIFMarksAreText(t *testing.T) {
	run := written(t, checked(Finding{Rule: "a", Severity: MustFix, Found: "x",
		Remedies: Fix(`write [550 g](same:wax)`, `add “{name: Funnel}”`, `not a\b`)}))
	want := "X.\nTo do: write \\[550 g\\](same:wax).\nOr: add “{{name: Funnel}}”.\nOr: not a\\\\b."
	if got := run.Results[0].Message.Text; got != want {
		t.Errorf("%q, want %q", got, want)
	}
}

func TestSARIFAcceptedFindingsAreSuppressed(t *testing.T) {
	list, file := sample()
	log := checked(list[0])
	log.Kits[0].Accepted = []Accepted{{Finding: list[1], Because: "a trial", Until: "2027-06-30", Entry: file.Span(0, 4)}}
	run := written(t, log)
	if len(run.Results) != 2 || len(run.Results[0].Suppressions) != 0 || len(run.Results[1].Suppressions) != 1 {
		t.Fatalf("%+v", run.Results)
	}
	got := run.Results[1].Suppressions[0]
	if got.Kind != "external" || got.Status != "accepted" || got.Justification != "A trial, until 2027-06-30." || got.Location.Physical.Region.EndColumn != 5 {
		t.Errorf("%+v", got)
	}
}

func TestSARIFSaysWhichKitsFailed(t *testing.T) {
	run := written(t, Log{Failed: []string{"there is no kit folder {x}"}})
	call := run.Invocations[0]
	if call.ExecutionSuccessful || len(call.Notifications) != 1 || call.Notifications[0].Message.Text != "there is no kit folder {{x}}" {
		t.Errorf("%+v", call)
	}
	if !written(t, checked()).Invocations[0].ExecutionSuccessful {
		t.Error("a check that found nothing is told as failed")
	}
}

// The fingerprint outlives moved lines and other figures in the message, and tells
// findings apart that differ in anything that names them.
func TestSARIFFingerprints(t *testing.T) {
	at := func(text, words string) source.Span {
		file := source.NewFile("kit.yaml", []byte(text))
		start := strings.Index(text, words)
		return file.Span(start, start+len(words))
	}
	base := Finding{Rule: "r", About: "wax", Severity: MustFix, Where: at("packed: 1 kg\n", "1 kg"), Found: "100 g too little"}
	print := func(list ...Finding) (all []string) {
		for _, result := range written(t, checked(list...)).Results {
			all = append(all, result.Fingerprints[fingerprintName])
		}
		return all
	}
	want := print(base)[0]
	same := base
	same.Where, same.Found = at("# a note\n\n  packed: 1 kg\n", "1 kg"), "90 g too little"
	if got := print(same)[0]; got != want {
		t.Error("moved lines changed the fingerprint")
	}
	for why, change := range map[string]func(*Finding){
		"rule":  func(f *Finding) { f.Rule = "s" },
		"about": func(f *Finding) { f.About = "oil" },
		"words": func(f *Finding) { f.Where = at("packed: 2 kg\n", "2 kg") },
		"file":  func(f *Finding) { f.Where = source.NewFile("method.md", []byte("1 kg")).Span(0, 4) },
	} {
		other := base
		change(&other)
		if print(other)[0] == want {
			t.Errorf("another %s has the same fingerprint", why)
		}
	}
	twice := same
	twice.Where = at("a: 1 kg\nb: 1 kg\n", "1 kg")
	second := twice
	second.Where = twice.Where.File.Span(11, 15)
	if got := print(twice, second); got[0] == got[1] || got[0] != want {
		t.Errorf("two alike: %v", got)
	}
}

func TestSARIFIsTheSameEachTime(t *testing.T) {
	list, _ := sample()
	var one, two bytes.Buffer
	_ = WriteSARIF(&one, checked(list...))
	_ = WriteSARIF(&two, checked(list...))
	if one.String() != two.String() {
		t.Error("two logs of the same findings differ")
	}
}
