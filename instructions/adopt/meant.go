package adopt

import (
	"slices"

	"tallyfold/instructions"
	"tallyfold/kit"
	"tallyfold/kit/load"
	"tallyfold/kit/source"
)

// readAsMeant leaves those out that the reader of methods would not read as they are meant,
// such as in code or in a table of another sort.
func readAsMeant(method *source.File, k *kit.Kit, all []Could) []Could {
	for range all { // each round leaves at least one out
		text, starts := with(method.Text, all)
		read, found := instructions.ReadMethod(source.NewFile(method.Name, text), k, load.Amounts(k))
		operations, named := operationsAt(read), namedSteps(read)
		kept := slices.Clone(all)[:0]
		for i, one := range all {
			o := operations[starts[i]]
			if one.Kind == StepStart && named[one.Destination] || o != nil && !o.Aside && o.Does() == one.Destination && (one.Kind == Cue || !blamed(found, o)) {
				kept = append(kept, one)
			}
		}
		if len(kept) == len(all) {
			return kept
		}
		all = kept
	}
	return all
}

// namedSteps are the destinations of all headings that are links.
func namedSteps(read kit.Method) map[string]bool {
	all := map[string]bool{}
	for _, step := range read.Steps() {
		if !step.Named {
			continue
		}
		destination := "step:" + step.ID
		if step.Vessel != "" {
			destination += "?in=" + step.Vessel
		}
		all[destination] = true
	}
	return all
}

// with writes all links into the method, and says where each begins.
func with(text []byte, all []Could) (linked []byte, starts []int) {
	const marks = 40 // about so many bytes are added by each
	linked = make([]byte, 0, len(text)+marks*len(all))
	at := 0
	for _, one := range all {
		linked = append(linked, text[at:one.Start]...)
		starts = append(starts, len(linked))
		linked = append(linked, "["+string(text[one.Start:one.End])+"]("+one.Destination+")"...)
		at = one.End
	}
	return append(linked, text[at:]...), starts
}
