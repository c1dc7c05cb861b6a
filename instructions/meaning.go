package instructions

import (
	"slices"

	"tallyfold/kit"
	"tallyfold/kit/quantity"
)

// A thing is what a name in a destination may be the name of; several are added up.
type thing int

const (
	component thing = 1 << iota
	container       // a component that is filled
	household
	tool
	mixture
	piece
	namedStep
	namedWait
)

// material is what can be taken from a pack or from the household; vessels hold it.
const (
	material = component | household
	vessels  = tool | component | household
	anything = vessels | mixture | piece | namedStep | namedWait
)

// A need says whether something has to be there.
type need int

const (
	refused need = iota
	allowed
	needed
)

// A meaning is what may stand in the links of one kind.
type meaning struct {
	kind   kit.Kind
	target need
	// sorts are the sorts of thing the target may be; 0 is a name that is judged
	// elsewhere, or that the maker makes up.
	sorts  thing
	params []string
	// amount says whether the text must tell one; dimensions are those it may tell
	// (nil: any).
	amount     need
	dimensions []quantity.Dimension
	// does says in a few words what such a link is for; it completes "… is for".
	does string
}

var (
	measured     = []quantity.Dimension{quantity.Mass, quantity.Volume, quantity.Count, quantity.Length, quantity.Area, quantity.Share}
	poured       = []quantity.Dimension{quantity.Mass, quantity.Volume, quantity.Count, quantity.Length, quantity.Share}
	times        = []quantity.Dimension{quantity.Duration}
	temperatures = []quantity.Dimension{quantity.Temperature, quantity.TemperatureDifference}
	counts       = []quantity.Dimension{quantity.Count}
)

// meanings are all destinations. A kind is added here and, where its words say
// more than an amount, in phrase.go.
var meanings = []meaning{
	{kind: kit.Take, target: needed, sorts: material, params: []string{"into", "in", "either", "strands"},
		amount: needed, dimensions: measured, does: "taking material from its pack"},
	{kind: kit.Use, target: needed, sorts: material, params: []string{"either", "strands"},
		amount: needed, dimensions: measured, does: "what is used up and joins no mixture"},
	{kind: kit.Move, target: allowed, sorts: vessels | mixture, params: []string{"into", "from", "in"},
		amount: allowed, dimensions: poured, does: "pouring from one vessel into another"},
	{kind: kit.Fill, target: needed, sorts: container, params: []string{"from", "in"},
		amount: allowed, dimensions: poured, does: "filling containers"},
	{kind: kit.Place, target: needed, sorts: material, params: []string{"into", "in", "either"},
		amount: allowed, dimensions: measured, does: "placing things into containers or a vessel"},
	{kind: kit.WithVessel, target: needed, sorts: vessels, does: "naming a vessel"},
	{kind: kit.WithTool, target: needed, sorts: tool, does: "naming a tool"},
	{kind: kit.Work, amount: needed, dimensions: times, does: "time spent working"},
	{kind: kit.Wait, target: allowed, amount: needed, dimensions: times, does: "time spent waiting"},
	{kind: kit.After, target: needed, sorts: namedWait, does: "saying that a named wait is over"},
	{kind: kit.Again, amount: needed, dimensions: counts, does: "doing the actions before it again"},
	{kind: kit.Left, target: allowed, sorts: vessels | mixture, params: []string{"as", "from"},
		amount: allowed, dimensions: measured, does: "what is done with what is left"},
	{kind: kit.Clean, target: allowed, sorts: tool | component, does: "emptying a vessel of its residue"},
	{kind: kit.Warm, target: allowed, sorts: vessels | mixture, params: []string{"in"},
		amount: needed, dimensions: temperatures, does: "bringing something to a temperature"},
	{kind: kit.Cool, target: allowed, sorts: vessels | mixture, params: []string{"in"},
		amount: needed, dimensions: temperatures, does: "letting something down to a temperature"},
	{kind: kit.Cue, amount: allowed, does: "what to look for"},
	{kind: kit.Same, target: needed, sorts: anything, amount: needed, does: "a figure told again"},
	{kind: kit.Hazard, target: needed, does: "words that answer a hazard"},
	{kind: kit.ToStep, target: needed, does: "pointing at a step"},
	{kind: kit.ToHelp, target: needed, does: "pointing at a trouble"},
	{kind: kit.ShowPicture, target: needed, params: []string{"drawn-for"}, does: "a picture"},
}

// allParams are the names that may stand behind a question mark somewhere.
var allParams = []string{"in", "into", "from", "as", "either", "strands", "drawn-for", "of"}

// does are the kinds that make something happen, in the order they are told to people.
var doing = []kit.Kind{kit.Take, kit.Use, kit.Move, kit.Fill, kit.Place, kit.Work, kit.Wait, kit.After,
	kit.Again, kit.Left, kit.Clean, kit.Warm, kit.Cool}

// meaningOf gives what a kind may hold, nil for a word that is no kind.
func meaningOf(kind string) *meaning {
	i := slices.IndexFunc(meanings, func(m meaning) bool { return string(m.kind) == kind })
	if i < 0 {
		return nil
	}
	return &meanings[i]
}

// kindNames are the words that may stand before a colon.
func kindNames() []string {
	names := make([]string, len(meanings))
	for i, m := range meanings {
		names[i] = string(m.kind)
	}
	return names
}
