package adopt

import (
	"regexp"
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/google/go-cmp/cmp"

	"tallyfold/instructions"
	"tallyfold/kit/load"
	"tallyfold/kit/source"
)

func readWith(t *testing.T, leaflet, parts string) *Adoption {
	t.Helper()
	var list *source.File
	if parts != "" {
		list = source.NewFile("parts.txt", []byte(parts))
	}
	a, err := Read(source.NewFile("leaflet.txt", []byte(leaflet)), list, Options{})
	if err != nil {
		t.Fatal(err)
	}
	return a
}

// What the method says, links and all; "added" stands for the heading that is put in.
func TestMethod(t *testing.T) {
	const first = "## [Step 1](step:step-1)" + added + "\n\n"
	tests := []struct{ why, leaflet, parts, method string }{
		{"an amount with its name is one link", "Melt 2 lbs. of lard.\n", "", first + "Melt [2 lbs. of lard](take:lard).\n"},
		{"a name before the amount, as in a list", "Galls (bruised), 1 lb.; gum, 3 oz.; mix.\n", "",
			first + "[Galls (bruised), 1 lb](take:galls).; [gum, 3 oz](take:gum).; mix.\n"},
		{"a time behind leave is waited, behind stir worked", "Stir it 10 minutes. Leave it 2 hours.\n", "",
			first + "Stir it [10 minutes](work:). Leave it [2 hours](wait:).\n"},
		{"a time that may be either stays as typed", "This takes 20 minutes.\n", "", first + "This takes 20 minutes.\n"},
		{"how often is no time", "Boil 1 oz. of gum and stir it every 10 minutes.\n", "", first + "Boil [1 oz. of gum](take:gum) and stir it every 10 minutes.\n"},
		{"a measure without a size stays as typed", "Add a handful of salt and 2 drachms of oil.\n", "", first + "Add a handful of salt and 2 drachms of oil.\n"},
		{"temperatures go the way of their verbs", "Heat the wax to 75 °C. Let it cool to 60 °C.\n", "",
			first + "Heat the wax to [75 °C](warm:). Let it cool to [60 °C](cool:).\n"},
		{"degrees without a scale stay as typed", "Boil 1 oz. of gum at 170 degrees.\n", "", first + "Boil [1 oz. of gum](take:gum) at 170 degrees.\n"},
		{"what to look for", "Stir 1 oz. of gum until no lumps show, and strain.\n", "", first + "Stir [1 oz. of gum](take:gum) until [no lumps show](cue:), and strain.\n"},
		{"headings of the leaflet become the steps", "# Soap\n\n## Make the lye\n\nTake 3 oz. of potash.\n", "",
			"# Soap\n\n## [Make the lye](step:make-the-lye)\n\nTake [3 oz. of potash](take:potash).\n"},
		{"numbered lines are steps", "1. Take 1 oz. of gum.\n2. Boil it 5 minutes in a kettle.\n", "",
			first + "1. Take [1 oz. of gum](take:gum).\n## [Step 2](step:step-2?in=kettle)" + added + "\n\n2. Boil it [5 minutes](work:) in a kettle.\n"},
		{"a numbered line in which nothing is measured is a step too", "1. Put on gloves.\n2. Boil 1 oz. of gum.\n", "",
			first + "1. Put on gloves.\n## [Step 2](step:step-2)" + added + "\n\n2. Boil [1 oz. of gum](take:gum).\n"},
		{"a time behind wait is waited, whatever is ordered before", "Stir in 1 oz. of gum and wait 5 minutes.\n", "", first + "Stir in [1 oz. of gum](take:gum) and wait [5 minutes](wait:).\n"},
		{"a time with hands, behind for", "Sand the rim for 5 minutes. Set it aside for 2 hours.\n", "", first + "Sand the rim for [5 minutes](work:). Set it aside for [2 hours](wait:).\n"},
		{"the stick of the list orders nothing", "Stir with the wooden stick for 2 minutes.\n", "wooden stick, 1\n", first + "Stir with the wooden stick for [2 minutes](work:).\n"},
		{"half of what is on the list", "Stir in half of the gum.\n", "3 oz gum\n", first + "Stir in [half of the gum](take:gum).\n"},
		{"a name that is part of one on the list", "Weigh in 200 g of wax.\n", "300 g soy wax flakes\n", first + "Weigh in [200 g of wax](take:soy-wax-flakes).\n"},
		{"a name that fits two on the list is neither", "Weigh in 200 g of wax.\n", "300 g soy wax\n30 g bees wax\n", first + "Weigh in [200 g of wax](take:wax).\n"},
		{"a list in the leaflet tells what is packed", "200 g wax flakes\n12 g pine oil\n\nMelt the wax flakes for 10 minutes.\n", "",
			"200 g wax flakes\n12 g pine oil\n\n" + first + "Melt the wax flakes for [10 minutes](work:).\n"},
		{"what was taken before has a rest", "Stir in 3 oz. of gum. Stir in the rest of the gum.\n", "", first + "Stir in [3 oz. of gum](take:gum). Stir in the [rest of the gum](take:gum).\n"},
		{"what is poured may be what the vessel holds", "Melt 3 oz. of wax. Pour the rest of the wax out.\n", "", first + "Melt [3 oz. of wax](take:wax). Pour the rest of the wax out.\n"},
		{"no link in code", "Take 1 oz. of gum.\n\n    Take 2 oz. of alum.\n", "", first + "Take [1 oz. of gum](take:gum).\n\n" + strings.Replace(strings.Replace(first, "Step 1", "Step 2", 1), "step-1", "step-2", 1) + "    Take 2 oz. of alum.\n"},
		{"what comes of it is not taken", "To make 5 gallons of ink, boil 1 lb. of galls.\n", "", first + "To make 5 gallons of ink, boil [1 lb. of galls](take:galls).\n"},
		{"windows line ends", "Take 1 oz. of gum.\r\n", "", first + "Take [1 oz. of gum](take:gum).\r\n"},
	}
	for _, test := range tests {
		a := readWith(t, test.leaflet, test.parts)
		if got := string(a.Method()); got != test.method {
			t.Errorf("%s:\ngot  %q\nwant %q", test.why, got, test.method)
		}
		if got := plainOf(a.Method()); got != test.leaflet {
			t.Errorf("%s: without links it is %q", test.why, got)
		}
	}
}

