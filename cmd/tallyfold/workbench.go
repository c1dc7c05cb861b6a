package main

import (
	"context"
	"errors"
	"fmt"
	"net"
	"os/exec"
	"runtime"

	"github.com/spf13/cobra"

	"tallyfold/cmd/workbench"
)

type workbenchOptions struct {
	streams
	noOpen  bool
	port    int
	browser string
}

func newWorkbench(io streams) *cobra.Command {
	o := &workbenchOptions{streams: io}
	command := &cobra.Command{
		Use:   "workbench [DIR]",
		Short: "Open the page on which kits are designed, seen and proved at once",
		Long: `workbench serves a page to the browser on this machine: the shelf of all kits in a
folder, and for each the box, the method, whether it adds up, cautions and labels, the
booklet, and its languages. The files stay plain; a text editor beside it is welcome.

The page is for this machine alone: the address that is printed holds a key made anew at
each start. What you type is written down at once and saved at the next pause. Stop it
with Ctrl and C.`,
		Example: `  tallyfold workbench
  tallyfold workbench kits
  tallyfold workbench my-kit --no-open`,
		Args: func(_ *cobra.Command, args []string) error {
			if len(args) > 1 {
				return errors.New("name one folder, for instance: tallyfold workbench kits")
			}
			return nil
		},
		RunE: func(command *cobra.Command, args []string) error {
			folder := "."
			if len(args) == 1 {
				folder = args[0]
			}
			return o.run(command.Context(), folder)
		},
	}
	flags := command.Flags()
	flags.BoolVar(&o.noOpen, "no-open", false, "only print the address, and open no browser")
	flags.IntVar(&o.port, "port", 0, "the `port` to serve at; a free one unless said")
	flags.StringVar(&o.browser, "browser", "", "the Chromium `program` that makes PDFs; looked for unless said")
	command.ValidArgsFunction = completeFolders
	return command
}

func (o *workbenchOptions) run(ctx context.Context, folder string) error {
	if o.port < 0 || o.port > 65535 {
		return fmt.Errorf("--port %d is no port; it is a number up to 65535", o.port)
	}
	bench, err := workbench.New(workbench.Settings{
		Folder: folder, Version: version(), Browser: o.browser, Note: func(words string) { fmt.Fprintln(o.err, "tallyfold: "+words) },
	})
	if err != nil {
		return err
	}
	defer bench.Close()
	// 127.0.0.1 and never another address: nobody else's machine reaches it.
	listener, err := net.Listen("tcp4", fmt.Sprintf("127.0.0.1:%d", o.port))
	if err != nil {
		return fmt.Errorf("the page cannot be served at port %d, which another program may have: %w", o.port, err)
	}
	address := bench.Address(listener.Addr().String())
	fmt.Fprintf(o.out, "The workbench is open at\n  %s\nStop it with Ctrl and C.\n", address)
	if !o.noOpen {
		open(address)
	}
	return bench.Serve(ctx, listener)
}

// open shows an address in the person's browser, where the system can. If it cannot, the
// address has been printed.
func open(address string) {
	program, before := "xdg-open", []string{}
	switch runtime.GOOS {
	case "darwin":
		program = "open"
	case "windows":
		program, before = "rundll32", []string{"url.dll,FileProtocolHandler"}
	}
	command := exec.Command(program, append(before, address)...)
	if command.Start() == nil {
		go func() { _ = command.Wait() }()
	}
}
