package render

import (
	"encoding/json"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"tallyfold/instructions"
	"tallyfold/kit/ledger"
	"tallyfold/kit/quantity"
	"tallyfold/templates"
)

const (
	schemaOrg    = "http://schema.org/"
	isKind       = "http://www.w3.org/1999/02/22-rdf-syntax-ns#type"
	subClassOf   = "http://www.w3.org/2000/01/rdf-schema#subClassOf"
	domain       = schemaOrg + "domainIncludes"
	rangeOf      = schemaOrg + "rangeIncludes"
	supersededBy = schemaOrg + "supersededBy"
)

// vocabulary has, by term and predicate, what schema.org says (testdata/schema.org/NOTICE.md).
type vocabulary map[string]map[string][]string

func readVocabulary(t *testing.T) vocabulary {
	t.Helper()
	text, err := os.ReadFile("testdata/schema.org/terms.nt")
	if err != nil {
		t.Fatal(err)
	}
	triple := regexp.MustCompile(`(?m)^<([^>]*)> <([^>]*)> <([^>]*)> \.$`)
	v := vocabulary{}
	for _, m := range triple.FindAllStringSubmatch(string(text), -1) {
		if v[m[1]] == nil {
			v[m[1]] = map[string][]string{}
		}
		v[m[1]][m[2]] = append(v[m[1]][m[2]], m[3])
	}
	return v
}

// isA says whether a type is another or narrower than it.
func (v vocabulary) isA(one, other string) bool {
	return one == other || slices.ContainsFunc(v[one][subClassOf], func(broader string) bool { return v.isA(broader, other) })
}

// check holds a node of JSON-LD against the vocabulary: each name is a property of its
// type, and each value of a kind that the property may have.
func (v vocabulary) check(t *testing.T, node map[string]any) {
	t.Helper()
	kind := schemaOrg + node["@type"].(string)
	if !slices.Contains(v[kind][isKind], "http://www.w3.org/2000/01/rdf-schema#Class") {
		t.Fatalf("schema.org has no type %s", kind)
	}
	for name, value := range node {
		if strings.HasPrefix(name, "@") {
			continue
		}
		property := v[schemaOrg+name]
		if property == nil || len(property[supersededBy]) > 0 {
			t.Errorf("schema.org has no property %s, or has replaced it", name)
			continue
		}
		if !slices.ContainsFunc(property[domain], func(of string) bool { return v.isA(kind, of) }) {
			t.Errorf("%s is no property of %s", name, kind)
		}
		values, several := value.([]any)
		if !several {
			values = []any{value}
		}
		for _, one := range values {
			v.checkValue(t, name, one)
		}
	}
}

func (v vocabulary) checkValue(t *testing.T, name string, value any) {
	t.Helper()
	allowed := v[schemaOrg+name][rangeOf]
	kinds := map[string]bool{}
	for _, one := range allowed {
		kinds[strings.TrimPrefix(one, schemaOrg)] = true
	}
	switch value := value.(type) {
	case map[string]any:
		kind := schemaOrg + value["@type"].(string)
		if !slices.ContainsFunc(allowed, func(one string) bool { return v.isA(kind, one) }) {
			t.Errorf("%s may not be a %s", name, kind)
		}
		v.check(t, value)
	case float64:
		if !kinds["Number"] && !kinds["Integer"] {
			t.Errorf("%s may not be a number", name)
		}
	case string:
		if !kinds["Text"] && !kinds["Duration"] && !kinds["URL"] {
			t.Errorf("%s may not be a text", name)
		}
		if kinds["Duration"] && !isoForm.MatchString(value) {
			t.Errorf("%s is no duration of ISO 8601: %q", name, value)
		}
	}
}

// isoForm is the form of a duration in ISO 8601-1:2019, 5.5.2.3, as far as days.
var isoForm = regexp.MustCompile(`^P(\d+D)?(T(\d+H)?(\d+M)?(\d+S)?)?$`)

// dataOf reads the data block of a page.
func dataOf(t *testing.T, page string) []map[string]any {
	t.Helper()
	_, after, found := strings.Cut(page, `<script type="application/ld+json">`)
	text, _, ended := strings.Cut(after, "</script>")
	if !found || !ended {
		t.Fatal("the page has no data block")
	}
	var one map[string]any
	var several []map[string]any
	if json.Unmarshal([]byte(text), &one) == nil {
		return []map[string]any{one}
	}
	if err := json.Unmarshal([]byte(text), &several); err != nil {
		t.Fatal(err)
	}
	return several
}

