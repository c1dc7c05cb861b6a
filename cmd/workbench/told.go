package workbench

import (
	"fmt"
	"hash/fnv"
	"net/url"
	"strings"

	"tallyfold/kit/diag"
	"tallyfold/kit/source"
)

// A toldFinding is a finding as a page shows it.
type toldFinding struct {
	// ID is its name in the page, the same as long as it is the same finding.
	ID                    string
	Rule, Severity, Class string
	Found, Expected       string
	Sum                   []string
	// Place says where it is, in words; Go leads there.
	Place, Go string
	Remedies  []toldRemedy
	Also      []toldPlace
	// With is how many others, in what is always in sight, may come of the same cause.
	With int
}

type toldPlace struct{ Words, Go string }

type toldRemedy struct {
	// Do is what to do, as the finding says it; Says the same in the words of the pages.
	Do, Says, Then, Tried string
	// Number is its place among the finding's; Ready: it names an exact change.
	Number int
	Ready  bool
	// Changes are shown before they are made.
	Changes []toldChange
}

type toldChange struct{ Place, Old, New string }

// tell puts a finding into what a template shows.
func tell(kit string, f diag.Finding) toldFinding {
	told := toldFinding{
		ID: findingID(f), Rule: f.Rule, Severity: f.Severity.String(), Class: strings.ReplaceAll(f.Severity.String(), " ", "-"),
		Found: f.Found, Expected: withoutDestinations(f.Expected), Sum: f.Sum, Place: placeWords(f.Where), Go: placeAddress(kit, f.Where),
	}
	for i, r := range f.Remedies {
		told.Remedies = append(told.Remedies, toldRemedy{
			Do: r.Do, Says: withoutDestinations(r.Do), Then: r.Then, Tried: r.Tried, Number: i, Ready: len(r.Changes) > 0, Changes: tellChanges(r.Changes),
		})
	}
	for _, also := range f.Also {
		told.Also = append(told.Also, toldPlace{strings.TrimSpace(also.Note + " (" + placeWords(also.Where) + ")"), placeAddress(kit, also.Where)})
	}
	return told
}

// findingID names a finding by its rule, its words and its place.
func findingID(f diag.Finding) string {
	place := f.Where.Position()
	sum := fnv.New32a()
	fmt.Fprintf(sum, "%s\x1f%s\x1f%s\x1f%s\x1f%d\x1f%d", f.Rule, f.About, f.Found, placeWords(f.Where), place.Line, place.Column)
	return fmt.Sprintf("found-%08x", sum.Sum32())
}

func tellChanges(changes []diag.Change) []toldChange {
	var told []toldChange
	for _, c := range changes {
		told = append(told, toldChange{placeWords(c.Where), string(c.Where.File.Text[c.Where.Start:c.Where.End]), c.New})
	}
	return told
}

// placeWords tells a place as people count: file and line.
func placeWords(at source.Span) string {
	if !at.Known() || at.File == nil {
		return "the kit as a whole"
	}
	return fmt.Sprintf("%s, line %d", at.File.Name, at.Position().Line)
}

// placeAddress leads to a place: a card of the box, or the words in the editor.
func placeAddress(kit string, at source.Span) string {
	base := kitPath(kit)
	switch {
	case !at.Known() || at.File == nil:
		return base + "/box"
	case at.File.Name == "kit.yaml":
		if field := fieldAt(at); field != "" {
			return base + "/box#" + field
		}
		return base + "/box"
	case isText(at.File.Name):
		return fmt.Sprintf("%s/method?file=%s&at=%d", base, url.QueryEscape(at.File.Name), inEditor(at.File.Text, at.Start))
	}
	return base + "/box"
}

// sourceWords tell where a rule is from and how it is known: "ASTM F2058 (read)", and of what has
// no source that alone.
func sourceWords(from, known string) string {
	if from == "" {
		return known
	}
	return from + " (" + known + ")"
}

// some is so many of something: "1 sheet", "2 sheets".
func some(count int, one string) string {
	if count == 1 {
		return "1 " + one
	}
	return fmt.Sprintf("%d %ss", count, one)
}
