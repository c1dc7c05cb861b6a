package render

import (
	"strconv"
	"strings"

	"tallyfold/kit"
	"tallyfold/kit/ledger"
	"tallyfold/kit/picture"
	"tallyfold/kit/quantity"
	"tallyfold/render/figure"
)

// coverView is what the cover tells. Strings are Markdown.
type coverView struct {
	Name, About, Picture string
	Facts                []fact
	MustHave             []string
	Imprint              string
}

// A fact is a word and what it says ("Age", "16 and over").
type fact struct{ Name, Says string }

func coverValues(a *assembly) any {
	return coverView{
		Name: escape(a.kit.Name.Value), About: escape(a.kit.About.Value), Picture: a.coverPicture(),
		Facts: a.coverFacts(), MustHave: a.mustHave(), Imprint: a.imprint(),
	}
}

func (a *assembly) coverFacts() []fact {
	var facts []fact
	add := func(name, says string) {
		if says != "" {
			facts = append(facts, fact{a.say(name), says})
		}
	}
	add("makes", escape(a.kit.Makes.Value.Written))
	add("time", a.claimedTime())
	add("skill", a.skill())
	if a.kit.Audience.Age.Given() {
		add("age", a.words.Count("age-and-over", a.kit.Audience.Age.Value))
	}
	return facts
}

// skill is what the maker asks of the customer, in the words of the booklet.
func (a *assembly) skill() string {
	switch a.kit.Audience.Skill.Value {
	case "beginner":
		return a.say("skill-beginner")
	case "some practice":
		return a.say("skill-some-practice")
	case "experienced":
		return a.say("skill-experienced")
	}
	return ""
}

func (a *assembly) claimedTime() string {
	var parts []string
	if a.kit.Time.HandsOn.Given() {
		parts = append(parts, a.say("hands-on", "time", escape(a.kit.Time.HandsOn.Value.Written)))
	}
	if a.kit.Time.Total.Given() {
		parts = append(parts, a.say("in-all", "time", escape(a.kit.Time.Total.Value.Written)))
	}
	return strings.Join(parts, ", ")
}

// mustHave lists the tools without which the kit can't be made and which aren't
// in the box.
func (a *assembly) mustHave() []string {
	var list []string
	for _, tool := range a.kit.Tools {
		if tool.Essential.Value && tool.From.Value == kit.FromCustomer {
			list = append(list, a.toolWords(tool, a.small(tool.String())))
		}
	}
	return list
}

// toolWords names a tool with what it must be able to do, and what may stand in
// for it.
func (a *assembly) toolWords(tool *kit.Tool, name string) string {
	words := escape(name)
	if tool.Holds.Given() {
		words += ", " + a.say("holds", "amount", escape(tool.Holds.Value.Written))
	}
	if tool.ReadsTo.Given() {
		words += ", " + a.say("reads-to", "amount", escape(tool.ReadsTo.Value.Written))
	}
	for _, other := range a.kit.Tools {
		for _, id := range other.StandsInFor {
			if id.Value == tool.ID {
				words += ", " + a.say("or-instead", "tool", escape(a.small(other.String())))
			}
		}
	}
	return words
}

func (a *assembly) imprint() string {
	parts := a.nameAndEdition(escape)[1:]
	if a.kit.Maker.Value != "" {
		parts = append([]string{escape(a.kit.Maker.Value)}, parts...)
	}
	return strings.Join(parts, " · ")
}

// coverPicture is the maker's own (pictures/cover.*), else a drawing of what
// the kit makes: its containers where their shape is known, else their number.
func (a *assembly) coverPicture() string {
	for _, own := range a.kit.Pictures {
		if name, _, _ := strings.Cut(own.Name, "."); name != "cover" {
			continue
		}
		if shown := a.pictureOf(own.Name, escape(a.kit.Name.Value), "", picture.OnCover); shown != "" {
			return shown
		}
	}
	drawn, ok := a.piecesFigure()
	if !ok {
		drawn, ok = a.countFigure()
	}
	if !ok {
		return ""
	}
	return a.draw("cover", drawn)
}

