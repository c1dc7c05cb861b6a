package render

import (
	"strings"

	"tallyfold/kit"
	"tallyfold/kit/quantity"
)

// boxView lists what is packed.
type boxView struct {
	Components, Tools []packedItem
}

// packedItem is a line of the list. Strings are Markdown.
type packedItem struct{ Bag, Name, Note, Amount string }

func boxValues(a *assembly) any {
	view := boxView{}
	for _, c := range a.kit.Components {
		item := packedItem{Bag: escape(c.Letter), Name: escape(c.String()), Note: cell(c.Note.Value), Amount: packedAmount(c.Packed)}
		if c.Optional.Value {
			item.Note = strings.TrimSpace(a.say("optional") + " " + item.Note)
		}
		view.Components = append(view.Components, item)
	}
	for _, tool := range a.kit.Tools {
		if tool.From.Value != kit.FromBox {
			continue
		}
		item := packedItem{Name: a.toolWords(tool, tool.String()), Note: cell(tool.Note.Value), Amount: packedAmount(tool.Packed)}
		if item.Amount == "" {
			item.Amount = quantity.Show(quantity.Whole(1), quantity.Count)
		}
		view.Tools = append(view.Tools, item)
	}
	if len(view.Components)+len(view.Tools) == 0 {
		return nil
	}
	return view
}

// packedAmount is what is in the bag, without its tolerance: that is for the
// packer, not for the customer.
func packedAmount(packed kit.Said[quantity.Amount]) string {
	if !packed.Given() {
		return ""
	}
	return escape(quantity.Show(packed.Value.Nominal, packed.Value.Dimension))
}
