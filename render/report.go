package render

import (
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"strings"
	"time"

	"tallyfold/kit"
	"tallyfold/kit/diag"
	"tallyfold/kit/hazard"
	"tallyfold/kit/ledger"
	"tallyfold/kit/source"
	"tallyfold/templates"
)

// ReportMark is the first line of every report, by which one is known again.
const ReportMark = "<!-- A report written by tallyfold check. A later one may take its place. -->"

// A Report is what a shop keeps of one check of a kit: what was found, what was
// asked, what could not be checked and what was not looked at.
type Report struct {
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
	// Ledger of the kit, nil where its steps could not be followed.
	Ledger *ledger.Ledger
}

// Asked is a rule that the kit was held against.
type Asked struct {
	Name, Title string
	// Reading: it is asked while the files are read, before the steps are followed.
	Reading bool
	// NotLookedAt tells what the rule passed over for want of a figure.
	NotLookedAt []string
}

// Markdown gives the report as a Markdown document (GFM: it has tables).
func (r Report) Markdown() ([]byte, error) {
	text, err := templates.Shipped().Execute("report.md", nil, r.view())
	return []byte(text), err
}

// reportView is what the template fills in, all of it Markdown.
type reportView struct {
	Mark, Title, Edition, Maker, Folder, AsOf, Version, Result, Followed string

	Files       []reportFile
	Severities  []reportSeverity
	Accepted    []reportAccepted
	Rules       []reportRule
	Hazards     []reportHazard
	Markets     []reportMarket
	Unchecked   []string
	NotLookedAt []string
}

type (
	reportFile     struct{ Name, Sum string }
	reportSeverity struct {
		Title    string
		Findings []reportFinding
	}
	reportFinding struct {
		Rule, Place string
		Lines       []reportLine
	}
	reportLine     struct{ Label, Text string }
	reportAccepted struct{ Rule, About, Found, Because, Until string }
	reportRule     struct{ Name, Title, Answer string }
	reportHazard   struct{ Where, Hazard, By, Caution, Source string }
)

func (r Report) view() reportView {
	v := reportView{
		Mark: ReportMark, Title: plainWords(r.Folder), Edition: "not told", Folder: plainWords(r.Folder),
		AsOf: r.AsOf.Format(time.DateOnly), Version: plainWords(r.Version), Result: r.result(),
		Severities: r.severities(), Rules: r.answers(), Unchecked: r.unchecked(), NotLookedAt: r.notLookedAt(),
	}
	if k := r.Kit; k != nil {
		v.Title, v.Maker = plainWords(k.Name.Value), plainWords(k.Maker.Value)
		v.Edition = fmt.Sprint(max(1, k.Edition.Value))
		v.Files, v.Followed = filesOf(k), followed(k)
		v.Hazards, v.Markets = r.hazards(), r.markets()
	}
	for _, a := range r.Accepted {
		v.Accepted = append(v.Accepted, reportAccepted{plainWords(a.Rule), plainWords(a.About), plainWords(a.Found), plainWords(a.Because), plainWords(a.Until)})
	}
	return v
}

// hazards lists each action that can hurt someone, and the caution that speaks of it.
func (r Report) hazards() []reportHazard {
	if r.Ledger == nil {
		return nil
	}
	var all []reportHazard
	for _, a := range hazard.In(r.Kit, r.Ledger) {
		row := reportHazard{
			Where: placeWords(a.Where), Hazard: plainWords(a.Hazard.ID), By: plainWords(a.By),
			Source: plainWords(strings.TrimPrefix(a.Hazard.Source+", "+a.Hazard.Known, ", ")),
		}
		switch {
		case a.Answered():
			row.Caution = "the maker's, " + string(a.Place)
		default:
			row.Caution = "the program's own, before it in the step"
		}
		all = append(all, row)
	}
	return all
}

// result counts the findings of each weight.
func (r Report) result() string {
	line := fmt.Sprintf("%d must fix, %d should fix, %d worth knowing, %d accepted",
		r.Findings.Count(diag.MustFix), r.Findings.Count(diag.ShouldFix), r.Findings.Count(diag.WorthKnowing), len(r.Accepted))
	if !r.wasFollowed() {
		line += "; the steps could not be followed"
	}
	return line
}

// wasFollowed says whether there were steps to hold the rules against.
func (r Report) wasFollowed() bool { return r.Kit != nil && len(r.Kit.Method.Steps()) > 0 }

// filesOf gives the text files of a kit that were read, each with the fingerprint
// by which that very file can be known again (SHA-256, FIPS 180-4).
func filesOf(k *kit.Kit) []reportFile {
	var files []reportFile
	seen := map[string]bool{}
	add := func(file *source.File) {
		if file == nil || seen[file.Name] {
			return
		}
		seen[file.Name] = true
		sum := sha256.Sum256(file.Text)
		files = append(files, reportFile{plainWords(file.Name), hex.EncodeToString(sum[:])})
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
	return howMany(len(k.Method.Steps()), "step") + " in " + howMany(len(k.Passes()), "run") + ", with " +
		howMany(len(k.Components), "component") + ", " + howMany(len(k.Household), "household item") + " and " + howMany(len(k.Tools), "tool")
}

func howMany(n int, thing string) string {
	if n == 1 {
		return "1 " + thing
	}
	return fmt.Sprintf("%d %ss", n, thing)
}

func (r Report) severities() []reportSeverity {
	var all []reportSeverity
	for _, severity := range []diag.Severity{diag.MustFix, diag.ShouldFix, diag.WorthKnowing} {
		group := reportSeverity{Title: capital(severity.String())}
		for _, f := range r.Findings.Sorted() {
			if f.Severity == severity {
				group.Findings = append(group.Findings, reportedFinding(f))
			}
		}
		if len(group.Findings) > 0 {
			all = append(all, group)
		}
	}
	return all
}

func reportedFinding(f diag.Finding) reportFinding {
	told := reportFinding{Rule: plainWords(f.Rule), Place: placeWords(f.Where)}
	add := func(label, text string) {
		if text != "" {
			told.Lines = append(told.Lines, reportLine{label, plainWords(text)})
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
		told.Lines = append(told.Lines, reportLine{"See also", strings.TrimSuffix(placeWords(also.Where)+": "+plainWords(also.Note), ": ")})
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
