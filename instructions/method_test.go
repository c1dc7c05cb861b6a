package instructions

import (
	"fmt"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"tallyfold/kit"
	"tallyfold/kit/load"
	"tallyfold/kit/source"
)

func readMethod(t testing.TB, text string) (kit.Method, []string) {
	t.Helper()
	k := read(t, gels)
	m, found := ReadMethod(source.NewFile("method.md", []byte(text)), k, load.Amounts(k))
	return m, toldFindings(without(found, stepWithoutAction))
}

const parts = "A word before.\n\n" +
	"# The base\n\n> NOTICE: Read all of it first.\n\nOf the base.\n\n" +
	"## [Dissolve](step:dissolve?in=pan)\n\nStir.\n\n" +
	"Fill the jars\n-------------\n\nPour.\n\n" +
	"### A heading within\n\nMore.\n\n" +
	"# Décor & ribbon #\n\n" +
	"## Tie the ribbon ##\n\n> ## no step\n\nTie.\n" +
	"##\n"

// Parts and steps are cut at headings of level one and two, however they are
// written, and numbered over the whole method.
func TestPartsAndSteps(t *testing.T) {
	for _, lineEnd := range []string{"\n", "\r\n", "\r"} {
		m, found := readMethod(t, strings.ReplaceAll(parts, "\n", lineEnd))
		var lines []string
		for _, part := range m.Parts {
			lines = append(lines, fmt.Sprintf("part %q %q %q", part.ID, part.Title, part.Span.Text()))
			for _, step := range part.Steps {
				lines = append(lines, fmt.Sprintf("%d %q %t %q in %q at %q", step.Number, step.ID, step.Named, step.Title, step.Vessel,
					strings.ReplaceAll(step.Span.Text(), lineEnd, "\n")))
			}
		}
		want := []string{
			`part "" "" ""`,
			`part "the-base" "The base" "# The base"`,
			`1 "dissolve" true "Dissolve" in "pan" at "## [Dissolve](step:dissolve?in=pan)"`,
			`2 "fill-the-jars" false "Fill the jars" in "" at "Fill the jars\n-------------"`,
			`part "decor-ribbon" "Décor & ribbon" "# Décor & ribbon #"`,
			`3 "tie-the-ribbon" false "Tie the ribbon" in "" at "## Tie the ribbon ##"`,
			`4 "step-4" false "" in "" at "##"`,
		}
		if diff := cmp.Diff(want, lines); diff != "" {
			t.Error(diff)
		}
		if diff := cmp.Diff([]string{`step-without-title "##"`}, found); diff != "" {
			t.Error(diff)
		}
		step := m.Parts[1].Steps[1]
		if want, got := "\nPour.\n\n### A heading within\n\nMore.\n\n", strings.ReplaceAll(step.Body.Text(), lineEnd, "\n"); got != want {
			t.Errorf("body %q, want %q", got, want)
		}
		if step.VesselSpan.Known() || m.Parts[1].Steps[0].VesselSpan.Text() != "pan" {
			t.Errorf("the vessel stands at %q", m.Parts[1].Steps[0].VesselSpan.Text())
		}
		if got := m.Parts[1].Body.Text(); !strings.Contains(got, "Of the base.") || len(m.Parts[1].Cautions) != 1 {
			t.Errorf("introduction %q, cautions %v", got, m.Parts[1].Cautions)
		}
	}
}

