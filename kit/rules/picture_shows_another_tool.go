package rules

import (
	"slices"
	"strings"

	"tallyfold/kit"
	"tallyfold/kit/diag"
)

var pictureShowsAnotherTool = Rule{
	Name:     "picture-shows-another-tool",
	Severity: diag.ShouldFix,
	Title:    "The words of a picture name a tool that its step does not use",
	Explanation: `A step works with the stick blender, and the picture in it is of a whisk: it was drawn for
an earlier edition. The customer looks for the whisk, or believes that they may take one.

The words of a picture are compared with the tools that its step links or names. Told is a
picture whose words name tools, and none that the step uses, nor one that stands in for
one of those. Names of common tools that kit.yaml does not list count too. Whether what is
drawn is what the words say nobody can tell from the files: that is not looked at.

Draw it anew, put the picture into the step it belongs to, or correct its words.`,
	Check: func(s Subject) []diag.Finding {
		var findings []diag.Finding
		for _, step := range s.Kit.Method.Steps() {
			for _, o := range step.Operations {
				if o.Kind != kit.ShowPicture {
					continue
				}
				if finding, ok := anotherTool(s.Kit, step, o); ok {
					findings = append(findings, finding)
				}
			}
		}
		return findings
	},
}

func anotherTool(k *kit.Kit, step *kit.Step, picture *kit.Operation) (diag.Finding, bool) {
	shown := toolsCalled(k, picture.Text)
	used := toolsOf(k, step)
	if len(shown) == 0 || len(used) == 0 || slices.ContainsFunc(shown, func(key string) bool { return isOneOf(k, key, used) }) {
		return diag.Finding{}, false
	}
	names := make([]string, len(used))
	for i, key := range used {
		names[i] = k.Called(key)
	}
	where := picture.TextSpan
	if !where.Known() || where.End == where.Start {
		where = picture.Span
	}
	return diag.Finding{
		Where: where, About: step.ID,
		Found:    "the picture " + picture.Target + " shows “" + picture.Text + "”, and " + inStep(step) + " uses no " + strings.ToLower(k.Called(shown[0])),
		Expected: "a tool that the step uses: " + listed(names),
		Remedies: diag.Fix("draw or photograph the step anew", "move the picture to the step that it belongs to", "correct its words, if the picture itself is right"),
	}, true
}

// toolsCalled are the keys of the tools that a text names, by their whole name, their
// key or the last word of the name ("the blender" for the stick blender), and the
// names of common tools that kit.yaml does not list.
func toolsCalled(k *kit.Kit, text string) []string {
	words := wordsOf(text)
	var found []string
	for _, tool := range k.Tools {
		name := wordsOf(tool.String())
		short := name[max(0, len(name)-1):]
		if holdsPhrase(words, name) || holdsPhrase(words, short) || holdsPhrase(words, wordsOf(strings.ReplaceAll(tool.ID, "-", " "))) {
			found = append(found, tool.ID)
		}
	}
	for _, names := range unlisted(k, toolSenses[language(k)]) {
		for _, name := range names {
			if holdsPhrase(words, name.words) {
				found = append(found, name.called)
			}
		}
	}
	slices.Sort(found)
	return slices.Compact(found)
}

// toolsOf are the tools that a step links, or names in its text or heading; what only
// the words of its pictures name does not count.
func toolsOf(k *kit.Kit, step *kit.Step) []string {
	var used []string
	add := func(key string) {
		if k.Tool(key) != nil && !slices.Contains(used, key) {
			used = append(used, key)
		}
	}
	add(step.Vessel)
	for _, o := range step.Operations {
		for _, key := range append(strings.Split(o.Into, ","), o.Target, o.From, o.In) {
			add(key)
		}
	}
	for _, mention := range step.Mentions {
		inPicture := slices.ContainsFunc(step.Operations, func(o *kit.Operation) bool {
			return o.Kind == kit.ShowPicture && o.Span.Contains(mention.Span)
		})
		if !inPicture {
			add(mention.Key)
		}
	}
	return used
}

// isOneOf says whether a tool is among those used, or one stands in for the other.
func isOneOf(k *kit.Kit, key string, used []string) bool {
	for _, other := range used {
		if key == other || standsIn(k, key, other) || standsIn(k, other, key) {
			return true
		}
	}
	return false
}

func standsIn(k *kit.Kit, key, other string) bool {
	tool := k.Tool(key)
	return tool != nil && slices.ContainsFunc(tool.StandsInFor, func(s kit.Said[string]) bool { return s.Value == other })
}
