package print

import (
	"context"
	"errors"
	"fmt"
	"sync/atomic"
	"time"

	"github.com/go-rod/rod"
	"github.com/go-rod/rod/lib/cdp"
	"github.com/go-rod/rod/lib/proto"
)

const (
	// pagesAtOnce is how many pages one browser prints at the same time; measured, a third gains nothing.
	pagesAtOnce = 2
	// closingTime is how long a page may take to close before its browser is ended instead.
	closingTime = 2 * time.Second
	// endingTime is how long a program that has closed its wire is given to end, so that it can be said how it did.
	endingTime = time.Second
)

// errInterrupted says that the browser was ended while it worked on this page, but not because of it.
var errInterrupted = fmt.Errorf("%w since another page was too much for it", ErrBrowserHung)

// session is one run of the browser, from its start to its end.
type session struct {
	*process
	wire *checked
	// rod holds the state of a private window: no history, no cookies, nothing kept.
	rod *rod.Browser
	// Whoever takes an idle tab, or the right to open one, may work: together they are pagesAtOnce.
	idle     chan *tab
	unopened chan struct{}
	// givenUp is set before the browser is ended by us, to tell this from a crash.
	givenUp atomic.Bool
}

// start runs the program in the best protected way that works here, and waits for its first answers.
func start(ctx context.Context, program string, settings Settings) (*session, error) {
	within, cancel := context.WithTimeout(ctx, settings.StartTimeout)
	defer cancel()
	var failure error
	for _, how := range guards() {
		s, said, err := startAs(within, program, how)
		switch {
		case err == nil:
			if !how.sandbox {
				settings.Warn(unprotected(program))
			}
			return s, nil
		case ctx.Err() != nil:
			return nil, context.Cause(ctx)
		case within.Err() != nil:
			return nil, hung(program, fmt.Sprintf("gave no answer within %v of its start", settings.StartTimeout))
		}
		if failure = err; !tooProtected(err, said) {
			break
		}
	}
	return nil, failure
}

func unprotected(program string) string {
	return program + " can't set up its own protection (the sandbox) on this machine and runs without it. " +
		"What it prints still has no scripts, no network and no way to files."
}

// startAs is one try of start. The string is what the program wrote on its error stream.
func startAs(ctx context.Context, program string, how guard) (*session, string, error) {
	p, err := launch(ctx, program, how)
	if err != nil {
		return nil, "", fmt.Errorf("%w: %s can't be started: %w\n%s", ErrBrowserCrashed, program, err, advice)
	}
	// A program that neither reads nor answers holds the calls up until it is gone.
	defer context.AfterFunc(ctx, p.end)()
	s, err := connect(p)
	if err == nil {
		return s, "", nil
	}
	outcome := p.outcome(err)
	p.end()
	said := p.said.String()
	return nil, said, crashed(program, outcome, said)
}

// connect makes the first calls.
func connect(p *process) (*session, error) {
	wire := &checked{wire: p.wire}
	whole := rod.New().ControlURL("").Client(cdp.New().Start(wire)).NoDefaultDevice()
	if err := whole.Connect(); err != nil {
		return nil, err
	}
	private, err := whole.Incognito()
	if err != nil {
		return nil, err
	}
	err = proto.BrowserSetDownloadBehavior{
		Behavior:         proto.BrowserSetDownloadBehaviorBehaviorDeny,
		BrowserContextID: private.BrowserContextID,
	}.Call(private)
	if err != nil {
		return nil, err
	}
	s := &session{
		process: p, wire: wire, rod: private,
		idle: make(chan *tab, pagesAtOnce), unopened: make(chan struct{}, pagesAtOnce),
	}
	for range pagesAtOnce {
		s.unopened <- struct{}{}
	}
	return s, nil
}

// over says whether the session can't be used any more.
func (s *session) over() bool {
	select {
	case <-s.ended:
		return true
	default:
		return s.givenUp.Load()
	}
}

// giveUp ends the browser from our side.
func (s *session) giveUp() {
	s.givenUp.Store(true)
	s.end()
}

// do waits for a free place and works on its page within the limit.
func (s *session) do(ctx context.Context, limit time.Duration, work func(context.Context, *tab) error) error {
	t, err := s.take(ctx)
	if err != nil {
		return err
	}
	within, cancel := context.WithTimeout(ctx, limit)
	defer cancel()
	if t, err = s.try(ctx, within, t, work); err != nil {
		err = s.explain(ctx, within, limit, t, err)
		s.unopened <- struct{}{}
		return err
	}
	s.idle <- t
	return nil
}

// take gives an idle tab, or nil when one may be opened: a tab that was used before is faster.
func (s *session) take(ctx context.Context) (*tab, error) {
	select {
	case t := <-s.idle:
		return t, nil
	default:
	}
	select {
	case t := <-s.idle:
		return t, nil
	case <-s.unopened:
		return nil, nil
	case <-ctx.Done():
		return nil, context.Cause(ctx)
	}
}

// try works on the tab, or on a new one if there is none that can be used. When the time is up or nobody wants the
// result any more it doesn't return before the page has been put out of the way.
func (s *session) try(ctx, within context.Context, t *tab, work func(context.Context, *tab) error) (*tab, error) {
	if t != nil && t.lost.Err() != nil {
		t = nil
	}
	cleared := make(chan struct{})
	opened := t
	stop := context.AfterFunc(within, func() {
		defer close(cleared)
		// Somebody who has just lost interest doesn't mean that the browser is at fault.
		if ctx.Err() == nil || opened == nil || !s.close(opened) {
			s.giveUp()
		}
	})
	var err error
	if t == nil {
		t, err = s.open()
	}
	if err == nil {
		err = t.during(within, work)
	}
	if !stop() {
		<-cleared
	}
	return t, err
}

// close closes a page that may be in the middle of something, and says whether that worked.
func (s *session) close(t *tab) bool {
	late := time.AfterFunc(closingTime, s.giveUp)
	_, err := proto.TargetCloseTarget{TargetID: t.page.TargetID}.Call(s.rod)
	return late.Stop() && err == nil
}

// explain turns what went wrong inside into what the caller should know.
func (s *session) explain(ctx, within context.Context, limit time.Duration, t *tab, err error) error {
	switch {
	case ctx.Err() != nil:
		return context.Cause(ctx)
	case within.Err() != nil:
		return hung(s.program, fmt.Sprintf("did not finish the page within %v", limit))
	case s.givenUp.Load():
		return errInterrupted
	case t != nil && t.lost.Err() != nil:
		return crashed(s.program, "lost the page, most often for want of memory", "")
	case s.wire.broken.Load():
		return crashed(s.program, s.outcome(err), s.said.String())
	case t != nil:
		s.close(t)
	}
	if refusal := new(cdp.Error); errors.As(err, &refusal) {
		return fmt.Errorf("the browser can't print this page: %s", refusal.Message)
	}
	return fmt.Errorf("the browser can't print this page: %w", err)
}
