package instructions

import (
	"strings"

	"tallyfold/kit"
	"tallyfold/kit/diag"
	"tallyfold/kit/quantity"
)

// checkTarget says whether a name in a destination is one that may stand there:
// known, of the right sort, and bound in every run that comes by. use is the
// word before it ("take:", "?into=").
func (r *reader) checkTarget(use string, name word, wanted thing, part *kit.Part) {
	sorts, known := r.names.sortOf(name.text)
	switch {
	case !known:
		r.unknown(use, name, wanted)
	case sorts&wanted == 0:
		r.wrongSort(use, name, sorts, wanted)
	case r.names.isRole(name.text):
		r.checkRole(name, part)
	}
}

func (r *reader) unknown(use string, name word, wanted thing) {
	expected := "after " + use + " the key of " + article(wanted.String())
	var remedies []string
	if near := r.names.nearest(name.text, wanted); near != "" {
		remedies = append(remedies, "write "+use+near+", if that is meant")
	} else if keys := r.names.of(wanted); len(keys) > 0 {
		expected += " (" + some(keys) + ")"
	}
	remedies = append(remedies, "add "+quoted(name.text)+" to kit.yaml")
	r.say(unknownTarget, name.span, name.text, quoted(name.text)+" is no name in kit.yaml", expected, remedies...)
}

// some tells a handful of names and that there are more.
func some(keys []string) string {
	const handful = 8
	if len(keys) > handful {
		return strings.Join(keys[:handful], ", ") + " …"
	}
	return strings.Join(keys, ", ")
}

func (r *reader) wrongSort(use string, name word, is, wanted thing) {
	found := quoted(name.text) + " is " + article((is &^ container).String())
	if called := r.kit.Called(name.text); called != name.text {
		found += " (" + called + ")"
	}
	var remedies []string
	if wanted == container && is&component != 0 {
		remedies = append(remedies, "give "+name.text+" a container in kit.yaml: how much it holds and what stays free under its rim")
	}
	for _, kind := range []kit.Kind{kit.WithTool, kit.WithVessel, kit.Take, kit.Move} {
		m := meaningOf(string(kind))
		if m.sorts&is != 0 && use != string(kind)+":" {
			remedies = append(remedies, "write "+string(kind)+":"+name.text+", which is for "+m.does)
		}
	}
	remedies = append(remedies, "name "+article(wanted.String())+" instead")
	r.say(unknownTarget, name.span, name.text, found, "after "+use+" "+article(wanted.String()), remedies...)
}

// checkRole finds runs that follow the part and bind no component to the role.
// Without a part, in trouble.md, that is all runs. It tells them once, at
// the first place that needs the role.
func (r *reader) checkRole(role word, part *kit.Part) {
	asked := roleIn{role.text, part}
	if r.asked[asked] {
		return
	}
	r.asked[asked] = true
	var without []*kit.Run
	for _, run := range r.kit.Passes() {
		if part != nil && !run.Follows(part) {
			continue
		}
		if _, bound := run.Component(role.text); !bound {
			without = append(without, run)
		}
	}
	if len(without) > 0 {
		r.unbound(role, without)
	}
}

// unbound tells which runs leave a role without a component, and what other runs
// give it.
func (r *reader) unbound(role word, runs []*kit.Run) {
	needs := "the help"
	if r.step != nil {
		needs = "step " + quantity.Whole(int64(r.step.Number)).String()
	}
	names := make([]string, len(runs))
	for i, run := range runs {
		names[i] = quoted(run.Name.Value)
	}
	which, gives := "the run "+names[0], " gives"
	if len(runs) > 1 {
		which, gives = "the runs "+strings.Join(names[:len(names)-1], ", ")+" and "+names[len(names)-1], " give"
	}
	f := finding(roleUnbound, role.span, role.text,
		needs+" needs "+quoted(role.text)+", and "+which+gives+" no component for it",
		"a component for "+quoted(role.text)+" in every run that goes through it",
		"add “"+role.text+": …” to “with” of "+which+" in kit.yaml",
		"put the step into a part that only the other runs follow")
	f.Cause = "role " + role.text
	for _, run := range runs {
		f.Also = append(f.Also, diag.Place{Where: run.Name.Span, Note: "the run " + quoted(run.Name.Value)})
	}
	for _, run := range r.kit.Runs {
		if id, bound := run.Component(role.text); bound {
			f.Also = append(f.Also, diag.Place{Where: run.Name.Span, Note: "the run " + quoted(run.Name.Value) + ", where it is " + r.kit.Called(id)})
		}
	}
	r.found = append(r.found, f)
}

// roleIn is a role needed in a part.
type roleIn struct {
	role string
	part *kit.Part
}
