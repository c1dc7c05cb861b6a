package workbench

import (
	"net/http"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"sync"

	"tallyfold/examples"
	"tallyfold/instructions/keep"
	"tallyfold/kit/amend"
	"tallyfold/kit/load"
	"tallyfold/kit/proof"
)

// A place is one kit that was found, by its place under the folder.
type place struct{ name, path string }

// kits are those of the folder, or the folder itself where it is one.
func (w *Workbench) kits() []place {
	var found []place
	for _, path := range keep.KitsIn(w.root) {
		if !keep.IsKit(path) {
			continue
		}
		name, err := filepath.Rel(w.root, path)
		if err != nil {
			continue
		}
		if name == "." {
			name = filepath.Base(w.root)
		}
		found = append(found, place{filepath.ToSlash(name), path})
	}
	return found
}

// single says whether the folder is itself a kit, so that no other can be put beside it.
func (w *Workbench) single() bool { return keep.IsKit(w.root) }

// shelfView is all kits, each with what must be fixed.
type shelfView struct {
	Folder   string
	Single   bool
	Kits     []shelfKit
	Examples []string
	Starter  string
	// Wrong says why a new kit was not made; Wished is the name that was asked for.
	Wrong, Wished string
}

type shelfKit struct {
	Name, Called, Makes, About string
	Edition                    int
	Tally                      tally
}

func (w *Workbench) showShelf(out http.ResponseWriter, in *http.Request) {
	w.shelf(out, in, "", "")
}

func (w *Workbench) shelf(out http.ResponseWriter, in *http.Request, wished, wrong string) {
	shown := shelfView{
		Folder: filepath.Base(w.root), Single: w.single(), Examples: examples.Names(), Starter: examples.Starter, Wished: wished, Wrong: wrong,
	}
	kits := w.kits()
	shown.Kits = make([]shelfKit, len(kits))
	var judges sync.WaitGroup
	next := make(chan int)
	for range runtime.GOMAXPROCS(0) {
		judges.Go(func() {
			for i := range next {
				shown.Kits[i] = w.onShelf(kits[i])
			}
		})
	}
	for i := range kits {
		next <- i
	}
	close(next)
	judges.Wait()
	w.show(out, "shelf", view{Nonce: nonceOf(in.Context()), Title: "The shelf", Version: w.settings.Version, Body: shown})
}

// onShelf judges a kit, also with what is typed and not saved where it is open.
func (w *Workbench) onShelf(k place) shelfKit {
	w.lock.Lock()
	open := w.desks[k.name]
	w.lock.Unlock()
	var p *proof.Proof
	if open != nil {
		open.lock.Lock()
		p = open.proved()
		open.lock.Unlock()
	} else {
		p = proof.Of(os.DirFS(k.path), filepath.Base(k.path), w.settings.Now())
	}
	told := shelfKit{Name: k.name, Called: filepath.Base(k.path), Tally: tallyOf(k.name, p)}
	if p.Kit != nil {
		if p.Kit.Name.Given() {
			told.Called = p.Kit.Name.Value
		}
		told.About, told.Edition = p.Kit.About.Value, p.Kit.Edition.Value
		if p.Kit.Makes.Given() {
			told.Makes = p.Kit.Makes.Value.String()
		}
	}
	return told
}

// newKit makes a kit like an example, and goes to its box.
func (w *Workbench) newKit(out http.ResponseWriter, in *http.Request) {
	if err := in.ParseForm(); err != nil {
		w.sorry(out, http.StatusBadRequest, "What was sent cannot be read.")
		return
	}
	wished, like := strings.TrimSpace(in.PostForm.Get("name")), in.PostForm.Get("like")
	name, err := w.begin(wished, func(folder string) error { return writeLike(like, folder, wished) })
	if err != nil {
		w.shelf(out, in, wished, err.Error())
		return
	}
	http.Redirect(out, in, "/kit/"+name+"/box", http.StatusSeeOther)
}

// writeLike lays down an example that is called what the maker wished.
func writeLike(like, folder, wished string) error {
	if err := examples.Write(like, folder); err != nil {
		return err
	}
	path := filepath.Join(folder, "kit.yaml")
	text, err := os.ReadFile(path)
	if err != nil {
		return err
	}
	named, err := amend.Set(text, amend.At("name"), wished)
	if err != nil {
		return err
	}
	return os.WriteFile(path, named, 0o644)
}

// begin makes the folder of a new kit, named after what the maker calls it; where that has
// no letter from a to z, it is one of the folders kit, kit-2 and so on.
func (w *Workbench) begin(wished string, fill func(folder string) error) (string, error) {
	switch {
	case w.single():
		return "", errSingle
	case wished == "":
		return "", errNoName
	}
	name := load.KeyOf(wished)
	if name == "" {
		name = load.FreeKey("kit", func(key string) bool { return keep.Free(filepath.Join(w.root, key)) != nil })
	}
	folder := filepath.Join(w.root, name)
	if err := keep.Free(folder); err != nil {
		return "", err
	}
	return name, keep.Begin(folder, fill)
}