// What is wrong with headings and names.
func TestMethodFindings(t *testing.T) {
	for _, test := range []struct{ why, text, want string }{
		{"nothing at all", "", `no-steps ""`},
		{"steps as level-one headings", "# Dissolve\n\nStir.\n", `no-steps ""`},
		{"a step twice", "## Stir\n\n## Stir\n", `duplicate-step "## Stir"`},
		{"a step named like another's title", "## Stir\n\n## [Mix](step:stir)\n", `duplicate-step "## [Mix](step:stir)"`},
		{"a part twice", "# Base\n\n## Stir\n\n# Base\n", `duplicate-heading "# Base"`},
		{"a step named like a tool", "## [Warm](step:pan)\n", `duplicate-name "## [Warm](step:pan)"`},
		{"a wait named like a component", "## Wait\n\n[2 hours](wait:jar)\n", `duplicate-name "wait:jar"`},
		{"a wait named like a step", "## [Wait](step:set)\n\n[2 hours](wait:set)\n", `duplicate-name "wait:set"`},
		{"a wait twice", "## Wait\n\n[2 hours](wait:set) [3 hours](wait:set)\n", `duplicate-name "wait:set"`},
		{"a vessel that isn't there", "## [Stir](step:stir?in=pann)\n", `unknown-target "pann"`},
		{"no vessel", "## [Stir](step:stir?in=gel)\n", `unknown-target "gel"`},
		{"another question", "## [Stir](step:stir?into=pan)\n", `unreadable-link "into"`},
		{"no name", "## [Stir](step:)\n", `unreadable-link "step:"`},
		{"a name with capitals", "## [Stir](step:Stir)\n", `unreadable-link "Stir"`},
		{"words beside the link", "## 1. [Stir](step:stir)\n", `unreadable-link "[Stir](step:stir)"`},
		{"a heading that can't be read", "## [Stir] (step:stir)\n", `unreadable-link "[Stir] (step:stir)"`},
		{"something happens before the first step", "[10 g](take:powder)\n\n## Stir\n", `outside-a-step "[10 g](take:powder)"`},
		{"something happens in a part's heading", "# Base [10 g](take:powder)\n\n## Stir\n", `outside-a-step "[10 g](take:powder)"`},
		{"a vessel may be named before", "Find [the pan](vessel:pan).\n\n## Stir\n", ``},
		{"a caution as a plain paragraph", "## Stir\n\nCAUTION: It is hot.\n", `unmarked-caution "CAUTION"`},
		{"HTML", "## Stir\n\nIt is <b>hot</b>.\n\n<div class=x>\nhot\n</div>\n", `raw-html "<b>" | raw-html "<div class=x>\nhot\n</div>\n"`},
		{"a note with an end", "## Stir\n\n<!-- 600 g?\n\nor less -->\n\nStir.\n", ``},
		{"a note without", "## Stir\n\n<!-- 600 g?\n\n## Fill\n", `unclosed-note "<!--"`},
	} {
		t.Run(test.why, func(t *testing.T) {
			_, found := readMethod(t, test.text)
			if diff := cmp.Diff(strings.ReplaceAll(test.want, `\n`, "\n"), strings.ReplaceAll(strings.Join(found, " | "), `\n`, "\n")); diff != "" {
				t.Error(diff)
			}
		})
	}
}

// Runs that name parts name those of the method.
func TestPartsOfRuns(t *testing.T) {
	k := read(t, strings.Replace(gels, "{name: Pine, with", "{name: Pine, parts: [the-base, ribon], with", 1))
	_, found := ReadMethod(source.NewFile("method.md", []byte("# The base\n\n## Stir\n\n# Ribbon\n\n## Tie\n")), k, load.Amounts(k))
	if diff := cmp.Diff([]string{`unknown-target "ribon"`}, toldFindings(without(found, stepWithoutAction))); diff != "" {
		t.Fatal(diff)
	}
	if got := found[len(found)-1].Remedies[0].Do; got != "write ribbon, if that is meant" {
		t.Errorf("remedy %q", got)
	}
}

