package picture

import (
	"bytes"
	"encoding/base64"
	"encoding/binary"
	"encoding/xml"
	"errors"
	"hash/crc32"
	"image"
	"image/color"
	"image/png"
	"math"
	"strings"
	"testing"

	"tallyfold/kit/colour"
)

// many is a picture in thousands of colours, as a photograph is.
func many(wide, tall int) *image.NRGBA {
	out := image.NewNRGBA(image.Rect(0, 0, wide, tall))
	for y := range tall {
		for x := range wide {
			out.SetNRGBA(x, y, color.NRGBA{uint8(x), uint8(y), uint8(x * y / 64), 255})
		}
	}
	return out
}

func inPNG(t testing.TB, of image.Image) []byte {
	t.Helper()
	var out bytes.Buffer
	if err := png.Encode(&out, of); err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}

func prepared(t testing.TB, data []byte, place Place, grey bool) Picture {
	t.Helper()
	ready, err := Prepare(data, place, grey)
	if err != nil {
		t.Fatal(err)
	}
	return ready
}

// What EXIF 2.3, XMP, ICC.1 and JFIF write into a file, and what a comment may hold.
func TestNothingButThePictureIsLeft(t *testing.T) {
	files := map[string][]byte{
		"photograph": photograph(t, many(80, 50), binary.LittleEndian, 6),
		"scan":       pngWith(t, many(80, 50), exifOf(binary.BigEndian, 3)),
		"drawing":    pngWith(t, lying(1), exifOf(binary.BigEndian, 1)),
	}
	for name, file := range files {
		ready := prepared(t, file, InText, false)
		for _, mark := range []string{"Exif", "eXIf", "ICC_PROFILE", "iCCP", "GPS", "xmp", "JFIF", "shot at home", "Qua", "tEXt", "tIME", "Adobe"} {
			if bytes.Contains(ready.Data, []byte(mark)) {
				t.Errorf("%s: %q got into the booklet", name, mark)
			}
		}
		for marker := 0xe1; marker <= 0xef; marker++ {
			if ready.Kind == "image/jpeg" && bytes.Contains(ready.Data[:40], []byte{0xff, byte(marker)}) {
				t.Errorf("%s: the segment APP%d got into the booklet", name, marker-0xe0)
			}
		}
		if again := prepared(t, file, InText, false); !bytes.Equal(again.Data, ready.Data) {
			t.Errorf("%s: the same picture gave other bytes", name)
		}
	}
}

// Reckoned by hand: 104 mm at 300 dots to the inch of 25.4 mm are 1228 dots, 51 mm 602.
func TestSizes(t *testing.T) {
	for _, test := range []struct {
		why                  string
		wide, tall           int
		wantWide, wantTall   int
		dots, width, heights float64
	}{
		{"a wide picture fills the width", 2456, 1000, 1228, 500, 599.8, 104, 42.3},
		{"a tall one the height", 602, 1204, 301, 602, 599.6, 25.5, 51},
		{"a small one gains no dots", 300, 100, 300, 100, 73.3, 104, 34.7},
		{"a line stays a line", 4000, 1, 1228, 1, 976.9, 104, 0.026},
	} {
		ready := prepared(t, inPNG(t, many(test.wide, test.tall)), InText, false)
		if ready.Wide != test.wantWide || ready.Tall != test.wantTall {
			t.Errorf("%s: %d × %d, want %d × %d", test.why, ready.Wide, ready.Tall, test.wantWide, test.wantTall)
		}
		if got := InText.DotsAnInch(test.wide, test.tall); math.Abs(got-test.dots) > 0.1 {
			t.Errorf("%s: %.1f dots an inch, want %.1f", test.why, got, test.dots)
		}
		if width, height := InText.Printed(test.wide, test.tall); math.Abs(width-test.width) > 0.1 || math.Abs(height-test.heights) > 0.1 {
			t.Errorf("%s: printed %.1f × %.1f mm, want %.1f × %.1f", test.why, width, height, test.width, test.heights)
		}
	}
}

