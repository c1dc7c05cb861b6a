package render

import "regexp"

// contentsView lists the headings of the booklet, and the maker's welcome.
type contentsView struct {
	Entries []contentsEntry
	Welcome string
}

// contentsEntry is a heading; Text is Markdown. Below are the steps under it.
type contentsEntry struct {
	Text, Anchor string
	Below        []contentsEntry
}

// headingLine is a heading as the templates write it. A maker's own headings
// carry no braces that aren't escaped.
var headingLine = regexp.MustCompile(`(?m)^(##|###) (.+) \{#([a-z0-9-]+) \.([a-z]+)[^}]*\}$`)

// contentsValues reads the headings from the text of the booklet itself, so that
// the contents can't name what isn't there.
func contentsValues(a *assembly, text string) contentsView {
	view := contentsView{Welcome: a.wordsOf("welcome")}
	for _, found := range headingLine.FindAllStringSubmatch(text, -1) {
		level, entry, class := found[1], contentsEntry{Text: found[2], Anchor: found[3]}, found[4]
		switch {
		case level == "##":
			view.Entries = append(view.Entries, entry)
		case class == "step" && len(view.Entries) > 0:
			last := &view.Entries[len(view.Entries)-1]
			last.Below = append(last.Below, entry)
		}
	}
	return view
}