// A role must be bound by the runs that come by, and only by those.
func TestRolesOfParts(t *testing.T) {
	yaml := strings.Replace(gels, "{name: Pine, with", "{name: Pine, parts: [base], with", 1)
	method := "# Base\n\n## Stir\n\n[all of it](take:scent)\n\n# Label\n\n## Stick\n\n[one](use:extra)\n"
	k := read(t, yaml)
	_, found := ReadMethod(source.NewFile("method.md", []byte(method)), k, load.Amounts(k))
	if len(found) > 0 {
		t.Errorf("only the run Salt follows the second part, and it binds the role: %v", toldFindings(found))
	}
	_, found = ReadMethod(source.NewFile("method.md", []byte(strings.Replace(method, "# Label\n\n", "", 1))), k, load.Amounts(k))
	if diff := cmp.Diff([]string{`role-without-component "extra"`}, toldFindings(found)); diff != "" {
		t.Fatal(diff)
	}
	if diff := cmp.Diff("step 2 needs “extra”, and the run “Pine” gives no component for it", found[0].Found); diff != "" {
		t.Error(diff)
	}
	if note := found[0].Also[1].Note; !strings.HasPrefix(note, "the run “Salt”, where it is ") {
		t.Errorf("the other run shows what may be meant: %q", note)
	}
}

func TestCautions(t *testing.T) {
	for _, test := range []struct{ why, text, want string }{
		{"as in the design", "> CAUTION: The hot gel scalds.\n> An adult pours.", `CAUTION "The hot gel scalds. An adult pours."`},
		{"bold", "> **WARNING:** Hot.", `WARNING "Hot."`},
		{"a line of its own", "> **DANGER**\n> Lye burns.", `DANGER "Lye burns."`},
		{"a paragraph of its own", "> NOTICE\n>\n> Mind the *table*.", `NOTICE "Mind the table."`},
		{"small letters with a colon", "> Warning: hot.", `WARNING "hot."`},
		{"several paragraphs", "> CAUTION: Hot.\n>\n> - Stand back.\n> - Wait.", "CAUTION \"Hot.\\n\\nStand back. Wait.\""},
		{"in a list", "- > CAUTION: Hot.", `CAUTION "Hot."`},
		{"two of them", "> CAUTION: Hot.\n\nStir.\n\n> NOTICE: Wet.", `CAUTION "Hot." | NOTICE "Wet."`},
		{"a quotation inside is part of it", "> CAUTION: Hot.\n> > NOTICE: Wet.", `CAUTION "Hot.\n\nNOTICE: Wet."`},
		{"an ordinary quotation", "> Notice the steam.", ``},
		{"the word further on", "> This is a WARNING: hot.", ``},
		{"a longer word", "> DANGEROUS: hot.", ``},
	} {
		t.Run(test.why, func(t *testing.T) {
			step, _ := readStep(t, test.text)
			var lines []string
			for _, c := range step.Cautions {
				lines = append(lines, fmt.Sprintf("%s %q", c.Signal, c.Text))
				if !strings.HasPrefix(strings.TrimLeft(c.Span.Text(), "- "), ">") || !strings.Contains(test.text, c.Span.Text()) {
					t.Errorf("it stands at %q", c.Span.Text())
				}
			}
			if diff := cmp.Diff(test.want, strings.Join(lines, " | ")); diff != "" {
				t.Error(diff)
			}
		})
	}
}

