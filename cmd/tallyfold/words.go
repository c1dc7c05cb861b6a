package main

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"time"

	"github.com/spf13/cobra"

	"tallyfold/instructions/xliff"
)

type wordsOptions struct {
	streams
	to, out, from string
	all, replace  bool
}

func newWords(io streams) *cobra.Command {
	o := &wordsOptions{streams: io}
	command := &cobra.Command{
		Use:   "words KIT",
		Short: "Hand the texts of a kit to a translator, and take them back",
		Long: `words writes the texts of a kit that are untranslated, or changed since, as XLIFF 2.0,
which translators' programs read. What links do and how much they say is locked in it.

--from takes a translated file back and writes method.fr.md, trouble.fr.md, words.fr.md
and kit.fr.txt. A file that is there already is only replaced with --replace.`,
		Example: `  tallyfold words my-kit --to fr --out my-kit.fr.xlf
  tallyfold words my-kit --from my-kit.fr.xlf`,
		Args: func(command *cobra.Command, args []string) error {
			if len(args) != 1 || (o.to == "") == (o.from == "") {
				return errors.New("name the one kit folder, and --to with a language or --from with a translated file, for instance: tallyfold words my-kit --to fr")
			}
			return nil
		},
		RunE: func(command *cobra.Command, args []string) error { return o.run(args[0]) },
	}
	flags := command.Flags()
	flags.StringVar(&o.to, "to", "", "the `language` to translate into, such as fr")
	flags.StringVar(&o.out, "out", "", "the `file` to write; the name of the kit and the language unless said")
	flags.BoolVar(&o.all, "all", false, "hand out what is translated already, too")
	flags.StringVar(&o.from, "from", "", "the translated `file` to take back")
	flags.BoolVar(&o.replace, "replace", false, "write over files of the translation that are there")
	command.ValidArgsFunction = completeFolders
	return command
}

func (o *wordsOptions) run(folder string) error {
	p, err := prove(folder, time.Now())
	if err != nil {
		return err
	}
	if p.Kit == nil {
		return fmt.Errorf("%s could not be read; see: tallyfold check %s", p.folder, p.folder)
	}
	if o.from != "" {
		return o.takeBack(p)
	}
	return o.handOut(p)
}

func (o *wordsOptions) files(p *proved, tag string) ([]*xliff.File, error) {
	words, err := templatesOf(p).Words(tag)
	if err != nil {
		return nil, err
	}
	return xliff.Files(p.Kit, words), nil
}

func (o *wordsOptions) handOut(p *proved) error {
	files, err := o.files(p, o.to)
	if err != nil {
		return err
	}
	if !o.all {
		files = xliff.Pending(files, p.Kit, p.Kit.Translation(o.to), o.to)
	}
	units := 0
	for _, file := range files {
		for _, section := range file.Sections {
			units += len(section.Units)
		}
	}
	if units == 0 {
		_, err := fmt.Fprintf(o.streams.out, "%s: nothing is untranslated in %s; --all hands out everything\n", p.folder, o.to)
		return err
	}
	path := o.out
	if path == "" {
		path = p.Kit.Folder + "." + o.to + ".xlf"
	}
	if err := writeWhole(path, xliff.Write(files, p.Kit.Language.Value, o.to)); err != nil {
		return err
	}
	_, err = fmt.Fprintf(o.streams.out, "%s: %s to translate\n", path, count(units, "text"))
	return err
}

// takeBack writes nothing unless everything can be taken over and no file is in the way.
func (o *wordsOptions) takeBack(p *proved) error {
	text, err := os.ReadFile(o.from)
	if err != nil {
		return fmt.Errorf("cannot read %s: %w", o.from, err)
	}
	told, err := xliff.Read(text)
	if err != nil {
		return fmt.Errorf("%s cannot be taken over: %w", o.from, err)
	}
	files, err := o.files(p, told.To)
	if err != nil {
		return err
	}
	made, err := o.made(p, told, files)
	if err != nil {
		return err
	}
	if err := o.inTheWay(p, made); err != nil {
		return err
	}
	for _, one := range made {
		path := filepath.Join(p.folder, one.Name)
		if err := writeWhole(path, []byte(one.Text)); err != nil {
			return err
		}
		fmt.Fprintln(o.streams.out, path)
	}
	return nil
}

func (o *wordsOptions) made(p *proved, told *xliff.Translated, files []*xliff.File) ([]xliff.Made, error) {
	made, troubles := told.Made(files, p.Kit.Translation(told.To), func(name string) string { return textOf(filepath.Join(p.folder, name)) })
	if len(troubles) > 0 {
		return nil, o.cannotTake(troubles)
	}
	return made, nil
}

// textOf is the text of a file, "" for none.
func textOf(path string) string {
	text, err := os.ReadFile(path)
	if err != nil {
		return ""
	}
	return string(text)
}

func (o *wordsOptions) cannotTake(troubles []xliff.Trouble) error {
	for _, trouble := range troubles {
		fmt.Fprintf(o.err, "%s, “%s”: %s\n", trouble.Unit, shortened(trouble.Text), trouble.Why)
	}
	return fmt.Errorf("%s of %s cannot be taken over; nothing was written", count(len(troubles), "text"), o.from)
}

func (o *wordsOptions) inTheWay(p *proved, made []xliff.Made) error {
	var there []string
	for _, one := range made {
		if one.Before != "" && !one.AddedTo {
			there = append(there, filepath.Join(p.folder, one.Name))
		}
	}
	if len(there) == 0 || o.replace {
		return nil
	}
	return fmt.Errorf("%s would be changed and may hold changes of your own; nothing was written. --replace changes what was translated anew and keeps the other sections", strings.Join(there, ", "))
}
