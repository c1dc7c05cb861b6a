package diag

import (
	"encoding/json"
	"io"
	"slices"
	"strings"
)

// This file writes findings as SARIF 2.1.0 (OASIS Standard, Static Analysis
// Results Interchange Format, 27 March 2020), which editors and reviewing tools
// read. Chapter numbers are those of the standard.

// A Log is what one check has to tell.
type Log struct {
	// Version of the program.
	Version string
	// Rules are all rules that were asked, whether they found anything or not.
	Rules []Told
	Kits  []Checked
	// Failed says of each kit that could not be checked why not.
	Failed []string
}

// Told is a rule as it is explained to people.
type Told struct {
	Name, Title, Explanation string
	// Severity of its findings where a finding does not say another.
	Severity Severity
}

// Checked is what checking one kit gave.
type Checked struct {
	// Name is the kit folder's own name.
	Name string
	// Folder is the kit folder, with forward slashes: from the folder that the check
	// was started in, or from the root where it does not lie below that one. A log
	// with “..” in it may be refused (§3.10).
	Folder   string
	Findings List
	Accepted []Accepted
}

// WriteSARIF writes a log of one run. Findings come kit by kit, worst first, the
// accepted ones after the others, marked as suppressed.
func WriteSARIF(w io.Writer, log Log) error {
	encoder := json.NewEncoder(w)
	encoder.SetIndent("", "  ")
	encoder.SetEscapeHTML(false)
	return encoder.Encode(sarifLog{
		Schema:  "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json",
		Version: "2.1.0",
		Runs:    []sarifRun{log.run()},
	})
}

func (l Log) run() sarifRun {
	run := sarifRun{
		Tool: sarifTool{Driver: sarifDriver{Name: "tallyfold", Version: l.Version, Rules: []sarifRule{}}},
		// A finding is no failure of the program (§3.20).
		Invocations: []sarifInvocation{{ExecutionSuccessful: len(l.Failed) == 0}},
		Bases:       map[string]sarifArtifact{baseID: {Description: &sarifText{Text: "The folder that the check was started in."}}},
		Language:    "en-GB",
		ColumnKind:  "utf16CodeUnits",
		// What an editor shows as a line ends so (source.NewFile).
		NewlineSequences: []string{"\r\n", "\n", "\r"},
		Results:          []sarifResult{},
	}
	for _, failed := range l.Failed {
		run.Invocations[0].Notifications = append(run.Invocations[0].Notifications,
			sarifNotification{Level: "error", Message: sarifText{Text: message(failed)}})
	}
	rules := slices.Clone(l.Rules)
	for _, kit := range l.Kits {
		results, more := kit.results(rules)
		run.Results, rules = append(run.Results, results...), more
	}
	for _, rule := range rules {
		run.Tool.Driver.Rules = append(run.Tool.Driver.Rules, rule.sarif())
	}
	return run
}

// sarif gives a rule with its words. Those in a rule are no messages with places
// to fill in, but the same characters mean something in them (§3.11.5, §3.12).
func (t Told) sarif() sarifRule {
	rule := sarifRule{ID: t.Name}
	if t.Severity != 0 {
		rule.Default = &sarifConfiguration{Level: level(t.Severity)}
	}
	if t.Title != "" {
		rule.Short = &sarifText{Text: message(sentence(t.Title))}
	}
	if t.Explanation != "" {
		rule.Full = &sarifText{Text: message(unwrapped(t.Explanation))}
		rule.Help = rule.Full
	}
	return rule
}

// unwrapped joins the lines of each paragraph: where lines end is for the viewer.
func unwrapped(text string) string {
	paragraphs := strings.Split(text, "\n\n")
	for i, paragraph := range paragraphs {
		paragraphs[i] = strings.Join(strings.Fields(paragraph), " ")
	}
	return strings.Join(paragraphs, "\n\n")
}

// level is a severity in the words of §3.27.
func level(severity Severity) string {
	switch severity {
	case MustFix:
		return "error"
	case ShouldFix:
		return "warning"
	case WorthKnowing:
		return "note"
	}
	return "none"
}

// message writes plain text so that none of it is read as a place to fill in
// (§3.11.5) or as a link (§3.11.6).
func message(text string) string { return messageMarks.Replace(text) }

var messageMarks = strings.NewReplacer("{", "{{", "}", "}}", "[", `\[`, "]", `\]`, `\`, `\\`)

// The parts of the format that are written.
type (
	sarifLog struct {
		Schema  string     `json:"$schema"`
		Version string     `json:"version"`
		Runs    []sarifRun `json:"runs"`
	}
	sarifRun struct {
		Tool             sarifTool                `json:"tool"`
		Invocations      []sarifInvocation        `json:"invocations"`
		Bases            map[string]sarifArtifact `json:"originalUriBaseIds"`
		Language         string                   `json:"language"`
		ColumnKind       string                   `json:"columnKind"`
		NewlineSequences []string                 `json:"newlineSequences"`
		Results          []sarifResult            `json:"results"`
	}
	sarifTool struct {
		Driver sarifDriver `json:"driver"`
	}
	sarifDriver struct {
		Name    string      `json:"name"`
		Version string      `json:"version,omitempty"`
		Rules   []sarifRule `json:"rules"`
	}
	sarifRule struct {
		ID      string              `json:"id"`
		Short   *sarifText          `json:"shortDescription,omitempty"`
		Full    *sarifText          `json:"fullDescription,omitempty"`
		Help    *sarifText          `json:"help,omitempty"`
		Default *sarifConfiguration `json:"defaultConfiguration,omitempty"`
	}
	sarifConfiguration struct {
		Level string `json:"level"`
	}
	sarifInvocation struct {
		ExecutionSuccessful bool                `json:"executionSuccessful"`
		Notifications       []sarifNotification `json:"toolExecutionNotifications,omitempty"`
	}
	sarifNotification struct {
		Level   string    `json:"level"`
		Message sarifText `json:"message"`
	}
	sarifResult struct {
		RuleID       string             `json:"ruleId"`
		RuleIndex    int                `json:"ruleIndex"`
		Level        string             `json:"level"`
		Message      sarifText          `json:"message"`
		Locations    []sarifLocation    `json:"locations,omitempty"`
		Related      []sarifLocation    `json:"relatedLocations,omitempty"`
		Fingerprints map[string]string  `json:"partialFingerprints"`
		Suppressions []sarifSuppression `json:"suppressions"`
		Properties   sarifProperties    `json:"properties"`
	}
	sarifProperties struct {
		About string `json:"about,omitempty"`
		Cause string `json:"cause,omitempty"`
	}
	sarifSuppression struct {
		Kind          string         `json:"kind"`
		Status        string         `json:"status"`
		Justification string         `json:"justification"`
		Location      *sarifLocation `json:"location,omitempty"`
	}
	sarifText struct {
		Text string `json:"text"`
	}
	sarifLocation struct {
		ID       int           `json:"id,omitempty"`
		Physical sarifPhysical `json:"physicalLocation"`
		Message  *sarifText    `json:"message,omitempty"`
	}
	sarifPhysical struct {
		Artifact sarifArtifact `json:"artifactLocation"`
		Region   *sarifRegion  `json:"region,omitempty"`
	}
	sarifArtifact struct {
		URI         string     `json:"uri,omitempty"`
		Base        string     `json:"uriBaseId,omitempty"`
		Description *sarifText `json:"description,omitempty"`
	}
	sarifRegion struct {
		StartLine   int `json:"startLine"`
		StartColumn int `json:"startColumn"`
		EndLine     int `json:"endLine"`
		EndColumn   int `json:"endColumn"`
	}
)
