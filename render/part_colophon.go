package render

import (
	"strings"

	"tallyfold/render/figure"
)

// colophonView says what was checked of the kit and what was not.
type colophonView struct {
	Name, Maker, About string
	Unchecked          []string
	// Code shows the address of the kit's page to scan, Page tells it.
	Code, Page string
}

func colophonValues(a *assembly) any {
	view := colophonView{
		Name:  strings.Join(a.nameAndEdition(escape), ", "),
		Maker: escape(a.kit.Maker.Value), About: a.wordsOf("about-the-maker"),
	}
	for _, unchecked := range a.options.Unchecked {
		view.Unchecked = append(view.Unchecked, escape(unchecked))
	}
	if address := a.kit.Page.Value; address != "" {
		view.Page = a.say("page-text", "address", escape(address))
		if code, ok := (figure.Code{Title: a.say("page-code"), Says: address}).Draw(); ok {
			view.Code = a.draw("page", code)
		}
	}
	return view
}
