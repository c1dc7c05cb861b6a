package render

import (
	"bytes"
	"encoding/base64"
	"image"
	"image/color"
	"image/jpeg"
	"image/png"
	"math"
	"regexp"
	"strings"
	"testing"
	"testing/fstest"

	"tallyfold/instructions"
	"tallyfold/kit/ledger"
	"tallyfold/kit/picture"
	"tallyfold/templates"
)

// A photograph of the maker's comes into the booklet at its printed size and without
// what the camera noted; a caption of its own stands under it.
func TestPhotographInTheBooklet(t *testing.T) {
	folder := copyOf(t, "../examples/harbour-candles")
	folder["pictures/bench.jpg"] = &fstest.MapFile{Data: photograph(t, 2600, 1300)}
	method := string(folder["method.md"].Data)
	folder["method.md"].Data = []byte(strings.Replace(method, "## [Weigh the wax]", "![three jars in a row](picture:bench.jpg?drawn-for=1 \"The \\\"harbour\\\" row\")\n\n## [Weigh the wax]", 1))
	body := bookletIn(t, folder, "harbour-candles").body()
	found := regexp.MustCompile(`<figure aria-labelledby="caption-\d+"><img alt="three jars in a row" src="data:image/jpeg;base64,([^"]*)"><figcaption id="caption-\d+">The &#34;harbour&#34; row</figcaption>`).FindStringSubmatch(body)
	if found == nil {
		t.Fatal("the photograph is not in the booklet")
	}
	data, err := base64.StdEncoding.DecodeString(found[1])
	if err != nil || bytes.Contains(data, []byte("Exif")) {
		t.Fatalf("%v, or it holds what the camera noted", err)
	}
	// 51 mm at 300 dots to 25.4 mm are 602.36, twice as wide 1204.7.
	shown, err := jpeg.DecodeConfig(bytes.NewReader(data))
	if err != nil || shown.Height != 602 || shown.Width != 1205 {
		t.Errorf("it is %d × %d, want 1205 × 602; %v", shown.Width, shown.Height, err)
	}
}

func photograph(t *testing.T, wide, tall int) []byte {
	t.Helper()
	of := image.NewRGBA(image.Rect(0, 0, wide, tall))
	for y := range tall {
		for x := range wide {
			of.SetRGBA(x, y, color.RGBA{uint8(x), uint8(y), 120, 255})
		}
	}
	var out bytes.Buffer
	if err := jpeg.Encode(&out, of, nil); err != nil {
		t.Fatal(err)
	}
	return append([]byte("\xff\xd8\xff\xe1\x00\x10Exif\x00\x00MM\x00\x2a\x00\x00\x00\x08"), out.Bytes()[2:]...)
}

// One photograph may stand in a step and beside a name in the list of the box: each is as large
// as its place. What is not in the folder leaves the name alone.
func TestPictureInTheListOfTheBox(t *testing.T) {
	folder := copyOf(t, "../examples/harbour-candles")
	folder["pictures/bench.jpg"] = &fstest.MapFile{Data: photograph(t, 2600, 1300)}
	replaceIn(t, folder, "kit.yaml", "  wax:\n", "  wax:\n    picture: bench.jpg\n")
	replaceIn(t, folder, "kit.yaml", "  jar:\n", "  jar:\n    picture: nowhere.jpg\n")
	replaceIn(t, folder, "kit.yaml", "  gloves: {", "  gloves: {picture: bench.jpg, ")
	replaceIn(t, folder, "method.md", "## [Weigh the wax]", "![a jar](picture:bench.jpg)\n\n## [Weigh the wax]")
	body := bookletIn(t, folder, "harbour-candles").body()
	found := regexp.MustCompile(`<td><img alt="" src="data:image/jpeg;base64,([^"]*)"> Soy wax`).FindStringSubmatch(body)
	if found == nil {
		t.Fatal("the photograph is not in the list")
	}
	data, err := base64.StdEncoding.DecodeString(found[1])
	if err != nil {
		t.Fatal(err)
	}
	// 13 mm at 300 dots to 25.4 mm are 153.5, and 26 mm 307.1.
	shown, err := jpeg.DecodeConfig(bytes.NewReader(data))
	if err != nil || shown.Height != 154 || shown.Width != 307 {
		t.Errorf("it is %d × %d, want 307 × 154; %v", shown.Width, shown.Height, err)
	}
	if !regexp.MustCompile(`<td><img alt="" src="data:image/jpeg;base64,[^"]*"> Oven gloves`).MatchString(body) {
		t.Error("what to bring has no picture")
	}
	if !strings.Contains(body, `alt="a jar" src="data:image/jpeg;base64,`) || strings.Contains(body, "nowhere.jpg") {
		t.Error("the step has no picture, or the list names one that is not there")
	}
}

func replaceIn(t *testing.T, folder fstest.MapFS, name, old, with string) {
	t.Helper()
	text := string(folder[name].Data)
	if !strings.Contains(text, old) {
		t.Fatalf("%s has no %q", name, old)
	}
	folder[name].Data = []byte(strings.Replace(text, old, with, 1))
}

// In a booklet in black the pictures themselves are grey: what a style sheet does to them is
// lost on some printers.
func TestPicturesInBlackAreGrey(t *testing.T) {
	folder := copyOf(t, "../examples/harbour-candles")
	var red bytes.Buffer
	of := image.NewRGBA(image.Rect(0, 0, 700, 500))
	for i := range of.Pix {
		of.Pix[i] = []uint8{200, 30, 30, 255}[i%4]
	}
	if err := png.Encode(&red, of); err != nil {
		t.Fatal(err)
	}
	folder["pictures/cover.png"] = &fstest.MapFile{Data: red.Bytes()}
	k, _ := instructions.Open(folder, "harbour-candles")
	booklet, err := Assemble(k, ledger.Follow(k), templates.Shipped(), Options{Black: true})
	if err != nil {
		t.Fatal(err)
	}
	if page, err := booklet.HTML(); err != nil || strings.Contains(string(page), "grayscale(") {
		t.Errorf("pictures are left to the style sheet; %v", err)
	}
	for key, data := range booklet.Pictures {
		shown, _, err := image.Decode(bytes.NewReader(data))
		if err != nil {
			continue // drawings are tested where they are cleaned
		}
		if r, g, b, _ := shown.At(300, 300).RGBA(); r != g || g != b {
			t.Errorf("%s has the colour %d %d %d", key, r>>8, g>>8, b>>8)
		}
	}
	if _, ok := booklet.Pictures["picture-1-on-cover"]; !ok {
		t.Error("the cover has no picture")
	}
}

// A4 is printed with margins of 20 and 24 mm and leaves 166 mm, A5 with 13 and 15 mm 120:
// a picture is as much larger. On A6 it keeps its dots.
func TestLargerPagesShowLargerPictures(t *testing.T) {
	for _, form := range Forms() {
		room := form.roomFor(picture.OnCover)
		switch form.Name {
		case "a4":
			if math.Abs(room.Width-166) > 0.01 {
				t.Errorf("on A4 the cover has %.1f mm", room.Width)
			}
		case "a5", "a6":
			if room != picture.OnCover {
				t.Errorf("on %s the cover has %v", form.Name, room)
			}
		}
	}
}
