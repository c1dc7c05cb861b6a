package main

import (
	"encoding/json"
	"fmt"
	"os"
	"strings"

	"github.com/spf13/cobra"

	"tallyfold/kit/diag"
	"tallyfold/kit/proof"
	"tallyfold/kit/rules"
)

type checkOptions struct {
	streams
	format  string
	asOf    string
	explain string
}

func newCheck(io streams) *cobra.Command {
	o := &checkOptions{streams: io}
	command := &cobra.Command{
		Use:   "check KIT…",
		Short: "Show what does not add up, worst first, and how to mend it",
		Long: `check follows the steps of each kit to the letter, over all its runs, and shows
every place where box, method and claims do not agree: what was found, what was
expected, the sum, and ways out.

It ends with 0 when nothing must be fixed, 1 when something must, 2 when a kit
could not be read at all.`,
		Example: `  tallyfold check harbour-candles
  tallyfold check kits/*
  tallyfold check --format json harbour-candles
  tallyfold check --explain left-over`,
		Args: func(command *cobra.Command, args []string) error {
			if len(args) == 0 && o.explain == "" {
				return fmt.Errorf("name the kit folder to check, for instance: tallyfold check my-kit")
			}
			return nil
		},
		RunE: func(_ *cobra.Command, args []string) error { return o.run(args) },
	}
	command.Flags().StringVar(&o.format, "format", "text", "how to print: text or json")
	command.Flags().StringVar(&o.asOf, "as-of", "", "judge accepted findings as of this `day` (2026-11-25); today unless said")
	command.Flags().StringVar(&o.explain, "explain", "", "tell what a `rule` is for and how to put it right")
	_ = command.RegisterFlagCompletionFunc("format", cobra.FixedCompletions([]string{"text", "json"}, cobra.ShellCompDirectiveNoFileComp))
	_ = command.RegisterFlagCompletionFunc("explain", completeRules)
	command.ValidArgsFunction = completeFolders
	return command
}

func (o *checkOptions) run(folders []string) error {
	if o.explain != "" {
		return o.tell(o.explain)
	}
	if o.format != "text" && o.format != "json" {
		return fmt.Errorf("--format %q is not known; it is text or json", o.format)
	}
	today, err := day(o.asOf)
	if err != nil {
		return err
	}
	var proofs []*proved
	for _, folder := range o.withoutFiles(folders) {
		p, err := prove(folder, today)
		if err != nil {
			return err
		}
		p.Try()
		proofs = append(proofs, p)
	}
	if o.format == "json" {
		err = o.writeJSON(proofs)
	} else {
		err = o.writeText(proofs)
	}
	if err != nil {
		return fmt.Errorf("cannot write the findings: %w", err)
	}
	for _, p := range proofs {
		if p.Findings.MustFix() {
			return errMustFix
		}
	}
	return nil
}

// withoutFiles passes over files among several kits, with a word: "check kits/*"
// also names the price list that lies beside the kits. A file alone is a slip.
func (o *checkOptions) withoutFiles(names []string) []string {
	var folders []string
	for _, name := range names {
		if info, err := os.Stat(name); err == nil && !info.IsDir() {
			fmt.Fprintln(o.err, "passed over, as it is a file and no kit folder: "+name)
			continue
		}
		folders = append(folders, name)
	}
	if len(folders) == 0 {
		return names
	}
	return folders
}

func (o *checkOptions) writeText(proofs []*proved) error {
	for i, p := range proofs {
		if i > 0 {
			fmt.Fprintln(o.out)
		}
		if err := diag.WriteText(o.out, p.Findings, diag.Style{Colour: o.colour, Folder: p.folder}); err != nil {
			return err
		}
		if len(p.Findings) > 0 {
			fmt.Fprintln(o.out)
		}
		for _, accepted := range p.Accepted {
			fmt.Fprintln(o.out, "accepted: "+accepted.String())
		}
		if _, err := fmt.Fprintln(o.out, p.folder+": "+summary(p)); err != nil {
			return err
		}
	}
	return nil
}

// summary counts the findings and says what was and was not looked at.
func summary(p *proved) string {
	var counts []string
	for _, severity := range []diag.Severity{diag.MustFix, diag.ShouldFix, diag.WorthKnowing} {
		if n := p.Findings.Count(severity); n > 0 {
			counts = append(counts, fmt.Sprintf("%d %s", n, severity))
		}
	}
	if p.Kit == nil {
		return strings.Join(counts, ", ") + "; the kit could not be followed"
	}
	told := fmt.Sprintf("%s followed in %s by %d rules",
		count(len(p.Kit.Method.Steps()), "step"), count(len(p.Kit.Passes()), "run"), len(rules.All))
	if len(counts) == 0 {
		return "nothing to fix; " + told
	}
	return strings.Join(counts, ", ") + "; " + told
}

// count tells a number of things: "1 run", "3 runs".
func count(n int, thing string) string {
	if n == 1 {
		return "1 " + thing
	}
	return fmt.Sprintf("%d %ss", n, thing)
}

// checkedKit is one kit in the JSON output.
type checkedKit struct {
	Kit      string              `json:"kit"`
	Findings []diag.PlainFinding `json:"findings"`
	Accepted []acceptedPlain     `json:"accepted"`
}

type acceptedPlain struct {
	diag.PlainFinding
	Because string `json:"because"`
	Until   string `json:"until,omitempty"`
}

func (o *checkOptions) writeJSON(proofs []*proved) error {
	kits := []checkedKit{}
	for _, p := range proofs {
		checked := checkedKit{Kit: p.folder, Findings: p.Findings.Plain(), Accepted: []acceptedPlain{}}
		for _, a := range p.Accepted {
			plain := diag.List{a.Finding}.Plain()[0]
			checked.Accepted = append(checked.Accepted, acceptedPlain{plain, a.Because, a.Until})
		}
		kits = append(kits, checked)
	}
	encoder := json.NewEncoder(o.out)
	encoder.SetIndent("", "  ")
	encoder.SetEscapeHTML(false)
	return encoder.Encode(map[string]any{"kits": kits})
}

// tell explains one rule.
func (o *checkOptions) tell(name string) error {
	if rule, ok := rules.Named(name); ok {
		return o.explanation(rule.Name, rule.Severity.String(), rule.Title, rule.Explanation)
	}
	for _, rule := range proof.ReadingRules() {
		if rule.Name == name {
			return o.explanation(rule.Name, "reading the files", rule.Title, rule.Explanation)
		}
	}
	return fmt.Errorf("there is no rule %q; the rules are: %s", name, strings.Join(proof.RuleNames(), ", "))
}

func (o *checkOptions) explanation(name, weight, title, text string) error {
	_, err := fmt.Fprintf(o.out, "%s (%s)\n%s\n\n%s\n", name, weight, title, text)
	return err
}

func completeRules(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) {
	return proof.RuleNames(), cobra.ShellCompDirectiveNoFileComp
}

func completeFolders(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) {
	return nil, cobra.ShellCompDirectiveFilterDirs
}
