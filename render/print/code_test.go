package print

import (
	"bytes"
	"context"
	"image/png"
	"os"
	"testing"
	"testing/fstest"

	"github.com/makiuchi-d/gozxing"
	"github.com/makiuchi-d/gozxing/qrcode"

	"tallyfold/render"
)

// TestCodeIsRead takes a picture of the page as a telephone would and has another hand's
// reader find and read the code in it.
func TestCodeIsRead(t *testing.T) {
	const address = "https://brindle-quay.example/kits/harbour-candles?edition=1"
	folder := fstest.MapFS{}
	for _, name := range []string{"kit.yaml", "method.md"} {
		text, err := os.ReadFile("../../examples/harbour-candles/" + name)
		if err != nil {
			t.Fatal(err)
		}
		folder[name] = &fstest.MapFile{Data: text}
	}
	folder["kit.yaml"].Data = append([]byte("page: "+address+"\n"), folder["kit.yaml"].Data...)
	page := pageOf(t, open(t, folder, "harbour-candles"), render.Options{}, "en")
	// The colophon alone: a reader looks at what the camera is held over.
	alone := bytes.Replace(page.html, []byte("</style>"), []byte(" main > section:not(.colophon) { display: none } </style>"), 1)
	shot, err := browser(t).Screenshot(context.Background(), alone, 600, 0, 2)
	if err != nil {
		t.Fatal(err)
	}
	picture, err := png.Decode(bytes.NewReader(shot))
	if err != nil {
		t.Fatal(err)
	}
	dots, err := gozxing.NewBinaryBitmapFromImage(picture)
	if err != nil {
		t.Fatal(err)
	}
	read, err := qrcode.NewQRCodeReader().Decode(dots, nil)
	if err != nil {
		t.Fatal(err)
	}
	if read.GetText() != address {
		t.Errorf("the code is read as %q", read.GetText())
	}
}