// What is not settled is asked about, at its place.
func TestQuestions(t *testing.T) {
	tests := []struct{ leaflet, words, asks string }{
		{"Add a handful of petals.\n", "a handful", "how much is that?"},
		{"Add plenty of salt.\n", "plenty of salt", "how much is that?"},
		{"Bake 1 lb. of clay until done.\n", "until done", "how does one see it"},
		{"Melt 1 lb. of wax over a gentle heat.\n", "gentle heat", "how hot is that?"},
		{"Stir in the rest.\n", "rest", "the rest of what?"},
		{"Add 3 drachms of oil.\n", "3 drachms", "weight or a volume"},
		{"Add 1 oz. of alum, the same of storax.\n", "the same of", "the same as what?"},
		{"Mix 2 oz. of galls and one of alum.\n", "one", "the measure is left out"},
		{"Mix two parts of lime to one of sand.\n", "two parts", "a part has no size"},
		{"Draw off 2 quarts.\n", "2 quarts", "of what?"},
		{"Heat it to 170 degrees.\n", "170 degrees", "whose degrees?"},
		{"Gum and alum, of each 1 oz., are mixed.\n", "1 oz", "one link tells one thing"},
		{"Take 1 oz. of gum.\n", "", "how much of gum is packed"},
		{"Take 1 pint of oil.\n", "", "whose pints and spoons"},
		{"Take 1 oz. of gum.\n", "", "how many pieces does it make?"},
	}
	for _, test := range tests {
		a := readWith(t, test.leaflet, "")
		found := slices.ContainsFunc(a.Questions, func(q Question) bool { return q.Words == test.words && strings.Contains(q.Asks, test.asks) })
		if !found {
			t.Errorf("%q: nothing asks %q about %q: %+v", test.leaflet, test.asks, test.words, a.Questions)
		}
		for _, q := range a.Questions {
			if q.End > q.Start && oneLine(test.leaflet[q.Start:q.End]) != q.Words {
				t.Errorf("%q: %+v is not where its words are", test.leaflet, q)
			}
		}
	}
}

