package instructions

import "slices"

// How phrases are found among the tokens of a link.

// at gives how many tokens from i on are one of the phrases, of the longest that
// fits; 0 when none does.
func (f *phrasing) at(i int, any phrases) int {
	longest := 0
	for _, phrase := range any.byFirst[f.wordAt(i)] {
		if len(phrase) > longest && f.isPhrase(i, phrase) {
			longest = len(phrase)
		}
	}
	return longest
}

// wordAt is the word at token i, "" where there is none.
func (f *phrasing) wordAt(i int) string {
	if i < 0 || i >= len(f.tokens) || f.tokens[i].isAmount {
		return ""
	}
	return f.tokens[i].text
}

func (f *phrasing) isPhrase(i int, phrase []string) bool {
	for n, word := range phrase {
		if !f.is(i+n, word) {
			return false
		}
	}
	return true
}

func (f *phrasing) has(i int, any phrases) bool { return f.at(i, any) > 0 }

// endsAt gives how many tokens before token i are one of the phrases.
func (f *phrasing) endsAt(i int, any phrases) int {
	longest := 0
	for _, phrase := range any.byLast[f.wordAt(i-1)] {
		if len(phrase) > longest && f.isPhrase(i-len(phrase), phrase) {
			longest = len(phrase)
		}
	}
	return longest
}

// is says whether the token at i is one of these words.
func (f *phrasing) is(i int, words ...string) bool {
	return i >= 0 && i < len(f.tokens) && !f.tokens[i].isAmount && slices.Contains(words, f.tokens[i].text)
}

// skip gives the first token from i on at which none of these phrases begins.
func (f *phrasing) skip(i int, any ...phrases) int {
	for {
		longest := 0
		for _, some := range any {
			longest = max(longest, f.at(i, some))
		}
		if longest == 0 {
			return i
		}
		i += longest
	}
}

// use marks tokens first to last as understood.
func (f *phrasing) use(first, last int) {
	for i := first; i <= last; i++ {
		f.tokens[i].used = true
	}
}
