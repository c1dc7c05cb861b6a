package main

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"text/tabwriter"
	"time"

	"github.com/spf13/cobra"

	"tallyfold/kit/diag"
	"tallyfold/render"
	"tallyfold/templates"
)

type templatesOptions struct {
	streams
	copy bool
}

func newTemplates(io streams) *cobra.Command {
	o := &templatesOptions{streams: io}
	command := &cobra.Command{
		Use:   "templates KIT [NAME]",
		Short: "Show what a booklet is made from, and have your own of it",
		Long: `templates lists the templates, styles and words that a booklet is made from, marks
those that the kit has its own of in its folder templates, and tells what in them does
not fit. With a name it prints that one; --copy puts it into the kit as a start.

A file of the kit's stands in the place of the one with its name. Of words only those
that differ need to be there; own.css stands behind the other styles.`,
		Example: `  tallyfold templates my-kit
  tallyfold templates my-kit booklet/colophon.md
  tallyfold templates my-kit words/en.txt --copy`,
		Args: func(command *cobra.Command, args []string) error {
			if len(args) < 1 || len(args) > 2 {
				return errors.New("name the one kit folder, and a template if you want to see it, for instance: tallyfold templates my-kit booklet/cover.md")
			}
			if o.copy && len(args) != 2 {
				return errors.New("--copy wants the name of a template: tallyfold templates my-kit booklet/cover.md --copy")
			}
			return nil
		},
		RunE: func(_ *cobra.Command, args []string) error {
			if len(args) == 1 {
				return o.list(args[0])
			}
			return o.one(args[0], args[1])
		},
	}
	command.Flags().BoolVar(&o.copy, "copy", false, "put a copy into the kit's folder templates")
	command.ValidArgsFunction = completeFolders
	return command
}

// list tells what there is, what of it is the kit's own, and what of that doesn't fit.
func (o *templatesOptions) list(folder string) error {
	p, err := prove(folder, time.Now())
	if err != nil {
		return err
	}
	set := templatesOf(p)
	table := tabwriter.NewWriter(o.out, 0, 0, 2, ' ', 0)
	for _, name := range append(templates.Replaceable(), templates.OwnStyle) {
		if strings.HasPrefix(name, "fonts/") {
			continue
		}
		about := templates.About(name)
		if set.Own(name) != nil {
			about = "your own"
		}
		if name != templates.OwnStyle || set.Own(name) != nil {
			fmt.Fprintf(table, "%s\t%s\n", name, about)
		}
	}
	if err := table.Flush(); err != nil {
		return err
	}
	return o.tellMisfits(p)
}

func (o *templatesOptions) tellMisfits(p *proved) error {
	var failed error
	if p.Kit != nil {
		_, failed = render.InLanguages(p.Kit, p.Ledger, templatesOf(p), render.Options{}, render.Languages(p.Kit))
	}
	found, failed := ownMisfits(p, failed)
	if len(found) > 0 {
		fmt.Fprintln(o.out)
	}
	if err := diag.WriteText(o.out, found, diag.Style{Colour: o.colour, Folder: p.folder}); err != nil {
		return err
	}
	if found.MustFix() {
		return errMustFix
	}
	return failed
}

// one prints a template as a start for one's own, or puts it into the kit.
func (o *templatesOptions) one(folder, name string) error {
	text, err := templates.Copy(name)
	if err != nil {
		if near := diag.Nearest(name, templates.Replaceable()); near != "" {
			return fmt.Errorf("%w; is it %s?", err, near)
		}
		return fmt.Errorf("%w; tallyfold templates %s lists them", err, folder)
	}
	if !o.copy {
		_, err := o.out.Write(text)
		return err
	}
	if !isFolder(folder) {
		return fmt.Errorf("there is no kit folder %q; make one with: tallyfold new %s", folder, folder)
	}
	path := filepath.Join(folder, templates.OwnFolder, filepath.FromSlash(name))
	if _, err := os.Lstat(path); err == nil {
		return fmt.Errorf("%s is there already and may hold changes of your own; nothing was written", filepath.ToSlash(path))
	}
	if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
		return fmt.Errorf("cannot make the folder %s: %w", filepath.Dir(path), err)
	}
	if err := writeWhole(path, text); err != nil {
		return err
	}
	_, err = fmt.Fprintln(o.out, filepath.ToSlash(path))
	return err
}