func TestParts(t *testing.T) {
	tests := []struct{ why, parts, name, packed string }{
		{"a line with a unit", "- 200 g wax flakes\n", "wax flakes", "200 g"},
		{"a line with a count", "3 jars\n", "jars", "3"},
		{"a line with of", "1 1/2 lb of soda\n", "soda", "1 1/2 lb"},
		{"the amount behind", "Wax flakes: 200 g\n", "Wax flakes", "200 g"},
		{"CSV with a heading", "Item,Quantity,Unit\n\"Wax, flakes\",200,g\n", "Wax, flakes", "200 g"},
		{"CSV with semicolons, columns turned", "amount;what\n200 g;Wax\n", "Wax", "200 g"},
		{"CSV without an amount", "Item,Quantity\nLeaflet,\n", "Leaflet", ""},
		{"a byte order mark", "\ufeff3 jars\n", "jars", "3"},
	}
	for _, test := range tests {
		a := readWith(t, "Stir.\n", test.parts)
		if len(a.Things) != 1 || a.Things[0].Name != test.name || a.Things[0].Packed != test.packed {
			t.Errorf("%s: %+v", test.why, a.Things)
		}
	}
	if a := readWith(t, "Stir.\n", "at least 3 jars\n"); len(a.Things) != 0 && a.Things[0].Packed != "" {
		t.Errorf("how many are packed is open: %+v", a.Things[0])
	}
	a := readWith(t, "Stir.\n", "something else\n2 jars\n2 jars\n")
	asked := 0
	for _, q := range a.Questions {
		if q.Words == "something else" || q.Words == "jars" {
			asked++
		}
	}
	if asked != 2 {
		t.Errorf("a line that cannot be read and one that stands twice are asked about: %+v", a.Questions)
	}
}

// What is made, and what is a tool on the list; the bowl is the mixing bowl that was named before.
func TestYieldAndTools(t *testing.T) {
	for leaflet, said := range map[string]string{
		"Makes four coasters.\n": "4 coasters", "This kit yields 6 small tea lights for a party.\n": "6 small tea lights",
		"It makes 3 jars, each of 200 g.\n": "3 jars", "To make 5 gallons of ink, boil it.\n": "", "It makes a good wax.\n": "", "Makes 4.\n": "",
	} {
		a := readWith(t, leaflet, "")
		if a.Makes.Said != said || said != "" && !strings.Contains(string(a.Definition()), "makes: \""+said+"\"  # at 1:") {
			t.Errorf("%q: %+v\n%s", leaflet, a.Makes, a.Definition())
		}
	}
	a := readWith(t, "Pour it into the mixing bowl. Stir. Wipe the bowl. Take another bowl.\n", "wooden stick, 1\nglue stick, 20 g\nScissors, 2\n3 jars\n")
	var tools []string
	for _, tool := range a.Tools {
		tools = append(tools, tool.Key+" "+tool.Packed)
	}
	if want := []string{"wooden-stick 1", "scissors 2", "mixing-bowl ", "bowl "}; !slices.Equal(tools, want) {
		t.Errorf("the tools are %q, wanted %q", tools, want)
	}
	if len(a.Things) != 2 || a.Things[0].Key != "glue-stick" || a.Things[1].Key != "jars" {
		t.Errorf("the things are %+v", a.Things)
	}
}

// Proposals are taken and left one by one, and the text is written with those accepted.
func TestOneByOne(t *testing.T) {
	a := readWith(t, "Take 1 oz. of gum. It takes 20 minutes.\n", "")
	gum := a.Proposals[slices.IndexFunc(a.Proposals, func(p *Proposal) bool { return p.Kind == Amount })]
	time := a.Proposals[slices.IndexFunc(a.Proposals, func(p *Proposal) bool { return p.Kind == Time })]
	if !a.Accept(gum.ID, false) || strings.Contains(string(a.Method()), "take:") {
		t.Errorf("a proposal that was left is written: %s", a.Method())
	}
	if a.Accept(time.ID, true) {
		t.Error("what has no destination was accepted")
	}
	if !a.Choose(time.ID, 1) || !strings.Contains(string(a.Method()), "[20 minutes](wait:)") || time.Open != "" {
		t.Errorf("an alternative that was chosen is not written: %s", a.Method())
	}
	if !a.Accept(gum.ID, true) || !a.Choose(gum.ID, 0) || !strings.Contains(string(a.Method()), "(use:gum)") {
		t.Errorf("an alternative does not take the place of the first: %s", a.Method())
	}
	if a.Accept(0, true) || a.Choose(99, 0) || a.Choose(gum.ID, 9) {
		t.Error("what is not there was accepted")
	}
}

func TestRefused(t *testing.T) {
	for leaflet, says := range map[string]string{
		"Take [200 g of wax](take:wax).\n":      "already has links",
		"Text\n\n" + added + "\n":               "already has links",
		"nul \x00 here":                         "cannot be read",
		"bad \xff bytes":                        "cannot be read",
		strings.Repeat("a long leaflet ", 5000): "cannot be read",
	} {
		if _, err := Read(source.NewFile("leaflet.txt", []byte(leaflet)), nil, Options{}); err == nil || !strings.Contains(err.Error(), says) {
			t.Errorf("%.30q: %v does not say %q", leaflet, err, says)
		}
	}
}

