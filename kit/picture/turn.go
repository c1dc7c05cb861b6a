package picture

import (
	"bytes"
	"encoding/binary"
	"image"
)

// A turn is how a picture lies in its file: the value of the tag Orientation, 1 to 8
// (EXIF 2.3, section 4.6.4 A; TIFF 6.0, section 8). It says where the first row and
// the first column of the file belong:
//
//	1 top, left     2 top, right     3 bottom, right   4 bottom, left
//	5 left, top     6 right, top     7 right, bottom   8 left, bottom
type turn int

// onItsSide: rows of the file are columns of the picture.
func (t turn) onItsSide() bool { return t >= 5 && t <= 8 }

// upright gives the picture as it is meant to be seen.
func (t turn) upright(from *image.NRGBA) *image.NRGBA {
	if t < 2 || t > 8 {
		return from
	}
	wide, tall := from.Bounds().Dx(), from.Bounds().Dy()
	to := image.NewNRGBA(image.Rect(0, 0, wide, tall))
	if t.onItsSide() {
		to = image.NewNRGBA(image.Rect(0, 0, tall, wide))
	}
	for row := range tall {
		for column := range wide {
			x, y := t.place(column, row, wide, tall)
			copy(to.Pix[to.PixOffset(x, y):][:4], from.Pix[from.PixOffset(column, row):][:4])
		}
	}
	return to
}

// place is where a dot of the file belongs in the upright picture.
func (t turn) place(column, row, wide, tall int) (x, y int) {
	switch t {
	case 2:
		return wide - 1 - column, row
	case 3:
		return wide - 1 - column, tall - 1 - row
	case 4:
		return column, tall - 1 - row
	case 5:
		return row, column
	case 6:
		return tall - 1 - row, column
	case 7:
		return tall - 1 - row, wide - 1 - column
	case 8:
		return row, wide - 1 - column
	}
	return column, row
}

// turnOf finds the orientation in a JPEG, PNG or WebP file; 1 where none is told.
func turnOf(data []byte) turn {
	switch {
	case bytes.HasPrefix(data, []byte("\xff\xd8")):
		return turnIn(exifInJPEG(data))
	case bytes.HasPrefix(data, []byte("\x89PNG\r\n\x1a\n")):
		return turnIn(chunk(data[8:], "eXIf", binary.BigEndian, true))
	case len(data) > 12 && string(data[:4]) == "RIFF" && string(data[8:12]) == "WEBP":
		return turnIn(bytes.TrimPrefix(chunk(data[12:], "EXIF", binary.LittleEndian, false), exifMark))
	}
	return 1
}

var exifMark = []byte("Exif\x00\x00")

// exifInJPEG finds the segment APP1 that holds EXIF, before the picture itself begins.
func exifInJPEG(data []byte) []byte {
	for at := 2; at+4 <= len(data) && data[at] == 0xff; {
		marker, length := data[at+1], int(binary.BigEndian.Uint16(data[at+2:]))
		if marker == 0xff { // filling
			at++
			continue
		}
		end := at + 2 + length
		if marker == 0xda || length < 2 || end > len(data) {
			return nil
		}
		if segment := data[at+4 : end]; marker == 0xe1 && bytes.HasPrefix(segment, exifMark) {
			return segment[len(exifMark):]
		}
		at = end
	}
	return nil
}

// chunk finds a chunk by its name: length and name (PNG, with a check sum after it), or
// name and length (RIFF, filled up to an even length).
func chunk(data []byte, name string, order binary.ByteOrder, lengthFirst bool) []byte {
	for len(data) >= 8 {
		called, size := string(data[:4]), order.Uint32(data[4:])
		after := uint64(8) + uint64(size) + uint64(size%2)
		if lengthFirst {
			called, size = string(data[4:8]), order.Uint32(data)
			after = uint64(12) + uint64(size)
		}
		if uint64(len(data)) < 8+uint64(size) {
			return nil
		}
		if called == name {
			return data[8 : 8+size]
		}
		data = data[min(after, uint64(len(data))):]
	}
	return nil
}

// orientationTag is the number of the tag in the first directory.
const orientationTag = 0x0112

// turnIn reads the orientation out of EXIF data, which is laid out as TIFF: byte
// order, 42, where the first directory stands; there a count and entries of 12 bytes.
func turnIn(exif []byte) turn {
	var order binary.ByteOrder = binary.LittleEndian
	switch {
	case len(exif) < 8:
		return 1
	case string(exif[:2]) == "MM":
		order = binary.BigEndian
	case string(exif[:2]) != "II":
		return 1
	}
	start := uint64(order.Uint32(exif[4:]))
	if order.Uint16(exif[2:]) != 42 || start+2 > uint64(len(exif)) {
		return 1
	}
	entries := exif[start+2:]
	for count := order.Uint16(exif[start:]); count > 0 && len(entries) >= 12; count-- {
		if order.Uint16(entries) == orientationTag {
			if value := turn(order.Uint16(entries[8:])); value >= 1 && value <= 8 {
				return value
			}
			return 1
		}
		entries = entries[12:]
	}
	return 1
}
