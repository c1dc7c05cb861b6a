package print

import (
	"context"
	"errors"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"strings"
	"sync"
	"syscall"
	"time"
)

// process is a running browser: its program, its temporary folder and the wire to it.
type process struct {
	program string
	cmd     *exec.Cmd
	profile *profile
	wire    wire
	said    *tail
	ended   chan struct{} // closed when the program has ended, for whatever reason
	ending  sync.Once
}

// guard is what protects the machine from the browser, should a page take it over.
type guard struct {
	as      *account // runs as this account; nil is our own
	sandbox bool     // the browser's own protection
}

// guards lists the ways to start a browser, the best protected first.
func guards() []guard {
	if !administrator() {
		return []guard{{sandbox: true}, {}}
	}
	if other := unprivileged(); other != nil {
		return []guard{{as: other, sandbox: true}, {as: other}, {}}
	}
	return []guard{{}}
}

// flags of every browser. None is there for looks: each keeps it from reaching out, from asking, from writing
// elsewhere, or from laying out text differently on another screen.
var flags = []string{
	"--headless",
	// Whatever is asked for goes to a port where nobody answers, loopback included, and no name is ever looked up.
	"--proxy-server=http://127.0.0.1:9",
	"--proxy-bypass-list=<-loopback>",
	"--host-resolver-rules=MAP * ~NOTFOUND",
	"--no-pings",
	"--disable-background-networking",
	"--disable-component-update",
	"--disable-client-side-phishing-detection",
	"--disable-domain-reliability",
	"--disable-sync",
	"--disable-features=Translate,MediaRouter,OptimizationHints,AutofillServerCommunication,DialMediaRouteProvider",
	"--no-first-run",
	"--no-default-browser-check",
	"--no-service-autorun",
	"--disable-default-apps",
	"--disable-extensions",
	"--disable-component-extensions-with-background-pages",
	"--disable-breakpad",
	"--disable-crash-reporter",
	"--metrics-recording-only",
	"--disable-popup-blocking",
	"--use-mock-keychain",
	"--password-store=basic",
	"--mute-audio",
	"--disable-gpu",
	"--disable-dev-shm-usage", // containers often have little of it, and a browser that fills it dies
	"--disable-background-timer-throttling",
	"--disable-renderer-backgrounding",
	"--font-render-hinting=none", // letters are as wide on paper as they were drawn
	"--force-color-profile=srgb",
	"--hide-scrollbars",
}

// launch starts the program and connects to it; whether it answers is seen by the first call.
func launch(ctx context.Context, program string, how guard) (*process, error) {
	folder, err := newProfile(temporaryFolder(how.as), how.as)
	if err != nil {
		return nil, err
	}
	p := &process{program: program, profile: folder, said: &tail{}, ended: make(chan struct{})}
	p.cmd = p.command(how)
	if err := p.start(); err != nil {
		folder.remove()
		return nil, err
	}
	if byPort {
		// Ends early when the program does.
		waiting, cancel := context.WithCancel(ctx)
		stop := p.whenEnded(cancel)
		p.wire, err = dial(waiting, p.data())
		stop()
		cancel()
	}
	if err != nil {
		p.end()
		return nil, err
	}
	return p, nil
}

func (p *process) data() string { return filepath.Join(p.profile.home(), "profile") }

func (p *process) command(how guard) *exec.Cmd {
	arguments := append([]string{"--user-data-dir=" + p.data()}, flags...)
	if byPort {
		arguments = append(arguments, "--remote-debugging-port=0")
	} else {
		arguments = append(arguments, "--remote-debugging-pipe")
	}
	if !how.sandbox {
		arguments = append(arguments, "--no-sandbox")
	}
	cmd := exec.Command(p.program, append(arguments, "about:blank")...)
	cmd.Dir = p.profile.home()
	cmd.Env = environment(p.profile.home())
	cmd.Stderr = p.said
	// A grandchild that got away may hold the error stream open: don't wait for it.
	cmd.WaitDelay = endingTime / 4
	setApart(cmd, how.as)
	return cmd
}

