package main

import (
	"bytes"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"time"

	"tallyfold/instructions/keep"
	"tallyfold/kit/proof"
	"tallyfold/kit/rules"
	"tallyfold/render"
)

// writeReport writes what a shop keeps of the check of a kit.
func (o *checkOptions) writeReport(p *proved, today time.Time) error {
	report := render.Report{
		Folder: p.name, Kit: p.Kit, AsOf: today, Version: version(),
		Findings: p.Findings, Accepted: p.Accepted, Rules: asked(p, today), Ledger: p.Ledger,
	}
	text, err := report.Markdown()
	if err != nil {
		return fmt.Errorf("the report of %s cannot be put together: %w", p.folder, err)
	}
	if err := writeWhole(o.report, text); err != nil {
		return err
	}
	fmt.Fprintln(o.err, "The report of the check is in "+o.report+".")
	return nil
}

// asked are all rules with what each passed over in the kit.
func asked(p *proved, today time.Time) []render.Asked {
	var all []render.Asked
	for _, rule := range judgingRules() {
		one := render.Asked{Name: rule.Name, Title: rule.Title}
		if p.Kit != nil && rule.NotLookedAt != nil {
			one.NotLookedAt = rule.NotLookedAt(rules.Subject{Kit: p.Kit, Ledger: p.Ledger, Plan: p.Plan, Today: today})
		}
		all = append(all, one)
	}
	for _, rule := range proof.ReadingRules() {
		all = append(all, render.Asked{Name: rule.Name, Title: rule.Title, Reading: true})
	}
	return all
}

// kitsOwn are the names of files that are read from a kit folder, and of the folders
// in it that are, today or by the design of a kit folder.
var (
	kitsOwn        = regexp.MustCompile(`(?i)^(?:kit\.ya?ml|(?:method|trouble|words)(?:\.[^.]+)?\.md|reviews\.csv)$`)
	kitsOwnFolders = regexp.MustCompile(`(?i)^(?:pictures|trials|packing|templates)$`)
)

// isKitsOwn says whether a path is where a kit has files of its own.
func isKitsOwn(path string) bool {
	whole, err := filepath.Abs(path)
	if err != nil {
		return true
	}
	folder := filepath.Dir(whole)
	return keep.IsKit(folder) && kitsOwn.MatchString(filepath.Base(whole)) ||
		keep.IsKit(filepath.Dir(folder)) && kitsOwnFolders.MatchString(filepath.Base(folder))
}

// mayHoldReport says whether a report of the one kit may be written to a path. It
// takes the place of an earlier report and of nothing else: a slip in the name must
// not cost a maker the method.
func mayHoldReport(path string, folders []string) error {
	if len(folders) != 1 {
		return fmt.Errorf("--report is of one kit, and here are %d; check each with a report of its own", len(folders))
	}
	if isKitsOwn(path) {
		return fmt.Errorf("%s is where a kit has files of its own; choose another name for the report", path)
	}
	info, err := os.Stat(path)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return nil
	case err != nil:
		return fmt.Errorf("cannot write the report to %s: %w", path, err)
	case !info.Mode().IsRegular():
		return fmt.Errorf("%s is no plain file; name the file that the report goes into", path)
	case !isReport(path):
		return fmt.Errorf("%s is there already and is no report of a check; choose another name", path)
	}
	return nil
}

// isReport says whether a file begins as a report does. An empty one may go too.
func isReport(path string) bool {
	file, err := os.Open(path)
	if err != nil {
		return false
	}
	defer file.Close()
	head := make([]byte, len(render.ReportMark))
	n, _ := file.Read(head)
	return bytes.HasPrefix([]byte(render.ReportMark), head[:n]) && (n == 0 || n == len(head))
}
