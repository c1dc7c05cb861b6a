package hazard_test

import (
	"fmt"
	"strings"
	"testing"
	"testing/fstest"

	"tallyfold/instructions"
	"tallyfold/kit"
	"tallyfold/kit/hazard"
	"tallyfold/kit/ledger"
)

func opened(t *testing.T, language, more, method string) *kit.Kit {
	t.Helper()
	k, found := instructions.Open(fstest.MapFS{
		"kit.yaml": {Data: []byte("language: " + language + "\nname: One\nmakes: 1 piece\ncomponents:\n" + more +
			"tools:\n  pan: {name: Saucepan, from: customer, holds: 1 L}\n")},
		"method.md": {Data: []byte(method)},
	}, "one")
	if k == nil {
		t.Fatal(found)
	}
	return k
}

// told gives each action as "hazard by what: place".
func told(k *kit.Kit) string {
	var all []string
	for _, a := range hazard.In(k, ledger.Follow(k)) {
		all = append(all, fmt.Sprintf("%d %s: %s", a.Step.Number, a.Hazard.ID, a.Place))
	}
	return strings.Join(all, "; ")
}

const wax = "  wax: {name: Wax, packed: 100 g}\n"

func TestActions(t *testing.T) {
	for _, c := range []struct{ why, language, more, method, want string }{
		{"warmed above 49 °C, with nothing said", "en", wax, "## Melt\n\nPut [all of the wax](take:wax?into=pan) into the pan and warm it [to 75 °C](warm:).", "1 hot: nowhere"},
		{"warmed to hand heat", "en", wax, "## Melt\n\nPut [all of the wax](take:wax?into=pan) into the pan and warm it [to 40 °C](warm:).", ""},
		{"warmed, and how far is not told", "en", wax, "## Melt\n\nPut [all of the wax](take:wax?into=pan) into the pan and warm it [until clear](warm:).", "1 hot: nowhere"},
		{"a caution before it", "en", wax, "## Melt\n\n> CAUTION: It burns.\n\nPut [all of the wax](take:wax?into=pan) in and warm it [to 75 °C](warm:).", "1 hot: before it, in the step"},
		{"a caution behind it", "en", wax, "## Melt\n\nPut [all of the wax](take:wax?into=pan) in and warm it [to 75 °C](warm:).\n\n> CAUTION: It burns.", "1 hot: after it, in the step"},
		{"a caution of something else", "en", wax, "## Melt\n\n> CAUTION: Keep it dry.\n\nPut [all of the wax](take:wax?into=pan) in and warm it [to 75 °C](warm:).", "1 hot: nowhere"},
		{"a caution at the head of the part", "en", wax, "# Candles\n\n> WARNING: It gets hot.\n\n## Melt\n\nPut [all of the wax](take:wax?into=pan) in and warm it [to 75 °C](warm:).", "1 hot: at the head of the part"},
		{"a caution that says by a link what it is of", "en", wax, "## Melt\n\n> CAUTION: Mind [your fingers](hazard:hot).\n\nPut [all of the wax](take:wax?into=pan) in and warm it [to 75 °C](warm:).", "1 hot: before it, in the step"},
		{"a link to another hazard does not answer this one", "en", wax, "## Melt\n\n> CAUTION: The [hot](hazard:dust) dust.\n\nPut [all of the wax](take:wax?into=pan) in and warm it [to 75 °C](warm:).", "1 hot: nowhere"},
		{"what a pack bears, where it is opened", "en", "  soda: {name: Soda, packed: 100 g, hazards: [H319, dust]}\n", "## Mix\n\nPut [all of the soda](take:soda?into=pan) in.", "1 H319: nowhere; 1 dust: nowhere"},
		{"a hazard of the maker's own", "en", "  glue: {name: Glue, packed: 100 g, hazards: grab}\nhazards:\n  grab: {happens: It grabs., avoid: Hold it., signal: caution}\n", "## Mix\n\nPut [all of the glue](take:glue?into=pan) in.", "1 grab: nowhere"},
		{"a German kit, by German words", "de", "  wachs: {name: Wachs, packed: 100 g}\n", "## Schmelzen\n\n> VORSICHT: Heißes Wachs verbrennt die Haut.\n\n[Das ganze Wachs](take:wachs?into=pan) in den Topf geben und [auf 75 °C](warm:) erwärmen.", "1 hot: before it, in the step"},
		{"a handle is no word on burns from plaster", "en", "  plaster: {name: Plaster, packed: 100 g, hazards: plaster}\n", "## Mix\n\n> CAUTION: Lift the bag by its handle.\n\nPut [all of the plaster](take:plaster?into=pan) in.", "1 plaster: nowhere"},
		{"a dry powder, by its name", "en", "  gum: {name: Gelling powder, packed: 10 g}\n", "## Mix\n\nPut [all of the gelling powder](take:gum?into=pan) in.", "1 dust: nowhere"},
		{"a dry powder, by its looks", "en", "  gum: {name: Gum, looks: white powder, packed: 10 g}\n", "## Mix\n\nPut [all of the gum](take:gum?into=pan) in.", "1 dust: nowhere"},
		{"a powder within a German word", "de", "  gum: {name: Geliermittelpulver, packed: 10 g}\n", "## Mischen\n\n[Alles Geliermittelpulver](take:gum?into=pan) hineingeben.", "1 dust: nowhere"},
		{"a powder puff is packed by the piece", "en", "  gum: {name: Powder puff, packed: 1}\n", "## Mix\n\nTake [the powder puff](use:gum).", ""},
		{"heat that is left alone", "en", wax, "## Melt\n\nWarm it [to 75 °C](warm:) and leave it [20 minutes](wait:).", "1 hot: nowhere; 1 unattended: nowhere"},
		{"heat that is left for a moment", "en", wax, "## Melt\n\nWarm it [to 75 °C](warm:) and leave it [4 minutes](wait:).", "1 hot: nowhere"},
		{"heat that is turned off first", "en", wax, "## Melt\n\nWarm it [to 75 °C](warm:). Turn off the stove and leave it [12 hours](wait:).", "1 hot: nowhere"},
		{"what has cooled before the wait", "en", wax, "## Melt\n\nWarm it [to 75 °C](warm:), let it cool [to 40 °C](cool:) and leave it [1 hour](wait:).", "1 hot: nowhere"},
		{"the stove, turned off in words with a link", "en", wax, "## Melt\n\nWarm it [to 75 °C](warm:). Take it off [the stove](tool:pan) and leave it [1 hour](wait:).", "1 hot: nowhere"},
		{"a lid that is lifted leaves the heat on", "en", wax, "## Melt\n\nWarm it [to 75 °C](warm:). Lift the lid and leave it [1 hour](wait:).", "1 hot: nowhere; 1 unattended: nowhere"},
		{"on the heat since the step before", "en", wax, "## Melt\n\nWarm it [to 75 °C](warm:).\n\n## Simmer\n\nLeave it [1 hour](wait:).", "1 hot: nowhere; 2 unattended: nowhere"},
		{"turned off at the end of the step before", "en", wax, "## Melt\n\nWarm it [to 75 °C](warm:). Turn the heat off.\n\n## Rest\n\nLeave it [1 hour](wait:).", "1 hot: nowhere"},
		{"turned off where the next step begins", "en", wax, "## Melt\n\nWarm it [to 75 °C](warm:).\n\n## Rest\n\nTurn off the heat. Leave it [1 hour](wait:).", "1 hot: nowhere"},
		{"a part later, where something else is made", "en", wax, "# One\n\n## Melt\n\nWarm it [to 75 °C](warm:).\n\n# Two\n\n## Rest\n\nLeave it [1 hour](wait:).", "1 hot: nowhere"},
		{"“leave it where it stands” is no word on staying", "en", wax, "## Melt\n\n> CAUTION: It is hot. Leave it where it stands.\n\nWarm it [to 75 °C](warm:) and wait [1 hour](wait:).", "1 hot: before it, in the step; 1 unattended: nowhere"},
		{"“do not leave the room” is one", "en", wax, "## Melt\n\n> CAUTION: It is hot. Do not leave the room.\n\nWarm it [to 75 °C](warm:) and wait [1 hour](wait:).", "1 hot: before it, in the step; 1 unattended: before it, in the step"},
		{"a candle, to be burned", "en", wax + "sold as: candle\n", "## Melt\n\nPut [all of the wax](take:wax?into=pan) in.\n\n## Rest\n\nLeave it [3 days](wait:).", "2 burning: nowhere"},
		{"a candle, with its caution", "en", wax + "sold as: candle\n", "## Melt\n\nPut [all of the wax](take:wax?into=pan) in.\n\n## Rest\n\n> WARNING: Burn it within sight.\n\nLeave it [3 days](wait:).", "2 burning: before it, in the step"},
		{"flash point and heat", "en", "  oil: {name: Oil, packed: 10 g, flash point: 60 °C}\n", "## Mix\n\nWarm [to 70 °C](warm:) and put [all of the oil](take:oil?into=pan) in.", "1 hot: nowhere; 1 flammable: nowhere"},
		{"flash point above the heat", "en", "  oil: {name: Oil, packed: 10 g, flash point: 80 °C}\n", "## Mix\n\nWarm [to 70 °C](warm:) and put [all of the oil](take:oil?into=pan) in.", "1 hot: nowhere"},
	} {
		if got := told(opened(t, c.language, c.more, c.method)); got != c.want {
			t.Errorf("%s: %q, want %q", c.why, got, c.want)
		}
	}
}

