package main

import (
	"context"
	"errors"
	"fmt"
	"slices"
	"time"

	"github.com/spf13/cobra"
)

type checkOptions struct {
	streams
	format  string
	asOf    string
	explain string
	report  string
	all     bool
}

// checkFormats are the ways to print what was found.
var checkFormats = []string{"text", "json", "sarif"}

func newCheck(io streams) *cobra.Command {
	o := &checkOptions{streams: io}
	command := &cobra.Command{
		Use:   "check KIT…",
		Short: "Show what does not add up, worst first, and how to mend it",
		Long: `check follows the steps of each kit to the letter, over all its runs, and shows
every place where box, method and claims do not agree: what was found, what was
expected, the sum, and ways out. What must be fixed is told in full; where the
rest would not fit on a screen it is told in a line each, and --all tells it too.

A folder of kits stands for the kits in it. Several kits end with a table.

It ends with 0 when nothing must be fixed, 1 when something must, 2 when a kit
could not be checked.`,
		Example: `  tallyfold check harbour-candles
  tallyfold check kits
  tallyfold check harbour-candles --report harbour-candles-check.md
  tallyfold check --format sarif kits > kits.sarif
  tallyfold check --explain left-over`,
		Args: func(command *cobra.Command, args []string) error {
			if len(args) == 0 && o.explain == "" {
				return errors.New("name the kit folder to check, for instance: tallyfold check my-kit")
			}
			return nil
		},
		RunE: func(command *cobra.Command, args []string) error { return o.run(command.Context(), args) },
	}
	flags := command.Flags()
	flags.StringVar(&o.format, "format", "text", "how to print: text, json or sarif")
	flags.BoolVar(&o.all, "all", false, "print everything in full, however long it is")
	flags.StringVar(&o.report, "report", "", "write a report of the check into this Markdown `file`, for you to keep or hand on")
	flags.StringVar(&o.asOf, "as-of", "", "judge accepted findings as of this `day` (2026-11-25); today unless said")
	flags.StringVar(&o.explain, "explain", "", "tell what a `rule` is for and how to put it right")
	_ = command.RegisterFlagCompletionFunc("format", cobra.FixedCompletions(checkFormats, cobra.ShellCompDirectiveNoFileComp))
	_ = command.RegisterFlagCompletionFunc("explain", completeRules)
	command.ValidArgsFunction = completeFolders
	return command
}

func (o *checkOptions) run(ctx context.Context, names []string) error {
	if o.explain != "" {
		return o.tell(o.explain)
	}
	if !slices.Contains(checkFormats, o.format) {
		return fmt.Errorf("--format %q is not known; it is text, json or sarif", o.format)
	}
	today, err := day(o.asOf)
	if err != nil {
		return err
	}
	folders := kitFolders(o.withoutFiles(names))
	if o.report != "" {
		if err := mayHoldReport(o.report, folders); err != nil {
			return err
		}
	}
	outcomes, err := proveAll(ctx, folders, today, newProgress(o.streams, len(folders)))
	if err != nil {
		return err
	}
	if failed := failures(outcomes); len(failed) == len(outcomes) {
		return errors.Join(failed...)
	}
	if err := o.write(outcomes, today); err != nil {
		return err
	}
	return o.worst(outcomes)
}

// write prints what was found, and the report where one is wanted.
func (o *checkOptions) write(outcomes []outcome, today time.Time) (err error) {
	switch o.format {
	case "json":
		err = o.writeJSON(outcomes)
	case "sarif":
		err = o.writeSARIF(outcomes)
	default:
		err = o.writeText(outcomes)
	}
	if err != nil {
		return fmt.Errorf("cannot write the findings: %w", err)
	}
	if o.report != "" {
		return o.writeReport(outcomes[0].proof, today)
	}
	return nil
}

// failures are the errors of the kits that could not be checked.
func failures(outcomes []outcome) []error {
	var failed []error
	for _, one := range outcomes {
		if one.err != nil {
			failed = append(failed, one.err)
		}
	}
	return failed
}

// worst is how the check ends: with the worst that any kit has come to.
func (o *checkOptions) worst(outcomes []outcome) error {
	if failed := failures(outcomes); len(failed) > 0 {
		for _, err := range failed {
			fmt.Fprintln(o.err, "tallyfold: "+err.Error())
		}
		return fmt.Errorf("%s of %d could not be checked", count(len(failed), "kit"), len(outcomes))
	}
	for _, one := range outcomes {
		if one.proof.Findings.MustFix() {
			return errMustFix
		}
	}
	return nil
}

// count tells a number of things: "1 run", "3 runs".
func count(n int, thing string) string {
	if n == 1 {
		return "1 " + thing
	}
	return fmt.Sprintf("%d %ss", n, thing)
}
