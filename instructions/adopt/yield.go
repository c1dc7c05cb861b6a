package adopt

import "strings"

// A Yield is how many pieces the leaflet says that it makes.
type Yield struct {
	// Said is a count and a noun as kit.yaml has it: "4 coasters".
	Said string
	// Start and End are the bytes of the leaflet that say so.
	Start, End int
}

var (
	yields = wordSet("makes yields")
	// endsYield may stand behind the noun of what is made (common practice, no source).
	endsYield = wordSet("of and or with in from at by for to each that which about")
)

// longestNoun is how many words the name of what is made may have: "small tea lights".
const longestNoun = 3

// findYield reads "Makes four coasters" and "this kit yields 6 candles".
func (r *reading) findYield() {
	for i, w := range r.words {
		if !yields[w.Text] || i+2 >= len(r.words) || !r.isNumber(r.words[i+1].Text) {
			continue
		}
		end := i + 2
		for end < len(r.words) && end < i+2+longestNoun && r.words[end].Sentence == w.Sentence && !endsYield[r.words[end].Text] && r.joins(r.words[end-1].End, r.words[end].Start) {
			end++
		}
		count, err := r.options.reader().Amount(r.words[i+1].Text)
		noun := oneLine(r.text[r.words[i+2].Start:r.words[end-1].End])
		if err != nil || end == i+2 || count.Nominal.Sign() <= 0 || !hasLetter(noun) || strings.ContainsAny(noun, "0123456789") {
			continue
		}
		r.Makes = Yield{Said: count.Nominal.String() + " " + noun, Start: w.Start, End: r.words[end-1].End}
		return
	}
}
