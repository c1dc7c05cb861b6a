package adopt

import (
	"cmp"
	"regexp"
	"slices"
	"strings"

	"tallyfold/kit/load"
	"tallyfold/kit/quantity"
)

// A stepStart is where a step begins: a heading of level two, a numbered line, or a
// paragraph in which something happens.
type stepStart struct {
	at, end int // from here up to the next step
	// title is the place of a heading's words; both 0 where a heading has to be added.
	titleStart, titleEnd int
	why                  string
}

var (
	headingTwo = regexp.MustCompile(`(?m)^##[ \t]+([^\r\n]*?)[ \t]*\r?$`)
	numbered   = regexp.MustCompile(`(?mi)^[ ]{0,3}(?:step[ ]+)?[0-9]{1,2}[.):][ \t]+[^\s]`)
	paragraph  = regexp.MustCompile(`(?:^|\n[ \t]*\r?\n)[ \t\r\n]*[^\s]`)
)

// aNumberedLine is why a line with a number in front is a step, whatever happens in it.
const aNumberedLine = "a numbered line"

// longestTitle is how many characters the first line may have to be taken for a name.
const longestTitle = 60

// findTitle takes a short first line without an amount or a full stop for the name.
func (r *reading) findTitle() {
	if r.options.Name != "" {
		r.Title = r.options.Name
		return
	}
	text := strings.TrimLeft(strings.TrimPrefix(r.text, "\ufeff"), "\r\n\t ")
	line, rest, _ := strings.Cut(text, "\n")
	line = strings.TrimSpace(strings.TrimLeft(strings.TrimSpace(line), "#"))
	alone := strings.HasPrefix(text, "#") || strings.HasPrefix(strings.TrimLeft(rest, "\r"), "\n") || strings.HasPrefix(rest, "\r\n")
	if !hasLetter(line) || !alone || len(line) > longestTitle || strings.HasSuffix(line, ".") || strings.HasPrefix(text, "##") || numbered.MatchString(line) ||
		len(r.options.reader().Find(line)) > 0 {
		return
	}
	r.Title = line
}

// findSteps finds where steps may begin.
func (r *reading) findSteps() {
	for _, m := range headingTwo.FindAllStringSubmatchIndex(r.text, -1) {
		r.steps = append(r.steps, stepStart{at: m[0], titleStart: m[2], titleEnd: m[3], why: "a heading of level two"})
	}
	if len(r.steps) == 0 {
		for _, m := range numbered.FindAllStringIndex(r.text, -1) {
			r.steps = append(r.steps, stepStart{at: m[0], why: aNumberedLine})
		}
	}
	r.paragraphsAsSteps()
	for i := range r.steps {
		r.steps[i].end = len(r.text)
		if i+1 < len(r.steps) {
			r.steps[i].end = r.steps[i+1].at
		}
	}
}

// paragraphsAsSteps adds the paragraphs before the first heading or number, or all where
// there is neither.
func (r *reading) paragraphsAsSteps() {
	limit := len(r.text)
	if len(r.steps) > 0 {
		limit = r.steps[0].at
	}
	var before []stepStart
	for _, m := range paragraph.FindAllStringIndex(r.text, -1) {
		at := strings.LastIndexByte(r.text[:m[1]-1], '\n') + 1
		if at >= limit {
			break
		}
		if mark := strings.TrimPrefix(r.text[at:], "\ufeff"); at == 0 {
			at = len(r.text) - len(mark) // a heading goes behind the byte order mark
		}
		line, _, _ := strings.Cut(r.text[at:], "\n")
		if strings.HasPrefix(line, "#") {
			continue
		}
		before = append(before, stepStart{at: at, why: "a paragraph in which something happens"})
	}
	r.steps = append(before, r.steps...)
}

// proposeSteps proposes a step wherever something happens behind a start.
func (r *reading) proposeSteps() {
	taken := map[string]bool{}
	for _, t := range r.Things {
		taken[t.Key] = true
	}
	for _, t := range r.Tools {
		taken[t.Key] = true
	}
	number := int64(0)
	for _, s := range r.steps {
		isHeading := s.titleEnd > s.titleStart
		if !isHeading && s.why != aNumberedLine && !r.happens(s) {
			continue
		}
		number++
		title := "Step " + quantity.Whole(number).String()
		p := &Proposal{Kind: StepStart, Start: s.at, End: s.at, Why: s.why, Accepted: true}
		if isHeading {
			title = r.text[s.titleStart:s.titleEnd]
			p.Start, p.End = s.titleStart, s.titleEnd
			if strings.ContainsAny(title, "[]\\`<>#") {
				p.Meaning, p.Open, p.Accepted = "a step", "its heading holds a sign that cannot stand in the words of a link", false
				r.Proposals = append(r.Proposals, p)
				continue
			}
		}
		name := load.FreeKey(cmp.Or(load.KeyOf(title), "step-"+quantity.Whole(number).String()), func(key string) bool { return taken[key] })
		taken[name] = true
		p.Destination, p.Meaning = "step:"+name, "a step, “"+title+"”"
		r.vesselOf(p, s)
		r.Proposals = append(r.Proposals, p)
	}
}

// happens says whether anything was recognised in a step that a step needs.
func (r *reading) happens(s stepStart) bool {
	return slices.ContainsFunc(r.Proposals, func(p *Proposal) bool {
		return p.Kind != Packed && p.Kind != Tool && p.Kind != Vessel && s.at <= p.Start && p.Start < s.end
	})
}

// vesselOf gives a step its vessel where the leaflet names just one in it, or none in
// it and just one before.
func (r *reading) vesselOf(p *Proposal, s stepStart) {
	var here []string
	for _, other := range r.Proposals {
		if other.Kind == Vessel && s.at <= other.Start && other.Start < s.end && !slices.Contains(here, other.Names[0].Key) {
			here = append(here, other.Names[0].Key)
		}
	}
	switch len(here) {
	case 0:
		p.Why += "; no vessel is named in it"
	case 1:
		p.Alternatives = []Alternative{{p.Destination, p.Meaning + ", in no vessel"}}
		p.Destination += "?in=" + here[0]
		p.Meaning += ", worked in " + here[0]
		p.Why += "; the only vessel that is named in it"
	default:
		p.Why += "; several vessels are named in it: " + strings.Join(here, ", ")
		for _, key := range here {
			p.Alternatives = append(p.Alternatives, Alternative{p.Destination + "?in=" + key, p.Meaning + ", worked in " + key})
		}
	}
}
