package main

import (
	"fmt"
	"maps"
	"slices"
	"strings"

	"tallyfold/kit/diag"
)

func sortedNames(texts map[string][]byte) []string { return slices.Sorted(maps.Keys(texts)) }

// tallied counts findings in words: "1 must fix, 0 should fix".
func tallied(list diag.List) string {
	if len(list) == 0 {
		return "nothing to fix"
	}
	var parts []string
	for _, severity := range []diag.Severity{diag.MustFix, diag.ShouldFix, diag.WorthKnowing} {
		if n := list.Count(severity); n > 0 {
			parts = append(parts, fmt.Sprintf("%d %s", n, severity))
		}
	}
	return strings.Join(parts, ", ")
}

// writeDifference shows the lines of a file that go (-) and come (+), with the number of each
// in the file as it is now. Lines that stay in the same order are left out.
func writeDifference(out *strings.Builder, name, old, changed string) {
	fmt.Fprintf(out, "%s\n", name)
	a, b := strings.SplitAfter(old, "\n"), strings.SplitAfter(changed, "\n")
	longest := common(a, b)
	i, j := 0, 0
	for i < len(a) || j < len(b) {
		switch {
		case i < len(a) && j < len(b) && a[i] == b[j]:
			i, j = i+1, j+1
		case i < len(a) && (j == len(b) || longest[i+1][j] >= longest[i][j+1]):
			fmt.Fprintf(out, "  %4d - %s\n", i+1, strings.TrimRight(a[i], "\r\n"))
			i++
		default:
			fmt.Fprintf(out, "       + %s\n", strings.TrimRight(b[j], "\r\n"))
			j++
		}
	}
}

// common gives, for the ends of two texts from each pair of lines on, how many lines they
// have in common in the same order.
func common(a, b []string) [][]int {
	longest := make([][]int, len(a)+1)
	for i := range longest {
		longest[i] = make([]int, len(b)+1)
	}
	for i := len(a) - 1; i >= 0; i-- {
		for j := len(b) - 1; j >= 0; j-- {
			if a[i] == b[j] {
				longest[i][j] = longest[i+1][j+1] + 1
			} else {
				longest[i][j] = max(longest[i+1][j], longest[i][j+1])
			}
		}
	}
	return longest
}
