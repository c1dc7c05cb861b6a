package main

import (
	"encoding/csv"
	"encoding/json"
	"fmt"
	"time"

	"github.com/spf13/cobra"

	"tallyfold/kit/ledger"
	"tallyfold/render"
)

type balanceOptions struct {
	streams
	format string
	json   bool
}

func newBalance(io streams) *cobra.Command {
	o := &balanceOptions{streams: io}
	command := &cobra.Command{
		Use:   "balance KIT",
		Short: "Show where every gram, piece and metre goes",
		Long: `balance follows the steps and shows, for the whole box, what is packed, used and
left; for each run and step, what moves and what every vessel then holds; and how
full each container gets. Every figure stands with its sum, and what is not exact is
told three ways: as written, at its worst, and as likely.`,
		Example: `  tallyfold balance harbour-candles
  tallyfold balance harbour-candles --format csv > harbour-candles.csv
  tallyfold balance harbour-candles --format html > harbour-candles-balance.html`,
		Args: func(command *cobra.Command, args []string) error {
			if len(args) != 1 {
				return fmt.Errorf("name the one kit folder to balance, for instance: tallyfold balance my-kit")
			}
			return nil
		},
		RunE: func(_ *cobra.Command, args []string) error { return o.run(args[0]) },
	}
	command.Flags().StringVar(&o.format, "format", "text", "how to print: text, json, csv, or html with drawings")
	command.Flags().BoolVar(&o.json, "json", false, "the same as --format json")
	command.MarkFlagsMutuallyExclusive("format", "json")
	_ = command.RegisterFlagCompletionFunc("format", cobra.FixedCompletions([]string{"text", "json", "csv", "html"}, cobra.ShellCompDirectiveNoFileComp))
	command.ValidArgsFunction = completeFolders
	return command
}

func (o *balanceOptions) run(folder string) error {
	p, err := prove(folder, time.Now())
	if err != nil {
		return err
	}
	if p.Kit == nil {
		return fmt.Errorf("%s could not be read; see: tallyfold check %s", p.folder, p.folder)
	}
	if o.json {
		o.format = "json"
	}
	switch o.format {
	case "text":
		err = writeBalance(o.out, p)
	case "json":
		encoder := json.NewEncoder(o.out)
		encoder.SetIndent("", "  ")
		encoder.SetEscapeHTML(false)
		err = encoder.Encode(p.Ledger.Account())
	case "csv":
		err = o.writeCSV(p.Ledger.Account())
	case "html":
		err = o.writePage(p)
	default:
		return fmt.Errorf("--format %q is not known; it is text, json, csv or html", o.format)
	}
	if err != nil {
		return fmt.Errorf("cannot write the balance: %w", err)
	}
	if p.Findings.MustFix() {
		fmt.Fprintf(o.err, "Something must be fixed, so these figures may change; see: tallyfold check %s\n", p.folder)
		return errMustFix
	}
	return nil
}

// writePage writes one HTML file with the drawings of the balance.
func (o *balanceOptions) writePage(p *proved) error {
	page, err := render.BalancePage(p.Kit, p.Ledger, templatesOf(p))
	if err != nil {
		return err
	}
	_, err = o.out.Write(page)
	return err
}

// writeCSV writes the movements, one a line: what a spreadsheet can add up.
func (o *balanceOptions) writeCSV(account ledger.Account) error {
	w := csv.NewWriter(o.out)
	rows := [][]string{{"run", "step", "title", "move", "thing", "amount", "unit", "from", "to"}}
	for _, m := range account.Movements {
		rows = append(rows, []string{m.Run, fmt.Sprint(m.Step), m.Title, m.Move, m.Thing, m.Amount.Value, m.Amount.Unit, m.From, m.To})
	}
	return w.WriteAll(rows)
}
