package quantity

// An OpenMeasure is a figure in prose whose measure has no one size: "a handful",
// "3 drachms", "20 drops". It is no amount, and must not be taken for one.
type OpenMeasure struct {
	// Start and End are the bytes of the text that tell it, End not included.
	Start, End int
	// Figure is how many of the measure, for a range the lesser.
	Figure Number
	// Measure is the word for it as written.
	Measure string
	// Why says what is open and what to write instead, in words for the maker.
	Why string
}

// FindOpen gives every such figure in running prose, from left to right, none inside
// another. What the reader's own Measures give a size is left to Find.
func (r Reader) FindOpen(text string) []OpenMeasure {
	p := r.parser(text, true)
	var all []OpenMeasure
	for i := 0; i < len(p.tokens); {
		open, next, ok := p.openMeasure(i)
		if !ok {
			i++
			continue
		}
		all = append(all, open)
		i = next
	}
	return all
}

// openMeasure reads "twelve to twenty drops", "½ a drachm".
func (p *parser) openMeasure(i int) (OpenMeasure, int, bool) {
	if !p.mayBegin(i) {
		return OpenMeasure{}, i, false
	}
	f, next := p.figure(i)
	if next == i || f.value.Sign() < 0 {
		return OpenMeasure{}, i, false
	}
	word := max(next, f.linked)
	if behind, ok := p.overOtherEnd(next); ok {
		word = behind
	}
	end, why := p.noSize(word)
	if end == word {
		return OpenMeasure{}, i, false
	}
	measure := p.written(word, end)
	if more, after := p.find(end, moreWord); after > 0 && f.value.IsWhole() {
		f.value, end = f.value.Plus(more.number), after // one dram and a half
	}
	start, stop := p.span(i, end)
	return OpenMeasure{Start: start, End: stop, Figure: f.value, Measure: measure, Why: why}, end, true
}

// overOtherEnd passes "to twenty", "or 3", "–20".
func (p *parser) overOtherEnd(i int) (int, bool) {
	at := i + 1
	if !p.is(i, "–") && !p.is(i, "-") {
		if _, at = p.find(i, toWord); at == 0 {
			at = p.orWord(i)
		}
	}
	if at == 0 {
		return i, false
	}
	f, next := p.figure(at)
	return next, next > at && !f.article
}

// noSize reads a word of measuring that has no one size: a measure of the hand or the
// cupboard, an abbreviation with two meanings, a unit that this convention lacks. The
// two halves of "tea-cupful" are one word. Where there is none, end is i.
func (p *parser) noSize(i int) (end int, why string) {
	if !p.kind(i, wordToken) {
		return i, ""
	}
	if _, next, ok := p.unit(i); ok && next > i+1 {
		return i, "" // a drachm apothecaries
	}
	if p.is(i+1, "-") && p.joined(i+1) && p.joined(i+2) && p.kind(i+2, wordToken) {
		if whole := p.tokens[i].low + p.tokens[i+2].low; vague[whole] {
			return i + 3, noSizeHint(whole)
		}
	}
	hint, known := p.measureHint(i)
	if !known || p.tokens[i].low == "inf" || p.tokens[i].low == "infinity" {
		return i, ""
	}
	return i + 1, hint
}

// measureHint says why a word of measuring is no unit, false for any other word.
func (p *parser) measureHint(i int) (hint string, known bool) {
	t := p.tokens[i]
	if hint, known = ambiguous[p.text[t.start:t.end]]; known {
		return hint, true
	}
	if hint, known = ambiguousWords[t.low]; known {
		return hint, true
	}
	if _, _, ok := p.unit(i); ok {
		return "", false
	}
	if found, _ := p.find(i, unitWord); found != nil {
		return "a " + table[found.row].Name + " is not a " + p.reader.Convention.String() + " measure; write mL, or say whose it is, as in “US pint”", true
	}
	if vague[t.low] {
		return noSizeHint(t.low), true
	}
	return "", false
}

func noSizeHint(low string) string {
	return "nobody can measure that; write g, mL or spoons, or give it a size under measures, such as " + vagueOne(low) + ": 0.05 mL"
}
