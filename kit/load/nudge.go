package load

import (
	"strings"

	"tallyfold/kit"
	"tallyfold/kit/quantity"
)

// nudgeOf reads how far everything on a label sheet is moved.
func nudgeOf() field[kit.Labels] {
	k := Key{Name: "nudge", Expected: "how far to move everything on the sheet, such as “1 mm right, 0.5 mm down”; the calibration sheet shows it", Example: "1 mm right, 0.5 mm down", Form: Text, Words: true}
	return field[kit.Labels]{k, func(r *reader, into *kit.Labels, v value) {
		if !v.isText() {
			r.wrong(v, k)
			return
		}
		nudge, ok := parseNudge(v.oneLine(), r.amounts)
		if !ok {
			r.report(BadAmount, v.span, v.told(), k.Expected, "write it like “nudge: "+k.Example+"”, with right or left, down or up, and at most 20 mm")
			return
		}
		into.Nudge = said(v, nudge)
	}}
}

// mostNudged is the furthest that a printer may be off before the sheet is another one, mm.
const mostNudged = 20

// parseNudge reads one or two lengths, each with where to. Each way may be told once.
func parseNudge(text string, amounts quantity.Reader) (kit.Nudge, bool) {
	var nudge kit.Nudge
	seen := map[bool]bool{}
	for part := range strings.SplitSeq(text, ", ") {
		part = strings.TrimSpace(part)
		space := strings.LastIndex(part, " ")
		if space < 0 {
			return kit.Nudge{}, false
		}
		length, way := part[:space], part[space+1:]
		amount, err := amounts.Amount(length)
		if err != nil || amount.Dimension != quantity.Length || amount.Bound != quantity.Exactly || amount.HasTolerance() ||
			quantity.Whole(mostNudged).Less(amount.Nominal.Abs()) {
			return kit.Nudge{}, false
		}
		far := amount.Nominal
		if way == "left" || way == "up" {
			far = far.Negated()
		}
		across := way == "right" || way == "left"
		if seen[across] || !across && way != "down" && way != "up" {
			return kit.Nudge{}, false
		}
		seen[across] = true
		if across {
			nudge.Right = far
		} else {
			nudge.Down = far
		}
	}
	return nudge, true
}
