package load

import (
	"regexp"

	"tallyfold/kit"
)

// marketName is how a market is written: capitals, so that "us" and "Us" are one.
var marketName = regexp.MustCompile(`^[A-Z][A-Z-]+$`)

// marketsOf reads where the kit is sold. A market that the program has no pack for is no
// slip: a rule says that nothing was looked at there.
func marketsOf() field[kit.Kit] {
	k := Key{Name: "markets", Expected: "where the kit is sold, in capitals: US, EU, UK or another such as CA; one or a list", Example: "[US, EU, UK]", Form: TextList}
	return field[kit.Kit]{k, func(r *reader, into *kit.Kit, v value) {
		for _, one := range oneOrMore(v) {
			if !one.isText() || !marketName.MatchString(one.text()) {
				r.wrong(one, k)
				continue
			}
			into.Markets = append(into.Markets, said(one, one.text()))
		}
	}}
}
