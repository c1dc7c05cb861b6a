package templates

import (
	"encoding/base64"
	"fmt"
	"slices"
	"strings"
)

// A face is one font file with what it is used for. The files are named by
// their use; fonts/NOTICE.md says what they are and under which licence.
type face struct {
	file, family, style, weight, letters string
}

// The letters each file holds, as its publisher cut it.
const (
	latin    = "U+0000-00FF, U+0131, U+0152-0153, U+02BB-02BC, U+02C6, U+02DA, U+02DC, U+0304, U+0308, U+0329, U+2000-206F, U+20AC, U+2122, U+2191, U+2193, U+2212, U+2215, U+FEFF, U+FFFD"
	arabic   = "U+0600-06FF, U+0750-077F, U+0870-088E, U+0890-0891, U+0897-08E1, U+08E3-08FF, U+200C-200E, U+2E41, U+FB50-FDFF, U+FE70-FE74, U+FE76-FEFC"
	latinExt = "U+0100-02BA, U+02BD-02C5, U+02C7-02CC, U+02CE-02D7, U+02DD-02FF, U+0304, U+0308, U+0329, U+1D00-1DBF, U+1E00-1E9F, U+1EF2-1EFF, U+2020, U+20A0-20AB, U+20AD-20C0, U+2113, U+2C60-2C7F, U+A720-A7FF"
)

// faces lists the two families: one for running text, one for labels, tables and
// cautions. In Arabic letters both have the same face, which has no italics.
func faces() []face {
	var all []face
	for _, cut := range []struct{ name, letters string }{{"latin-ext", latinExt}, {"latin", latin}} {
		all = append(all,
			face{"text-regular-" + cut.name, "Booklet Text", "normal", "400", cut.letters},
			face{"text-italic-" + cut.name, "Booklet Text", "italic", "400", cut.letters},
			face{"text-bold-" + cut.name, "Booklet Text", "normal", "600", cut.letters},
			face{"label-regular-" + cut.name, "Booklet Label", "normal", "400", cut.letters},
			face{"label-italic-" + cut.name, "Booklet Label", "italic", "400", cut.letters},
			face{"label-bold-" + cut.name, "Booklet Label", "normal", "700", cut.letters},
		)
	}
	return append(all,
		face{"arabic-regular", "Booklet Text", "normal", "400", arabic},
		face{"arabic-bold", "Booklet Text", "normal", "600", arabic},
		face{"arabic-regular", "Booklet Label", "normal", "400", arabic},
		face{"arabic-bold", "Booklet Label", "normal", "700", arabic},
	)
}

// FaceRules gives the @font-face rules with the files inside, so that a page that
// carries them needs nothing else. Latin letters are always there; others where the text
// of the page has any of them.
func (s Set) FaceRules(text string) (string, error) {
	var out strings.Builder
	further := furtherLetters(text)
	for _, f := range faces() {
		if f.letters != latin && !slices.ContainsFunc(further, reachesOf(f.letters).hold) {
			continue
		}
		data, err := s.File("fonts/" + f.file + ".woff2")
		if err != nil {
			return "", err
		}
		fmt.Fprintf(&out, "@font-face { font-family: %q; font-style: %s; font-weight: %s; unicode-range: %s; src: url(data:font/woff2;base64,%s) format(\"woff2\"); }\n",
			f.family, f.style, f.weight, f.letters, base64.StdEncoding.EncodeToString(data))
	}
	return out.String(), nil
}

// furtherLetters are those of a text that the Latin files don't hold, each once.
func furtherLetters(text string) []rune {
	held := reachesOf(latin)
	var letters []rune
	for _, r := range text {
		if r > 0xff && !held.hold(r) && !slices.Contains(letters, r) {
			letters = append(letters, r)
		}
	}
	return letters
}

// reaches are ranges of letters, first and last.
type reaches [][2]rune

// reachesOf reads a list as CSS has it: "U+0131, U+0152-0153".
func reachesOf(letters string) reaches {
	var all reaches
	for _, reach := range strings.Split(letters, ", ") {
		var first, last rune
		if n, _ := fmt.Sscanf(reach, "U+%X-%X", &first, &last); n == 1 {
			last = first
		}
		all = append(all, [2]rune{first, last})
	}
	return all
}

func (all reaches) hold(r rune) bool {
	return slices.ContainsFunc(all, func(reach [2]rune) bool { return r >= reach[0] && r <= reach[1] })
}
