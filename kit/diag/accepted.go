package diag

import (
	"io"
	"strings"

	"tallyfold/kit/source"
)

// An Accepted is a finding that the maker has decided to live with.
type Accepted struct {
	Finding
	// Because is the maker's reason.
	Because string
	// Until says how long it holds: "2027-06-30" (that day included) or "edition 2".
	Until string
	// Entry is where kit.yaml accepts it.
	Entry source.Span
}

func (a Accepted) reason() string {
	return "because " + strings.Join(strings.Fields(a.Because), " ") + ", until " + a.Until
}

// named tells a rule and what its finding is about: "left-over of pan".
func named(rule, about string) string {
	if about == "" {
		return rule
	}
	return rule + " of " + about
}

// WriteAccepted prints what the maker has accepted, with reason and end. It
// prints nothing where nothing is.
func WriteAccepted(w io.Writer, accepted []Accepted, style Style) error {
	if len(accepted) == 0 {
		return nil
	}
	p := &printer{w: w, style: style}
	p.print("accepted by the maker, and not counted:\n")
	for _, a := range accepted {
		p.print("  " + p.at(a.Where) + Printable(named(a.Rule, a.About)+", "+a.Found) + "\n")
		p.print("    " + Printable(a.reason()) + "\n")
	}
	p.print("\n")
	return p.err
}
