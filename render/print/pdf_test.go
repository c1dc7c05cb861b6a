package print

import (
	"bytes"
	"context"
	"image/png"
	"math"
	"regexp"
	"strings"
	"sync"
	"testing"

	"github.com/ledongthuc/pdf"
)

const sample = `<!doctype html><html lang="en"><head><meta charset="utf-8"><title>From the page</title><style>@page{margin:10mm}
h2{break-before:page}</style></head><body><h1>Candles</h1><p>Ünïcode — ½ cup</p>
<h2 id="wick">Wick</h2><table><tr><th>Amount</th></tr><tr><td>12 g</td></tr></table><h2>Pour</h2></body></html>`

// TestPaper holds the sizes against published ones: ISO 216 in millimetres, and inches by 25.4 exactly (NIST SP 811).
func TestPaper(t *testing.T) {
	published := map[string][2]float64{
		"a4": {210, 297}, "a5": {148, 210}, "a6": {105, 148}, "letter": {215.9, 279.4}, "half-letter": {139.7, 215.9},
		"a3": {297, 420}, "tabloid": {279.4, 431.8},
	}
	if len(Papers()) != len(published) {
		t.Errorf("%d papers, %d published sizes", len(Papers()), len(published))
	}
	for name, size := range published {
		paper, found := PaperNamed(" " + strings.ToUpper(name))
		if !found || math.Abs(paper.Width-size[0]) > 1e-9 || math.Abs(paper.Height-size[1]) > 1e-9 {
			t.Errorf("%s: %+v, %v; published %v", name, paper, found, size)
		}
	}
	if _, found := PaperNamed("a7"); found {
		t.Error("a paper that nobody defined was found")
	}
}

// TestPageSize prints on every paper and reads the size of every page back.
func TestPageSize(t *testing.T) {
	for _, paper := range Papers() {
		reader := read(t, printed(t, sample, Options{Paper: paper}))
		if reader.NumPage() != 3 {
			t.Errorf("%s: %d pages, not 3", paper.Name, reader.NumPage())
		}
		for number := 1; number <= reader.NumPage(); number++ {
			box := reader.Page(number).V.Key("MediaBox")
			width := box.Index(2).Float64() / 72 * 25.4
			height := box.Index(3).Float64() / 72 * 25.4
			if math.Abs(width-paper.Width) > slack || math.Abs(height-paper.Height) > slack {
				t.Errorf("%s, page %d: %.2f × %.2f mm", paper.Name, number, width, height)
			}
		}
	}
}

// TestTrueSize holds that 100 mm in the style are 100 mm on paper, in both directions.
func TestTrueSize(t *testing.T) {
	page := `<!doctype html><style>@page{margin:0}body{margin:0}</style>
		<div style="width:100mm;height:50mm;background:#f00"></div>`
	for _, paper := range Papers() {
		bar := drawn(read(t, printed(t, page, Options{Paper: paper})).Page(1))[1] // the first is the sheet's own edge
		if width, height := bar[0]/72*25.4, bar[1]/72*25.4; math.Abs(width-100) > 0.2 || math.Abs(height-50) > 0.2 {
			t.Errorf("%s: the bar is %.2f × %.2f mm, not 100 × 50", paper.Name, width, height)
		}
	}
}

// drawn gives the width and height of each rectangle of a page, in points.
func drawn(page pdf.Page) [][2]float64 {
	var rectangles [][2]float64
	across, down := 1.0, 1.0
	var kept [][2]float64
	pdf.Interpret(page.V.Key("Contents"), func(stack *pdf.Stack, operator string) {
		var numbers []float64
		for stack.Len() > 0 {
			numbers = append([]float64{stack.Pop().Float64()}, numbers...)
		}
		switch operator {
		case "q":
			kept = append(kept, [2]float64{across, down})
		case "Q":
			across, down = kept[len(kept)-1][0], kept[len(kept)-1][1]
			kept = kept[:len(kept)-1]
		case "cm":
			across, down = across*numbers[0], down*numbers[3]
		case "re":
			rectangles = append(rectangles, [2]float64{math.Abs(across * numbers[2]), math.Abs(down * numbers[3])})
		}
	})
	return rectangles
}

