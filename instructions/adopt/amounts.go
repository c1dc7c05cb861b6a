package adopt

import (
	"slices"
	"strings"

	"tallyfold/kit/quantity"
	"tallyfold/kit/rules"
)

// A measured is an amount of the leaflet before it is known what it is of.
type measured struct {
	start, end int
	amount     quantity.Amount
	known      bool
	// open says why it is no amount: a measure without a size, parts of a whole.
	open string
	// noSize: the measure has no one size.
	noSize bool
}

// findAmounts recognises what is weighed, measured or counted, with what it is of.
func (r *reading) findAmounts() {
	all := r.measured()
	style := r.listStyle(all)
	for i, m := range all {
		from, to := 0, len(r.text)
		if i > 0 {
			from = all[i-1].end
		}
		if next := r.figureAfter(m.end); next >= 0 {
			to = next
		}
		names := r.counted(m)
		if len(names.names) == 0 {
			names = r.namesOf(m, from, to, style)
		}
		r.proposeAmount(m, names)
	}
}

// counted: of "3 jars" the noun is the name.
func (r *reading) counted(m measured) naming {
	noun := m.amount.Noun
	if !m.known || noun == "" || m.open != "" {
		return naming{}
	}
	at := m.start + strings.LastIndex(r.text[m.start:m.end], noun)
	return naming{[][2]int{{at, r.restOfName(noun, at+len(noun))}}, "a number and something that is on the list of parts"}
}

// restOfName goes on over words behind a noun that belong to the name on the list of parts: the
// disc of "one cork disc".
func (r *reading) restOfName(noun string, end int) int {
	thing := r.thingNamed(noun)
	if thing == nil {
		return end
	}
	for i := r.wordAt(end); i < len(r.words) && r.joins(end, r.words[i].Start) && slices.Contains(stems(thing.Name), rules.Singular(r.words[i].Text)); i++ {
		end = r.words[i].End
	}
	return end
}

// measured gives all amounts of material in the order of the text.
func (r *reading) measured() []measured {
	var all []measured
	for _, open := range r.opens {
		if !strings.HasPrefix(open.Measure, "degree") && !strings.HasPrefix(open.Measure, "deg") {
			all = append(all, measured{start: open.Start, end: open.End, open: open.Why, noSize: true})
		}
	}
	opens := len(all)
	for _, found := range r.found {
		m := measured{start: found.Start, end: found.End, amount: found.Amount, known: true}
		if slices.ContainsFunc(all[:opens], func(o measured) bool { return m.start < o.end && o.start < m.end }) || !r.isMaterial(&m) {
			continue
		}
		m.end = r.withoutPoint(m.end)
		all = append(all, r.withoutAbove(m))
	}
	all = append(all, r.ones(all)...)
	slices.SortStableFunc(all, func(a, b measured) int { return a.start - b.start })
	if r.kit != nil {
		return r.asInMethods(all)
	}
	return all
}

// withoutPoint leaves the point at the end of an amount outside, where it may end a
// sentence as well.
func (r *reading) withoutPoint(end int) int { return len(strings.TrimSuffix(r.text[:end], ".")) }

// withoutAbove takes the "above" of "add to the above 3 lbs" away, which is no bound.
func (r *reading) withoutAbove(m measured) measured {
	said := r.text[m.start:m.end]
	for _, word := range []string{"above ", "below "} {
		if !strings.HasPrefix(said, word) || !r.before(m.start, 1, "the") {
			continue
		}
		if again := r.options.reader().Find(said[len(word):]); len(again) == 1 && again[0].Start == 0 {
			m.start, m.amount = m.start+len(word), again[0].Amount
		}
	}
	return m
}

// isMaterial says whether an amount may be of a material. Counts are taken where they
// count parts of a whole or something that is on the list of parts.
func (r *reading) isMaterial(m *measured) bool {
	switch m.amount.Dimension {
	case quantity.Mass, quantity.Volume, quantity.Length, quantity.Area:
		return !strings.Contains(r.text[m.start:m.end], "-") || !r.isAttribute(m)
	case quantity.Count:
		if r.kit != nil {
			return false // see findCounts
		}
		noun := strings.ToLower(m.amount.Noun)
		if noun == "part" || noun == "parts" {
			m.open = "a part has no size: say how much one part is"
			return true
		}
		return r.thingNamed(m.amount.Noun) != nil
	}
	return false
}

// isAttribute: "a 4-gallon can" says which can.
func (r *reading) isAttribute(m *measured) bool {
	words := r.text[m.start:m.end]
	hyphen := strings.LastIndex(words, "-")
	behind := strings.TrimLeft(r.text[m.end:], ". ")
	letter := hyphen+1 < len(words) && (words[hyphen+1]|0x20 >= 'a' && words[hyphen+1]|0x20 <= 'z')
	return letter && hyphen > 0 && words[hyphen-1] >= '0' && words[hyphen-1] <= '9' && behind != "" && behind[0]|0x20 >= 'a' && behind[0]|0x20 <= 'z' &&
		!strings.HasPrefix(behind, "of ")
}

