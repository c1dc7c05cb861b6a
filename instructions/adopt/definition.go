package adopt

import (
	"strconv"
	"strings"
)

// Definition writes kit.yaml: what was recognised, each line with how it came about.
// What is unknown is told as unknown and left out.
func (a *Adoption) Definition() []byte {
	var b strings.Builder
	line := func(words ...string) { b.WriteString(strings.Join(words, "") + "\n") }
	line("# Made from ", remark(a.File.Name), ". Behind # stands how each line came about, and what is unknown.")
	switch {
	case a.options.Name != "":
		line("name: ", quote(a.Title), "  # as you said")
	case a.Title != "":
		line("name: ", quote(a.Title), "  # the first line of the leaflet")
	default:
		line("# name: unknown; the leaflet has no first line that reads like one")
	}
	if a.Makes.Said != "" {
		line("makes: ", quote(a.Makes.Said), "  # ", a.placeOf(a.Makes.Start), ", “", shown(a.text[a.Makes.Start:a.Makes.End]), "”")
	} else {
		line("# makes: unknown; say how many pieces, such as 6 jars")
	}
	if a.options.Told {
		line("kitchen: ", a.options.Kitchen.String(), "  # as you said")
	}
	a.things(line, "components", false)
	a.things(line, "household", true)
	a.tools(line)
	return []byte(b.String())
}

func (a *Adoption) things(line func(...string), section string, household bool) {
	any := false
	for _, t := range a.Things {
		if t.Household != household {
			continue
		}
		if !any {
			line(section, ":")
			any = true
		}
		line("  ", t.Key, ":  # ", remark(t.Why))
		line("    name: ", quote(t.Name))
		if len(t.Also) > 0 {
			var also []string
			for _, name := range t.Also {
				also = append(also, quote(name))
			}
			line("    also called: [", strings.Join(also, ", "), "]")
		}
		switch {
		case household:
		case t.Packed != "":
			line("    packed: ", quote(t.Packed))
		default:
			line("    # packed: unknown")
		}
	}
	if !any && section == "components" {
		line("components: {}  # none was recognised")
	}
}

func (a *Adoption) tools(line func(...string)) {
	if len(a.Tools) == 0 {
		return
	}
	line("tools:")
	for _, t := range a.Tools {
		if t.Box {
			line("  ", t.Key, ":  # ", remark(t.Why), "; taken for a tool by its name")
			line("    name: ", quote(capital(t.Name)))
			line("    from: box")
			line("    packed: ", quote(t.Packed))
			continue
		}
		line("  ", t.Key, ":  # ", a.placeOf(t.Start), ", by ", remark(t.Why))
		line("    name: ", quote(capital(t.Name)))
		line("    from: customer  # not told in the leaflet; write box if you pack it")
	}
}

// quote writes a text between quotation marks as YAML reads it.
func quote(text string) string { return strconv.Quote(oneLine(strings.ToValidUTF8(text, "?"))) }

// remark is a text that may stand behind #.
func remark(text string) string { return oneLine(text) }

func capital(text string) string {
	if text == "" {
		return ""
	}
	return strings.ToUpper(text[:1]) + text[1:]
}
