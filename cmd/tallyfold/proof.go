package main

import (
	"fmt"
	"os"
	"path/filepath"
	"time"

	"tallyfold/instructions"
	"tallyfold/kit"
	"tallyfold/kit/diag"
	"tallyfold/kit/ledger"
	"tallyfold/kit/load"
	"tallyfold/kit/rules"
	"tallyfold/kit/schedule"
)

// A proof is a kit folder read, followed and judged. Every command starts here.
type proof struct {
	folder   string // as the person wrote it
	name     string // the folder's own name
	kit      *kit.Kit
	ledger   *ledger.Ledger
	plan     schedule.Plan
	findings diag.List
	accepted []diag.Accepted
}

// prove reads a kit folder and judges it as of a day. A kit that was refused whole
// has no ledger; its findings say why.
func prove(folder string, today time.Time) (*proof, error) {
	info, err := os.Stat(folder)
	if err != nil {
		return nil, fmt.Errorf("there is no kit folder %q; make one with: tallyfold new %s", folder, folder)
	}
	if !info.IsDir() {
		return nil, fmt.Errorf("%q is a file; name the kit folder that it lies in", folder)
	}
	absolute, err := filepath.Abs(folder)
	if err != nil {
		return nil, fmt.Errorf("cannot tell where %q lies: %w", folder, err)
	}
	p := &proof{folder: filepath.ToSlash(filepath.Clean(folder)), name: filepath.Base(absolute)}
	var reading diag.List
	p.kit, reading = instructions.Open(os.DirFS(absolute), p.name)
	if p.kit == nil {
		p.findings = reading
		return p, nil
	}
	reading = append(reading, load.Settle(p.kit, ruleNames())...)
	p.ledger = ledger.Follow(p.kit)
	p.plan = schedule.Of(p.kit)
	judged := rules.Check(rules.Subject{Kit: p.kit, Ledger: p.ledger, Plan: p.plan})
	follow(judged, reading)
	p.findings, p.accepted = rules.Accept(append(reading, judged...), p.kit, today)
	return p, nil
}

// follow tells what was judged of a thing that could not be read under the finding
// of that: a link without an amount, a component without a pack.
func follow(judged, reading diag.List) {
	for i := range judged {
		for j := range reading {
			if reading[j].Severity == diag.MustFix && sameMistake(judged[i], reading[j]) {
				if reading[j].Cause == "" {
					reading[j].Cause = fmt.Sprintf("read:%d", j)
				}
				judged[i].Cause, judged[i].Follows = reading[j].Cause, true
				break
			}
		}
	}
}

// sameMistake says whether a judgement is about what could not be read: at that
// place, or about a thing whose pack is missing because it could not be read.
func sameMistake(judged, read diag.Finding) bool {
	if judged.Where.Contains(read.Where) || read.Where.Contains(judged.Where) {
		return true
	}
	return judged.Rule == "used-but-not-packed" && read.About == judged.About
}

// day reads the date that findings are judged as of; empty is today.
func day(text string) (time.Time, error) {
	if text == "" {
		return time.Now(), nil
	}
	at, err := time.Parse(time.DateOnly, text)
	if err != nil {
		return at, fmt.Errorf("--as-of %q is no date; write it as 2026-11-25", text)
	}
	return at, nil
}
