// Package load reads kit.yaml into the nouns of kit. It is the only door to the
// YAML reader, and opens no file itself.
//
// YAML is read into its tree of nodes and no further. What a text means (an
// amount, yes, a date, a key) is decided here, by the tables in keys.go and
// keys_things.go, from the text as the maker wrote it: “1_000”, “0x10”, “1:30”,
// “no” and “~” mean nothing that they do not say. Every value keeps the bytes it
// came from.
//
// Reading goes on after a mistake. Kit returns what was understood together with
// findings for everything that was not. Only a file that could be read in more
// than one way, or not at all, is refused whole.
package load

import (
	"sync"

	"tallyfold/kit"
	"tallyfold/kit/diag"
	"tallyfold/kit/quantity"
	"tallyfold/kit/source"

	"golang.org/x/text/language"
)

// Kit reads kit.yaml. The kit is nil only if the file was refused whole; else it
// holds everything that could be read, and the list everything that could not.
//
// What kit.yaml names in the method (parts, steps) is not checked here but in
// Settle, when the method has been read.
func Kit(file *source.File) (*kit.Kit, diag.List) {
	doc, refused := open(file)
	if doc == nil {
		return nil, refused.Sorted()
	}
	r := &reader{doc: doc, sections: sync.OnceValue(Keys), guesses: mostGuesses}
	k := &kit.Kit{File: file, Language: kit.Said[string]{Value: language.English.String()}}
	r.amounts = Amounts(k)
	if !r.readRoot(k) {
		return nil, r.found.Sorted()
	}
	for i, c := range k.Components {
		c.Letter = letter(i)
	}
	r.uniqueNames(k)
	r.references(k)
	r.spares(k)
	r.times(k)
	return k, r.found.Sorted()
}

// readRoot reads the keys of the kit, and says whether there were any to read.
func (r *reader) readRoot(k *kit.Kit) bool {
	if r.doc.root == nil {
		for _, f := range kitKeys.fields {
			if f.Required {
				r.missing(r.doc.file.Whole(), kitKeys.name, f.Key)
			}
		}
		return true
	}
	root := r.doc.value(r.doc.root)
	if !root.isKeys() {
		r.report(RefusedFile, root.head(), root.told()+" where the keys of the kit should stand", "lines such as “name: Windowsill scent gels”",
			"begin with “name:”, “makes:” and “components:”, each at the beginning of a line")
		return false
	}
	readKeys(r, kitKeys, k, r.doc.file.Whole(), root)
	return true
}

// letter gives A, B … Z, AA, AB … for the components in their order from 0.
func letter(i int) string {
	const letters = 26
	text := string(rune('A' + i%letters))
	for i = i/letters - 1; i >= 0; i = i/letters - 1 {
		text = string(rune('A'+i%letters)) + text
	}
	return text
}

// spares reports spares that cannot be a part of what is packed.
func (r *reader) spares(k *kit.Kit) {
	for _, c := range k.Components {
		if !c.Packed.Given() || !c.Spare.Given() {
			continue
		}
		packed, spare := c.Packed.Value, c.Spare.Value
		found := quote(c.Spare.Span.Text())
		switch {
		case packed.Dimension != spare.Dimension:
			found += ", " + kindNames[spare.Dimension] + ", where the packed amount is " + kindNames[packed.Dimension]
		case packed.Nominal.Less(spare.Nominal):
			found += ", more than the " + quote(c.Packed.Span.Text()) + " packed"
		default:
			continue
		}
		r.about = c.ID
		f := r.report(BadAmount, c.Spare.Span, found, "a part of the packed amount, in a unit of the same kind", "correct the spare, or the packed amount")
		f.Also = []diag.Place{{Where: c.Packed.Span, Note: "packed"}}
		r.about = ""
	}
}

// times reports more work than there is time in all.
func (r *reader) times(k *kit.Kit) {
	work, total := k.Time.HandsOn, k.Time.Total
	if !work.Given() || !total.Given() || total.Value.Bound == quantity.AtLeast || work.Value.Nominal.Cmp(quantity.Larger(total.Value.Nominal, total.Value.High)) <= 0 {
		return
	}
	f := r.report(BadAmount, work.Span, quote(work.Span.Text())+", more than the "+quote(total.Span.Text())+" that the kit takes in all",
		"a part of the total time, which counts the work too", "correct the hands-on time, or the total")
	f.Also = []diag.Place{{Where: total.Span, Note: "the total time"}}
}
