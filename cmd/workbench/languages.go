package workbench

import (
	"golang.org/x/text/language"
	"golang.org/x/text/language/display"
)

// englishName tells a language by its tag in English, the tag itself where it has no name.
func englishName(tag string) string {
	read, err := language.Parse(tag)
	if err != nil {
		return tag
	}
	if name := display.English.Tags().Name(read); name != "" {
		return name
	}
	return tag
}

// languageName tells a language by its tag in English and in itself (Unicode CLDR): "fr:
// French, français".
func languageName(tag string) string {
	english := englishName(tag)
	if english == tag {
		return tag
	}
	if own := display.Self.Name(language.Make(tag)); own != "" && own != english {
		return tag + ": " + english + ", " + own
	}
	return tag + ": " + english
}