// Words on burning, which are read when the candle is done, answer for it.
func TestBurningIsToldInWords(t *testing.T) {
	k, found := instructions.Open(fstest.MapFS{
		"kit.yaml":  {Data: []byte("name: One\nmakes: 1 candle\nsold as: candle\ncomponents:\n" + wax + "tools:\n  pan: {name: Saucepan, from: customer}\n")},
		"method.md": {Data: []byte("## [Melt](step:melt?in=pan)\n\nPut [all of the wax](take:wax) in.\n")},
		"words.md":  {Data: []byte("## Burning\n\n> WARNING: Burn it within\n> sight.\n")},
	}, "one")
	if k == nil {
		t.Fatal(found)
	}
	if got := told(k); got != "1 burning: in words.md, on its use" {
		t.Errorf("it is %q", got)
	}
}

// What is hot stays hot where it goes next (moves), and glass that takes it can crack.
func TestHotFromVesselToVessel(t *testing.T) {
	for hot, want := range map[string]string{"70": "1 hot: nowhere; 2 hot-pour: nowhere; 2 hot-glass: nowhere", "40": "2 glass: nowhere"} {
		k, found := instructions.Open(fstest.MapFS{
			"kit.yaml": {Data: []byte("name: One\nmakes: 1 piece\ncomponents:\n" + wax +
				"tools:\n  pan: {name: Saucepan, from: customer, holds: 1 L}\n  bowl: {name: Glass bowl, from: customer, holds: 1 L}\n")},
			"method.md": {Data: []byte("## [Melt](step:melt?in=pan)\n\nPut [all of the wax](take:wax) in and warm it [to " + hot + " °C](warm:).\n\n" +
				"## [Move](step:move-on)\n\nPour [all of it](move:pan?into=bowl) into the bowl.\n")},
		}, "one")
		if k == nil || found.MustFix() {
			t.Fatal(found)
		}
		if got := told(k); got != want {
			t.Errorf("at %s °C: %q, want %q", hot, got, want)
		}
	}
}