// What programs read of each example is in schema.org's words; every supply has the
// amount of the ledger, every step stands there with its cautions, in each language.
func TestHowTo(t *testing.T) {
	v := readVocabulary(t)
	for _, folder := range exampleFolders(t) {
		k, _ := instructions.Open(os.DirFS(folder), filepath.Base(folder))
		l := ledger.Follow(k)
		booklet, err := InLanguages(k, l, templates.Shipped(), Options{}, Languages(k))
		if err != nil {
			t.Fatal(err)
		}
		page, err := booklet.HTML()
		if err != nil {
			t.Fatal(err)
		}
		all := dataOf(t, string(page))
		if len(all) != len(Languages(k)) {
			t.Fatalf("%s: %d descriptions for %d languages", folder, len(all), len(Languages(k)))
		}
		for i, node := range all {
			v.check(t, node)
			if node["@context"] != "https://schema.org" || node["inLanguage"] != Languages(k)[i] {
				t.Errorf("%s: context %v, language %v", folder, node["@context"], node["inLanguage"])
			}
			checkSupplies(t, node, k.Folder, l)
			kinds := map[string]int{}
			countKinds(node, kinds)
			cautions := 0
			for _, part := range k.Method.Parts {
				cautions += len(part.Cautions)
				for _, step := range part.Steps {
					cautions += len(step.Cautions)
				}
			}
			steps := len(k.Method.Steps())
			if kinds["HowToStep"] != steps || kinds["HowToDirection"] != steps || kinds["HowToTip"] < cautions {
				t.Errorf("%s: %v for %d steps and %d cautions", folder, kinds, steps, cautions)
			}
		}
	}
}

func checkSupplies(t *testing.T, node map[string]any, name string, l *ledger.Ledger) {
	t.Helper()
	supplies := node["supply"].([]any)
	balances := append(slices.Clone(l.Balances), l.Household...)
	if len(supplies) != len(balances) {
		t.Fatalf("%s: %d supplies, %d in the ledger", name, len(supplies), len(balances))
	}
	told := 0
	for i, balance := range balances {
		amount, has := supplies[i].(map[string]any)["requiredQuantity"].(map[string]any)
		if !has {
			if balance.Used.Known() && !balance.NeverUsed() && howToUnits[balance.Used.Dimension][1] != "" {
				t.Errorf("%s: of %s no amount is told", name, balance.Thing)
			}
			continue
		}
		told++
		if amount["value"] != balance.Used.Value().Float() {
			t.Errorf("%s: %s is %v, in the ledger %s", name, balance.Thing, amount["value"], balance.Used.Value())
		}
	}
	if told == 0 {
		t.Errorf("%s: no amount is told", name)
	}
}

func countKinds(node map[string]any, kinds map[string]int) {
	kinds[node["@type"].(string)]++
	for _, value := range node {
		several, ok := value.([]any)
		if !ok {
			continue
		}
		for _, one := range several {
			if below, ok := one.(map[string]any); ok {
				countKinds(below, kinds)
			}
		}
	}
}

// Durations by ISO 8601-1:2019, 5.5.2; the first three rows are examples on schema.org's
// pages of totalTime and cookTime, told from memory.
func TestISODuration(t *testing.T) {
	for _, row := range []struct {
		seconds int64
		want    string
	}{
		{30 * 60, "PT30M"}, {3600, "PT1H"}, {90 * 60, "PT1H30M"}, {0, ""}, {-5, ""}, {1, "PT1S"}, {59, "PT59S"}, {61, "PT1M1S"},
		{86400, "P1D"}, {4 * 86400, "P4D"}, {86400 + 3600, "P1DT1H"}, {7 * 86400, "P7D"}, {86399, "PT23H59M59S"}, {90061, "P1DT1H1M1S"},
	} {
		got := isoDuration(quantity.Whole(row.seconds))
		if got != row.want || got != "" && !isoForm.MatchString(got) {
			t.Errorf("%d s: %q, want %q", row.seconds, got, row.want)
		}
	}
	if got := isoDuration(quantity.Whole(1).Over(quantity.Whole(2))); got != "PT1S" {
		t.Errorf("half a second: %q", got)
	}
}

// Nothing that a maker writes ends the data block, and programs read it as it was written.
func TestHowToIsClosed(t *testing.T) {
	const name = `A </script><script>alert(1)</script> <!-- & "kit"`
	folder := copyOf(t, "../examples/harbour-candles")
	folder["kit.yaml"].Data = []byte(strings.Replace(string(folder["kit.yaml"].Data), "name: Harbour candles", "name: '"+name+"'", 1))
	page, err := bookletIn(t, folder, "harbour-candles").HTML()
	if err != nil {
		t.Fatal(err)
	}
	if strings.Count(string(page), "<script") != 1 || strings.Count(string(page), "</script") != 1 {
		t.Error("the name broke out of the data block")
	}
	if got := dataOf(t, string(page))[0]["name"]; got != name {
		t.Errorf("the name is read as %q", got)
	}
}
