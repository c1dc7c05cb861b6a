package proof

import (
	"bytes"
	"fmt"
	"runtime"
	"slices"
	"strings"
	"sync"

	"tallyfold/kit/diag"
	"tallyfold/kit/ledger"
	"tallyfold/kit/quantity"
	"tallyfold/kit/source"
)

// mostTried is how many remedies are tried, the gravest findings first: each judges the
// kit once more, and a kit with so much to mend is checked again anyway.
const mostTried = 80

// Try makes the changes of every remedy that names some, each in a copy of the texts,
// and judges the kit anew. A remedy says what came of it; those that mend their finding
// and bring no other come first, and what could not even be read again loses its
// changes. Findings keep their order. Of very many remedies only the first are tried.
func (p *Proof) Try() {
	type job struct{ finding, remedy int }
	var jobs []job
	for i := range p.Findings {
		for j, remedy := range p.Findings[i].Remedies {
			if len(remedy.Changes) > 0 && len(jobs) < mostTried {
				jobs = append(jobs, job{i, j})
			}
		}
	}
	// Remedies are slices that lists of findings may share: each finding gets its own.
	for i := range p.Findings {
		p.Findings[i].Remedies = slices.Clone(p.Findings[i].Remedies)
	}
	scores := make([]int, len(jobs))
	var workers sync.WaitGroup
	next := make(chan int)
	for range runtime.GOMAXPROCS(0) {
		workers.Go(func() {
			for n := range next {
				finding := &p.Findings[jobs[n].finding]
				scores[n] = p.try(*finding, &finding.Remedies[jobs[n].remedy])
			}
		})
	}
	for n := range jobs {
		next <- n
	}
	close(next)
	workers.Wait()
	for i := range p.Findings {
		rank := map[string]int{}
		for n, job := range jobs {
			if job.finding == i {
				rank[p.Findings[i].Remedies[job.remedy].Do] = scores[n]
			}
		}
		slices.SortStableFunc(p.Findings[i].Remedies, func(a, b diag.Remedy) int { return rankOf(rank, a) - rankOf(rank, b) })
	}
}

// How good a remedy turned out; the lesser the better.
const (
	mends   = iota // its finding is gone and none is new
	untried        // names no exact change
	trades         // its finding is gone, and another has come
	fails          // its finding stays
)

func rankOf(rank map[string]int, r diag.Remedy) int {
	if score, ok := rank[r.Do]; ok {
		return score
	}
	return untried
}

func (p *Proof) try(finding diag.Finding, remedy *diag.Remedy) int {
	changed, err := p.with(remedy.Changes)
	if err != nil || changed.Kit == nil {
		remedy.Changes = nil
		return untried
	}
	stays := changed.stillFinds(finding, p)
	fresh := p.newIn(changed)
	told := p.beforeAndAfter(changed, finding)
	before, after := toFix(p.Findings), toFix(changed.Findings)
	switch was, is := inTranslations(p.Findings), inTranslations(changed.Findings); {
	case isOnTranslations(finding):
		before, after = before+was, after+is
	case is > was:
		told = join(told, "the translations must follow")
	}
	counts := countsOf(before, after)
	switch {
	case stays:
		remedy.Tried = join(told, counts, "it does not mend this by itself")
		return fails
	case len(fresh) > 0:
		remedy.Tried = join(told, counts, "but then "+fresh[0].Rule+": "+fresh[0].Found)
		return trades
	}
	if lesser := changed.lesser(finding); lesser != "" {
		remedy.Tried = join(told, counts, "what stays weighs less: "+lesser)
		return trades
	}
	remedy.Tried = join(told, counts, "nothing new is found")
	return mends
}

// countsOf tells how many findings were and are to be fixed; nothing where there were none.
func countsOf(before, after int) string {
	if before == 0 && after == 0 {
		return ""
	}
	return fmt.Sprintf("%d → %d to fix", before, after)
}

func join(parts ...string) string {
	return strings.Join(slices.DeleteFunc(parts, func(s string) bool { return s == "" }), "; ")
}

// toFix counts what must or should be fixed, translations aside: a change of the method
// is right or wrong before it is translated.
func toFix(list diag.List) int {
	return list.Count(diag.MustFix) + list.Count(diag.ShouldFix) - inTranslations(list)
}

