package render

import "tallyfold/kit"

// kitchenView lists what the customer brings.
type kitchenView struct {
	UsedUp []packedItem
	Tools  []kitchenTool
}

// kitchenTool is a tool with how much it is needed. Strings are Markdown.
type kitchenTool struct{ Name, Note, Need, Picture string }

func kitchenValues(a *assembly) any {
	view := kitchenView{}
	for _, h := range a.kit.Household {
		view.UsedUp = append(view.UsedUp, packedItem{
			Name: escape(h.String()), Note: a.note(h.Name, h.Note.Value), Amount: escape(a.householdAmount(h)),
		})
	}
	for _, tool := range a.kit.Tools {
		if tool.From.Value != kit.FromCustomer || a.standsIn(tool) {
			continue
		}
		need := a.say("helpful")
		if tool.Essential.Value {
			need = a.say("essential")
		}
		view.Tools = append(view.Tools, kitchenTool{
			Name: a.toolWords(tool, tool.String()), Note: a.note(tool.Name, tool.Note.Value), Need: need, Picture: a.pictureInList(tool.Picture),
		})
	}
	if len(view.UsedUp)+len(view.Tools) == 0 {
		return nil
	}
	return view
}

// standsIn: the tool is told together with the one it may replace.
func (a *assembly) standsIn(tool *kit.Tool) bool { return len(tool.StandsInFor) > 0 }

// householdAmount is how much to have ready: what the maker says, else what the
// steps use in all, where every one of them says how much.
func (a *assembly) householdAmount(h *kit.Household) string {
	if h.Amount.Given() {
		return h.Amount.Value.Written
	}
	if balance := a.ledger.Balance(h.ID); balance != nil && balance.Used.Known() && !balance.NeverUsed() {
		return a.shown(balance.Used)
	}
	return ""
}
