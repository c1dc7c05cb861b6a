package xliff

import (
	"fmt"
	"regexp"
	"strings"

	"tallyfold/kit"
	"tallyfold/kit/quantity"
	"tallyfold/kit/source"
	"tallyfold/templates"
)

// A cutter cuts the passages of a kit into units.
type cutter struct {
	kit   *kit.Kit
	words templates.Words
	name  string // of the section at hand
	count int    // units of it so far
}

func (c *cutter) unit(note string, pieces []piece) *Unit {
	c.count++
	return &Unit{ID: strings.ReplaceAll(c.name, ":", "-") + fmt.Sprintf("-%d", c.count), Note: note, pieces: pieces}
}

// A block is a paragraph, an item of a list or a line of a table: places in the file,
// one a line, without what marks quotations and lists.
type block struct {
	lines         [][2]int
	head, further string
}

var (
	quotation = regexp.MustCompile(`^(?:> ?)+`)
	listItem  = regexp.MustCompile(`^(?: *(?:[-*+]|[0-9]+[.)]) +(?:\[[ xX]\] +)?)`)
	heading   = regexp.MustCompile(`^#{3,6} +`)
	note      = regexp.MustCompile(`(?s)<!--.*?(?:-->|$)`)
)

// blocksOf cuts the Markdown of a passage. A maker's notes are left out.
func blocksOf(body source.Span) []*block {
	text := body.Text()
	text = note.ReplaceAllStringFunc(text, func(note string) string {
		return regexp.MustCompile(`[^\n]`).ReplaceAllString(note, " ")
	})
	var all []*block
	var open *block
	at := body.Start
	for line := range strings.SplitAfterSeq(text, "\n") {
		start := at
		at += len(line)
		line = strings.TrimRight(line, " \t\r\n")
		mark := quotation.FindString(line)
		rest := line[len(mark):]
		item := listItem.FindString(rest)
		if item == "" {
			item = heading.FindString(rest)
		}
		switch {
		case strings.TrimSpace(rest) == "":
			open = nil
			continue
		case open == nil, item != "", strings.HasPrefix(rest, "|"), strings.TrimSpace(mark) != strings.TrimSpace(open.mark()):
			open = &block{head: mark + item, further: mark + strings.Repeat(" ", len(item))}
			if heading.MatchString(item) {
				open.further = mark
			}
			all = append(all, open)
		default:
			blanks := len(rest) - len(strings.TrimLeft(rest, " \t"))
			item = rest[:blanks]
		}
		open.lines = append(open.lines, [2]int{start + len(mark) + len(item), start + len(line)})
	}
	return all
}

// mark is what marks the quotation that the block stands in.
func (b *block) mark() string { return quotation.FindString(b.head) }

// pieces gives the text of a block with its links, amounts and signal word as codes.
func (c *cutter) pieces(b *block, file *source.File, operations []*kit.Operation, cautions []kit.Caution) []piece {
	w := &walk{file: file, stops: map[int]stop{}}
	from, to := b.lines[0][0], b.lines[len(b.lines)-1][1]
	for _, o := range operations {
		if o.Span.Start >= from && o.Span.End <= to {
			w.link(c, o)
		}
	}
	for _, caution := range cautions {
		if caution.Span.Start == from-len(b.head) {
			w.signal(c, caution, from)
		}
	}
	for i, line := range b.lines {
		if i > 0 {
			w.add(" ")
		}
		w.line(line[0], line[1])
	}
	w.flush()
	return w.pieces
}

// A walk goes through the text of a block and stops at what is locked.
type walk struct {
	file   *source.File
	stops  map[int]stop
	pieces []piece
	text   strings.Builder
	next   int // no byte before it is read again
	codes  int
	links  []int // codes of links that are open
}

// A stop is a code in place of the bytes from its place to end.
type stop struct {
	end  int
	code code
}

func (w *walk) add(text string) { w.text.WriteString(text) }

func (w *walk) flush() {
	if w.text.Len() > 0 {
		w.pieces = append(w.pieces, piece{text: w.text.String()})
		w.text.Reset()
	}
}

