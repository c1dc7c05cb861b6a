package main

import (
	"errors"
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"tallyfold/examples"
	"tallyfold/instructions/keep"
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
	if _, err := examples.Folder(o.like); err != nil {
		return fmt.Errorf("there is no example %q; the examples are: %s", o.like, strings.Join(examples.Names(), ", "))
	}
	if err := keep.Free(folder); err != nil {
		return err
	}
	if err := keep.Begin(folder, func(temporary string) error { return examples.Write(o.like, temporary) }); err != nil {
		return err
	}
	fmt.Fprintf(o.out, "%s is ready. Next: tallyfold check %s\n", folder, folder)
	return nil
}
