package workbench

import (
	"context"
	"net"
	"os"
	"path/filepath"
	"sync"
	"testing"
	"time"

	"github.com/go-rod/rod"
	"github.com/go-rod/rod/lib/launcher"
	"github.com/go-rod/rod/lib/proto"

	"tallyfold/examples"
	"tallyfold/render/print"
)

// patience is how long a test waits for something to be seen; the machine may be busy.
const patience = 30 * time.Second

// theBrowser is started once for all tests. A test that needs it and has none fails.
var theBrowser = sync.OnceValues(func() (*rod.Browser, error) {
	program, err := print.Find("")
	if err != nil {
		return nil, err
	}
	home, err := os.MkdirTemp("", "workbench-test-*")
	if err != nil {
		return nil, err
	}
	started := launcher.New().Bin(program).Leakless(false).NoSandbox(true).UserDataDir(home).
		Set("disable-dev-shm-usage").Set("force-color-profile", "srgb").Headless(true)
	address, err := started.Launch()
	if err != nil {
		return nil, err
	}
	cleanups = append(cleanups, func() { started.Kill(); started.Cleanup() })
	browser := rod.New().ControlURL(address)
	return browser, browser.Connect()
})

var cleanups []func()

func TestMain(m *testing.M) {
	if folder := os.Getenv(servedFolder); folder != "" {
		beProgram(folder, os.Getenv(servedAt))
	}
	code := m.Run()
	for _, clean := range cleanups {
		clean()
	}
	os.Exit(code)
}

// A bench is a workbench that is running, for a test.
type bench struct {
	*testing.T
	*Workbench
	host, folder string
	stop         func()
	browser      *rod.Browser
}

// newBench serves copies of the named examples.
func newBench(t *testing.T, names ...string) *bench {
	t.Helper()
	folder := t.TempDir()
	for _, name := range names {
		if err := examples.Write(name, filepath.Join(folder, name)); err != nil {
			t.Fatal(err)
		}
	}
	makeAllWritable(t, folder)
	b := &bench{T: t, folder: folder}
	b.serve()
	t.Cleanup(func() { b.stop() })
	return b
}

func makeAllWritable(t *testing.T, folder string) {
	t.Helper()
	err := filepath.Walk(folder, func(path string, info os.FileInfo, err error) error {
		if err != nil || info.IsDir() {
			return err
		}
		return os.Chmod(path, 0o644)
	})
	if err != nil {
		t.Fatal(err)
	}
}

// serve starts the workbench, again at the same port if there was one.
func (b *bench) serve() {
	b.Helper()
	made, err := New(Settings{Folder: b.folder, Version: "test", Note: func(words string) { b.Log(words) }})
	if err != nil {
		b.Fatal(err)
	}
	at := b.host
	if at == "" {
		at = "127.0.0.1:0"
	}
	listener, err := net.Listen("tcp4", at)
	if err != nil {
		b.Fatal(err)
	}
	ctx, cancel := context.WithCancel(b.Context())
	done := make(chan error, 1)
	go func() { done <- made.Serve(ctx, listener) }()
	b.Workbench, b.host = made, listener.Addr().String()
	b.stop = func() {
		cancel()
		if err := <-done; err != nil {
			b.Error(err)
		}
		made.Close()
		b.stop = func() {}
	}
}

// open shows a page in a window of the browser that has the key.
func (b *bench) open(path string) *window {
	b.Helper()
	return b.openWith(b.Address(b.host), path)
}

// openWith opens a page after an address with a key.
func (b *bench) openWith(address, path string) *window {
	b.Helper()
	if b.browser == nil {
		browser, err := theBrowser()
		if err != nil {
			b.Fatal(err)
		}
		b.browser, err = browser.Incognito()
		if err != nil {
			b.Fatal(err)
		}
		b.Cleanup(func() { _ = b.browser.Close() })
	}
	page, err := b.browser.Page(proto.TargetCreateTarget{URL: "about:blank"})
	if err != nil {
		b.Fatal(err)
	}
	w := &window{bench: b, page: page}
	w.watch()
	w.goTo(address)
	w.goTo("http://" + b.host + path)
	return w
}
