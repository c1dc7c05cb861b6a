package print

import (
	"bufio"
	"bytes"
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"strings"
	"sync"
	"sync/atomic"
	"time"

	"github.com/go-rod/rod/lib/cdp"
)

// wire carries messages to and from the browser.
type wire interface {
	cdp.WebSocketable
	Close() error
}

// byPort says whether the browser is spoken to through a port of the loopback interface. A pipe is better: nobody
// else can listen in, and the browser ends by itself when we do. But Windows hands on no pipes in this way.
var byPort = runtime.GOOS == "windows"

// errGibberish says that what came back is not the browser's protocol.
var errGibberish = errors.New("answered with something that is not a browser's language")

// pipe is the wire of a browser started with --remote-debugging-pipe: messages in JSON, each ended by a zero byte.
type pipe struct {
	sending sync.Mutex
	out     *os.File
	in      *os.File
	reader  *bufio.Reader
}

// newPipe gives the command the ends that Chromium expects as its files 3 and 4. The second result closes our copies
// of these, to be called once the command runs or has failed to.
func newPipe(cmd *exec.Cmd) (*pipe, func(), error) {
	theirIn, ourOut, err := os.Pipe()
	if err != nil {
		return nil, nil, err
	}
	ourIn, theirOut, err := os.Pipe()
	if err != nil {
		theirIn.Close()
		ourOut.Close()
		return nil, nil, err
	}
	cmd.ExtraFiles = []*os.File{theirIn, theirOut}
	started := func() {
		theirIn.Close()
		theirOut.Close()
	}
	// A printed page comes as one message of some megabytes.
	return &pipe{out: ourOut, in: ourIn, reader: bufio.NewReaderSize(ourIn, 1<<16)}, started, nil
}

func (p *pipe) Send(message []byte) error {
	p.sending.Lock()
	defer p.sending.Unlock()
	_, err := p.out.Write(append(message, 0))
	return err
}

func (p *pipe) Read() ([]byte, error) {
	message, err := p.reader.ReadBytes(0)
	if err != nil {
		return nil, err
	}
	return bytes.TrimSuffix(message, []byte{0}), nil
}

func (p *pipe) Close() error {
	return errors.Join(p.out.Close(), p.in.Close())
}

// message is the shape of everything that a browser says.
type message struct {
	ID        int             `json:"id"`
	SessionID string          `json:"sessionId"`
	Method    string          `json:"method"`
	Params    json.RawMessage `json:"params"`
	Result    json.RawMessage `json:"result"`
	Error     *cdp.Error      `json:"error"`
}

// checked lets only messages through: the library takes the process down when it is given anything else. After an error
// it is closed, so that whoever sends later gets an error too, instead of waiting for an answer.
type checked struct {
	wire
	broken atomic.Bool
}

func (c *checked) Read() ([]byte, error) {
	text, err := c.wire.Read()
	if err == nil && json.Unmarshal(text, new(message)) != nil {
		err = errGibberish
	}
	if err != nil {
		c.broken.Store(true)
		c.Close()
		return nil, err
	}
	return text, nil
}

func (c *checked) Send(message []byte) error {
	err := c.wire.Send(message)
	if err != nil {
		c.broken.Store(true)
	}
	return err
}

// dial waits until the browser has written down its port, and connects.
func dial(ctx context.Context, profile string) (wire, error) {
	const pause = 10 * time.Millisecond
	for {
		text, err := os.ReadFile(filepath.Join(profile, "DevToolsActivePort"))
		if port, path, found := strings.Cut(strings.TrimSpace(string(text)), "\n"); err == nil && found {
			socket := &cdp.WebSocket{}
			return socket, socket.Connect(ctx, fmt.Sprintf("ws://127.0.0.1:%s%s", port, path), nil)
		}
		select {
		case <-ctx.Done():
			return nil, ctx.Err()
		case <-time.After(pause):
		}
	}
}
