package instructions

import (
	"fmt"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"tallyfold/kit"
	"tallyfold/kit/diag"
	"tallyfold/kit/source"
)

// told shows an operation as a line: kind, names, text.
func told(o *kit.Operation) string {
	line := string(o.Kind) + ":" + o.Target
	for _, param := range []struct{ name, value string }{{"into", o.Into}, {"from", o.From}, {"in", o.In}, {"as", o.As}, {"either", o.Either}} {
		if param.value != "" {
			line += " " + param.name + "=" + param.value
		}
	}
	if o.Aside {
		line += " aside"
	}
	return line + " " + fmt.Sprintf("%q", o.Text)
}

// Every destination of the design, read as it stands there or nearly so.
func TestLinks(t *testing.T) {
	for _, test := range []struct{ why, text, want string }{
		{"from a pack into the step's vessel", "[570 g of water](take:water)", `take:water "570 g of water"`},
		{"into another vessel", "[10 g of gelling powder](take:powder?into=cup)", `take:powder into=cup "10 g of gelling powder"`},
		{"a role is named like a key", "[all of the scent](take:scent)", `take:scent "all of the scent"`},
		{"used up", "[30 cm of foil](use:foil)", `use:foil "30 cm of foil"`},
		{"poured", "[all of it](move:cup)", `move:cup "all of it"`},
		{"poured from, into", "[half of the gel](move:gel?from=pan&into=cup)", `move:gel into=cup from=pan "half of the gel"`},
		{"an ampersand written for HTML", "[half of it](move:pan?from=pan&amp;into=cup)", `move:pan into=cup from=pan "half of it"`},
		{"poured from, without a name", "[all of it](move:?from=cup)", `move: from=cup "all of it"`},
		{"filled", "[each of 3 jars to 200 g](fill:jar)", `fill:jar "each of 3 jars to 200 g"`},
		{"placed", "[one bag of pebbles](place:pebbles?into=jar)", `place:pebbles into=jar "one bag of pebbles"`},
		{"a vessel", "[the pan](vessel:pan)", `vessel:pan "the pan"`},
		{"a tool", "[the scale](tool:scale)", `tool:scale "the scale"`},
		{"work", "[3 minutes](work:)", `work: "3 minutes"`},
		{"a wait", "[15 minutes](wait:)", `wait: "15 minutes"`},
		{"a named wait and its end", "[2 hours](wait:set) [when set](after:set)", `wait:set "2 hours" | after:set "when set"`},
		{"again", "[the same five more times](again:)", `again: "the same five more times"`},
		{"what is left", "[what is left](left:pan?as=kept)", `left:pan as=kept "what is left"`},
		{"what is left in the step's vessel", "[what is left](left:?as=discarded)", `left:pan as=discarded "what is left"`},
		{"a part of what is left", "[half of it](left:pan?as=poured-away)", `left:pan as=poured-away "half of it"`},
		{"one thing leaves the rest", "[20 g of water](left:water?from=pan&as=evaporated)", `left:water from=pan as=evaporated "20 g of water"`},
		{"a choice", "[10 g](take:powder?either=body) or [20 g](take:glycerin?either=body)", `take:powder either=body "10 g" | take:glycerin either=body "20 g"`},
		{"equally into two vessels", "[it, equally](move:pan?into=cup,pan)", `move:pan into=cup,pan "it, equally"`},
		{"cleaned", "[wash it](clean:cup)", `clean:cup "wash it"`},
		{"the step's vessel cleaned", "[wash it](clean:)", `clean:pan "wash it"`},
		{"warmed", "[to 80–85 °C](warm:)", `warm: "to 80–85 °C"`},
		{"another vessel warmed", "[to 80 °C](warm:?in=cup)", `warm: in=cup "to 80 °C"`},
		{"cooled", "[below 60 °C](cool:)", `cool: "below 60 °C"`},
		{"a cue", "[steam rises](cue:)", `cue: "steam rises"`},
		{"a figure told again", "[10 g](same:powder)", `same:powder "10 g"`},
		{"a figure of a step told again", "[10 minutes](same:try)", `same:try "10 minutes"`},
		{"a hazard answered", "[an adult pours](hazard:hot-pour)", `hazard:hot-pour "an adult pours"`},
		{"a step", "[the next step](step:fill)", `step:fill "the next step"`},
		{"a trouble", "[water on top](trouble:weeping)", `trouble:weeping "water on top"`},
		{"a picture", "![The pan](picture:pan.jpg)", `picture:pan.jpg "The pan"`},
		{"a picture with a blank in its name", "![The pan](<picture:the pan.jpg>)", `picture:the pan.jpg "The pan"`},
		{"the blank as in web addresses", "![The pan](picture:the%20pan.jpg)", `picture:the pan.jpg "The pan"`},
		{"a picture by the path other programs know", "![The pan](pictures/pan.jpg)", `picture:pan.jpg "The pan"`},
		{"a picture spoken of", "[see the picture](picture:pan.jpg)", `picture:pan.jpg "see the picture"`},
		{"emphasis is not read", "[**570 g** of *water*](take:water)", `take:water "570 g of water"`},
		{"characters by name", "[570&nbsp;g of water](take:water)", `take:water "570\u00a0g of water"`},
		{"over two lines", "[570 g of\nwater](take:water)", `take:water "570 g of water"`},
		{"in angle brackets", "[570 g](<take:water>)", `take:water "570 g"`},
		{"by reference", "[570 g of water][w]\n\n[w]: take:water", `take:water "570 g of water"`},
		{"by short reference", "[570 g of water]\n\n[570 g of water]: take:water", `take:water "570 g of water"`},
		{"no text", "[](take:powder)", `take:powder ""`},
		{"a title is no matter", "[570 g](take:water \"from the tap\")", `take:water "570 g"`},
		{"a note in the text is not read", "[570 g<!-- 600? -->](take:water)", `take:water "570 g"`},
		{"in a list", "- [570 g](take:water)\n- [the cup](vessel:cup)", `take:water "570 g" | vessel:cup "the cup"`},
		{"in a task list", "- [ ] [570 g](take:water)", `take:water "570 g"`},
		{"in a table", "| a | b |\n|---|---|\n| [570 g](take:water) | [10 g](take:powder) |", `take:water "570 g" | take:powder "10 g"`},
		{"in a quotation it is told, not done", "> Have [570 g](take:water) ready.", `take:water aside "570 g"`},
		{"in a heading within a step", "### Pour in [570 g](take:water)", `take:water "570 g"`},
		{"web and mail addresses are the customer's own", "[us](https://example.com) [mail](mailto:a@example.com) <https://example.com>", ""},
	} {
		t.Run(test.why, func(t *testing.T) {
			step, found := readStep(t, test.text)
			for _, f := range without(found, stepWithoutAction) {
				t.Errorf("%s: %s at %q", f.Rule, f.Found, f.Where.Text())
			}
			var lines []string
			for _, o := range step.Operations {
				lines = append(lines, told(o))
			}
			if diff := cmp.Diff(test.want, strings.Join(lines, " | ")); diff != "" {
				t.Error(diff)
			}
		})
	}
}