// inTranslations counts what must or should be fixed in translations.
func inTranslations(list diag.List) int {
	n := 0
	for _, f := range list {
		if f.Severity <= diag.ShouldFix && isOnTranslations(f) {
			n++
		}
	}
	return n
}

func isOnTranslations(f diag.Finding) bool { return strings.HasPrefix(f.Rule, "translation-") }

// stillFinds says whether the finding is there still. Places have moved, so findings are
// known by rule, by what they are about, and by weight: a lesser one has taken its place.
func (p *Proof) stillFinds(f diag.Finding, before *Proof) bool {
	return p.like(f) >= before.like(f)
}

// lesser is what a finding of the same rule about the same thing says that weighs less and
// should still be fixed, "" for none.
func (p *Proof) lesser(f diag.Finding) string {
	for _, other := range p.Findings {
		if other.Rule == f.Rule && other.About == f.About && other.Severity > f.Severity && other.Severity <= diag.ShouldFix {
			return other.Found
		}
	}
	return ""
}

// like counts the findings of a rule about a thing that weigh at least as much.
func (p *Proof) like(f diag.Finding) int {
	n := 0
	for _, other := range p.Findings {
		if other.Rule == f.Rule && other.About == f.About && other.Severity <= f.Severity {
			n++
		}
	}
	return n
}

// newIn lists what must or should be fixed in the changed kit and had no like before.
func (p *Proof) newIn(changed *Proof) diag.List {
	var fresh diag.List
	for _, f := range changed.Findings {
		if f.Severity <= diag.ShouldFix && !isOnTranslations(f) && changed.like(f) > p.like(f) {
			fresh = append(fresh, f)
		}
	}
	return fresh
}

// beforeAndAfter tells the figure that the finding is about in both kits: what is left
// of a pack, what stays in a vessel, what is free in a container.
func (p *Proof) beforeAndAfter(changed *Proof, f diag.Finding) string {
	what, before := p.figureOf(f.About)
	_, after := changed.figureOf(f.About)
	if !before.Known() || !after.Known() || before.Value().Equal(after.Value()) {
		return ""
	}
	return what + " " + quantity.Show(before.Value(), before.Dimension) + " → " + quantity.Show(after.Value(), after.Dimension)
}

func (p *Proof) figureOf(about string) (what string, f *ledger.Figure) {
	for _, filling := range p.Ledger.Fillings {
		if filling.Container.ID == about {
			return "free in each", filling.Free()
		}
	}
	if b := p.Ledger.Balance(about); b != nil {
		return "left", b.Left
	}
	for _, r := range p.Ledger.Remainders {
		if r.Vessel == about {
			return "stays behind", r.Mass()
		}
	}
	if p.Kit.Tool(about) != nil {
		return "stays behind", ledger.Fixed(quantity.Mass, "", quantity.Number{})
	}
	return "", nil
}

// with proves a copy of the folder in which some places are changed. Nothing is
// written to the folder itself.
func (p *Proof) with(changes []diag.Change) (*Proof, error) {
	changed := overlay{under: p.folder, over: map[string][]byte{}}
	for _, file := range filesOf(changes) {
		text, err := Changed(file, changes)
		if err != nil {
			return nil, err
		}
		changed.over[file.Name] = text
	}
	return Of(changed, p.name, p.today), nil
}

func filesOf(changes []diag.Change) []*source.File {
	var files []*source.File
	for _, change := range changes {
		if !slices.Contains(files, change.Where.File) {
			files = append(files, change.Where.File)
		}
	}
	return files
}

// Changed gives the text of a file with all changes made that are in it; every other
// byte stays. Changes that overlap are an error.
func Changed(file *source.File, changes []diag.Change) ([]byte, error) {
	var here []diag.Change
	for _, change := range changes {
		if change.Where.File == file {
			here = append(here, change)
		}
	}
	slices.SortStableFunc(here, func(a, b diag.Change) int { return a.Where.Start - b.Where.Start })
	var text bytes.Buffer
	at := 0
	for _, change := range here {
		if change.Where.Start < at || change.Where.End > len(file.Text) {
			return nil, fmt.Errorf("two changes of %s are of the same words", file.Name)
		}
		text.Write(file.Text[at:change.Where.Start])
		text.WriteString(change.New)
		at = change.Where.End
	}
	text.Write(file.Text[at:])
	return text.Bytes(), nil
}
