package render

// troubleView is one problem with its remedy. Strings are Markdown.
type troubleView struct{ Title, Anchor, Text string }

func troubleValues(a *assembly) any {
	var all []troubleView
	for _, t := range a.kit.Troubles {
		all = append(all, troubleView{
			Title: escape(t.Title), Anchor: a.troubleAnchor(t),
			Text: a.prose(passage{body: t.Body, operations: t.Operations, cautions: t.Cautions, deeper: 2, passes: a.passes}),
		})
	}
	if len(all) == 0 {
		return nil
	}
	return all
}