// toldFindings shows findings as lines: rule, the bytes it points at.
func toldFindings(found diag.List) []string {
	var lines []string
	for _, f := range found {
		lines = append(lines, fmt.Sprintf("%s %q", f.Rule, f.Where.Text()))
	}
	return lines
}

// Whatever looks like a link of ours and can't be read is a finding at its bytes.
func TestUnreadableLinks(t *testing.T) {
	for _, test := range []struct{ why, text, want string }{
		{"a slip in the word", "[10 g](tak:powder)", `unreadable-link "tak"`},
		{"a capital letter", "[10 g](Take:powder)", `unreadable-link "Take"`},
		{"a word of nobody", "[10 g](stir:powder)", `unreadable-link "stir"`},
		{"a space inside", "[10 g](take: powder)", `unreadable-link "[10 g](take: powder)"`},
		{"a space before the colon", "[10 g](take :powder)", `unreadable-link "[10 g](take :powder)"`},
		{"a space in angle brackets", "[10 g](<take:the powder>)", `unreadable-link "take:the powder"`},
		{"a choice of one", "[10 g](take:powder?either=body)", `unreadable-link "take:powder?either=body"`},
		{"a choice without a name", "[10 g](take:powder?either=My%20Choice) or [2 g](take:glycerin?either=My%20Choice)", `unreadable-link "My%20Choice" | unreadable-link "My%20Choice"`},
		{"strands of what has none", "[10 cm](use:cord?strands=2)", `unreadable-link "2"`},
		{"no number of strands", "[10 cm](use:cord?strands=two)", `unreadable-link "two"`},
		{"what goes off is not named", "[20 g](left:pan?as=evaporated)", `unreadable-link "left:pan?as=evaporated"`},
		{"a vessel leaves a vessel", "[20 g](left:pan?from=cup)", `unreadable-link "left:pan?from=cup"`},
		{"one of the vessels is none", "[it, equally](move:pan?into=cup,mug)", `unknown-target "mug"`},
		{"never closed", "[10 g](take:powder and stir", `unreadable-link "[10 g](take:powder and stir"`},
		{"never closed at the end", "[10 g](take:powder", `unreadable-link "[10 g](take:powder"`},
		{"a space between", "[10 g] (take:powder)", `unreadable-link "[10 g] (take:powder)"`},
		{"a line end between", "[10 g]\n(take:powder)", "unreadable-link \"[10 g]\\n(take:powder)\""},
		{"a slip and a space between", "[10 g] (tak:powder)", `unreadable-link "[10 g] (tak:powder)"`},
		{"no text", "pour (take:powder) in", `unreadable-link "(take:powder)"`},
		{"no text, a slip, a known name", "pour (tak:powder) in", `unreadable-link "(tak:powder)"`},
		{"no text, a space, a known name", "pour (take: powder) in", `unreadable-link "(take: powder)"`},
		{"the wrong way round", "(10 g)[take:powder]", `unreadable-link "[take:powder]"`},
		{"both square", "[10 g][take:powder]", `unreadable-link "[take:powder]"`},
		{"both square, the word missing", "[10 g][powder]", `unreadable-link "[10 g][powder]"`},
		{"curly", "[10 g]{take:powder}", `unreadable-link "take:powder}"`},
		{"no brackets", "pour in take:powder now", `unreadable-link "take:powder"`},
		{"the opening bracket missing", "10 g](take:powder)", `unreadable-link "](take:powder)"`},
		{"the closing bracket missing", "[10 g(take:powder)", `unreadable-link "(take:powder)"`},
		{"a link around a link", "[a [10 g](take:powder)](take:water)", "unreadable-link \"[a [10 g](take:powder)](take:water)\""},
		{"angle brackets", "<take:powder>", `unreadable-link "take:powder"`},
		{"escaped", `\[10 g\](take:powder)`, `unreadable-link "(take:powder)"`},
		{"in back-quotes", "`[10 g](take:powder)`", "unreadable-link \"[10 g](take:powder)\""},
		{"indented by accident", "    [10 g](take:powder)", `unreadable-link "[10 g](take:powder)"`},
		{"in HTML", "<div>\n[10 g](take:powder)\n</div>", `unreadable-link "[10 g](take:powder)"`},
		{"a definition that nobody uses", "[10 g]: take:powder", `unreadable-link "take:powder"`},
		{"no word", "[10 g](powder)", `unreadable-link "powder"`},
		{"a word without its colon", "[3 minutes](work)", `unreadable-link "work"`},
		{"leads nowhere", "[10 g]()", `unreadable-link "[10 g]()"`},
		{"a page that a booklet doesn't have", "[above](#dissolve)", `unreadable-link "#dissolve"`},
		{"no name", "[10 g](take:)", `unreadable-link "take:"`},
		{"no name for a picture", "![x](picture:)", `unreadable-link "picture:"`},
		{"no name for a vessel", "[x](vessel:)", `unreadable-link "vessel:"`},
		{"a name where none belongs", "[3 minutes](work:stir)", `unreadable-link "stir"`},
		{"an unknown question", "[10 g](take:powder?int=cup)", `unreadable-link "int"`},
		{"a question of another word", "[10 g](take:powder?as=kept)", `unreadable-link "as"`},
		{"a question twice", "[10 g](take:powder?into=cup&into=pan)", `unreadable-link "into"`},
		{"a question without answer", "[10 g](take:powder?into=)", `unreadable-link "into"`},
		{"a bare question mark", "[10 g](take:powder?)", `unreadable-link ""`},
		{"a picture of a material", "![10 g](take:powder)", `unreadable-link "take:powder"`},
		{"a picture from elsewhere", "![pan](https://example.com/pan.jpg)", `unreadable-link "https://example.com/pan.jpg"`},
		{"a link in the words of a picture", "![a [10 g](take:powder)](picture:pan.jpg)", `unreadable-link "picture:pan.jpg"`},
		{"a name with capitals", "[x](step:Fill)", `unreadable-link "Fill"`},
		{"a wait with a blank for a name", "[2 hours](<wait:to set>)", `unreadable-link "wait:to set"`},
		{"no words for a cue", "[](cue:)", `unreadable-link "cue:"`},
		{"a file of the customer's", "[x](file:///etc/passwd)", `refused-link "file:///etc/passwd"`},
		{"a program", "[x](javascript:alert)", `refused-link "javascript:alert"`},
		{"a program, shouted", "<JAVASCRIPT:alert>", `refused-link "JAVASCRIPT:alert"`},
		{"data", "![x](data:image/png;base64,AAAA)", `refused-link "data:image/png;base64,AAAA"`},
	} {
		t.Run(test.why, func(t *testing.T) {
			_, found := readStep(t, test.text)
			found = without(found, stepWithoutAction, rawHTML)
			if diff := cmp.Diff(test.want, strings.Join(toldFindings(found), " | ")); diff != "" {
				t.Error(diff)
			}
			for _, f := range found {
				if f.Severity != diag.MustFix || f.Found == "" || f.Expected == "" || len(f.Remedies) == 0 {
					t.Errorf("an unfinished finding: %+v", f)
				}
			}
		})
	}
}

