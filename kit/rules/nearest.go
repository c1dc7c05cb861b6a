package rules

import "tallyfold/kit/diag"

// nearest gives the known name that a word is most likely a slip for, or one that
// begins with the same four letters, as "piercing" does for "pierce"; else "".
func nearest(word string, known []string) string {
	if near := diag.Nearest(word, known); near != "" {
		return near
	}
	for _, name := range known {
		if beginsAlike(word, name) {
			return name
		}
	}
	return ""
}

// alike is how many letters at the beginning make two words akin.
const alike = 4

func beginsAlike(a, b string) bool {
	return len(a) >= alike && len(b) >= alike && a[:alike] == b[:alike]
}
