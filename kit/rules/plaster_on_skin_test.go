package rules

import (
	"testing"
	"testing/fstest"

	"tallyfold/instructions"
	"tallyfold/kit/ledger"
)

// Sentences of kits with plaster, written for this test. It stops a booklet, so that it must not
// cry out where hands only work, wash or hold, nor where a hand goes into a gel that is made for
// it, which is what the rule itself advises.
func TestPlasterOnSkin(t *testing.T) {
	for sentence, told := range map[string]bool{
		"Press your hand into the plaster.":                             true,
		"Press [your hand](cue:) down into the wet [plaster](use:p).":   true,
		"Cast your hand in plaster.":                                    true,
		"Take a cast of your left foot in plaster.":                     true,
		"Cover your hand with plaster.":                                 true,
		"Coat the back of your hand with the mix.":                      true,
		"Wrap the bandage round your foot.":                             true,
		"Lay the wet strips over your face.":                            true,
		"Let your child press a hand into it.":                          true,
		"Sink both feet into the tray.":                                 true,
		"Smear it over your knee.":                                      true,
		"Stick your finger in the mix to test it.":                      true,
		"Make an impression of a baby's foot in the wet plaster.":       true,
		"Make a handprint in the plaster.":                              true,
		"Apply a layer to your belly.":                                  true,
		"Hold the dog's paw in it.":                                     true,
		"Put your hand in the bowl.":                                    true,
		"Press your gloved hand into the plaster.":                      true,
		"Lay the strips by hand in the tray.":                           false,
		"Cover the tray and wash your hands.":                           false,
		"Pour the plaster slowly with one hand.":                        false,
		"Put the mould in the tray, and wash hands in the sink.":        false,
		"Spread the newspaper where your hands reach it.":               false,
		"Set the mould face up in the tray.":                            false,
		"Put the tile face down in the tray.":                           false,
		"Pour the plaster over the face of the mould.":                  false,
		"Pour it round the foot of the frame.":                          false,
		"Brush the crumbs off your skin.":                               false,
		"Hold the bag with one hand in the bowl and tip.":               false,
		"Put your hands into the gloves.":                               false,
		"Put your hand in the bag and loosen the powder.":               false,
		"Do not put your hand into the plaster.":                        false,
		"Work without pressing, and never press a hand into it.":        false,
		"Press your hand into the casting gel.":                         false,
		"Press your hand into the casting gel and hold it there.":       false,
		"Smear petroleum jelly over your hand.":                         false,
		"Rub hand cream on your hands.":                                 false,
		"Wrap your hand in cling film.":                                 false,
		"Put your hands on the table.":                                  false,
		"Smooth the plaster with your fingers.":                         false,
		"Put the plaster out of the reach of small hands.":              false,
		"Press the mould by hand against the tray, as the sketch does.": false,

		"Push the child's open hand gently down into the soft plaster.":   true,
		"Ask a friend to lay an arm in the box.":                          true,
		"Spoon the plaster over the back of your hand.":                   true,
		"Dip your thumb into the plaster and roll it.":                    true,
		"Lower your foot slowly into the mix until it is covered.":        true,
		"Bury your fist in it.":                                           true,
		"Wind the plaster strips round your wrist.":                       true,
		"Immerse your hand in the plaster.":                               true,
		"Model the mask: spread plaster on your face.":                    true,
		"Keep your fingers still in the plaster for ten minutes.":         true,
		"Stamp your palm into the plaster.":                               true,
		"Lay a hand on the frame to steady it.":                           false,
		"Press the leaf into the plaster with your fingers.":              false,
		"Hold the frame in one hand and pour the plaster with the other.": false,
		"Take your hand out of the tray.":                                 false,
		"Set the tray at arm's length on the table.":                      false,
		"Put on the gloves and push the fingers into the corners.":        false,
		"Tap the bowl with your hand to bring up bubbles in the plaster.": false,
		"Wipe plaster from your hands with a damp cloth.":                 false,
		"Keep the plaster off your skin.":                                 false,
		"If plaster gets on your skin, rinse it off.":                     false,
		"Put the legs of the stand in the tray.":                          false,
		"Press the toy's foot into the plaster.":                          false,
		"Place the hands of the clock on the cast.":                       false,
		"Push the clock hands onto it.":                                   false,
		"Pour the plaster into the hand mould.":                           false,
		"Lay the cast face down on a towel.":                              false,
	} {
		k, found := instructions.Open(fstest.MapFS{
			"kit.yaml": {Data: []byte("name: One\nmakes: 1 piece\ncomponents:\n  p: {name: Casting plaster, packed: 100 g, hazards: plaster}\n" +
				"  gel: {name: Casting gel, packed: 100 g}\ntools:\n  bowl: {name: Bowl, from: customer}\n  tray: {name: Tray, from: customer}\n  box: {name: Box, from: customer}\n  frame: {name: Paper frame, from: customer}\n")},
			"method.md": {Data: []byte("## [Mix](step:mix?in=bowl)\n\nPut [100 g](take:p) in.\n\n## Go\n\n" + sentence + "\n")},
		}, "one")
		if k == nil {
			t.Fatal(found)
		}
		if got := len(plasterOnSkin.Check(Subject{Kit: k, Ledger: ledger.Follow(k)})) > 0; got != told {
			t.Errorf("%q: told %t, want %t", sentence, got, told)
		}
	}
}

// A hand in the bowl before the plaster is out of its bag is in something else.
func TestPlasterOnSkinBeginsWithThePlaster(t *testing.T) {
	for order, told := range map[string]bool{
		"## Print\n\nPress your hand into the bowl.\n\n## Mix\n\nPut [100 g](take:p?into=bowl) in.\n": false,
		"## Mix\n\nPut [100 g](take:p?into=bowl) in.\n\n## Print\n\nPress your hand into the bowl.\n": true,
	} {
		k, found := instructions.Open(fstest.MapFS{
			"kit.yaml":  {Data: []byte("name: One\nmakes: 1 piece\ncomponents:\n  p: {name: Casting plaster, packed: 100 g, hazards: plaster}\ntools:\n  bowl: {name: Bowl, from: customer}\n")},
			"method.md": {Data: []byte(order)},
		}, "one")
		if k == nil {
			t.Fatal(found)
		}
		if got := len(plasterOnSkin.Check(Subject{Kit: k, Ledger: ledger.Follow(k)})) > 0; got != told {
			t.Errorf("%q: told %t", order, got)
		}
	}
}
