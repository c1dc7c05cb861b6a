package diag

import (
	"encoding/json"
	"io"

	"tallyfold/kit/source"
)

// WriteJSON writes findings as one JSON array, worst first, with the same fields
// that WriteText prints and the places in bytes besides.
func WriteJSON(w io.Writer, list List) error {
	encoder := json.NewEncoder(w)
	encoder.SetIndent("", "  ")
	encoder.SetEscapeHTML(false)
	return encoder.Encode(list.Plain())
}

// PlainFinding is a finding as programs read it.
type PlainFinding struct {
	Rule     string        `json:"rule"`
	Severity string        `json:"severity"`
	Place    *PlainPlace   `json:"place,omitempty"`
	About    string        `json:"about,omitempty"`
	Found    string        `json:"found"`
	Expected string        `json:"expected,omitempty"`
	Sum      []string      `json:"sum,omitempty"`
	Remedies []PlainRemedy `json:"remedies,omitempty"`
	Also     []PlainPlace  `json:"also,omitempty"`
	Cause    string        `json:"cause,omitempty"`
}

// PlainRemedy is a way out as programs read it.
type PlainRemedy struct {
	Do      string        `json:"do"`
	Then    string        `json:"then,omitempty"`
	Tried   string        `json:"tried,omitempty"`
	Changes []PlainChange `json:"changes,omitempty"`
}

// PlainChange is one change of a file as programs read it.
type PlainChange struct {
	Place PlainPlace `json:"place"`
	New   string     `json:"new"`
}

// PlainPlace is a place as programs read it: line and column from 1, the column
// in characters; start and end in bytes from the head of the file, end excluded.
type PlainPlace struct {
	File   string `json:"file"`
	Line   int    `json:"line"`
	Column int    `json:"column"`
	Start  int    `json:"start"`
	End    int    `json:"end"`
	Note   string `json:"note,omitempty"`
}

// Plain gives the findings, worst first, in the form that WriteJSON writes.
func (l List) Plain() []PlainFinding {
	plain := []PlainFinding{}
	for _, f := range l.Sorted() {
		plain = append(plain, f.plain())
	}
	return plain
}

func (f Finding) plain() PlainFinding {
	plain := PlainFinding{
		Rule: f.Rule, Severity: f.Severity.String(), About: f.About,
		Found: f.Found, Expected: f.Expected, Sum: f.Sum, Cause: f.Cause,
	}
	if f.Where.Known() {
		place := plainPlace(f.Where, "")
		plain.Place = &place
	}
	for _, remedy := range f.Remedies {
		plain.Remedies = append(plain.Remedies, remedy.plain())
	}
	for _, also := range f.Also {
		if also.Where.Known() {
			plain.Also = append(plain.Also, plainPlace(also.Where, also.Note))
		}
	}
	return plain
}

func (r Remedy) plain() PlainRemedy {
	plain := PlainRemedy{Do: r.Do, Then: r.Then, Tried: r.Tried}
	for _, change := range r.Changes {
		plain.Changes = append(plain.Changes, PlainChange{plainPlace(change.Where, ""), change.New})
	}
	return plain
}

func plainPlace(at source.Span, note string) PlainPlace {
	position := at.Position()
	return PlainPlace{
		File: at.File.Name, Line: position.Line, Column: position.Column,
		Start: at.Start, End: at.End, Note: note,
	}
}