// ones finds "one of alum" behind an amount of the same sentence: the measure is left out.
func (r *reading) ones(known []measured) []measured {
	reader := r.options.reader()
	var all []measured
	for i := 0; i+1 < len(r.words); i++ {
		w := r.words[i]
		if r.words[i+1].Text != "of" || r.words[i+1].Sentence != w.Sentence || w.Text == "a" || w.Text == "an" {
			continue
		}
		amount, err := reader.Amount(w.Text)
		if err != nil || amount.Dimension != quantity.Count || amount.Noun != "" || !amount.Nominal.IsWhole() {
			continue
		}
		if last := r.lastBefore(known, w.Start); last != nil {
			measure := strings.TrimLeft(r.text[last.start:last.end], "0123456789½¼¾ ")
			all = append(all, measured{start: w.Start, end: w.End, noSize: last.noSize,
				open: "the measure is left out; the amount before it is “" + measure + "”"})
		}
	}
	return all
}

// lastBefore is the nearest amount before a byte, where no sentence ends between.
func (r *reading) lastBefore(all []measured, at int) *measured {
	var last *measured
	for i := range all {
		if m := &all[i]; m.end <= at && (last == nil || m.end > last.end) {
			last = m
		}
	}
	if last == nil {
		return nil
	}
	if between := strings.TrimPrefix(r.text[last.end:at], "."); strings.ContainsAny(between, ";:") || strings.Contains(between, ". ") {
		return nil
	}
	return last
}

// noHandling is asked of things that are counted.
const noHandling = "what happens with them?"

// proposeAmount proposes to link an amount with what it is of.
func (r *reading) proposeAmount(m measured, found naming) {
	p := &Proposal{
		Kind: Amount, Start: m.start, End: m.end, AmountStart: m.start, AmountEnd: m.end,
		Why: found.why, amount: m.amount, known: m.known && m.open == "", noSize: m.noSize,
	}
	for _, at := range found.names {
		thing := r.thing(r.text[at[0]:at[1]], at)
		if thing == nil {
			continue
		}
		p.Names = append(p.Names, Name{at[0], at[1], thing.Key})
		if thing.Listed && !slices.Equal(stems(thing.Name), stems(r.text[at[0]:at[1]])) {
			p.Why += "; taken for “" + thing.Name + "” on the list of parts"
		}
	}
	said := r.text[m.start:m.end]
	switch {
	case r.isYield(m.start):
		p.Meaning, p.Open = said+" is what comes of it", "it tells how much is made, which nothing is taken by"
		p.Names = nil
	case len(p.Names) == 0:
		p.Meaning, p.Open = said+" of something", "of what? No name stands beside it"
	case m.noSize:
		p.Meaning, p.Open = said+" of "+p.Names[0].Key, "how much is that? "+capital(m.open)
	case m.open != "":
		p.Meaning, p.Open = said+" of "+p.Names[0].Key, m.open
	case len(p.Names) > 1:
		p.Meaning, p.Open = said+" of each of several things", "one link tells one thing: write the amount once for each"
	case m.amount.Dimension == quantity.Count:
		p.End = max(m.end, p.Names[0].End)
		said = r.text[m.start:p.End]
		p.Meaning, p.Open = said, noHandling
		for _, way := range [][3]string{{"take:", "take "}, {"use:", "use up "}, {"place:", "put ", " into place"}, {"fill:", "fill "}} {
			p.Alternatives = append(p.Alternatives, Alternative{way[0] + p.Names[0].Key, way[1] + oneLine(said) + way[2]})
		}
	default:
		p.Start, p.End = min(m.start, p.Names[0].Start), max(m.end, p.Names[0].End)
		p.Destination = "take:" + p.Names[0].Key
		p.Meaning = "take " + said + " of " + p.Names[0].Key
		p.Alternatives = append(p.Alternatives, Alternative{"use:" + p.Names[0].Key, "use up " + said + " of " + p.Names[0].Key + " without it joining the mixture"})
	}
	if m.open != "" {
		p.Alternatives = append(p.Alternatives, r.otherReadings(m)...)
	}
	r.propose(p)
}

// isYield: "to make 5 gallons of ink", "makes 3 jars".
func (r *reading) isYield(at int) bool {
	return r.before(at, 2, "make", "makes", "making", "yield", "yields", "produces")
}

// otherReadings tells a drachm or dram both ways; both need other words in the leaflet.
func (r *reading) otherReadings(m measured) []Alternative {
	words := strings.Fields(r.text[m.start:m.end])
	last := strings.TrimSuffix(strings.ToLower(words[len(words)-1]), "s")
	if last != "drachm" && last != "dram" && last != "dr" {
		return nil
	}
	figure := strings.Join(words[:len(words)-1], " ")
	var all []Alternative
	for _, unit := range []string{"drachms apothecaries", "fluid drachms"} {
		amount, err := r.options.reader().Amount(figure + " " + unit)
		if err == nil {
			all = append(all, Alternative{"", "as " + unit + ", " + quantity.Show(amount.Nominal, amount.Dimension)})
		}
	}
	return all
}
