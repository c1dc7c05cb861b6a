package load

import (
	"fmt"
	"testing"

	"tallyfold/kit"
)

// TestSettle: names that only the method and the rules can settle.
func TestSettle(t *testing.T) {
	k, found := readText(`name: Gels
makes: 6 jars
components: {jar: {packed: 6}}
runs:
  - {name: Rosemary, parts: [pour, finsh]}
accept:
  - {rule: left-over, about: jar, because: to test}
  - {rule: left-ovr, about: fill, because: to test}
  - {rule: left-over, about: weeping, because: to test}
  - {rule: left-over, about: time, because: to test}
  - {rule: left-over, about: everything, because: to test}
`)
	if len(found) > 0 {
		t.Fatal(tell(found))
	}
	k.Method.Parts = []*kit.Part{{ID: "pour", Steps: []*kit.Step{{ID: "fill"}}}, {ID: "finish"}}
	k.Troubles = []*kit.Trouble{{ID: "weeping"}}
	var got []string
	for _, f := range Settle(k, []string{"left-over", "packed-too-little"}) {
		if f.Rule != MissingReference {
			t.Errorf("rule %s", f.Rule)
		}
		got = append(got, f.Where.Text())
	}
	if want := "[finsh left-ovr everything]"; fmt.Sprint(got) != want {
		t.Errorf("found %v, want %s", got, want)
	}
}
