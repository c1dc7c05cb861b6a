package kit

import (
	"crypto/sha256"
	"encoding/hex"
	"slices"
	"strings"

	"tallyfold/kit/source"
)

// A Translation is a kit's texts in another language: the files method.XX.md,
// trouble.XX.md, words.XX.md and kit.XX.txt.
type Translation struct {
	// Language is its BCP 47 tag, from the name of the file.
	Language string
	// WordsRead: the words of this language around an amount are read, so that its
	// amounts can be compared.
	WordsRead bool
	Method    Method
	// Troubles and Words have the names of those that they translate.
	Troubles []*Trouble
	Words    []*Words
	// Texts are those of kit.yaml ("Makes eight sachets") with what stands for them.
	Texts map[string]string
}

// NamedBy gives things without a name in the language of the translation the one that
// its Texts have for theirs.
func (k *Kit) NamedBy(t *Translation) {
	k.eachName(func(n *Name) {
		if other := t.Texts[n.String()]; other != "" && !n.HasNameIn(t.Language) {
			n.Others = append(n.Others, OtherName{Language: Said[string]{Value: t.Language}, Called: []string{other}})
		}
	})
}

func (k *Kit) eachName(do func(*Name)) {
	for _, c := range k.Components {
		do(&c.Name)
	}
	for _, h := range k.Household {
		do(&h.Name)
	}
	for _, t := range k.Tools {
		do(&t.Name)
	}
	for _, m := range k.Mixtures {
		do(&m.Name)
	}
	for _, p := range k.Pieces {
		do(&p.Name)
	}
}

// Translation is that into a language by its tag ("fr"), or nil. A translation into
// the language as such ("fr") serves its regions ("fr-CA") too.
func (k *Kit) Translation(tag string) *Translation {
	for _, t := range k.Translations {
		if strings.EqualFold(t.Language, tag) {
			return t
		}
	}
	for _, t := range k.Translations {
		if strings.HasPrefix(strings.ToLower(tag), strings.ToLower(t.Language)+"-") {
			return t
		}
	}
	return nil
}

// Fingerprint is eight digits that change when anything changes that a translator
// must know of: the heading, what the links do and say, the cautions, the prose. How
// the text is broken into lines, and a maker's notes, do not count. It is the head of
// the SHA-256 of the text.
func (s *Step) Fingerprint() string {
	type piece struct {
		at   source.Span
		text string
	}
	pieces := []piece{{s.Span, s.Title + "\x00" + s.Vessel}}
	for _, o := range s.Operations {
		pieces = append(pieces, piece{o.Span, o.Does() + "\x00" + o.Text})
	}
	for _, caution := range s.Cautions {
		pieces = append(pieces, piece{caution.Span, string(caution.Signal)})
	}
	for _, prose := range s.Prose {
		pieces = append(pieces, piece{prose.Span, prose.Text})
	}
	slices.SortStableFunc(pieces, func(a, b piece) int { return a.at.Start - b.at.Start })
	hash := sha256.New()
	for _, one := range pieces {
		hash.Write([]byte(strings.Join(strings.Fields(one.text), " ") + " "))
	}
	const digits = 8
	return hex.EncodeToString(hash.Sum(nil))[:digits]
}
