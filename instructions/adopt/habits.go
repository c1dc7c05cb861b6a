package adopt

import (
	"strings"

	"tallyfold/kit"
	"tallyfold/kit/quantity"
)

// This file settles what a leaflet alone leaves open by what the kit says of its things.

// asTheKitHasThem gives amounts the link that goes with the thing, and times and
// temperatures the words that belong to them.
func (r *reading) asTheKitHasThem() {
	for _, p := range r.Proposals {
		switch p.Kind {
		case Amount:
			r.linkOfThing(p)
		case Time:
			r.timeInMethod(p)
		case Temperature:
			r.heatInMethod(p)
		}
	}
}

// linkOfThing: what is counted, cut or laid out joins no mixture; what stands in a jar is
// put there.
func (r *reading) linkOfThing(p *Proposal) {
	if len(p.Names) != 1 || p.Open != "" && p.Open != noHandling {
		return
	}
	key := p.Names[0].Key
	if r.before(p.Start, 1, "same") {
		p.Destination, p.Meaning, p.Alternatives = "same:"+key, "a figure told again, which moves nothing", []Alternative{{p.Destination, p.Meaning}}
		r.settleOn(p)
		return
	}
	link := linkFor(r.kit, key)
	if link == "" || p.Destination == "" && p.Open == "" {
		return
	}
	said := oneLine(r.text[p.Start:p.End])
	meanings := map[string]string{"take": "take " + said, "use": "use up " + said + ", which joins no mixture", "place": "put " + said + " into place"}
	p.Destination, p.Meaning, p.Alternatives = link+":"+key, meanings[link], nil
	for _, other := range []string{"take", "use", "place"} {
		if other != link && (other != "place" || p.Open == noHandling) {
			p.Alternatives = append(p.Alternatives, Alternative{other + ":" + key, meanings[other]})
		}
	}
	if vessel := r.vesselBehind(p); vessel != "" && link == "take" {
		p.Alternatives = append([]Alternative{{p.Destination, p.Meaning + ", into the vessel of the step"}}, p.Alternatives...)
		p.Destination += "?into=" + vessel
		p.Meaning += ", into " + r.kit.Called(vessel)
	}
	if into := r.containerBehind(r.wordAt(p.End) - 1); into != "" && link == "place" {
		p.Destination += "?into=" + into
		p.Meaning = "put " + said + " into " + r.kit.Called(into)
	}
	r.settleOn(p)
}

// settleOn takes up a proposal that was open, where its words are not those of another link.
func (r *reading) settleOn(p *Proposal) {
	p.Open, p.Accepted = "", false
	if r.overlaps(p) {
		p.refuse(ofAnotherLink)
		return
	}
	p.Accepted = true
}

// linkFor is the link that goes with a thing of the kit, "" where its words have to say.
func linkFor(k *kit.Kit, key string) string {
	c := k.Component(key)
	if c == nil {
		h := k.HouseholdItem(key)
		if h == nil || h.Density.Given() || !h.Amount.Given() {
			return "take"
		}
		return ofDimension(h.Amount.Value.Dimension)
	}
	switch {
	case c.Container != nil:
		return ""
	case c.Insert != nil:
		return "place"
	}
	return ofDimension(c.Packed.Value.Dimension)
}

func ofDimension(d quantity.Dimension) string {
	switch d {
	case quantity.Count, quantity.Length, quantity.Area:
		return "use"
	}
	return "take"
}

// findShares recognises "all of the wax" and "half of the lavender".
func (r *reading) findShares() {
	for i := 0; i+1 < len(r.words); i++ {
		first, of := r.words[i], r.words[i+1]
		if first.Text != "all" && first.Text != "half" || of.Text != "of" || !r.joins(first.End, of.Start) {
			continue
		}
		name, ok := r.nameFrom(i+2, len(r.text), of.End)
		if !ok {
			continue
		}
		thing := r.knownIn(&name)
		if _, _, ordered := r.orderBefore(first.Start); thing == nil || !ordered || r.beginsSentence(first.Start) {
			continue // "all of the water in the wool dries off" tells what comes of it
		}
		said := oneLine(r.text[first.Start:name[1]])
		r.propose(&Proposal{
			Kind: Amount, Start: first.Start, End: name[1], Names: []Name{{name[0], name[1], thing.Key}}, Destination: "take:" + thing.Key,
			Meaning: "take " + said, Why: "“" + first.Text + " of” and a name of the kit",
		})
	}
}

// thingCalled finds the thing of a name that stands at a byte, by the names of the kit.
func (r *reading) thingCalled(name string, at int) *Thing {
	if thing := r.thingNamed(name); thing != nil || r.kit == nil {
		return thing
	}
	i := r.wordAt(at)
	if i >= len(r.words) {
		return nil
	}
	if found, last, ok := r.callAt(i); ok && r.words[last].End == at+len(name) {
		return r.thingOf(found.key)
	}
	return nil
}

// knownIn finds a thing by a name, or by the longest beginning of it that is one. The name is
// cut to that.
func (r *reading) knownIn(name *[2]int) *Thing {
	text := r.text[name[0]:name[1]]
	for {
		if thing := r.thingCalled(text, name[0]); thing != nil {
			return thing
		}
		cut := strings.LastIndexAny(text, " \t\n\r")
		if cut < 0 {
			return nil
		}
		text = strings.TrimSpace(text[:cut])
		name[1] = name[0] + len(text)
	}
}
