package instructions

import (
	"bytes"
	"regexp"
	"slices"
	"sort"
	"strings"

	"tallyfold/kit/diag"
)

// This file finds what looks like one of our links and is none: "[720 g of wax]
// (take:wax)", "(take:wax)", "[720 g](take: wax)". It looks at all text that was
// not understood, link definitions and code included.

var (
	// "](" that the Markdown parser made no link of.
	brokenLink = regexp.MustCompile(`\]\(`)
	// "] (word:", a space between the brackets.
	gapLink = regexp.MustCompile(`\][ \t\n]+\([ \t]*([A-Za-z]+)[ \t]*:([^ \t\n]?)`)
	// "(word:name" and "[word:name", with what follows the colon.
	bracketed = regexp.MustCompile(`[(\[][ \t]*([A-Za-z]+)[ \t]*:([ \t\n]*)([A-Za-z0-9-]*)`)
	// "[text][name]", the round brackets left out.
	squares = regexp.MustCompile(`\]\[([a-z0-9-]+)\]`)
	// "[label]: ", which defines a destination for links elsewhere.
	definition = regexp.MustCompile(`^[ \t]*(?:>[ \t]*)*\[[^\]]*\]:`)
)

// longestStray is how far, in bytes, a bracket is looked for around a stray.
const longestStray = 200

// A stray is one place that looks like a link.
type stray struct {
	at, end int // of what gave it away
	gap     bool
	squares bool
}

// findStrays tells each place once.
func (r *reader) findStrays() {
	text := r.notUnderstood()
	told := 0
	for _, s := range r.strays(text) {
		if s.at < told {
			continue
		}
		start, end := s.reach(text, told)
		told = max(end, s.end)
		found, remedy := r.describeStray(text, s, start, end)
		r.say(unreadableLink, r.document.span(start, end), "", found,
			"[what the customer reads](take:KEY), with nothing between the brackets and no space in the round ones", remedy)
	}
}

// notUnderstood is the text with everything that was understood blotted out.
func (r *reader) notUnderstood() []byte {
	text := bytes.Clone(r.document.text)
	for _, e := range r.read {
		for i := max(e.start, 0); i < min(e.end, len(text)); i++ {
			text[i] = 0
		}
	}
	return text
}

func (r *reader) strays(text []byte) []stray {
	var all []stray
	for _, m := range brokenLink.FindAllIndex(text, -1) {
		if !escaped(text, m[0]) && r.isBroken(text, m[0], m[1]) {
			all = append(all, stray{at: m[0], end: m[1]})
		}
	}
	for _, m := range gapLink.FindAllSubmatchIndex(text, -1) {
		if kindLike(text[m[2]:m[3]]) && m[4] < m[5] {
			all = append(all, stray{at: m[0], end: m[3], gap: true})
		}
	}
	for _, m := range bracketed.FindAllSubmatchIndex(text, -1) {
		if r.isBracketed(text[m[2]:m[3]], m[4] < m[5], string(text[m[6]:m[7]])) {
			all = append(all, stray{at: m[0], end: m[7]})
		}
	}
	all = append(all, bareWords(text)...)
	for _, m := range squares.FindAllSubmatchIndex(text, -1) {
		if _, known := r.names.sortOf(string(text[m[2]:m[3]])); known {
			all = append(all, stray{at: m[0], end: m[1], squares: true})
		}
	}
	slices.SortStableFunc(all, func(a, b stray) int { return a.at - b.at })
	return all
}

// bareWords finds "word:name" with no bracket before it. Colons are rare, so it
// goes from one to the next and looks at the word before each.
func bareWords(text []byte) []stray {
	var all []stray
	for at := bytes.IndexByte(text, ':'); at >= 0 && at+1 < len(text); {
		start := at
		for start > 0 && isLetter(text[start-1]) {
			start--
		}
		if follows := text[at+1]; meaningOf(string(text[start:at])) != nil && startsName(follows) &&
			(start == 0 || bytes.IndexByte([]byte("/:.#&=-_"), text[start-1]) < 0) {
			all = append(all, stray{at: start, end: at + 2})
		}
		next := bytes.IndexByte(text[at+1:], ':')
		if next < 0 {
			break
		}
		at += 1 + next
	}
	return all
}

// startsName says whether a character may stand behind the colon of a link.
func startsName(c byte) bool { return c >= 'a' && c <= 'z' || c >= '0' && c <= '9' || c == '?' }

func isLetter(c byte) bool { return c|0x20 >= 'a' && c|0x20 <= 'z' }

