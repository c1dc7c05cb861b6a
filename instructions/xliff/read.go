package xliff

import (
	"bytes"
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"strconv"
	"strings"
)

// Translated are the translations of a document by the ids of their units.
type Translated struct {
	// From and To are its languages by their BCP 47 tags.
	From, To string
	units    map[string]*told
}

// told is one unit of a document: its source as it went out, and its translation.
type told struct{ source, target []piece }

// maxDocument is the size of a document that is read: ten times the texts of a large kit.
const maxDocument = 4 << 20

// Read reads an XLIFF 2 document. The error says, for the person who has the file, what
// it is instead or where it breaks off. Elements of modules and other namespaces are
// passed over, and so are units that we did not write.
func Read(text []byte) (*Translated, error) {
	if len(text) > maxDocument {
		return nil, fmt.Errorf("the file is larger than %d MB", maxDocument>>20)
	}
	r := &reader{decoder: xml.NewDecoder(bytes.NewReader(text)), told: &Translated{units: map[string]*told{}}}
	for {
		token, err := r.decoder.Token()
		switch {
		case errors.Is(err, io.EOF) && r.told.To == "":
			return nil, errors.New("it is no XLIFF 2 file, or does not say into which language it is translated (trgLang)")
		case errors.Is(err, io.EOF):
			return r.told, nil
		case err != nil:
			return nil, fmt.Errorf("it cannot be read as XML: %w", err)
		}
		if err := r.element(token); err != nil {
			return nil, err
		}
	}
}

type reader struct {
	decoder *xml.Decoder
	told    *Translated
	unit    *told
}

func (r *reader) element(token xml.Token) error {
	start, ok := token.(xml.StartElement)
	if !ok {
		return nil
	}
	switch start.Name.Local {
	case "xliff":
		if version := attribute(start, "version"); !strings.HasPrefix(version, "2.") {
			return fmt.Errorf("it is XLIFF %s; only XLIFF 2 is read", version)
		}
		r.told.From, r.told.To = attribute(start, "srcLang"), attribute(start, "trgLang")
	case "unit":
		r.unit = &told{}
		r.told.units[attribute(start, "id")] = r.unit
	case "source", "target":
		if r.unit == nil {
			return nil
		}
		pieces, err := r.pieces(start.Name.Local)
		if err != nil {
			return err
		}
		// Of a unit cut into several segments the parts belong together.
		if start.Name.Local == "source" {
			r.unit.source = append(r.unit.source, pieces...)
		} else {
			r.unit.target = append(r.unit.target, pieces...)
		}
	}
	return nil
}

// pieces reads a source or target up to its end. Marks of a translator are passed over,
// the text in them is kept.
func (r *reader) pieces(until string) ([]piece, error) {
	var pieces []piece
	var links []int
	for {
		token, err := r.decoder.Token()
		if err != nil {
			return nil, fmt.Errorf("it cannot be read as XML: %w", err)
		}
		switch token := token.(type) {
		case xml.CharData:
			pieces = append(pieces, piece{text: string(token)})
		case xml.StartElement:
			switch name := token.Name.Local; name {
			case "ph":
				pieces = append(pieces, piece{code: &code{kind: alone, id: number(token, "id")}})
			case "pc":
				id := number(token, "id")
				links = append(links, id)
				pieces = append(pieces, piece{code: &code{kind: opens, id: id}})
			case "sc":
				pieces = append(pieces, piece{code: &code{kind: opens, id: number(token, "id")}})
			case "ec":
				pieces = append(pieces, piece{code: &code{kind: closes, id: number(token, "startRef")}})
			}
		case xml.EndElement:
			switch token.Name.Local {
			case until:
				return pieces, nil
			case "pc":
				pieces = append(pieces, piece{code: &code{kind: closes, id: links[len(links)-1]}})
				links = links[:len(links)-1]
			}
		}
	}
}

func attribute(start xml.StartElement, name string) string {
	for _, one := range start.Attr {
		if one.Name.Local == name && one.Name.Space == "" {
			return one.Value
		}
	}
	return ""
}

// number is the number of a code, 0 for none of ours.
func number(start xml.StartElement, name string) int {
	n, err := strconv.Atoi(attribute(start, name))
	if err != nil {
		return 0
	}
	return n
}
