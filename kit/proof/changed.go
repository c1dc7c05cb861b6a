package proof

import (
	"io/fs"
	"time"
)

// OfChanged proves the kit in a folder as Of does, with other texts in the place of some of
// its files, by their names. Nothing is written.
func OfChanged(folder fs.FS, name string, today time.Time, texts map[string][]byte) *Proof {
	return Of(overlay{folder, texts}, name, today)
}

// New are the findings that were not there before: of no rule on the same thing.
func (p *Proof) New(before *Proof) (found []string) {
	for _, f := range before.newIn(p) {
		found = append(found, f.Severity.String()+": "+f.Rule+", "+f.Found)
	}
	return found
}
