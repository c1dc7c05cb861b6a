package print

import (
	"bytes"
	"errors"
	"fmt"
	"regexp"
	"strings"

	"github.com/pdfcpu/pdfcpu/pkg/api"
	"github.com/pdfcpu/pdfcpu/pkg/pdfcpu/model"
	"github.com/pdfcpu/pdfcpu/pkg/pdfcpu/types"
)

// Impose lays the pages of a PDF on sheets. What told a reading program the order of the pages is taken out, as a sheet
// has none: such a file is for a printer only. The same pages give the same bytes.
func Impose(pdf []byte, sides []Side) ([]byte, error) {
	api.DisableConfigDir()
	configuration := model.NewDefaultConfiguration()
	configuration.WriteObjectStream = false // keeps the dates in sight, to take them out
	configuration.WriteXRefStream = false
	file, err := api.ReadContext(bytes.NewReader(pdf), configuration)
	if err == nil {
		err = file.EnsurePageCount()
	}
	if err != nil {
		return nil, fmt.Errorf("the PDF can't be laid on sheets: %w", err)
	}
	forms, err := pagesAsForms(file)
	if err == nil {
		err = replacePages(file, forms, sides)
	}
	if err != nil {
		return nil, fmt.Errorf("the PDF can't be laid on sheets: %w", err)
	}
	var out bytes.Buffer
	if err := api.WriteContext(file, &out); err != nil {
		return nil, fmt.Errorf("the sheets can't be written: %w", err)
	}
	timeless, err := withoutMoment(out.Bytes())
	if err != nil {
		return nil, err
	}
	return inOrder(timeless)
}

// sheetForm is a page as a drawing that can be put down anywhere.
type sheetForm struct {
	object        types.IndirectRef
	width, height float64 // points
}

func pagesAsForms(file *model.Context) ([]sheetForm, error) {
	var forms []sheetForm
	for number := 1; number <= file.PageCount; number++ {
		page, _, inherited, err := file.PageDict(number, false)
		if err != nil {
			return nil, err
		}
		if inherited == nil || inherited.MediaBox == nil {
			return nil, fmt.Errorf("page %d has no size", number)
		}
		content, err := file.PageContent(page, number)
		if err != nil && !errors.Is(err, model.ErrNoContent) {
			return nil, err
		}
		drawing, err := file.NewStreamDictForBuf(content)
		if err != nil {
			return nil, err
		}
		box := inherited.MediaBox
		drawing.InsertName("Type", "XObject")
		drawing.InsertName("Subtype", "Form")
		drawing.Insert("BBox", box.Array())
		if inherited.Resources != nil {
			drawing.Insert("Resources", inherited.Resources)
		}
		if err := drawing.Encode(); err != nil {
			return nil, err
		}
		object, err := file.IndRefForNewObject(*drawing)
		if err != nil {
			return nil, err
		}
		forms = append(forms, sheetForm{*object, box.Width(), box.Height()})
	}
	return forms, nil
}

// replacePages gives the file the sides as its pages.
func replacePages(file *model.Context, forms []sheetForm, sides []Side) error {
	root, err := file.Catalog()
	if err != nil {
		return err
	}
	tree := types.Dict{"Type": types.Name("Pages"), "Count": types.Integer(len(sides))}
	parent, err := file.IndRefForNewObject(tree)
	if err != nil {
		return err
	}
	var kids types.Array
	for _, side := range sides {
		page, err := side.page(file, forms, *parent)
		if err != nil {
			return err
		}
		kids = append(kids, *page)
	}
	tree["Kids"] = kids
	root["Pages"] = *parent
	for _, key := range []string{"StructTreeRoot", "MarkInfo", "Outlines", "Dests", "Names", "PageMode", "OpenAction", "PageLabels"} {
		delete(root, key)
	}
	file.PageCount = len(sides)
	return nil
}

// page makes one side an object of the file.
func (s Side) page(file *model.Context, forms []sheetForm, parent types.IndirectRef) (*types.IndirectRef, error) {
	content, err := file.NewStreamDictForBuf([]byte(s.draw(forms)))
	if err != nil {
		return nil, err
	}
	if err := content.Encode(); err != nil {
		return nil, err
	}
	drawn, err := file.IndRefForNewObject(*content)
	if err != nil {
		return nil, err
	}
	used := types.Dict{}
	for _, p := range s.Places {
		if p.Page <= len(forms) {
			used[formName(p.Page)] = forms[p.Page-1].object
		}
	}
	page := types.Dict{
		"Type": types.Name("Page"), "Parent": parent, "MediaBox": box([4]float64{0, 0, s.Width, s.Height}),
		"Contents": *drawn, "Resources": types.Dict{"XObject": used},
	}
	if s.Trim != nil {
		page["TrimBox"], page["BleedBox"] = box(*s.Trim), box(*s.Bleed)
	}
	return file.IndRefForNewObject(page)
}

func formName(page int) string { return fmt.Sprintf("Page%d", page) }

func box(millimetres [4]float64) types.Array {
	var array types.Array
	for _, length := range millimetres {
		array = append(array, types.Float(points(length)))
	}
	return array
}

func points(millimetres float64) float64 { return millimetres / millimetresPerInch * 72 }

// draw writes the side as PDF operators (ISO 32000-1, annex A).
func (s Side) draw(forms []sheetForm) string {
	var out strings.Builder
	for _, p := range s.Places {
		if p.Page > len(forms) {
			continue
		}
		form := forms[p.Page-1]
		x, y := points(p.Left), points(p.Bottom)
		// The browser rounds pages to its dots: the middle of the page is what must be in its place.
		x += (points(p.Width) - form.width) / 2
		y += (points(p.Height) - form.height) / 2
		fmt.Fprintf(&out, "q %.3f 0 %.3f %.3f re W n ", points(p.From), points(p.To-p.From), points(s.Height))
		if p.Turned {
			fmt.Fprintf(&out, "-1 0 0 -1 %.3f %.3f cm", x+form.width, y+form.height)
		} else {
			fmt.Fprintf(&out, "1 0 0 1 %.3f %.3f cm", x, y)
		}
		fmt.Fprintf(&out, " /%s Do Q\n", formName(p.Page))
	}
	out.WriteString("q 0.25 w 0 G\n")
	for _, m := range s.Marks {
		dash := "[]"
		if m.Dashed {
			dash = "[2 2]"
		}
		fmt.Fprintf(&out, "%s 0 d %.3f %.3f m %.3f %.3f l S\n", dash, points(m.X1), points(m.Y1), points(m.X2), points(m.Y2))
	}
	out.WriteString("Q\n")
	return out.String()
}

var (
	// fileNames match the two names of a file, made of the moment it was written in.
	fileNames = regexp.MustCompile(`/ID\s*\[\s*<[0-9A-Fa-f]+>\s*<[0-9A-Fa-f]+>\s*\]`)
	moments   = regexp.MustCompile(`/(?:CreationDate|ModDate)\s*\(D:[^()]*\)`)
)

// withoutMoment blanks out when the file was written; no byte changes its place.
func withoutMoment(pdf []byte) ([]byte, error) {
	found := append(fileNames.FindAllIndex(pdf, -1), moments.FindAllIndex(pdf, -1)...)
	if len(found) == 0 {
		return nil, errors.New("the sheets can't be read back")
	}
	for _, at := range found {
		for i := at[0]; i < at[1]; i++ {
			pdf[i] = ' '
		}
	}
	return pdf, nil
}
