package handbook

import (
	"bufio"
	_ "embed"
	"fmt"
	"net/textproto"
	"slices"
	"strings"
	"sync"
)

//go:embed densities.txt
var densityFile string

// A Density is what is known of a material's density in one state, to be offered to a
// maker who has not measured it. It is never used unless the maker takes it over.
type Density struct {
	// Material is its name, Also further names, in small letters.
	Material string
	Also     []string
	// State is what was weighed: loose, liquid, set, or "" where there is one alone.
	State string
	// Offered is the amount as kit.yaml has it, "0.90 g/mL set"; Low and High are the ends
	// found in the sources, in g/mL.
	Offered, Low, High string
	// Note says more of the figure. Source names where it is from, Known how it is known.
	Note, Source, Known string
}

// Densities gives the table. Nobody may change it.
func Densities() []Density { return densities() }

var densities = sync.OnceValue(func() []Density {
	all, err := readDensities(densityFile)
	if err != nil {
		panic(err) // a test reads it
	}
	return all
})

// DensitiesOf gives what the table has for a name that people use: "Soy wax flakes" is soy
// wax. A longer name of the table counts before a shorter one: "coconut oil", not "oil".
func DensitiesOf(name string) []Density {
	words := " " + strings.Join(strings.FieldsFunc(strings.ToLower(name), func(r rune) bool { return strings.ContainsRune(" ,.-/()", r) }), " ") + " "
	longest := 0
	var found []Density
	for _, d := range Densities() {
		for _, called := range append([]string{d.Material}, d.Also...) {
			if !strings.Contains(words, " "+called+" ") || len(called) < longest {
				continue
			}
			if len(called) > longest {
				longest, found = len(called), nil
			}
			if !slices.ContainsFunc(found, func(other Density) bool { return other.Offered == d.Offered }) {
				found = append(found, d)
			}
		}
	}
	return found
}

func readDensities(text string) ([]Density, error) {
	var all []Density
	for i, paragraph := range paragraphs(text) {
		fields, err := textproto.NewReader(bufio.NewReader(strings.NewReader(paragraph + "\n\n"))).ReadMIMEHeader()
		if err != nil {
			return nil, fmt.Errorf("densities.txt: paragraph %d is not made of lines “Key: value”: %w", i+1, err)
		}
		said := fieldsOf{values: fields}
		d := Density{
			Material: said.must("Material"), Also: listed(said.take("Also")), State: said.take("State"), Offered: said.must("Offered"),
			Low: said.must("Low"), High: said.must("High"), Note: said.take("Note"), Source: said.must("Source"), Known: said.must("Known"),
		}
		if said.err == nil {
			said.err = said.unknown()
		}
		if said.err != nil {
			return nil, fmt.Errorf("densities.txt: paragraph %d: %w", i+1, said.err)
		}
		d.Offered = strings.TrimSpace(d.Offered + " " + d.State)
		all = append(all, d)
	}
	return all, nil
}
