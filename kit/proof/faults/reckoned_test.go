package faults_test

import (
	"regexp"
	"slices"
	"strings"
)

// What the edits ought to bring, reckoned a second time and in the plainest way:
// from the words of kit.yaml and method.md, without the program's readers or ledger.

// An entry is one thing of kit.yaml: its key and all that stands under it.
type entry struct {
	place
	key string
}

// section gives the things under a key of the first column: components, tools …
func (k *cleanKit) section(name string) []entry {
	var all []entry
	for _, section := range k.find("kit.yaml", `(?m)^`+name+`:\n((?:(?: .*)?\n)+)`) {
		starts := regexp.MustCompile(`(?m)^  ([a-z][a-z-]*):`).FindAllStringSubmatchIndex(section.text(), -1)
		for i, at := range starts {
			to := section.to
			if i+1 < len(starts) {
				to = section.from + starts[i+1][0]
			}
			p := place{k, section.file, section.from + at[0], to}
			text := strings.TrimRight(p.text(), "\n ") + "\n"
			all = append(all, entry{place{k, p.file, p.from, p.from + len(text)}, section.text()[at[2]:at[3]]})
		}
	}
	return all
}

// named gives one thing of a section.
func (k *cleanKit) named(section, key string) (entry, bool) {
	for _, e := range k.section(section) {
		if e.key == key {
			return e, true
		}
	}
	return entry{}, false
}

// field is the value of a key of the thing, without quotation marks or comment.
func (e entry) field(name string) (place, bool) {
	return e.within(`(?:[{,]|\n)\s*` + name + `: "?([^",}#\n]*[^",}#\n ])`)
}

// head is the line that the key of the thing stands in.
func (e entry) head() place { return e.line() }

func (e entry) has(name string) bool { _, ok := e.field(name); return ok }

// amount is a field as a figure, the zero figure where it is not there.
func (e entry) amount(name string) figure {
	if at, ok := e.field(name); ok {
		is, _ := reads(at.text())
		return is
	}
	return figure{}
}

// tolerance is what stands behind “±” in the packed amount.
func (e entry) tolerance() figure {
	at, _ := e.field("packed")
	if _, after, ok := strings.Cut(at.text(), "±"); ok {
		is, _ := reads(after)
		return is
	}
	return figure{}
}

// A link is one of the method's links.
type link struct {
	place          // all of it
	words, address place
	kind, key      string
	step           int     // from 0
	times          float64 // how often it is done, over all runs and repeats
}

var linkPattern = regexp.MustCompile(`\[([^\]]*)\]\((([a-z]+):([^)?]*)[^)]*)\)`)

// linksIn are those of one file.
func (k *cleanKit) linksIn(file string) []link {
	var all []link
	for _, at := range linkPattern.FindAllStringSubmatchIndex(k.files[file], -1) {
		text := k.files[file]
		all = append(all, link{
			place: place{k, file, at[0], at[1]}, words: place{k, file, at[2], at[3]}, address: place{k, file, at[4], at[5]},
			kind: text[at[6]:at[7]], key: text[at[8]:at[9]],
			step: strings.Count(text[:at[0]], "\n## ") - 1 + strings.Count(text[:min(3, at[0])], "## "), times: 1,
		})
	}
	return all
}

// links are those of the method outside its headings, with how often each is done.
// Nobody changes the list.
func (k *cleanKit) links() []link {
	k.once.Do(func() { k.linked = k.readLinks() })
	return k.linked
}

func (k *cleanKit) readLinks() []link {
	var all []link
	again := map[int]float64{}
	read := k.linksIn("method.md")
	for _, l := range slices.Backward(read) {
		if strings.HasPrefix(l.line().text(), "#") {
			continue
		}
		l.times = (1 + again[l.step]) * k.passes(l)
		if l.kind == "again" {
			n, _ := reads(strings.Replace(l.words.text(), "the other ", "", 1))
			again[l.step] = n.number
		}
		all = append(all, l)
	}
	slices.Reverse(all)
	return all
}

// passes is how many runs come by a link: those that follow its part, and of those
// the ones that bind its role.
func (k *cleanKit) passes(l link) float64 {
	runs := k.find("kit.yaml", `(?m)^  - (\{name: .*parts: .*)$`)
	if len(runs) == 0 {
		return 1
	}
	titles := k.find("method.md", `(?m)^# (.*)$`)
	part := ""
	for _, title := range titles {
		if title.from < l.from {
			part = strings.ReplaceAll(strings.ToLower(title.text()), " ", "-")
		}
	}
	n := 0.0
	for _, run := range runs {
		if strings.Contains(run.text(), part) {
			n++
		}
	}
	if slices.Contains(k.roles(), l.key) {
		return 1 // each component bound to a role has a run of its own in the examples
	}
	return n
}

