//go:build linux

package print

import (
	"context"
	"errors"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"syscall"
	"testing"
	"time"

	"github.com/go-rod/rod/lib/proto"
)

// busy is what a busy machine may add to any time limit here.
const busy = 15 * time.Second

// heavy is a page within the limits that keeps a browser busy for some seconds.
var heavy = []byte(`<!doctype html><table>` + strings.Repeat(`<tr><td>12 g<td>wax<td>pan`, maxTags/4-1) + `</table>`)

// profiles lists the temporary folders of browsers below a folder.
func profiles(t *testing.T, folder string) []string {
	t.Helper()
	found, err := filepath.Glob(filepath.Join(folder, profilePrefix+"*"))
	if err != nil {
		t.Fatal(err)
	}
	return found
}

// ownTemporary gives the test a temporary folder in which only its own browsers work.
func ownTemporary(t *testing.T) string {
	t.Helper()
	folder := openFolder(t)
	if err := os.Chmod(folder, 0o777); err != nil {
		t.Fatal(err)
	}
	t.Setenv("TMPDIR", folder)
	return folder
}

// started waits until a page is being worked on, and gives the session.
func started(t *testing.T, b *Browser) *session {
	t.Helper()
	s, err := b.session(context.Background())
	if err != nil {
		t.Fatal(err)
	}
	for len(s.unopened) == pagesAtOnce {
		time.Sleep(10 * time.Millisecond)
	}
	time.Sleep(200 * time.Millisecond) // into the middle of it
	return s
}

// TestKilledBrowser kills the program in the middle of a page.
func TestKilledBrowser(t *testing.T) {
	temporary := ownTemporary(t)
	b := fresh(t, Settings{})
	failed := make(chan error)
	go func() {
		_, err := b.PDF(context.Background(), heavy, Options{Paper: A5})
		failed <- err
	}()
	s := started(t, b)
	killed := time.Now()
	if err := syscall.Kill(s.cmd.Process.Pid, syscall.SIGKILL); err != nil {
		t.Fatal(err)
	}
	err := <-failed
	if !errors.Is(err, ErrBrowserCrashed) || !strings.Contains(err.Error(), "signal: killed") {
		t.Errorf("the error is %v", err)
	}
	if took := time.Since(killed); took > busy {
		t.Errorf("the error came after %v", took)
	}
	if _, err := b.PDF(context.Background(), []byte(sample), Options{Paper: A5}); err != nil {
		t.Errorf("no other browser was started: %v", err)
	}
	if left := profiles(t, temporary); len(left) != 1 {
		t.Errorf("with one browser running there are %v", left)
	}
	b.Close()
	if left := profiles(t, temporary); len(left) > 0 {
		t.Errorf("left behind: %v", left)
	}
}

// TestKilledPage lets the process that holds the page crash, of which the browser itself survives.
func TestKilledPage(t *testing.T) {
	b := fresh(t, Settings{})
	s, err := b.session(context.Background())
	if err != nil {
		t.Fatal(err)
	}
	begin := time.Now()
	err = b.do(context.Background(), func(ctx context.Context, tab *tab) error {
		if err := tab.load(ctx, []byte(sample)); err != nil {
			return err
		}
		return proto.PageCrash{}.Call(tab.page.Context(ctx)) // never answers
	})
	if !errors.Is(err, ErrBrowserCrashed) || !strings.Contains(err.Error(), "lost the page") {
		t.Errorf("the error is %v", err)
	}
	if took := time.Since(begin); took > busy {
		t.Errorf("the error came after %v", took)
	}
	if _, err := b.PDF(context.Background(), []byte(sample), Options{Paper: A5}); err != nil {
		t.Errorf("the next page failed too: %v", err)
	}
	if again, _ := b.session(context.Background()); again != s {
		t.Error("another browser was started, though only a page was lost")
	}
}

// TestLostIdlePage lets a page crash while nobody works on it.
func TestLostIdlePage(t *testing.T) {
	b := fresh(t, Settings{})
	var page *tab
	if err := b.do(context.Background(), func(_ context.Context, t *tab) error { page = t; return nil }); err != nil {
		t.Fatal(err)
	}
	crashing, cancel := context.WithCancel(context.Background())
	defer cancel()
	go func() { _ = proto.PageCrash{}.Call(page.page.Context(crashing)) }()
	select {
	case <-page.lost.Done():
	case <-time.After(busy):
		t.Fatal("the loss was not noticed")
	}
	if _, err := b.PDF(context.Background(), []byte(sample), Options{Paper: A5}); err != nil {
		t.Errorf("the next page failed: %v", err)
	}
}

