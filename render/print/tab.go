package print

import (
	"context"
	"errors"
	"fmt"
	"sync"

	"github.com/go-rod/rod"
	"github.com/go-rod/rod/lib/proto"
)

// host is where every page seems to come from. The name can't exist: RFC 2606 reserves "invalid".
const host = "https://print.invalid/"

// policy is told to the browser with every page: pictures and fonts that are inside the page, its own styles, and
// nothing else. Requests are stopped anyway; with this, most are not even made.
const policy = "default-src 'none'; img-src data:; font-src data:; style-src 'unsafe-inline'; " +
	"base-uri 'none'; form-action 'none'; frame-src 'none'; object-src 'none'"

// errLost says that the process which held the page has died.
var errLost = errors.New("the page was lost")

// tab is one page of the browser, used for one document after the other.
type tab struct {
	page *rod.Page
	// lost is done when the page's process has died.
	lost context.Context

	// shownAs is the area that pages are shown in by the rules for print; zero for a screen.
	shownAs Area

	mu    sync.Mutex
	count int
	url   string // of the document being loaded
	html  []byte // what to answer for url; nil once that was done
}

// open makes a page that runs no scripts and whose every request comes to us.
func (s *session) open() (*tab, error) {
	page, err := s.rod.Page(proto.TargetCreateTarget{})
	if err != nil {
		return nil, err
	}
	lost, lose := context.WithCancelCause(page.GetContext())
	t := &tab{page: page, lost: lost}
	go s.rod.Context(lost).EachEvent(func(e *proto.TargetTargetCrashed) bool {
		if e.TargetID != page.TargetID {
			return false
		}
		lose(errLost)
		return true
	})()
	// This also makes the browser ask us.
	go page.Context(lost).EachEvent(t.answer)()
	if err := (proto.EmulationSetScriptExecutionDisabled{Value: true}).Call(page); err != nil {
		return nil, err
	}
	return t, nil
}

// during works as long as the page lives.
func (t *tab) during(ctx context.Context, work func(context.Context, *tab) error) error {
	ctx, cancel := context.WithCancelCause(ctx)
	defer cancel(nil)
	defer context.AfterFunc(t.lost, func() { cancel(errLost) })()
	return work(ctx, t)
}

// load shows the document and returns when all that is inside it has been read.
func (t *tab) load(ctx context.Context, html []byte) error {
	t.mu.Lock()
	t.count++
	t.url = fmt.Sprintf("%s%d", host, t.count)
	t.html = html
	url := t.url
	t.mu.Unlock()

	page := t.page.Context(ctx)
	loaded := page.WaitEvent(&proto.PageLoadEventFired{})
	shown, err := proto.PageNavigate{URL: url}.Call(page)
	if err != nil {
		return err
	}
	if shown.ErrorText != "" {
		return fmt.Errorf("the browser did not take the page: %s", shown.ErrorText)
	}
	loaded()
	return context.Cause(ctx)
}

// answer gives the document when it is asked for, once; everything else that a page asks for is refused. Aborted is
// the refusal that leaves the document standing when it tries to go elsewhere.
func (t *tab) answer(asked *proto.FetchRequestPaused) {
	t.mu.Lock()
	html := t.html
	if asked.Request.URL != t.url {
		html = nil
	}
	if html != nil {
		t.html = nil
	}
	t.mu.Unlock()
	if html == nil {
		_ = proto.FetchFailRequest{
			RequestID: asked.RequestID, ErrorReason: proto.NetworkErrorReasonAborted,
		}.Call(t.page)
		return
	}
	// If this fails, the page never loads and whoever waits for it hears of it.
	_ = proto.FetchFulfillRequest{
		RequestID:    asked.RequestID,
		ResponseCode: 200,
		ResponseHeaders: []*proto.FetchHeaderEntry{
			{Name: "Content-Type", Value: "text/html; charset=utf-8"},
			{Name: "Content-Security-Policy", Value: policy},
			{Name: "Cache-Control", Value: "no-store"},
		},
		Body: html,
	}.Call(t.page)
}