// escaped says whether the character at a byte has an odd number of backslashes before it.
func escaped(text []byte, at int) bool {
	n := 0
	for at-n > 0 && text[at-n-1] == '\\' {
		n++
	}
	return n%2 == 1
}

// isBroken says whether "](" begins a destination of ours or none at all. In
// code only ours counts, and a web address with a mistake is not ours.
func (r *reader) isBroken(text []byte, at, inside int) bool {
	rest := text[inside:min(inside+longestStray, len(text))]
	scheme, _, found := strings.Cut(string(rest), ":")
	scheme = strings.TrimSpace(scheme)
	if found && isWeb(scheme) {
		return false
	}
	return !r.inCode(at) || found && kindLike([]byte(scheme))
}

// isBracketed judges "(word:name": a word of ours directly before a name, or
// before or near one with a name that the kit knows. "(note: hot)" is prose.
func (r *reader) isBracketed(scheme []byte, spaced bool, name string) bool {
	_, known := r.names.sortOf(name)
	if meaningOf(strings.ToLower(string(scheme))) != nil {
		return !spaced || known
	}
	return known && kindLike(scheme)
}

// kindLike says whether a word is one of ours or a slip for one.
func kindLike(word []byte) bool {
	return diag.Nearest(string(word), kindNames()) != ""
}

// inCode says whether a byte stands in code, whose places are known in order.
func (r *reader) inCode(at int) bool {
	next := sort.Search(len(r.code), func(i int) bool { return r.code[i].start > at })
	return next > 0 && at < r.code[next-1].end
}

// reach widens a stray to the brackets around it, not before byte from.
func (s stray) reach(text []byte, from int) (start, end int) {
	start, end = s.at, s.end
	if text[s.at] == ']' {
		from = max(from, s.at-longestStray)
		if open := bytes.LastIndexByte(text[from:s.at], '['); open >= 0 {
			start = from + open
		}
	}
	if s.squares {
		return start, end
	}
	for end < min(s.end+longestStray, len(text)) && text[end] != 0 {
		c := text[end]
		if c == ')' || c == ']' {
			return start, end + 1
		}
		if c == '\n' || c == ' ' && !s.inBrackets(text) {
			break
		}
		end++
	}
	return start, end
}

func (s stray) inBrackets(text []byte) bool { return bytes.IndexByte([]byte("[]("), text[s.at]) >= 0 }

// describeStray says what is wrong with a stray and what to do about it.
func (r *reader) describeStray(text []byte, s stray, start, end int) (found, remedy string) {
	written := strings.Join(strings.Fields(strings.ReplaceAll(string(text[start:end]), "\x00", "…")), " ")
	shown := quoted(written)
	switch {
	case r.inCode(s.at):
		return shown + " in code, where nothing is read",
			"take the back-quotes away, or the spaces at the head of the line, or the HTML around it"
	case s.gap:
		return shown + ", with a space between the square and the round brackets", "take the space out"
	case r.isDefinition(text, start, end):
		return shown + ", a destination that no link uses", "put it in round brackets behind the text it belongs to"
	case s.squares:
		return shown + ", two pairs of square brackets", "put the second in round brackets, with a word and a colon first, as in take:KEY"
	case text[s.at] == '(':
		return shown + " without a text in square brackets before it", "put what the customer reads in square brackets before it"
	case text[s.at] == '[':
		return shown + ", a destination in square brackets", "put the text in square brackets and the destination in round ones"
	case text[s.at] != ']':
		return shown + " outside round brackets", "put it in round brackets behind a text in square ones"
	}
	return r.describeBroken(text, s, start, end, shown)
}

// isDefinition says whether "[label]:" stands before a stray in its line.
func (r *reader) isDefinition(text []byte, start, end int) bool {
	line := r.document.lineStart(start)
	return start-line < longestStray && definition.Match(text[line:end])
}

// describeBroken says why "[text](destination" is no link.
func (r *reader) describeBroken(text []byte, s stray, start, end int, shown string) (found, remedy string) {
	inside := text[min(s.end, end):end]
	switch {
	case text[start] != '[':
		return shown + ", whose text has no opening square bracket", "put “[” where the text begins"
	case bytes.IndexByte(text[start:s.at], 0) >= 0:
		return shown + ", a link around another link", "end the first one before the second begins"
	case !bytes.HasSuffix(inside, []byte(")")):
		return shown + ", whose round bracket is never closed", "put “)” behind the destination"
	case bytes.IndexByte(bytes.TrimSuffix(inside, []byte(")")), ' ') >= 0:
		return shown + ", with a space inside the round brackets", "take the space out"
	}
	return shown + ", which is no link to a reader of Markdown", "write it as [text](destination)"
}
