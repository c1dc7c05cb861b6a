package render

// A Preview is what a screen must know of a booklet's form to show its HTML page by page, by
// the rules for print. Lengths are in millimetres, type in points.
type Preview struct {
	Width  float64 `json:"width"`
	Height float64 `json:"height"`
	// AreaWidth and AreaHeight are what the margins leave.
	AreaWidth  float64 `json:"areaWidth"`
	AreaHeight float64 `json:"areaHeight"`
	Top        float64 `json:"top"`
	Bottom     float64 `json:"bottom"`
	Inner      float64 `json:"inner"`
	Outer      float64 `json:"outer"`
	Way        Way     `json:"way"`
	// Type is the largest size of running text, Smallest the least that is tried, 0 where
	// the size is fixed; Pages is how many there may be, 0 for any number.
	Type     float64 `json:"type"`
	Smallest float64 `json:"smallest"`
	Pages    int     `json:"pages"`
	// Foot stands at the bottom of each page but the cover, in FootType, Draft at the top.
	Foot     string  `json:"foot"`
	FootType float64 `json:"footType"`
	Draft    string  `json:"draft"`
}

// Preview gives the form of a booklet for a screen.
func (b *Booklet) Preview() Preview {
	form := b.Form
	width, height := form.Area()
	return Preview{
		Width: form.Paper.Width, Height: form.Paper.Height, AreaWidth: width, AreaHeight: height,
		Top: form.Margins.Top, Bottom: form.Margins.Bottom, Inner: form.Margins.Inner, Outer: form.Margins.Outer,
		Way: form.Way, Type: form.Type, Smallest: form.Smallest, Pages: form.Pages,
		Foot: b.Foot, FootType: form.footSize(), Draft: b.draftMark(),
	}
}