// start runs the command and watches for its end.
func (p *process) start() error {
	if !byPort {
		wire, started, err := newPipe(p.cmd)
		if err != nil {
			return err
		}
		defer started()
		p.wire = wire
	}
	if err := p.cmd.Start(); err != nil {
		if p.wire != nil {
			p.wire.Close()
		}
		return err
	}
	go func() {
		_ = p.cmd.Wait() // how it ended is read from ProcessState
		killAll(p.cmd.Process)
		close(p.ended)
	}()
	return nil
}

// whenEnded calls f once the program has ended, unless it is stopped before.
func (p *process) whenEnded(f func()) (stop func()) {
	stopped := make(chan struct{})
	go func() {
		select {
		case <-p.ended:
			f()
		case <-stopped:
		}
	}()
	return func() { close(stopped) }
}

// end kills the browser with all its children and removes its folder. It returns when both are done, and may be
// called more than once.
func (p *process) end() {
	p.ending.Do(func() {
		select {
		case <-p.ended:
		default:
			killAll(p.cmd.Process)
			<-p.ended
		}
		if p.wire != nil {
			p.wire.Close()
		}
		p.profile.remove()
	})
}

// outcome says in a few words why a call failed: how the program ended, or what was wrong with its answer.
func (p *process) outcome(err error) string {
	if !errors.Is(err, errGibberish) {
		// A program that ends closes its wire a moment before it is gone.
		select {
		case <-p.ended:
			return "ended (" + p.cmd.ProcessState.String() + ")"
		case <-time.After(endingTime):
		}
	}
	// Which of these it is hangs on whether the program closed its end before or after our first words.
	if errors.Is(err, io.EOF) || errors.Is(err, syscall.EPIPE) || errors.Is(err, os.ErrClosed) {
		return "went on running but stopped listening"
	}
	return err.Error()
}

// environment is what the browser may know of ours: no desktop session, no settings, nothing of the user's. A home
// of its own keeps the fonts and settings of the person from changing what is printed.
func environment(home string) []string {
	if runtime.GOOS == "windows" {
		return os.Environ() // there the system itself reads a dozen of them
	}
	own := []string{"HOME=" + home, "LANG=C.UTF-8", "TZ=UTC", "DBUS_SESSION_BUS_ADDRESS=disabled:"}
	if runtime.GOOS != "darwin" { // there it gives programs a temporary folder of their own
		own = append(own, "TMPDIR="+home)
	}
	for _, variable := range os.Environ() {
		name, _, _ := strings.Cut(variable, "=")
		if name == "PATH" || name == "LD_LIBRARY_PATH" || strings.HasPrefix(name, "FONTCONFIG_") {
			own = append(own, variable)
		}
	}
	return own
}

// tooProtected says whether a browser failed to start since it couldn't set up its protection here, so that a start
// with less may work.
func tooProtected(err error, said string) bool {
	if errors.Is(err, os.ErrPermission) {
		return true
	}
	said = strings.ToLower(said)
	for _, sign := range []string{"sandbox", "namespace", "zygote", "permission denied", "operation not permitted"} {
		if strings.Contains(said, sign) {
			return true
		}
	}
	return false
}

// tail keeps the last of what a program writes.
type tail struct {
	mu   sync.Mutex
	text []byte
}

func (t *tail) Write(text []byte) (int, error) {
	const kept = 4096
	t.mu.Lock()
	defer t.mu.Unlock()
	t.text = append(t.text, text...)
	if over := len(t.text) - kept; over > 0 {
		t.text = append(t.text[:0], t.text[over:]...)
	}
	return len(text), nil
}

func (t *tail) String() string {
	t.mu.Lock()
	defer t.mu.Unlock()
	return string(t.text)
}
