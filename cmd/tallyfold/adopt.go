package main

import (
	"encoding/json"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"tallyfold/instructions/adopt"
	"tallyfold/instructions/keep"
	"tallyfold/kit/quantity"
	"tallyfold/kit/source"
)

type adoptOptions struct {
	streams
	parts, into, format, kitchen string
}

// mostAdopted is the largest file that is read; the package itself reads less, and says so.
const mostAdopted = 1 << 20

func newAdopt(io streams) *cobra.Command {
	o := &adoptOptions{streams: io}
	command := &cobra.Command{
		Use:   "adopt LEAFLET",
		Short: "Make a start of a kit out of a leaflet you already have",
		Long: `adopt reads a leaflet of plain text or Markdown, and perhaps a list of parts, and
writes a start of a kit: kit.yaml with what was recognised, method.md with the
leaflet word for word and its amounts, times and temperatures as links, and
adopted.md, which tells how each was recognised and what is still open.

Nothing is guessed in silence: an amount is linked only where it is known what it
is of, and what could not be settled stays as you typed it and is asked about.
English is read so far.

The list of parts is a CSV file with the columns item and amount, or lines such as
“200 g wax flakes” and “3 jars”. Without --into everything is printed.`,
		Example: `  tallyfold adopt leaflet.txt
  tallyfold adopt leaflet.md --parts parts.csv --into my-kit
  tallyfold adopt leaflet.txt --format json`,
		Args: func(command *cobra.Command, args []string) error {
			if len(args) != 1 {
				return errors.New("name the one leaflet to read, for instance: tallyfold adopt leaflet.txt")
			}
			return nil
		},
		RunE: func(_ *cobra.Command, args []string) error { return o.run(args[0]) },
	}
	flags := command.Flags()
	flags.StringVar(&o.parts, "parts", "", "a list of what is in the box: this `file`, CSV or lines")
	flags.StringVar(&o.into, "into", "", "the `folder` to make; one that holds files is never touched")
	flags.StringVar(&o.format, "format", "text", "how to print: text or json")
	flags.StringVar(&o.kitchen, "kitchen", "", "whose spoons and pints are meant: "+strings.Join(kitchens(), ", "))
	_ = command.RegisterFlagCompletionFunc("format", cobra.FixedCompletions([]string{"text", "json"}, cobra.ShellCompDirectiveNoFileComp))
	_ = command.RegisterFlagCompletionFunc("kitchen", cobra.FixedCompletions(kitchens(), cobra.ShellCompDirectiveNoFileComp))
	return command
}

// kitchens are the names of the conventions, as kit.yaml has them.
func kitchens() []string {
	var names []string
	for c := quantity.USCustomary; c <= quantity.Imperial; c++ {
		names = append(names, c.String())
	}
	return names
}

func (o *adoptOptions) run(leaflet string) error {
	options := adopt.Options{}
	if o.kitchen != "" {
		i := slices.Index(kitchens(), o.kitchen)
		if i < 0 {
			return fmt.Errorf("--kitchen %q is not known; it is one of: %s", o.kitchen, strings.Join(kitchens(), ", "))
		}
		options = adopt.Options{Kitchen: quantity.Convention(i), Told: true}
	}
	if o.format != "text" && o.format != "json" {
		return fmt.Errorf("--format %q is not known; it is text or json", o.format)
	}
	if o.into != "" {
		if err := keep.Free(o.into); err != nil {
			return err
		}
	}
	adopted, err := o.read(leaflet, options)
	if err != nil {
		return err
	}
	if o.into != "" {
		if err := keep.Begin(o.into, keep.Files(map[string][]byte{"kit.yaml": adopted.Definition(), "method.md": adopted.Method(), "adopted.md": adopted.List()})); err != nil {
			return err
		}
	}
	if err := o.write(adopted); err != nil {
		return fmt.Errorf("cannot write what was recognised: %w", err)
	}
	return nil
}

func (o *adoptOptions) read(leaflet string, options adopt.Options) (*adopt.Adoption, error) {
	text, err := readText(leaflet)
	if err != nil {
		return nil, err
	}
	var parts *source.File
	if o.parts != "" {
		if parts, err = readText(o.parts); err != nil {
			return nil, err
		}
	}
	return adopt.Read(text, parts, options)
}

// readText reads a file that a person names.
func readText(path string) (*source.File, error) {
	info, err := os.Stat(path)
	switch {
	case err != nil:
		return nil, fmt.Errorf("there is no file %s that could be read", path)
	case !info.Mode().IsRegular():
		return nil, fmt.Errorf("%s is no plain file", path)
	case info.Size() > mostAdopted:
		return nil, fmt.Errorf("%s is too large for a leaflet: at most 64 KB are read", path)
	}
	text, err := os.ReadFile(path)
	if err != nil {
		return nil, fmt.Errorf("%s cannot be read: %w", path, err)
	}
	return source.NewFile(filepath.Base(path), text), nil
}

func (o *adoptOptions) write(a *adopt.Adoption) error {
	if o.format == "json" {
		encoder := json.NewEncoder(o.out)
		encoder.SetIndent("", "  ")
		encoder.SetEscapeHTML(false)
		return encoder.Encode(a.Report())
	}
	var text string
	if o.into == "" {
		text = fmt.Sprintf("--- kit.yaml\n%s\n--- method.md\n%s\n--- adopted.md\n%s", a.Definition(), a.Method(), a.List())
	} else {
		text = o.summary(a)
	}
	_, err := fmt.Fprint(o.out, text)
	return err
}

// summary tells in short what was made, and each thing that is open.
func (o *adoptOptions) summary(a *adopt.Adoption) string {
	var b strings.Builder
	taken, typed := a.Linked()
	fmt.Fprintf(&b, "%s is ready: %s, %s left as typed, %s open.\n", o.into, count(taken, "link"), count(typed, "figure"), count(len(a.Questions), "question"))
	for _, q := range a.Questions {
		b.WriteString("  " + a.Told(q) + "\n")
	}
	fmt.Fprintf(&b, "How each was recognised stands in %s. Next: tallyfold check %s\n", filepath.Join(o.into, "adopted.md"), o.into)
	return b.String()
}
