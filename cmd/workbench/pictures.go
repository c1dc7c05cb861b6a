package workbench

import (
	"errors"
	"fmt"
	"io"
	"net/http"
	"os"
	"path"
	"slices"
	"strings"

	"tallyfold/kit/load"
	"tallyfold/kit/picture"
)

// pictureEndings are the kinds of picture that a booklet can print, by the end of their names.
var pictureEndings = []string{".png", ".jpg", ".jpeg", ".gif", ".webp", ".svg"}

// sendPicture hands out a picture of the kit, made small and written anew: of a drawing only
// what draws.
func (w *Workbench) sendPicture(out http.ResponseWriter, in *http.Request, d *desk) {
	name := in.PathValue("file")
	root, err := os.OpenRoot(d.path)
	if err != nil {
		http.NotFound(out, in)
		return
	}
	defer root.Close()
	data, err := root.ReadFile("pictures/" + name)
	if err != nil {
		http.NotFound(out, in)
		return
	}
	made, err := d.pictures.Prepare(data, picture.InText, false)
	if err != nil {
		http.NotFound(out, in)
		return
	}
	guardMade(out.Header())
	out.Header().Set("Content-Type", made.Kind)
	_, _ = out.Write(made.Data)
}

// takePicture puts a picture that was dropped on the page into the kit's folder. It is
// unpacked first, so that only what can be printed gets there; the bytes stay as they are.
// A picture of the same name is never written over.
func (w *Workbench) takePicture(out http.ResponseWriter, in *http.Request, d *desk) {
	data, err := io.ReadAll(in.Body)
	if err != nil {
		http.Error(out, "This picture has more than 24 MB; make it smaller first.", http.StatusRequestEntityTooLarge)
		return
	}
	name, err := d.keepPicture(in.PathValue("file"), data)
	if err != nil {
		http.Error(out, plain(err), http.StatusUnprocessableEntity)
		return
	}
	d.news.tell()
	_, _ = io.WriteString(out, name)
}

func (d *desk) keepPicture(wished string, data []byte) (string, error) {
	ending := strings.ToLower(path.Ext(wished))
	if !slices.Contains(pictureEndings, ending) {
		return "", errors.New("only pictures whose names end in .png, .jpg, .gif, .webp or .svg can be printed")
	}
	switch _, err := picture.Prepare(data, picture.InText, false); {
	case errors.Is(err, picture.ErrNone):
		return "", errors.New("this is no picture that can be printed; PNG, JPEG, GIF, WebP and SVG can")
	case err != nil:
		return "", fmt.Errorf("this picture cannot be printed: %w; make it smaller first", err)
	}
	stem := load.KeyOf(strings.TrimSuffix(path.Base(wished), path.Ext(wished)))
	if stem == "" {
		stem = "picture"
	}
	d.lock.Lock()
	defer d.lock.Unlock()
	root, err := os.OpenRoot(d.path)
	if err != nil {
		return "", fmt.Errorf("the kit's folder cannot be opened: %w", err)
	}
	defer root.Close()
	if err := root.Mkdir("pictures", 0o755); err != nil && !errors.Is(err, os.ErrExist) {
		return "", fmt.Errorf("the folder pictures cannot be made: %w", err)
	}
	for number := 1; number < 1000; number++ {
		name := stem + ending
		if number > 1 {
			name = fmt.Sprintf("%s-%d%s", stem, number, ending)
		}
		file, err := root.OpenFile("pictures/"+name, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o644)
		if errors.Is(err, os.ErrExist) {
			continue
		}
		if err != nil {
			return "", fmt.Errorf("the picture cannot be put into the folder: %w", err)
		}
		_, err = file.Write(data)
		if err = errors.Join(err, file.Sync(), file.Close()); err != nil {
			_ = root.Remove("pictures/" + name)
			return "", fmt.Errorf("the picture cannot be put into the folder: %w", err)
		}
		return name, nil
	}
	return "", errors.New("there are a thousand pictures of this name already; give it another")
}
