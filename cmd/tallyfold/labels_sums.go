package main

import (
	"fmt"
	"strings"

	"tallyfold/kit"
	"tallyfold/kit/label"
)

// writeSums tells how declared net contents came about, and how high their type must be.
func (o *labelsOptions) writeSums(p *proved) error {
	nets := label.Nets(p.Kit, p.Ledger)
	if len(nets) == 0 {
		_, err := fmt.Fprintf(o.out, "%s: no step fills a container that “pieces” names, so there are no net contents to tell\n", p.folder)
		return err
	}
	for _, net := range nets {
		if _, err := fmt.Fprint(o.out, sumOf(net)); err != nil {
			return err
		}
	}
	if use := p.Kit.SoldAs.Value; use == kit.LeaveOn || use == kit.RinseOff {
		return o.writeIngredients(p)
	}
	return nil
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
