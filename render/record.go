package render

import (
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"strings"
	"time"

	"tallyfold/kit"
	"tallyfold/kit/diag"
	"tallyfold/kit/source"
	"tallyfold/templates"
)

// RecordMark is the first line of every record, by which one is known again.
const RecordMark = "<!-- A record written by tallyfold check. A later one may take its place. -->"

// A Record is what a shop keeps of one check of a kit: what was found, what was
// asked, what could not be checked and what was not looked at.
type Record struct {
	// Folder is the kit folder's own name.
	Folder string
	// Kit is nil where it could not be read.
	Kit *kit.Kit
	// AsOf is the day that the kit was judged as of.
	AsOf time.Time
	// Version of the program.
	Version  string
	Findings diag.List
	Accepted []diag.Accepted
	Rules    []Asked
}

// Asked is a rule that the kit was held against.
type Asked struct {
	Name, Title string
	// Reading: it is asked while the files are read, before the steps are followed.
	Reading bool
	// NotLookedAt tells what the rule passed over for want of a figure.
	NotLookedAt []string
}

// Markdown gives the record as a Markdown document (GFM: it has tables).
func (r Record) Markdown() ([]byte, error) {
	text, err := templates.Shipped().Execute("record.md", nil, r.view())
	return []byte(text), err
}

// recordView is what the template fills in, all of it Markdown.
type recordView struct {
	Mark, Title, Edition, Maker, Folder, AsOf, Version, Result, Followed string

	Files       []recordFile
	Severities  []recordSeverity
	Accepted    []recordAccepted
	Rules       []recordRule
	Unchecked   []string
	NotLookedAt []string
}

type (
	recordFile     struct{ Name, Sum string }
	recordSeverity struct {
		Title    string
		Findings []recordFinding
	}
	recordFinding struct {
		Rule, Place string
		Lines       []recordLine
	}
	recordLine     struct{ Label, Text string }
	recordAccepted struct{ Rule, About, Found, Because, Until string }
	recordRule     struct{ Name, Title, Answer string }
)

func (r Record) view() recordView {
	v := recordView{
		Mark: RecordMark, Title: plainWords(r.Folder), Edition: "not told", Folder: plainWords(r.Folder),
		AsOf: r.AsOf.Format(time.DateOnly), Version: plainWords(r.Version), Result: r.result(),
		Severities: r.severities(), Rules: r.answers(), Unchecked: r.unchecked(), NotLookedAt: r.notLookedAt(),
	}
	if k := r.Kit; k != nil {
		v.Title, v.Maker = plainWords(k.Name.Value), plainWords(k.Maker.Value)
		v.Edition = fmt.Sprint(max(1, k.Edition.Value))
		v.Files, v.Followed = filesOf(k), followed(k)
	}
	for _, a := range r.Accepted {
		v.Accepted = append(v.Accepted, recordAccepted{plainWords(a.Rule), plainWords(a.About), plainWords(a.Found), plainWords(a.Because), plainWords(a.Until)})
	}
	return v
}

// result counts the findings of each weight.
func (r Record) result() string {
	line := fmt.Sprintf("%d must fix, %d should fix, %d worth knowing, %d accepted",
		r.Findings.Count(diag.MustFix), r.Findings.Count(diag.ShouldFix), r.Findings.Count(diag.WorthKnowing), len(r.Accepted))
	if !r.wasFollowed() {
		line += "; the steps could not be followed"
	}
	return line
}

// wasFollowed says whether there were steps to hold the rules against.
func (r Record) wasFollowed() bool { return r.Kit != nil && len(r.Kit.Method.Steps()) > 0 }

// filesOf gives the text files of a kit that were read, each with the fingerprint
// by which that very file can be known again (SHA-256, FIPS 180-4).
func filesOf(k *kit.Kit) []recordFile {
	var files []recordFile
	seen := map[string]bool{}
	add := func(file *source.File) {
		if file == nil || seen[file.Name] {
			return
		}
		seen[file.Name] = true
		sum := sha256.Sum256(file.Text)
		files = append(files, recordFile{plainWords(file.Name), hex.EncodeToString(sum[:])})
	}
	add(k.File)
	add(k.Method.File)
	for _, trouble := range k.Troubles {
		add(trouble.Span.File)
	}
	for _, words := range k.Words {
		add(words.Span.File)
	}
	return files
}

// followed tells how much there was to follow.
func followed(k *kit.Kit) string {
	runs := "in one run"
	if n := len(k.Passes()); n > 1 {
		runs = fmt.Sprintf("in %d runs", n)
	}
	return fmt.Sprintf("%d steps %s, with %d components, %d household items and %d tools",
		len(k.Method.Steps()), runs, len(k.Components), len(k.Household), len(k.Tools))
}

func (r Record) severities() []recordSeverity {
	var all []recordSeverity
	for _, severity := range []diag.Severity{diag.MustFix, diag.ShouldFix, diag.WorthKnowing} {
		group := recordSeverity{Title: capital(severity.String())}
		for _, f := range r.Findings.Sorted() {
			if f.Severity == severity {
				group.Findings = append(group.Findings, recordedFinding(f))
			}
		}
		if len(group.Findings) > 0 {
			all = append(all, group)
		}
	}
	return all
}

func recordedFinding(f diag.Finding) recordFinding {
	told := recordFinding{Rule: plainWords(f.Rule), Place: placeWords(f.Where)}
	add := func(label, text string) {
		if text != "" {
			told.Lines = append(told.Lines, recordLine{label, plainWords(text)})
		}
	}
	add("Found", f.Found)
	add("Expected", f.Expected)
	for _, sum := range f.Sum {
		add("Sum", sum)
	}
	for _, remedy := range f.Remedies {
		text := remedy.Do
		if remedy.Then != "" {
			text += " (" + remedy.Then + ")"
		}
		add("Way out", text)
	}
	for _, also := range f.Also {
		told.Lines = append(told.Lines, recordLine{"See also", strings.TrimSuffix(placeWords(also.Where)+": "+plainWords(also.Note), ": ")})
	}
	return told
}

// placeWords tells a place in words: "kit.yaml, line 14".
func placeWords(at source.Span) string {
	switch {
	case !at.Known():
		return ""
	case at == at.File.Whole():
		return plainWords(at.File.Name)
	}
	return fmt.Sprintf("%s, line %d", plainWords(at.File.Name), at.Position().Line)
}

// plainWords writes a text on one line, so that Markdown reads exactly that text
// and nothing in it can turn the direction of reading.
func plainWords(text string) string {
	return escape(diag.Printable(strings.Join(strings.Fields(text), " ")))
}
