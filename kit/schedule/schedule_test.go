package schedule_test

import (
	"os"
	"testing"
	"testing/fstest"

	"tallyfold/instructions"
	"tallyfold/kit/quantity"
	"tallyfold/kit/schedule"
)

// planOf reads a method of a small kit and reckons its time.
func planOf(t *testing.T, more, method string) schedule.Plan {
	t.Helper()
	folder := fstest.MapFS{
		"kit.yaml": {Data: []byte("name: Paper stars\nmakes: 4 stars\ncomponents:\n" +
			"  paper: {name: Paper strip, packed: 4}\n" + more)},
		"method.md": {Data: []byte(method)},
	}
	k, found := instructions.Open(folder, "stars")
	if k == nil {
		t.Fatalf("the kit was refused: %v", found)
	}
	return schedule.Of(k)
}

const minute = 60

func TestTimesAddUpAsTheStepsTellThem(t *testing.T) {
	for _, c := range []struct {
		why, more, method string
		handsOn, total    int64 // minutes
		untimed           int
	}{
		{"work and waits follow one another", "",
			"## Fold\n\nFold for [10 minutes](work:). Wait [20 minutes](wait:).\n\n## Glue\n\nGlue for [5 minutes](work:).\n", 15, 35, 0},
		{"a named wait that nothing takes up is a wait like any other", "",
			"## Fold\n\nPress them [1 h](wait:press).\n\n## Glue\n\nGlue for [5 minutes](work:).\n", 5, 65, 0},
		{"a named wait runs beside the steps until `after` takes it up", "",
			"## Fold\n\nPress them [1 h](wait:press).\n\n## Cut\n\nCut for [20 minutes](work:).\n\n" +
				"## Glue\n\nOnce [they are flat](after:press), glue for [5 minutes](work:).\n", 25, 65, 0},
		{"work that takes longer than the wait beside it", "",
			"## Fold\n\nPress them [10 minutes](wait:press).\n\n## Cut\n\nCut for [20 minutes](work:).\n\n" +
				"## Glue\n\nOnce [they are flat](after:press), glue for [5 minutes](work:).\n", 25, 25, 0},
		{"the same again, twice", "",
			"## Fold\n\nFold for [10 minutes](work:). Do [the same two more times](again:).\n", 30, 30, 0},
		{"each counts once for each piece", "",
			"## Fold\n\nFold [each of 4 stars for 10 minutes](work:).\n", 40, 40, 0},
		{"an action done again waits again", "",
			"## Fold\n\nFold for [10 minutes](work:) and press [5 minutes](wait:). Do [the same once more](again:).\n", 20, 30, 0},
		{"a wait beside the last steps is over before the kit is done", "",
			"## Fold\n\nPress them [2 h](wait:press).\n\n## Cut\n\nCut for [20 minutes](work:).\n\n" +
				"## Glue\n\nOnce [they are flat](after:press), glue for [5 minutes](work:) and dry [1 h](wait:).\n", 25, 185, 0},
		{"two waits go on side by side", "",
			"## Fold\n\nPress some [1 h](wait:press) and soak some [2 h](wait:soak).\n\n" +
				"## Glue\n\nOnce [they are flat](after:press) and [soft](after:soak), glue for [5 minutes](work:).\n", 5, 125, 0},
		{"every run counts", "runs:\n  - {name: Red}\n  - {name: Blue}\n",
			"## Fold\n\nFold for [10 minutes](work:).\n", 20, 20, 0},
		{"what is not told is not guessed", "",
			"## Fold\n\nFold them.\n\n## Glue\n\nGlue for [5 minutes](work:).\n", 5, 5, 1},
		{"what stands in a caution is not done", "",
			"## Fold\n\n> CAUTION: It takes [1 h](wait:) to cool.\n\nFold for [10 minutes](work:).\n", 10, 10, 0},
	} {
		t.Run(c.why, func(t *testing.T) {
			plan := planOf(t, c.more, c.method)
			if got := plan.HandsOn.Value(); !got.Equal(quantity.Whole(c.handsOn * minute)) {
				t.Errorf("hands-on %s, want %d min", plan.HandsOn.Sum(), c.handsOn)
			}
			if got := plan.Total.Value(); !got.Equal(quantity.Whole(c.total * minute)) {
				t.Errorf("total %s, want %d min", plan.Total.Sum(), c.total)
			}
			if len(plan.Untimed) != c.untimed {
				t.Errorf("%d steps without a time, want %d", len(plan.Untimed), c.untimed)
			}
		})
	}
}

// The times of the examples, added up by hand.
//
//	harbour-candles: a run is 5 + 5 + 20 + (2+5+2) + (5+6) + 5 = 55 min, of it 10 min
//	waiting; two runs 110 min; then 4 h after the second, 15 + 10 min, 3 days.
//	Hands-on 2 × 45 + 25 = 115 min; in all 110 + 240 + 25 + 4320 = 4695 min.
//
//	pocket-notebooks: 5 + 3×6 + 6 + 3×6 + 3×12 = 83 min; then the press, 120 min, with 8 min
//	of work beside it; then 10 + 5 min. Hands-on 83 + 8 + 15 = 106; in all 83 + 120 + 15 = 218.
//
//	drawer-sachets: 5 + 10 = 15 min; then the rest, 720 min, with 8 min of work beside it;
//	then 12 + 12 + 5 = 29 min. Hands-on 15 + 8 + 29 = 52; in all 15 + 720 + 29 = 764.
func TestTimesOfTheExamplesByHand(t *testing.T) {
	for name, want := range map[string][2]int64{
		"harbour-candles":  {115, 4695},
		"pocket-notebooks": {106, 218},
		"drawer-sachets":   {52, 764},
	} {
		k, _ := instructions.Open(os.DirFS("../../examples/"+name), name)
		plan := schedule.Of(k)
		if !plan.HandsOn.Value().Equal(quantity.Whole(want[0]*minute)) || !plan.Total.Value().Equal(quantity.Whole(want[1]*minute)) {
			t.Errorf("%s: hands-on %s, total %s, want %d and %d min", name, plan.HandsOn.Show(), plan.Total.Show(), want[0], want[1])
		}
	}
}
