package quantity

import "strings"

// clock tells a time of a minute or more in days, hours, minutes and seconds. Whole
// seconds are told exactly. Others, which come from physics, are rounded to a second
// below ten minutes, to a minute below two days, and to an hour above.
func (s *style) clock(n Number) string {
	const minute, hour, twoDays = 60, 3600, 2 * 24 * 3600
	seconds := n.roundTo(s.clockStep(n), s.how)
	left := seconds.Abs().Int()
	var parts []string
	add := func(count int64, unit Unit) {
		if count > 0 {
			parts = append(parts, s.with(Whole(count).String(), unit))
		}
	}
	if left >= twoDays {
		add(left/(twoDays/2), mustUnit("day"))
		left %= twoDays / 2
	}
	add(left/hour, mustUnit("h"))
	add(left%hour/minute, mustUnit("min"))
	add(left%minute, mustUnit("s"))
	text := strings.Join(parts, " ")
	if text == "" {
		return s.with("0", mustUnit("min"))
	}
	if seconds.Sign() < 0 {
		return "−" + text
	}
	return text
}

// clockStep is what a time is rounded to.
func (s *style) clockStep(n Number) Number {
	second, minute, hour := Whole(1), Whole(60), Whole(3600)
	size := n.Abs()
	switch {
	case s.tolerance.Sign() > 0:
		switch {
		case s.tolerance.Less(minute):
			return second
		case s.tolerance.Less(hour):
			return minute
		case s.tolerance.Less(day) || size.Less(day.Times(Whole(2))):
			return hour
		}
		return day
	case size.IsWhole() || size.Less(Whole(600)):
		return second
	case size.Less(day.Times(Whole(2))):
		return minute
	}
	return hour
}
