package main

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"github.com/spf13/cobra"

	"tallyfold/examples"
)

type newOptions struct {
	streams
	like string
}

func newNew(io streams) *cobra.Command {
	o := &newOptions{streams: io}
	command := &cobra.Command{
		Use:   "new DIR",
		Short: "Start a kit folder that already checks clean",
		Long: `new makes a kit folder that checks clean, as a start for a kit of your own:
change the names and amounts, and check again after each change.

The examples to start from are:
` + exampleList(),
		Example: `  tallyfold new my-kit
  tallyfold new my-candles --like harbour-candles`,
		Args: func(command *cobra.Command, args []string) error {
			if len(args) != 1 {
				return errors.New("name the one folder to make, for instance: tallyfold new my-kit")
			}
			return nil
		},
		RunE: func(_ *cobra.Command, args []string) error { return o.run(args[0]) },
	}
	command.Flags().StringVar(&o.like, "like", examples.Starter, "the `example` to start from")
	_ = command.RegisterFlagCompletionFunc("like", cobra.FixedCompletions(examples.Names(), cobra.ShellCompDirectiveNoFileComp))
	command.ValidArgsFunction = completeFolders
	return command
}

func exampleList() string {
	return "  " + strings.Join(examples.Names(), "\n  ")
}

func (o *newOptions) run(folder string) error {
	kit, err := examples.Folder(o.like)
	if err != nil {
		return fmt.Errorf("there is no example %q; the examples are: %s", o.like, strings.Join(examples.Names(), ", "))
	}
	if err := free(folder); err != nil {
		return err
	}
	if err := copyWhole(kit, folder); err != nil {
		return err
	}
	fmt.Fprintf(o.out, "%s is ready. Next: tallyfold check %s\n", folder, folder)
	return nil
}

// free says whether a folder may be made: nothing there, or an empty folder.
func free(folder string) error {
	entries, err := os.ReadDir(folder)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return nil
	case err != nil:
		return fmt.Errorf("%q is no folder that could be filled; choose another name", folder)
	case len(entries) > 0:
		return fmt.Errorf("%q already holds files, and none of them is touched; choose another name", folder)
	}
	return nil
}

// copyWhole copies an example.
func copyWhole(kit fs.FS, folder string) error {
	return placeWhole(folder, func(temporary string) error {
		if err := os.CopyFS(temporary, kit); err != nil {
			return err
		}
		if err := leaveTranslationsOut(temporary); err != nil {
			return err
		}
		return makeWritable(temporary)
	})
}

// placeWhole has the files laid down in a folder beside the one that is meant, which
// fill makes, and renames that at the end, so that a folder either is there whole or
// not at all.
func placeWhole(folder string, fill func(temporary string) error) error {
	parent := filepath.Dir(filepath.Clean(folder))
	if err := os.MkdirAll(parent, 0o755); err != nil {
		return fmt.Errorf("cannot make %s: %w", parent, err)
	}
	temporary, err := os.MkdirTemp(parent, ".tallyfold-*")
	if err != nil {
		return fmt.Errorf("cannot write into %s: %w", parent, err)
	}
	defer os.RemoveAll(temporary)
	if err := fill(filepath.Join(temporary, "kit")); err != nil {
		return fmt.Errorf("cannot write the files of %s: %w", folder, err)
	}
	// An empty folder in the place gives way.
	_ = os.Remove(folder)
	if err := os.Rename(filepath.Join(temporary, "kit"), folder); err != nil {
		return fmt.Errorf("cannot put %s in place: %w", folder, err)
	}
	return nil
}

// leaveTranslationsOut takes the texts in other languages away: a new kit changes
// every day, and whoever makes it translates it when it is done.
func leaveTranslationsOut(folder string) error {
	for _, pattern := range []string{"method.*.md", "trouble.*.md", "words.*.md", "kit.*.txt"} {
		translations, err := filepath.Glob(filepath.Join(folder, pattern))
		if err != nil {
			return err
		}
		for _, name := range translations {
			if err := os.Remove(name); err != nil {
				return err
			}
		}
	}
	return nil
}

// makeWritable gives the files the rights of files a person made: those copied out
// of the program come read-only.
func makeWritable(folder string) error {
	return filepath.WalkDir(folder, func(path string, entry fs.DirEntry, err error) error {
		if err != nil || entry.IsDir() {
			return err
		}
		return os.Chmod(path, 0o644)
	})
}
