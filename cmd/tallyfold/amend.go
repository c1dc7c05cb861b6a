package main

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"time"

	"github.com/spf13/cobra"

	"tallyfold/kit/amend"
	"tallyfold/kit/proof"
)

type amendOptions struct {
	streams
	set, remove, rename, double, place string
	write                              bool
}

func newAmend(io streams) *cobra.Command {
	o := &amendOptions{streams: io}
	command := &cobra.Command{
		Use:   "amend KIT",
		Short: "Change one thing of a kit, and see first what follows from it",
		Long: `amend changes one field or one thing of kit.yaml and leaves every other byte of the file
as it was: notes, order, blank lines, quotation marks. It shows the lines that change and
what the whole kit has to say to it, and writes nothing unless you say --write.

A field is told by its keys with points between them, as components.wax.packed. In a list
the number of the entry stands for its key, from 1: runs.1.name. A thing that is renamed
gets its new key everywhere it is named: in kit.yaml, and in every link of the method, its
translations and the help.`,
		Example: `  tallyfold amend my-kit --set "components.wax.packed=1.2 kg ± 10 g"
  tallyfold amend my-kit --remove tools.mat --write
  tallyfold amend my-kit --rename wax=soy-wax
  tallyfold amend my-kit --double components.pine=spruce
  tallyfold amend my-kit --place components.pine=1`,
		Args: oneKit("amend"),
		RunE: func(_ *cobra.Command, args []string) error { return o.run(args[0]) },
	}
	flags := command.Flags()
	flags.StringVar(&o.set, "set", "", "give a field a value: FIELD=VALUE; one that is not there is put in its place")
	flags.StringVar(&o.remove, "remove", "", "take a field, or a thing with all its fields, out: FIELD")
	flags.StringVar(&o.rename, "rename", "", "give a thing another key, everywhere it is named: KEY=NEW")
	flags.StringVar(&o.double, "double", "", "put a copy of a thing behind it, under a key of its own: THING=NEW")
	flags.StringVar(&o.place, "place", "", "put a thing at another place of its section, from 1: THING=PLACE")
	flags.BoolVar(&o.write, "write", false, "write the change; without it nothing is written")
	command.ValidArgsFunction = completeFolders
	return command
}

// oneKit demands the name of one folder.
func oneKit(name string) cobra.PositionalArgs {
	return func(_ *cobra.Command, args []string) error {
		if len(args) != 1 {
			return errors.New("name the one kit folder, for instance: tallyfold " + name + " my-kit")
		}
		return nil
	}
}

func (o *amendOptions) run(folder string) error {
	p, err := prove(folder, time.Now())
	if err != nil {
		return err
	}
	texts, err := o.changed(folder)
	if err != nil {
		return err
	}
	if len(texts) == 0 {
		_, err := fmt.Fprintf(o.out, "%s: nothing changes; it is so already\n", p.folder)
		return err
	}
	after := proof.OfChanged(os.DirFS(folder), p.name, time.Now(), texts)
	var out strings.Builder
	for _, name := range sortedNames(texts) {
		old, err := os.ReadFile(filepath.Join(folder, name))
		if err != nil {
			return err
		}
		writeDifference(&out, p.folder+"/"+name, string(old), string(texts[name]))
	}
	fmt.Fprintf(&out, "\nbefore  %s\nafter   %s\n", tallied(p.Findings), tallied(after.Findings))
	for _, line := range after.New(p.Proof) {
		fmt.Fprintf(&out, "  new   %s\n", line)
	}
	if _, err := fmt.Fprint(o.out, out.String()); err != nil {
		return err
	}
	if !o.write {
		fmt.Fprintln(o.err, "Nothing was written. To write it, say --write too.")
		return nil
	}
	if err := writeAll(folder, texts); err != nil {
		return err
	}
	fmt.Fprintf(o.err, "Written: %s.\n", strings.Join(sortedNames(texts), ", "))
	return nil
}

// writeAll writes all texts, or, where one cannot be written, puts the others back as they
// were: a thing renamed in one file and not in the next is worse than one not renamed.
func writeAll(folder string, texts map[string][]byte) error {
	old := map[string][]byte{}
	for _, name := range sortedNames(texts) {
		path := filepath.Join(folder, name)
		was, err := os.ReadFile(path)
		if err == nil {
			err = writeWhole(path, texts[name])
		}
		if err != nil {
			for back, text := range old {
				err = errors.Join(err, writeWhole(filepath.Join(folder, back), text))
			}
			return err
		}
		old[name] = was
	}
	return nil
}

// changed gives the new texts of the files that change, by their names.
func (o *amendOptions) changed(folder string) (map[string][]byte, error) {
	asked := slices.DeleteFunc([]string{o.set, o.remove, o.rename, o.double, o.place}, func(flag string) bool { return flag == "" })
	if len(asked) != 1 {
		return nil, errors.New("say one change: --set, --remove, --rename, --double or --place")
	}
	if o.rename != "" {
		key, to, err := halves("--rename", o.rename)
		if err != nil {
			return nil, err
		}
		changes, err := amend.Rename(os.DirFS(folder), key, to)
		if err != nil {
			return nil, err
		}
		return amend.Renamed(os.DirFS(folder), changes)
	}
	old, err := os.ReadFile(filepath.Join(folder, "kit.yaml"))
	if err != nil {
		return nil, fmt.Errorf("kit.yaml cannot be read: %w", err)
	}
	text, err := o.kitChanged(old)
	if err != nil || string(text) == string(old) {
		return nil, err
	}
	return map[string][]byte{"kit.yaml": text}, nil
}

// kitChanged makes the change that is in kit.yaml alone.
func (o *amendOptions) kitChanged(old []byte) ([]byte, error) {
	switch {
	case o.remove != "":
		return amend.Remove(old, pathOf(o.remove))
	case o.set != "":
		field, value, err := halves("--set", o.set)
		if err != nil {
			return nil, err
		}
		return amend.Set(old, pathOf(field), value)
	case o.double != "":
		thing, key, err := halves("--double", o.double)
		if err != nil {
			return nil, err
		}
		return amend.Duplicate(old, pathOf(thing), key)
	}
	thing, place, err := halves("--place", o.place)
	if err != nil {
		return nil, err
	}
	number, err := strconv.Atoi(place)
	if err != nil || number < 1 {
		return nil, fmt.Errorf("--place %s: “%s” is no place; the first is 1", o.place, place)
	}
	return amend.Move(old, pathOf(thing), number-1)
}

// halves parts “components.wax.packed=1.2 kg” at its first “=”.
func halves(flag, text string) (before, after string, err error) {
	before, after, found := strings.Cut(text, "=")
	if !found || before == "" {
		return "", "", fmt.Errorf("%s “%s” has no “=”; write it as in: tallyfold amend --help", flag, text)
	}
	return strings.TrimSpace(before), strings.TrimSpace(after), nil
}

// pathOf is the path of a field told as people write it: entries of a list count from 1.
func pathOf(field string) amend.Path {
	path := amend.Path(strings.Split(field, "."))
	for i, word := range path {
		if n, err := strconv.Atoi(word); err == nil && i > 0 {
			path[i] = strconv.Itoa(n - 1)
		}
	}
	return path
}
