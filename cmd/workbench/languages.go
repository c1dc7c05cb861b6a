package workbench

import (
	"golang.org/x/text/language"
	"golang.org/x/text/language/display"
)

// languageName tells a language by its tag in English and in itself (Unicode CLDR): "fr:
// French, français".
func languageName(tag string) string {
	read, err := language.Parse(tag)
	if err != nil {
		return tag
	}
	english, own := display.English.Tags().Name(read), display.Self.Name(read)
	switch {
	case english == "":
		return tag
	case own == "" || own == english:
		return tag + ": " + english
	}
	return tag + ": " + english + ", " + own
}
