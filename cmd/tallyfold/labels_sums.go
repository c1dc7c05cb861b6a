package main

import (
	"fmt"
	"slices"
	"strings"

	"tallyfold/kit"
	"tallyfold/kit/handbook"
	"tallyfold/kit/label"
	"tallyfold/kit/quantity"
)

// writeSums tells how declared net contents came about, and how high their type must be.
func (o *labelsOptions) writeSums(p *proved) error {
	nets := label.Nets(p.Kit, p.Ledger)
	if len(nets) == 0 {
		_, err := fmt.Fprintf(o.out, "%s: no step fills a container that “pieces” names, so there are no net contents to tell\n", p.folder)
		return err
	}
	for _, net := range nets {
		if _, err := fmt.Fprint(o.out, sumOf(net)+shortfallsOf(p.Kit, net)); err != nil {
			return err
		}
	}
	if use := p.Kit.SoldAs.Value; use == kit.LeaveOn || use == kit.RinseOff {
		return o.writeIngredients(p)
	}
	return nil
}

// shortfallsOf tells, for each market of the kit with a table for it, how much less than
// declared a single piece may hold there while the average is right, and how much less the
// emptiest can hold at its worst.
func shortfallsOf(k *kit.Kit, net label.Net) string {
	written, worst, ok := net.Ends()
	if !net.Told() || !ok {
		return ""
	}
	var out strings.Builder
	show := func(n quantity.Number) string { return quantity.Show(n, net.Dimension) }
	for _, said := range k.Markets {
		pack, _ := handbook.PackFor(said.Value)
		for _, r := range pack.Requirements {
			if len(r.Least) == 0 || net.Dimension != quantity.Mass && !slices.Contains(r.Applies, "sold by weight or volume") {
				continue
			}
			most, known := r.ShortfallOf(net.Declared)
			if !known {
				continue
			}
			short := "not short of it"
			if worst.Less(net.Declared) {
				short = show(net.Declared.Minus(worst)) + " short"
			}
			fmt.Fprintf(&out, "  %-8s  one piece may be %s short where the average is right (%s; %s); filled as written it holds %s, at its worst %s: %s\n",
				"in "+said.Value, show(most), r.Source, r.Known, show(written), show(worst), short)
		}
	}
	return out.String()
}

func sumOf(net label.Net) string {
	var out strings.Builder
	fmt.Fprintf(&out, "%s\n", net.Piece)
	if net.Told() {
		fmt.Fprintf(&out, "  declared  %s\n", label.State(net.Declared, net.Dimension, "en"))
		for i, line := range strings.Split(net.Sum, "\n") {
			fmt.Fprintf(&out, "  %-8s  %s\n", []string{"sum", ""}[min(i, 1)], line)
		}
	} else {
		fmt.Fprintf(&out, "  declared  cannot be told: %s\n", net.Why)
	}
	panel, told := label.PanelOf(net.Container)
	if !told {
		fmt.Fprintf(&out, "  type      cannot be told: the panel of %s is not told; write “panel: 60 × 40 mm” under its container\n", net.Container)
		return out.String()
	}
	where := ""
	if panel.BottomOnly() {
		where = ", in the bottom 30 % of the panel"
	}
	fmt.Fprintf(&out, "  type      at least %.4g mm high%s: %s (21 CFR 701.13)\n", panel.NetTypeHeight(), where, panel.How)
	return out.String()
}
