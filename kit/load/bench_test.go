package load

import (
	"fmt"
	"strings"
	"testing"

	"tallyfold/kit/source"
)

// fortyComponents is a kit far larger than most.
func fortyComponents() *source.File {
	var b strings.Builder
	b.WriteString("name: A large kit\nmakes: 40 pieces\ntime: {hands-on: 2 h, total: 6 h}\ncomponents:\n  base: {packed: 1 kg}\n")
	for i := range 39 {
		fmt.Fprintf(&b, "  part-%d:\n    name: Part number %d\n    packed: %d.5 g ± 0.5 g\n    spare: 1 g\n    density: 0.50–0.70 g/mL # loose\n"+
			"    share: [at most 2 %% of mixture, at least 1/2 %% of base]\n    add below: 60 °C\n", i, i, i+20)
	}
	b.WriteString("tools:\n")
	for i := range 10 {
		fmt.Fprintf(&b, "  tool-%d: {name: Tool %d, from: customer, essential: yes, holds: 2 L, residue: 10 g ± 4 g}\n", i, i)
	}
	return source.NewFile("kit.yaml", []byte(b.String()))
}

func BenchmarkKit(b *testing.B) {
	file := fortyComponents()
	b.SetBytes(int64(len(file.Text)))
	for b.Loop() {
		if _, found := Kit(file); len(found) > 0 {
			b.Fatal(tell(found))
		}
	}
}
