package main

import (
	"fmt"
	"slices"

	"github.com/spf13/cobra"

	"tallyfold/kit/load"
)

// schemaFiles are the files of a kit folder that a schema is kept for.
var schemaFiles = []string{"kit"}

func newSchema(io streams) *cobra.Command {
	command := &cobra.Command{
		Use:   "schema [kit]",
		Short: "Print the JSON Schema of kit.yaml, for your editor",
		Long: `schema prints a JSON Schema (draft 2020-12) of kit.yaml, made from the same tables
by which it is read. An editor that knows it offers the keys and marks slips while
you type. What an editor cannot know, such as whether the sums are right, check tells.`,
		Example: `  tallyfold schema kit > kit.schema.json`,
		Args: func(command *cobra.Command, args []string) error {
			if len(args) > 1 || len(args) == 1 && !slices.Contains(schemaFiles, args[0]) {
				return fmt.Errorf("there is a schema of kit.yaml only: tallyfold schema kit")
			}
			return nil
		},
		ValidArgs: schemaFiles,
		RunE: func(*cobra.Command, []string) error {
			text, err := load.Schema()
			if err != nil {
				return err
			}
			if _, err := io.out.Write(text); err != nil {
				return fmt.Errorf("cannot write the schema: %w", err)
			}
			return nil
		},
	}
	return command
}
