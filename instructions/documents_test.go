package instructions

import (
	"testing"

	"github.com/google/go-cmp/cmp"
)

// Only a file of the folder that holds something can back a claim.
func TestDocumentsOfClaims(t *testing.T) {
	claims := "claims:\n" +
		"  - {says: Burns for 30 hours, shown by: trials/burn.yaml}\n" +
		"  - {says: Holds a hundred times, shown by: trials/none.yaml}\n" +
		"  - {says: Sets hard, shown by: trials/empty.yaml}\n" +
		"  - {says: Comes from afar, shown by: ../elsewhere.md}\n" +
		"  - {says: Stands in a folder, shown by: trials/}\n" +
		"  - {says: Makes six jars, shown by: pieces}\n"
	k, _ := Open(folder(map[string]string{
		"kit.yaml": gels + claims, "method.md": oneStep,
		"trials/burn.yaml": "hours: 31", "trials/empty.yaml": "", "elsewhere.md": "x",
	}), "quayside")
	if diff := cmp.Diff([]string{"trials/burn.yaml"}, k.Documents); diff != "" {
		t.Error(diff)
	}
}
