package adopt

import (
	"slices"
	"strings"

	"tallyfold/kit"
	"tallyfold/kit/rules"
)

// A called is a name by which a method may speak of something of its kit.
type called struct {
	key   string
	words []string // without endings
	// whole: the maker gave it, and it was not cut from a longer name.
	whole bool
}

// A callIndex has the names of a kit by their first word, longer names first.
type callIndex map[string][]called

// indexNames gathers the names of all things, roles and tools of a kit: those that it gives,
// its keys, and of a longer name what stands before "with" or "of" ("Glass jar with lid"),
// and its last words ("Wooden scoop"), where nothing else can be meant by them.
func indexNames(k *kit.Kit) callIndex {
	var all []called
	add := func(key string, name kit.Name) {
		for _, one := range name.Names() {
			all = append(all, wholeAndCut(key, one)...)
		}
		all = append(all, called{key, nameWords(key), true})
	}
	for _, c := range k.Components {
		add(c.ID, c.Name)
		all = append(all, called{c.ID, nameWords(c.Lots.Noun), false}) // "both skeins"
	}
	for _, h := range k.Household {
		add(h.ID, h.Name)
	}
	for _, t := range k.Tools {
		add(t.ID, t.Name)
	}
	for _, p := range k.Pieces {
		add(p.ID, p.Name)
	}
	for _, run := range k.Runs {
		for _, with := range run.With {
			all = append(all, called{with.Role.Value, nameWords(with.Role.Value), true})
		}
	}
	return indexOf(k, all)
}

// indexOf keeps of names that are the same those that the maker gave, and of names that were
// cut those that mean one thing, or one role.
func indexOf(k *kit.Kit, all []called) callIndex {
	same := map[string][]called{}
	var order []string
	for _, one := range all {
		name := strings.Join(one.words, " ")
		if len(same[name]) == 0 {
			order = append(order, name)
		}
		same[name] = append(same[name], one)
	}
	index := callIndex{}
	for _, name := range order {
		if one, ok := meantBy(k, same[name]); ok && name != "" {
			index[one.words[0]] = append(index[one.words[0]], one)
		}
	}
	for first := range index {
		slices.SortStableFunc(index[first], func(a, b called) int { return len(b.words) - len(a.words) })
	}
	return index
}

func meantBy(k *kit.Kit, all []called) (called, bool) {
	if i := slices.IndexFunc(all, func(one called) bool { return one.whole }); i >= 0 {
		return all[i], true
	}
	var keys []string
	for _, one := range all {
		if !slices.Contains(keys, one.key) {
			keys = append(keys, one.key)
		}
	}
	if len(keys) == 1 {
		return all[0], true
	}
	role := roleOf(k, keys)
	return called{role, all[0].words, false}, role != ""
}

// nameWords cuts a name as the text is cut, so that "Old-fashioned" is found as it stands.
func nameWords(name string) []string {
	var all []string
	for _, w := range rules.Words(name) {
		for part := range strings.SplitSeq(w.Text, "-") {
			all = append(all, rules.Singular(part))
		}
	}
	return all
}

// attached begin what is said of a thing behind its name.
var attached = wordSet("with for on to in of without")

func wholeAndCut(key, name string) []called {
	words := nameWords(name)
	all := []called{{key, words, true}}
	if cut := slices.IndexFunc(words, func(w string) bool { return attached[w] }); cut > 0 {
		words = words[:cut]
		all = append(all, called{key, words, false})
	}
	for i := 1; i < len(words); i++ {
		all = append(all, called{key, words[i:], false})
	}
	return all
}

// A calling is a name of the kit that begins with a word, and its last word.
type calling struct {
	called
	last int
	ok   bool
}

// callAt gives the longest name of the kit that begins with word i, and its last word.
func (r *reading) callAt(i int) (found called, last int, ok bool) {
	one := r.callings[i]
	return one.called, one.last, one.ok
}

// findCallings looks once at each word, as several go through them.
func (r *reading) findCallings() {
	r.callings = make([]calling, len(r.words))
	for i := range r.words {
		first, _, _ := strings.Cut(r.words[i].Text, "-")
		for _, one := range r.calls[rules.Singular(first)] {
			if last, ok := r.spells(one.words, i); ok {
				r.callings[i] = calling{one, last, true}
				break
			}
		}
	}
}

// calledFrom is a name of the kit that begins with word i, such as "warm water", whose first
// word begins no name in a leaflet.
func (r *reading) calledFrom(i, to int) (at [2]int, ok bool) {
	if r.kit == nil || i >= len(r.words) || r.words[i].Start >= to {
		return at, false
	}
	_, last, ok := r.callAt(i)
	return [2]int{r.words[i].Start, r.words[last].End}, ok && r.words[last].End <= to
}

// spells says whether the words of a name stand at word i, with or without hyphens.
func (r *reading) spells(words []string, i int) (last int, ok bool) {
	for n := 0; n < len(words); i++ {
		if i >= len(r.words) || n > 0 && !r.joins(r.words[i-1].End, r.words[i].Start) {
			return 0, false
		}
		for part := range strings.SplitSeq(r.words[i].Text, "-") {
			if n >= len(words) || rules.Singular(part) != words[n] {
				return 0, false
			}
			n++
		}
	}
	return i - 1, true
}

// withArticle is where a name begins with the small word before it: "the scale".
func (r *reading) withArticle(i int) int {
	if i > 0 && articles[r.words[i-1].Text] && r.joins(r.words[i-1].End, r.words[i].Start) {
		return r.words[i-1].Start
	}
	return r.words[i].Start
}

var articles = wordSet("the a an your")

// isOrderAt: "Spoon the mix" speaks of no spoon. A name of one word that also orders something
// is one behind an article or a preposition only.
func (r *reading) isOrderAt(i int) bool {
	if rules.DoingOf(r.words[i].Text, language) == rules.NoOrder {
		return false
	}
	return i == 0 || r.words[i-1].Sentence != r.words[i].Sentence || !beforeNouns[r.words[i-1].Text]
}

var beforeNouns = wordSet("the a an your this that each every one with in into on onto from by of under over first second other same")
