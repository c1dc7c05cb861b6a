package ledger_test

import (
	"testing"

	"tallyfold/kit/ledger"
	"tallyfold/kit/quantity"
)

// polish is the box that most methods here work with: wax melted with oil, poured
// into four tins. The pan keeps 10 g, the cup nothing.
const polish = `name: Bench polish
maker: Brindle Quay Workroom
makes: 4 tins
components:
  wax: {name: Beeswax pellets, packed: 400 g, spare: 20 g}
  oil: {name: Linseed oil, packed: 500 mL, density: 0.9 g/mL}
  resin: {name: Ground resin, packed: 60 g, density: 0.5–0.7 g/mL loose}
  chalk: {name: Chalk, packed: 60 g}
  tin: {name: Tin with lid, packed: 4, container: {brimful: 150 mL}}
  cloth: {name: Polishing cloth, packed: 4}
  stone: {name: Smooth stone, packed: 8, insert: {mass: 9 g, volume: 4 mL, floats: no}}
tools:
  pan: {name: Melting pan, from: customer, essential: true, holds: 2 L, residue: 10 g}
  cup: {name: Stirring cup, from: customer, essential: true, holds: 500 mL}
`

// twice is the same box made in two runs.
const twice = polish + `runs:
  - {name: Morning}
  - {name: Evening}
`

// twiceByRole makes the box in two runs, each with a colour of its own.
const twiceByRole = polish + `runs:
  - {name: White, with: {colour: chalk}}
  - {name: Amber, with: {colour: resin}}
`

// partly mixes a base once and divides it over two runs.
const partly = polish + `runs:
  - {name: Base, parts: [make-the-base]}
  - {name: White, with: {colour: chalk}, parts: [fill-two-tins]}
  - {name: Amber, with: {colour: resin}, parts: [fill-two-tins]}
`

const partlyMethod = `# Make the base

## [Melt](step:melt?in=cup)

Melt [300 g of wax](take:wax).

# Fill two tins

## [Colour](step:colour?in=pan)

Pour in [150 g of the base](move:cup?into=pan). Stir in [20 g of the colour](take:colour). Fill [each of 2 tins to 85 g](fill:tin).
`

// inPan and inCup put a method into one step worked in that vessel.
func inPan(text string) string { return "## [Make it](step:make?in=pan)\n\n" + text + "\n" }
func inCup(text string) string { return "## [Make it](step:make?in=cup)\n\n" + text + "\n" }

// meant is a method and the facts that its ledger must tell.
type meant struct{ why, kit, method, want string }

