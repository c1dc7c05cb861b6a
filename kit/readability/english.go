package readability

import (
	"regexp"
	"strings"
)

// english has the constants as published: Reading Ease by R. Flesch, “A new
// readability yardstick”, Journal of Applied Psychology 32 (1948); Grade by Kincaid,
// Fishburne, Rogers and Chissom, US Navy Research Branch Report 8-75 (1975).
var english = &Language{
	Ease:          Formula{Base: 206.835, PerSentenceLength: -1.015, PerWordLength: -84.6},
	Grade:         Formula{Base: -15.59, PerSentenceLength: 0.39, PerWordLength: 11.8},
	abbreviations: set("e.g i.e approx ca vs mr mrs ms dr st prof resp incl excl cf viz"),
	labels:        set("no nos fig figs p pp vol ed art c"),
	units: set("oz lb lbs tsp tbsp in ft yd pt qt gal hr hrs min mins sec secs g kg mg ml l cm mm m cl fl c f t " +
		"max etc a.m p.m"),
	syllables: englishSyllables,
}

func set(words string) map[string]bool {
	all := map[string]bool{}
	for _, word := range strings.Fields(words) {
		all[word] = true
	}
	return all
}

// englishSyllables counts the groups of vowels of a word without its silent e, and
// adds vowels side by side that are heard apart. Words that no rule fits are listed.
func englishSyllables(word string) int {
	word, extra := withoutPossessive(accents.Replace(word))
	if n, listed := listedSyllables(word); listed {
		return n + extra
	}
	for _, first := range silentFirsts {
		rest, ok := strings.CutPrefix(word, first)
		if ok && len(rest) > 1 && !isVowel(rest[0]) && vowelGroups(rest) > 0 {
			return englishSyllables(first) + englishSyllables(rest) + extra
		}
	}
	n := vowelGroups(withoutSilent(word)) + extra
	if hasVowelsTogether(word) || endsIn(word, "m", "ms") {
		n += len(heardApart.FindAllString(word, -1))
	}
	return n
}

// hasVowelsTogether says whether heardApart has anything to look at.
func hasVowelsTogether(word string) bool {
	for i := 1; i < len(word); i++ {
		if isVowel(word[i-1]) && isVowel(word[i]) {
			return true
		}
	}
	return false
}

// accents gives the plain letters of words from other languages; an é is heard.
var accents = strings.NewReplacer("ée", "ay", "é", "ey", "è", "e", "ê", "e", "à", "a", "â", "a", "ç", "c", "î", "i", "ï", "i",
	"ô", "o", "ö", "o", "û", "u", "ü", "u", "ñ", "n")

// withoutPossessive takes “'s” and the like off. What is heard of it is extra: the
// glass's, isn't, that'll.
func withoutPossessive(word string) (stem string, extra int) {
	stem, tail, found := strings.Cut(word, "'")
	switch {
	case !found:
		return word, 0
	case stem == "", len(tail) > len("ll"):
		return strings.ReplaceAll(word, "'", ""), 0 // o'clock
	case tail == "s" && hisses(stem), tail == "t" && endsIn(stem, "dn", "sn"), tail == "d" && endsIn(stem, "t", "d"),
		(tail == "ve" || tail == "ll") && !isVowel(stem[len(stem)-1]):
		return stem, 1
	}
	return stem, 0
}

// hisses says whether an s behind the word makes a syllable of its own.
func hisses(stem string) bool { return endsIn(stem, "s", "x", "z", "ch", "sh", "ce", "ge", "se", "ze") }

func endsIn(word string, ends ...string) bool {
	for _, end := range ends {
		if strings.HasSuffix(word, end) {
			return true
		}
	}
	return false
}

// listedSyllables looks a word up, and its singular.
func listedSyllables(word string) (n int, listed bool) {
	if n, listed = englishWords[word]; listed {
		return n, true
	}
	stem, isPlural := strings.CutSuffix(word, "s")
	n, listed = englishWords[stem]
	if !isPlural || !listed || strings.HasSuffix(stem, "s") {
		return 0, false
	}
	if hisses(stem) {
		n++
	}
	return n, true
}

