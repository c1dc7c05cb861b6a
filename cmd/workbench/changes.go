package workbench

import (
	"encoding/json"
	"errors"
	"fmt"
	"net/http"
	"net/url"
	"strings"
	"unicode/utf8"

	"tallyfold/instructions/keep"
	"tallyfold/kit/amend"
)

// An order is what a page asks to have done. Which of its fields count depends on Act.
type order struct {
	// Act is what is to be done, Page the page that asks, with what it was asked with.
	Act, Page, Query string
	// Path leads to a field of kit.yaml; Value is what it becomes, Was what the page knew.
	Path       []string
	Value, Was string
	// Key and Name are those of a new thing.
	Key, Name string
	// File is a text, Text what it becomes, Print what it was made from.
	File, Text, Print string
	// Start and End are places in the editor, Destination that of a link.
	Start, End  int
	Destination string
	// Number and Remedy count findings and their remedies, or places among entries.
	Number, Remedy int
	Rule           string
}

// An answer is what came of an order.
type answer struct {
	// Page is the page as it is now.
	Page string `json:"page,omitempty"`
	// Wrong says why nothing was done; Field is the field that it stands beside.
	Wrong string `json:"wrong,omitempty"`
	Field string `json:"field,omitempty"`
	// News is the number of the last change that the page shows.
	News int `json:"news"`
	// Go is where to look next.
	Go string `json:"go,omitempty"`
	// Print is that of the text of an editor now; Text is it, where it is not what was sent.
	Print string  `json:"print,omitempty"`
	Text  *string `json:"text,omitempty"`
	// Marks are what the editor shows in its text.
	Marks *marks `json:"marks,omitempty"`
}

// acts are all that can be done to a kit, each in a file of its own kind.
var acts = map[string]func(*desk, order) (answer, error){
	"set":        (*desk).setField,
	"name":       (*desk).nameField,
	"add":        (*desk).addThing,
	"double":     (*desk).doubleThing,
	"place":      (*desk).placeThing,
	"remove":     (*desk).removeThing,
	"return":     (*desk).returnThing,
	"rename":     (*desk).renameThing,
	"type":       (*desk).typeText,
	"link":       (*desk).linkWords,
	"undo":       (*desk).undo,
	"redo":       (*desk).redo,
	"back":       (*desk).bringBack,
	"choose":     (*desk).chooseText,
	"mend":       (*desk).mend,
	"accept":     (*desk).accept,
	"translate":  (*desk).translateText,
	"translated": (*desk).takeWords,
	"language":   (*desk).beginLanguage,
	"look":       func(*desk, order) (answer, error) { return answer{}, nil },
}

// A wrong is why an order was not carried out, told beside the field that it is about.
type wrong struct{ says, field string }

func (w *wrong) Error() string { return w.says }

// change carries an order out and answers with the page as it is then.
func (w *Workbench) change(out http.ResponseWriter, in *http.Request, d *desk) {
	var asked order
	reader := json.NewDecoder(in.Body)
	reader.DisallowUnknownFields()
	if err := reader.Decode(&asked); err != nil {
		http.Error(out, "What was sent cannot be read, so nothing was changed.", http.StatusBadRequest)
		return
	}
	act := acts[asked.Act]
	if act == nil {
		http.Error(out, "There is nothing of that name to be done, so nothing was changed.", http.StatusBadRequest)
		return
	}
	d.lock.Lock()
	said, err := act(d, asked)
	if err == nil && asked.Page == "method" && said.Print != "" {
		said.Marks = d.marks(asked.File)
	}
	d.lock.Unlock()
	if err != nil {
		said.Wrong = plain(err)
		if told := (*wrong)(nil); errors.As(err, &told) {
			said.Field = told.field
		}
	}
	if asked.Act != "look" {
		d.news.tell()
	}
	said.News = d.news.number()
	for _, p := range pages {
		if p.name == asked.Page {
			if text, err := d.page(p, asked.request(in)); err == nil {
				said.Page = string(text)
			}
		}
	}
	out.Header().Set("Content-Type", "application/json")
	encoder := json.NewEncoder(out)
	encoder.SetEscapeHTML(false) // the answer is read by our script, never shown as a page
	if err := encoder.Encode(said); err != nil && in.Context().Err() == nil {
		w.settings.Note("an answer could not be sent: " + err.Error())
	}
}

// request is the one that the page was asked for with.
func (o order) request(in *http.Request) *http.Request {
	as := in.Clone(in.Context())
	as.Method, as.URL = http.MethodGet, &url.URL{Path: in.URL.Path, RawQuery: strings.TrimPrefix(o.Query, "?")}
	return as
}

// plain tells an error as a sentence.
func plain(err error) string {
	var refused *amend.Refused
	if errors.As(err, &refused) {
		return sentence(refused.Found) + " " + sentence(refused.Do)
	}
	var conflict *keep.Conflict
	if errors.As(err, &conflict) {
		return sentence(conflict.Error())
	}
	return sentence(err.Error())
}

func sentence(words string) string {
	words = strings.TrimSpace(words)
	if words == "" {
		return ""
	}
	begin, _, _ := strings.Cut(words, " ")
	if !strings.Contains(begin, ".") { // the name of a file is written as it is
		first, size := utf8.DecodeRuneInString(words)
		words = strings.ToUpper(string(first)) + words[size:]
	}
	if !strings.ContainsAny(words[len(words)-1:], ".!?") {
		words += "."
	}
	return words
}

// mostTyped is how many letters a field may have; the whole of kit.yaml has its own limit.
const mostTyped = 4000

// checkTyped refuses what no field can hold.
func checkTyped(o order) error {
	field := fieldID(o.Path)
	switch {
	case len(o.Path) == 0 || len(o.Path) > 8:
		return &wrong{"no field is named, so nothing was changed", field}
	case !utf8.ValidString(o.Value):
		return &wrong{"this holds characters that are no text", field}
	case utf8.RuneCountInString(o.Value) > mostTyped:
		return &wrong{fmt.Sprintf("this is longer than the %d letters that a field may have", mostTyped), field}
	}
	for _, r := range o.Value {
		if r < ' ' && r != '\n' && r != '\t' || r == 0x7F || r >= 0x80 && r <= 0x9F || r == 0x2028 || r == 0x2029 || r == 0xFEFF || r == 0xFFFE || r == 0xFFFF {
			return &wrong{fmt.Sprintf("this holds a character that nobody can see (U+%04X); type it anew without it", r), field}
		}
	}
	return nil
}
