package templates

import (
	"bytes"
	"encoding/binary"
	"errors"
	"fmt"
	"io"
	"maps"
	"slices"

	"github.com/andybalholm/brotli"
)

// This file takes out of a WOFF2 file (W3C Recommendation, section 4 and 5) what widths
// are measured with: which letters there are and how far each advances. Outlines, which
// such a file keeps in a form of its own, are left behind.

// knownTags are the numbers of the tables that are wanted (WOFF2, section 4.1).
var knownTags = map[byte]string{0: "cmap", 1: "head", 2: "hhea", 3: "hmtx", 4: "maxp", 6: "OS/2", 7: "post", 10: "glyf", 11: "loca"}

const (
	woffHeader   = 48
	arbitraryTag = 63
	// mostOfFace is more than any face of a booklet takes; what claims more is not unpacked.
	mostOfFace = 16 << 20
)

var errNoFace = errors.New("it is no web font of the kind WOFF2")

// woffTable is one entry of the directory.
type woffTable struct {
	tag         string
	length      int // as it lies in the unpacked data
	transformed bool
}

// measurable makes a font file of the tables that widths are measured with. Its letters
// have no outlines.
func measurable(woff []byte) ([]byte, error) {
	if len(woff) < woffHeader || string(woff[:4]) != "wOF2" {
		return nil, errNoFace
	}
	count, packed := int(binary.BigEndian.Uint16(woff[12:])), int(binary.BigEndian.Uint32(woff[20:]))
	directory, rest, err := readDirectory(woff[woffHeader:], count)
	if err != nil {
		return nil, err
	}
	if packed > len(rest) {
		return nil, errNoFace
	}
	data, err := io.ReadAll(io.LimitReader(brotli.NewReader(bytes.NewReader(rest[:packed])), mostOfFace))
	if err != nil {
		return nil, fmt.Errorf("it cannot be unpacked: %w", err)
	}
	tables := map[string][]byte{}
	advancesOnly := false
	for _, t := range directory {
		if t.length > len(data) {
			return nil, errNoFace
		}
		if t.tag != "" && t.tag != "glyf" && t.tag != "loca" {
			tables[t.tag] = bytes.Clone(data[:t.length])
		}
		advancesOnly = advancesOnly || t.tag == "hmtx" && t.transformed
		data = data[t.length:]
	}
	if err := withoutOutlines(tables, advancesOnly); err != nil {
		return nil, err
	}
	return fontFile(tables), nil
}

func readDirectory(data []byte, count int) (tables []woffTable, rest []byte, err error) {
	for range count {
		if len(data) == 0 {
			return nil, nil, errNoFace
		}
		flags := data[0]
		data = data[1:]
		t := woffTable{tag: knownTags[flags&arbitraryTag]}
		if flags&arbitraryTag == arbitraryTag {
			if len(data) < 4 {
				return nil, nil, errNoFace
			}
			data = data[4:]
		}
		if t.length, data, err = base128(data); err != nil {
			return nil, nil, err
		}
		version := flags >> 6
		t.transformed = version != 0
		if t.tag == "glyf" || t.tag == "loca" { // their version 0 is the one changed
			t.transformed = version != 3
		}
		if t.transformed {
			if t.length, data, err = base128(data); err != nil {
				return nil, nil, err
			}
		}
		tables = append(tables, t)
	}
	return tables, data, nil
}

// base128 reads a UIntBase128 (WOFF2, section 4.1): seven bits a byte, the last below 128.
func base128(data []byte) (n int, rest []byte, err error) {
	for i, b := range data {
		if i == 5 || n > mostOfFace {
			break
		}
		n = n<<7 | int(b&0x7f)
		if b < 0x80 {
			return n, data[i+1:], nil
		}
	}
	return 0, nil, errNoFace
}

// withoutOutlines puts empty outlines in, and bearings of nothing where the file has left
// the bearings out (WOFF2, section 5.4).
func withoutOutlines(tables map[string][]byte, advancesOnly bool) error {
	if len(tables["head"]) < 54 || len(tables["maxp"]) < 6 || len(tables["hhea"]) < 36 {
		return errNoFace
	}
	glyphs := int(binary.BigEndian.Uint16(tables["maxp"][4:]))
	metrics := int(binary.BigEndian.Uint16(tables["hhea"][34:]))
	binary.BigEndian.PutUint16(tables["head"][50:], 0) // short offsets
	tables["loca"], tables["glyf"] = make([]byte, 2*(glyphs+1)), make([]byte, 4)
	if !advancesOnly {
		return nil
	}
	packed := tables["hmtx"]
	if len(packed) < 1+2*metrics || metrics > glyphs {
		return errNoFace
	}
	whole := make([]byte, 4*metrics+2*(glyphs-metrics))
	for i := range metrics {
		copy(whole[4*i:], packed[1+2*i:3+2*i])
	}
	tables["hmtx"] = whole
	return nil
}

// fontFile lays tables out as a font file (OpenType, table directory), with no checksums.
func fontFile(tables map[string][]byte) []byte {
	names := slices.Sorted(maps.Keys(tables))
	head := binary.BigEndian.AppendUint32(nil, 0x00010000)
	head = binary.BigEndian.AppendUint16(head, uint16(len(names)))
	head = append(head, make([]byte, 6)...)
	offset := len(head) + 16*len(names)
	var body []byte
	for _, name := range names {
		head = append(head, name...)
		head = binary.BigEndian.AppendUint32(head, 0)
		head = binary.BigEndian.AppendUint32(head, uint32(offset+len(body)))
		head = binary.BigEndian.AppendUint32(head, uint32(len(tables[name])))
		body = append(body, tables[name]...)
		for len(body)%4 != 0 {
			body = append(body, 0)
		}
	}
	return append(head, body...)
}
