package load

import (
	"strings"

	"tallyfold/kit"
)

// ingredients reads parts of a blend: "70 % Water", or a list of them.
func ingredients(key, expected, example string, at func(*kit.Component) *[]kit.Said[kit.Ingredient]) field[kit.Component] {
	k := Key{Name: key, Expected: expected, Example: example, Form: TextList, Words: true}
	return field[kit.Component]{k, func(r *reader, into *kit.Component, v value) {
		for _, one := range oneOrMore(v) {
			if !r.isWords(one, k) {
				continue
			}
			share, name, found := strings.Cut(one.text(), "%")
			name = strings.TrimSpace(name)
			if !found || name == "" {
				r.wrong(one, k)
				continue
			}
			amount, ok := r.amount(one.piece(0, len(share)+1), k, ownShare)
			if ok {
				*at(into) = append(*at(into), said(one, kit.Ingredient{Name: name, Share: amount}))
			}
		}
	}}
}
