package adopt

import (
	"cmp"
	"errors"
	"regexp"
	"slices"
	"strings"

	"tallyfold/instructions"
	"tallyfold/kit"
	"tallyfold/kit/load"
	"tallyfold/kit/source"
)

// A Could is a link that words of a method could have and have not. Start and End are bytes
// of the method.
type Could struct {
	Start, End   int
	Kind         Kind
	Destination  string
	Meaning, Why string
	Alternatives []Alternative
}

// A Within is what could be linked in a method, and what a reader of it would ask.
type Within struct {
	Could []Could
	// Questions have bytes of the method; none is about the whole.
	Questions []Question
}

// Unlinked recognises what is not linked yet in the method of a kit, over the names of the
// kit: it is what Read does for a leaflet, while a maker writes. What is in a link already,
// in a caution or in a note is left alone. Each link that is proposed is read as it is meant.
// The error says why nothing is recognised: English alone is read so far.
func Unlinked(method *source.File, k *kit.Kit) (Within, error) {
	if written := cmp.Or(k.Language.Value, language); !strings.HasPrefix(written, language) {
		return Within{}, errors.New("links are proposed in English texts only; choose the words, and say what they are")
	}
	if why := instructions.Refused(method); why != "" {
		return Within{}, errors.New(method.Name + " cannot be read: " + why)
	}
	bare := withoutLinks(method.Text)
	a := &Adoption{File: source.NewFile(method.Name, bare.text), text: string(bare.text), options: Options{Kitchen: k.Kitchen.Value, Told: true, measures: load.Amounts(k).Measures}}
	r := newReading(a)
	r.hasList, r.kit, r.bare, r.calls = true, k, bare, indexNames(k)
	r.know(k)
	r.readWithin()
	var found Within
	end := 0
	for _, p := range a.Proposals {
		if one, ok := bare.could(p); ok && one.Start >= end && !bare.isLeftAlone(p.Start, p.End) && r.isInAStep(p.Start) {
			found.Could = append(found.Could, one)
			end = one.End
		}
	}
	found.Could = readAsMeant(method, k, found.Could)
	for i, p := range a.Proposals { // what could not be linked is no question where it is linked by hand
		a.Proposals[i].Accepted = p.Accepted && p.Destination != ""
	}
	a.askProposals()
	a.askWords(r)
	for _, q := range a.Questions {
		if !bare.isLeftAlone(q.Start, q.End) && !found.has(bare.at(q.Start), bare.at(q.End)) && !bare.isLinked(q.Start, q.End) && !r.isRepose(q) && r.isInAStep(q.Start) && q.Asks != noHandling && q.Asks != ofAnotherLink {
			q.Start, q.End = bare.at(q.Start), bare.at(q.End-1)+1
			found.Questions = append(found.Questions, q)
		}
	}
	return found, nil
}

// has says whether a link is proposed at a place: it answers what could be asked there.
func (w Within) has(start, end int) bool {
	return slices.ContainsFunc(w.Could, func(one Could) bool { return one.Kind != StepStart && start < one.End && one.Start < end })
}

// isInAStep: before the heading of a step, at the head of the method or of a part of it, nothing
// is done. A container that is only spoken of there needs no link either (noHandling).
func (r *reading) isInAStep(at int) bool {
	return len(r.steps) == 0 || slices.ContainsFunc(r.steps, func(s stepStart) bool { return s.at <= at && at < s.end })
}

// isRepose: the rest of "leave it to rest" is nothing that is left over.
func (r *reading) isRepose(q Question) bool {
	return strings.EqualFold(q.Words, "rest") && !r.before(q.Start, 1, "the")
}

// know gives the reading the names of the kit.
func (r *reading) know(k *kit.Kit) {
	add := func(key string, name string, also []kit.Said[string]) {
		t := &Thing{Key: key, Name: name, Listed: true, Packed: "known"}
		for _, other := range also {
			t.Also = append(t.Also, other.Value)
		}
		t.Also = append(t.Also, strings.ReplaceAll(key, "-", " "))
		r.Things = append(r.Things, t)
	}
	for _, c := range k.Components {
		add(c.ID, c.String(), c.AlsoCalled)
	}
	for _, h := range k.Household {
		add(h.ID, k.Called(h.ID), h.AlsoCalled)
	}
	for _, run := range k.Runs {
		for _, with := range run.With {
			if r.thingOf(with.Role.Value) == nil {
				add(with.Role.Value, with.Role.Value, nil)
			}
		}
	}
	for _, t := range k.Tools {
		vessel := t.Holds.Given() || t.Residue.Given()
		for _, name := range append([]string{k.Called(t.ID), t.ID}, saidTexts(t.AlsoCalled)...) {
			r.Tools = append(r.Tools, &ToolFound{Key: t.ID, Name: name, Vessel: vessel})
		}
	}
}

func saidTexts(all []kit.Said[string]) []string {
	var texts []string
	for _, one := range all {
		texts = append(texts, one.Value)
	}
	return texts
}

// headingOne begins a part of the method.
var headingOne = regexp.MustCompile(`(?m)^#[ \t]`)

// readWithin recognises what a method may have unlinked. Steps are proposed at headings
// alone: a maker who writes a method has them.
func (r *reading) readWithin() {
	known := len(r.Things)
	for _, m := range headingTwo.FindAllStringSubmatchIndex(r.text, -1) {
		r.steps = append(r.steps, stepStart{at: m[0], end: len(r.text), titleStart: m[2], titleEnd: m[3], why: "a heading of level two"})
	}
	for i := range r.steps {
		s := &r.steps[i]
		if i+1 < len(r.steps) {
			s.end = r.steps[i+1].at
		}
		if part := headingOne.FindStringIndex(r.text[s.at:s.end]); part != nil {
			s.end = s.at + part[0]
		}
	}
	r.findFigures()
	r.findCallings()
	r.findAgains()
	r.findCleaned()
	r.findLeft()
	r.findMoved()
	r.findAfter()
	r.findFills()
	r.findAmounts()
	r.findCounts()
	r.findTimes()
	r.findCues()
	r.findShares()
	r.findRests()
	r.asTheKitHasThem()
	r.findNamed()
	r.proposeSteps()
	r.sortProposals()
	unknown := map[string]string{}
	for _, t := range r.Things[known:] {
		unknown[t.Key] = t.Name
	}
	for _, p := range r.Proposals {
		for _, name := range p.Names {
			if called := unknown[name.Key]; called != "" {
				p.Destination, p.Alternatives = "", nil
				p.refuse("what is “" + called + "”? Nothing in the kit has this name: add it on the page “The box”, or write the name it has there")
			}
		}
	}
}

// could gives a proposal as a link of the method; ok is false where there is none to make.
func (b *bared) could(p *Proposal) (Could, bool) {
	if p.Destination == "" || p.Open != "" || p.End <= p.Start || p.Kind == Packed || b.isLinked(p.Start, p.End) {
		return Could{}, false
	}
	return Could{b.at(p.Start), b.at(p.End-1) + 1, p.Kind, p.Destination, p.Meaning, p.Why, p.Alternatives}, true
}