func TestKinds(t *testing.T) {
	seeThrough := many(40, 30)
	seeThrough.SetNRGBA(3, 3, color.NRGBA{9, 9, 9, 40})
	for why, test := range map[string]struct {
		file []byte
		want string
	}{
		"a photograph":                   {photograph(t, many(80, 50), binary.LittleEndian, 1), "image/jpeg"},
		"a photograph saved as PNG":      {inPNG(t, many(80, 50)), "image/jpeg"},
		"a drawing in few colours":       {inPNG(t, lying(1)), "image/png"},
		"what one sees through":          {inPNG(t, seeThrough), "image/png"},
		"a drawing made of lines":        {[]byte(`<svg xmlns="http://www.w3.org/2000/svg"><path d="M0 0L9 9"/></svg>`), "image/svg+xml"},
		"a drawing with a head of words": {[]byte("\xef\xbb\xbf<?xml version=\"1.0\"?>\n<!-- by hand --><svg xmlns=\"http://www.w3.org/2000/svg\"/>"), "image/svg+xml"},
	} {
		if got := prepared(t, test.file, InText, false).Kind; got != test.want {
			t.Errorf("%s became %s, want %s", why, got, test.want)
		}
	}
}

func TestWhatIsNoPicture(t *testing.T) {
	whole := inPNG(t, many(80, 50))
	huge := bytes.Clone(whole)
	binary.BigEndian.PutUint32(huge[16:], 60_000)
	binary.BigEndian.PutUint32(huge[20:], 60_000)
	fixSum(huge)
	for why, file := range map[string][]byte{
		"nothing": nil, "words": []byte("a picture of a jar"), "a page": []byte("<html><svg/></html>"),
		"a file cut short": whole[:len(whole)/2], "a small file that says it is huge": huge,
	} {
		if ready, err := Prepare(file, InText, false); err == nil {
			t.Errorf("%s is shown as %s", why, ready.Kind)
		}
	}
	if _, _, err := Measure(huge); err == nil || errors.Is(err, ErrNone) || !strings.Contains(err.Error(), "60000 × 60000") {
		t.Errorf("the huge one gives %v", err)
	}
}

// Grey by luminance: the published shares of Rec. ITU-R BT.709 for the primaries.
func TestGreyPictures(t *testing.T) {
	file := lying(1)
	ready := prepared(t, inPNG(t, file), InText, true)
	shown, err := png.Decode(bytes.NewReader(ready.Data))
	if err != nil {
		t.Fatal(err)
	}
	for y := range seenTall {
		for x := range seenWide {
			r, g, b, _ := shown.At(x, y).RGBA()
			if r != g || g != b {
				t.Fatalf("at %d, %d it is %d %d %d", x, y, r>>8, g>>8, b>>8)
			}
			seen := asSeen(x, y)
			want := 0.2126*colour.Linear(seen.R) + 0.7152*colour.Linear(seen.G) + 0.0722*colour.Linear(seen.B)
			if got := colour.Linear(uint8(r >> 8)); math.Abs(got-want) > 0.004 {
				t.Fatalf("at %d, %d it is %.3f light, want %.3f", x, y, got, want)
			}
		}
	}
}

func TestDrawingsAreCleaned(t *testing.T) {
	drawing := `<?xml version="1.0" encoding="UTF-8"?>
<!DOCTYPE svg [<!ENTITY ns "http://www.w3.org/2000/svg">]>
<!-- drawn by somebody -->
<svg xmlns="&ns;" xmlns:xlink="http://www.w3.org/1999/xlink" xmlns:ink="http://example.com/ink" viewBox="0 0 9 9" ink:version="3" onload="alert(1)">
<metadata><where>at home</where></metadata><script>alert(2)</script><ink:view zoom="2"/>
<defs><linearGradient id="fade"><stop offset="0" stop-color="#ff0000"/></linearGradient><path id="a" d="M0 0"/></defs>
<style>.b { fill: red; stroke:#00ff00 } </style><style>@import "http://example.com/x.css";</style><style>.c { fill: url(http://example.com/x) }</style>
<use xlink:href="#a"/><use href="http://example.com/x.svg#a"/><image href="data:image/jpeg;base64,AAAA"/>
<rect fill="url(#fade)" stroke="rgb(0, 0, 255)" style="fill:url('//example.com')" width="3" height="3"/><foreignObject><p>page</p></foreignObject>
<switch><foreignObject/><a href="javascript:alert(3)" fill="none"><circle r="2"/></a></switch><path d="M1 1" fill="red"><animate attributeName="x"/></path><text>5 &lt; 6</text></svg>`
	ready := prepared(t, []byte(drawing), InText, false)
	text := string(ready.Data)
	for _, gone := range []string{"example.com", "alert", "onload", "metadata", "home", "script", "<image", "page", "switch", "animate", "somebody", "zoom", "version", "<a ", "@import"} {
		if strings.Contains(text, gone) {
			t.Errorf("%q is still in the drawing:\n%s", gone, text)
		}
	}
	for _, kept := range []string{`<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 9 9">`, `fill="url(#fade)"`, `href="#a"`, `<g><g fill="none"><circle r="2"></circle></g></g>`, ".b { fill: red", "5 &lt; 6", `stop-color="#ff0000"`} {
		if !strings.Contains(text, kept) {
			t.Errorf("%q is no longer in the drawing:\n%s", kept, text)
		}
	}
	if err := xml.Unmarshal(ready.Data, new(struct{})); err != nil {
		t.Errorf("the drawing is no longer whole: %v", err)
	}
	grey := string(prepared(t, []byte(drawing), InText, true).Data)
	for _, want := range []string{`stop-color="#7f7f7f"`, "fill:#7f7f7f", "stroke:#dcdcdc", `stroke="#4c4c4c"`, `fill="#7f7f7f"`, `fill="url(#fade)"`} {
		if !strings.Contains(grey, want) {
			t.Errorf("in grey the drawing lacks %q:\n%s", want, grey)
		}
	}
}

