package main

import (
	"cmp"
	"context"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"time"

	"github.com/spf13/cobra"

	"tallyfold/kit/colour"
	"tallyfold/kit/diag"
	"tallyfold/kit/picture"
	"tallyfold/render"
	"tallyfold/templates"
)

type bookletOptions struct {
	streams
	folder string // where the files go
	papers []string
	// languages are BCP 47 tags, or "all".
	languages []string
	words     string // list what is untranslated in this language
	draft     bool
	noPDF     bool
	black     bool
	fit       bool
	browser   string
	pictures  picture.Kept
	folding   foldingOptions
}

func newBooklet(io streams) *cobra.Command {
	o := &bookletOptions{streams: io}
	command := &cobra.Command{
		Use:   "booklet KIT…",
		Short: "Make the booklet: Markdown, one HTML file, and PDF in many sizes",
		Long: `booklet makes the booklet that goes into the box: Markdown, one HTML file with
everything inside, and a PDF for each size asked for.

While something must be fixed no booklet is made; --draft makes one all the same,
marked on every page. --language makes it in a language that the method is translated
into (method.fr.md for fr), several languages one behind the other. The PDF needs
Chromium; without it the rest is still made.

The sizes for --paper, all from the same text:
` + formList() + `
Short sizes leave out the contents, the overview and the page for notes, never a
caution or an amount. Their type is as large as fits; what has no room is told, and
that PDF is not made. --fold lays bound pages on sheets to fold and staple.`,
		Example: `  tallyfold booklet harbour-candles --out print
  tallyfold booklet harbour-candles --paper half-letter
  tallyfold booklet harbour-candles --paper all --fit
  tallyfold booklet harbour-candles --paper a5 --fold home
  tallyfold booklet kits/* --out print
  tallyfold booklet drawer-sachets --language fr
  tallyfold booklet drawer-sachets --language en,fr,de
  tallyfold booklet drawer-sachets --words es
  tallyfold booklet unfinished-kit --draft`,
		Args: func(command *cobra.Command, args []string) error {
			if len(args) == 0 {
				return errors.New("name the kit folder to make a booklet of, for instance: tallyfold booklet my-kit")
			}
			return nil
		},
		RunE: func(command *cobra.Command, args []string) error { return o.run(command.Context(), args) },
	}
	flags := command.Flags()
	flags.StringVar(&o.folder, "out", ".", "the `folder` to write into; made if it is not there")
	flags.StringSliceVar(&o.papers, "paper", usualForms, "the `sizes` to make a PDF in, or all")
	flags.StringSliceVar(&o.languages, "language", nil, "the `languages` of the booklet, such as fr or en,fr, or all; the kit's own unless said")
	flags.StringVar(&o.words, "words", "", "list what is untranslated in this `language`, and make nothing")
	flags.BoolVar(&o.black, "black", false, "print in black alone")
	flags.BoolVar(&o.fit, "fit", false, "tell of each PDF how its pages are filled")
	flags.BoolVar(&o.draft, "draft", false, "make it though something must be fixed; every page is marked")
	flags.BoolVar(&o.noPDF, "no-pdf", false, "make only Markdown and HTML")
	flags.StringVar(&o.browser, "browser", "", "the Chromium `program` that makes the PDF; looked for unless said")
	o.folding.flags(flags)
	_ = command.RegisterFlagCompletionFunc("paper", cobra.FixedCompletions(append(formNames(), "all"), cobra.ShellCompDirectiveNoFileComp))
	_ = command.RegisterFlagCompletionFunc("fold", cobra.FixedCompletions([]string{foldAtHome, foldAtShop}, cobra.ShellCompDirectiveNoFileComp))
	command.ValidArgsFunction = completeFolders
	return command
}

// usualForms are made when none is asked for.
var usualForms = []string{render.A5.Name, render.HalfLetter.Name}

func formNames() []string {
	var names []string
	for _, form := range render.Forms() {
		names = append(names, form.Name)
	}
	return names
}

// formList tells the sizes, a line each.
func formList() string {
	var list strings.Builder
	for _, form := range render.Forms() {
		fmt.Fprintf(&list, "  %-17s %s\n", form.Name, form.Tells())
	}
	return list.String()
}

func (o *bookletOptions) run(ctx context.Context, folders []string) error {
	forms, err := o.chosenForms()
	if err == nil {
		err = errors.Join(o.checkWords(), o.folding.check())
	}
	if err != nil {
		return err
	}
	var jobs []job
	for _, folder := range o.withoutFiles(folders) {
		more, err := o.runOne(folder, forms)
		if err != nil {
			return err
		}
		jobs = append(jobs, more...)
	}
	if o.noPDF || o.words != "" {
		return nil
	}
	return o.writePDFs(ctx, jobs)
}

