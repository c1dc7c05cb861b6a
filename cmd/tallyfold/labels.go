package main

import (
	"context"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"text/tabwriter"
	"time"

	"github.com/spf13/cobra"

	"tallyfold/kit"
	"tallyfold/kit/diag"
	"tallyfold/kit/label"
	"tallyfold/render"
	"tallyfold/render/labels"
	"tallyfold/render/press"
	"tallyfold/render/print"
)

type labelsOptions struct {
	streams
	folder   string // where the files go
	kinds    []string
	sheet    string // a grid by name, or own
	paper    string
	start    int
	kits     int
	language string

	calibrate, draft, noPDF, sums bool
	browser                       string
}

func newLabels(io streams) *cobra.Command {
	o := &labelsOptions{streams: io}
	command := &cobra.Command{
		Use:   "labels KIT",
		Short: "Make labels for bags, containers, lids and the end of the box, on sheets",
		Long: `labels makes the labels of a kit, on sheets of labels as they are sold: one HTML file
and one PDF for each kind. Every figure on them comes from kit.yaml and the steps; net
contents are those of the lowest likely fill, rounded down.

What has no room at the smallest size of type is told and nothing is written. While
something must be fixed no labels are made; --draft makes them all the same, marked.
--calibrate makes a sheet to print on plain paper, with which a printer is set.

The sheets for --sheet, by the size of a label, and “own” for the one in kit.yaml:
` + gridList(),
		Example: `  tallyfold labels harbour-candles --out print
  tallyfold labels harbour-candles --kind bags --start 5
  tallyfold labels harbour-candles --kind bags --kits 20 --sheet a4-63x38
  tallyfold labels harbour-candles --calibrate
  tallyfold labels drawer-sachets --language fr`,
		Args: func(command *cobra.Command, args []string) error {
			if len(args) != 1 {
				return errors.New("name the one kit folder to make labels for, for instance: tallyfold labels my-kit")
			}
			return nil
		},
		RunE: func(command *cobra.Command, args []string) error { return o.run(command.Context(), args[0]) },
	}
	flags := command.Flags()
	flags.StringVar(&o.folder, "out", ".", "the `folder` to write into; made if it is not there")
	flags.StringSliceVar(&o.kinds, "kind", nil, "the `kinds` to make: "+strings.Join(labels.Kinds(), ", ")+"; all unless said")
	flags.StringVar(&o.sheet, "sheet", "", "the `sheet` for all of them; that of kit.yaml or a usual one unless said")
	flags.StringVar(&o.paper, "paper", "", "take the usual sheets of this `paper`: a4 or letter")
	flags.IntVar(&o.start, "start", 1, "the `place` of the first label on the first sheet, for a sheet partly used")
	flags.IntVar(&o.kits, "kits", 1, "the `number` of kits to make labels for")
	flags.StringVar(&o.language, "language", "", "the `language` of the labels, such as fr; the kit's own unless said")
	flags.BoolVar(&o.calibrate, "calibrate", false, "make the sheet with which a printer is set, and no labels")
	flags.BoolVar(&o.sums, "sums", false, "tell how net contents and the size of their type are reckoned, and make nothing")
	flags.BoolVar(&o.draft, "draft", false, "make them though something must be fixed; every label is marked")
	flags.BoolVar(&o.noPDF, "no-pdf", false, "make only HTML")
	flags.StringVar(&o.browser, "browser", "", "the Chromium `program` that makes the PDF; looked for unless said")
	_ = command.RegisterFlagCompletionFunc("kind", cobra.FixedCompletions(labels.Kinds(), cobra.ShellCompDirectiveNoFileComp))
	_ = command.RegisterFlagCompletionFunc("sheet", cobra.FixedCompletions(gridNames(), cobra.ShellCompDirectiveNoFileComp))
	command.ValidArgsFunction = completeFolders
	return command
}

func gridNames() []string {
	var names []string
	for _, g := range label.Grids() {
		names = append(names, g.Name)
	}
	return append(names, kit.OwnSheet)
}

