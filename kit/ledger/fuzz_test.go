package ledger_test

import (
	"fmt"
	"strings"
	"testing"
	"time"

	"tallyfold/kit/ledger"
)

// sentences are what a random method is put together from; %d is an amount, %[2]d a
// number of tins from 1 to 4.
var sentences = []string{
	"Melt [%d g of wax](take:wax).", "Melt [half of the wax](take:wax).", "Melt [all of the wax](take:wax).",
	"Melt [the rest of the wax](take:wax).", "Melt [](take:wax).", "Melt [%d g of wax for each tin](take:wax).",
	"Pour [%d mL of oil](take:oil?into=cup).", "Pour [%d g of oil](take:oil).", "Pour [a third of the oil](take:oil).",
	"Spoon in [%d tsp of resin](take:resin).", "Spoon in [%d tsp of resin](take:resin?into=cup).",
	"Stir in [%d g of chalk in all](take:chalk).", "Sprinkle [%d g of chalk](take:chalk?into=tin).",
	"Stir in [all of the colour](take:colour).",
	"Pour [all of it](move:cup) in.", "Pour [half of it](move:cup) in.", "Pour [%d g](move:cup) in.",
	"Pour [all of it](move:pan?into=cup) out.", "Pour [%d mL](move:pan?into=cup) out.",
	"Pour [%d g](move:pan?into=tin) out.", "Pour [all of it](move:cup?into=tin) out.",
	"Fill [each of %[2]d tins to %[1]d g](fill:tin).", "Fill [each of %[2]d tins with %[1]d g](fill:tin).",
	"Fill [each of %[2]d tins to about %[1]d g](fill:tin).", "Fill [the tins equally](fill:tin).",
	"Fill [each of %[2]d tins with %[1]d g](fill:tin?from=cup).",
	"Lay [one stone](place:stone?into=tin) in each tin.", "Lay [%[2]d cloths](place:cloth) in.",
	"Lift [the cloths](move:cloth?from=pan&into=cup) over.", "Use [%[2]d cloths](use:cloth).",
	"Keep [what is left](left:pan?as=kept).", "Throw out [what is left](left:cup?as=discarded).",
	"Wipe [the pan](clean:pan).", "Wipe [the cup](clean:cup).", "Do [the same once more](again:).",
	"Warm it [to 60 °C](warm:), then [by %d °C](cool:).",
	"Lay in [%d g of felt](take:felt).", "Lift [the felt](move:felt?from=pan&into=cup) over.", "Lift [half of the felt](move:felt?from=cup&into=pan) back.",
	"Pour off [the liquid](left:pan?as=poured-away).", "Ladle off [%d g](left:pan?as=discarded).",
	"[%d g of oil](left:oil?from=pan&as=evaporated) goes off.", "[All of the oil](left:oil?from=cup&as=dried-out) dries.",
	"Pour [half of it](move:pan?into=cup,pot) out.", "Take [%[2]d stones](take:stone?either=hard) or [%[2]d cloths](take:cloth?either=hard).",
	"Pour [all of it](move:pot) back.",
	"\n\n## Go on\n\n", "\n\n## [Go on in the cup](step:cup-%d?in=cup)\n\n",
}

// fuzzed is the box that random methods work with.
var fuzzed = strings.NewReplacer(
	"tools:\n", "  felt: {name: Felt, packed: 90 g, carries: 150 %}\ntools:\n  pot: {name: Pot, from: customer, essential: true, holds: 1 L}\n",
	"holds: 2 L, residue: 10 g", "holds: 2 L, residue: 10 g, evaporates: 5 g ± 2 g of oil, foam: 10 %",
).Replace(twiceByRole)

// written turns bytes into a method: of each two, the first picks a sentence and the
// second its figures. Steps have names of their own.
func written(bytes []byte) string {
	var text strings.Builder
	text.WriteString("## [Make it](step:make?in=pan)\n\n")
	for i := 0; i+1 < len(bytes) && i < 80; i += 2 {
		sentence := sentences[int(bytes[i])%len(sentences)]
		figure, tins := int(bytes[i+1]), 1+int(bytes[i+1])%4
		switch {
		case strings.Contains(sentence, "step:cup-"):
			fmt.Fprintf(&text, sentence, i)
		case strings.Contains(sentence, "%[2]"):
			text.WriteString(strings.NewReplacer("%[1]d", fmt.Sprint(1+figure), "%[2]d", fmt.Sprint(tins)).Replace(sentence))
		default:
			text.WriteString(strings.ReplaceAll(sentence, "%d", fmt.Sprint(1+figure)))
		}
		text.WriteByte(' ')
	}
	return text.String()
}

// Every sentence can be read, so that no random method is made of nothing.
func TestSentencesOfRandomMethods(t *testing.T) {
	for i := range sentences {
		read(t, fuzzed, written([]byte{0, 99, byte(i), 1, 0, 9}))
	}
}

// Whatever a method says, nothing is lost or made, no vessel or tin holds less than
// nothing, and a method of forty actions, some done again and again, is
// followed in milliseconds; the limit is for a machine with much else to do.
func FuzzFollow(f *testing.F) {
	for i := range sentences {
		f.Add([]byte{0, 200, 6, 90, byte(i), 7, 14, 1, 19, 30, byte(i), 120})
	}
	f.Fuzz(func(t *testing.T, bytes []byte) {
		method := written(bytes)
		k := readAnyway(t, fuzzed, method)
		start := time.Now()
		l := ledger.Follow(k)
		if took := time.Since(start); took > 5*time.Second {
			t.Errorf("it took %v", took)
		}
		for _, balance := range l.Balances {
			holds(t, method, l, balance.Thing)
		}
		neverLessThanNothing(t, method, l)
		for _, choosing := range ledger.Choosings(k) {
			other := ledger.FollowChoosing(k, choosing)
			for _, balance := range other.Balances {
				holds(t, method, other, balance.Thing)
			}
		}
	})
}

func neverLessThanNothing(t *testing.T, method string, l *ledger.Ledger) {
	t.Helper()
	check := func(where string, parts []ledger.Part) {
		for _, part := range parts {
			if part.Amount.Known() && part.Amount.Value().Sign() < 0 {
				t.Errorf("%s\n%s holds %s of %s", method, where, exact(part.Amount), part.Thing)
			}
		}
	}
	for _, stage := range l.Stages {
		for _, vessel := range stage.Vessels {
			check(vessel.Vessel, append(vessel.Parts(), vessel.Objects()...))
		}
	}
	for _, filling := range l.Fillings {
		check(filling.Container.ID, append(filling.Parts(), filling.Objects()...))
	}
}