// runOne makes the texts of one kit and gives the PDFs that are still to be made.
func (o *bookletOptions) runOne(folder string, forms []render.Form) ([]job, error) {
	p, err := prove(folder, time.Now())
	if err != nil {
		return nil, err
	}
	if o.words != "" {
		return nil, o.writeUntranslated(p)
	}
	if err := o.mayBeMade(p); err != nil {
		return nil, err
	}
	// The texts have everything, whatever a short form leaves out.
	booklets, err := o.assembleAll(p, append([]render.Form{render.A5}, forms...))
	if err := o.ownTemplatesFit(p, err); err != nil {
		return nil, err
	}
	if err := o.allTranslated(p); err != nil {
		return nil, err
	}
	o.tellAccent(booklets[0])
	if err := os.MkdirAll(o.folder, 0o755); err != nil {
		return nil, fmt.Errorf("cannot make the folder %s: %w", o.folder, err)
	}
	base := filepath.Join(o.folder, strings.Join(append([]string{p.Kit.Folder}, o.languages...), "-"))
	if err := o.writeTexts(booklets[0], base); err != nil || o.noPDF {
		return nil, err
	}
	var jobs []job
	for i, form := range forms {
		jobs = append(jobs, job{booklet: booklets[i+1], base: base + "-" + form.Name})
	}
	return jobs, nil
}

// chosenForms are those asked for by name, or all.
func (o *bookletOptions) chosenForms() ([]render.Form, error) {
	if slices.Contains(o.papers, "all") {
		return render.Forms(), nil
	}
	var chosen []render.Form
	for _, name := range o.papers {
		form, known := render.FormNamed(name)
		if !known {
			hint := ""
			if near := diag.Nearest(name, formNames()); near != "" {
				hint = "; did you mean " + near + "?"
			}
			return nil, fmt.Errorf("--paper %q is not known%s There are: %s", name, cmp.Or(hint, "."), strings.Join(formNames(), ", "))
		}
		chosen = append(chosen, form)
	}
	if len(chosen) == 0 {
		return nil, fmt.Errorf("--paper names nothing; there are: %s", strings.Join(formNames(), ", "))
	}
	return chosen, nil
}

// mayBeMade refuses a booklet while something must be fixed, unless it is a draft.
func (o *bookletOptions) mayBeMade(p *proved) error {
	if p.Kit == nil {
		return fmt.Errorf("%s could not be read; see: tallyfold check %s", p.folder, p.folder)
	}
	if !p.Findings.MustFix() || o.draft {
		return nil
	}
	fmt.Fprintf(o.err, "%s must be fixed before a booklet of %s is made; see: tallyfold check %s\n"+
		"To see one all the same, marked as a draft on every page: tallyfold booklet %s --draft\n",
		count(p.Findings.Count(diag.MustFix), "thing"), p.folder, p.folder, p.folder)
	return errMustFix
}

// assembleAll makes a booklet in each form; the error tells all that does not fit of the
// maker's own templates in any of them.
func (o *bookletOptions) assembleAll(p *proved, forms []render.Form) ([]*render.Booklet, error) {
	var booklets []*render.Booklet
	var failed []error
	for _, form := range forms {
		booklet, err := o.assemble(p, form)
		booklets, failed = append(booklets, booklet), append(failed, err)
	}
	return booklets, templates.Join(failed...)
}

func (o *bookletOptions) assemble(p *proved, form render.Form) (*render.Booklet, error) {
	options := render.Options{Form: form, Black: o.black, Draft: p.Findings.MustFix(), Pictures: &o.pictures}
	booklet, err := render.InLanguages(p.Kit, p.Ledger, templatesOf(p), options, o.tags(p))
	if err != nil {
		return nil, fmt.Errorf("the booklet of %s cannot be put together: %w", p.folder, err)
	}
	return booklet, nil
}

// tags are the languages asked for.
func (o *bookletOptions) tags(p *proved) []string {
	if slices.Contains(o.languages, "all") {
		return render.Languages(p.Kit)
	}
	return o.languages
}

// tellAccent says what became of an accent that could not be read on paper.
func (o *bookletOptions) tellAccent(booklet *render.Booklet) {
	if booklet.Accent == nil {
		return
	}
	if printed := booklet.Accent.Readable(colour.White, colour.ForText); printed != *booklet.Accent {
		o.warn(fmt.Sprintf("the accent %s has a contrast of only %.2f : 1 on white; it is printed as %s, %.2f : 1",
			booklet.Accent, colour.Contrast(*booklet.Accent, colour.White), printed, colour.Contrast(printed, colour.White)))
	}
}

func (o *bookletOptions) writeTexts(booklet *render.Booklet, base string) error {
	html, err := booklet.HTML()
	if err != nil {
		return fmt.Errorf("the HTML cannot be made: %w", err)
	}
	if err := o.write(base+".md", booklet.Text()); err != nil {
		return err
	}
	return o.write(base+".html", html)
}

// write puts a file down whole and names it on the output.
func (o *bookletOptions) write(path string, data []byte) error {
	if err := writeWhole(path, data); err != nil {
		return err
	}
	_, err := fmt.Fprintln(o.out, path)
	return err
}

func (o *bookletOptions) warn(message string) { fmt.Fprintln(o.err, "tallyfold: "+message) }
