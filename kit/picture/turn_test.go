package picture

import (
	"bytes"
	"encoding/binary"
	"fmt"
	"hash/crc32"
	"image"
	"image/color"
	"image/jpeg"
	"image/png"
	"testing"
)

// asSeen is the picture that all eight files below show: red at the top left, then
// green, blue at the bottom left, then white; 60 dots wide and 40 tall.
const (
	seenWide = 60
	seenTall = 40
)

func asSeen(x, y int) color.NRGBA {
	switch left, top := x < seenWide/2, y < seenTall/2; {
	case left && top:
		return color.NRGBA{200, 0, 0, 255}
	case top:
		return color.NRGBA{0, 160, 0, 255}
	case left:
		return color.NRGBA{0, 0, 200, 255}
	}
	return color.NRGBA{255, 255, 255, 255}
}

// lying gives the picture as it lies in a file with each orientation, straight from
// the table of EXIF 2.3 (4.6.4 A, Orientation) and TIFF 6.0 (section 8): where the
// 0th row and the 0th column of the file are seen.
func lying(orientation int) *image.NRGBA {
	wide, tall := seenWide, seenTall
	if orientation >= 5 {
		wide, tall = tall, wide
	}
	file := image.NewNRGBA(image.Rect(0, 0, wide, tall))
	right, bottom := seenWide-1, seenTall-1
	for row := range tall {
		for column := range wide {
			var x, y int
			switch orientation {
			case 1: // row 0 is the top, column 0 the left-hand side
				x, y = column, row
			case 2: // top, right
				x, y = right-column, row
			case 3: // bottom, right
				x, y = right-column, bottom-row
			case 4: // bottom, left
				x, y = column, bottom-row
			case 5: // row 0 is the left-hand side, column 0 the top
				x, y = row, column
			case 6: // right, top
				x, y = right-row, column
			case 7: // right, bottom
				x, y = right-row, bottom-column
			case 8: // left, bottom
				x, y = row, bottom-column
			}
			file.SetNRGBA(column, row, asSeen(x, y))
		}
	}
	return file
}

// exifOf is the least EXIF data that tells an orientation, with a place of the kind
// that must not get out: a GPS directory's tag and a maker's name.
func exifOf(order binary.ByteOrder, orientation int) []byte {
	head := "II"
	if order == binary.ByteOrder(binary.BigEndian) {
		head = "MM"
	}
	out := []byte(head)
	u16 := func(v uint16) { out = append(out, 0, 0); order.PutUint16(out[len(out)-2:], v) }
	u32 := func(v uint32) { out = append(out, 0, 0, 0, 0); order.PutUint32(out[len(out)-4:], v) }
	u16(42)
	u32(8)
	u16(3)
	u16(0x010f) // Make, ASCII
	u16(2)
	u32(4)
	out = append(out, "Qua\x00"...)
	u16(orientationTag) // SHORT
	u16(3)
	u32(1)
	u16(uint16(orientation))
	u16(0)
	u16(0x8825) // GPS directory
	u16(4)
	u32(1)
	u32(0)
	u32(0)
	return out
}

// segment is a JPEG segment with its marker and length.
func segment(marker byte, content string) []byte {
	out := []byte{0xff, marker}
	out = binary.BigEndian.AppendUint16(out, uint16(len(content)+2))
	return append(out, content...)
}

// photograph is a JPEG file with all that a telephone writes into one.
func photograph(t testing.TB, of image.Image, order binary.ByteOrder, orientation int) []byte {
	t.Helper()
	var out bytes.Buffer
	if err := jpeg.Encode(&out, of, &jpeg.Options{Quality: 95}); err != nil {
		t.Fatal(err)
	}
	plain := out.Bytes()
	file := bytes.Clone(plain[:2])
	file = append(file, segment(0xe0, "JFIF\x00\x01\x02\x00\x00\x01\x00\x01\x00\x00")...)
	file = append(file, segment(0xe1, "http://ns.adobe.com/xap/1.0/\x00<x:xmpmeta>GPSLatitude</x:xmpmeta>")...)
	file = append(file, segment(0xe1, "Exif\x00\x00"+string(exifOf(order, orientation)))...)
	file = append(file, segment(0xe2, "ICC_PROFILE\x00\x01\x01profile")...)
	file = append(file, segment(0xfe, "shot at home")...)
	return append(file, plain[2:]...)
}

