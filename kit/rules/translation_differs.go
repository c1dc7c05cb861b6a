package rules

import (
	"slices"
	"strings"

	"tallyfold/kit"
	"tallyfold/kit/diag"
)

var translationDiffers = Rule{
	Name:     "translation-differs",
	Severity: diag.MustFix,
	Title:    "A translation does something else than the method",
	Explanation: `One box holds one kit, whatever language its booklet is in. Every step of a translation
must take the same amounts, in the same order, with the same tools, waits, times,
temperatures and cautions.

The links of each step are held against those of the method, in order: what they do, to
what, how much. An amount may be told in another unit, as to the last digit written or
within 2 % (common practice, no source). Tools and vessels are held by name, in links and
in running text; for a thing without a name in that language (“names:” in kit.yaml) it is
told that this cannot be checked. Cautions must be as many, with the same signal words,
each before the same action.

Put the translation right; where it is the method that is wrong, put both right.`,
	NotLookedAt: func(s Subject) []string {
		passed := untranslated(s)
		for _, t := range s.Kit.Translations {
			if !t.WordsRead {
				passed = append(passed, "the amounts of "+fileOf(t.Method)+" are not compared, as its language is not read")
			}
		}
		return passed
	},
	Check: func(s Subject) []diag.Finding {
		return eachTranslation(s.Kit, func(t *kit.Translation) []diag.Finding {
			d := &difference{Subject: s, translation: t}
			for _, pair := range stepPairs(s.Kit, t) {
				d.stepPair = pair
				d.vessel()
				d.actions()
				d.tellings()
				d.cues()
				d.tools()
				d.cautions(pair.own.Cautions, pair.other.Cautions, pair.own.ID)
			}
			d.introductions()
			d.nameless()
			return d.findings
		})
	},
}

// A difference gathers what differs between the method and one translation, step by
// step.
type difference struct {
	Subject
	stepPair
	translation *kit.Translation
	findings    []diag.Finding
	// withoutName are tools that running text names and the language has no name for.
	withoutName []string
	amounts     followedTwice
}

// add tells a difference in the step at hand. Differences of one step have one cause.
func (d *difference) add(f diag.Finding) {
	if f.About == "" {
		f.About = d.own.ID
	}
	f.Cause = translationCause(d.translation, d.own)
	f.Follows = slices.ContainsFunc(d.findings, func(other diag.Finding) bool { return other.Cause == f.Cause })
	d.findings = append(d.findings, f)
}

// here names the step of the translation.
func (d *difference) here() string { return inStep(d.other) + " of " + fileOf(d.translation.Method) }

func (d *difference) vessel() {
	if d.other.VesselSpan.Known() && d.other.Vessel != d.own.Vessel {
		worksIn := func(vessel string) string {
			if vessel == "" {
				return "in no vessel"
			}
			return "in " + d.Kit.Called(vessel)
		}
		d.add(diag.Finding{
			Where:    d.other.VesselSpan,
			Found:    d.here() + " is worked " + worksIn(d.other.Vessel) + ", and " + worksIn(d.own.Vessel) + " in the method",
			Expected: "the same vessel, or none in the heading: it is then that of the method",
			Remedies: diag.Fix("take ?in= out of the heading"),
			Also:     besideMethod(d.own.Span, "the heading in the method"),
		})
	}
}

// tellings holds figures that are told again against each other, and what is pointed
// at.
func (d *difference) tellings() {
	for _, kind := range []kit.Kind{kit.Same, kit.Hazard, kit.ToStep, kit.ToHelp} {
		own, other := ofKind(d.own, kind), ofKind(d.other, kind)
		for _, pair := range align(own, other) {
			d.aligned(pair)
		}
	}
}

func ofKind(step *kit.Step, kinds ...kit.Kind) []*kit.Operation {
	var all []*kit.Operation
	for _, o := range step.Operations {
		if slices.Contains(kinds, o.Kind) {
			all = append(all, o)
		}
	}
	return all
}

