package workbench

import (
	"cmp"
	"encoding/json"
	"errors"
	"net/http"
	"regexp"
	"strings"
	"unicode/utf8"

	"tallyfold/instructions/keep"
	"tallyfold/kit"
	"tallyfold/kit/amend"
	"tallyfold/kit/load"
)

// typeText takes over what an editor holds. The file keeps its line ends and its byte order
// mark, and every byte outside the stretch that was typed.
func (d *desk) typeText(o order) (answer, error) {
	if !isText(o.File) {
		return answer{}, errNoFile
	}
	if !utf8.ValidString(o.Text) {
		return answer{}, &wrong{"the text holds characters that are none", "editor"}
	}
	old, err := d.read(o.File)
	if err != nil {
		return answer{}, err
	}
	text, err := amend.Whole(old.Typed, o.Text)
	if err != nil {
		return answer{}, &wrong{plain(err), "editor"}
	}
	_, err = d.put(o.File, text, keep.Fingerprint(o.Print))
	now, reading := d.read(o.File)
	if reading != nil {
		return answer{}, reading
	}
	said := answer{Print: string(now.TypedPrint)}
	if sent := string(shown(now.Typed)); sent != o.Text {
		said.Text = &sent
	}
	var conflict *keep.Conflict
	if errors.As(err, &conflict) {
		return said, &wrong{"the same lines of " + o.File + " were changed in another window; those are shown now, and yours are kept under “Earlier states”", "editor"}
	}
	return said, err
}

// sentText is a text as an editor gets it.
type sentText struct {
	Text  string `json:"text"`
	Print string `json:"print"`
	Marks *marks `json:"marks"`
}

// sendText hands a text and its marks to the editor.
func (w *Workbench) sendText(out http.ResponseWriter, in *http.Request, d *desk) {
	name := in.PathValue("file")
	if !isText(name) {
		http.NotFound(out, in)
		return
	}
	d.lock.Lock()
	text, err := d.read(name)
	sent := sentText{Text: string(shown(text.Typed)), Print: string(text.TypedPrint), Marks: d.marks(name)}
	d.lock.Unlock()
	if err != nil {
		http.Error(out, plain(err), http.StatusConflict)
		return
	}
	out.Header().Set("Content-Type", "application/json")
	_ = json.NewEncoder(out).Encode(sent)
}

// destination is the form of what stands in the round brackets of a link of ours.
var destination = regexp.MustCompile(`^[a-z]+:[^\s()<>\[\]\\]*$`)

// blankLine ends a paragraph; a link may run over the end of a line.
var blankLine = regexp.MustCompile(`\r?\n[ \t]*\r?\n|\r[ \t]*\r`)

// linkWords makes a link of words, gives a link other words or another destination, or takes
// a link off its words where the destination is "". Start and End are those of the words, or
// of the whole link; Was is what stands there.
func (d *desk) linkWords(o order) (answer, error) {
	if !isText(o.File) {
		return answer{}, errNoFile
	}
	old, err := d.read(o.File)
	if err != nil {
		return answer{}, err
	}
	words := strings.TrimSpace(o.Value)
	switch {
	case o.Destination != "" && !destination.MatchString(o.Destination):
		return answer{}, &wrong{"“" + o.Destination + "” is nothing that a link can do", "editor"}
	case strings.ContainsAny(words, "[]"):
		return answer{}, &wrong{"the words of a link have no brackets in them", "editor"}
	case blankLine.MatchString(words):
		return answer{}, &wrong{"the words of a link stand in one paragraph", "editor"}
	case words == "" && o.Destination != "":
		return answer{}, &wrong{"choose the words first", "editor"}
	}
	put := words
	if o.Destination != "" {
		put = "[" + words + "](" + d.withStepNamed(o.Destination, words) + ")"
	}
	start, end := inFile(old.Typed, o.Start), inFile(old.Typed, o.End)
	text, err := amend.Stretch(old.Typed, start, end, o.Was, put)
	if err != nil {
		return answer{}, &wrong{plain(err), "editor"}
	}
	if _, err := d.put(o.File, text, old.TypedPrint); err != nil {
		return answer{}, err
	}
	return d.editorNow(o.File)
}

// withStepNamed gives a step that has no name yet one made of its title.
func (d *desk) withStepNamed(destination, title string) string {
	start := string(kit.ToStep) + ":"
	settings, isStep := strings.CutPrefix(destination, start)
	if !isStep || settings != "" && settings[0] != '?' {
		return destination
	}
	taken := keysTaken(d.proved().Kit)
	return start + load.FreeKey(cmp.Or(load.KeyOf(title), "step"), func(key string) bool { return taken[key] }) + settings
}

// editorNow is the text that an editor shows after a change made for it.
func (d *desk) editorNow(file string) (answer, error) {
	now, err := d.read(file)
	if err != nil {
		return answer{}, err
	}
	text := string(shown(now.Typed))
	return answer{Text: &text, Print: string(now.TypedPrint)}, nil
}

// undo takes the last typing in a file back, also that of an earlier day.
func (d *desk) undo(o order) (answer, error) {
	return d.stepBack(o, d.folder.Undo, "nothing is left to take back")
}

// redo makes again what was taken back last.
func (d *desk) redo(o order) (answer, error) {
	return d.stepBack(o, d.folder.Redo, "nothing was taken back")
}

func (d *desk) stepBack(o order, step func(name string) ([]byte, bool, error), none string) (answer, error) {
	if !isText(o.File) {
		return answer{}, errNoFile
	}
	_, moved, err := step(o.File)
	switch {
	case err != nil:
		return answer{}, err
	case !moved:
		return answer{}, errors.New(none)
	}
	d.saveSoon(o.File)
	return d.editorNow(o.File)
}
