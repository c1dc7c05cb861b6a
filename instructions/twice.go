package instructions

import (
	"tallyfold/kit"
	"tallyfold/kit/diag"
	"tallyfold/kit/source"
)

// checkTwice finds names that stand for two things: steps, and named steps and
// waits that are called like something in kit.yaml or like each other.
func (r *reader) checkTwice(method kit.Method) {
	steps := map[string]source.Span{}
	for _, step := range method.Steps() {
		if first, there := steps[step.ID]; there {
			r.sayTwice(duplicateStep, step.Span, first, "step", step.ID,
				"give this one a name of its own: ## ["+step.Title+"](step:"+step.ID+"-2)")
			continue
		}
		steps[step.ID] = step.Span
		if step.Named {
			r.notInKit(step.Span, "step", step.ID)
		}
	}
	waits := map[string]source.Span{}
	for _, step := range method.Steps() {
		for _, operation := range step.Operations {
			if operation.Kind == kit.Wait && operation.Target != "" && !operation.Aside {
				r.waitTwice(operation, waits, steps)
			}
		}
	}
}

// headingTwice finds a heading that makes the name of an earlier one.
func (r *reader) headingTwice(name string, where source.Span, what, remedy string) {
	first, there := r.headings[name]
	switch {
	case name == "":
	case there:
		r.sayTwice(duplicateHeading, where, first, what, name, remedy)
	default:
		r.headings[name] = where
	}
}

func (r *reader) waitTwice(operation *kit.Operation, waits, steps map[string]source.Span) {
	name, where := operation.Target, operation.TargetSpan
	if first, there := waits[name]; there {
		r.sayTwice(duplicateName, where, first, "wait", name, "give this wait a name of its own")
		return
	}
	waits[name] = where
	if step, there := steps[name]; there {
		r.sayTwice(duplicateName, where, step, "step", name, "give this wait a name of its own")
		return
	}
	r.notInKit(where, "wait", name)
}

func (r *reader) notInKit(where source.Span, what, name string) {
	if is := r.names.sorts[name]; is != 0 && r.translates == nil { // a translation has the names of the method
		r.say(duplicateName, where, name, "the "+what+" is called "+quoted(name)+", as is "+article((is&^container).String())+" in kit.yaml",
			"names that stand for one thing only", "give the "+what+" another name")
	}
}

func (r *reader) sayTwice(rule string, where, first source.Span, what, name, remedy string) {
	f := finding(rule, where, name, "a second "+what+" called "+quoted(name), "names that stand for one thing only", remedy)
	if what == "step" && rule == duplicateName {
		f.Found = "a wait called like the step " + quoted(name)
	}
	f.Also = []diag.Place{{Where: first, Note: "the first " + what + " of that name"}}
	r.found = append(r.found, f)
}
