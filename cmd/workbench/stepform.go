package workbench

import (
	"cmp"
	"slices"
	"strings"

	"tallyfold/instructions"
	"tallyfold/kit"
	"tallyfold/kit/load"
	"tallyfold/kit/proof"
)

// A linkForm is one link of a step as a row of a form: what the words are, of what, and what
// else the link says. Where a thing is not among the choices, it stands there all the same.
type linkForm struct {
	// Kind and Target are those of the destination; Told is what people call them.
	Kind, KindTold, Target, TargetTold string
	Words                              string
	// FreshName is one that a wait without a name can have, so that later steps can tell
	// that it is over; "" for other links.
	FreshName string
	// Ways are what else can be said of such a link, each with a choice; Rest is what the
	// destination says besides, as it is written.
	Ways []wayView
	Rest string
	// From and To are places in the editor, Whole what stands there.
	From, To int
	Whole    string
	Does     []string
}

// A wayView is one setting of a link: "into" with the key of a vessel.
type wayView struct {
	Name, Label, Value, Told string
	// Fates: what becomes of a rest is chosen, else a vessel is.
	Fates []wayChoice
}

type wayChoice struct{ Value, Told string }

// waysOf are the settings that go with a kind of link; all that is set is shown besides.
var waysOf = map[kit.Kind][]string{kit.Take: {"into"}, kit.Move: {"from", "into"}, kit.Place: {"into"}, kit.Left: {"as"}, kit.ToStep: {"in"}}

var wayLabels = map[string]string{"into": "into", "from": "out of", "in": "worked in", "as": "is"}

// fateWords tell what can become of a rest where the word of `?as=` does not say it.
var fateWords = map[string]string{"discarded": "thrown away", "poured-away": "poured away", "dried-out": "dried out", "trimmed": "trimmed off", "rinsed-away": "rinsed away"}

// fatesOf are what can become of a rest, the present value first where it is none of the usual.
func fatesOf(value, told string) []wayChoice {
	var all []wayChoice
	for _, as := range instructions.Fates() {
		all = append(all, wayChoice{as, cmp.Or(fateWords[as], as)})
	}
	if !slices.Contains(instructions.Fates(), value) {
		all = append([]wayChoice{{value, told}}, all...)
	}
	return all
}

// formOf puts a link into a row.
func formOf(k *kit.Kit, link linkMark, text []byte) linkForm {
	kindAndTarget, settings, _ := strings.Cut(link.Destination, "?")
	name, target, _ := strings.Cut(kindAndTarget, ":")
	kind, _ := kindNamed(kit.Kind(name))
	row := linkForm{Kind: name, KindTold: kind.Pick, Target: target, TargetTold: k.Called(target), From: link.From, To: link.To, Does: link.Does[1:]}
	row.Whole, row.Words = inText(text, link.From, link.To), strings.ReplaceAll(inText(text, link.WordsFrom, link.WordsTo), "\n", " ")
	set := map[string]string{}
	var rest []string
	for setting := range strings.SplitSeq(settings, "&") {
		name, value, ok := strings.Cut(setting, "=")
		if ok && wayLabels[name] != "" {
			set[name] = value
		} else if setting != "" {
			rest = append(rest, setting)
		}
	}
	row.Rest = strings.Join(rest, "&")
	for _, name := range []string{"from", "into", "in", "as"} {
		if value, given := set[name]; given || slices.Contains(waysOf[kind.Kind], name) {
			row.Ways = append(row.Ways, wayOf(k, name, value))
		}
	}
	return row
}

func wayOf(k *kit.Kit, name, value string) wayView {
	way := wayView{Name: name, Label: wayLabels[name], Value: value, Told: k.Called(value)}
	if name == "as" {
		way.Fates = fatesOf(value, way.Told)
	}
	return way
}

// inText is what stands between two places of the editor.
func inText(text []byte, from, to int) string {
	return string(shown(text[inFile(text, from):inFile(text, to)]))
}

// formRows are the links of a step in their order, that of its heading first.
func formRows(p *proof.Proof, step *kit.Step) []linkForm {
	text := step.Span.File.Text
	var rows []linkForm
	if heading, ok := headingLink(step.Span); ok {
		rows = append(rows, formOf(p.Kit, heading, text))
	}
	for _, o := range step.Operations {
		row := formOf(p.Kit, linkAt(p, o), text)
		if o.Kind == kit.Wait && o.Target == "" {
			row.FreshName = freshWait(p.Kit, step)
		}
		rows = append(rows, row)
	}
	return rows
}

// freshWait is a name for a wait in a step that nothing in the kit has.
func freshWait(k *kit.Kit, step *kit.Step) string {
	taken := keysTaken(k)
	return load.FreeKey(step.Title+" wait", func(key string) bool { return taken[key] || k.Method.Step(key) != nil })
}

// keysTaken are the keys that things, steps and waits have been given. Of a kit that cannot
// be read nothing is known.
func keysTaken(k *kit.Kit) map[string]bool {
	taken := map[string]bool{}
	if k == nil {
		return taken
	}
	for _, named := range append(namesOf(k), destinationsNamed(k)...) {
		taken[named.Key] = true
	}
	return taken
}

// destinationsNamed are steps, help, waits and pictures, which words can lead to or be about.
func destinationsNamed(k *kit.Kit) []nameView {
	var all []nameView
	for _, step := range k.Method.Steps() {
		if step.Named {
			all = append(all, nameView{step.ID, step.Title, "step", string(kit.ToStep), true})
		}
		for _, o := range step.Operations {
			if o.Kind == kit.Wait && o.Target != "" {
				all = append(all, nameView{o.Target, o.Text + " in “" + step.Title + "”", "wait", string(kit.After), true})
			}
		}
	}
	for _, t := range k.Troubles {
		all = append(all, nameView{t.ID, t.Title, "help", string(kit.ToHelp), true})
	}
	for _, picture := range k.Pictures {
		all = append(all, nameView{picture.Name, picture.Name, "picture", string(kit.ShowPicture), true})
	}
	return all
}
