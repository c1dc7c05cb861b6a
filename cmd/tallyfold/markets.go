package main

import (
	"encoding/json"
	"errors"
	"fmt"
	"slices"
	"strings"
	"time"

	"github.com/spf13/cobra"

	"tallyfold/kit/handbook"
	"tallyfold/kit/market"
)

type marketOptions struct {
	streams
	json, known bool
	asOf        string
}

func newMarkets(io streams) *cobra.Command {
	o := &marketOptions{streams: io}
	command := &cobra.Command{
		Use:   "markets KIT",
		Short: "Show what the markets that a kit is sold in ask of its labels and its booklet",
		Long: `markets holds a kit against what each market under “markets” in kit.yaml asks of boxes,
bags, containers and booklets: whether it is asked of this kit and why, the words that
have to be printed and where, the facts that are missing, and what is left to you. Each
requirement names its source, the date of the source, and how it is known.

It is a list of what was looked for. It says nothing of what it does not name, and no kit
may be sold by it alone: ask a competent person. --known lists all requirements.`,
		Example: `  tallyfold markets harbour-candles
  tallyfold markets harbour-candles --json
  tallyfold markets --known`,
		Args: func(command *cobra.Command, args []string) error {
			if o.known != (len(args) == 0) || len(args) > 1 {
				return errors.New("name the one kit folder to look through, for instance: tallyfold markets my-kit; or --known for the requirements that the program has")
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
	command.Flags().BoolVar(&o.known, "known", false, "list the requirements that the program has, each with its source")
	command.Flags().StringVar(&o.asOf, "as-of", "", "judge as of this day, such as 2026-11-25, instead of today")
	command.ValidArgsFunction = completeFolders
	return command
}

func (o *marketOptions) run(folder string) error {
	today, err := day(o.asOf)
	if err != nil {
		return err
	}
	p, err := prove(folder, today)
	if err != nil {
		return err
	}
	if p.Kit == nil {
		return fmt.Errorf("%s could not be read; see: tallyfold check %s", p.folder, p.folder)
	}
	told := tellMarkets(p, today)
	if o.json {
		encoder := json.NewEncoder(o.out)
		encoder.SetIndent("", "  ")
		encoder.SetEscapeHTML(false)
		return encoder.Encode(told)
	}
	var out strings.Builder
	for _, m := range told {
		m.write(&out)
	}
	if len(told) == 0 {
		fmt.Fprintf(&out, "%s: no market is told, so nothing was looked at; write “markets: [US, EU, UK]” in kit.yaml with those you sell in\n", p.folder)
	} else {
		fmt.Fprintf(&out, "%s: this is what was looked for, not all that there is. Whether the kit may be sold is for a competent person to say.\n", p.folder)
	}
	_, err = fmt.Fprint(o.out, out.String())
	return err
}

// A toldMarket is one market as it is printed.
type toldMarket struct {
	Market     string     `json:"market"`
	Name       string     `json:"name"`
	LookedAt   string     `json:"last looked at"`
	Old        bool       `json:"more than a year ago"`
	NotCovered string     `json:"not covered"`
	Asked      []toldRule `json:"asked"`
	CannotTell []toldRule `json:"cannot be told"`
	NotAsked   []toldRule `json:"not asked"`
}

// A toldRule is one requirement with what it is asked of.
type toldRule struct {
	Requirement string   `json:"requirement"`
	Asks        string   `json:"asks"`
	Of          []string `json:"of"`
	Why         []string `json:"why"`
	Says        string   `json:"says,omitempty"`
	On          []string `json:"read on,omitempty"`
	Missing     []string `json:"missing,omitempty"`
	Yours       string   `json:"left to you,omitempty"`
	ToTell      string   `json:"to do,omitempty"`
	Source      string   `json:"source"`
}

// tellMarkets gathers the rulings of each market, those of one requirement together.
func tellMarkets(p *proved, today time.Time) []toldMarket {
	var all []toldMarket
	for _, said := range p.Kit.Markets {
		pack, known := handbook.PackFor(said.Value)
		if !known {
			all = append(all, toldMarket{Market: said.Value, NotCovered: "everything: there are no requirements for it here, and nothing was looked at"})
			continue
		}
		one := toldMarket{Market: pack.Market, Name: pack.Name, LookedAt: pack.LookedAt.Format(time.DateOnly), Old: pack.Old(today), NotCovered: pack.NotCovered}
		var notAsked []market.Ruling
		for _, r := range market.Against(pack, p.Kit, p.Ledger) {
			switch r.Answer {
			case market.Asked:
				one.Asked = gather(one.Asked, p.words(r))
			case market.NotAsked:
				notAsked = append(notAsked, r)
			default:
				one.CannotTell = gather(one.CannotTell, p.words(r))
			}
		}
		one.NotAsked = p.wordsTogether(notAsked, one.Asked)
		all = append(all, one)
	}
	return all
}

// wordsTogether tells what is asked of nothing in the kit, packs of one reason together.
func (p *proved) wordsTogether(notAsked []market.Ruling, asked []toldRule) []toldRule {
	var all []toldRule
	named := map[string][]string{} // the packs that one reason for one requirement goes for
	for _, r := range notAsked {
		if slices.ContainsFunc(asked, func(one toldRule) bool { return one.Requirement == r.Requirement.ID }) {
			continue
		}
		told := p.words(r)
		if name := r.About(); name != "" {
			reason := strings.Replace(r.Why, name, everyName, 1)
			named[told.Requirement+reason] = append(named[told.Requirement+reason], name)
			told.Why = []string{reason}
		}
		all = gather(all, told)
	}
	for i := range all {
		for j, reason := range all[i].Why {
			all[i].Why[j] = strings.Replace(reason, everyName, strings.Join(named[all[i].Requirement+reason], ", "), 1)
		}
	}
	return all
}

// everyName stands in a reason for the names of all that it goes for.
const everyName = "\x00"

// gather puts a requirement to those of its name that say the same.
func gather(all []toldRule, one toldRule) []toldRule {
	for i := range all {
		if known := &all[i]; known.Requirement == one.Requirement && known.Says == one.Says {
			known.Of = append(known.Of, one.Of...)
			known.Why = appendNew(known.Why, one.Why...)
			known.Missing = appendNew(known.Missing, one.Missing...)
			return all
		}
	}
	return append(all, one)
}

func appendNew(all []string, more ...string) []string {
	for _, one := range more {
		if !slices.Contains(all, one) {
			all = append(all, one)
		}
	}
	return all
}

func (o *marketOptions) writeKnown() error {
	var out strings.Builder
	for _, pack := range handbook.Packs() {
		fmt.Fprintf(&out, "%s, %s: last looked at on %s\n", pack.Market, pack.Name, pack.LookedAt.Format(time.DateOnly))
		for _, r := range pack.Requirements {
			fmt.Fprintf(&out, "  %s: %s\n    when    %s\n", r.ID, r.Asks, strings.Join(r.Applies, ", "))
			if r.Says != "" {
				fmt.Fprintf(&out, "    says    %s\n", r.Says)
			}
			if r.Yours != "" {
				fmt.Fprintf(&out, "    yours   %s\n", r.Yours)
			}
			fmt.Fprintf(&out, "    source  %s\n", sourceOfRequirement(r))
		}
		fmt.Fprintf(&out, "  not covered: %s\n\n", pack.NotCovered)
	}
	_, err := fmt.Fprint(o.out, out.String())
	return err
}

func sourceOfRequirement(r handbook.Requirement) string {
	return r.Source + "; of " + r.Dated + "; " + r.Known
}