// gridList tells the sheets, a line each.
func gridList() string {
	var list strings.Builder
	table := tabwriter.NewWriter(&list, 0, 0, 2, ' ', 0)
	for _, g := range label.Grids() {
		fmt.Fprintf(table, "  %s\t%s\n", g.Name, g.Size())
	}
	table.Flush()
	return list.String()
}

func (o *labelsOptions) run(ctx context.Context, folder string) error {
	if err := o.check(); err != nil {
		return err
	}
	p, err := prove(folder, time.Now())
	if err != nil {
		return err
	}
	if err := o.mayBeMade(p); err != nil {
		return err
	}
	if o.sums {
		return o.writeSums(p)
	}
	wanted, err := o.wanted(p)
	if err == nil {
		err = o.cautionsTranslated(p)
	}
	if err != nil {
		return err
	}
	pages, err := o.pages(p, wanted)
	if err != nil || len(pages) == 0 {
		return err
	}
	if err := os.MkdirAll(o.folder, 0o755); err != nil {
		return fmt.Errorf("cannot make the folder %s: %w", o.folder, err)
	}
	for _, page := range pages {
		if err := o.write(page.base+".html", page.html); err != nil {
			return err
		}
	}
	if o.noPDF {
		return nil
	}
	return o.writePDFs(ctx, pages)
}

// check refuses what is asked for in words that are not known.
func (o *labelsOptions) check() error {
	for _, kind := range o.kinds {
		if !slices.Contains(labels.Kinds(), kind) {
			return fmt.Errorf("--kind %q is not known; there are: %s", kind, strings.Join(labels.Kinds(), ", "))
		}
	}
	switch {
	case o.start < 1:
		return fmt.Errorf("--start %d is no place on a sheet; the first is 1", o.start)
	case o.kits < 1 || o.kits > mostKits:
		return fmt.Errorf("--kits %d: write a number from 1 to %d", o.kits, mostKits)
	case o.sheet != "" && !slices.Contains(gridNames(), o.sheet):
		return fmt.Errorf("--sheet %q is not known; there are: %s", o.sheet, strings.Join(gridNames(), ", "))
	case o.paper != "" && o.paper != label.A4.Name && o.paper != label.Letter.Name:
		return fmt.Errorf("--paper %q is not known; there are: %s, %s", o.paper, label.A4.Name, label.Letter.Name)
	case o.paper != "" && o.sheet != "":
		return errors.New("--sheet says the paper already: give one of --sheet and --paper")
	}
	return nil
}

// mostKits keeps a slip from making a file that no printer takes.
const mostKits = 500

// mayBeMade refuses labels while something must be fixed, unless they are a draft.
func (o *labelsOptions) mayBeMade(p *proved) error {
	if p.Kit == nil {
		return fmt.Errorf("%s could not be read; see: tallyfold check %s", p.folder, p.folder)
	}
	if !p.Findings.MustFix() || o.draft || o.calibrate || o.sums {
		return nil
	}
	fmt.Fprintf(o.err, "%s must be fixed before labels of %s are made; see: tallyfold check %s\n"+
		"To see them all the same, each marked as a draft: tallyfold labels %s --draft\n",
		count(p.Findings.Count(diag.MustFix), "thing"), p.folder, p.folder, p.folder)
	return errMustFix
}

// cautionsTranslated refuses labels with a caution that their reader cannot read, unless
// they are a draft.
func (o *labelsOptions) cautionsTranslated(p *proved) error {
	if p.Kit.Translation(o.language) == nil || o.draft || o.calibrate {
		return nil
	}
	missing, err := render.UntranslatedIn(p.Kit, templatesOf(p), o.language)
	if err != nil {
		return err
	}
	cautions := 0
	for _, one := range missing {
		if one.Caution {
			cautions++
		}
	}
	if cautions == 0 {
		return nil
	}
	fmt.Fprintf(o.err, "%s of kit.yaml must be translated before labels in %s are made; see: tallyfold booklet %s --words %s\n",
		count(cautions, "caution"), o.language, p.folder, o.language)
	return errMustFix
}

