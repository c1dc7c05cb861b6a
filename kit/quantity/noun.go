package quantity

import (
	"strings"
	"unicode"
)

// noun reads what is counted. Where nothing is, the noun is "" and the figure
// stays bare.
func (p *parser) noun(i int, m *measure) (string, int, *Error) {
	if p.prose {
		noun, next := p.nounInProse(i, m)
		return noun, next, nil
	}
	end := p.nounEnd(i)
	if end == i {
		return "", i, nil
	}
	noun := p.written(i, end)
	if p.counted(noun) {
		return noun, end, nil
	}
	return noun, end, p.unitProblem(i)
}

func (p *parser) counted(noun string) bool {
	return p.reader.Counted != nil && p.reader.Counted(noun)
}

// nounEnd is where a noun of several words ends in a field: "jar lids", "6-strand
// lengths".
func (p *parser) nounEnd(i int) int {
	const longest = 8 // tokens
	end := i
	for end < len(p.tokens) && end-i < longest {
		switch {
		case p.kind(end, wordToken):
			if p.endsNoun(end) && !(end > i && p.joined(end)) {
				return end
			}
			end++
		case p.kind(end, numberToken) && p.tokens[end].spaced && p.is(end+1, "-") && p.joined(end+1) &&
			p.joined(end+2) && p.kind(end+2, wordToken):
			end += 3
		case end > i && p.joined(end) && (p.is(end, "-") || p.is(end, "'")) && p.joined(end+1) && p.kind(end+1, wordToken):
			end++
		default:
			return end
		}
	}
	return end
}

// endsNoun says whether the word does something else in an amount.
func (p *parser) endsNoun(i int) bool {
	for _, role := range []role{toWord, andWord, plusMinus, perWord, ofWord, trailingWord, massWord, timesWord} {
		if _, next := p.find(i, role); next > 0 {
			return true
		}
	}
	return false
}

// nounInProse takes one word that may name a thing; where the reader knows what is
// counted, the longest name of up to three words, or the last of them alone with
// what describes it ("six small jars" counts jars).
func (p *parser) nounInProse(i int, m *measure) (string, int) {
	if m.figure.article || !p.nounLike(i) {
		return "", i
	}
	if p.reader.Counted == nil {
		if m.figure.linked > 0 {
			return "", i // "half a jar" may be anything
		}
		return p.written(i, i+1), i + 1
	}
	last := i
	for last < i+2 && p.nounLike(last+1) {
		last++
	}
	for ; last >= i; last-- {
		if whole := p.written(i, last+1); p.counted(whole) {
			return whole, last + 1
		}
		if final := p.written(last, last+1); p.counted(final) {
			return final, last + 1
		}
	}
	return "", i
}

// nounLike says whether a word of running prose may name a thing: letters only, at
// least three, small (German writes nouns large), and none of the small words.
func (p *parser) nounLike(i int) bool {
	if !p.kind(i, wordToken) || p.joined(i) {
		return false
	}
	t := p.tokens[i]
	word := p.text[t.start:t.end]
	if len(word) < 3 || word[len(word)-1] <= '9' {
		return false
	}
	if first := []rune(word)[0]; unicode.IsUpper(first) && baseOf(p.reader.Language) != german.tag && !p.counted(word) {
		return false
	}
	for _, role := range []role{stopWord, unitWord, numberWord} {
		if _, next := p.find(i, role); next > 0 {
			return false
		}
	}
	return looksLikeWord(t.low)
}

// looksLikeWord tells "lids" from an abbreviation such as "kJ".
func looksLikeWord(low string) bool {
	if abbreviatedNouns[low] {
		return true
	}
	return len(low) > 2 && strings.IndexFunc(low, func(c rune) bool {
		return strings.ContainsRune("aeiouy", c) || c > unicode.MaxASCII
	}) >= 0
}

var abbreviatedNouns = map[string]bool{"pcs": true, "pc": true, "pkt": true, "pkts": true, "prs": true}
