package rules

import (
	"fmt"
	"slices"
	"strings"

	"tallyfold/kit"
	"tallyfold/kit/diag"
	"tallyfold/kit/readability"
)

// readable are the languages whose sentences and syllables are counted.
var readable = map[string]bool{"en": true}

var hardToRead = Rule{
	Name:     "hard-to-read",
	Severity: diag.ShouldFix,
	Title:    "A step is harder to read than its readers should have to bear",
	Explanation: `A step is read with wet hands and one eye on the pan. Long sentences of long words are
read twice, or not at all.

Measured is the Flesch–Kincaid grade (Kincaid and others 1975), the year at school that a
reader must have reached, with the Flesch reading ease (1948) beside it. What a step may
ask for is a table of our own: the age of the audience less five years, and at most grade
8 for beginners, 9 with some practice, 10 for the experienced. That texts for everybody
should aim at grade 7 to 8 is common advice; the rest is common practice, no source. A
step is told only where it lies more than two grades above, and does so too when the
names of things in the box count as two syllables at most. Steps of less than 40 words
are too short to measure, and cautions are not counted.

Cut the longest sentence in two, and say long words in shorter ones. A formula counts
syllables; it does not know whether the step makes sense.`,
	Check: func(s Subject) []diag.Finding {
		l, known := readability.In(language(s.Kit))
		if !known {
			return []diag.Finding{noWords(s.Kit, "the ease of reading", readable)}
		}
		h := hardSearch{kit: s.Kit, language: l, names: namesInBox(s.Kit), allowed: gradeAllowed(s.Kit.Audience)}
		var findings []diag.Finding
		for _, p := range passages(s.Kit) {
			if p.step == nil {
				continue
			}
			if finding, hard := h.judge(p); hard {
				findings = append(findings, finding)
			}
		}
		return findings
	},
	NotLookedAt: tooShortToMeasure,
}

// tooShortToMeasure names the steps that are not measured.
func tooShortToMeasure(s Subject) []string {
	l, known := readability.In(language(s.Kit))
	if !known {
		return nil
	}
	var short []string
	for _, p := range passages(s.Kit) {
		words := 0
		for _, sentence := range p.sentences(l) {
			words += len(sentence.Words)
		}
		if p.step != nil && words < leastWords {
			short = append(short, p.where)
		}
	}
	if len(short) == 0 {
		return nil
	}
	return []string{fmt.Sprintf("too short to measure, less than %d words: %s", leastWords, listed(short))}
}

const (
	leastWords = 40 // of a step that is measured
	slack      = 2  // grades
)

// skillGrades is the most that a step may ask for by the skill of the audience; where
// none is told, that of beginners.
var skillGrades = map[string]int{"": 8, "beginner": 8, "some practice": 9, "experienced": 10}

// gradeAllowed is the grade a step may ask for: our own table, see the explanation.
// The first grade is the sixth year of life.
func gradeAllowed(a kit.Audience) int {
	grade := skillGrades[a.Skill.Value]
	if a.Age.Given() {
		grade = min(grade, max(a.Age.Value-5, 1))
	}
	return grade
}

// namesInBox are the words of the names of all things, in the singular.
func namesInBox(k *kit.Kit) map[string]bool {
	all := map[string]bool{}
	for _, name := range thingNames(k) {
		for _, word := range name {
			all[singular(word)] = true
		}
	}
	return all
}

type hardSearch struct {
	kit      *kit.Kit
	language *readability.Language
	names    map[string]bool
	allowed  int
}

// judge measures a step; hard is false where it reads well or is too short.
func (h hardSearch) judge(p passage) (finding diag.Finding, hard bool) {
	var counts, lightened readability.Counts
	var longest sentence
	for _, s := range p.sentences(h.language) {
		own, lighter := h.count(p, s)
		counts, lightened = counts.Plus(own), lightened.Plus(lighter)
		if len(s.Words) > len(longest.Words) {
			longest = s
		}
	}
	most := float64(h.allowed + slack)
	if counts.Words < leastWords || h.language.Grade.Score(counts) <= most || h.language.Grade.Score(lightened) <= most {
		return diag.Finding{}, false
	}
	ease, grade := h.language.Ease, h.language.Grade
	finding = diag.Finding{
		Where: p.place(longest), About: p.about,
		Found:    fmt.Sprintf("%s reads at grade %.1f (reading ease %.0f); its longest sentence has %d words", p.where, grade.Score(counts), ease.Score(counts), len(longest.Words)),
		Expected: fmt.Sprintf("about grade %d, %s", h.allowed, audience(h.kit.Audience)),
		Sum: []string{
			fmt.Sprintf("%d words in %d sentences, %.1f a sentence; %d syllables, %.2f a word", counts.Words, counts.Sentences,
				float64(counts.Words)/float64(counts.Sentences), counts.Syllables, float64(counts.Syllables)/float64(counts.Words)),
			"grade " + scored(grade, counts),
			"reading ease " + scored(ease, counts),
		},
		Remedies: h.remedies(p, longest, counts),
	}
	return finding, true
}

