package workbench

import (
	"regexp"
	"slices"
	"strings"

	"tallyfold/kit"
)

// A linkKind is what a link can say of its words, as the pages call it.
type linkKind struct {
	Kind kit.Kind
	// Pick is what the words are, for whoever links them; Does what happens there.
	Pick, Does string
	// Bare: its words are of nothing that has a key.
	Bare bool
}

// linkKinds are all kinds of link, in the order in which they are wanted.
var linkKinds = []linkKind{
	{kit.Take, "an amount taken", "taken from its pack", false},
	{kit.WithTool, "a tool", "a tool used", false},
	{kit.WithVessel, "a vessel", "a vessel worked in", false},
	{kit.Fill, "a fill level", "filled into containers", false},
	{kit.Place, "something put into place", "put into place", false},
	{kit.Move, "something moved over", "moved from one vessel into another", false},
	{kit.Use, "something used up", "used up", false},
	{kit.Work, "time at work", "time at work", true},
	{kit.Wait, "a wait", "time waited", true},
	{kit.After, "a wait that is over", "a wait that is over", false},
	{kit.Again, "the same done again", "done again", true},
	{kit.Warm, "warmed to", "warmed to", true},
	{kit.Cool, "cooled to", "cooled to", true},
	{kit.Cue, "what to look for", "what to look for", true},
	{kit.Left, "what becomes of the rest", "what becomes of what is left", false},
	{kit.Clean, "a vessel cleaned", "a vessel cleaned", false},
	{kit.Same, "a figure told again", "a figure told again", false},
	{kit.Hazard, "words that answer a hazard", "words that answer a hazard", false},
	{kit.ToStep, "a step", "leads to a step", false},
	{kit.ToHelp, "help when something goes wrong", "leads to help", false},
	{kit.ShowPicture, "a picture", "shows a picture", false},
}

// kindNamed finds what the pages call a kind; ok is false for what is no kind of link.
func kindNamed(kind kit.Kind) (named linkKind, ok bool) {
	at := slices.IndexFunc(linkKinds, func(one linkKind) bool { return one.Kind == kind })
	if at < 0 {
		return linkKind{}, false
	}
	return linkKinds[at], true
}

var writtenLink = regexp.MustCompile(`\[([^\[\]]*)\]\(([a-z]+):([^()\s]*)\)`)

// withoutDestinations tells the links in a finding's words as the pages show them, where
// destinations are out of sight: “15 minutes”, linked as “a wait”.
func withoutDestinations(words string) string {
	return writtenLink.ReplaceAllStringFunc(words, func(link string) string {
		part := writtenLink.FindStringSubmatch(link)
		kind, ok := kindNamed(kit.Kind(part[2]))
		if !ok {
			return link
		}
		told := "“" + part[1] + "”, linked as “" + kind.Pick + "”"
		if part[1] == "" {
			told = "a link without words, as “" + kind.Pick + "”"
		}
		target, settings, _ := strings.Cut(part[3], "?")
		if target != "" {
			told += " of “" + target + "”"
		}
		for setting := range strings.SplitSeq(settings, "&") {
			if name, value, ok := strings.Cut(setting, "="); ok {
				told += ", " + name + " “" + value + "”"
			}
		}
		return told
	})
}