// opened opens what was written as any kit folder is.
func opened(t *testing.T, a *Adoption) {
	t.Helper()
	folder := fstest.MapFS{"kit.yaml": {Data: a.Definition()}, "method.md": {Data: a.Method()}}
	k, found := instructions.Open(folder, "adopted")
	if k == nil {
		t.Fatalf("kit.yaml cannot be read: %v\n%s", found, a.Definition())
	}
	for _, f := range found {
		switch f.Rule {
		case "refused-file", "unreadable-file", "unreadable-amount", "unknown-target", "wrong-type", "unknown-field", "bad-amount", "duplicate-key", "duplicate-name", "duplicate-step":
			t.Errorf("%s: %s\n%s\n%s", f.Rule, f.Found, a.Definition(), a.Method())
		}
	}
}

// Every receipt becomes a folder that can be read, and none loses a byte.
func TestReceiptsBecomeKits(t *testing.T) {
	for _, r := range append(receipts(t), receiptsOf(t, "testdata/unseen.txt")...) {
		a := adopted(t, r.text)
		opened(t, a)
		if plainOf(a.Method()) != r.text {
			t.Errorf("%s: the text was changed", r.title)
		}
	}
}

func FuzzAdopt(f *testing.F) {
	for _, seed := range []string{
		"Take 1 oz. of gum.\n", "Galls, 1 lb.; gum, 3 oz.\n\n1. Stir 5 min.\n2) Leave it\r\n\r\n## Head\n", "[x](y) 2 g of [wax", "`1 oz of gum`",
		"    2 oz of alum\n\n> 3 g of wax", "wax, of each 1 lb, the rest of the wax", "\ufeff1 g x", "a\\[1 oz of gum\\](take", "# T\n\n3 jars\n4 lids\n",
		"## [a](b)\n1 oz of gum", "1 oz of <b>gum</b>", "Item;amount\n\"", "½ a drachm; — (2 g) each and and", "## Head #\n\nadd 2 g of “wäx”",
	} {
		f.Add(seed, "200 g wax\n3 jars")
	}
	for _, r := range receiptsForFuzz() {
		f.Add(r, "Item,Quantity\nwax,3 g\n")
	}
	f.Fuzz(func(t *testing.T, leaflet, parts string) {
		a, err := Read(source.NewFile("leaflet.txt", []byte(leaflet)), source.NewFile("parts.txt", []byte(parts)), Options{})
		if err != nil {
			return
		}
		if got := plainOf(a.Method()); got != leaflet {
			t.Fatalf("%q became %q, and that without links %q", leaflet, a.Method(), got)
		}
		opened(t, a)
		for _, p := range a.Proposals {
			if p.Start < 0 || p.End < p.Start || p.End > len(leaflet) || p.Why == "" || p.Accepted && p.Open != "" {
				t.Fatalf("%q: %+v", leaflet, p)
			}
		}
		for _, key := range keysOf(a) {
			if why, ok := load.IsKey(key); !ok {
				t.Fatalf("%q: %s", leaflet, why)
			}
		}
		_, _ = a.List(), a.Report()
	})
}

// keysOf are the keys of what a leaflet is about.
func keysOf(a *Adoption) (keys []string) {
	for _, t := range a.Things {
		keys = append(keys, t.Key)
	}
	for _, t := range a.Tools {
		keys = append(keys, t.Key)
	}
	return keys
}

// TestKeysOfLists: whatever a thing or tool on a list is called, what it stands under in
// kit.yaml is a key.
func TestKeysOfLists(t *testing.T) {
	a := readWith(t, "Press the moss.\n", "Item,Amount\nBox,1\nWonderful silvery northern mosses from old quarries,20 g\n"+
		"Wonderful silvery northern mosses from bogs,5 g\n12 mm cord,3 m\nNo,1\n墨,2 g\nlong bowl with a rim for the best of all the mosses bowl,1\n")
	for _, key := range keysOf(a) {
		if why, ok := load.IsKey(key); !ok {
			t.Error(why)
		}
	}
	want := []string{"the-box", "wonderful-silvery-northern-mosses-from", "wonderful-silvery-northern-mosses-from-2", "the-12-mm-cord", "the-no", "thing",
		"long-bowl-with-a-rim-for-the-best-of-all"}
	if diff := cmp.Diff(want, keysOf(a)); diff != "" {
		t.Error(diff)
	}
}

var addedHeading = regexp.MustCompile(`## \[Step [0-9]+\]\(step:[^()\s]*\)` + regexp.QuoteMeta(added) + "\n\n")

// plainOf gives back the leaflet that a method was written from, byte for byte: without its links
// and without the headings that were added.
func plainOf(method []byte) string {
	return string(withoutLinks(addedHeading.ReplaceAll(method, nil)).text)
}
