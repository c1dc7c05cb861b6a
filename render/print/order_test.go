package print

import (
	"bytes"
	"errors"
	"fmt"
	"testing"
)

// filed writes a PDF of one page with its objects in an order.
func filed(order []int) []byte {
	objects := map[int]string{
		1: "<</Type/Catalog/Pages 2 0 R>>", 2: "<</Type/Pages/Kids[4 0 R]/Count 1>>",
		4: "<</Type/Page/Parent 2 0 R/MediaBox[0 0 100 200]>>", 5: "<</Title(In order)>>",
	}
	var out bytes.Buffer
	out.WriteString("%PDF-1.4\n")
	at := map[int]int{}
	for _, number := range order {
		at[number] = out.Len()
		fmt.Fprintf(&out, "%d 0 obj\n%s\nendobj\n", number, objects[number])
	}
	table := out.Len()
	fmt.Fprintf(&out, "xref\n0 3\n0000000003 65535 f \n%010d 00000 n \n%010d 00000 n \n4 2\n%010d 00000 n \n%010d 00000 n \n", at[1], at[2], at[4], at[5])
	fmt.Fprintf(&out, "trailer\n<</Root 1 0 R/Info 5 0 R/Size 6>>\nstartxref\n%d\n%%%%EOF\n", table)
	return out.Bytes()
}

// TestInOrder: in whatever order the objects were written, the file is the same, and one
// that another hand's reader can read.
func TestInOrder(t *testing.T) {
	want := filed([]int{1, 2, 4, 5})
	for _, order := range [][]int{{1, 2, 4, 5}, {5, 4, 2, 1}, {4, 1, 5, 2}} {
		got, err := inOrder(filed(order))
		if err != nil || !bytes.Equal(got, want) {
			t.Errorf("%v: %v\n%s", order, err, got)
		}
		if reader := read(t, got); reader.NumPage() != 1 || reader.Trailer().Key("Info").Key("Title").Text() != "In order" {
			t.Errorf("%v can't be read any more", order)
		}
	}
	for _, broken := range []string{"", "no PDF", "startxref\n99\n%%EOF", "xref\nstartxref\n0\n%%EOF", "xref\n0 1\n9999999999 00000 n \ntrailer\nstartxref\n0\n%%EOF"} {
		if _, err := inOrder([]byte(broken)); !errors.Is(err, errOrder) {
			t.Errorf("%q gives %v", broken, err)
		}
	}
}

func FuzzInOrder(f *testing.F) {
	f.Add(filed([]int{4, 1, 5, 2}))
	f.Add([]byte("xref\n0 1\n0000000000 00000 n \ntrailer\nstartxref\n0\n%%EOF"))
	f.Fuzz(func(t *testing.T, pdf []byte) {
		if got, err := inOrder(pdf); err == nil && len(got) != len(pdf) {
			t.Errorf("%d bytes became %d", len(pdf), len(got))
		}
	})
}
