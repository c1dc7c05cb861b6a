package print

import (
	"bytes"
	"fmt"
	"regexp"
	"slices"
	"strconv"
)

var (
	// dates match the two moments that the browser writes into the first object, the description of the file.
	dates = regexp.MustCompile(`/(?:CreationDate|ModDate) \(D:[^()]*\)`)
	// nodes match the names that the browser gives to table headers, to point at them from the cells.
	nodes = regexp.MustCompile(`\(node(\d{8})\)`)
	// boxes match the size of each page, in points of 1/72 inch.
	boxes = regexp.MustCompile(`/MediaBox \[0 0 ([0-9.]+) ([0-9.]+)\]`)
)

// normalise makes two prints of one page the same, byte for byte. What differs is the date, which is taken out, as
// a booklet printed again is not another booklet; and the names of nodes, which count on as long as the browser runs.
// Every byte stays where it was, since a PDF lists the places of its objects.
func normalise(pdf []byte) error {
	end := bytes.Index(pdf, []byte("endobj"))
	if end < 0 {
		return fmt.Errorf("the browser's PDF can't be read: it has no objects")
	}
	for _, at := range dates.FindAllIndex(pdf[:end], -1) {
		for i := at[0]; i < at[1]; i++ {
			pdf[i] = ' '
		}
	}
	renumber(pdf)
	return nil
}

// renumber lets the numbers of nodes begin at 1, in the same order: the file has them sorted.
func renumber(pdf []byte) {
	places := nodes.FindAllSubmatchIndex(pdf, -1)
	var numbers []string // as all have eight digits, their order as text is that as numbers
	for _, place := range places {
		numbers = append(numbers, string(pdf[place[2]:place[3]]))
	}
	sorted := slices.Compact(slices.Sorted(slices.Values(numbers)))
	for i, place := range places {
		rank, _ := slices.BinarySearch(sorted, numbers[i])
		copy(pdf[place[2]:place[3]], fmt.Sprintf("%08d", rank+1))
	}
}

// slack is how far a page may be from its paper, in millimetres: browsers round to their own dots. ISO 216 allows
// the cut sheet itself 1.5 mm.
const slack = 0.5

// checkPaper refuses pages of another size, which come from a style sheet that names one: they would be scaled or
// cut when printed. A paper without a size takes what the page says.
func checkPaper(pdf []byte, paper Paper) error {
	found := boxes.FindAllSubmatch(pdf, -1)
	if len(found) == 0 {
		return fmt.Errorf("the browser's PDF can't be read: its pages have no size")
	}
	if paper == (Paper{}) {
		return nil
	}
	for _, box := range found {
		width, height := millimetres(box[1]), millimetres(box[2])
		if !near(width, paper.Width) || !near(height, paper.Height) {
			return fmt.Errorf("the page's own style makes it %.0f × %.0f mm, but it should be printed on %s, "+
				"%.0f × %.0f mm: take the size out of @page in the style sheet", width, height, paper.Name,
				paper.Width, paper.Height)
		}
	}
	return nil
}

// millimetres reads a number of points; what isn't a number is no size.
func millimetres(points []byte) float64 {
	number, err := strconv.ParseFloat(string(points), 64)
	if err != nil {
		return 0
	}
	return number / 72 * millimetresPerInch
}

func near(a, b float64) bool { return a-b < slack && b-a < slack }