// One case for each sentence of "What is meant" that the ledger covers.
var meanings = []meant{
	{"an amount in a step is for one run, a packed amount for the box", twice,
		inPan("Melt [150 g of wax](take:wax)."), "wax used 300; wax left 100; pan keeps wax 300"},
	{"each multiplies by the containers", polish,
		inPan("Weigh in [60 g of wax for each tin](take:wax)."), "wax used 240; wax left 160"},
	{"each multiplies by the containers of that run", twice,
		inPan("Weigh in [60 g of wax for each tin](take:wax). Fill [the tins equally](fill:tin)."),
		"wax used 240; tin 1-2 wax 55; tin 3-4 wax 60; pan keeps wax 10"},
	{"in all says the whole box", twice,
		inPan("Melt [300 g of wax in all](take:wax)."), "wax used 300; pan keeps wax 300"},
	{"all of takes what the pack still holds", polish,
		inPan("Melt [150 g of wax](take:wax), then [all of the wax](take:wax)."), "wax used 400; wax left 0"},
	{"the rest of takes what is left in a pack", polish,
		inPan("Melt [half of the wax](take:wax), then [the rest of the wax](take:wax)."), "wax used 400; wax left 0; pan keeps wax 400"},
	{"a fraction is of what is there", polish,
		inPan("Melt [100 g of wax](take:wax), then [half of the wax](take:wax)."), "wax used 250; wax left 150"},
	{"a fraction is of the pack when it says so", polish,
		inPan("Melt [100 g of wax](take:wax), then [half of the pack of wax](take:wax)."), "wax used 300; wax left 100"},
	{"taking from an empty pack is a finding", polish,
		inPan("Melt [all of the wax](take:wax), then [the rest of the wax](take:wax)."), "wax used 400; snags empty wax"},
	{"up to counts its upper end", polish,
		inPan("Melt [up to 300 g of wax](take:wax)."), "wax used 300; wax left 100"},
	{"a residue stays when a vessel is emptied", polish,
		inPan("Melt [200 g of wax](take:wax). Pour [all of it](move:pan?into=cup) over."), "pan keeps wax 10; cup keeps wax 190"},
	{"a residue is a part of everything in the vessel", polish,
		inPan("Melt [300 g of wax](take:wax) with [100 mL of oil](take:oil). Pour [all of it](move:pan?into=cup) over."),
		"pan keeps wax 100/13; pan keeps oil 100/39"}, // 10 g × 300/390, and 100 mL × 10/390
	{"clean removes the residue", polish,
		inPan("Melt [200 g of wax](take:wax). Pour [all of it](move:pan?into=cup) over. Wipe [the pan](clean:pan)."),
		"pan keeps wax none; wax washed out 10; cup keeps wax 190"},
	{"left keeps the rest and leaves the residue", polish,
		inPan("Melt [250 g of wax](take:wax). Fill [each of 4 tins to 50 g](fill:tin). Keep [what is left](left:pan?as=kept)."),
		"tin 1-4 wax 50; wax kept 40; pan keeps wax 10"},
	{"what is thrown away leaves the residue too", polish,
		inPan("Melt [250 g of wax](take:wax). Fill [each of 4 tins to 50 g](fill:tin). Pour away [what is left](left:pan?as=discarded). Wipe [the pan](clean:pan)."),
		"wax discarded 40; wax washed out 10; pan keeps wax none"},
	{"an exact fill is not the last emptying: it leaves the rest", polish,
		inPan("Melt [205 g of wax](take:wax). Fill [each of 4 tins to 50 g](fill:tin)."), "tin 1-4 wax 50; pan keeps wax 5; snags clings tin"},
	{"an exact fill of all there is leaves nothing", polish,
		inPan("Melt [200 g of wax](take:wax). Fill [each of 4 tins to 50 g](fill:tin)."), "tin 1-4 wax 50; pan keeps wax none; snags clings tin"},
	{"a fill without a figure shares out all but the residue", polish,
		inPan("Melt [210 g of wax](take:wax). Fill [the tins equally](fill:tin)."), "tin 1-4 wax 50; pan keeps wax 10"},
	{"about shares out equally and compares", polish,
		inPan("Melt [210 g of wax](take:wax). Fill [each of 4 tins to about 51 g](fill:tin)."), "tin 1-4 wax 50; pan keeps wax 10"},
	{"about is off when it differs by more than a twentieth", polish,
		inPan("Melt [210 g of wax](take:wax). Fill [each of 4 tins to about 55 g](fill:tin)."), "tin 1-4 wax 50; snags not the same tin"},
	{"fill to is the total in the container", polish,
		inPan("Melt [330 g of wax](take:wax). Fill [each of 4 tins to 50 g](fill:tin). Top up [each of 4 tins to 70 g](fill:tin)."),
		"tin 1-4 wax 70; pan keeps wax 50; tin left 0"},
	{"fill with is added to it", polish,
		inPan("Melt [330 g of wax](take:wax). Fill [each of 4 tins with 50 g](fill:tin). Top up [each of 4 tins with 20 g](fill:tin)."),
		"tin 1-4 wax 70; pan keeps wax 50; tin left 0"},
	{"topping up some of the tins leaves the others", polish,
		inPan("Melt [330 g of wax](take:wax). Fill [each of 4 tins with 50 g](fill:tin). Top up [each of 2 tins with 20 g](fill:tin)."),
		"tin 1-2 wax 70; tin 3-4 wax 50; pan keeps wax 90; tin left 0"},
	{"from a tin that holds more than it is filled to nothing is poured back", polish,
		inPan("Melt [330 g of wax](take:wax). Fill [each of 4 tins with 50 g](fill:tin). Top up [each of 4 tins to 40 g](fill:tin)."),
		"tin 1-4 wax 50; pan keeps wax 130; snags not the same tin"},
	{"a vessel filled by a role, another thing in each run", twiceByRole,
		inPan("Stir in [all of the colour](take:colour)."), "chalk used 60; resin used 60; chalk left 0; resin left 0"},
	{"an empty link to a role is shared only by the runs that mean it", twiceByRole,
		inPan("Stir in [](take:colour)."), "chalk used 60; resin used 60"},
	{"a base mixed in one part is used in parts by two runs", partly, partlyMethod,
		"wax used 300; chalk used 20; resin used 20; cup keeps wax none; tin 1-2 wax 75; tin 1-2 chalk 10; tin 3-4 wax 75; tin 3-4 resin 10; snags clings tin, clings tin"},
	{"nothing from an empty pack stays nothing, and is told once", polish,
		inPan("Melt [all of the wax](take:wax?into=cup), then [the rest of the wax](take:wax). Pour [all of it](move:pan?into=cup) over."),
		"cup keeps wax 400; pan keeps wax none; snags empty wax"},
	{"an insert is not counted by fill to", polish,
		inPan("Melt [330 g of wax](take:wax). Lay [one stone](place:stone?into=tin) in each tin. Fill [each of 4 tins to 50 g](fill:tin)."),
		"stone used 4; tin 1-4 stone 1; tin 1-4 mass 50; pan keeps wax 130"},
	{"an insert each, told in all", polish,
		inPan("Lay [8 stones](place:stone?into=tin) in the tins."), "stone used 8; tin 1-4 stone 2"},
	{"inserts that do not divide are a finding", polish,
		inPan("Lay [6 stones](place:stone?into=tin) in the tins."), "stone used 4; snags uneven stone"},
	{"taking straight into the containers shares it out", polish,
		inPan("Sprinkle [40 g of chalk](take:chalk?into=tin) into the tins."), "tin 1-4 chalk 10; chalk used 40"},
	{"what is moved into the containers is shared out", polish,
		inPan("Melt [210 g of wax](take:wax). Pour [all of it](move:pan?into=tin) into the tins."),
		"tin 1-4 wax 50; tin left 0; pan keeps wax 10"},
	{"an exact amount moved into the containers is for all of them", polish,
		inPan("Melt [210 g of wax](take:wax). Pour [100 g](move:pan?into=tin) into the tins."),
		"tin 1-4 wax 25; tin left 0; pan keeps wax 110"},
	{"again does the actions before it once more", polish,
		inPan("Melt [50 g of wax](take:wax). Do [the same twice more](again:)."), "wax used 150; pan keeps wax 150"},
	{"an empty link is the pack without its spare", polish,
		inPan("Melt [](take:wax)."), "wax used 380; wax left 20"},
	{"an empty link is shared over the runs", twice,
		inPan("Melt [](take:wax)."), "wax used 380; pan keeps wax 380"},
	{"a density bridges volume and mass", polish,
		inPan("Weigh in [90 g of oil](take:oil). Pour [all of it](move:pan?into=cup) over."),
		"oil used 100; cup keeps oil 800/9; pan keeps oil 100/9"}, // 90 g ÷ 0.9; 10 g of residue ÷ 0.9
	{"no density: unknown, never zero", polish,
		inPan("Spoon in [2 tbsp of chalk](take:chalk)."), "chalk used unknown; chalk left unknown; pan keeps chalk unknown; snags no density chalk"},
	{"an amount of another kind is unknown", polish,
		inPan("Cut [20 cm of chalk](take:chalk)."), "chalk used unknown; snags other kind chalk"},
	{"one thing is lifted out of a vessel, all of it", polish,
		inPan("Lay [4 cloths](place:cloth) in [100 g of oil](take:oil). Lift [the cloths](move:cloth?from=pan&into=cup) over."),
		"cup keeps cloth 4; pan keeps oil 1000/9; cup keeps oil none"},
	{"a thing that is not there cannot be lifted out", polish,
		inPan("Weigh in [90 g of oil](take:oil). Lift [the cloths](move:cloth?from=pan&into=cup) over."), "pan keeps oil 100; snags empty cloth"},
	{"pouring an exact amount takes the same part of everything", polish,
		inCup("Stir [30 g of chalk](take:chalk) into [150 g of wax](take:wax). Pour [60 g](move:cup?into=pan) over."),
		"pan keeps chalk 10; pan keeps wax 50; cup keeps chalk 20; cup keeps wax 100"},
	{"more than is there is a finding, and takes all", polish,
		inPan("Melt [180 g of wax](take:wax). Fill [each of 4 tins to 50 g](fill:tin)."), "tin 1-4 wax 45; pan keeps wax none; snags short pan, clings tin"},
	{"pouring from an empty vessel is a finding", polish,
		inCup("Pour [all of it](move:cup?into=pan) over."), "snags empty cup"},
	{"what was poured out to the last gram is empty", polish,
		inCup("Weigh in [50 g of wax](take:wax). Pour [50 g](move:cup?into=pan) over, then [all of it](move:cup?into=pan)."),
		"pan keeps wax 50; cup keeps wax none; snags empty cup"},
	{"filling from an empty vessel is a finding", polish,
		inPan("Fill [each of 4 tins to 50 g](fill:tin)."), "tin 1-4 mass 0; snags empty pan"},
	{"there must be containers enough", polish,
		inPan("Melt [380 g of wax](take:wax). Fill [each of 6 tins to 50 g](fill:tin)."), "tin used 6; tin left -2; snags not enough containers tin"},
	{"each with a fraction is of what was there before the first", polish,
		inPan("Weigh in [a quarter of the wax for each tin](take:wax)."), "wax used 400; wax left 0"},
	{"what joins no mixture is used up", polish,
		inPan("Wrap them in [4 cloths](use:cloth)."), "cloth used 4; cloth left 0; pan keeps cloth none"},
	{"several of what is counted, without a number, are all there are", polish,
		inPan("Wrap them in [the cloths](use:cloth)."), "cloth used 4; cloth left 0"},
	{"and are shared over the runs", twice,
		inPan("Wrap them in [the cloths](use:cloth)."), "cloth used 4; cloth left 0"},
	{"one of what is counted, without a number, is one", polish,
		inPan("Wrap them in [the cloth](use:cloth)."), "cloth used 1; cloth left 3"},
	{"what stands in a caution is told, not done", polish,
		inPan("> CAUTION: Never melt [400 g of wax](take:wax) at once.\n\nMelt [100 g of wax](take:wax)."), "wax used 100"},
	{"a figure told again moves nothing", polish,
		inPan("Melt [100 g of wax](take:wax). Did you weigh [100 g of wax](same:wax)?"), "wax used 100"},
	{"a figure told again must agree", polish,
		inPan("Melt [100 g of wax](take:wax). Did you weigh [120 g of wax](same:wax)?"), "wax used 100; snags not the same wax"},
	{"of several tellings the first is done and the rest compared", polish,
		inPan("Melt [100 g (3 1/2 oz) of wax](take:wax)."), "wax used 100"},
	{"a telling that differs by more than its last digit is a finding", polish,
		inPan("Melt [100 g (5 oz) of wax](take:wax)."), "wax used 100; snags not the same wax"},
	{"a fill told again in another unit must agree", polish,
		inPan("Melt [200 g of wax](take:wax). Fill [each of 4 tins to 50 g (1.8 oz)](fill:tin)."), "tin 1-4 wax 50; snags clings tin"}, // 50 g is 1.76 oz
	{"a fill told again must agree within its last digit", polish,
		inPan("Melt [200 g of wax](take:wax). Fill [each of 4 tins to 50 g (2.2 oz)](fill:tin)."), "tin 1-4 wax 50; snags not the same tin, clings tin"},
	{"containers beyond those packed are counted once, those with an insert too", polish,
		inPan("Melt [300 g of wax](take:wax). Lay [one stone](place:stone?into=tin) in each. Fill [each of 5 tins to 50 g](fill:tin)."),
		"tin used 5; tin 1-5 wax 50; snags not enough containers tin"},
	{"one in each means those that the run goes on to fill", polish,
		inPan("Lay [one stone](place:stone?into=tin) in each. Melt [150 g of wax](take:wax). Fill [each of 3 tins to 50 g](fill:tin)."),
		"stone used 3; tin used 3; tin 1-3 wax 50; snags clings tin"},
	{"what is weighed into no vessel is a finding where something is poured later", polish,
		"## [Weigh](step:weigh)\n\nWeigh [100 g of wax](take:wax).\n\n" + inPan("Melt [200 g of wax](take:wax). Fill [each of 4 tins to 50 g](fill:tin)."),
		"wax used 300; tin 1-4 wax 50; snags no vessel wax, clings tin"},
	{"with all of, the figure is compared and not done", polish,
		inPan("Melt [all of the wax (300 g)](take:wax)."), "wax used 400; snags not the same wax"},
}

