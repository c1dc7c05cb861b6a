package render

import (
	"fmt"
	"strings"

	"tallyfold/kit"
	"tallyfold/kit/picture"
	"tallyfold/kit/quantity"
)

// boxView lists what is packed.
type boxView struct {
	Plate             string
	Components, Tools []packedItem
}

// packedItem is a line of the list. Strings are Markdown.
type packedItem struct{ Bag, Name, Note, Amount, Picture string }

func boxValues(a *assembly) any {
	view := boxView{Plate: a.plate()}
	for _, c := range a.kit.Components {
		item := packedItem{Bag: escape(c.Letter), Name: escape(c.String()), Note: a.note(c.Name, c.Note.Value), Amount: a.packedInBag(c), Picture: a.pictureInList(c.Picture)}
		if c.Optional.Value {
			item.Note = strings.TrimSpace(a.say("optional") + " " + item.Note)
		}
		view.Components = append(view.Components, item)
	}
	for _, tool := range a.kit.Tools {
		if tool.From.Value != kit.FromBox {
			continue
		}
		item := packedItem{Name: a.toolWords(tool, tool.String()), Note: a.note(tool.Name, tool.Note.Value), Amount: a.packedAmount(tool.Packed), Picture: a.pictureInList(tool.Picture)}
		if item.Amount == "" {
			item.Amount = a.show(quantity.Whole(1), quantity.Count)
		}
		view.Tools = append(view.Tools, item)
	}
	if len(view.Components)+len(view.Tools) == 0 {
		return nil
	}
	return view
}

// pictureInList is a picture beside a name, which says what it shows.
func (a *assembly) pictureInList(said kit.Said[string]) string {
	if !said.Given() {
		return ""
	}
	return a.pictureOf(said.Value, "", "", picture.InList)
}

// packedInBag tells packs inside the pack as such: "2 skeins of 50 g".
func (a *assembly) packedInBag(c *kit.Component) string {
	if !c.Lots.Told() {
		return a.packedAmount(c.Packed)
	}
	each := a.show(c.Lots.Each.Nominal, c.Lots.Each.Dimension)
	if sides := c.Lots.Each; sides.Across.Sign() > 0 {
		each = a.show(sides.Across, quantity.Length) + " × " + a.show(sides.Along, quantity.Length)
	}
	return escape(a.say("lots-of", "lots", fmt.Sprintf("%d %s", c.Lots.Count, c.Lots.Noun), "amount", each))
}

// note is what stands beside a name in a list: the other names that the steps use for
// the thing, then the maker's own words.
func (a *assembly) note(name kit.Name, words string) string {
	others := name.Names()[1:]
	if len(others) == 0 {
		return cell(words)
	}
	for i, other := range others {
		others[i] = cell(other)
	}
	return strings.TrimSpace(a.say("also-called", "names", strings.Join(others, ", ")) + " " + cell(words))
}

// packedAmount is what is in the bag, without its tolerance: that is for the
// packer, not for the customer.
func (a *assembly) packedAmount(packed kit.Said[quantity.Amount]) string {
	if !packed.Given() {
		return ""
	}
	return escape(a.show(packed.Value.Nominal, packed.Value.Dimension))
}
