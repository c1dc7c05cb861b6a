package main

import (
	"github.com/spf13/cobra"
)

// newRoot puts the commands together. A command is added here and nowhere else.
func newRoot(io streams) *cobra.Command {
	root := &cobra.Command{
		Use:   "tallyfold",
		Short: "Check craft kits and make their booklets",
		Long: `tallyfold checks that a make-at-home craft kit adds up before it is packed, and
makes the booklet that goes into the box.

A kit is a folder with kit.yaml (what is packed) and method.md (the steps).`,
		Example: `  tallyfold new my-kit
  tallyfold adopt leaflet.txt --into my-kit
  tallyfold check my-kit
  tallyfold booklet my-kit
  tallyfold labels my-kit
  tallyfold workbench`,
		Version:       version(),
		SilenceUsage:  true,
		SilenceErrors: true,
	}
	root.SetOut(io.out)
	root.SetErr(io.err)
	root.AddCommand(newNew(io), newAdopt(io), newCheck(io), newBalance(io), newBooklet(io), newLabels(io), newWords(io), newHazards(io), newMarkets(io), newAmend(io), newWorkbench(io), newTemplates(io), newSchema(io))
	return root
}
