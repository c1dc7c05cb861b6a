// Package proof reads a kit folder, follows it and judges it: what every command and
// page starts from. It also tries remedies: it makes the change that a remedy names in
// a copy of the texts, judges the kit anew, and says what came of it.
package proof

import (
	"io/fs"
	"slices"
	"time"

	"tallyfold/instructions"
	"tallyfold/kit"
	"tallyfold/kit/diag"
	"tallyfold/kit/ledger"
	"tallyfold/kit/load"
	"tallyfold/kit/rules"
	"tallyfold/kit/schedule"
)

// A Proof is a kit folder read, followed and judged.
type Proof struct {
	// Kit is nil where the folder was refused whole; Findings then say why, and there
	// is no Ledger.
	Kit      *kit.Kit
	Ledger   *ledger.Ledger
	Plan     schedule.Plan
	Findings diag.List
	Accepted []diag.Accepted

	folder fs.FS
	name   string
	today  time.Time
}

// Of proves the kit in a folder as of a day. name is the base name of the folder.
func Of(folder fs.FS, name string, today time.Time) *Proof {
	p := &Proof{folder: folder, name: name, today: today}
	var reading diag.List
	p.Kit, reading = instructions.Open(folder, name)
	if p.Kit == nil {
		p.Findings = reading
		return p
	}
	reading = append(reading, load.Settle(p.Kit, RuleNames())...)
	judged := p.judge(ledger.Choosing{})
	for _, choosing := range ledger.Choosings(p.Kit) {
		judged = append(judged, p.otherwise(judged, choosing)...)
	}
	follow(p.Kit, judged, reading)
	p.Findings, p.Accepted = rules.Accept(append(reading, judged...), p.Kit, today)
	return p
}

// judge follows the kit as a customer chooses and holds all rules against it. The
// ledger kept is that of the first choice.
func (p *Proof) judge(choosing ledger.Choosing) diag.List {
	subject := rules.Subject{Kit: p.Kit, Ledger: ledger.FollowChoosing(p.Kit, choosing), Plan: schedule.Of(p.Kit), Today: p.today}
	if p.Ledger == nil {
		p.Ledger, p.Plan = subject.Ledger, subject.Plan
	}
	return rules.Check(subject)
}

// otherwise gives what is found only with another choice, and says with which.
func (p *Proof) otherwise(known diag.List, choosing ledger.Choosing) diag.List {
	var found diag.List
	for _, f := range p.judge(choosing) {
		told := slices.ContainsFunc(known, func(other diag.Finding) bool { return sameMatter(f, other) })
		if !told {
			f.Found = choosing.Tell(p.Kit) + ": " + f.Found
			found = append(found, f)
		}
	}
	return found
}

// sameMatter: two findings of one rule about one thing at one place, whatever their
// figures.
func sameMatter(a, b diag.Finding) bool {
	return a.Rule == b.Rule && a.About == b.About && a.Where == b.Where
}

// RuleNames are the rules whose findings a maker can accept, those that judge first.
func RuleNames() []string {
	var names []string
	for _, rule := range rules.All {
		names = append(names, rule.Name)
	}
	for _, rule := range ReadingRules() {
		if !slices.Contains(names, rule.Name) {
			names = append(names, rule.Name)
		}
	}
	return names
}

// ReadingRules are the findings that reading the files can have, each once.
func ReadingRules() []load.Rule {
	var all []load.Rule
	for _, rule := range slices.Concat(load.Rules, instructions.Rules) {
		if !slices.ContainsFunc(all, func(known load.Rule) bool { return known.Name == rule.Name }) {
			all = append(all, rule)
		}
	}
	return all
}
