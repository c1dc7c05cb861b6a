package templates

import (
	"fmt"
	"reflect"
	"strings"
	"text/template"
	"text/template/parse"

	"tallyfold/kit/diag"
	"tallyfold/kit/source"
)

// asking follows a template without filling it in, and holds every name that it asks for
// against the values that it will be given, in the branches too that this kit would not
// take. A nil type is one that can't be told; nothing is said of it.
type asking struct {
	file      *source.File
	name      string
	words     Words
	variables []variable
	used      map[string]bool // fields asked for anywhere
	defined   *template.Template
	calls     int
	found     diag.List
}

type variable struct {
	name string
	is   reflect.Type
}

func (a *asking) tell(where source.Span, found, expected, todo string) {
	a.found = append(a.found, misfit(where, a.name, found, expected, todo))
}

func (a *asking) list(list *parse.ListNode, dot reflect.Type) {
	if list == nil {
		return
	}
	for _, node := range list.Nodes {
		switch node := node.(type) {
		case *parse.ActionNode:
			a.pipe(node.Pipe, dot, false)
		case *parse.IfNode:
			a.branch(&node.BranchNode, dot, func(reflect.Type) reflect.Type { return dot })
		case *parse.WithNode:
			a.branch(&node.BranchNode, dot, func(is reflect.Type) reflect.Type { return is })
		case *parse.RangeNode:
			a.branch(&node.BranchNode, dot, elementOf)
		case *parse.TemplateNode:
			a.call(node, dot)
		}
	}
}

// mostCalls bounds templates that call themselves.
const mostCalls = 20

// call follows a template that is named in the file, with what it is given.
func (a *asking) call(node *parse.TemplateNode, dot reflect.Type) {
	var given reflect.Type
	if node.Pipe != nil {
		given = a.pipe(node.Pipe, dot, false)
	}
	called := a.defined.Lookup(node.Name)
	if called == nil || called.Tree == nil || a.calls == mostCalls {
		return
	}
	kept := a.variables
	a.variables = []variable{{"$", given}}
	a.calls++
	a.list(called.Root, given)
	a.calls--
	a.variables = kept
}

// branch follows both ways; within gives what the point stands for in the first.
func (a *asking) branch(node *parse.BranchNode, dot reflect.Type, within func(reflect.Type) reflect.Type) {
	kept := len(a.variables)
	is := a.pipe(node.Pipe, dot, node.NodeType == parse.NodeRange)
	a.list(node.List, within(is))
	a.variables = a.variables[:kept]
	a.list(node.ElseList, dot)
}

func elementOf(is reflect.Type) reflect.Type {
	if is == nil {
		return nil
	}
	switch is.Kind() {
	case reflect.Slice, reflect.Array, reflect.Map:
		return is.Elem()
	}
	return nil
}

// pipe gives what a pipeline comes to, and keeps the names that it gives.
func (a *asking) pipe(pipe *parse.PipeNode, dot reflect.Type, ranging bool) reflect.Type {
	var is reflect.Type
	for i, command := range pipe.Cmds {
		is = a.command(command, dot)
		if i > 0 {
			is = nil
		}
	}
	for i, name := range pipe.Decl {
		given := is
		if ranging {
			given = elementOf(is)
			if len(pipe.Decl) == 2 && i == 0 {
				given = nil
			}
		}
		a.variables = append(a.variables, variable{name.Ident[0], given})
	}
	return is
}

func (a *asking) command(command *parse.CommandNode, dot reflect.Type) reflect.Type {
	var is reflect.Type
	for i, argument := range command.Args {
		one := a.argument(argument, dot)
		if i == 0 && len(command.Args) == 1 {
			is = one
		}
	}
	if function, ok := command.Args[0].(*parse.IdentifierNode); ok {
		a.wordAsked(function.Ident, command.Args[1:])
		return nil
	}
	return is
}

func (a *asking) argument(node parse.Node, dot reflect.Type) reflect.Type {
	switch node := node.(type) {
	case *parse.DotNode:
		return dot
	case *parse.FieldNode:
		return a.fields(node.Position(), dot, node.Ident)
	case *parse.VariableNode:
		return a.fields(node.Position(), a.variable(node.Ident[0]), node.Ident[1:])
	case *parse.ChainNode:
		return a.fields(node.Position(), a.argument(node.Node, dot), node.Field)
	case *parse.PipeNode:
		return a.pipe(node, dot, false)
	}
	return nil
}

func (a *asking) variable(name string) reflect.Type {
	for i := len(a.variables) - 1; i >= 0; i-- {
		if a.variables[i].name == name {
			return a.variables[i].is
		}
	}
	return nil
}

// fields goes down a chain of names.
func (a *asking) fields(at parse.Pos, is reflect.Type, names []string) reflect.Type {
	for _, name := range names {
		a.used[name] = true
		if is == nil {
			continue
		}
		for is.Kind() == reflect.Pointer {
			is = is.Elem()
		}
		if is.Kind() == reflect.Interface || is.Kind() == reflect.Map {
			return nil
		}
		if is.Kind() != reflect.Struct {
			a.noField(at, name, nil)
			return nil
		}
		field, ok := is.FieldByName(name)
		if !ok {
			a.noField(at, name, fieldsOf(is))
			return nil
		}
		is = field.Type
	}
	return is
}

func fieldsOf(is reflect.Type) []string {
	var names []string
	for i := range is.NumField() {
		if is.Field(i).IsExported() {
			names = append(names, is.Field(i).Name)
		}
	}
	return names
}

func (a *asking) noField(at parse.Pos, name string, known []string) {
	where := a.nameAt(at, "."+name)
	expected := "{{.}}: what stands here has no parts"
	todo := "take it out"
	if len(known) > 0 {
		expected = "one of ." + strings.Join(known, ", .")
		if near := diag.Nearest(name, known); near != "" {
			todo = "write ." + near
		}
	}
	a.tell(where, fmt.Sprintf("there is no .%s here", name), expected, todo)
}

// nameAt is the place of a text near to where the library says that a node stands.
func (a *asking) nameAt(at parse.Pos, name string) source.Span {
	text := string(a.file.Text)
	from := min(max(int(at)-len(name), 0), len(text))
	if i := strings.Index(text[from:], name); i >= 0 {
		return a.file.Span(from+i, from+i+len(name))
	}
	return a.file.Span(int(at), int(at)+1)
}

// wordAsked holds the name of a fixed word against the list.
func (a *asking) wordAsked(function string, arguments []parse.Node) {
	if function != "say" && function != "count" || len(arguments) == 0 {
		return
	}
	literal, ok := arguments[0].(*parse.StringNode)
	if !ok {
		return
	}
	name := literal.Text
	if function == "count" {
		name += ".other"
	}
	if a.words.says == nil || a.words.says[name] != "" {
		return
	}
	todo := "take it out"
	if near := diag.Nearest(name, a.words.Names()); near != "" {
		todo = "write " + strings.TrimSuffix(near, ".other")
	}
	a.tell(a.nameAt(literal.Position(), literal.Quoted), fmt.Sprintf("there is no word %q to say", literal.Text), "a name in words/"+SourceLanguage+".txt", todo)
}
