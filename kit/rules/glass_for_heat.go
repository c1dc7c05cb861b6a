package rules

import (
	"slices"

	"tallyfold/kit"
	"tallyfold/kit/diag"
	"tallyfold/kit/ledger"
	"tallyfold/kit/quantity"
)

// glassBears is the temperature that a household glass which is not made for heat is
// trusted with, °C (common practice, no source).
const glassBears = 60

var glassForHeat = Rule{
	Name:     "glass-for-heat",
	Severity: diag.MustFix,
	Sums:     true,
	Title:    "Something hot is held in a glass that is not made for heat",
	Explanation: `A drinking glass or a jam jar that once held something cold can crack when hot wax goes in,
and empties itself over the hands that hold it.

Tools and containers of the customer's or of the box whose names say that they are drinking
glasses, tumblers, wine glasses or jam jars are held against the hottest that is ever in
them: 60 °C and over (common practice, no source) is told, unless “withstands” says that
they bear more.

Name a vessel made for heat, or say under “withstands” what it bears, from its maker.`,
	Check: func(s Subject) []diag.Finding {
		names := coldGlasses[language(s.Kit)]
		if names == nil {
			return []diag.Finding{noWords(s.Kit, "glasses that are not made for heat", coldGlasses)}
		}
		var all []perRun
		for _, meeting := range glassesMet(s) {
			if slices.ContainsFunc(names, func(phrase []string) bool { return holdsPhrase(wordsOf(s.Kit.Called(meeting.id)), phrase) }) {
				all = append(all, perRun{meeting.run, diag.Finding{
					Where: meeting.step.Span, About: meeting.id,
					Found:    inStep(meeting.step) + " has " + meeting.temperature.Show() + " in " + s.Kit.Called(meeting.id) + ", which is not made for heat",
					Expected: "a vessel made for heat, or “withstands:” from its maker",
					Remedies: diag.Fix("name a heatproof jug or a saucepan instead", "write what it withstands, if it is made for heat"),
				}})
			}
		}
		return overRuns(s.Kit, all)
	},
}

// coldGlasses are names of glasses that are not made for heat, by language.
var coldGlasses = map[string][][]string{
	"en": cutAll([]string{"drinking glass", "water glass", "wine glass", "tumbler", "jam jar"}),
	"fr": cutAll([]string{"verre à boire", "verre à eau", "verre à vin", "pot de confiture"}),
	"de": cutAll([]string{"trinkglas", "wasserglas", "weinglas", "marmeladenglas"}),
	"es": cutAll([]string{"vaso de agua", "vaso de cristal", "copa de vino", "tarro de mermelada"}),
	"nl": cutAll([]string{"drinkglas", "waterglas", "wijnglas", "jampot"}),
	"it": cutAll([]string{"bicchiere di vetro", "bicchiere da acqua", "bicchiere da vino", "vasetto di marmellata"}),
}

// glassesMet are vessels and containers with something hot in them that do not say what
// they withstand.
func glassesMet(s Subject) []meeting {
	var all []meeting
	add := func(run *kit.Run, step *kit.Step, temperature *ledger.Figure, id string) {
		limit := kit.Said[quantity.Amount]{}
		if tool := s.Kit.Tool(id); tool != nil {
			limit = tool.Withstands
		} else if c := s.Kit.Component(id); c != nil {
			limit = heatLimit(c)
		}
		if !limit.Given() && temperature.Known() && !temperature.Value().Less(quantity.Whole(glassBears)) {
			all = append(all, meeting{run: run, step: step, temperature: temperature, id: id})
		}
	}
	for _, stage := range s.Ledger.Stages {
		for _, vessel := range stage.Vessels {
			add(stage.Run, stage.Step, vessel.Temperature, vessel.Vessel)
		}
	}
	for _, f := range s.Ledger.Fillings {
		add(f.Run, f.Step, f.Temperature, f.Container.ID)
	}
	return all
}