// draw puts a figure into the booklet and gives the Markdown that shows it.
func (a *assembly) draw(name string, drawn figure.Figure) string {
	return a.drawWithCaption(name, drawn, "")
}

// drawWithCaption draws a figure with words under it.
func (a *assembly) drawWithCaption(name string, drawn figure.Figure, caption string) string {
	a.booklet.Figures[name] = drawn
	if caption != "" {
		caption = ` "` + strings.ReplaceAll(escape(caption), `"`, `\"`) + `"`
	}
	return "![" + escape(drawn.Title+": "+drawn.Text) + "](figure:" + name + caption + ")"
}

// piecesFigure draws the filled containers, those of one run alike.
func (a *assembly) piecesFigure() (figure.Figure, bool) {
	pieces := figure.Pieces{Title: a.kit.Makes.Value.Written}
	for _, f := range a.ledger.Fillings {
		shape, ok := drawnShape(f)
		if !ok {
			return figure.Figure{}, false
		}
		if pieces.Level == 0 {
			pieces.Level, pieces.Base, pieces.Rim, pieces.Tall = shape.level, shape.base, shape.rim, shape.tall
		}
		pieces.Add(f.Run.Name.Value, f.Count)
	}
	for i, group := range pieces.Groups {
		pieces.Groups[i].Says = strings.TrimSpace(strconv.Itoa(group.Count) + " " + group.Name)
	}
	return pieces.Draw(), len(pieces.Groups) > 0
}

// countFigure sets the number of pieces large.
func (a *assembly) countFigure() (figure.Figure, bool) {
	makes := a.kit.Makes.Value
	if makes.Dimension != quantity.Count || makes.Nominal.Sign() <= 0 {
		return figure.Figure{}, false
	}
	return figure.Count{
		Title: a.say("makes"), Number: a.show(makes.Nominal, quantity.Count), Noun: makes.Noun,
	}.Draw(), true
}

// outline is the inside of a container as it is drawn, lengths in mm, and how
// high it is filled as a part of its height.
type outline struct{ base, rim, tall, level float64 }

// drawnShape gives the outline of a filled container. ok is false where its
// shape, its volume or its fill isn't known: then nothing is drawn.
func drawnShape(f *ledger.Filling) (outline, bool) {
	shape := f.Container.Container.Inside.Value
	brimful, volume, free := f.Brimful(), f.Volume(), f.Free()
	if !brimful.Known() || !volume.Known() || !free.Known() || len(shape.Widths) == 0 {
		return outline{}, false
	}
	base := shape.Widths[0].Float()
	rim := base
	if shape.Form == kit.Cone && len(shape.Widths) > 1 {
		rim = shape.Widths[1].Float()
	}
	tall := insideHeight(shape, brimful.Value())
	if shape.Form == kit.Sphere || tall <= 0 {
		return outline{}, false
	}
	level := heightOf(shape, tall, volume.Value().Plus(displaced(f)).Float())
	return outline{base, rim, tall, level / tall}, true
}

// displaced is the room (mL) that the inserts take: the room without them less
// the room with them.
func displaced(f *ledger.Filling) quantity.Number {
	bare := *f
	bare.Inserts = nil
	return bare.Room().Value().Minus(f.Room().Value())
}

// insideHeight is the height (mm) as told, or for straight walls from the volume.
func insideHeight(shape kit.Shape, brimful quantity.Number) float64 {
	if shape.Tall.Sign() > 0 {
		return shape.Tall.Float()
	}
	unit, ok := ledger.VolumeTo(shape, quantity.Whole(1))
	if !ok || unit.Sign() <= 0 || shape.Form != kit.Cylinder && shape.Form != kit.Box {
		return 0
	}
	return brimful.Over(unit).Float()
}

// heightOf finds the height (mm) up to which a shape holds a volume (mL), by
// halving: the volume grows with the height. It never goes beyond the rim.
func heightOf(shape kit.Shape, tall, volume float64) float64 {
	low, high := 0.0, tall
	for range 40 {
		middle := (low + high) / 2
		held, ok := ledger.VolumeTo(shape, quantity.FromFloat(middle))
		if !ok || held.Float() > volume {
			high = middle
		} else {
			low = middle
		}
	}
	return low
}
