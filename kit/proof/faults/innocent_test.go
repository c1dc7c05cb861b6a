package faults_test

import (
	"fmt"
	"strings"
	"testing"

	"tallyfold/kit/proof"
)

// An oddity is what a maker may well write, and of which no rule may speak.
type oddity struct {
	name  string
	edits func(k *cleanKit) []edit
}

// oddSentences go into steps and helps as paragraphs of their own.
var oddSentences = []struct{ name, text string }{
	{"a number that is the name of a step", "It is done as in step 3."},
	{"the size of a needle", "A size 24 needle has the same eye as this one."},
	{"a ply", "It looks like 2-ply yarn."},
	{"a page, a figure, a year", "See page 7 and figure 2 of our book of 1987."},
	{"a number of thread or paper", "No. 10 thread and A4 paper look alike to the cat."},
	{"tap water", "Tap water is good for this."},
	{"plenty of time", "There is plenty of time for this."},
	{"a little at a time", "Go on a little at a time."},
	{"a bit of patience", "All it wants is a bit of patience and some luck."},
	{"a few turns", "A few turns more do no harm."},
	{"a tool that is not needed", "No oven is needed, and you can do without a sieve."},
	{"a tool's word that means something else", "The handle feels like cast iron."},
	{"all of the oil", "When all of the oil is gone, the bottle is yours."},
	{"half an hour in passing", "It can wait for half an hour while you have lunch."},
	{"a fraction of people", "A third of all beginners stop here and smile."},
	{"a temperature of the room", "A room at 20 °C is warm enough."},
	{"days to write to us", "Write to us within 14 days if something is missing."},
	{"a price", "A second box costs £ 12.50."},
	{"a telephone number", "Our number is 0123 456 789."},
	{"a link to a web page", "Our [page on this](https://example.org/kits?no=3) has more."},
	{"a link to a mail address", "Our [address](mailto:kits@example.org) is on the box."},
	{"a length of something else", "The table is 1.2 m long, and the gap 3 mm wide."},
	{"a percentage of something else", "About 10 % of our letters are about this."},
	{"bold and italic words", "This is **not** a race, and *never* was."},
	{"a quotation that is no caution", "> Slow is smooth, and smooth is fast."},
	{"a notice in its quotation", "> NOTICE: The table may stain. Cover it."},
	{"a note of the maker's own", "<!-- Ann: 20 g more? a good splash? ask (again) -->"},
	{"a square bracket in passing", "The old word for it [sic] is lost."},
	{"a bracket with a figure", "It is an old rule (2 to 1) of the trade."},
	{"a handful of people", "A handful of people can share the table."},
	{"an ounce of patience", "An ounce of patience is worth it."},
	{"a ratio and a fraction", "The drawing is 1:1, and the margin 1/2 of that."},
	{"a name with a number", "Brindle Quay 4 is the door with the bell."},
	{"time and again", "This goes wrong time and again, for all of us."},
	{"enough light", "There should be enough light and enough room."},
	{"a question", "Does it look dull? That is as it should be."},
	{"a list", "- The first is the hardest.\n- The second is not.\n- The third is fun."},
	{"a word in another alphabet", "The Greeks called it κερί."},
	{"a range of ages", "Children of 8–10 years like to watch."},
	{"some music, some time", "Put some music on and take some time for it."},
	{"a few deep breaths", "Take a few deep breaths and a little break."},
	{"some imagination", "Use some imagination, and use a little force."},
	{"a stitch called like a tool", "A kettle stitch joins one section to the next."},
	{"a patch called like a tool", "An iron-on patch holds less well than an iron grip."},
	{"a tool that is said not to be needed", "Tweezers are not needed for this, and a funnel isn't either."},
	{"a tool in a likeness", "It hangs like a hammer, and is as thin as a ruler's edge."},
	{"a length left over at the end of a thing", "Leave 5 cm of ribbon, of thread or of wick hanging down."},
	{"what is left of a thing", "Stop when 12 g of wax, of lavender or of peel is left."},
	{"what a measure holds", "A heaped spoon holds 9 g of orange peel or 3 g of orris-root powder."},
	{"a count in a saying", "Two heads are better than one, and third time lucky."},
	{"a date", "On 1 May 2024 we sold 12 boxes."},
	{"a decade, a century", "They made these in the 1920s and in the 19th century."},
	{"a clock", "If you begin at 10:30, you can be done by 4 o'clock."},
	{"a number with a comma", "More than 1,000 people have made one."},
	{"water to rinse with", "Rinse it under plenty of running water, and wash your hands with plenty of water."},
	{"something to put on", "Put on some old clothes and some gloves."},
	{"a good squeeze", "Give it a good squeeze and a good shake."},
	{"a handful at a time", "Take a handful at a time."},
	{"a tool that is handy", "Pliers are handy, but they are not needed."},
	{"so much at a time", "Go slowly: 50 g of wax or of lavender at a time, and 10 cm of ribbon at a time."},
	{"what stays behind", "About 6 g of wax stays in the jug, 1 g of lavender sticks to the bowl."},
	{"what is in one piece", "In the end there are 190 g of wax in a jar."},
	{"short of something", "If you are 12 g of wax short, write to us."},
	{"a cup of tea", "Pour yourself a cup of tea and take some photos."},
	{"as hot as an oven", "The room should not be as hot as an oven."},
	{"until it is enough", "Stir until you have had enough of it."},
	{"a second of time", "Hold it for a second or two, then count to 10."},
	{"a part of the day", "Half the day is enough, and a quarter of an hour to look at it."},
	{"a half and a third", "Fold it in half, then in three."},
	{"left and right", "Begin on the left, and what is left on the right."},
	{"a word that YAML minds", "Say yes: no more, no less."},
	{"a cross-reference in words", "See the step before, and the help at the end."},
	{"an image of speech", "You may feel all thumbs, twice over."},
}

