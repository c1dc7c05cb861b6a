package rules_test

import (
	"testing"
	"testing/fstest"

	"tallyfold/instructions"
	"tallyfold/kit/ledger"
	"tallyfold/kit/rules"
	"tallyfold/kit/schedule"
)

// Hot wax and a knife are not for an eight-year-old alone in any language that is read, and a
// grown-up who is called in settles it. Words from memory.
func TestAgesInEveryLanguage(t *testing.T) {
	for _, one := range []struct{ language, knife, step, grownUp string }{
		{"en", "Craft knife", "Cut it with [the craft knife](tool:knife) and warm it [to 75 °C](warm:).", "An adult does this."},
		{"de", "Bastelmesser", "Mit [dem Bastelmesser](tool:knife) schneiden und [auf 75 °C](warm:) erwärmen.", "Das macht ein Erwachsener."},
		{"fr", "Cutter", "Coupez avec [le cutter](tool:knife) et chauffez [à 75 °C](warm:).", "Un adulte le fait."},
		{"es", "Cúter", "Corte con [el cúter](tool:knife) y caliente [a 75 °C](warm:).", "Lo hace un adulto."},
		{"nl", "Hobbymes", "Snijd met [het hobbymes](tool:knife) en verwarm [tot 75 °C](warm:).", "Dat doet een volwassene."},
		{"it", "Taglierino", "Tagliate con [il taglierino](tool:knife) e scaldate [a 75 °C](warm:).", "Lo fa un adulto."},
	} {
		for more, want := range map[string]int{"": 1, " " + one.grownUp: 0} {
			k, found := instructions.Open(fstest.MapFS{
				"kit.yaml": {Data: []byte("language: " + one.language + "\nname: One\nmakes: 1 piece\naudience: {age: 8+}\ncomponents:\n  wax: {name: Wax, packed: 100 g}\n" +
					"tools:\n  pan: {name: Pan, from: customer}\n  knife: {name: " + one.knife + ", from: customer}\n")},
				"method.md": {Data: []byte("## [X](step:do-it?in=pan)\n\n" + one.step + more + "\n")},
			}, "one")
			if k == nil {
				t.Fatal(found)
			}
			got, sums := 0, 0
			for _, f := range rules.Check(rules.Subject{Kit: k, Ledger: ledger.Follow(k), Plan: schedule.Of(k)}) {
				if f.Rule == "age-does-not-match" {
					got, sums = got+1, len(f.Sum)
				}
			}
			if got != want || want == 1 && sums != 2 {
				t.Errorf("%s%s: %d findings with %d reasons", one.language, more, got, sums)
			}
		}
	}
}