// TestFrozenBrowser stops the program, so that it is there but does nothing.
func TestFrozenBrowser(t *testing.T) {
	temporary := ownTemporary(t)
	b := fresh(t, Settings{PageTimeout: 8 * time.Second})
	s, err := b.session(context.Background())
	if err != nil {
		t.Fatal(err)
	}
	number := s.cmd.Process.Pid
	if err := syscall.Kill(-number, syscall.SIGSTOP); err != nil {
		t.Fatal(err)
	}
	begin := time.Now()
	// More than fits into the pipe, so that sending it blocks too.
	_, err = b.PDF(context.Background(), booklet(t), Options{Paper: A5})
	if !errors.Is(err, ErrBrowserHung) || !strings.Contains(err.Error(), "8s") {
		t.Errorf("the error is %v", err)
	}
	if took := time.Since(begin); took > 8*time.Second+busy {
		t.Errorf("it took %v", took)
	}
	if !ended(number) {
		t.Error("the frozen browser is still there")
	}
	if left := profiles(t, temporary); len(left) > 0 {
		t.Errorf("left behind: %v", left)
	}
	if _, err := b.PDF(context.Background(), []byte(sample), Options{Paper: A5}); err != nil {
		t.Errorf("no other browser was started: %v", err)
	}
}

// TestSlowPage has a page that takes too long.
func TestSlowPage(t *testing.T) {
	b := fresh(t, Settings{PageTimeout: 700 * time.Millisecond})
	begin := time.Now()
	_, err := b.PDF(context.Background(), heavy, Options{Paper: A5})
	if !errors.Is(err, ErrBrowserHung) || !strings.Contains(err.Error(), "did not finish the page within 700ms") {
		t.Errorf("the error is %v", err)
	}
	if took := time.Since(begin); took > busy {
		t.Errorf("it took %v", took)
	}
}

// TestInterrupted has two pages at once, of which one takes too long. The other, whose browser is ended for this, is
// printed all the same.
func TestInterrupted(t *testing.T) {
	b := fresh(t, Settings{PageTimeout: 12 * time.Second})
	var both sync.WaitGroup
	both.Go(func() {
		err := b.do(context.Background(), func(ctx context.Context, _ *tab) error {
			<-ctx.Done()
			return ctx.Err()
		})
		if !errors.Is(err, ErrBrowserHung) {
			t.Errorf("the slow page's error is %v", err)
		}
	})
	started(t, b)
	time.Sleep(4 * time.Second) // so that the first one's time is up well before the other's
	tries := 0
	err := b.do(context.Background(), func(ctx context.Context, tab *tab) error {
		tries++
		for tries == 1 {
			if err := (proto.PageStopLoading{}).Call(tab.page.Context(ctx)); err != nil {
				return err
			}
			time.Sleep(20 * time.Millisecond)
		}
		return tab.load(ctx, []byte(sample))
	})
	both.Wait()
	if err != nil || tries != 2 {
		t.Errorf("after %d tries the other page's error is %v", tries, err)
	}
}

// TestCancelled loses interest in the middle of a page; the browser goes on for others.
func TestCancelled(t *testing.T) {
	b := fresh(t, Settings{})
	if _, err := b.PDF(context.Background(), []byte(sample), Options{Paper: A5}); err != nil {
		t.Fatal(err)
	}
	s, err := b.session(context.Background())
	if err != nil {
		t.Fatal(err)
	}
	ctx, cancel := context.WithTimeout(context.Background(), 300*time.Millisecond)
	defer cancel()
	begin := time.Now()
	if _, err := b.PDF(ctx, heavy, Options{Paper: A5}); !errors.Is(err, context.DeadlineExceeded) {
		t.Errorf("the error is %v", err)
	}
	if took := time.Since(begin); took > busy {
		t.Errorf("it took %v", took)
	}
	if _, err := b.PDF(context.Background(), []byte(sample), Options{Paper: A5}); err != nil {
		t.Errorf("the next page failed: %v", err)
	}
	if again, _ := b.session(context.Background()); again != s {
		t.Error("another browser was started, though nothing was wrong with the first")
	}
	gone, cancel := context.WithCancel(context.Background())
	cancel()
	if _, err := Open(gone, Settings{}); !errors.Is(err, context.Canceled) {
		t.Errorf("opening without interest: the error is %v", err)
	}
}

func TestClosed(t *testing.T) {
	temporary := ownTemporary(t)
	b := fresh(t, Settings{})
	s, err := b.session(context.Background())
	if err != nil {
		t.Fatal(err)
	}
	failed := make(chan error)
	go func() {
		_, err := b.PDF(context.Background(), heavy, Options{Paper: A5})
		failed <- err
	}()
	started(t, b)
	b.Close()
	if err := <-failed; !errors.Is(err, ErrClosed) {
		t.Errorf("the page under way: the error is %v", err)
	}
	b.Close()
	if _, err := b.PDF(context.Background(), []byte(sample), Options{Paper: A5}); !errors.Is(err, ErrClosed) {
		t.Errorf("a page after the end: the error is %v", err)
	}
	if !groupEnded(t, s.cmd.Process.Pid) {
		t.Error("processes of the browser are still there")
	}
	if left := profiles(t, temporary); len(left) > 0 {
		t.Errorf("left behind: %v", left)
	}
}