// Glass is known by the names of what takes something, German and Dutch compounds too, and is
// not looked for in names of other stuff. Filled hot it cracks; filled cold it can still break,
// which is told once.
func TestGlass(t *testing.T) {
	for _, c := range []struct{ language, name, warmed, all, want string }{
		{"en", "Glass jar", "to 75 °C", "all of it", "hot-glass"},
		{"en", "Jam jar", "to 75 °C", "all of it", "hot-glass"},
		{"en", "Glass jar", "to 30 °C", "all of it", "glass"},
		{"en", "Tin", "to 75 °C", "all of it", ""},
		{"en", "Fibreglass mould", "to 75 °C", "all of it", ""},
		{"en", "Hourglass mould", "to 75 °C", "all of it", ""},
		{"de", "Glas", "auf 75 °C", "alles", "hot-glass"},
		{"de", "Kerzenglas", "auf 75 °C", "alles", "hot-glass"},
		{"de", "Plexiglas", "auf 75 °C", "alles", ""},
		{"nl", "Kaarsenglas", "tot 75 °C", "alles", "hot-glass"},
		{"fr", "Pot en verre", "à 75 °C", "tout", "hot-glass"},
		{"es", "Vaso de vidrio", "a 75 °C", "todo", "hot-glass"},
		{"it", "Vasetto di vetro", "a 75 °C", "tutto", "hot-glass"},
	} {
		for _, way := range []string{"fill", "move"} {
			fill := "[" + c.all + "](fill:jar)"
			if way == "move" {
				fill = "[" + c.all + "](move:pan?into=jar)"
			}
			k, found := instructions.Open(fstest.MapFS{
				"kit.yaml": {Data: []byte("language: " + c.language + "\nname: One\nmakes: 1 piece\ncomponents:\n" + wax +
					"  jar: {name: " + c.name + ", packed: 1, container: {brimful: 300 mL, headspace: 5 mL}}\ntools:\n  pan: {name: Pan, from: customer, holds: 1 L}\n")},
				"method.md": {Data: []byte("## [A](step:a?in=pan)\n\n[100 g](take:wax), [" + c.warmed + "](warm:).\n\n## [B](step:b?in=pan)\n\n" + fill + ".\n\n## [C](step:c)\n\n[100 g](take:wax?into=jar).\n")},
			}, "one")
			if k == nil || found.MustFix() {
				t.Fatalf("%s: %v", c.name, found)
			}
			var got []string
			pours := false
			for _, a := range hazard.In(k, ledger.Follow(k)) {
				if strings.HasSuffix(a.Hazard.ID, "glass") {
					got = append(got, a.Hazard.ID)
				}
				pours = pours || a.Hazard.ID == "hot-pour"
			}
			if strings.Join(got, " ") != c.want || pours == strings.Contains(c.warmed, "30") {
				t.Errorf("%s, %s, %s: %q, want %q; hot-pour: %t", c.name, c.warmed, way, got, c.want, pours)
			}
		}
	}
}

