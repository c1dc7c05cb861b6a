package main

import (
	"encoding/json"
	"errors"
	"fmt"
	"strings"
	"text/tabwriter"
	"time"

	"github.com/spf13/cobra"

	"tallyfold/kit/handbook"
	"tallyfold/kit/hazard"
	"tallyfold/kit/label"
)

type hazardOptions struct {
	streams
	json, known bool
}

func newHazards(io streams) *cobra.Command {
	o := &hazardOptions{streams: io}
	command := &cobra.Command{
		Use:   "hazards KIT",
		Short: "Show what in each step can hurt someone, and which caution speaks of it",
		Long: `hazards lists every action of the steps that can hurt someone: what brings it, the
caution that speaks of it, where that stands, and where the hazard is from. Where the
maker has no caution before an action the booklet has one of the program's own.

It goes by temperatures, by the names of tools, and by what kit.yaml says under
“hazards” of a component; cautions are known by their words. What is not listed here
is not thereby harmless. --known lists the hazards that the program has.`,
		Example: `  tallyfold hazards harbour-candles
  tallyfold hazards harbour-candles --json
  tallyfold hazards --known`,
		Args: func(command *cobra.Command, args []string) error {
			if o.known != (len(args) == 0) || len(args) > 1 {
				return errors.New("name the one kit folder to look through, for instance: tallyfold hazards my-kit; or --known for the hazards that the program has")
			}
			return nil
		},
		RunE: func(_ *cobra.Command, args []string) error {
			if o.known {
				return o.writeKnown()
			}
			return o.run(args[0])
		},
	}
	command.Flags().BoolVar(&o.json, "json", false, "print JSON, for programs")
	command.Flags().BoolVar(&o.known, "known", false, "list the hazards that the program has, each with its source")
	command.ValidArgsFunction = completeFolders
	return command
}

// A toldHazard is one hazardous action as it is printed.
type toldHazard struct {
	Step    int    `json:"step"`
	Hazard  string `json:"hazard"`
	By      string `json:"by"`
	At      string `json:"at"`
	Least   string `json:"least signal word"`
	Caution string `json:"caution"`
	Place   string `json:"place"`
	Source  string `json:"source"`
}

func (o *hazardOptions) run(folder string) error {
	p, err := prove(folder, time.Now())
	if err != nil {
		return err
	}
	if p.Kit == nil {
		return fmt.Errorf("%s could not be read; see: tallyfold check %s", p.folder, p.folder)
	}
	if !hazard.Readable(p.Kit) {
		fmt.Fprintf(o.err, "tools and cautions are not known by their words in the language %q: only temperatures and materials were looked at\n", p.Kit.Language.Value)
	}
	told := []toldHazard{}
	for _, action := range hazard.In(p.Kit, p.Ledger) {
		told = append(told, tellHazard(action))
	}
	if o.json {
		encoder := json.NewEncoder(o.out)
		encoder.SetIndent("", "  ")
		encoder.SetEscapeHTML(false)
		return encoder.Encode(told)
	}
	if err := o.write(p.folder, told); err != nil {
		return err
	}
	return o.writeClasses(p)
}

// writeClasses tells what the packs' H-statements come to in what is made, by published
// cut-offs: as information, with its sum.
func (o *hazardOptions) writeClasses(p *proved) error {
	all := label.Classifications(p.Kit, p.Ledger)
	if len(all) == 0 {
		return nil
	}
	var out strings.Builder
	out.WriteString("\nWhat is made, by the cut-offs of 29 CFR 1910.1200, appendix A: information, no classification.\n" +
		"Ask a competent person; acids, alkalis, surfactants and limits of single substances are not reckoned.\n")
	for _, c := range all {
		fmt.Fprintf(&out, "%s\n", c.Filling.Numbered())
		if c.Why != "" {
			fmt.Fprintf(&out, "  cannot be reckoned: %s\n", c.Why)
		}
		for _, class := range c.Classes {
			comes := "no statement"
			if class.Statement != "" {
				comes = class.Statement
			}
			fmt.Fprintf(&out, "  %s: %s. %s\n", class.Hazard, comes, class.Sum)
		}
	}
	_, err := fmt.Fprint(o.out, out.String())
	return err
}

func tellHazard(a hazard.Action) toldHazard {
	told := toldHazard{
		Step: a.Step.Number, Hazard: a.Hazard.ID, By: a.By, Least: string(a.Hazard.Signal), Source: sourceOf(a.Hazard),
		At: fmt.Sprintf("%s:%d", a.Where.File.Name, a.Where.Position().Line),
	}
	switch {
	case a.Answered():
		told.Caution, told.Place = a.Caution.Text, string(a.Place)
	default:
		told.Caution = a.Hazard.Happens + " " + a.Hazard.Avoid
		told.Place = "the booklet's own, before it in the step"
		if a.Caution != nil {
			told.Place += " (one of yours stands " + string(a.Place) + ")"
		}
	}
	return told
}

func sourceOf(h handbook.Hazard) string {
	if h.Source == "" {
		return h.Known
	}
	return h.Source + " (" + h.Known + ")"
}

func (o *hazardOptions) write(folder string, all []toldHazard) error {
	if len(all) == 0 {
		_, err := fmt.Fprintf(o.out, "%s: nothing that the program knows of can hurt someone in these steps; that says nothing of what it does not know\n", folder)
		return err
	}
	for _, h := range all {
		fmt.Fprintf(o.out, "step %d  %s, by %s  (%s)\n", h.Step, h.Hazard, h.By, h.At)
		table := tabwriter.NewWriter(o.out, 0, 0, 2, ' ', 0)
		fmt.Fprintf(table, "  caution\t%s\n  stands\t%s\n  at least\t%s\n  source\t%s\n", h.Caution, h.Place, h.Least, h.Source)
		if err := table.Flush(); err != nil {
			return err
		}
	}
	_, err := fmt.Fprintf(o.out, "\n%s: %s. This is what was looked for, not all that there is; see SAFETY.md.\n", folder, count(len(all), "hazardous action"))
	return err
}

// writeKnown lists the handbook's hazards.
func (o *hazardOptions) writeKnown() error {
	for _, h := range handbook.Hazards() {
		table := tabwriter.NewWriter(o.out, 0, 0, 2, ' ', 0)
		fmt.Fprintf(table, "%s\t%s\n  when\t%s\n  happens\t%s\n  avoid\t%s\n  at least\t%s\n  source\t%s\n", h.ID, h.What, h.When, h.Happens, h.Avoid, h.Signal, sourceOf(h))
		if err := table.Flush(); err != nil {
			return err
		}
	}
	return nil
}