// wanted puts the flags into what the layout understands.
func (o *labelsOptions) wanted(p *proved) (labels.Options, error) {
	wanted := labels.Options{
		Kinds: o.kinds, Start: o.start, Kits: o.kits, Draft: p.Findings.MustFix(), Language: o.language,
	}
	for _, paper := range label.Papers() {
		if paper.Name == o.paper {
			wanted.Paper = paper
		}
	}
	var err error
	switch o.sheet {
	case "":
	case kit.OwnSheet:
		wanted.Grid, err = labels.OwnGrid(p.Kit)
	default:
		wanted.Grid, _ = label.GridNamed(o.sheet)
	}
	return wanted, err
}

// A labelPage is one file of sheets, ready to be written.
type labelPage struct {
	document *labels.Document
	base     string // its path without what follows the point
	html     []byte
}

// pages lays all out before anything is written.
func (o *labelsOptions) pages(p *proved, wanted labels.Options) ([]labelPage, error) {
	set := templatesOf(p)
	if o.calibrate {
		documents, err := labels.Calibration(p.Kit, p.Ledger, set, wanted)
		return o.filled(p, documents, err, "calibrate", (*labels.Document).CalibrationHTML)
	}
	made, err := labels.Make(p.Kit, p.Ledger, set, wanted)
	if err != nil {
		return nil, fmt.Errorf("the labels of %s cannot be made: %w", p.folder, err)
	}
	for _, note := range made.Notes {
		fmt.Fprintln(o.err, "tallyfold: "+note)
	}
	for _, misfit := range made.Misfits {
		fmt.Fprintln(o.err, "no room: "+misfit.String())
	}
	if len(made.Misfits) > 0 {
		fmt.Fprintf(o.err, "%s found no room, so no labels were written\n", count(len(made.Misfits), "text"))
		return nil, errMustFix
	}
	for _, document := range made.Documents {
		if o.start > document.Grid.Each() {
			return nil, fmt.Errorf("--start %d: a sheet %s of the %s has %d labels", o.start, document.Grid.Name, document.Kind, document.Grid.Each())
		}
	}
	return o.filled(p, made.Documents, nil, "labels", (*labels.Document).HTML)
}

// filled makes the HTML of each document.
func (o *labelsOptions) filled(p *proved, documents []*labels.Document, err error, what string, fill func(*labels.Document) ([]byte, error)) ([]labelPage, error) {
	if err != nil {
		return nil, err
	}
	var pages []labelPage
	for _, document := range documents {
		html, err := fill(document)
		if err != nil {
			return nil, fmt.Errorf("the labels of %s cannot be put together: %w", p.folder, err)
		}
		parts := []string{p.Kit.Folder, what, document.Kind}
		if o.language != "" {
			parts = append(parts, o.language)
		}
		pages = append(pages, labelPage{document, filepath.Join(o.folder, strings.Join(parts, "-")), html})
	}
	return pages, nil
}

// writePDFs prints all in one browser.
func (o *labelsOptions) writePDFs(ctx context.Context, pages []labelPage) error {
	warn := func(message string) { fmt.Fprintln(o.err, "tallyfold: "+message) }
	browser, err := print.Open(ctx, print.Settings{Program: o.browser, Warn: warn})
	if err != nil {
		return fmt.Errorf("HTML is made, the PDF is not: %w", err)
	}
	defer browser.Close()
	for _, page := range pages {
		pdf, err := press.Labels(ctx, browser, page.document, page.html)
		if err != nil {
			return fmt.Errorf("%s.pdf is not made: %w", page.base, err)
		}
		if err := o.write(page.base+".pdf", pdf); err != nil {
			return err
		}
	}
	return nil
}

// write puts a file down whole and names it on the output.
func (o *labelsOptions) write(path string, data []byte) error {
	if err := writeWhole(path, data); err != nil {
		return err
	}
	_, err := fmt.Fprintln(o.out, path)
	return err
}
