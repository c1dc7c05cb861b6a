package load

import (
	"fmt"
	"strings"

	"tallyfold/kit/diag"
	"tallyfold/kit/quantity"
	"tallyfold/kit/source"
)

// A reader goes through the tree once and notes everything it could not read.
type reader struct {
	doc     *document
	amounts quantity.Reader
	found   diag.List
	// sectionOf tells under which key each thing stands.
	sectionOf map[string]string
	// sections gives all there are, to say where a key belongs; made only when asked for.
	sections func() []Section
	// about is the key of the component, tool or other thing being read.
	about string
	// guesses is how many more times a near name is looked for.
	guesses int
}

// mostGuesses is how often a near name is looked for in one file. Beyond that
// the file is so far from a kit that no guess helps, and guessing would take long.
const mostGuesses = 200

// report notes a finding that must be fixed, and hands it out for additions.
func (r *reader) report(rule string, where source.Span, found, expected string, orders ...string) *diag.Finding {
	r.found = append(r.found, diag.Finding{Rule: rule, Severity: diag.MustFix, Where: where, About: r.about,
		Found: found, Expected: expected, Remedies: diag.Fix(orders...)})
	return &r.found[len(r.found)-1]
}

// nearest is Nearest within the bound of mostGuesses.
func (r *reader) nearest(word string, known []string) string {
	if r.guesses--; r.guesses < 0 {
		return ""
	}
	return diag.Nearest(word, known)
}

// wrong reports a value of the wrong form.
func (r *reader) wrong(v value, key Key) {
	r.report(WrongType, v.span, v.told(), key.Expected, fmt.Sprintf("write it like “%s: %s”", key.Name, key.Example))
}

// empty reports a key with nothing after it.
func (r *reader) empty(e entry, key Key) {
	r.report(MissingField, e.key.span, "nothing after “"+key.Name+":”", key.Expected,
		fmt.Sprintf("write it like “%s: %s”, or take the line out", key.Name, key.Example))
}

// missing reports a key that must be there.
func (r *reader) missing(owner source.Span, section string, key Key) {
	if r.about != "" && r.doc.root != nil && owner.Text() == r.about {
		section = r.about
	}
	named := "“" + section + "”"
	if section == "kit" {
		named = "the kit"
	}
	r.report(MissingField, owner, named+" has no “"+key.Name+":”", key.Expected, fmt.Sprintf("add a line like “%s: %s”", key.Name, key.Example))
}

// unknownField reports a key that means nothing in this section.
func (r *reader) unknownField(e entry, section string, known []string, inBrackets bool) {
	name := e.key.oneLine()
	found := quote(name) + ", which means nothing in “" + section + "”"
	expected := "one of " + list(known, "or")
	if inBrackets && e.value.nothing() {
		r.report(UnknownField, e.key.span, found, expected,
			"a comma between { } ends a value: put the value before it between quotation marks if this belongs to it",
			"or take it out")
		return
	}
	if near := r.nearest(name, known); near != "" {
		r.report(UnknownField, e.key.span, found, expected+"; did you mean “"+near+"”?", "write “"+near+":” for “"+short(name)+":”")
		return
	}
	if home := r.sectionsWith(name); len(home) > 0 {
		r.report(UnknownField, e.key.span, found, expected+"; “"+name+"” belongs in "+list(home, "or"), "move it there")
		return
	}
	r.report(UnknownField, e.key.span, found, expected, "take it out, or put “#” before it to keep it as a note to yourself")
}

// sectionsWith names the sections that have a key of this name.
func (r *reader) sectionsWith(name string) []string {
	var home []string
	for _, s := range r.sections() {
		for _, k := range s.Keys {
			if k.Name == name {
				home = append(home, "“"+s.Name+"”")
			}
		}
	}
	return home
}

func short(text string) string { return strings.Trim(quote(text), "“”") }
