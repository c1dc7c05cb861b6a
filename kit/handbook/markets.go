package handbook

import (
	"bufio"
	"cmp"
	"embed"
	"fmt"
	"io/fs"
	"net/textproto"
	"path"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"sync"
	"time"
)

//go:embed markets/*.txt
var marketFiles embed.FS

// A Pack is what boxes, bags, containers and booklets are held against for one market.
type Pack struct {
	// Market is what a maker writes under "markets", such as "EU"; Name is for people.
	Market, Name string
	// LookedAt is the day on which somebody last went through the pack.
	LookedAt time.Time
	// NotCovered says what of the market's law the pack does not touch.
	NotCovered   string
	Requirements []Requirement
}

// Keeps is how long a pack counts as looked at.
const Keeps = 1 // year

// Old says whether a pack was last looked at more than a year before a day, whatever the hour.
func (p Pack) Old(today time.Time) bool {
	return p.LookedAt.AddDate(Keeps, 0, 0).Format(time.DateOnly) < today.Format(time.DateOnly)
}

// A Requirement is one thing that a market asks of a kit.
type Requirement struct {
	// ID is unique in its pack.
	ID string
	// Asks says in a phrase what is asked.
	Asks string
	// Of is what it is asked of: the kit, each pack in the box, or each filling.
	Of string
	// Applies are the conditions under which it is asked, all of them; one that begins with
	// "not " must not hold.
	Applies []string
	// On are the places where it has to be read.
	On []Place
	// Says is a statement in the words of the law; {…} in it stands for what differs by kit.
	Says string
	// Word is the booklet's word for a statement that is told in the language of the booklet.
	Word string
	// Tells: "hazards" prints what the pack's own hazards are.
	Tells string
	// Needs are facts of kit.yaml that it cannot be met without.
	Needs []string
	// Yours is what is left to the maker, as the program cannot look at it.
	Yours string
	// TypeHeight is the least height of its letters in mm, 0 for none of its own.
	TypeHeight float64
	// Least are the shortfalls that a pack may have, by what its label says.
	Least []Shortfall
	// Source, the date of the source, and how it is known.
	Source, Dated, Known string
}

// A Place is where a customer reads something.
type Place string

// The places that a requirement can name.
const (
	OnBox       Place = "box"
	OnBag       Place = "bag"
	OnContainer Place = "container"
	InBooklet   Place = "booklet"
)

// The values of Requirement.Of.
const (
	OfKit     = "kit"
	OfPack    = "pack"
	OfFilling = "filling"
)

// Packs gives those that are shipped, by market. Nobody may change them.
func Packs() []Pack { return shipped() }

var shipped = sync.OnceValue(func() []Pack {
	names, _ := fs.Glob(marketFiles, "markets/*.txt")
	var all []Pack
	for _, name := range names {
		text, err := marketFiles.ReadFile(name)
		if err != nil {
			panic(err) // it is in the program
		}
		pack, err := ReadPack(path.Base(name), string(text))
		if err != nil {
			panic(err) // a test reads them all
		}
		all = append(all, pack)
	}
	return all
})

// PackFor gives the pack of a market.
func PackFor(market string) (Pack, bool) {
	all := Packs()
	at := slices.IndexFunc(all, func(p Pack) bool { return p.Market == market })
	if at < 0 {
		return Pack{}, false
	}
	return all[at], true
}

// ReadPack reads a pack from its text: paragraphs of lines "Key: value", the first about the
// pack, each other about one requirement; a line that begins with a blank goes on from the
// one before, one with # is a note. The form of a paragraph is that of the fields of a mail
// (RFC 5322, 2.2). The error names file, paragraph and key.
func ReadPack(file, text string) (Pack, error) {
	var pack Pack
	for i, paragraph := range paragraphs(text) {
		fields, err := textproto.NewReader(bufio.NewReader(strings.NewReader(paragraph + "\n\n"))).ReadMIMEHeader()
		if err != nil {
			return pack, fmt.Errorf("%s: paragraph %d is not made of lines “Key: value”: %w", file, i+1, err)
		}
		said := fieldsOf{values: fields}
		if i == 0 {
			err = said.pack(&pack)
		} else {
			pack.Requirements = append(pack.Requirements, said.requirement())
			err = said.err
		}
		if err == nil {
			err = said.unknown()
		}
		if err != nil {
			return pack, fmt.Errorf("%s: paragraph %d: %w", file, i+1, err)
		}
	}
	return pack, nil
}