// cues counts what to look for and the pictures, whose words only a reader can compare.
func (d *difference) cues() {
	for _, one := range []struct {
		kind kit.Kind
		what string
	}{{kit.Cue, "cue"}, {kit.ShowPicture, "picture"}} {
		own, other := ofKind(d.own, one.kind), ofKind(d.other, one.kind)
		if len(own) == len(other) {
			continue
		}
		f := diag.Finding{
			Where:    d.other.Span,
			Found:    d.here() + " has " + plural(len(other), one.what) + ", and the method " + plural(len(own), one.what),
			Expected: "as many as in the method",
			Remedies: diag.Fix("translate the missing one", "take the further one out"),
			Also:     besideMethod(d.own.Span, "the step of the method"),
		}
		if len(other) > len(own) {
			slices.Reverse(f.Remedies)
			f.Where = other[len(other)-1].Span
		} else {
			f.Also = besideMethod(own[len(own)-1].Span, "in the method")
		}
		d.add(f)
	}
}

// tools holds the tools and vessels that the step names against those of the method.
// A bare word may have been put otherwise, so that it should be fixed, not must.
func (d *difference) tools() {
	own, other := named(d.Kit, d.own), named(d.Kit, d.other)
	for _, use := range own {
		if !isAmongNamed(other, use.key) && use.isSure(d.Kit.Called(use.key)) && (use.linked || !worksWith(d.other, use.key)) {
			d.notNamed(use)
		}
	}
	for _, use := range other {
		name, _ := d.Kit.Named(use.key)
		if isAmongNamed(own, use.key) || !use.isSure(name.In(d.translation.Language)) || !use.linked && worksWith(d.own, use.key) {
			continue
		}
		d.add(diag.Finding{
			Severity: weightOf(use), Where: use.at,
			Found:    d.here() + " speaks of “" + use.at.Text() + "” (" + name.String() + "), and the method does not",
			Expected: "the same tools and vessels in both",
			Remedies: diag.Fix("take it out", "name it in the method too, if it is needed"),
			Also:     besideMethod(d.own.Span, "the step of the method"),
		})
	}
}

func weightOf(use mentioned) diag.Severity {
	if use.linked {
		return diag.MustFix
	}
	return diag.ShouldFix
}

// notNamed tells a tool of the method that the translation leaves out, where it has a
// name to look for.
func (d *difference) notNamed(use mentioned) {
	name, _ := d.Kit.Named(use.key)
	if !use.linked && !name.HasNameIn(d.translation.Language) {
		if !slices.Contains(d.withoutName, use.key) {
			d.withoutName = append(d.withoutName, use.key)
		}
		return
	}
	d.add(diag.Finding{
		Severity: weightOf(use), Where: d.other.Span,
		Found:    d.here() + " does not speak of " + name.String() + ", and the method does",
		Expected: "the same tools and vessels in both",
		Remedies: diag.Fix("name it where it is used: [" + strings.ToLower(name.In(d.translation.Language)) + "](" + kindOfThing(d.Kit, use.key) + ":" + use.key + ")"),
		Also:     besideMethod(use.at, "named here in the method"),
	})
}

func kindOfThing(k *kit.Kit, key string) string {
	if k.Tool(key) != nil {
		return string(kit.WithTool)
	}
	return string(kit.WithVessel)
}

// nameless tells once a file which names could not be looked for.
func (d *difference) nameless() {
	if len(d.withoutName) == 0 || !d.translation.WordsRead {
		return
	}
	var names []string
	for _, key := range d.withoutName {
		names = append(names, d.Kit.Called(key))
	}
	first, _ := d.Kit.Named(d.withoutName[0])
	d.findings = append(d.findings, diag.Finding{
		Severity: diag.WorthKnowing, Where: first.IDSpan, About: d.translation.Language,
		Found:    "cannot check whether " + fileOf(d.translation.Method) + " names " + strings.Join(names, ", ") + " where the method does",
		Expected: "a name in that language for what the steps name without a link",
		Remedies: diag.Fix("write “names: {" + d.translation.Language + ": …}” under " + strings.Join(d.withoutName, ", ") + " in kit.yaml"),
		Also:     besideMethod(d.translation.Method.Steps()[0].Span, "the translation"),
	})
}
