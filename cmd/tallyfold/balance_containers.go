package main

import "tallyfold/kit/ledger"

// containers prints what each filled container holds, how full it is and how high.
func (b *balancePrinter) containers() {
	if len(b.ledger.Fillings) == 0 {
		return
	}
	b.heading("CONTAINERS")
	for _, f := range b.ledger.Fillings {
		b.line("%s", f.Numbered())
		if f.Empty() {
			b.line("  nothing is filled into it")
			continue
		}
		b.contents("  each", &f.Contents)
		b.line("  volume\t%s%s", f.Volume().Sum(), addedUp(f))
		b.line("  room\t%s", f.Room().Sum())
		b.line("  free\t%s", f.Free().Sum())
		b.heights(f)
		b.table.Flush()
	}
}

// heights are told where the maker gave an inside shape, what it sets and dries to
// where the maker gave the figures for that.
func (b *balancePrinter) heights(f *ledger.Filling) {
	if height := f.Height(); height.Known() {
		b.line("  height\t%s above the base%s", within(height), fromRim(f))
	}
	if set := f.SetVolume(); set.Known() {
		b.line("  when set\t%s: draws together by %s%s", set.Show(), f.Shrinks().Show(), setHeight(f))
	}
	if dried := f.Dried(); dried != f.Mass() && dried.Known() && f.Mixture != nil && f.Mixture.DriesBy.Given() {
		b.line("  when dry\t%s", dried.Sum())
	}
}

func fromRim(f *ledger.Filling) string {
	if rim := f.FromRim(); rim.Known() {
		return ", " + rim.Show() + " below the rim"
	}
	return ""
}

// setHeight is a model, and says so.
func setHeight(f *ledger.Filling) string {
	if height := f.SetHeight(); height.Known() {
		return ", to " + height.Show() + " above the base if it sinks evenly (a model)"
	}
	return ""
}

// addedUp names the assumption behind a volume that was not measured.
func addedUp(f *ledger.Filling) string {
	if f.Added() && f.Volume().Known() && len(f.Parts()) > 1 {
		return "  (volumes added up: a model)"
	}
	return ""
}
