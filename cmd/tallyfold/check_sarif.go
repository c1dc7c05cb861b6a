package main

import (
	"path/filepath"
	"strings"

	"tallyfold/kit/diag"
	"tallyfold/kit/proof"
)

func (o *checkOptions) writeSARIF(outcomes []outcome) error {
	log := diag.Log{Version: version(), Rules: toldRules()}
	for _, one := range outcomes {
		if one.err != nil {
			log.Failed = append(log.Failed, one.err.Error())
			continue
		}
		log.Kits = append(log.Kits, diag.Checked{
			Name: one.proof.name, Folder: belowOrWhole(one.proof.folder),
			Findings: one.proof.Findings, Accepted: one.proof.Accepted,
		})
	}
	return diag.WriteSARIF(o.out, log)
}

// belowOrWhole gives a folder from the one stood in where it lies below that, and
// any other with its whole path from the root, links followed.
func belowOrWhole(folder string) string {
	if filepath.IsLocal(folder) {
		return folder
	}
	here, err := filepath.Abs(".")
	if err != nil {
		return folder
	}
	whole := folder
	if !filepath.IsAbs(folder) {
		whole = filepath.Join(here, folder)
	}
	if below, err := filepath.Rel(here, whole); err == nil && filepath.IsLocal(below) {
		return filepath.ToSlash(below)
	}
	if followed, err := filepath.EvalSymlinks(whole); err == nil {
		whole = followed
	}
	return "/" + strings.TrimPrefix(filepath.ToSlash(whole), "/")
}

// toldRules are all rules as they are explained to people. What reading the files
// finds says its own weight each time.
func toldRules() []diag.Told {
	var told []diag.Told
	for _, rule := range judgingRules() {
		told = append(told, diag.Told{Name: rule.Name, Title: rule.Title, Explanation: rule.Explanation, Severity: rule.Severity})
	}
	for _, rule := range proof.ReadingRules() {
		told = append(told, diag.Told{Name: rule.Name, Title: rule.Title, Explanation: rule.Explanation})
	}
	return told
}
