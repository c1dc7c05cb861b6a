package load

import (
	"strings"

	"tallyfold/kit"
	"tallyfold/kit/quantity"
)

// inside reads a container's inside: a shape in words, or levels with the volume
// up to each.
func inside(at func(*kit.Container) *kit.Said[kit.Shape]) field[kit.Container] {
	k := Key{Name: "inside", Expected: shapeExpected, Example: "cylinder 68 mm wide", Form: Inside}
	return field[kit.Container]{k, func(r *reader, into *kit.Container, v value) {
		shape, ok := kit.Shape{}, false
		if v.isText() {
			shape, ok = r.shape(v)
		} else {
			shape, ok = r.levels(v, k)
		}
		if ok {
			*at(into) = said(v, shape)
		}
	}}
}

// sizeOf reads the outside of one loose part, in the words of an inside.
func sizeOf() field[kit.Component] {
	k := Key{Name: "size", Expected: "the outside of one loose part, such as “cylinder 12 mm wide, 30 mm tall”, “box 20 mm by 12 mm, 8 mm tall” or “sphere 16 mm wide”",
		Example: "sphere 16 mm wide", Form: Text, Words: true}
	return field[kit.Component]{k, func(r *reader, into *kit.Component, v value) {
		if !r.isWords(v, k) {
			return
		}
		if shape, ok := r.shapeAs(v, k.Name); ok {
			into.Size = said(v, shape)
		}
	}}
}

func (r *reader) shape(v value) (kit.Shape, bool) { return r.shapeAs(v, "inside") }

// shapeAs reads a shape that stands under a key.
func (r *reader) shapeAs(v value, key string) (kit.Shape, bool) {
	shape, err := parseShape(v.text(), r.amounts)
	if err == nil {
		return shape, true
	}
	orders := []string{"write it like “" + key + ": \"" + err.like + "\"”"}
	if err.hint != "" {
		orders = append([]string{err.hint}, orders...)
	}
	at := v.part(err.start, err.end)
	if at.Start == at.End {
		at = v.span
	}
	r.report(BadAmount, at, err.found, err.expected, orders...)
	return kit.Shape{}, false
}

// A pair is a height with the volume up to it, as written. It comes from
// “10 mm: 30 mL” with or without quotation marks, in a list or not.
type pair struct{ height, volume value }

// levels reads a list of heights and volumes, which must rise together.
func (r *reader) levels(v value, k Key) (kit.Shape, bool) {
	shape := kit.Shape{Form: kit.Table}
	pairs, ok := r.pairs(v, k)
	for _, p := range pairs {
		height, okHeight := r.amount(p.height, levelHeight, fit{kinds: []quantity.Dimension{quantity.Length}, zero: true})
		volume, okVolume := r.amount(p.volume, levelVolume, fit{kinds: []quantity.Dimension{quantity.Volume}, zero: true})
		if ok = ok && okHeight && okVolume; !ok {
			continue
		}
		level := kit.Level{Height: height.Nominal, Volume: volume.Nominal}
		if n := len(shape.Levels); n > 0 && !rises(shape.Levels[n-1], level) {
			r.report(BadAmount, p.height.span, quote(p.height.oneLine()+": "+p.volume.oneLine())+", which does not rise above the level before",
				"levels from the bottom up, each higher and holding more", "put the levels in order, and check the figures")
			ok = false
		}
		shape.Levels = append(shape.Levels, level)
	}
	if ok && len(shape.Levels) < 2 {
		r.report(BadAmount, v.span, "fewer than two levels", "two or more levels from the bottom up, such as “10 mm: 30 mL”", "measure at least two")
		ok = false
	}
	return shape, ok
}

// levelHeight and levelVolume are the two sides of a level, for messages.
var (
	levelHeight = Key{Name: "10 mm", Expected: "a height above the bottom, such as 10 mm", Example: "30 mL"}
	levelVolume = Key{Name: "10 mm", Expected: "the volume up to this height, such as 30 mL", Example: "30 mL"}
)

func rises(a, b kit.Level) bool { return a.Height.Less(b.Height) && a.Volume.Less(b.Volume) }

// pairs takes the levels out of a list or out of lines of keys.
func (r *reader) pairs(v value, k Key) (pairs []pair, ok bool) {
	if v.isKeys() {
		for _, e := range r.entries(v).all {
			pairs = append(pairs, pair{e.key, e.value})
		}
		return pairs, true
	}
	ok = true
	for _, item := range v.items() {
		switch {
		case item.isKeys():
			for _, e := range r.entries(item).all {
				pairs = append(pairs, pair{e.key, e.value})
			}
		case item.isText() && strings.Contains(item.text(), ": "):
			colon := strings.Index(item.text(), ": ")
			pairs = append(pairs, pair{item.piece(0, colon), item.piece(colon+2, len(item.text()))})
		default:
			r.wrong(item, k)
			ok = false
		}
	}
	return pairs, ok
}