// settings are edits of what is told, which mean the same or change nothing that counts.
var settings = []oddity{
	{"the same pack in another unit", swaps("kit.yaml", "1.12 kg", "1120 g", "3.3 m", "330 cm", "60 g ±", "0.06 kg ±", "2.3 m", "230 cm")},
	{"the same time in another unit", swaps("kit.yaml", "hands-on: 2 h", "hands-on: 120 min", "hands-on: 1 h", "hands-on: 60 min", "total: 4 days", "total: 96 h", "total: 4 h", "total: 240 min")},
	{"more time on the box", swaps("kit.yaml", "hands-on: 2 h", "hands-on: 3 h", "total: 13 h", "total: 2 days", "total: 4 h", "total: about 5 h")},
	{"a unit written out", swaps("kit.yaml", "40 g ± 1 g", "40 grams ± 1 gram", "20 cm", "20 centimetres", "spare: 20 g", "spare: 20 grams")},
	{"a hyphen for a dash, letters for a sign", swaps("kit.yaml", "0.86–0.88", "0.86-0.88", "0.30–0.36", "0.30-0.36", "34 g ± 0.5 g", "34 g +/- 0.5 g")},
	{"no blank before the unit", swaps("method.md", "75 °C", "75°C", "190 g (", "190g (", "70 cm", "70cm", "40 cm", "40cm")},
	{"the same amount in another unit", swaps("method.md", "550 g (", "0.55 kg (", "[70 cm of", "[0.7 m of", "[40 cm of", "[400 mm of", "[6 minutes](work:)", "[360 seconds](work:)")},
	{"a number in words", swaps("method.md", "[5 minutes](work:)", "[five minutes](work:)", "[12 hours](wait", "[twelve hours](wait", "[8 sheets]", "[eight sheets]", "[3 stickers]", "[three stickers]")},
	{"a second figure rounded with sense", swaps("method.md", "1 lb 3 1/2 oz", "1 lb 3.4 oz", "1 lb 3 1/2 oz", "19.4 oz weight", "6.7 oz weight", "7 oz weight", "2 1/2 cups", "2.5 cups")},
	{"a count told twice and right", swaps("method.md", "[8 sheets]", "[8 (eight) sheets]", "[3 elastic loops]", "[three elastic loops (3)]")},
	{"one thing under two names", swaps("method.md", "of wax flakes]", "of soy wax]", "of orris-root powder]", "of the pale powder]", "[8 tags]", "[8 paper tags]", "[the jug](vessel", "[the tall jug](vessel")},
	{"a spare of containers", swaps("kit.yaml", "packed: 6\n    container", "packed: 7\n    spare: 1\n    container", "packed: 8\n    container", "packed: 10\n    spare: 2\n    container")},
	{"more spares, told", swaps("kit.yaml", "packed: 7, spare: 1", "packed: 12, spare: 6", "packed: 9, spare: 1", "packed: 12, spare: 4", "packed: 25, spare: 1", "packed: 30, spare: 6")},
	{"a component that may stay in the bag", adds("components", "  bow: {name: Linen bow, packed: 6, optional: yes}\n")},
	{"printed matter", adds("components", "  leaflet: {name: Instruction leaflet, packed: 1}\n", "  postcard: {name: Thank-you card, packed: 1}\n")},
	{"a tool that stands in for another", func(k *cleanKit) []edit {
		tools := k.section("tools")
		return []edit{tools[len(tools)-1].end().becomes("  other: {name: Something like it, from: customer, essential: false, stands in for: " + tools[0].key + "}\n")}
	}},
	{"an optional tool", swaps("kit.yaml", "essential: false}", "essential: false, note: Nice to have.}")},
	{"yes for true", swaps("kit.yaml", "essential: true", "essential: yes", "essential: false", "essential: no", "floats: no", "floats: false")},
	{"figures and vague words in a note", swaps("kit.yaml", "note: It", "note: A good splash of 20 g or 3 steps. It", "note: One", "note: Plenty of them. One")},
	{"a comment with anything in it", swaps("kit.yaml", "components:\n", "# 500 g? [x](take:wax) {a: b} 'plenty'\ncomponents:\n", "tools:\n", "tools:   # see kit 3\n")},
	{"a caution in one line", swaps("kit.yaml", "cautions:\n      - A fine dust. Do not breathe it in.", "cautions: A fine dust. Do not breathe it in.")},
	{"quotation marks round a value", swaps("kit.yaml", "packed: 40 g ± 1 g", `packed: "40 g ± 1 g"`, "makes: 3 notebooks", `makes: "3 notebooks"`, "name: Soy wax flakes", "name: 'Soy wax flakes'")},
	{"lines in another order", func(k *cleanKit) []edit {
		return eachMatch(k, "kit.yaml", `(?m)^(    name: .*\n    packed: .*\n)`, func(at place) []edit {
			lines := strings.SplitAfter(at.text(), "\n")
			return []edit{at.becomes(lines[1] + lines[0])}
		})
	}},
	{"Windows line ends, a byte order mark, no last line end", func(k *cleanKit) []edit {
		var all []edit
		for _, file := range []string{"kit.yaml", "method.md", "trouble.md", "words.md"} {
			whole := k.whole(file)
			all = append(all, whole.becomes(strings.ReplaceAll(whole.text(), "\n", "\r\n")), whole.becomes("\ufeff"+whole.text()),
				whole.becomes(strings.TrimRight(whole.text(), "\n")))
		}
		return all
	}},
	{"what may be left out", func(k *cleanKit) []edit {
		var all []edit
		for _, pattern := range []string{`(?m)^(markets: .*\n)`, `(?m)^(about: .*\n)`, `(?m)^(edition: .*\n)`, `(?m)^(language: .*\n)`, `(?m)^(time: .*\n)`, `\n(claims:\n(?:  .*\n)+)`} {
			for _, at := range k.find("kit.yaml", pattern) {
				all = append(all, at.becomes(""))
			}
		}
		return append(all, edit{place: k.whole("words.md"), gone: true})
	}},
	{"what may be left out where no market is told", func(k *cleanKit) []edit {
		markets := k.find("kit.yaml", `(?m)^(markets: .*\n)`)
		if len(markets) == 0 {
			return nil
		}
		from := k.find("kit.yaml", `(?m)^(audience: .*\n)`)[0]
		return []edit{place{k, "kit.yaml", from.from, markets[0].to}.becomes("")}
	}},
	{"another section of words, another help", func(k *cleanKit) []edit {
		return []edit{k.whole("words.md").end().becomes("\n## For teachers\n\nTwelve children can share one box: 2 g each is enough.\n"),
			k.whole("trouble.md").end().becomes("\n## It is not as straight as ours\n\n**What to do.** Nothing. It is yours.\n")}
	}},
	{"a step whose heading is no link", func(k *cleanKit) []edit {
		return eachMatch(k, "method.md", `(?m)^## (\[Clear up\]\(step:clear\))$`, func(at place) []edit { return []edit{at.becomes("Clear up")} })
	}},
	{"a container that holds more, a tool that bears more", swaps("kit.yaml", "brimful: 280 mL", "brimful: 300 mL", "withstands: 95 °C", "withstands: 120 °C", "withstands: 110 °C", "withstands: 200 °C", "brimful: 130 mL", "brimful: 150 mL")},
	{"“less than” for “at most”", swaps("kit.yaml", "at most 8 % of wax", "less than 8 % of wax", "at most 20 % of mixture", "up to 20 % of mixture")},
}