func TestOwnSizeOfPage(t *testing.T) {
	page := strings.Replace(sample, "@page{", "@page{size:210mm 297mm;", 1)
	if _, err := browser(t).PDF(context.Background(), []byte(page), Options{Paper: A5}); err == nil ||
		!strings.Contains(err.Error(), "210 × 297 mm") || !strings.Contains(err.Error(), "a5") {
		t.Errorf("an A4 page for A5 paper gave %v", err)
	}
	printed(t, page, Options{Paper: A4})
	printed(t, page, Options{}) // the page's own size stands when no paper is asked for
}

// TestDescribed reads tags, title, language and outline back.
func TestDescribed(t *testing.T) {
	const long = `Wax “candles” for a harbour: a title with </script> in it, well beyond the eighty letters that jobs keep`
	file := printed(t, sample, Options{Paper: A5, Title: long, Language: "fr-CA", Outline: true})
	reader := read(t, file)
	root := reader.Trailer().Key("Root")
	if !root.Key("MarkInfo").Key("Marked").Bool() || root.Key("StructTreeRoot").IsNull() {
		t.Error("the PDF is not tagged")
	}
	if got := root.Key("Lang").Text(); got != "fr-CA" {
		t.Errorf("language %q", got)
	}
	if got := reader.Trailer().Key("Info").Key("Title").Text(); got != long {
		t.Errorf("title %q", got)
	}
	if !root.Key("ViewerPreferences").Key("DisplayDocTitle").Bool() {
		t.Error("a reader would show the file's name in place of its title")
	}
	outline := reader.Outline()
	if len(outline.Child) != 1 || outline.Child[0].Title != "Candles" || len(outline.Child[0].Child) != 2 ||
		outline.Child[0].Child[1].Title != "Pour" {
		t.Errorf("outline %+v", outline)
	}
	for _, wanted := range []string{"Table", "TH", "TD", "H1", "H2", "P"} {
		if !regexp.MustCompile(`/S /` + wanted + `\b`).Match(file) {
			t.Errorf("no %s among the tags", wanted)
		}
	}
	if text := words(t, file); !strings.Contains(text, "Ünïcode — ½ cup") {
		t.Errorf("the text is not as written: %q", text)
	}
}

// TestDescribedByPage holds that what isn't asked for is the page's own.
func TestDescribedByPage(t *testing.T) {
	reader := read(t, printed(t, sample, Options{Paper: A5}))
	if got := reader.Trailer().Key("Info").Key("Title").Text(); got != "From the page" {
		t.Errorf("title %q", got)
	}
	if got := reader.Trailer().Key("Root").Key("Lang").Text(); got != "en" {
		t.Errorf("language %q", got)
	}
	if !reader.Trailer().Key("Root").Key("Outlines").IsNull() {
		t.Error("an outline that was not asked for")
	}
}

// TestFonts holds that every font is inside the PDF, one from the page among them, even if only a margin uses it.
func TestFonts(t *testing.T) {
	for where, style := range map[string]string{
		"text":   `p{font-family:Probe}`,
		"margin": `@page{margin:20mm;@bottom-center{font-family:Probe;content:"page " counter(page)}}`,
	} {
		// A browser that has used the font before would have it at hand.
		file, err := fresh(t, Settings{}).PDF(context.Background(),
			[]byte(`<!doctype html><style>`+fontFace+style+`</style><p>Words <b>and more</b></p>`), Options{Paper: A5})
		if err != nil {
			t.Fatal(err)
		}
		fonts := map[string]bool{}
		page := read(t, file).Page(1)
		for _, name := range page.Fonts() {
			font := page.Font(name).V
			if descendants := font.Key("DescendantFonts"); descendants.Len() > 0 {
				font = descendants.Index(0)
			}
			described := font.Key("FontDescriptor")
			embedded := !described.Key("FontFile2").IsNull() || !described.Key("FontFile3").IsNull() ||
				font.Key("Subtype").Name() == "Type3" // drawn by the PDF itself
			fonts[font.Key("BaseFont").Name()] = embedded
		}
		found := false
		for name, embedded := range fonts {
			if !embedded {
				t.Errorf("%s: font %s is not in the PDF", where, name)
			}
			found = found || strings.Contains(name, "GoMedium")
		}
		if !found {
			t.Errorf("%s: the page's own font is missing among %v", where, fonts)
		}
	}
}

