package main

import (
	"context"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"time"

	"github.com/spf13/cobra"

	"tallyfold/kit/diag"
	"tallyfold/render"
	"tallyfold/render/print"
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
	browser   string
}

func newBooklet(io streams) *cobra.Command {
	o := &bookletOptions{streams: io}
	command := &cobra.Command{
		Use:   "booklet KIT",
		Short: "Make the booklet: Markdown, one HTML file, and PDF",
		Long: `booklet makes the booklet that goes into the box: Markdown, one HTML file with
everything inside, and a PDF for each paper.

While something must be fixed no booklet is made; --draft makes one all the same,
marked on every page. --language makes it in a language that the method is translated
into (method.fr.md for fr), several languages one behind the other. The PDF needs Chromium; without it the rest is still made.`,
		Example: `  tallyfold booklet harbour-candles --out print
  tallyfold booklet harbour-candles --paper half-letter
  tallyfold booklet drawer-sachets --language fr
  tallyfold booklet drawer-sachets --language en,fr,de
  tallyfold booklet drawer-sachets --words es
  tallyfold booklet unfinished-kit --draft`,
		Args: func(command *cobra.Command, args []string) error {
			if len(args) != 1 {
				return errors.New("name the one kit folder to make a booklet of, for instance: tallyfold booklet my-kit")
			}
			return nil
		},
		RunE: func(command *cobra.Command, args []string) error { return o.run(command.Context(), args[0]) },
	}
	flags := command.Flags()
	flags.StringVar(&o.folder, "out", ".", "the `folder` to write into; made if it is not there")
	flags.StringSliceVar(&o.papers, "paper", paperNames(), "the `papers` to make a PDF for")
	flags.StringSliceVar(&o.languages, "language", nil, "the `languages` of the booklet, such as fr or en,fr, or all; the kit's own unless said")
	flags.StringVar(&o.words, "words", "", "list what is untranslated in this `language`, and make nothing")
	flags.BoolVar(&o.draft, "draft", false, "make it though something must be fixed; every page is marked")
	flags.BoolVar(&o.noPDF, "no-pdf", false, "make only Markdown and HTML")
	flags.StringVar(&o.browser, "browser", "", "the Chromium `program` that makes the PDF; looked for unless said")
	_ = command.RegisterFlagCompletionFunc("paper", cobra.FixedCompletions(paperNames(), cobra.ShellCompDirectiveNoFileComp))
	command.ValidArgsFunction = completeFolders
	return command
}

// bookletPapers are the papers a booklet is laid out for.
var bookletPapers = []render.Paper{render.A5, render.HalfLetter}

func paperNames() []string {
	var names []string
	for _, paper := range bookletPapers {
		names = append(names, paper.Name)
	}
	return names
}

func (o *bookletOptions) run(ctx context.Context, folder string) error {
	papers, err := o.chosenPapers()
	if err == nil {
		err = o.checkWords()
	}
	if err != nil {
		return err
	}
	p, err := prove(folder, time.Now())
	if err != nil {
		return err
	}
	if o.words != "" {
		return o.writeUntranslated(p)
	}
	if err := o.mayBeMade(p); err != nil {
		return err
	}
	booklets, err := o.assemble(p, papers)
	if err := o.ownTemplatesFit(p, err); err != nil {
		return err
	}
	if err := o.allTranslated(p); err != nil {
		return err
	}
	if err := os.MkdirAll(o.folder, 0o755); err != nil {
		return fmt.Errorf("cannot make the folder %s: %w", o.folder, err)
	}
	base := filepath.Join(o.folder, strings.Join(append([]string{p.Kit.Folder}, o.languages...), "-"))
	if err := o.writeTexts(booklets[0], base); err != nil {
		return err
	}
	if o.noPDF {
		return nil
	}
	return o.writePDFs(ctx, booklets, base)
}

func (o *bookletOptions) chosenPapers() ([]render.Paper, error) {
	var chosen []render.Paper
	for _, name := range o.papers {
		found := false
		for _, paper := range bookletPapers {
			if paper.Name == name {
				chosen, found = append(chosen, paper), true
			}
		}
		if !found {
			return nil, fmt.Errorf("--paper %q is not known; the papers are: %s", name, strings.Join(paperNames(), ", "))
		}
	}
	if len(chosen) == 0 {
		return nil, fmt.Errorf("--paper names no paper; the papers are: %s", strings.Join(paperNames(), ", "))
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

func (o *bookletOptions) assemble(p *proved, papers []render.Paper) ([]*render.Booklet, error) {
	set := templatesOf(p)
	var booklets []*render.Booklet
	for _, paper := range papers {
		booklet, err := render.InLanguages(p.Kit, p.Ledger, set, render.Options{Paper: paper, Draft: p.Findings.MustFix()}, o.tags(p))
		if err != nil {
			return nil, fmt.Errorf("the booklet of %s cannot be put together: %w", p.folder, err)
		}
		booklets = append(booklets, booklet)
	}
	return booklets, nil
}

// tags are the languages asked for.
func (o *bookletOptions) tags(p *proved) []string {
	if slices.Contains(o.languages, "all") {
		return render.Languages(p.Kit)
	}
	return o.languages
}

func (o *bookletOptions) writeTexts(booklet *render.Booklet, base string) error {
	html, err := booklet.HTML(nil)
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

// writePDFs prints one PDF a paper, all in one browser.
func (o *bookletOptions) writePDFs(ctx context.Context, booklets []*render.Booklet, base string) error {
	browser, err := print.Open(ctx, print.Settings{Program: o.browser, Warn: o.warn})
	if err != nil {
		return fmt.Errorf("Markdown and HTML are made, the PDF is not: %w", err)
	}
	defer browser.Close()
	for _, booklet := range booklets {
		pdf, err := printed(ctx, browser, booklet)
		if err != nil {
			return fmt.Errorf("the PDF for %s is not made: %w", booklet.Paper.Name, err)
		}
		if err := o.write(base+"-"+booklet.Paper.Name+".pdf", pdf); err != nil {
			return err
		}
	}
	return nil
}

func (o *bookletOptions) warn(message string) { fmt.Fprintln(o.err, "tallyfold: "+message) }

// printed makes the PDF of one booklet, with page numbers in its contents.
func printed(ctx context.Context, browser *print.Browser, booklet *render.Booklet) ([]byte, error) {
	var failed error
	pdf, _, err := browser.PDFWithContents(ctx, func(pages map[string]int) []byte {
		html, err := booklet.HTML(pages)
		if err != nil {
			failed = err
		}
		return html
	}, print.Options{
		Paper: print.Paper(booklet.Paper), Title: booklet.Title, Language: booklet.Language, Outline: true,
	})
	if failed != nil {
		return nil, failed
	}
	return pdf, err
}
