package adopt

import (
	"encoding/csv"
	"slices"
	"strings"
	"unicode"

	"tallyfold/kit/quantity"
	"tallyfold/kit/source"
)

// maxParts is how many lines a list of parts may have; a large kit has sixty.
const maxParts = 500

// parts reads a list of parts: CSV with a comma, semicolon or tab, or lines such as
// "200 g wax flakes", "wax flakes, 200 g" and "3 jars".
func (r *reading) parts(file *source.File) {
	r.hasList = true
	text := strings.TrimPrefix(string(file.Text), "\ufeff")
	columns := columnsOf(text)
	for n, line := range strings.Split(text, "\n") {
		line = strings.TrimSpace(strings.TrimLeft(strings.TrimSpace(line), "-*•"))
		if line == "" || strings.HasPrefix(line, "#") || columns.is(n, line) {
			continue
		}
		where := file.Name + ", line " + quantity.Whole(int64(n+1)).String()
		if n >= maxParts {
			r.unread = append(r.unread, Question{Words: where, Asks: "the list of parts goes on: what stands from here on was not read",
				Advice: "at most 500 lines are read; write the rest into kit.yaml by hand"})
			return
		}
		name, amount, ok := columns.part(line, r.options.reader())
		ok = ok && hasLetter(name)
		if !ok && hasLetter(name) {
			r.listed(name, "", "on the list of parts, "+where+", without an amount that can be packed")
			continue
		}
		if !ok {
			r.unread = append(r.unread, Question{Words: line, Asks: where + ": what is it, and how much of it is packed?",
				Advice: "write it as “200 g wax flakes” or “3 jars”"})
			continue
		}
		r.listed(name, amount, "on the list of parts, "+where)
	}
}

// hasLetter: a name of figures alone is none to kit.yaml.
func hasLetter(name string) bool { return strings.IndexFunc(name, unicode.IsLetter) >= 0 }

// listed adds a thing that a list tells.
func (r *reading) listed(name, amount, why string) {
	if r.owner(name) != "" {
		r.unread = append(r.unread, Question{Words: name, Asks: "“" + name + "” stands twice on a list: which amount holds?",
			Advice: "the first was taken; put it right in kit.yaml"})
		return
	}
	if r.listedTool(name, amount, why) {
		return
	}
	r.Things = append(r.Things, &Thing{Key: r.freeKey(name), Name: oneLine(name), Packed: amount, Why: why, Listed: true})
}

// csvColumns are the columns of a list with a heading; separator 0 is a list of lines.
type csvColumns struct {
	separator          rune
	name, amount, unit int // -1 for none
	heading            int // its line
}

var (
	nameHeads   = wordSet("name item part component material ingredient what thing description")
	amountHeads = wordSet("amount quantity qty packed count number weight volume")
	unitHeads   = wordSet("unit units measure")
)

// columnsOf looks for a heading in the first line that is not empty.
func columnsOf(text string) csvColumns {
	for n, line := range strings.Split(text, "\n") {
		if strings.TrimSpace(line) == "" {
			continue
		}
		for _, separator := range ";\t," {
			c := csvColumns{separator, -1, -1, -1, n}
			for i, head := range fields(line, separator) {
				switch word := strings.ToLower(head); {
				case nameHeads[word]:
					c.name = i
				case amountHeads[word]:
					c.amount = i
				case unitHeads[word]:
					c.unit = i
				}
			}
			if c.name >= 0 && c.amount >= 0 {
				return c
			}
		}
		break
	}
	return csvColumns{0, -1, -1, -1, -1}
}

func (c csvColumns) is(n int, line string) bool { return c.heading == n && line != "" }

// fields cuts a line of CSV; a line whose quotation marks do not match is one field.
func fields(line string, separator rune) []string {
	reader := csv.NewReader(strings.NewReader(line))
	reader.Comma = separator
	row, err := reader.Read()
	if err != nil {
		return []string{line}
	}
	for i := range row {
		row[i] = strings.TrimSpace(row[i])
	}
	return row
}

