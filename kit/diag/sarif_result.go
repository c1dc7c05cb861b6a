package diag

import (
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"net/url"
	"path"
	"slices"
	"strings"
	"unicode/utf16"

	"tallyfold/kit/source"
)

// baseID stands for the folder that the check was started in. Which folder that is
// on the machine is not told, so that the log is the same everywhere (§3.14).
const baseID = "%SRCROOT%"

// fingerprintName ends with the version of how the fingerprint is reckoned
// (§3.27): another way gets another number.
const fingerprintName = "tallyfoldFinding/v1"

// results gives the findings of a kit in the form of §3.27, and the rules with
// those added that are not among them.
func (c Checked) results(rules []Told) ([]sarifResult, []Told) {
	var results []sarifResult
	seen := map[string]int{}
	add := func(f Finding, suppressions []sarifSuppression) {
		at := slices.IndexFunc(rules, func(rule Told) bool { return rule.Name == f.Rule })
		if at < 0 {
			at, rules = len(rules), append(rules, Told{Name: f.Rule, Severity: f.Severity})
		}
		result := c.result(f)
		result.RuleIndex, result.Suppressions = at, suppressions
		result.Fingerprints = map[string]string{fingerprintName: c.fingerprint(f, seen)}
		results = append(results, result)
	}
	for _, f := range c.Findings.Sorted() {
		add(f, []sarifSuppression{})
	}
	for _, a := range c.Accepted {
		add(a.Finding, []sarifSuppression{c.suppression(a)})
	}
	return results, rules
}

// result tells one finding. One that says that something cannot be checked is told
// as failed too: the kind "open" would have to be without a level (§3.27), and a
// viewer would show it as the least of all.
func (c Checked) result(f Finding) sarifResult {
	result := sarifResult{
		RuleID: f.Rule, Level: level(f.Severity), Message: sarifText{Text: message(f.inFull())},
		Properties: sarifProperties{About: f.About, Cause: f.Cause},
	}
	if f.Where.Known() {
		result.Locations = []sarifLocation{{Physical: c.physical(f.Where)}}
	}
	for _, also := range f.Also {
		if !also.Where.Known() {
			continue
		}
		related := sarifLocation{ID: len(result.Related) + 1, Physical: c.physical(also.Where)}
		if also.Note != "" {
			related.Message = &sarifText{Text: message(also.Note)}
		}
		result.Related = append(result.Related, related)
	}
	return result
}

// inFull tells a finding in sentences, what was found first: a viewer with little
// room shows only that (§3.11.3). Each paragraph is a line.
func (f Finding) inFull() string {
	lines := []string{sentence(f.Found)}
	if f.Expected != "" {
		lines = append(lines, sentence("Expected: "+f.Expected))
	}
	if len(f.Sum) > 0 {
		lines = append(lines, sentence("Sum: "+strings.Join(f.Sum, "; ")))
	}
	for i, remedy := range f.Remedies {
		text := first(i, "To do: ", "Or: ") + remedy.Do
		if remedy.Then != "" {
			text += " (" + remedy.Then + ")"
		}
		lines = append(lines, sentence(text))
	}
	return strings.Join(lines, "\n")
}

// sentence begins a phrase with a capital and ends it with a full stop.
func sentence(phrase string) string {
	runes := []rune(phrase)
	if len(runes) == 0 {
		return phrase
	}
	text := strings.ToUpper(string(runes[:1])) + string(runes[1:])
	if strings.HasSuffix(text, ".") {
		return text
	}
	return text + "."
}

// suppression tells that the maker has accepted a finding. kit.yaml is no part of
// what the finding was found in, as a remark in a program text would be, but a
// store beside it: so it is external (§3.35).
func (c Checked) suppression(a Accepted) sarifSuppression {
	s := sarifSuppression{Kind: "external", Status: "accepted", Justification: sentence(a.Because + ", until " + a.Until)}
	if a.Entry.Known() {
		s.Location = &sarifLocation{Physical: c.physical(a.Entry)}
	}
	return s
}

// physical is a place in a file; a place that is the file as such has no region.
func (c Checked) physical(at source.Span) sarifPhysical {
	place := sarifPhysical{Artifact: c.artifact(at.File.Name)}
	if at != at.File.Whole() {
		place.Region = region(at)
	}
	return place
}

// artifact names a file of the kit.
func (c Checked) artifact(name string) sarifArtifact {
	file := path.Join(c.Folder, name)
	if path.IsAbs(file) {
		return sarifArtifact{URI: (&url.URL{Scheme: "file", Path: file}).String()}
	}
	return sarifArtifact{URI: (&url.URL{Path: file}).String(), Base: baseID}
}

// region gives line and column of the first character and of the one after the
// last, columns in UTF-16 code units. A byte order mark does not count (§3.30).
func region(at source.Span) *sarifRegion {
	startLine, startColumn := utf16Position(at.File, at.Start)
	endLine, endColumn := utf16Position(at.File, at.End)
	return &sarifRegion{StartLine: startLine, StartColumn: startColumn, EndLine: endLine, EndColumn: endColumn}
}

func utf16Position(file *source.File, at int) (line, column int) {
	line = file.Position(at).Line
	start := file.LineStart(line)
	if line == 1 {
		start = min(file.WithoutMark(), at)
	}
	column = 1
	for _, r := range string(file.Text[start:at]) {
		column += utf16.RuneLen(r)
	}
	return line, column
}

// fingerprint knows a finding again when lines have moved and figures elsewhere
// have changed: by kit, rule, what it is about, file and the words at its place.
// Findings alike in all of these are told apart by their order.
func (c Checked) fingerprint(f Finding, seen map[string]int) string {
	file := ""
	if f.Where.Known() {
		file = f.Where.File.Name
	}
	words := strings.Join(strings.Fields(f.Where.Text()), " ")
	same := strings.Join([]string{c.Name, f.Rule, f.About, file, words}, "\x00")
	seen[same]++
	sum := sha256.Sum256([]byte(fmt.Sprintf("%s\x00%d", same, seen[same])))
	return hex.EncodeToString(sum[:16])
}