// count counts a sentence, and once more with names of at most two syllables.
func (h hardSearch) count(p passage, s sentence) (counts, lightened readability.Counts) {
	counts = readability.Counts{Sentences: 1, Words: len(s.Words)}
	lightened = counts
	for _, word := range s.Words {
		text := word.Of(p.text)
		n := h.language.Syllables(text)
		counts.Syllables += n
		if n > 2 && h.isName(text) {
			n = 2
		}
		lightened.Syllables += n
	}
	return counts, lightened
}

// isName says whether a word, or each part of a joined one, is of the name of a thing.
func (h hardSearch) isName(word string) bool {
	for _, part := range strings.Split(strings.ToLower(word), "-") {
		if !h.names[singular(part)] {
			return false
		}
	}
	return true
}

// audience tells for whom the step is meant.
func audience(a kit.Audience) string {
	var told []string
	if a.Age.Given() {
		told = append(told, fmt.Sprintf("age %d and up", a.Age.Value))
	}
	if a.Skill.Given() {
		told = append(told, "skill “"+a.Skill.Value+"”")
	}
	if len(told) == 0 {
		return "for grown-up beginners, as no audience is told"
	}
	return "for " + strings.Join(told, " and ")
}

// scored writes a score out: "0.39 × 31.0 + 11.8 × 1.90 − 15.59 = 18.9".
func scored(f readability.Formula, c readability.Counts) string {
	text := fmt.Sprintf("%v %s %v × %.1f %s %v × %.2f = %.1f", f.Base, sign(f.PerSentenceLength), abs(f.PerSentenceLength),
		float64(c.Words)/float64(c.Sentences), sign(f.PerWordLength), abs(f.PerWordLength), float64(c.Syllables)/float64(c.Words), f.Score(c))
	return strings.Replace(text, "-", "−", 1)
}

func sign(n float64) string {
	if n < 0 {
		return "−"
	}
	return "+"
}

func abs(n float64) float64 { return max(n, -n) }

func (h hardSearch) remedies(p passage, longest sentence, counts readability.Counts) []diag.Remedy {
	then := counts.Plus(readability.Counts{Sentences: 1})
	remedy := diag.Remedy{
		Do:   "cut the longest sentence in two",
		Then: fmt.Sprintf("%s then comes to grade %.1f", p.where, h.language.Grade.Score(then)),
	}
	if at := h.splitAt(p, longest); at > 0 {
		remedy.Do += ": end it behind “" + p.lastWords(longest, at) + "” and begin another with “" + p.firstWords(longest, at) + "”"
	}
	remedies := []diag.Remedy{remedy}
	if long := h.longWords(p); len(long) > 0 {
		remedies = append(remedies, diag.Remedy{Do: "say " + listed(long) + " in shorter words"})
	}
	return remedies
}

// aside is how many words of a sentence are quoted on either side of a cut.
const quotedWords = 3

func (p passage) lastWords(s sentence, at int) string {
	return p.said(s.Words[max(0, at-quotedWords)].Start, s.Words[at-1].End)
}

func (p passage) firstWords(s sentence, at int) string {
	return p.said(s.Words[at].Start, s.Words[min(len(s.Words), at+quotedWords)-1].End)
}

// splitAt is the word before which a sentence is best cut, 0 for none: at a mark near
// the middle, rather before a joining word.
func (h hardSearch) splitAt(p passage, s sentence) int {
	const least = 4 // words on either side
	joiners := joiningWords[language(h.kit)]
	best, bestRank := 0, 0
	for at := least; at <= len(s.Words)-least; at++ {
		before, word := s.Words[at-1], s.Words[at]
		link := p.link(p.at.Part(word.Start, word.End))
		if link != nil && link == p.link(p.at.Part(before.Start, before.End)) {
			continue
		}
		if !strings.ContainsAny(p.text[before.End:word.Start], ",;:–—") {
			continue
		}
		rank := -100 * distance(at, len(s.Words)-at) / len(s.Words)
		if slices.Contains(joiners, strings.ToLower(word.Of(p.text))) {
			rank += 150
		}
		if best == 0 || rank > bestRank {
			best, bestRank = at, rank
		}
	}
	return best
}

func distance(a, b int) int { return max(a-b, b-a) }

// longWords are the three longest words of a step that are no names, from four
// syllables on.
func (h hardSearch) longWords(p passage) []string {
	const long, most = 4, 3
	syllables := map[string]int{}
	var words []string
	for _, s := range p.sentences(h.language) {
		for _, word := range s.Words {
			text := strings.ToLower(word.Of(p.text))
			if n := h.language.Syllables(text); n >= long && !h.isName(text) && syllables[text] == 0 {
				syllables[text] = n
				words = append(words, text)
			}
		}
	}
	slices.SortStableFunc(words, func(a, b string) int { return syllables[b] - syllables[a] })
	words = words[:min(len(words), most)]
	for i, word := range words {
		words[i] = "“" + word + "”"
	}
	return words
}