// A jar that is filled twice, hot both times, is told in both steps; and what drips when it is
// lifted out of a hot bath is hot, though nobody pours it.
func TestEachHotStepIsTold(t *testing.T) {
	yaml := "name: One\nmakes: 1 piece\ncomponents:\n" + wax + "  yarn: {name: Yarn, packed: 50 g, carries: 150 %}\n" +
		"  jar: {name: Tin, packed: 1, container: {brimful: 300 mL, headspace: 5 mL}}\nhousehold:\n  water: {name: Tap water, density: 0.998 g/mL}\n" +
		"tools:\n  pan: {name: Pan, from: customer, holds: 1 L}\n  bowl: {name: Bowl, from: customer, holds: 1 L}\n"
	for _, c := range []struct{ method, want string }{
		{"## [A](step:a?in=pan)\n\n[100 g](take:wax), [to 75 °C](warm:).\n\n## [B](step:b?in=pan)\n\n[1/2 of it](fill:jar).\n\n## [C](step:c?in=pan)\n\n[the rest](fill:jar).\n",
			"1 hot: nowhere; 2 hot-pour: nowhere; 3 hot-pour: nowhere"},
		{"## [A](step:a?in=pan)\n\n[500 mL](take:water) and [all of the yarn](take:yarn), [to 75 °C](warm:).\n\n## [B](step:b)\n\nLift [the yarn](move:yarn?from=pan&into=bowl) out.\n",
			"1 hot: nowhere; 2 hot: nowhere"},
		{"## [A](step:a?in=pan)\n\n[500 mL](take:water) and [all of the yarn](take:yarn), [to 75 °C](warm:).\n\n## [B](step:b)\n\nLet it cool [to 35 °C](cool:?in=pan). Lift [the yarn](move:yarn?from=pan&into=bowl) out.\n",
			"1 hot: nowhere"},
	} {
		k, found := instructions.Open(fstest.MapFS{"kit.yaml": {Data: []byte(yaml)}, "method.md": {Data: []byte(c.method)}}, "one")
		if k == nil || found.MustFix() {
			t.Fatal(found)
		}
		if got := told(k); got != c.want {
			t.Errorf("%s\n%q, want %q", c.method, got, c.want)
		}
	}
}

// A pack whose supplier heads it Danger asks for that word, though its statement has Warning.
func TestSupplierHasTheGraverWord(t *testing.T) {
	k := opened(t, "en", "  soda: {name: Soda, packed: 100 g, hazards: H319, signal word: danger}\n", "## Mix\n\nPut [all of the soda](take:soda?into=pan) in.")
	if all := hazard.In(k, ledger.Follow(k)); len(all) != 1 || all[0].Hazard.Signal != kit.Danger {
		t.Errorf("it is %+v", all)
	}
}

