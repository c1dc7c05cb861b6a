package figure

// thing draws an item in plain outline; a broken one is not to scale.
func (p *pen) thing(item Item, x, y, wide, tall float64) {
	class := "thing"
	if !item.known() {
		class = "thing unscaled"
	}
	switch item.Shape {
	case BagShape:
		p.bagOutline(class, x, y, wide, tall)
	case BottleShape:
		p.bottleOutline(class, x, y, wide, tall)
	case JarShape:
		p.stroke(class, vessel(x, y, wide, wide, tall, min(wide, tall)*0.1))
		p.line(class, x-0.03*wide, y, x+1.03*wide, y)
	case SheetShape:
		p.sheetOutline(class, x, y, wide, tall)
	case ReelShape:
		p.reelOutline(class, x, y, wide, tall)
	default:
		p.stroke(class, path("M", x, y, "H", x+wide, "V", y+tall, "H", x, "Z"))
	}
}

// bagOutline is a bag, sealed across the top.
func (p *pen) bagOutline(class string, x, y, wide, tall float64) {
	round := min(wide, tall) * 0.16
	p.stroke(class, path("M", x, y, "H", x+wide, "V", y+tall-round, "Q", x+wide, y+tall, x+wide-round, y+tall,
		"H", x+round, "Q", x, y+tall, x, y+tall-round, "Z"))
	p.line(class, x, y+tall*0.13, x+wide, y+tall*0.13)
}

// bottleOutline has a neck and a cap.
func (p *pen) bottleOutline(class string, x, y, wide, tall float64) {
	neck, shoulder := wide*0.4, tall*0.22
	left, right := x+(wide-neck)/2, x+(wide+neck)/2
	p.stroke(class, path("M", left, y, "V", y+shoulder*0.6, "Q", x, y+shoulder*0.75, x, y+shoulder*1.4, "V", y+tall,
		"H", x+wide, "V", y+shoulder*1.4, "Q", x+wide, y+shoulder*0.75, right, y+shoulder*0.6, "V", y, "Z"))
	p.line(class, left, y+shoulder*0.4, right, y+shoulder*0.4)
}

// sheetOutline has a corner turned down.
func (p *pen) sheetOutline(class string, x, y, wide, tall float64) {
	corner := min(wide, tall) * 0.2
	p.stroke(class, path("M", x, y, "H", x+wide-corner, "L", x+wide, y+corner, "V", y+tall, "H", x, "Z",
		"M", x+wide-corner, y, "V", y+corner, "H", x+wide))
}

// reelOutline is a spool seen from the side.
func (p *pen) reelOutline(class string, x, y, wide, tall float64) {
	rim, in := tall*0.16, wide*0.16
	p.stroke(class, path("M", x, y, "H", x+wide, "V", y+rim, "H", x, "Z", "M", x, y+tall-rim, "H", x+wide, "V", y+tall, "H", x, "Z",
		"M", x+in, y+rim, "V", y+tall-rim, "M", x+wide-in, y+rim, "V", y+tall-rim))
	for _, part := range []float64{0.35, 0.5, 0.65} {
		p.line(class, x+in, y+tall*(part+0.04), x+wide-in, y+tall*(part-0.04))
	}
}