func TestWhatIsMeant(t *testing.T) {
	for _, c := range meanings {
		t.Run(c.why, func(t *testing.T) {
			holdsTrue(t, ledger.Follow(read(t, c.kit, c.method)), c.want)
		})
	}
}

// A spoon of powder is a range: 1 tbsp (14.78676478125 mL, NIST SP 811 B.8) at
// 0.5 to 0.7 g/mL is 7.393382390625 to 10.350735346875 g.
func TestASpoonOfPowderIsARange(t *testing.T) {
	l := ledger.Follow(read(t, polish, inPan("Spoon in [1 tbsp of resin](take:resin).")))
	tablespoon := quantity.Ratio(1478676478125, 100_000_000_000)
	low, high := l.Balance("resin").Used.Worst()
	if want := tablespoon.Times(quantity.Ratio(5, 10)); !low.Equal(want) {
		t.Errorf("at least %s g, want %s", low, want)
	}
	if want := tablespoon.Times(quantity.Ratio(7, 10)); !high.Equal(want) {
		t.Errorf("at most %s g, want %s", high, want)
	}
}

// "To X" is a temperature; "by X" is a difference, in which 18 °F are 10 °C (NIST
// SP 811, 8.5 and B.8: a degree Fahrenheit is 5/9 of a kelvin).
func TestToATemperatureAndByADifference(t *testing.T) {
	for words, want := range map[string]int64{
		"Warm it [to 75 °C](warm:).":                                 75,
		"Warm it [to 75 °C](warm:), then [by 10 °C](warm:).":         85,
		"Warm it [to 167 °F](warm:), then let it [by 18 °F](cool:).": 65,
	} {
		l := ledger.Follow(read(t, polish, inPan("Melt [100 g of wax](take:wax). "+words)))
		pan := l.Stages[0].Vessels[0]
		if !pan.Temperature.Known() || !pan.Temperature.Value().Equal(whole(want)) {
			t.Errorf("%s: %s, want %d °C", words, pan.Temperature.Show(), want)
		}
	}
	l := ledger.Follow(read(t, polish, inPan("Melt [100 g of wax](take:wax). Warm it [by 10 °C](warm:).")))
	if pan := l.Stages[0].Vessels[0]; pan.Temperature != nil {
		t.Errorf("10 °C more than nobody knows is %s", pan.Temperature.Show())
	}
}
