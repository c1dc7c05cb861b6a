package rules

import (
	"strings"

	"tallyfold/kit"
	"tallyfold/kit/diag"
	"tallyfold/kit/quantity"
)

// addContainers changes all that says how many containers there are: what is packed,
// what the last link fills, what the kit makes. What goes with a container (lids,
// labels, wicks) is not known here; trying the change tells.
func (v leftVessel) addContainers(more int) []diag.Change {
	if v.filling == nil || v.Last.Kind != kit.Fill {
		return nil
	}
	c := v.filling.Container
	link := countInText(v.Kit, v.Last, more)
	if link == nil || c.Container.UsedAgain.Value || c.Container.Cavities.Value > 1 {
		return nil
	}
	inAll := quantity.Whole(int64(more * v.runsFilling(c)))
	changes := append(link, repack(v.Kit, c, up(c.Packed.Value.Nominal.Plus(inAll), c.Packed.Value))...)
	if v.Kit.Makes.Given() {
		makes := v.Kit.Makes.Value
		changes = append(changes, rewrite(v.Kit, v.Kit.Makes.Span, makes.Nominal.Plus(inAll).String()+" "+makes.Noun)...)
	}
	for _, piece := range v.Kit.Pieces {
		if piece.In.Value == c.ID && piece.Count.Given() {
			changes = append(changes, rewrite(v.Kit, piece.Count.Span, piece.Count.Value.Nominal.Plus(inAll).String())...)
		}
	}
	return changes
}

// runsFilling is how many runs fill containers of a kind.
func (v leftVessel) runsFilling(c *kit.Component) int {
	runs := map[*kit.Run]bool{}
	for _, f := range v.Ledger.Fillings {
		if f.Container == c {
			runs[f.Run] = true
		}
	}
	return len(runs)
}

// countInText changes the number of containers in the words of a link; nil where the
// words do not name it as a figure or as one of the small number words.
func countInText(k *kit.Kit, o *kit.Operation, more int) []diag.Change {
	count := max(o.Phrase.EachCount, o.Phrase.Count)
	text := o.TextSpan.Text()
	if count == 0 || !strings.HasPrefix(k.Language.Value, "en") {
		return nil
	}
	for _, told := range []string{whole(count).String(), smallNumbers[count]} {
		for at, word := range wordsAt(text) {
			if told != "" && word == told {
				return []diag.Change{{Where: o.TextSpan.Part(at, at+len(word)), New: whole(count + more).String()}}
			}
		}
	}
	return nil
}

var smallNumbers = map[int]string{1: "one", 2: "two", 3: "three", 4: "four", 5: "five", 6: "six", 7: "seven", 8: "eight",
	9: "nine", 10: "ten", 11: "eleven", 12: "twelve"}

// wordsAt gives the words of a text by where they begin.
func wordsAt(text string) map[int]string {
	words := map[int]string{}
	at := 0
	for _, word := range strings.Fields(text) {
		at += strings.Index(text[at:], word)
		words[at] = word
		at += len(word)
	}
	return words
}