func (w *walk) line(start, end int) {
	for i := max(start, w.next); i < end; {
		stop, ok := w.stops[i]
		if !ok {
			w.text.WriteByte(w.file.Text[i])
			i++
			continue
		}
		w.flush()
		w.pieces = append(w.pieces, piece{code: w.numbered(stop.code)})
		i, w.next = stop.end, stop.end
	}
}

// numbered gives a code its number; both codes of a link have one.
func (w *walk) numbered(c code) *code {
	if c.kind == closes && len(w.links) > 0 {
		c.id = w.links[len(w.links)-1]
		w.links = w.links[:len(w.links)-1]
		return &c
	}
	w.codes++
	c.id = w.codes
	if c.kind == opens {
		w.links = append(w.links, c.id)
	}
	return &c
}

// link locks what a link does, and the amounts in its text.
func (w *walk) link(c *cutter, o *kit.Operation) {
	whole := o.Span.Text()
	if strings.TrimSpace(o.Text) == "" {
		w.stops[o.Span.Start] = stop{o.Span.End, code{kind: alone, shows: whole, writes: whole}}
		return
	}
	before := string(w.file.Text[o.Span.Start:o.TextSpan.Start])
	behind := string(w.file.Text[o.TextSpan.End:o.Span.End])
	w.stops[o.Span.Start] = stop{o.TextSpan.Start, code{kind: opens, shows: before, writes: before}}
	w.stops[o.TextSpan.End] = stop{o.Span.End, code{kind: closes, shows: behind, writes: behind}}
	for i, span := range o.Phrase.AmountSpans {
		if i < len(o.Phrase.Amounts) && span.Start >= o.TextSpan.Start && span.End <= o.TextSpan.End {
			w.amount(c, o.Phrase.Amounts[i], span)
		}
	}
	w.figures(o.TextSpan)
}

// amount locks an amount with its unit, told in the words of the language. Of one with
// a noun or a measure of the kit's own only the figure is locked.
func (w *walk) amount(c *cutter, a quantity.Amount, span source.Span) {
	if _, known := quantity.UnitNamed(a.Unit.Name, c.kit.Kitchen.Value); !known || !figure.MatchString(span.Text()) {
		return
	}
	shows := strings.Join(strings.Fields(span.Text()), " ")
	writes := a.In(c.words.Language)
	if own, _, _ := strings.Cut(c.kit.Language.Value, "-"); c.words.Language == own || strings.HasPrefix(c.words.Language, own+"-") {
		writes = shows // another region of the language says it as it stands
	}
	w.stops[span.Start] = stop{span.End, code{kind: alone, shows: shows, writes: writes}}
}

var figure = regexp.MustCompile(`[0-9](?:[0-9.,/]*[0-9])?(?: [0-9]+/[0-9]+)?`)

// figures locks the numbers of a link's text that no amount has locked.
func (w *walk) figures(span source.Span) {
	text := span.Text()
	for _, found := range figure.FindAllStringIndex(text, -1) {
		start, end := span.Start+found[0], span.Start+found[1]
		if !w.locked(start) {
			w.stops[start] = stop{end, code{kind: alone, shows: text[found[0]:found[1]], writes: text[found[0]:found[1]]}}
		}
	}
}

func (w *walk) locked(at int) bool {
	for start, stop := range w.stops {
		if start <= at && at < stop.end {
			return true
		}
	}
	return false
}

var signalWord = regexp.MustCompile(`^\**[\pL ]+?\**\s*[:.!–—-]\s*\**\s*`)

// signal locks the word at the head of a caution; the translation has that of its
// language (ANSI Z535.6, ISO 3864-2).
func (w *walk) signal(c *cutter, caution kit.Caution, from int) {
	word := signalWord.FindString(w.file.Span(from, caution.Span.End).Text())
	if word == "" {
		return
	}
	told := c.words.Say(strings.ToLower(string(caution.Signal)))
	w.stops[from] = stop{from + len(word), code{kind: alone, shows: strings.TrimSpace(word), writes: told + c.colon() + " "}}
}

// colon has a blank before it in French (common practice, no source).
func (c *cutter) colon() string {
	if strings.HasPrefix(c.words.Language, "fr") {
		return " :"
	}
	return ":"
}
