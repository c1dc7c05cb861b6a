package render

import "strings"

// colophonView says what was checked of the kit and what was not.
type colophonView struct {
	Name, Maker, About string
	Unchecked          []string
}

func colophonValues(a *assembly) any {
	view := colophonView{
		Name:  strings.Join(a.nameAndEdition(escape), ", "),
		Maker: escape(a.kit.Maker.Value), About: a.wordsOf("about-the-maker"),
	}
	for _, unchecked := range a.options.Unchecked {
		view.Unchecked = append(view.Unchecked, escape(unchecked))
	}
	return view
}
