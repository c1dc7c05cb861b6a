package main

import (
	"errors"
	"fmt"
	"text/tabwriter"

	"tallyfold/render"
)

// writeUntranslated lists what a booklet in a language still lacks.
func (o *bookletOptions) writeUntranslated(p *proved) error {
	if p.Kit == nil {
		return fmt.Errorf("%s could not be read; see: tallyfold check %s", p.folder, p.folder)
	}
	missing, err := render.UntranslatedIn(p.Kit, templatesOf(p), o.words)
	if err != nil {
		return err
	}
	if len(missing) == 0 {
		_, err = fmt.Fprintf(o.out, "%s: nothing is untranslated in %s\n", p.folder, o.words)
		return err
	}
	table := tabwriter.NewWriter(o.out, 0, 0, 2, ' ', 0)
	for _, one := range missing {
		fmt.Fprintf(table, "%s\t%s\t%s\n", one.Kind, shortened(one.Text), one.Advice)
	}
	if err := table.Flush(); err != nil {
		return err
	}
	_, err = fmt.Fprintf(o.out, "%s: %s untranslated in %s\n", p.folder, count(len(missing), "text"), o.words)
	return err
}

// shortened keeps a text to what finds it again in a list.
func shortened(text string) string {
	const most = 40
	if runes := []rune(text); len(runes) > most {
		return string(runes[:most-1]) + "…"
	}
	return text
}

// allTranslated warns of what will be printed in the kit's own language. A caution that
// its reader cannot read is no caution: then only a draft is made.
func (o *bookletOptions) allTranslated(p *proved) error {
	for _, tag := range o.tags(p) {
		if p.Kit.Translation(tag) == nil {
			continue // the kit's own language, or one that no booklet can be made in
		}
		missing, err := render.UntranslatedIn(p.Kit, templatesOf(p), tag)
		if err != nil {
			return err
		}
		cautions := 0
		for _, one := range missing {
			if one.Caution {
				cautions++
			}
		}
		see := fmt.Sprintf("see: tallyfold booklet %s --words %s", p.folder, tag)
		switch {
		case cautions > 0 && !o.draft:
			fmt.Fprintf(o.err, "%s of kit.yaml must be translated before a booklet in %s is made; %s\n", count(cautions, "caution"), tag, see)
			return errMustFix
		case len(missing) > 0:
			o.warn(fmt.Sprintf("%s untranslated in %s; %s", count(len(missing), "text"), tag, see))
		}
	}
	return nil
}

// checkWords refuses --words together with a booklet to make.
func (o *bookletOptions) checkWords() error {
	if o.words != "" && len(o.languages) > 0 {
		return errors.New("--words lists what is untranslated, --language makes a booklet: give one of the two")
	}
	return nil
}
