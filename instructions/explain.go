package instructions

import (
	"strings"

	"tallyfold/kit/load"
)

// Rules are the findings of this package, told at more length.
var Rules = []load.Rule{
	{Name: missingFile, Title: "a file that a kit cannot do without",
		Explanation: "A kit folder holds kit.yaml, what is packed, and method.md, the steps. Put the missing one there, " +
			"or start from an example with `tallyfold new`."},
	{Name: refusedFile, Title: "a file that is not read",
		Explanation: "It is too large, leads out of the folder, or holds characters that no text has. Nothing of it is used. " +
			"The finding says which, and what to do."},
	{Name: misnamedFile, Title: "a file that is nearly called like one that is read",
		Explanation: "Files are read by their exact names; one that is spelt otherwise is passed over. Rename it."},
	{Name: notAPicture, Title: "a file in pictures/ that cannot be shown",
		Explanation: "Only the kinds of picture named in the finding can be printed. Save it as one of them."},
	{Name: unreadableLink, Title: "something that looks like a link with a meaning, and cannot be read",
		Explanation: "A slip in a link would turn an amount into mere words, and nothing would be counted. " +
			"A link is [what the customer reads](take:KEY): no space between the brackets, none inside the round ones."},
	{Name: refusedLink, Title: "a link that leads where a booklet must not lead",
		Explanation: "Links to files of this machine, scripts and embedded data are never printed. Take the link out."},
	{Name: unknownTarget, Title: "a link to something that kit.yaml does not name",
		Explanation: "The word after the colon is a key of kit.yaml, or a role that a run binds, and of the sort that the link needs: " +
			"something packed for take, a container for fill, a tool for tool. Write the key as kit.yaml has it."},
	{Name: roleUnbound, Title: "a role with no component in some run",
		Explanation: "A run that goes through the step must say which component stands for the role, or its customer takes nothing. " +
			"Add the role under `with` of that run."},
	{Name: unreadableAmount, Title: "a link that needs an amount and tells none that can be read",
		Explanation: "The customer needs a figure, and so does the reckoning. Write a number and a unit, or all of, half of, the rest of."},
	{Name: duplicateStep, Title: "two steps of one name",
		Explanation: "References could mean either. Give one of the two another name after step:."},
	{Name: duplicateHeading, Title: "two headings of one name",
		Explanation: "References could mean either. Give one of the two another name."},
	{Name: duplicateName, Title: "a step or wait called like something else",
		Explanation: "Names of things, steps and waits are unique in a kit, so that each reference has one meaning. Rename one."},
	{Name: noSteps, Title: "a method without steps",
		Explanation: "Each heading with two # in method.md is a step. Without one there is nothing to follow."},
	{Name: stepWithoutTitle, Title: "a step without a title",
		Explanation: "The title is what the customer finds the step by. Write what is done there, the verb first."},
	{Name: stepWithoutAction, Title: "a step in which nothing is linked",
		Explanation: "Nothing in it could be checked: no amount, tool or time. If it is plain advice that is well; else link what happens."},
	{Name: outsideAStep, Title: "an action before the first step",
		Explanation: "What happens must happen in a step, or no step number can be told for it. Move it under a heading with ##."},
	{Name: outsideAHeading, Title: "text that goes into no booklet",
		Explanation: "trouble.md and words.md are printed by their headings. Text before the first one is printed nowhere. Give it a heading."},
	{Name: unmarkedCaution, Title: "a signal word outside a quotation",
		Explanation: "A caution is set apart in the booklet only when it is a quotation: begin each of its lines with >."},
	{Name: rawHTML, Title: "HTML in the text",
		Explanation: "It is shown as the text it is, and does nothing. Use Markdown, or take it out."},
	{Name: unclosedNote, Title: "a note of your own that is never closed",
		Explanation: "Everything from <!-- on is left out of the booklet. Write --> where the note ends."},
	{Name: languageNotRead, Title: "a method in a language whose phrases are not read yet",
		Explanation: "Words such as “half of the” and “each of” are read in " + strings.Join(tags(), ", ") + ". Figures with units are read in " +
			"every language. Look at `tallyfold balance` to see what was made of each link."},
}
