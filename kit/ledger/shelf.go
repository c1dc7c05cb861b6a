package ledger

import (
	"slices"

	"tallyfold/kit"
	"tallyfold/kit/quantity"
)

// A shelf is all containers of one kind in the box, taken down in groups: the
// containers that one run fills alike.
type shelf struct {
	container *kit.Component
	groups    []*group
	taken     int // containers taken down in all
	// allotted to this run, and how many of them are taken down
	allotted, takenInRun int
}

// A group is containers filled alike; its contents are of one of them.
type group struct {
	Contents
	run          *kit.Run
	step         *kit.Step
	operation    *kit.Operation
	first, count int
	inserts      []PlacedInsert
	filled       bool
}

func (s *shelf) startRun(allotted int) { s.allotted, s.takenInRun = allotted, 0 }

// inRun is how many containers this run works with: those taken down, else its part.
func (s *shelf) inRun(run *kit.Run) int {
	if s.takenInRun > 0 {
		return s.takenInRun
	}
	return s.allotted
}

// allotment is the part of the containers that one run gets: all of them shared
// equally over the runs that fill or use them.
func (f *follower) allotment(container *kit.Component) int {
	cavities := max(1, container.Container.Cavities.Value)
	packed := int(container.Packed.Value.Nominal.Int()) * cavities
	if container.Container.UsedAgain.Value {
		return packed
	}
	passes := 0
	for _, run := range f.kit.Passes() {
		if f.handles(run, container.ID) {
			passes++
		}
	}
	if passes == 0 {
		return packed
	}
	return packed / passes
}

// handles says whether a run puts anything into containers of this kind.
func (f *follower) handles(run *kit.Run, container string) bool {
	for _, part := range f.kit.Method.Parts {
		if !run.Follows(part) {
			continue
		}
		for _, step := range part.Steps {
			for _, o := range step.Operations {
				if !o.Aside && bound(run, containerOf(o, step)) == container {
					return true
				}
			}
		}
	}
	return false
}

// containerOf gives the key that an operation fills or puts into.
func containerOf(o *kit.Operation, step *kit.Step) string {
	switch o.Kind {
	case kit.Fill:
		return o.Target
	case kit.Take, kit.Place, kit.Move:
		if o.Into != "" {
			return o.Into
		}
		if o.In != "" {
			return o.In
		}
		return step.Vessel
	}
	return ""
}

func bound(run *kit.Run, key string) string {
	if id, ok := run.Component(key); ok {
		return id
	}
	return key
}

// groupFor gives the containers an operation works on: first those of this run
// not filled yet, then untouched ones, then those already filled (a second layer).
func (f *follower) groupFor(s *shelf, count int, fills bool) *group {
	if !fills {
		if g := s.latest(f.run, func(*group) bool { return true }); g != nil && (count == 0 || g.count == count) {
			return g
		}
	}
	if g := s.latest(f.run, func(g *group) bool { return !g.filled && g.count >= count }); g != nil {
		return s.split(g, count)
	}
	if free := s.allotted - s.takenInRun; free > 0 && free >= count || s.container.Container.UsedAgain.Value {
		return f.takeDown(s, count, free)
	}
	if g := s.latest(f.run, func(g *group) bool { return g.count >= count }); g != nil {
		return s.split(g, count)
	}
	begun := s.latest(f.run, func(g *group) bool { return !g.filled })
	missing := max(1, count)
	if begun != nil {
		missing = count - begun.count // those that an insert was placed into are of the count
	}
	f.snag(NotEnoughContainers, s.container.ID,
		Fixed(quantity.Count, "wanted", quantity.Whole(int64(s.takenInRun+missing))),
		Fixed(quantity.Count, "there", quantity.Whole(int64(s.allotted))), "")
	added := f.takeDown(s, missing, 0)
	if begun == nil {
		return added
	}
	s.groups = s.groups[:len(s.groups)-1]
	begun.count += added.count
	return begun
}

// takeDown takes untouched containers from the shelf; a count of 0 takes those free.
func (f *follower) takeDown(s *shelf, count, free int) *group {
	if count == 0 {
		count = max(1, free)
		if filled := f.filledInRun(s); filled > s.takenInRun {
			count = min(count, filled-s.takenInRun) // "one in each" means those that the run goes on to fill
		}
	}
	g := &group{
		Contents: Contents{Vessel: s.container.ID}, run: f.run, first: s.taken + 1, count: count,
	}
	if s.container.Container.UsedAgain.Value {
		g.first = 1
	} else {
		s.taken += count
		s.takenInRun += count
	}
	s.groups = append(s.groups, g)
	m := f.materials[s.container.ID]
	if !s.container.Container.UsedAgain.Value || len(m.uses) == 0 {
		f.takeFromPack(Taken, m, "", Fixed(quantity.Count, m.name+", "+f.here(), s.pieces(count)))
	}
	return g
}

// filledInRun is how many containers the fills of this run speak of in all; 0 where
// one of them tells no number.
func (f *follower) filledInRun(s *shelf) int {
	total := 0
	for _, part := range f.kit.Method.Parts {
		if !f.run.Follows(part) {
			continue
		}
		for _, step := range part.Steps {
			for _, o := range step.Operations {
				if o.Kind != kit.Fill || o.Aside || bound(f.run, o.Target) != s.container.ID {
					continue
				}
				told := max(o.Phrase.EachCount, o.Phrase.Count)
				if told == 0 {
					return 0
				}
				total += told
			}
		}
	}
	return total
}

// pieces is how many containers hold so many cavities.
func (s *shelf) pieces(count int) quantity.Number {
	cavities := max(1, s.container.Container.Cavities.Value)
	return quantity.Whole(int64((count + cavities - 1) / cavities))
}

// latest finds the last group of a run that fits.
func (s *shelf) latest(run *kit.Run, fits func(*group) bool) *group {
	for _, g := range slices.Backward(s.groups) {
		if g.run == run && fits(g) {
			return g
		}
	}
	return nil
}

// split parts a group in two where fewer containers than it has are filled.
func (s *shelf) split(g *group, count int) *group {
	if count == 0 || count == g.count {
		return g
	}
	first := *g
	first.Contents = g.Contents.copy()
	first.inserts = slices.Clone(g.inserts)
	first.count = count
	g.first += count
	g.count -= count
	s.groups = append(s.groups, &first)
	return &first
}

// fillings turns the groups of all shelves into what the ledger tells.
func (f *follower) fillings() []*Filling {
	var all []*Filling
	for _, c := range f.kit.Components {
		s := f.shelves[c.ID]
		if s == nil {
			continue
		}
		slices.SortStableFunc(s.groups, func(a, b *group) int { return a.first - b.first })
		for _, g := range s.groups {
			all = append(all, &Filling{
				Contents: g.Contents, Run: g.run, Step: g.step, Operation: g.operation,
				Container: c, Count: g.count, First: g.first, Inserts: g.inserts,
			})
		}
	}
	return all
}
