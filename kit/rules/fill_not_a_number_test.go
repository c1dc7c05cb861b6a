package rules_test

import (
	"strings"
	"testing"
	"testing/fstest"

	"tallyfold/instructions"
	"tallyfold/kit/diag"
	"tallyfold/kit/ledger"
	"tallyfold/kit/rules"
	"tallyfold/kit/schedule"
)

// A fill told by eye is found once whatever the language, and one that is shared out
// equally never is.
func TestFillsWithoutANumberInEveryLanguage(t *testing.T) {
	for _, c := range []struct{ tag, fill, want string }{
		{"en", "Fill [each jar to just below the rim](fill:jar).", "fill-not-a-number"},
		{"de", "Füll [jedes Glas bis kurz unter den Rand](fill:jar).", "unreadable-amount"},
		{"fr", "Remplissez [chaque pot à ras bord](fill:jar).", "unreadable-amount"},
		{"en", "Share the wax equally among [the jars](fill:jar).", ""},
		{"de", "Verteil das Wachs gleichmäßig auf [die Gläser](fill:jar).", ""},
		{"fr", "Répartissez la cire également entre [les pots](fill:jar).", ""},
	} {
		kit := "name: Quay\nlanguage: " + c.tag + "\nmakes: 3\ncomponents:\n" +
			"  wax: {name: Wax, packed: 591 g, density: \"0.9 g/mL liquid\"}\n" +
			"  jar: {name: Jar, packed: 3, container: {brimful: 250 mL, headspace: 20 mL}}\n" +
			"tools:\n  jug: {name: Jug, from: box, essential: true, holds: 1 L}\n"
		if c.tag != "en" {
			kit = strings.Replace(kit, "0.9 g/mL", "0,9 g/mL", 1)
		}
		method := "## [A](step:melt?in=jug)\n\n[](take:wax)\n\n## [B](step:fill?in=jug)\n\n" + c.fill + "\n"
		k, found := instructions.Open(fstest.MapFS{"kit.yaml": {Data: []byte(kit)}, "method.md": {Data: []byte(method)}}, "fill")
		if k == nil {
			t.Fatal(told(found))
		}
		list := append(diag.List{}, found...)
		list = append(list, rules.Check(rules.Subject{Kit: k, Ledger: ledger.Follow(k), Plan: schedule.Of(k)})...)
		var names []string
		for _, f := range list {
			if f.Rule == "fill-not-a-number" || f.Rule == "unreadable-amount" || f.Rule == "bad-amount" {
				names = append(names, f.Rule)
			}
		}
		if got := strings.Join(names, ", "); got != c.want {
			t.Errorf("%s %q: %q, want %q", c.tag, c.fill, got, c.want)
		}
	}
}