// pngWith is a PNG file with an eXIf chunk (PNG, third edition, 11.3.3.1).
func pngWith(t testing.TB, of image.Image, exif []byte) []byte {
	t.Helper()
	var out bytes.Buffer
	if err := png.Encode(&out, of); err != nil {
		t.Fatal(err)
	}
	plain := out.Bytes()
	const afterHead = 8 + 25
	body := append([]byte("eXIf"), exif...)
	added := binary.BigEndian.AppendUint32(nil, uint32(len(exif)))
	added = binary.BigEndian.AppendUint32(append(added, body...), crc32.ChecksumIEEE(body))
	return append(append(bytes.Clone(plain[:afterHead]), added...), plain[afterHead:]...)
}

func TestEveryOrientationIsTurnedUpright(t *testing.T) {
	for orientation := 1; orientation <= 8; orientation++ {
		for name, order := range map[string]binary.ByteOrder{"II": binary.LittleEndian, "MM": binary.BigEndian} {
			file := lying(orientation)
			for kind, data := range map[string][]byte{
				"jpeg": photograph(t, file, order, orientation), "png": pngWith(t, file, exifOf(order, orientation)),
			} {
				t.Run(fmt.Sprintf("%d-%s-%s", orientation, name, kind), func(t *testing.T) { checkUpright(t, data) })
			}
		}
	}
}

func checkUpright(t *testing.T, data []byte) {
	t.Helper()
	if wide, tall, err := Measure(data); err != nil || wide != seenWide || tall != seenTall {
		t.Errorf("it measures %d × %d, want %d × %d; %v", wide, tall, seenWide, seenTall, err)
	}
	ready, err := Prepare(data, InText, false)
	if err != nil {
		t.Fatal(err)
	}
	shown, _, err := image.Decode(bytes.NewReader(ready.Data))
	if err != nil {
		t.Fatal(err)
	}
	if size := shown.Bounds().Size(); size.X != seenWide || size.Y != seenTall {
		t.Fatalf("it is %v, want %d × %d", size, seenWide, seenTall)
	}
	for _, at := range []image.Point{{8, 8}, {52, 8}, {8, 32}, {52, 32}} {
		r, g, b, _ := shown.At(at.X, at.Y).RGBA()
		want := asSeen(at.X, at.Y)
		if apart(r, want.R) > 16 || apart(g, want.G) > 16 || apart(b, want.B) > 16 {
			t.Errorf("at %v it is %d %d %d, want %v", at, r>>8, g>>8, b>>8, want)
		}
	}
}

func apart(got uint32, want uint8) int {
	if d := int(got>>8) - int(want); d >= 0 {
		return d
	} else {
		return -d
	}
}

// What is cut short or tells nonsense is taken as it lies.
func TestBrokenOrientationIsNone(t *testing.T) {
	whole := exifOf(binary.LittleEndian, 6)
	for length := range whole {
		if got := turnIn(whole[:length]); got != 1 && length < 34 {
			t.Errorf("cut at %d it tells %d", length, got)
		}
	}
	for _, nonsense := range []int{0, 9, 65535} {
		if got := turnIn(exifOf(binary.BigEndian, nonsense)); got != 1 {
			t.Errorf("orientation %d is taken as %d", nonsense, got)
		}
	}
	far := bytes.Clone(whole)
	binary.LittleEndian.PutUint32(far[4:], 0xfffffff0)
	if got := turnIn(far); got != 1 {
		t.Errorf("a directory beyond the end tells %d", got)
	}
}

func FuzzMeasure(f *testing.F) {
	f.Add(photograph(f, lying(6), binary.BigEndian, 6))
	f.Add(pngWith(f, lying(3), exifOf(binary.LittleEndian, 3)))
	f.Add([]byte("RIFF\x20\x00\x00\x00WEBPEXIF\xff\xff\xff\xffExif\x00\x00"))
	f.Fuzz(func(t *testing.T, data []byte) {
		if turned := turnOf(data); turned < 1 || turned > 8 {
			t.Errorf("turned %d", turned)
		}
		if wide, tall, err := Measure(data); err == nil && (wide <= 0 || tall <= 0 || wide*tall > mostDots) {
			t.Errorf("measures %d × %d", wide, tall)
		}
	})
}