// roles are the words that runs bind components to.
func (k *cleanKit) roles() []string {
	var all []string
	for _, with := range k.find("kit.yaml", `with: \{([^}]*)\}`) {
		for _, pair := range strings.Split(with.text(), ", ") {
			role, _, _ := strings.Cut(pair, ": ")
			all = append(all, role)
		}
	}
	return all
}

// isBound says whether a role stands for a component in some run.
func (k *cleanKit) isBound(role, component string) bool {
	for _, with := range k.find("kit.yaml", `with: \{([^}]*)\}`) {
		if slices.Contains(strings.Split(with.text(), ", "), role+": "+component) {
			return true
		}
	}
	return false
}

// uses are the links that take, use or place a component.
func (k *cleanKit) uses(component string) []link {
	var all []link
	for _, l := range k.links() {
		isUse := l.kind == "take" || l.kind == "use" || l.kind == "place"
		if isUse && (l.key == component || k.isBound(l.key, component)) {
			all = append(all, l)
		}
	}
	return all
}

// isExact says whether each of the uses tells a figure, so that the pack can run out.
func (k *cleanKit) isExact(component string) bool {
	for _, l := range k.uses(component) {
		if _, ok := reads(l.words.text()); !ok || strings.HasPrefix(l.words.text(), "half") || strings.HasPrefix(l.words.text(), "all") {
			return false
		}
	}
	return len(k.uses(component)) > 0
}

// used is what the uses take in all, in the kind of unit that is packed.
func (k *cleanKit) used(c entry) figure {
	total := c.amount("packed")
	if !k.isExact(c.key) {
		return total // all of it, or half and then the rest
	}
	total.number = 0
	for _, l := range k.uses(c.key) {
		total.number += k.taken(c, l)
	}
	return total
}

// taken is what one use takes over all runs.
func (k *cleanKit) taken(c entry, l link) float64 {
	is, _ := reads(l.words.text())
	if each, ok := l.words.within(`^\d+ lengths of (\d+ cm)`); ok {
		length, _ := reads(each.text())
		return is.number * (length.number + 2*c.amount("allowance per end").number) * l.times
	}
	if l.kind == "place" {
		is.number *= k.containersInRun()
	}
	if is.unit == "mL" && c.amount("packed").unit == "g" {
		is.number *= c.amount("density").number
	}
	return is.number * l.times
}

// containersInRun is how many containers the fill of one run speaks of.
func (k *cleanKit) containersInRun() float64 {
	for _, l := range k.links() {
		if l.kind == "fill" {
			n, _ := reads(l.words.text()[strings.Index(l.words.text(), "each of"):])
			return n.number
		}
	}
	return 0
}

// isKept says whether a link says what is done with what is left of a thing.
func (k *cleanKit) isKept(key string) bool {
	return slices.ContainsFunc(k.links(), func(l link) bool { return l.kind == "left" && l.key == key })
}

// sum adds up figures of one unit.
func sum(all ...figure) figure {
	total := figure{unit: all[0].unit}
	for _, f := range all {
		total.number += f.number
	}
	return total
}

func (f figure) minus(g figure) figure         { return figure{f.number - g.number, f.unit} }
func (f figure) times(n float64) figure        { return figure{f.number * n, f.unit} }
func (f figure) isOver(g figure) bool          { return f.number > g.number*(1+1e-9) }
func (f figure) percentOf(whole figure) figure { return figure{100 * f.number / whole.number, "%"} }

// handsOn is the work of all steps; clock is that with the waits, where a wait with
// a name runs on until the link that says it is over.
func (k *cleanKit) handsOn() figure {
	total := figure{unit: "min"}
	for _, l := range k.links() {
		if length, ok := reads(l.words.text()); ok && l.kind == "work" {
			total.number += length.number * l.times
		}
	}
	return total
}

// clock adds up one run after the other. Every example's `after` follows the last
// run that starts its wait, so only that one can make anybody wait.
func (k *cleanKit) clock() figure {
	now := k.handsOn()
	links := k.links()
	for i, l := range links {
		length, _ := reads(l.words.text())
		if l.kind != "wait" {
			continue
		}
		after := slices.IndexFunc(links, func(m link) bool { return m.kind == "after" && m.key == l.key })
		if l.key == "" || after < 0 {
			now.number += length.number * l.times
			continue
		}
		for _, beside := range links[i:after] {
			if spent, _ := reads(beside.words.text()); beside.kind == "work" && beside.times == 1 || beside.kind == "wait" && beside.key == "" {
				length.number -= spent.number
			}
		}
		now.number += max(0, length.number)
	}
	return now
}