// part reads the name and the amount of one line. The amount is given as it can stand in
// kit.yaml.
func (c csvColumns) part(line string, reader quantity.Reader) (name, amount string, ok bool) {
	if c.name >= 0 {
		row := fields(line, c.separator)
		at := func(i int) string {
			if i < 0 || i >= len(row) {
				return ""
			}
			return row[i]
		}
		name, amount = at(c.name), strings.TrimSpace(at(c.amount)+" "+at(c.unit))
		if name == "" || !packable(amount, reader) {
			return name, "", false
		}
		return name, amount, true
	}
	return partInLine(line, reader)
}

// packable says whether a text is an amount that can be packed.
func packable(text string, reader quantity.Reader) bool {
	amount, err := reader.Amount(text)
	return err == nil && isPackable(amount)
}

// isPackable: "at least 3" leaves open how many there are.
func isPackable(a quantity.Amount) bool {
	return slices.Contains(packableKinds, a.Dimension) && a.Nominal.Sign() > 0 && a.Bound == quantity.Exactly
}

var packableKinds = []quantity.Dimension{quantity.Mass, quantity.Volume, quantity.Count, quantity.Length, quantity.Area}

// partInLine reads "200 g wax flakes", "3 jars", "wax flakes: 200 g" and "jars, 3".
func partInLine(line string, reader quantity.Reader) (name, amount string, ok bool) {
	if cut := strings.LastIndexAny(line, ",;:\t"); cut > 0 {
		before, after := strings.Trim(line[:cut], " \t,;:"), strings.TrimSpace(line[cut+1:])
		if !packable(before, reader) && packable(after, reader) {
			return before, after, before != ""
		}
		if packable(before, reader) && !packable(after, reader) && after != "" {
			return after, before, true
		}
	}
	words := strings.Fields(line)
	for n := min(len(words)-1, 6); n > 0; n-- {
		amount, name = strings.Join(words[:n], " "), strings.Join(words[n:], " ")
		read, err := reader.Amount(amount)
		if err != nil || !isPackable(read) || read.Noun != "" {
			continue
		}
		name = strings.TrimPrefix(strings.TrimPrefix(name, "of "), "× ")
		return strings.Trim(name, " .,;"), amount, strings.Trim(name, " .,;") != ""
	}
	return "", "", false
}

// ownList takes amounts that stand in lines of their own, at least two below each other,
// for a list of what is in the box. They are not taken by a step.
func (r *reading) ownList() {
	lines := r.listLines()
	for i, line := range lines {
		near := i > 0 && lines[i-1].number == line.number-1 || i+1 < len(lines) && lines[i+1].number == line.number+1
		if !near {
			continue
		}
		p := line.proposal
		p.Kind, p.Accepted, p.Destination = Packed, false, ""
		p.Alternatives = []Alternative{{"take:" + p.Names[0].Key, "taken in a step"}}
		said := r.text[p.AmountStart:p.AmountEnd]
		p.Meaning = said + " of " + p.Names[0].Key + " is in the box"
		p.Why = "a line of its own in a list"
		if !packable(said, r.options.reader()) {
			p.Open = "the list tells no amount that can be packed"
			continue
		}
		r.hasList = true
		for _, t := range r.Things {
			if t.Key == p.Names[0].Key && t.Packed == "" {
				t.Packed, t.Listed, t.Household = said, true, false
				t.Why = "a list in the leaflet " + r.placeOf(p.Start)
			}
		}
		p.Accepted, p.Open = true, "" // no link is made of it, so its words need not fit into one
	}
}

type listLine struct {
	number   int
	proposal *Proposal
}

// listLines gives the proposals that are all there is in their line, bullets aside.
func (r *reading) listLines() []listLine {
	var all []listLine
	for _, p := range r.Proposals {
		if p.Kind != Amount || !p.known || len(p.Names) != 1 {
			continue
		}
		start := strings.LastIndexByte(r.text[:p.Start], '\n') + 1
		end := len(r.text)
		if n := strings.IndexByte(r.text[p.End:], '\n'); n >= 0 {
			end = p.End + n
		}
		first, last := min(p.Start, p.Names[0].Start, p.AmountStart), max(p.End, p.Names[0].End, p.AmountEnd)
		if first < start || last > end {
			continue
		}
		around := strings.Trim(r.text[start:first], " \t-*•+|") + strings.Trim(r.text[last:end], " \t.,;|\r")
		if around == "" {
			all = append(all, listLine{r.File.Span(p.Start, p.Start).Position().Line, p})
		}
	}
	return all
}
