package workbench

import (
	"net/http"
	"slices"
	"strconv"

	"tallyfold/instructions/keep"
)

// earlierView lists the states of a file that are kept, and one of them in full.
type earlierView struct {
	File   string
	Files  []fileTab
	States []stateView
	// Seen is the state that is looked at, "" for none; Then and Now are its text and the
	// present one.
	Seen, Then, Now string
	Lines           []keep.Row
	Unread          string
}

type stateView struct {
	ID, When, How, Size string
	Seen                bool
}

// hows say how a state came to be kept.
var hows = map[keep.How]string{
	keep.SavedHere: "saved here", keep.FoundThere: "as another program left it", keep.Unmerged: "typed while another changed the same lines",
}

func (d *desk) earlierPage(in *http.Request) (any, error) {
	shownNow := earlierView{File: fileOf(in), Files: d.fileTabs(fileOf(in))}
	if shownNow.File == "" {
		shownNow.File = "kit.yaml"
		shownNow.Files = d.fileTabs(shownNow.File)
	}
	states, err := d.folder.History(shownNow.File)
	if err != nil {
		shownNow.Unread = plain(err)
		return shownNow, nil
	}
	wanted := in.URL.Query().Get("state")
	for _, s := range states {
		shownNow.States = append(shownNow.States, stateView{
			s.ID, s.When.Format("2 January 2006, 15:04:05"), hows[s.How], sizeWords(s.Bytes), s.ID == wanted,
		})
	}
	if !slices.ContainsFunc(states, func(s keep.State) bool { return s.ID == wanted }) {
		return shownNow, nil
	}
	then, err := d.folder.State(shownNow.File, wanted)
	if err != nil {
		shownNow.Unread = plain(err)
		return shownNow, nil
	}
	now, err := d.read(shownNow.File)
	if err != nil {
		shownNow.Unread = plain(err)
		return shownNow, nil
	}
	shownNow.Seen, shownNow.Then, shownNow.Now = wanted, string(shown(then)), string(shown(now.Typed))
	shownNow.Lines = keep.Beside([]byte(shownNow.Then), []byte(shownNow.Now))
	return shownNow, nil
}

func sizeWords(bytes int64) string {
	if bytes < 10_000 {
		return strconv.FormatInt(bytes, 10) + " bytes"
	}
	return strconv.FormatInt(bytes/1000, 10) + " kB"
}

// bringBack saves an earlier state over a file. What is typed now can be had back by “Undo”.
func (d *desk) bringBack(o order) (answer, error) {
	if !isText(o.File) {
		return answer{}, errNoFile
	}
	d.save(o.File)
	now, err := d.read(o.File)
	if err != nil {
		return answer{}, err
	}
	if _, err := d.folder.Restore(o.File, o.Key, now.SavedPrint); err != nil {
		return answer{}, err
	}
	d.note(o.File + " is again as it was then. What stood there before is in the list too.")
	return answer{}, nil
}

// clashView is one file of which two programs have changed the same lines.
type clashView struct {
	File, Print string
	Gone        bool
	Lines       []keep.Row
	Mine        string
	Theirs      string
}

func (d *desk) clashPage(in *http.Request) (any, error) {
	name := fileOf(in)
	c := d.clashes[name]
	if c == nil {
		return clashView{File: name}, nil
	}
	return clashView{
		File: name, Print: string(c.TheirsPrint), Gone: c.Gone, Mine: string(shown(c.Mine)), Theirs: string(shown(c.Theirs)),
		Lines: keep.Beside(shown(c.Theirs), shown(c.Mine)),
	}, nil
}

// chooseText settles a clash: the text that the maker decided on is saved over the other.
// Both stay in the history.
func (d *desk) chooseText(o order) (answer, error) {
	c := d.clashes[o.File]
	if c == nil {
		return answer{}, errNoFile
	}
	text := []byte(o.Text)
	switch o.Key {
	case "mine":
		text = c.Mine
	case "theirs":
		text = c.Theirs
	}
	if _, err := d.folder.Save(o.File, text, c.TheirsPrint); err != nil {
		return answer{}, err
	}
	delete(d.clashes, o.File)
	return answer{Go: "box"}, nil
}
