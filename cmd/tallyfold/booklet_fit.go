package main

import (
	"fmt"
	"strings"
	"text/tabwriter"

	"tallyfold/render"
	"tallyfold/render/print"
)

// tellOverflows says what has no room, and what to do.
func (o *bookletOptions) tellOverflows(j job) {
	fmt.Fprintf(o.err, "%s.pdf is not made, as not everything has room:\n", j.base)
	for _, overflow := range j.printed.Fit.Overflows {
		fmt.Fprintf(o.err, "  %s\n", j.tell(overflow))
	}
}

func (j job) tell(overflow print.Overflow) string {
	form := j.booklet.Form
	what := fmt.Sprintf("“%s”", overflow.Text)
	if overflow.ID != "" {
		what += ", in " + strings.ReplaceAll(overflow.ID, "-", " ") + ","
	}
	switch overflow.Way {
	case print.TooManyPages:
		needs := "does not fit on the page"
		if form.Way == render.Leaf {
			needs = fmt.Sprintf("takes %s and the sheet has %d", count(form.Pages+int(overflow.By), "panel"), form.Pages)
		}
		return fmt.Sprintf("in type of %.1f points, the smallest that can be read well, the text %s; take a larger sheet (%s) or shorten the method",
			form.Smallest, needs, strings.Join(larger(form), ", "))
	case print.TooTall:
		return fmt.Sprintf("%s is %.0f mm higher than a page; divide it, or take a larger page", what, overflow.By)
	case print.Clipped:
		return fmt.Sprintf("%s is cut off by %.0f mm; shorten it, or take a larger page", what, overflow.By)
	}
	return fmt.Sprintf("%s is %.0f mm too wide for the page; shorten the longest word in it, or take a wider page", what, overflow.By)
}

// larger are the forms of the same kind that have more room, or those to read page by page.
func larger(form render.Form) []string {
	var names []string
	for _, other := range render.Forms() {
		if other.Way == form.Way && other.Card == form.Card && other.Room() > form.Room()*1.05 {
			names = append(names, other.Name)
		}
	}
	if len(names) == 0 {
		return []string{render.A5.Name, render.HalfLetter.Name}
	}
	return names
}

// scarcely is how little of a page is used when it is worth telling.
const scarcely = 0.4

// writeFit tells of each PDF its pages, its type, and which pages are blank or nearly so.
func (o *bookletOptions) writeFit(jobs []job) error {
	table := tabwriter.NewWriter(o.out, 0, 0, 2, ' ', 0)
	fmt.Fprintln(table, "\npages\ttype\tfilled\tunder 40 %\tblank\tfile")
	for _, j := range jobs {
		if len(j.printed.Fit.Overflows) > 0 {
			fmt.Fprintf(table, "–\t–\t–\t–\t–\t%s.pdf has not room for everything\n", j.base)
			continue
		}
		filled := "–" // one page is as full as the largest type makes it
		if j.booklet.Form.Way != render.Single {
			filled = fmt.Sprintf("%.0f %%", 100*j.filled())
		}
		fmt.Fprintf(table, "%d\t%.1f pt\t%s\t%s\t%s\t%s.pdf\n", j.printed.Pages, j.typeSize(),
			filled, orNone(j.scarce()), orNone(j.blanks()), j.base)
	}
	return table.Flush()
}

func (j job) typeSize() float64 {
	if found := j.printed.Fit.Type; found > 0 {
		return found
	}
	return j.booklet.Form.Type
}

// filled is how much of all pages is used.
func (j job) filled() float64 {
	sum := 0.0
	for _, fill := range j.printed.Fit.Fills {
		sum += fill
	}
	return sum / float64(max(len(j.printed.Fit.Fills), 1))
}

// scarce are the pages of which little is used, and blanks those that have nothing:
// panels and the last pages of a folded booklet that the text leaves over.
func (j job) scarce() []int {
	var pages []int
	for i, fill := range j.printed.Fit.Fills {
		if fill < scarcely {
			pages = append(pages, i+1)
		}
	}
	return pages
}

func (j job) blanks() []int {
	var pages []int
	for page := j.printed.Pages + 1; page <= j.sheets.pages; page++ {
		pages = append(pages, page)
	}
	return pages
}

func orNone(pages []int) string {
	if len(pages) == 0 {
		return "none"
	}
	return strings.Trim(strings.ReplaceAll(fmt.Sprint(pages), " ", ", "), "[]")
}
