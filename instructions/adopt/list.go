package adopt

import (
	"fmt"
	"strings"
)

// List writes what was recognised and what is open as Markdown, for the maker.
func (a *Adoption) List() []byte {
	var b strings.Builder
	fmt.Fprintf(&b, "# What was recognised in %s\n\n", a.File.Name)
	b.WriteString("Places are line and column of the leaflet. Nothing here has been proved: what a link says was read off words.\n\n")
	fmt.Fprintf(&b, "## Still open (%d)\n\n", len(a.Questions))
	for _, q := range a.Questions {
		b.WriteString("- " + a.Told(q) + "\n")
	}
	fmt.Fprintf(&b, "\n## Taken over (%d)\n\n", a.count(true))
	for _, p := range a.Proposals {
		if p.Accepted {
			fmt.Fprintf(&b, "- %s%s: %s (%s)\n", strings.TrimPrefix(a.placeOf(p.Start), "at "), inQuotes(a.Words(p)), p.Meaning, p.Why)
		}
	}
	fmt.Fprintf(&b, "\n## Recognised and left as typed (%d)\n\n", a.count(false))
	for _, p := range a.Proposals {
		if !p.Accepted {
			fmt.Fprintf(&b, "- %s “%s”: %s (%s)\n", strings.TrimPrefix(a.placeOf(p.Start), "at "), shown(a.Words(p)), p.Open, p.Why)
		}
	}
	return []byte(b.String())
}

// Told tells a question in one line: place, words, what is asked, what to do.
func (a *Adoption) Told(q Question) string {
	told := q.Asks + " " + capital(q.Advice) + "."
	if !strings.HasSuffix(q.Asks, "?") && !strings.HasSuffix(q.Asks, ".") {
		told = q.Asks + ". " + capital(q.Advice) + "."
	}
	if q.End > q.Start {
		return strings.TrimPrefix(a.placeOf(q.Start), "at ") + " “" + shown(q.Words) + "”: " + told
	}
	if q.Words != "" {
		return "“" + shown(q.Words) + "”: " + told
	}
	return told
}

// Linked counts the links that are written, and the figures that are left as typed.
func (a *Adoption) Linked() (links, typed int) {
	for _, p := range a.Proposals {
		switch {
		case p.Kind == StepStart || p.Kind == Tool || p.Kind == Vessel || p.Kind == Packed:
		case p.Accepted && p.Destination != "":
			links++
		case p.AmountEnd > p.AmountStart:
			typed++
		}
	}
	return links, typed
}

func (a *Adoption) count(accepted bool) int {
	n := 0
	for _, p := range a.Proposals {
		if p.Accepted == accepted {
			n++
		}
	}
	return n
}

// inQuotes is a text in quotation marks behind a blank, nothing for none.
func inQuotes(text string) string {
	if text == "" {
		return ""
	}
	return " “" + shown(text) + "”"
}

// shown is a text on one line, shortened where it is long.
func shown(text string) string {
	const longest = 60
	runes := []rune(oneLine(text))
	if len(runes) > longest {
		return string(runes[:longest-1]) + "…"
	}
	return string(runes)
}
