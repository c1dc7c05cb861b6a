package picture

import (
	"bytes"
	"image"
	"image/jpeg"
	"image/png"

	"golang.org/x/image/draw"

	"tallyfold/kit/colour"
)

// sampled gives the picture with that many dots, none of them more than once.
func sampled(from image.Image, wide, tall int) *image.NRGBA {
	to := image.NewNRGBA(image.Rect(0, 0, wide, tall))
	if from.Bounds().Size() == to.Bounds().Size() {
		draw.Draw(to, to.Bounds(), from, from.Bounds().Min, draw.Src)
		return to
	}
	draw.CatmullRom.Scale(to, to.Bounds(), from, from.Bounds(), draw.Src, nil)
	return to
}

// inGrey gives each dot the grey of its luminance (Rec. ITU-R BT.709, linear light).
func inGrey(from *image.NRGBA) *image.NRGBA {
	for at := 0; at < len(from.Pix); at += 4 {
		dot := from.Pix[at : at+3 : at+3]
		grey := colour.Colour{R: dot[0], G: dot[1], B: dot[2]}.Grey()
		dot[0], dot[1], dot[2] = grey.R, grey.G, grey.B
	}
	return from
}

// fewColours is what a drawing has at most; a photograph has thousands.
const fewColours = 256

// isFlat says whether a picture is a drawing in few colours.
func isFlat(from image.Image) bool {
	if from, ok := from.(*image.Paletted); ok {
		return len(from.Palette) <= fewColours
	}
	if _, photograph := from.(*image.YCbCr); photograph {
		return false // JPEG has no few colours: it blurs them
	}
	seen := map[[4]uint32]bool{}
	bounds := from.Bounds()
	for y := bounds.Min.Y; y < bounds.Max.Y; y++ {
		for x := bounds.Min.X; x < bounds.Max.X; x++ {
			r, g, b, a := from.At(x, y).RGBA()
			seen[[4]uint32{r, g, b, a}] = true
			if len(seen) > fewColours {
				return false
			}
		}
	}
	return true
}

// jpegQuality: no loss is seen at the printed size (common practice, no source).
const jpegQuality = 85

// written puts a photograph into JPEG; a drawing in few colours, whose edges JPEG would
// blur, and what one sees through, into PNG. Both writers add nothing of their own.
func written(ready *image.NRGBA, flat bool) (Picture, error) {
	var out bytes.Buffer
	made := Picture{Wide: ready.Bounds().Dx(), Tall: ready.Bounds().Dy()}
	var err error
	if flat || !ready.Opaque() {
		made.Kind = "image/png"
		err = (&png.Encoder{CompressionLevel: png.BestCompression}).Encode(&out, ready)
	} else {
		made.Kind = "image/jpeg"
		err = jpeg.Encode(&out, ready, &jpeg.Options{Quality: jpegQuality})
	}
	made.Data = out.Bytes()
	return made, err
}
