package rules

import (
	"strings"

	"tallyfold/kit"
	"tallyfold/kit/diag"
	"tallyfold/kit/ledger"
	"tallyfold/kit/quantity"
	"tallyfold/kit/source"
)

// Remedies that are exact say what they change in the files, so that the change can be
// tried, shown and made.

// rewrite puts a text in the place of another; nothing where there is no such place.
func rewrite(k *kit.Kit, at source.Span, text string) []diag.Change {
	if !at.Known() || text == "" {
		return nil
	}
	return []diag.Change{{Where: at, New: asWritten(k, text)}}
}

// retell tells another amount in a link: n in base units of its first amount, rounded
// up or down to what can be measured. Further tellings of it change in proportion.
func retell(k *kit.Kit, o *kit.Operation, n quantity.Number, upwards bool) []diag.Change {
	amounts, spans := o.Phrase.Amounts, o.Phrase.AmountSpans
	if len(amounts) == 0 || len(spans) != len(amounts) || amounts[0].Nominal.Sign() <= 0 {
		return nil
	}
	factor := measurable(n, amounts[0], upwards).Over(amounts[0].Nominal)
	changes := rewrite(k, spans[0], measured(n, amounts[0], upwards))
	for i, amount := range amounts[1:] {
		changes = append(changes, rewrite(k, spans[i+1], closest(amount.Nominal.Times(factor), amount))...)
	}
	return changes
}

// scaled takes so many times as much of a thing in a vessel: in the one link that takes it
// there, or, where that takes the whole pack, by another pack.
func scaled(s Subject, run *kit.Run, vessel, thing string, factor quantity.Number, upwards bool) diag.Remedy {
	name := s.Kit.Called(thing)
	general := diag.Remedy{Do: "take " + show(factor, quantity.Count) + " times that amount of " + name}
	entry := onlyTakenInto(s.Ledger, run, vessel, thing)
	if entry == nil {
		return general
	}
	c := s.Kit.Component(thing)
	told, ok := entry.Operation.Phrase.Amount()
	switch {
	case c != nil && !c.Lots.Told() && isWholePack(entry) && entry.Amount.Value().Equal(c.Packed.Value.Nominal):
		fits := measured(c.Packed.Value.Nominal.Times(factor), c.Packed.Value, upwards)
		return diag.Remedy{
			Do:      "pack " + fits + " of " + name + " instead of " + c.Packed.Value.Written + ", as all of it goes in",
			Changes: repack(s.Kit, c, fits),
		}
	case ok && entry.Operation.Phrase.Portion == kit.Exactly && entry.Operation.Phrase.Lots.IsZero() && told.Dimension != quantity.Share:
		n := told.Nominal.Times(factor)
		return diag.Remedy{
			Do:      "take " + measured(n, told, upwards) + " of " + name + " instead of " + told.Written + " in " + inStep(entry.Step),
			Changes: retell(s.Kit, entry.Operation, n, upwards),
		}
	}
	return general
}

// onlyTakenInto is the one entry of a run that took a thing into a vessel; nil where
// there are several, or none.
func onlyTakenInto(l *ledger.Ledger, run *kit.Run, vessel, thing string) *ledger.Entry {
	var only *ledger.Entry
	for i, e := range l.Entries {
		if e.Run != run || e.Thing != thing || e.To != vessel || e.Move != ledger.Taken {
			continue
		}
		if only != nil {
			return nil
		}
		only = &l.Entries[i]
	}
	return only
}

// repack packs so much instead; the tolerance that the maker wrote stays.
func repack(k *kit.Kit, c *kit.Component, amount string) []diag.Change {
	written := c.Packed.Span.Text()
	if strings.ContainsAny(written, "\"'\n") {
		return nil
	}
	if at := strings.Index(written, "±"); at >= 0 && !strings.Contains(amount, "±") {
		return rewrite(k, c.Packed.Span, asWritten(k, amount)+" "+written[at:])
	}
	return rewrite(k, c.Packed.Span, amount)
}

// withSpare writes the spare of a component: over the one that is there, or behind its
// packed amount, in brackets or on a line of its own as that stands.
func withSpare(k *kit.Kit, c *kit.Component, spare string) []diag.Change {
	if c.Spare.Given() {
		return rewrite(k, c.Spare.Span, spare)
	}
	return addKey(c.Packed.Span, "packed", "spare: "+asWritten(k, spare))
}

// alsoCalled writes another name of a thing behind its name; nothing where it has
// other names already, which may be a list.
func alsoCalled(name kit.Name, other string) []diag.Change {
	if len(name.AlsoCalled) > 0 {
		return nil
	}
	return addKey(name.Called.Span, "name", "also called: "+other)
}

// addKey puts a further key with its value behind the value of another, in brackets or
// on a line of its own as that stands.
func addKey(behind source.Span, key, text string) []diag.Change {
	if !behind.Known() || strings.ContainsAny(behind.Text(), "\"'\n") {
		return nil
	}
	line := behind.File.Line(behind.Position().Line)
	before := string(behind.File.Text[behind.File.LineStart(behind.Position().Line):behind.Start])
	switch {
	case strings.Contains(before, "{"):
		text = ", " + text
	case strings.TrimSpace(before) != key+":":
		return nil
	default:
		text = "\n" + line[:strings.Index(line, key+":")] + text
	}
	return []diag.Change{{Where: behind.File.Span(behind.End, behind.End), New: text}}
}

// asWritten turns a figure told here into one as the kit writes it.
func asWritten(k *kit.Kit, text string) string {
	if !k.DecimalComma() {
		return text
	}
	return strings.Map(func(r rune) rune {
		if r == '.' {
			return ','
		}
		return r
	}, text)
}
