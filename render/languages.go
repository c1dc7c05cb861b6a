package render

import (
	"fmt"
	"strings"

	bcp47 "golang.org/x/text/language"

	"tallyfold/kit"
	"tallyfold/kit/hazard"
	"tallyfold/kit/ledger"
	"tallyfold/templates"
)

// InLanguages puts together a booklet in one or several languages, by their BCP 47 tags,
// in their order. Each is the kit's own, with a region of it or not ("en-US"), or one
// that its method is translated into. The error says which is neither, or what Assemble
// says.
func InLanguages(k *kit.Kit, l *ledger.Ledger, set templates.Set, options Options, tags []string) (*Booklet, error) {
	var all []*Booklet
	var failed []error
	for _, tag := range tags {
		booklet, err := inLanguage(k, l, set, options, tag)
		all, failed = append(all, booklet), append(failed, err)
	}
	if err := templates.Join(failed...); err != nil {
		return nil, err
	}
	if len(all) == 0 {
		return Assemble(k, l, set, options)
	}
	all[0].Further = all[1:]
	return all[0], nil
}

func inLanguage(k *kit.Kit, l *ledger.Ledger, set templates.Set, options Options, tag string) (*Booklet, error) {
	options.Language, options.written = tag, k.Language.Value
	if t := k.Translation(tag); t != nil {
		options.hazards = hazard.In(k, l)
		told := k.In(t)
		return Assemble(told, ledger.Follow(told), set, options)
	}
	if base(tag) != base(k.Language.Value) {
		return nil, fmt.Errorf("there is no method.%s.md; the languages of this kit are: %s", tag, strings.Join(Languages(k), ", "))
	}
	return Assemble(k, l, set, options)
}

// Languages are those that a booklet of the kit can be made in: its own first.
func Languages(k *kit.Kit) []string {
	tags := []string{k.Language.Value}
	for _, t := range k.Translations {
		tags = append(tags, t.Language)
	}
	return tags
}

func base(tag string) string {
	base, _ := bcp47.Make(tag).Base()
	return base.String()
}
