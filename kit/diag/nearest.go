package diag

import "strings"

// longestGuess is the longest word, in characters, that a known name is looked
// for: what is longer is a sentence that lost its place, not a slip of the keys.
const longestGuess = 40

// Nearest gives the known name that word is most likely a slip for ("did you
// mean …"), or "" when none is near. Up to a third of the word may differ, two
// letters changed over count as one slip, and case does not count. Of equally
// near names it gives the one that stands first in known.
func Nearest(word string, known []string) string {
	typed := []rune(strings.ToLower(word))
	if len(typed) < 2 || len(typed) > longestGuess {
		return ""
	}
	best, least := "", max(len(typed)/3, 1)+1
	for _, name := range known {
		if slips := slips(typed, []rune(strings.ToLower(name)), least); slips < least {
			best, least = name, slips
		}
	}
	return best
}

// slips counts the letters typed wrong, left out, typed too many or changed over
// with their neighbour between a and b (Damerau–Levenshtein, each place once). It
// stops counting at enough.
func slips(a, b []rune, enough int) int {
	if len(a)-len(b) >= enough || len(b)-len(a) >= enough {
		return enough
	}
	before, last, row := make([]int, len(b)+1), make([]int, len(b)+1), make([]int, len(b)+1)
	for j := range last {
		last[j] = j
	}
	for i := range a {
		row[0] = i + 1
		least := row[0]
		for j := range b {
			row[j+1] = min(last[j+1]+1, row[j]+1, last[j]+differ(a[i], b[j]))
			if i > 0 && j > 0 && a[i] == b[j-1] && a[i-1] == b[j] {
				row[j+1] = min(row[j+1], before[j-1]+1)
			}
			least = min(least, row[j+1])
		}
		if least > enough {
			return enough
		}
		before, last, row = last, row, before
	}
	return min(last[len(b)], enough)
}

func differ(a, b rune) int {
	if a == b {
		return 0
	}
	return 1
}
