package main

import (
	"encoding/json"

	"tallyfold/kit/diag"
)

// checkedKit is one kit in the JSON output.
type checkedKit struct {
	Kit      string              `json:"kit"`
	Findings []diag.PlainFinding `json:"findings"`
	Accepted []acceptedPlain     `json:"accepted"`
	// Failed says why the kit could not be checked at all.
	Failed string `json:"failed,omitempty"`
}

type acceptedPlain struct {
	diag.PlainFinding
	Because string `json:"because"`
	Until   string `json:"until,omitempty"`
}

func (o *checkOptions) writeJSON(outcomes []outcome) error {
	kits := []checkedKit{}
	for _, one := range outcomes {
		kits = append(kits, plainKit(one))
	}
	encoder := json.NewEncoder(o.out)
	encoder.SetIndent("", "  ")
	encoder.SetEscapeHTML(false)
	return encoder.Encode(map[string]any{"kits": kits})
}

func plainKit(one outcome) checkedKit {
	if one.err != nil {
		return checkedKit{Kit: one.folder, Findings: []diag.PlainFinding{}, Accepted: []acceptedPlain{}, Failed: one.err.Error()}
	}
	checked := checkedKit{Kit: one.proof.folder, Findings: one.proof.Findings.Plain(), Accepted: []acceptedPlain{}}
	for _, a := range one.proof.Accepted {
		plain := diag.List{a.Finding}.Plain()[0]
		checked.Accepted = append(checked.Accepted, acceptedPlain{plain, a.Because, a.Until})
	}
	return checked
}