// What only resembles a link is prose.
func TestNoLinks(t *testing.T) {
	for _, text := range []string{
		"Stir (note: it is hot) well.",
		"Two things matter: take care, work slowly (wait: it thickens).",
		"Left: the pan. Right: the cup. Fill: slowly.",
		"See https://example.com/step:3 and [ ] and [x] and (a) [b].",
		"The ratio is 1:2 (work: 3 minutes).",
		`An \[escaped\]\(bracket).`,
		"A footnote[1] (see below).",
		"`a[0](b)` is code.",
		"<!-- [10 g](tak:powder) is a note -->",
	} {
		_, found := readStep(t, text)
		for _, f := range without(found, stepWithoutAction) {
			t.Errorf("%q: %s: %s at %q", text, f.Rule, f.Found, f.Where.Text())
		}
	}
}

// A name that is wrong is pointed at by its own bytes.
func TestTargets(t *testing.T) {
	for _, test := range []struct{ why, text, want, remedy string }{
		{"a slip", "[10 g](take:powdr)", `unknown-target "powdr"`, "write take:powder, if that is meant"},
		{"what people call it", "[10 g](take:Glycerin)", `unknown-target "Glycerin"`, "write take:glycerin, if that is meant"},
		{"nothing like it", "[10 g](take:marmalade)", `unknown-target "marmalade"`, "add “marmalade” to kit.yaml"},
		{"a tool is not taken", "[10 g](take:cup)", `unknown-target "cup"`, "write tool:cup, which is for naming a tool"},
		{"a mixture is not taken", "[10 g](take:gel)", `unknown-target "gel"`, "write move:gel, which is for pouring from one vessel into another"},
		{"a component is no tool", "[x](tool:powder)", `unknown-target "powder"`, "write vessel:powder, which is for naming a vessel"},
		{"a component is no container", "[each](fill:powder)", `unknown-target "powder"`, "give powder a container in kit.yaml: how much it holds and what stays free under its rim"},
		{"a tool is no container", "[each](fill:cup)", `unknown-target "cup"`, "write tool:cup, which is for naming a tool"},
		{"a tool is not placed", "[x](place:cup)", `unknown-target "cup"`, "write tool:cup, which is for naming a tool"},
		{"a mixture is no vessel", "[x](vessel:gel)", `unknown-target "gel"`, "write move:gel, which is for pouring from one vessel into another"},
		{"into what isn't there", "[10 g](take:powder?into=mug)", `unknown-target "mug"`, "add “mug” to kit.yaml"},
		{"into, a slip", "[10 g](take:powder?into=cups)", `unknown-target "cups"`, "write ?into=cup, if that is meant"},
		{"from what isn't there", "[all of it](move:gel?from=mug)", `unknown-target "mug"`, "add “mug” to kit.yaml"},
		{"kept, a slip", "[the rest](left:pan?as=kep)", `unknown-target "kep"`, "write ?as=kept, if that is meant"},
		{"no such wait", "[2 hours](wait:set) [when set](after:sett)", `unknown-target "sett"`, "write after:set, if that is meant"},
		{"a figure of nothing", "[10 g](same:powdr)", `unknown-target "powdr"`, "write same:powder, if that is meant"},
		{"by reference", "[10 g][p]\n\n[p]: take:powdr", `unknown-target "powdr"`, "write take:powder, if that is meant"},
		{"an edition that is none", "![a pan](picture:pan.png?drawn-for=first)", `unreadable-link "first"`, "write it like ?drawn-for=1"},
		{"a role that one run lacks", "[one](use:extra)", `role-without-component "extra"`, "add “extra: …” to “with” of the run “Pine” in kit.yaml"},
	} {
		t.Run(test.why, func(t *testing.T) {
			_, found := readStep(t, test.text)
			found = without(found, stepWithoutAction)
			if diff := cmp.Diff(test.want, strings.Join(toldFindings(found), " | ")); diff != "" {
				t.Fatal(diff)
			}
			if diff := cmp.Diff(test.remedy, found[0].Remedies[0].Do); diff != "" {
				t.Error(diff)
			}
		})
	}
}

// Each operation's places are those of its own link.
func TestOperationPlaces(t *testing.T) {
	const text = "Pour [**570 g**\nof water](<take:water> \"tap\") and\n> [x][p]\n\n[p]: tool:scale\n"
	for _, lineEnd := range []string{"\n", "\r\n", "\r"} {
		step, _ := readStepOf(t, read(t, gels), strings.ReplaceAll("\n## Try\n\n"+text, "\n", lineEnd))
		var places []string
		for _, o := range step.Operations {
			for _, span := range []source.Span{o.Span, o.TextSpan, o.TargetSpan} {
				places = append(places, strings.ReplaceAll(span.Text(), lineEnd, "\n"))
			}
		}
		want := []string{
			"[**570 g**\nof water](<take:water> \"tap\")", "**570 g**\nof water", "take:water",
			"[x][p]", "x", "tool:scale",
		}
		if diff := cmp.Diff(want, places); diff != "" {
			t.Errorf("%q: %s", lineEnd, diff)
		}
	}
}