// A photograph inside a drawing loses what the camera noted too; one elsewhere is left out.
func TestPhotographInADrawing(t *testing.T) {
	coded := base64.StdEncoding.EncodeToString(photograph(t, many(80, 50), binary.LittleEndian, 1))
	drawing := `<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink"><image width="8" onload="x" xlink:href="data:image/jpeg;base64,` +
		coded[:40] + "\n " + coded[40:] + `"/><image href="photo.jpg"/><image href="data:image/svg+xml;base64,PHN2Zy8+"/></svg>`
	text := string(prepared(t, []byte(drawing), InText, false).Data)
	before, rest, ok := strings.Cut(text, `<image width="8" href="data:image/jpeg;base64,`)
	data, err := base64.StdEncoding.DecodeString(rest[:max(0, strings.IndexByte(rest, '"'))])
	if !ok || err != nil || len(data) == 0 || bytes.Contains(data, []byte("Exif")) || strings.Count(before+rest, "<image") != 0 {
		t.Errorf("the drawing is %.200s; %v", text, err)
	}
}

func FuzzDrawing(f *testing.F) {
	f.Add([]byte(`<svg xmlns="http://www.w3.org/2000/svg"><path onclick="x" d="M0 0"/></svg>`))
	f.Add([]byte(`<svg><style>a{b:u\72l(x)}</style><g href="http://x"/></svg>`))
	f.Fuzz(func(t *testing.T, data []byte) {
		ready, err := prepareDrawing(data, true)
		if err != nil {
			return
		}
		lower := strings.ToLower(string(ready.Data))
		if strings.Contains(lower, "<script") || strings.Contains(lower, " onclick=") || strings.Contains(lower, `href="http`) {
			t.Errorf("got through: %s", ready.Data)
		}
	})
}

// fixSum makes the check sum of a PNG's head right again.
func fixSum(file []byte) {
	binary.BigEndian.PutUint32(file[29:], crc32.ChecksumIEEE(file[12:29]))
}

// Kept pictures are prepared once, and are what they would be otherwise.
func TestKeptPictures(t *testing.T) {
	file := inPNG(t, many(700, 400))
	var kept Kept
	for _, grey := range []bool{false, true} {
		first, err := kept.Prepare(file, InText, grey)
		if err != nil {
			t.Fatal(err)
		}
		again, _ := kept.Prepare(bytes.Clone(file), InText, grey)
		if &first.Data[0] != &again.Data[0] {
			t.Error("the same picture was prepared twice")
		}
		if want := prepared(t, file, InText, grey); !bytes.Equal(first.Data, want.Data) {
			t.Error("a kept picture differs from one that is not")
		}
	}
	if _, err := kept.Prepare(nil, InText, false); err == nil {
		t.Error("what is no picture is kept as one")
	}
	if none, err := (*Kept)(nil).Prepare(file, OnCover, false); err != nil || none.Wide != 700 {
		t.Errorf("without a place to keep them: %d wide, %v", none.Wide, err)
	}
}