// silentEndings are what a silent e may stand before: "stirs", "useful", "pavement".
var silentEndings = []string{"", "s", "d", "ly", "less", "ful", "fully", "ness", "ment", "ments"}

// withoutSilent takes an e out that is not heard: "make", but not "table"; "baked",
// but not "melted"; "bakes", but not "boxes"; and the two vowels of "league".
func withoutSilent(word string) string {
	for _, tail := range silentTails {
		if stem, ok := strings.CutSuffix(word, tail); ok && endsIn(stem, "g", "q") && vowelGroups(word) > 1 {
			return stem
		}
	}
	for _, ending := range silentEndings {
		stem, ok := strings.CutSuffix(word, "e"+ending)
		if !ok || stem == "" || vowelGroups(stem) == 0 || isVowel(stem[len(stem)-1]) || endsInLiquid(stem) ||
			ending == "d" && endsIn(stem, "t", "d") || ending == "s" && endsIn(stem, "s", "x", "z", "ch", "sh", "c", "g") {
			continue
		}
		return stem + ending
	}
	return word
}

// silentTails are not heard behind g or q: "league", "opaques".
var silentTails = []string{"ue", "ues", "ued"}

// endsInLiquid: the l or r of "table", "litre" and "hundred" makes a syllable with its
// e; that of "whole", "roll" and "curl" does not.
func endsInLiquid(stem string) bool {
	n := len(stem)
	return n > 1 && (stem[n-1] == 'l' || stem[n-1] == 'r') && !isVowel(stem[n-2]) && !strings.ContainsRune("lrw", rune(stem[n-2]))
}

func isVowel(c byte) bool { return strings.IndexByte("aeiouy", c) >= 0 }

// vowelGroups counts runs of vowels. A y at the head of a word or between two vowels
// and a u behind q are consonants.
func vowelGroups(word string) int {
	n, inside := 0, false
	for i := 0; i < len(word); i++ {
		vowel := isVowel(word[i])
		if next := i+1 < len(word) && isVowel(word[i+1]) && word[i+1] != 'y'; next {
			vowel = vowel && !(word[i] == 'y' && (i == 0 || isVowel(word[i-1]))) && !(word[i] == 'u' && i > 0 && word[i-1] == 'q')
		}
		if vowel && !inside {
			n++
		}
		inside = vowel
	}
	return n
}

// heardApart finds vowels side by side that make two syllables, and an m that makes
// one of its own.
var heardApart = regexp.MustCompile(strings.Join([]string{
	`[bdhmnprvou]ia(?:[^g]|g[^e]|$)`,                          // dial, diagram, media; not "special", "carriage"
	`lia(?:[^gn]|$)`,                                          // magnolia; not "civilian"
	`(?:[bdprv]|[^l]l|^l)io(?:[^u]|us|$)`,                     // radio, period, various; not "nation", "million"
	`iu`,                                                      // medium
	`(?:[bcdfklnrsuvz]|pp|tt|rt)ie(?:r|st)$`,                  // drier, easiest
	`(?:[bdku]|[^f]r)ien|^(?:cl|sc)ien`,                       // ingredient, client, science
	`iet(?:[yl]|$)`,                                           // society, quiet
	`[anquv]eous`,                                             // aqueous
	`u(?:ous|ity)`,                                            // continuous
	`[^qg]u(?:al|ate|ati|ent|ence|el|id)`,                     // usual, fluent
	`[dn]uary?`,                                               // January
	`eo(?:m|l|g|$|s$)`,                                        // geometry, video
	`(?:^|[^aeiou])eum`,                                       // museum
	`creat(?:e|i|o)`, `(?:id|ar)eas?$`, `^rea(?:ct|pp|ss|rr)`, // create, idea, react
	`(?:[^aeou]y|e|o|[^q]u)ing`, // drying, seeing, going, gluing
	`(?:s|th)ms?$`,              // prism, rhythm
}, "|"))