// A hazard that a step brings twice is told at the first place, whichever way each was found,
// so that a caution between the two is seen to come too late; and under the graver word.
func TestAHazardIsToldWhereItIsMetFirst(t *testing.T) {
	yaml := "name: One\nmakes: 1 piece\ncomponents:\n" + wax +
		"  soda: {name: Soda, packed: 100 g, hazards: H319}\n  ash: {name: Soda ash, packed: 100 g, hazards: H319, signal word: danger}\n" +
		"  jar: {name: Tin, packed: 1, container: {brimful: 300 mL, headspace: 5 mL}}\n  card: {name: Card, packed: 1}\n" +
		"tools:\n  pan: {name: Saucepan, from: customer, holds: 1 L}\n  jug: {name: Jug, from: customer, holds: 1 L}\n  knife: {name: Knife, from: customer}\n"
	for _, c := range []struct{ why, method, id, first, signal, place string }{
		{"moved on hot, and poured hot after that", "## [Melt](step:melt?in=pan)\n\nPut [all of the wax](take:wax) in and warm it [to 75 °C](warm:).\n\n" +
			"## [Pour](step:pour?in=jug)\n\nTip [all of it](move:pan) into the jug.\n\n> CAUTION: It burns.\n\nShare [all of it](fill:jar) out.\n", "hot-pour", "(move:pan)", "CAUTION", "after"},
		{"a tool that is named before it is linked", "## Cut\n\nTake up the knife.\n\n> CAUTION: It is sharp.\n\nCut [the card](use:card) with [the knife](tool:knife).\n", "blade", "knife", "CAUTION", "after"},
		{"two packs with one statement, the second with the graver word", "## Mix\n\nPut [all of the soda](take:soda?into=pan) and [all of the ash](take:ash?into=pan) in.\n", "H319", "all of the soda", "DANGER", "nowhere"},
		{"the first with the graver word", "## Mix\n\nPut [all of the ash](take:ash?into=pan) and [all of the soda](take:soda?into=pan) in.\n", "H319", "all of the ash", "DANGER", "nowhere"},
	} {
		k, found := instructions.Open(fstest.MapFS{"kit.yaml": {Data: []byte(yaml)}, "method.md": {Data: []byte(c.method)}}, "one")
		if k == nil || found.MustFix() {
			t.Fatal(found)
		}
		seen := 0
		for _, a := range hazard.In(k, ledger.Follow(k)) {
			if a.Hazard.ID != c.id {
				continue
			}
			seen++
			if !strings.Contains(a.Where.Text(), c.first) || string(a.Hazard.Signal) != c.signal || !strings.HasPrefix(string(a.Place), c.place) {
				t.Errorf("%s: %q, %s, %s", c.why, a.Where.Text(), a.Hazard.Signal, a.Place)
			}
		}
		if seen != 1 {
			t.Errorf("%s: told %d times", c.why, seen)
		}
	}
}

// Tools are known by their names, also within a German word, and not where they are put away.
func TestTools(t *testing.T) {
	yaml := "  card: {name: Card, packed: 1}\ntools:\n  knife: {name: NAME, from: customer}\n"
	for _, c := range []struct{ language, name, method, want string }{
		{"en", "Craft knife", "## Cut\n\nCut [the card](use:card) with [the knife](tool:knife).", "1 blade: nowhere"},
		{"en", "Butter knife", "## Cut\n\nSpread it on [the card](use:card) with [the knife](tool:knife).", ""},
		{"en", "Scissors", "## Clear up\n\nPut the scissors back in the drawer.", ""},
		{"en", "Scissors", "## Cut\n\nCut the card with the scissors.", "1 blade: nowhere"},
		{"de", "Bastelmesser", "## Schneiden\n\n[Die Karte](use:card) mit [dem Messer](tool:knife) schneiden.", "1 blade: nowhere"},
		{"fr", "Ciseaux", "## Couper\n\nCoupez [la carte](use:card) avec [les ciseaux](tool:knife).", "1 blade: nowhere"},
	} {
		text := strings.Replace(yaml, "NAME", c.name, 1)
		k, found := instructions.Open(fstest.MapFS{
			"kit.yaml":  {Data: []byte("language: " + c.language + "\nname: One\nmakes: 1 piece\ncomponents:\n" + text)},
			"method.md": {Data: []byte(c.method)},
		}, "one")
		if k == nil {
			t.Fatal(found)
		}
		if got := told(k); got != c.want {
			t.Errorf("%s, %s: %q, want %q", c.language, c.name, got, c.want)
		}
	}
}

// A foaming bath product for adults alone need not bear its caution (21 CFR 740.17(b)). Who
// accepts the finding still has the booklet's caution: the hazard is there as before.
func TestExempt(t *testing.T) {
	foam := "  foam: {name: Foam, packed: 100 g, hazards: foaming-bath}\n"
	method := "## [Mix](step:mix)\n\nPut [all of the foam](take:foam?into=pan) in."
	if got := told(opened(t, "en", foam, method)); got != "1 foaming-bath: nowhere" {
		t.Errorf("for all: %q", got)
	}
	if got := told(opened(t, "en", foam+"audience: {age: 18+}\n", method)); got != "" {
		t.Errorf("for adults: %q", got)
	}
	accepted := opened(t, "en", foam+"accept:\n  - {rule: caution-missing, about: mix, because: it is on the bottle, until: 2030-01-01}\n", method)
	actions := hazard.In(accepted, ledger.Follow(accepted))
	if open := hazard.Open(actions, 1); len(actions) != 1 || len(open) != 1 {
		t.Errorf("accepted: %d of %d are warned of by the booklet", len(open), len(actions))
	}
}
