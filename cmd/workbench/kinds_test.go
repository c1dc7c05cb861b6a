package workbench

import (
	"os"
	"regexp"
	"testing"

	"tallyfold/kit"
)

// Each kind of link that kit/method.go has is called something on the pages.
func TestEveryKindOfLinkHasItsWords(t *testing.T) {
	text, err := os.ReadFile("../../kit/method.go")
	if err != nil {
		t.Fatal(err)
	}
	kinds := regexp.MustCompile(`(?m)^\t\w+ +Kind = "(\w+)"`).FindAllStringSubmatch(string(text), -1)
	for _, one := range kinds {
		if named, ok := kindNamed(kit.Kind(one[1])); !ok || named.Pick == "" || named.Does == "" {
			t.Errorf("%q is called nothing", one[1])
		}
	}
	if len(kinds) < 20 {
		t.Errorf("only %d kinds were found: the pattern no longer fits the code", len(kinds))
	}
}

func TestLinksInFindingsAreToldWithoutDestinations(t *testing.T) {
	for _, test := range []struct{ written, told string }{
		{"write it like [15 minutes](wait:)", "write it like “15 minutes”, linked as “a wait”"},
		{"pour it on: [all of it](move:bowl?into=…)", "pour it on: “all of it”, linked as “something moved over” of “bowl”, into “…”"},
		{"say it: [Keep the rest](left:bowl?as=kept), and for what", "say it: “Keep the rest”, linked as “what becomes of the rest” of “bowl”, as “kept”, and for what"},
		{"leave the words to the tool: [](step:pour)", "leave the words to the tool: a link without words, as “a step” of “pour”"},
		{"pack 30 g (or less)", "pack 30 g (or less)"},
		{"see [the rule](https://example.org)", "see [the rule](https://example.org)"},
	} {
		if told := withoutDestinations(test.written); told != test.told {
			t.Errorf("%q: told as\n%q, wanted\n%q", test.written, told, test.told)
		}
	}
}
