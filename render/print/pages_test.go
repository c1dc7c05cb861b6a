package print

import (
	"bytes"
	"context"
	"encoding/json"
	"io/fs"
	"os"
	"path/filepath"
	"testing"
	"testing/fstest"

	"github.com/go-rod/rod/lib/proto"

	"tallyfold/instructions"
	"tallyfold/kit"
	"tallyfold/kit/ledger"
	"tallyfold/render"
	"tallyfold/templates"
)

// examplePage is the HTML of an example's booklet.
type examplePage struct {
	name     string
	language string
	booklet  *render.Booklet
	html     []byte
	kit      *kit.Kit
}

// examplePages are the booklets of all examples in each language that they have, one with
// all its languages, one marked as a draft, and one with the words of the Arabic sample.
func examplePages(t *testing.T) []examplePage {
	t.Helper()
	folders, err := filepath.Glob("../../examples/*/kit.yaml")
	if err != nil || len(folders) == 0 {
		t.Fatalf("no examples: %v", err)
	}
	var pages []examplePage
	for _, file := range folders {
		k := open(t, os.DirFS(filepath.Dir(file)), filepath.Base(filepath.Dir(file)))
		for _, language := range render.Languages(k) {
			pages = append(pages, pageOf(t, k, render.Options{}, language))
		}
		if languages := render.Languages(k); len(languages) > 1 {
			pages = append(pages, pageOf(t, k, render.Options{Draft: true}, languages...))
		}
	}
	return append(pages, arabicPage(t))
}

// arabicPage has an example's words in English within the fixed words of the Arabic
// sample: that is how a language read from right to left is laid out.
func arabicPage(t *testing.T) examplePage {
	t.Helper()
	folder := fstest.MapFS{}
	root := os.DirFS("../../examples/harbour-candles")
	err := fs.WalkDir(root, ".", func(name string, entry fs.DirEntry, err error) error {
		if err != nil || entry.IsDir() {
			return err
		}
		data, err := fs.ReadFile(root, name)
		folder[name] = &fstest.MapFile{Data: data}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	text := folder["kit.yaml"].Data
	if bytes.Contains(text, []byte("language: en\n")) {
		text = bytes.Replace(text, []byte("language: en\n"), []byte("language: ar\n"), 1)
	} else {
		text = append([]byte("language: ar\n"), text...)
	}
	// A long address shows whether it breaks, and brings its code to scan.
	folder["kit.yaml"].Data = append([]byte("page: https://brindle-quay.example/kits/harbour-candles/the-pine-and-orange-edition?edition=1\n"), text...)
	return pageOf(t, open(t, folder, "arabic"), render.Options{}, "ar")
}

func open(t *testing.T, folder fs.FS, name string) *kit.Kit {
	t.Helper()
	k, found := instructions.Open(folder, name)
	if k == nil {
		t.Fatalf("%s can't be read: %v", name, found)
	}
	return k
}

func pageOf(t *testing.T, k *kit.Kit, options render.Options, languages ...string) examplePage {
	t.Helper()
	booklet, err := render.InLanguages(k, ledger.Follow(k), templates.Shipped(), options, languages)
	if err != nil {
		t.Fatal(err)
	}
	html, err := booklet.HTML()
	if err != nil {
		t.Fatal(err)
	}
	name := k.Folder
	for _, language := range languages {
		name += "-" + language
	}
	return examplePage{name: name, language: languages[0], booklet: booklet, html: html, kit: k}
}

// view is how a page is looked at.
type view struct {
	width  int
	dark   bool
	medium string // "screen" or "print"
}

// inView shows a page and evaluates an expression in it, which may be a promise. The
// result is read into result.
func inView(t *testing.T, b *Browser, html []byte, as view, expression string, result any) {
	t.Helper()
	scheme := "light"
	if as.dark {
		scheme = "dark"
	}
	err := b.do(context.Background(), func(ctx context.Context, shown *tab) error {
		page := shown.page.Context(ctx)
		shown.shownAs = Area{}
		for _, set := range []interface{ Call(proto.Client) error }{
			proto.EmulationSetScriptExecutionDisabled{Value: false},
			proto.EmulationSetDeviceMetricsOverride{Width: as.width, Height: 800, DeviceScaleFactor: 1},
			proto.EmulationSetEmulatedMedia{Media: as.medium, Features: []*proto.EmulationMediaFeature{{Name: "prefers-color-scheme", Value: scheme}}},
		} {
			if err := set.Call(page); err != nil {
				return err
			}
		}
		if err := shown.load(ctx, html); err != nil {
			return err
		}
		evaluated, err := proto.RuntimeEvaluate{Expression: expression, AwaitPromise: true, ReturnByValue: true}.Call(page)
		if err != nil {
			return err
		}
		if evaluated.ExceptionDetails != nil {
			t.Fatalf("%+v", evaluated.ExceptionDetails.Exception)
		}
		return json.Unmarshal([]byte(evaluated.Result.Value.JSON("", "")), result)
	})
	if err != nil {
		t.Fatal(err)
	}
}
