package instructions

import (
	"testing"

	"tallyfold/kit"
	"tallyfold/kit/diag"
	"tallyfold/kit/load"
	"tallyfold/kit/quantity"
	"tallyfold/kit/source"
)

// gels is a kit of the Brindle Quay Workroom that the tests of this package speak
// of: two runs from one base, a heated step, inserts and jars.
const gels = `name: Quayside scent gels
maker: Brindle Quay Workroom
makes: 6 jars
audience: {age: 14+, skill: beginner}
time: {hands-on: 50 min, total: 5 h}
measures:
  drop: 0.05 mL
components:
  powder:
    name: Gelling powder
    packed: 20.5 g ± 0.5 g
    density: 0.50–0.70 g/mL
  glycerin: {name: Glycerin, packed: 62 g ± 1 g, spare: 1 g, density: 1.26 g/mL}
  pine: {name: Pine fragrance, packed: 12 mL, density: 0.90 g/mL}
  salt: {name: Sea salt fragrance, packed: 12 mL, density: 0.85 g/mL}
  green: {name: Green tint, packed: 2 mL, density: 1.0 g/mL}
  blue: {name: Blue tint, packed: 2 mL, density: 1.0 g/mL}
  jar:
    name: Jar with lid
    packed: 6
    container: {brimful: 235 mL, headspace: 15 mL, withstands: 90 °C, inside: cylinder 68 mm wide}
  pebbles: {name: Bag of pebbles, packed: 6, insert: {mass: 40 g, volume: 15 mL}}
  label: {name: Paper label, packed: 6}
  cord: {name: Hemp cord, packed: 3 m}
household:
  water: {name: Tap water, density: 0.998 g/mL}
  foil: {name: Kitchen foil}
tools:
  scale: {name: Kitchen scale, from: customer, essential: true, reads to: 1 g}
  cup: {name: Small cup, from: customer, essential: true, holds: 200 mL, residue: 1 g ± 0.5 g}
  pan: {name: Saucepan, from: customer, essential: true, holds: 2 L, residue: 10 g ± 4 g}
  blender: {name: Stick blender, from: customer, essential: true}
mixtures:
  gel: {name: Scent gel, made in: pan, density: 1.01–1.03 g/mL}
pieces:
  pot: {name: Pot of gel, count: 6, in: jar}
runs:
  - {name: Pine, with: {scent: pine, tint: green}}
  - {name: Salt, with: {scent: salt, tint: blue, extra: label}}
`

// read reads a kit.yaml that must be without fault.
func read(t testing.TB, yaml string) *kit.Kit {
	t.Helper()
	k, found := load.Kit(source.NewFile("kit.yaml", []byte(yaml)))
	for _, f := range found {
		t.Errorf("kit.yaml: %s: %s at %q", f.Rule, f.Found, f.Where.Text())
	}
	return k
}

// readStep reads one step of a method for the gels, worked in the pan.
func readStep(t testing.TB, text string) (*kit.Step, diag.List) {
	t.Helper()
	return readStepOf(t, read(t, gels), "## [Try](step:try?in=pan)\n\n"+text+"\n")
}

func readStepOf(t testing.TB, k *kit.Kit, method string) (*kit.Step, diag.List) {
	t.Helper()
	m, found := ReadMethod(source.NewFile("method.md", []byte(method)), k, load.Amounts(k))
	steps := m.Steps()
	if len(steps) == 0 {
		t.Fatalf("no step in %q", method)
	}
	return steps[0], found
}

// without gives a list without the findings of some rules.
func without(found diag.List, rules ...string) diag.List {
	var rest diag.List
next:
	for _, f := range found {
		for _, rule := range rules {
			if f.Rule == rule {
				continue next
			}
		}
		rest = append(rest, f)
	}
	return rest
}

// number reads a number for a table of a test.
func number(t testing.TB, text string) quantity.Number {
	t.Helper()
	n, ok := quantity.ParseNumber(text)
	if !ok {
		t.Fatalf("%q is no number", text)
	}
	return n
}