// swaps puts one text for another wherever it stands, in turn.
func swaps(file string, pairs ...string) func(k *cleanKit) []edit {
	return func(k *cleanKit) []edit {
		var all []edit
		for i := 0; i < len(pairs); i += 2 {
			text := k.files[file]
			for at := 0; ; {
				next := strings.Index(text[at:], pairs[i])
				if next < 0 {
					break
				}
				at += next
				all = append(all, place{k, file, at, at + len(pairs[i])}.becomes(pairs[i+1]))
				at += len(pairs[i])
			}
		}
		return all
	}
}

// adds writes further things at the end of a section.
func adds(section string, things ...string) func(k *cleanKit) []edit {
	return func(k *cleanKit) []edit {
		all := k.section(section)
		var edits []edit
		for _, thing := range things {
			edits = append(edits, all[len(all)-1].end().becomes(thing))
		}
		return edits
	}
}

// oddities are the sentences and the settings.
func oddities() []oddity {
	var all []oddity
	for _, sentence := range oddSentences {
		all = append(all, oddity{sentence.name, func(k *cleanKit) []edit {
			steps, helps := k.sectionEnds("method.md"), k.sectionEnds("trouble.md")
			var edits []edit
			for _, end := range []place{steps[len(steps)/2], helps[0]} {
				edits = append(edits, end.becomes("\n"+sentence.text+"\n"))
			}
			return edits
		}})
	}
	return append(all, settings...)
}

func TestOdditiesAreSilent(t *testing.T) {
	kits := cleanKits(t)
	all := oddities()
	if len(all) < 40 {
		t.Errorf("%d oddities; want 40", len(all))
	}
	for _, odd := range all {
		t.Run(odd.name, func(t *testing.T) {
			t.Parallel()
			tried := 0
			for _, k := range kits {
				for _, e := range thinned(odd.edits(k), mostPlaces) {
					tried++
					for _, f := range proof.Of(e.faulty(), k.name, judged).Findings {
						t.Errorf("%s\n\tbrings %s", e, toldShortly(f))
					}
				}
			}
			if tried == 0 {
				t.Error("no example has a place for it")
			}
		})
	}
}

// innocentTable lists them; a test of its own holds that they are silent.
func innocentTable() string {
	var b strings.Builder
	fmt.Fprintf(&b, "\n## What must stay silent\n\n%d oddities, each tried in all examples that have a place for it:\n\n", len(oddities()))
	for _, odd := range oddities() {
		b.WriteString("- " + odd.name + "\n")
	}
	return b.String()
}