// Prose is what the customer reads outside links, each piece with its bytes.
func TestProse(t *testing.T) {
	for _, test := range []struct{ why, text, want string }{
		{"around a link", "Pour in [570 g](take:water) and stir.", "Pour in | and stir."},
		{"over lines", "Pour in a good\nsplash of water.", "Pour in a good\nsplash of water."},
		{"cut at marks", "Pour in **plenty** of it.", "Pour in |plenty| of it."},
		{"code is shown, so it is prose", "Type `30 g`.\n\n    40 g\n    50 g", "Type |30 g|.|40 g\n    50 g\n"},
		{"HTML is shown as text", "Pour <b>plenty</b> in.", "Pour <b>plenty</b> in."},
		{"an HTML block", "<div>\nplenty\n</div>", "<div>\nplenty\n</div>\n"},
		{"notes are not", "Pour <!-- plenty --> in.\n\n<!-- a\nsplash -->", "Pour | in."},
		{"a note in an HTML block", "<div>\nsome <!-- plenty\n more --> of it\n</div>", "<div>\nsome | of it\n</div>\n"},
		{"the words of a plain link", "Ask [the workroom](https://example.com) first.", "Ask |the workroom| first."},
		{"an address", "See <https://example.com>.", "See |https://example.com|."},
		{"pictures are not", "See ![plenty](picture:a.jpg) here.", "See | here."},
		{"quotations", "> Plenty of\n> water.", "Plenty of|water."},
		{"lists", "- a splash\n- plenty", "a splash|plenty"},
		{"tables", "| a | b |\n|---|---|\n| plenty | 2 |", "a|b|plenty|2"},
		{"headings within a step", "### Plenty\n\nof it", "Plenty|of it"},
	} {
		t.Run(test.why, func(t *testing.T) {
			step, _ := readStep(t, test.text)
			var pieces []string
			for _, p := range step.Prose {
				pieces = append(pieces, p.Text)
				if p.Span.Text() != p.Text {
					t.Errorf("%q stands at %q", p.Text, p.Span.Text())
				}
			}
			if diff := cmp.Diff(test.want, strings.Join(pieces, "|")); diff != "" {
				t.Error(diff)
			}
		})
	}
}

// What ends a paragraph, an item of a list or a cell of a table ends a sentence.
func TestParagraphs(t *testing.T) {
	step, _ := readStep(t, "Stir the\npowder. Wait.\n\n> CAUTION: Hot.\n\n1. Fold it\n2. [Cut](work:) it\n   twice\n   - once\n\n### Then\n")
	var got []string
	for _, span := range step.Paragraphs {
		got = append(got, strings.Join(strings.Fields(span.Text()), " "))
	}
	want := []string{"Stir the powder. Wait.", "CAUTION: Hot.", "Fold it", "[Cut](work:) it twice", "once", "Then"}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Error(diff)
	}
}

// A tool or container is named by a bare word: its key or its name, whole words,
// any case, a plural s.
func TestMentions(t *testing.T) {
	for _, test := range []struct{ text, want string }{
		{"Stand it on the scale.", `scale "scale"`},
		{"Stand it on the Kitchen Scale.", `scale "Kitchen Scale"`},
		{"Two cups and two small cups.", `cup "cups" | cup "small cups"`},
		{"Fill the JARS.", `jar "JARS"`},
		{"A teacup, a pancake and a saucepan lid.", `pan "saucepan"`},
		{"Stir with a stick\nblender.", "blender \"stick\\nblender\""},
		{"[Stir in the pan for 3 minutes](work:)", `pan "pan"`},
		{"[all of it](move:cup) into the pan", `pan "pan"`},
		{"[all that is in the cup](move:cup)", ``},
		{"> Keep children from the pan.", `pan "pan"`},
		{"The gelling powder is no tool.", ``},
	} {
		step, _ := readStep(t, test.text)
		var lines []string
		for _, m := range step.Mentions {
			lines = append(lines, fmt.Sprintf("%s %q", m.Key, m.Span.Text()))
		}
		if diff := cmp.Diff(test.want, strings.Join(lines, " | ")); diff != "" {
			t.Errorf("%q: %s", test.text, diff)
		}
	}
	step, _ := readStepOf(t, read(t, gels), "## Warm the *saucepan*\n\nStir.\n")
	if len(step.Mentions) != 1 || step.Mentions[0].Span.Text() != "saucepan" {
		t.Errorf("in the heading: %v", step.Mentions)
	}
}

func TestLanguageNotRead(t *testing.T) {
	k := read(t, "language: ja\n"+gels)
	_, found := ReadMethod(source.NewFile("method.md", []byte("## 温める\n\n[3 min](work:)\n")), k, load.Amounts(k))
	if diff := cmp.Diff([]string{`language-not-read "ja"`}, toldFindings(found)); diff != "" {
		t.Error(diff)
	}
}
