// Command tallyfold checks craft kits and makes their booklets.
//
// This package has flags, streams and exit codes, one short file a command. What
// the commands do is done by the packages under kit, instructions and render.
package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"os/signal"
	"syscall"

	"golang.org/x/term"
)

// Exit codes.
const (
	exitDone    = 0 // nothing must be fixed
	exitMustFix = 1 // something must be fixed
	exitFailed  = 2 // the work could not be done
)

// errMustFix ends a command whose work is done and has shown that something must
// be fixed. It is not printed: the findings have been.
var errMustFix = errors.New("something must be fixed")

// streams are what a command reads and writes: results to out, all else to err.
type streams struct {
	out, err io.Writer
	// colour says whether out is a terminal that shows colour.
	colour bool
	// watched says whether a person is looking at err while the work goes on.
	watched bool
}

func main() {
	os.Exit(run(os.Args[1:], streams{
		out: os.Stdout, err: os.Stderr, colour: showsColour(os.Stdout), watched: isTerminal(os.Stderr),
	}))
}

// run does one command and gives its exit code.
func run(args []string, io streams) int {
	// The first interrupt ends the work in order, so that a browser that is running
	// is stopped and nothing half-written stays behind.
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	defer stop()
	root := newRoot(io)
	root.SetArgs(args)
	err := root.ExecuteContext(ctx)
	switch {
	case err == nil:
		return exitDone
	case errors.Is(err, errMustFix):
		return exitMustFix
	}
	fmt.Fprintln(io.err, "tallyfold: "+err.Error())
	return exitFailed
}

// showsColour follows the NO_COLOR convention and asks whether a person is looking.
func showsColour(file *os.File) bool {
	return os.Getenv("NO_COLOR") == "" && isTerminal(file)
}

// isTerminal says whether a file is a terminal that can write over a line.
func isTerminal(file *os.File) bool {
	return os.Getenv("TERM") != "dumb" && term.IsTerminal(int(file.Fd()))
}
