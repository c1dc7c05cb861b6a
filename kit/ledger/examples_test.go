package ledger_test

import (
	"os"
	"testing"

	"tallyfold/instructions"
	"tallyfold/kit"
	"tallyfold/kit/ledger"
	"tallyfold/kit/quantity"
)

func example(t testing.TB, name string) *kit.Kit {
	t.Helper()
	k, found := instructions.Open(os.DirFS("../../examples/"+name), name)
	if k == nil || len(found) > 0 {
		t.Fatalf("%s cannot be read: %v", name, found)
	}
	return k
}

// The ledgers of the examples, reckoned by hand from kit.yaml and method.md and
// equal to the last digit. Amounts are in g, mL, pieces and mm.
func TestExamplesByHand(t *testing.T) {
	for name, want := range map[string]string{
		// Two runs: wax 2 × 550 = 1100 of 1120; fragrance and tint all of their packs.
		// Jug: 550 + 2 + 34 = 586 g; three fills 3 × 190 = 570 g; 16 g are left, of which
		// 6 g residue are washed out and 10 g kept. A jar holds 190/586 of everything:
		// wax 550 × 190/586 = 52250/293, tint 2 × 190/586 = 190/293, scent 34 × 190/586 = 3230/293.
		"harbour-candles": `wax used 1100; wax left 20; pine used 34; pine left 0; orange used 34; orange left 0;
			green used 2; green left 0; amber used 2; amber left 0; jar used 6; jar left 0; wick used 6; wick left 0;
			sticker used 6; sticker left 1; case used 2; case left 0; pine-label used 3; pine-label left 0;
			orange-label used 3; orange-label left 0; care-label used 6; care-label left 0; water used 1200; towel used 6;
			jar 1-3 mass 190; jar 1-3 wax 52250/293; jar 1-3 green 190/293; jar 1-3 pine 3230/293; jar 1-3 wick 1;
			jar 4-6 mass 190; jar 4-6 wax 52250/293; jar 4-6 amber 190/293; jar 4-6 orange 3230/293; jar 4-6 wick 1;
			jug keeps wax none`,
		// Three books: sheets 3 × 8 = 24 of 25, thread 3 × 700 = 2100 of 2300 mm.
		"pocket-notebooks": `sheet used 24; sheet left 1; lining used 3; lining left 0; cover used 3; cover left 0;
			thread used 2100; thread left 200; label used 3; label left 1; loop used 3; loop left 0`,
		// Lavender: half of 60, then the rest. A US teaspoon is 4.92892159375 mL and a
		// tablespoon 14.78676478125 mL (NIST SP 811, B.8); densities at their middle, 0.55
		// and 0.33 g/mL. Orris 4 × 4.92892159375 × 0.55 = 10.84362750625 g of 12.5;
		// peel 6 × 14.78676478125 × 0.33 = 29.277794266875 g of 40. Ribbon 8 × 400 = 3200 of 3300 mm.
		// Bowl: 60 + 10.84362750625 + 29.277794266875 + 20 = 120.121421773125 g; 1 g stays, and
		// (120.121421773125 − 1)/8 = 14.890177721640625 g in each bag.
		"drawer-sachets": `lavender used 60; lavender left 0; orris used 10.84362750625; orris left 1.65637249375;
			peel used 29.277794266875; peel left 10.722205733125; cedar used 20; cedar left 0; bag used 8; bag left 0;
			ribbon used 3200; ribbon left 100; tag used 8; tag left 1; newspaper used 2;
			bag 1-8 mass 14.890177721640625; bowl keeps lavender none`,
		// Both skeins, 2 × 50 = 100 g, and all of four bags. Four ties of 400 mm with 20 mm
		// lost at each end: 4 × 440 = 1760 of 2000. Water five times 2 L = 10 000 mL, of
		// which 60 g ÷ 0.998 g/mL = 30000/499 mL go off in each of the two steps that warm the
		// pot. 100 g of wool hold 150 g of liquid; the bowl keeps 10 g besides, the pot 10 g.
		// Wash: 1996 + 5 = 2001 g, of which 1841/2001 are poured off. What dries off the wool
		// at the end is all the water in the bowl.
		"harbour-yarns": `yarn used 100; yarn left 0; yarn kept 100; alum used 10; alum left 0; madder used 6; madder left 0;
			weld used 6; weld left 0; weld not chosen 6; soap used 5; soap left 0; tie used 1760; tie left 240;
			tag used 2; tag left 1; water used 10000; water evaporated 30000/499; pot keeps water none; bowl keeps yarn none`,
	} {
		t.Run(name, func(t *testing.T) { holdsTrue(t, ledger.Follow(example(t, name)), want) })
	}
}

// What is done with the wax behind the fills: in each run 10 g kept and 6 g washed
// out, of which wax is 550/586.
func TestRemainderOfTheCandlesByHand(t *testing.T) {
	l := ledger.Follow(example(t, "harbour-candles"))
	for move, grams := range map[ledger.Move]int64{ledger.LeftOver: 10, ledger.WashedOut: 6} {
		n := 0
		for _, e := range l.Entries {
			if e.Move != move || e.Thing != "wax" {
				continue
			}
			n++
			if want := quantity.Ratio(550*grams, 586); !e.Amount.Value().Equal(want) {
				t.Errorf("%s in %s: %s g of wax, want %s", move, e.Run.Name.Value, exact(e.Amount), want)
			}
		}
		if n != 2 {
			t.Errorf("%s %d times, want once in each of two runs", move, n)
		}
	}
}

// Volumes and room in one container, mL.
//
//	Candle: 190 g ÷ 0.87 g/mL = 19000/87 (218.39); room 280 − 40 − 1.5 = 238.5; free 238.5 − 19000/87.
//	Sachet: 14.890177721640625 g ÷ 0.19 g/mL (78.37); room 130 − 30 = 100.
func TestRoomOfTheExamplesByHand(t *testing.T) {
	sachet := quantity.Ratio(14890177721640625, 1_000_000_000_000_000).Over(quantity.Ratio(19, 100))
	for name, want := range map[string]struct{ volume, room quantity.Number }{
		"harbour-candles": {quantity.Ratio(19000, 87), quantity.Ratio(2385, 10)},
		"drawer-sachets":  {sachet, whole(100)},
	} {
		for _, f := range ledger.Follow(example(t, name)).Fillings {
			if !f.Volume().Value().Equal(want.volume) {
				t.Errorf("%s: volume %s, want %s", name, exact(f.Volume()), want.volume)
			}
			if !f.Room().Value().Equal(want.room) {
				t.Errorf("%s: room %s, want %s", name, exact(f.Room()), want.room)
			}
			if free := want.room.Minus(want.volume); !f.Free().Value().Equal(free) {
				t.Errorf("%s: free %s, want %s", name, exact(f.Free()), free)
			}
		}
	}
}
