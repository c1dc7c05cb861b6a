package print

import (
	"context"
	_ "embed"
	"encoding/json"
	"fmt"

	"github.com/go-rod/rod/lib/proto"
)

// An Area is what the margins leave of a page, in millimetres.
type Area struct{ Width, Height float64 }

// A TypeRange asks for the largest size of type with which a page takes no more than so many pages. The page's style
// sheet uses the size found as var(--type).
type TypeRange struct {
	// Largest and Smallest are in points of 1/72 inch.
	Largest, Smallest float64
	// Pages is how many there may be. One page is filled in columns, and is full when something stands beyond it.
	Pages int
}

// typeStep is how finely a size of type is looked for, in points.
const typeStep = 0.1

// A Fit tells how a page came to lie on its pages. It is reckoned from the layout just before the print.
type Fit struct {
	// Type is the size of type that was found, in points; 0 where none was looked for.
	Type float64
	// Fills says of each page how much of its area is used, from 0 to 1.
	Fills []float64
	// Overflows lists what has no room.
	Overflows []Overflow
}

// The ways in which something can have too little room.
const (
	TooWide      = "wide"    // stands beyond the side of the page
	TooTall      = "tall"    // is kept whole but higher than a page
	Clipped      = "clipped" // is cut off
	TooManyPages = "pages"   // takes more pages than there are, at the smallest type
)

// An Overflow is one thing that has no room.
type Overflow struct {
	Way string
	// Millimetres is by how much; for TooManyPages it is a number of pages, and 0 where one page is too small.
	By float64
	// ID is the nearest id around it, Text the beginning of its words.
	ID, Text string
}

//go:embed numbers.js
var writeNumbers string

//go:embed fit.js
var fit string

// FitScript gives the reckoning before a print as a module, for a page that shows a document
// as it will be printed: fitFor(document, getComputedStyle) gives the function of fit.js for a
// document whose rules for print count on screen.
func FitScript() string {
	return "export const fitFor = (document, getComputedStyle) => {\n" + writeNumbers + "\nconst reckon =\n" + fit + "\nreturn reckon\n}\n"
}

// pixel is the size of a CSS pixel in millimetres: 96 make an inch (CSS Values and Units, section 6.2).
const pixel = millimetresPerInch / 96

// laidOut is what fit.js gives.
type laidOut struct {
	Numbers   map[string]int
	Fills     []float64
	Type      float64
	Overflows []Overflow
}

// layOut makes a loaded page ready for print: it waits for its fonts, and where the area of a page is known fills in
// page numbers and finds the size of type.
func (t *tab) layOut(ctx context.Context, options Options) (laidOut, error) {
	arguments, err := fitArguments(options)
	if err != nil {
		return laidOut{}, err
	}
	result, err := t.evaluate(ctx, "{"+writeNumbers+"\n;"+fit+"("+arguments+")}")
	if err != nil || options.Area == (Area{}) {
		return laidOut{}, err
	}
	var laid laidOut
	if err := json.Unmarshal([]byte(result), &laid); err != nil {
		return laidOut{}, fmt.Errorf("the browser can't lay the page out: %w", err)
	}
	for i, overflow := range laid.Overflows {
		if overflow.Way != TooManyPages {
			laid.Overflows[i].By *= pixel
		}
	}
	return laid, nil
}

func fitArguments(options Options) (string, error) {
	type size struct {
		Width  float64 `json:"width"`
		Height float64 `json:"height"`
	}
	type sizes struct {
		Largest  float64 `json:"largest"`
		Smallest float64 `json:"smallest"`
		Step     float64 `json:"step"`
		Pages    int     `json:"pages"`
	}
	arguments := []any{nil, nil, options.Title, options.Language}
	if a := options.Area; a != (Area{}) {
		arguments[0] = size{a.Width / pixel, a.Height / pixel}
	}
	if r := options.Type; r != nil {
		arguments[1] = sizes{r.Largest, r.Smallest, typeStep, r.Pages}
	}
	list, err := json.Marshal(arguments)
	if err != nil {
		return "", err
	}
	return string(list[1 : len(list)-1]), nil
}

// asPage shows what is loaded next as wide as a page, by the rules for print: so it is laid out once and not twice.
func (t *tab) asPage(ctx context.Context, area Area) error {
	if area == (Area{}) || area == t.shownAs {
		return nil
	}
	t.shownAs = Area{}
	page := t.page.Context(ctx)
	if err := (proto.EmulationSetEmulatedMedia{Media: "print"}).Call(page); err != nil {
		return err
	}
	err := proto.EmulationSetDeviceMetricsOverride{
		Width: int(area.Width/pixel + 0.5), Height: int(area.Height / pixel), DeviceScaleFactor: 1,
	}.Call(page)
	if err == nil {
		t.shownAs = area
	}
	return err
}

// evaluate runs something of ours in the page, whose own scripts don't run, and gives the text that comes of it.
func (t *tab) evaluate(ctx context.Context, expression string) (string, error) {
	result, err := proto.RuntimeEvaluate{Expression: expression, AwaitPromise: true, ReturnByValue: true}.Call(t.page.Context(ctx))
	if err != nil {
		return "", err
	}
	if result.ExceptionDetails != nil {
		return "", fmt.Errorf("the browser can't read the page: %s", result.ExceptionDetails.Text)
	}
	return result.Result.Value.Str(), nil
}

func (l laidOut) fit() Fit { return Fit{Type: l.Type, Fills: l.Fills, Overflows: l.Overflows} }
