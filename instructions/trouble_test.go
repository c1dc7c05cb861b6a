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

const troubles = "# When something goes wrong\n\n" +
	"## [Water on top](trouble:weeping)\n\n> CAUTION: It is hot.\n\nMelt it again [to 80 °C](warm:?in=pan) with [1 g](take:powder?into=pan) more; see [filling](step:fill).\n\n" +
	"## Too soft\n\nPlenty of water?\n"

// Troubles are told, not done.
func TestReadTrouble(t *testing.T) {
	k := read(t, gels)
	all, found := ReadTrouble(source.NewFile("trouble.md", []byte(troubles)), k, load.Amounts(k))
	if len(found) > 0 {
		t.Errorf("findings: %v", toldFindings(found))
	}
	var lines []string
	for _, trouble := range all {
		lines = append(lines, fmt.Sprintf("%s %t %q %d cautions %d pieces", trouble.ID, trouble.Named, trouble.Title, len(trouble.Cautions), len(trouble.Prose)))
		for _, o := range trouble.Operations {
			lines = append(lines, told(o))
		}
	}
	want := []string{
		`weeping true "Water on top" 1 cautions 5 pieces`,
		`warm: in=pan aside "to 80 °C"`, `take:powder into=pan aside "1 g"`, `step:fill aside "filling"`,
		`too-soft false "Too soft" 0 cautions 1 pieces`,
	}
	if diff := cmp.Diff(want, lines); diff != "" {
		t.Error(diff)
	}
	if got := all[1].Body.Text(); got != "\nPlenty of water?\n" {
		t.Errorf("body %q", got)
	}
}

func TestTroubleFindings(t *testing.T) {
	for _, test := range []struct{ why, text, want string }{
		{"nothing", "", ""},
		{"a title alone", "# Troubles\n", ""},
		{"text under the title", "# Troubles\n\nRead this.\n\n## Too soft\n", `outside-a-heading "Read this."`},
		{"text under nothing", "Read this.\n", `outside-a-heading "Read this."`},
		{"twice", "## Too soft\n\n## [Soft](trouble:too-soft)\n", `duplicate-heading "## [Soft](trouble:too-soft)"`},
		{"a role that one run lacks", "## Torn\n\nTake [another](take:extra?into=cup).\n", `role-without-component "extra"`},
		{"a link that can't be read", "## Torn\n\n[10 g] (take:powder)\n", `unreadable-link "[10 g] (take:powder)"`},
	} {
		k := read(t, gels)
		_, found := ReadTrouble(source.NewFile("trouble.md", []byte(test.text)), k, load.Amounts(k))
		if diff := cmp.Diff(test.want, strings.Join(toldFindings(found), " | ")); diff != "" {
			t.Errorf("%s: %s", test.why, diff)
		}
	}
}

func TestReadWords(t *testing.T) {
	const text = "# Welcome\n\nGood day. See [the first step](step:warm), [570 g](same:water).\n\n## About the maker\n\nWe work on a quay.\n"
	k := read(t, gels)
	k.Method, _ = ReadMethod(source.NewFile("method.md", []byte(oneStep)), k, load.Amounts(k))
	all, found := ReadWords(source.NewFile("words.md", []byte(text)), k, load.Amounts(k))
	if len(found) > 0 {
		t.Errorf("findings: %v", toldFindings(found))
	}
	var lines []string
	for _, words := range all {
		lines = append(lines, fmt.Sprintf("%s %q %d links %q", words.ID, words.Title, len(words.Operations), words.Body.Text()))
	}
	want := []string{
		`welcome "Welcome" 2 links "\nGood day. See [the first step](step:warm), [570 g](same:water).\n\n"`,
		`about-the-maker "About the maker" 0 links "\nWe work on a quay.\n"`,
	}
	if diff := cmp.Diff(want, lines); diff != "" {
		t.Error(diff)
	}
}

// Nothing is done in words.md.
func TestWordsFindings(t *testing.T) {
	for _, test := range []struct{ why, text, want string }{
		{"something happens", "## Welcome\n\n[10 g](take:powder?into=cup)\n", `outside-a-step "[10 g](take:powder?into=cup)"`},
		{"twice", "## Welcome\n\n## Welcome\n", `duplicate-heading "## Welcome"`},
		{"text under nothing", "Good day.\n\n## Welcome\n", `outside-a-heading "Good day."`},
		{"a figure of nothing", "## Welcome\n\n[10 g](same:powdr)\n", `unknown-target "powdr"`},
	} {
		k := read(t, gels)
		_, found := ReadWords(source.NewFile("words.md", []byte(test.text)), k, load.Amounts(k))
		if diff := cmp.Diff(test.want, strings.Join(toldFindings(found), " | ")); diff != "" {
			t.Errorf("%s: %s", test.why, diff)
		}
	}
}

// A refused file gives findings and nothing else.
func TestRefusedFiles(t *testing.T) {
	file := source.NewFile("any.md", []byte("## A\n\n\x00"))
	k := &kit.Kit{}
	m, methodFound := ReadMethod(file, k, load.Amounts(k))
	troubles, troubleFound := ReadTrouble(file, k, load.Amounts(k))
	words, wordsFound := ReadWords(file, k, load.Amounts(k))
	if len(m.Parts) > 0 || troubles != nil || words != nil {
		t.Errorf("read %v %v %v", m.Parts, troubles, words)
	}
	for _, found := range [][]string{toldFindings(methodFound), toldFindings(troubleFound), toldFindings(wordsFound)} {
		if diff := cmp.Diff([]string{`refused-file "\x00"`}, found); diff != "" {
			t.Error(diff)
		}
	}
}