// paragraphs are those of a text without its notes.
func paragraphs(text string) []string {
	var all []string
	var lines []string
	for line := range strings.Lines(text + "\n\n") {
		line = strings.TrimRight(line, "\r\n")
		switch {
		case strings.HasPrefix(line, "#"):
		case line != "":
			lines = append(lines, line)
		case len(lines) > 0:
			all, lines = append(all, strings.Join(lines, "\n")), nil
		}
	}
	return all
}

// fieldsOf takes the fields of one paragraph, so that one that nobody asked for is noticed.
type fieldsOf struct {
	values textproto.MIMEHeader
	err    error
}

func (f *fieldsOf) take(key string) string {
	all := f.values[key]
	delete(f.values, key)
	if len(all) > 1 && f.err == nil {
		f.err = fmt.Errorf("%s stands there twice", key)
	}
	return strings.Join(all, " ")
}

func (f *fieldsOf) must(key string) string {
	value := f.take(key)
	if value == "" && f.err == nil {
		f.err = fmt.Errorf("%s is missing", key)
	}
	return value
}

func (f *fieldsOf) unknown() error {
	for key := range f.values {
		return fmt.Errorf("%s is no key of a pack", key)
	}
	return nil
}

func (f *fieldsOf) pack(p *Pack) error {
	p.Market, p.Name, p.NotCovered = f.must("Market"), f.must("Name"), f.must("Not-Covered")
	day := f.must("Looked-At")
	if f.err != nil {
		return f.err
	}
	at, err := time.Parse(time.DateOnly, day)
	if err != nil {
		return fmt.Errorf("Looked-At is %q; write it as 2026-11-26", day)
	}
	p.LookedAt = at
	return nil
}

func (f *fieldsOf) requirement() Requirement {
	r := Requirement{
		ID: f.must("Requirement"), Asks: f.must("Asks"), Of: f.must("Of"),
		Applies: listed(f.must("Applies")), Says: f.take("Says"), Word: f.take("Word"), Tells: f.take("Tells"),
		Needs: listed(f.take("Needs")), Yours: f.take("Yours"),
		Source: f.must("Source"), Dated: f.must("Dated"), Known: f.must("Known"),
	}
	for _, place := range listed(f.take("On")) {
		r.On = append(r.On, Place(place))
	}
	r.TypeHeight = f.height("Type-Height")
	least, err := shortfalls(f.take("Least"))
	if err != nil && f.err == nil {
		f.err = err
	}
	r.Least = least
	return r
}

var inches = regexp.MustCompile(`^(\d+)/(\d+) in$`)

// height reads "1/16 in" as millimetres.
func (f *fieldsOf) height(key string) float64 {
	value := f.take(key)
	if value == "" {
		return 0
	}
	parts := inches.FindStringSubmatch(value)
	if parts == nil {
		f.err = cmp.Or(f.err, fmt.Errorf("%s is “%s”; write it as 1/16 in", key, value))
		return 0
	}
	over, _ := strconv.ParseFloat(parts[1], 64)
	under, _ := strconv.ParseFloat(parts[2], 64)
	return over / max(under, 1) * 25.4
}

// listed are the parts of a value between commas.
func listed(value string) []string {
	var all []string
	for part := range strings.SplitSeq(value, ",") {
		if part = strings.TrimSpace(part); part != "" {
			all = append(all, part)
		}
	}
	return all
}
