package keep

import (
	"io/fs"
	"slices"
	"strings"
)

// deviceNames are names that Windows takes for devices, whatever stands behind a
// point (Microsoft, “Naming Files, Paths, and Namespaces”). A kit folder is copied
// from machine to machine, so they are refused everywhere.
var deviceNames = []string{"con", "prn", "aux", "nul", "conin$", "conout$",
	"com0", "com1", "com2", "com3", "com4", "com5", "com6", "com7", "com8", "com9", "com¹", "com²", "com³",
	"lpt0", "lpt1", "lpt2", "lpt3", "lpt4", "lpt5", "lpt6", "lpt7", "lpt8", "lpt9", "lpt¹", "lpt²", "lpt³"}

// longestName is the longest path in a kit folder, in bytes.
const longestName = 200

// checkName says whether a name is that of a file inside the kit folder, as it may be
// on any machine: with forward slashes, no hidden part, no “..”.
func checkName(name string) error {
	if !fs.ValidPath(name) || name == "." || len(name) > longestName {
		return trouble(BadName, "", name, nil)
	}
	for part := range strings.SplitSeq(name, "/") {
		stem, _, _ := strings.Cut(part, ".")
		switch {
		case strings.HasPrefix(part, "."), strings.HasSuffix(part, "."), strings.HasSuffix(part, " "), strings.HasPrefix(part, " "),
			strings.ContainsAny(part, `\:*?"<>|`), strings.ContainsFunc(part, func(r rune) bool { return r < ' ' || r == 0x7f }),
			slices.Contains(deviceNames, strings.ToLower(strings.TrimRight(stem, " "))):
			return trouble(BadName, "", name, nil)
		}
	}
	return nil
}
