package templates

import (
	"errors"
	"fmt"
	"path"
	"reflect"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"text/template"

	"tallyfold/kit/diag"
	"tallyfold/kit/source"
)

// A Misfit is the error that a maker's own templates don't fit; it holds all that was
// found.
type Misfit struct{ Findings diag.List }

func (m *Misfit) Error() string {
	var told []string
	for _, f := range m.Findings {
		at := f.Where.Position()
		told = append(told, fmt.Sprintf("%s:%d:%d: %s; expected %s", f.Where.File.Name, at.Line, at.Column, f.Found, f.Expected))
	}
	return strings.Join(told, "\n")
}

// Misfits tells what a maker's own template asks for that values, or the words, don't
// have, and what in it can't be read at all. Of a shipped template there is nothing to
// tell. must are the fields that it may not leave out.
func (s Set) Misfits(name string, functions template.FuncMap, values any, words Words, must ...string) diag.List {
	file := s.Own(name)
	if file == nil {
		return nil
	}
	parsed, err := template.New(path.Base(name)).Funcs(functions).Parse(string(file.Text))
	if err != nil {
		return diag.List{cannotRead(file, name, functions, err)}
	}
	if parsed.Tree == nil || parsed.Root == nil {
		return nil
	}
	a := asking{file: file, name: name, words: words, used: map[string]bool{}, defined: parsed}
	a.variables = []variable{{"$", reflect.TypeOf(values)}}
	a.list(parsed.Root, reflect.TypeOf(values))
	for _, field := range must {
		if !a.used[field] {
			a.tell(file.Whole(), "{{."+field+"}} is missing", "{{."+field+"}} somewhere in it", "put {{."+field+"}} back; the original has it in its place")
		}
	}
	return a.found
}

// misfitting turns the error of filling in a maker's own template into a finding.
func (s Set) misfitting(name string, err error) error {
	file := s.Own(name)
	if file == nil {
		return fmt.Errorf("the template %s doesn't fit: %w", name, err)
	}
	line, column, what := placeOf(err)
	start := file.LineStart(line) + max(column, 0)
	f := misfit(file.Span(start, start+len(what)), name, fmt.Sprintf("%s cannot be filled in here", orThis(what)),
		"what the original asks for; tallyfold templates KIT "+name+" prints it", "take it out, or write it as in the original")
	return &Misfit{diag.List{f}}
}

func orThis(what string) string {
	if what == "" {
		return "this"
	}
	return what
}

// templateError is how the library begins its errors.
var templateError = regexp.MustCompile(`^template: [^:]*:(\d+)(?::(\d+))?: (?:executing ".*?" at <(.*?)>)?`)

// placeOf gives the line (from 1) and column (bytes, from 0) of a template's error, and
// what stands there.
func placeOf(err error) (line, column int, what string) {
	at := templateError.FindStringSubmatch(err.Error())
	if at == nil {
		return 1, 0, ""
	}
	line, _ = strconv.Atoi(at[1])
	column, _ = strconv.Atoi(at[2])
	return line, column, at[3]
}

var notDefined = regexp.MustCompile(`function "(.*?)" not defined`)

// templateSlips tell in plain words what the library says of a template that it can't read.
var templateSlips = []struct{ says, found, expected, todo string }{
	{"unclosed", "a {{ is not closed", "}} behind it", "put }} where it ends"},
	{"bad character U+007D", "a {{ is closed by one brace only", "}} behind it", "put }} where it ends"},
	{"missing value", "a {{range}}, {{with}} or {{if}} does not say of what", "a name behind it, such as {{with .Text}}", "say of what, or take it out"},
	{"unterminated", "a quotation mark or a note is not closed", "its other end", "close it"},
	{"unexpected EOF", "a {{range}}, {{with}} or {{if}} has no end", "{{end}} behind each of them", "put {{end}} where it ends"},
	{"unexpected {{end}}", "there is an {{end}} too many", "one {{end}} for each {{range}}, {{with}} and {{if}}", "take it out"},
	{"unexpected {{else}}", "there is an {{else}} outside of any {{if}}, {{with}} or {{range}}", "{{else}} between one of them and its {{end}}", "take it out"},
	{"undefined variable", "a name that begins with $ is used and was never given", "{{$name := …}} before it", "give it, or take it out"},
}

func cannotRead(file *source.File, name string, functions template.FuncMap, err error) diag.Finding {
	line, _, _ := placeOf(err)
	where := file.Span(file.LineStart(line), file.LineStart(line)+len(file.Line(line)))
	if i := strings.Index(file.Line(line), "{{"); i >= 0 {
		where = file.Span(where.Start+i, where.End)
	}
	if unknown := notDefined.FindStringSubmatch(err.Error()); unknown != nil {
		if i := strings.Index(where.Text(), unknown[1]); i >= 0 {
			where = where.Part(i, i+len(unknown[1]))
		}
		known := []string{"range", "with", "if", "else", "end"}
		for function := range functions {
			known = append(known, function)
		}
		slices.Sort(known)
		todo := "take it out"
		if near := diag.Nearest(unknown[1], known); near != "" {
			todo = "write " + near
		}
		return misfit(where, name, fmt.Sprintf("“%s” is nothing that a template can ask for", unknown[1]),
			"one of "+strings.Join(known, ", ")+", or a name with a point before it", todo)
	}
	for _, slip := range templateSlips {
		if strings.Contains(err.Error(), slip.says) {
			return misfit(where, name, slip.found, slip.expected, slip.todo)
		}
	}
	return misfit(where, name, "what stands in the braces cannot be read", "{{…}} as in the original; tallyfold templates KIT "+name+" prints it", "write it as in the original")
}

// Join gathers several errors of templates into one: misfits first told together, any
// other error as it is.
func Join(all ...error) error {
	var found diag.List
	for _, err := range all {
		var m *Misfit
		if errors.As(err, &m) {
			for _, f := range m.Findings {
				if !slices.ContainsFunc(found, func(other diag.Finding) bool { return sameMatter(other, f) }) {
					found = append(found, f)
				}
			}
		} else if err != nil {
			return err
		}
	}
	if len(found) == 0 {
		return nil
	}
	return &Misfit{found}
}

// sameMatter: each language has read the file anew, so places are compared by what they
// point at.
func sameMatter(a, b diag.Finding) bool {
	return a.Found == b.Found && a.Where.File.Name == b.Where.File.Name && a.Where.Start == b.Where.Start
}
