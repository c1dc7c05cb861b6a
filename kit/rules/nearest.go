package rules

// nearest gives the known name that a word is most likely a slip for, or "". Up to
// a third of its letters may be wrong, missing, too many or changed over; or it
// begins with the same four letters, as "piercing" does for "pierce".
func nearest(word string, known []string) string {
	typed := []rune(word)
	best, least := "", max(len(typed)/3, 1)+1
	for _, name := range known {
		if slips := slips(typed, []rune(name)); slips < least {
			best, least = name, slips
		}
	}
	for _, name := range known {
		if best == "" && beginsAlike(word, name) {
			best = name
		}
	}
	return best
}

// alike is how many letters at the beginning make two words akin.
const alike = 4

func beginsAlike(a, b string) bool {
	return len(a) >= alike && len(b) >= alike && a[:alike] == b[:alike]
}

// slips counts letters to change between a and b, neighbours changed over as one
// (Damerau–Levenshtein, each place once).
func slips(a, b []rune) int {
	rows := make([][]int, len(a)+1)
	for i := range rows {
		rows[i] = make([]int, len(b)+1)
		rows[i][0] = i
	}
	for j := range rows[0] {
		rows[0][j] = j
	}
	for i := 1; i <= len(a); i++ {
		for j := 1; j <= len(b); j++ {
			changed := rows[i-1][j-1]
			if a[i-1] != b[j-1] {
				changed++
			}
			rows[i][j] = min(rows[i-1][j]+1, rows[i][j-1]+1, changed)
			if i > 1 && j > 1 && a[i-1] == b[j-2] && a[i-2] == b[j-1] {
				rows[i][j] = min(rows[i][j], rows[i-2][j-2]+1)
			}
		}
	}
	return rows[len(a)][len(b)]
}