// TestPictures holds that pictures inside the page are shown, those further down too, which browsers leave for later.
func TestPictures(t *testing.T) {
	// One dot of pure red, drawn large.
	const red = "data:image/gif;base64,R0lGODdhAQABAIAAAP8AAAAAACwAAAAAAQABAAACAkQBADs="
	page := `<!doctype html><style>body{margin:0}</style><p>top<div style="break-before:page;margin-top:200cm"></div>
		<img loading="lazy" style="display:block" width=50 height=50 alt="A dot" src="` + red + `">`
	file := printed(t, page, Options{Paper: A5})
	reader := read(t, file)
	if reader.Page(reader.NumPage()).Resources().Key("XObject").IsNull() {
		t.Error("the picture on the last page is missing")
	}
	if !bytes.Contains(file, []byte("/Alt (A dot)")) {
		t.Error("the picture's description is missing")
	}
	shot, err := browser(t).Screenshot(context.Background(), []byte(page), 100, 0, 1)
	if err != nil {
		t.Fatal(err)
	}
	picture, err := png.Decode(bytes.NewReader(shot))
	if err != nil {
		t.Fatal(err)
	}
	if r, g, b, _ := picture.At(10, picture.Bounds().Max.Y-10).RGBA(); r != 0xffff || g != 0 || b != 0 {
		t.Errorf("at the end of the page is %x %x %x, not the red picture", r, g, b)
	}
}

// TestScriptsDontRun holds it for all the places where a page may have one.
func TestScriptsDontRun(t *testing.T) {
	file := printed(t, `<!doctype html><title>As written</title><p id=p>before</p>
		<script>document.getElementById("p").textContent="changed"</script>
		<body onload="document.title='changed'"><svg onload="document.title='changed'"></svg>
		<img src="data:," onerror="document.title='changed'">`, Options{Paper: A5})
	if text := words(t, file); !strings.Contains(text, "before") || strings.Contains(text, "changed") {
		t.Errorf("text %q", text)
	}
	if got := read(t, file).Trailer().Key("Info").Key("Title").Text(); got != "As written" {
		t.Errorf("title %q", got)
	}
}

// TestSameBytes prints one page many times: in one browser, two at once, after others, and in another browser.
func TestSameBytes(t *testing.T) {
	page := string(booklet(t))
	options := Options{Paper: A5, Outline: true}
	first := printed(t, page, options)
	printed(t, sample, options)
	var all sync.WaitGroup
	for range 2 {
		all.Go(func() {
			again, err := shared.PDF(context.Background(), []byte(page), options)
			if err != nil || !bytes.Equal(first, again) {
				t.Errorf("another print of the same page differs (error %v)", err)
			}
		})
	}
	all.Wait()
	other, err := fresh(t, Settings{}).PDF(context.Background(), []byte(page), options)
	if err != nil || !bytes.Equal(first, other) {
		t.Errorf("another browser's print of the same page differs (error %v)", err)
	}
	if changed := printed(t, strings.Replace(page, "12 g", "13 g", 1), options); bytes.Equal(first, changed) {
		t.Error("another page gives the same bytes")
	}
}

func TestScreenshot(t *testing.T) {
	page := []byte(`<!doctype html><style>body{margin:0;height:700px;background:#00f}</style>`)
	for _, want := range []struct {
		height, pixels int
		scale          float64
	}{{300, 300, 1}, {300, 600, 2}, {0, 700, 1}, {0, 1400, 2}} {
		shot, err := browser(t).Screenshot(context.Background(), page, 400, want.height, want.scale)
		if err != nil {
			t.Fatal(err)
		}
		picture, err := png.Decode(bytes.NewReader(shot))
		if err != nil {
			t.Fatal(err)
		}
		size := picture.Bounds().Size()
		if size.Y != want.pixels || size.X != int(400*want.scale) {
			t.Errorf("%+v: the picture has %v", want, size)
		}
		if r, g, b, _ := picture.At(size.X-1, size.Y-1).RGBA(); r != 0 || g != 0 || b != 0xffff {
			t.Errorf("%+v: the last dot is %x %x %x, not blue", want, r, g, b)
		}
	}
	for _, bad := range [][2]int{{0, 10}, {10, -1}, {20_000, 10}, {10, 20_000}} {
		if _, err := browser(t).Screenshot(context.Background(), page, bad[0], bad[1], 1); err == nil {
			t.Errorf("a picture of %v was made", bad)
		}
	}
	tall := []byte(`<!doctype html><div style="height:20000px">`)
	if _, err := browser(t).Screenshot(context.Background(), tall, 100, 0, 1); err == nil {
		t.Error("a picture beyond the limit was made")
	}
	if got := read(t, printed(t, sample, Options{Paper: A5})).NumPage(); got != 3 {
		t.Errorf("a PDF after a picture has %d pages", got)
	}
}
