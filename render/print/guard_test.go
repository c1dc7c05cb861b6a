//go:build linux

package print

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"os"
	"os/user"
	"path/filepath"
	"strings"
	"testing"
)

// TestWhoRunsTheBrowser holds that the browser never has the administrator's rights where this can be avoided, and
// that it has its own protection, or it is said that it hasn't.
func TestWhoRunsTheBrowser(t *testing.T) {
	warned := ""
	b := fresh(t, Settings{Warn: func(message string) { warned += message }})
	number := b.current.cmd.Process.Pid
	status, err := os.ReadFile(fmt.Sprintf("/proc/%d/status", number))
	if err != nil {
		t.Fatal(err)
	}
	want := fmt.Sprint(os.Getuid())
	if os.Geteuid() == 0 {
		nobody, err := user.Lookup("nobody")
		if err != nil {
			t.Fatal(err)
		}
		want = nobody.Uid
	}
	if !strings.Contains(string(status), fmt.Sprintf("Uid:\t%s\t%s\t%s\t%s\n", want, want, want, want)) {
		t.Errorf("the browser should run as %s:\n%s", want, status)
	}
	arguments, err := os.ReadFile(fmt.Sprintf("/proc/%d/cmdline", number))
	if err != nil {
		t.Fatal(err)
	}
	if unsafe := bytes.Contains(arguments, []byte("--no-sandbox")); unsafe != (warned != "") {
		t.Errorf("without sandbox: %v; what was said about it: %q", unsafe, warned)
	}
}

// TestSurroundings holds that nothing of ours reaches the browser but what it needs to run.
func TestSurroundings(t *testing.T) {
	t.Setenv("TALLYFOLD_TEST_SECRET", "hidden")
	t.Setenv("https_proxy", "http://hidden.invalid")
	t.Setenv("HOME", "/hidden")
	program, numbers := fake(t, `env > "$HOME/seen"; cp "$HOME/seen" "${0%/*}/numbers"; exit 1`)
	if _, err := Open(context.Background(), Settings{Program: program}); err == nil {
		t.Fatal("it passed for a browser")
	}
	seen, err := os.ReadFile(numbers)
	if err != nil {
		t.Fatal(err)
	}
	if text := string(seen); strings.Contains(text, "hidden") || !strings.Contains(text, profilePrefix) || !strings.Contains(text, "PATH=") {
		t.Errorf("the browser's surroundings:\n%s", text)
	}
}

// TestWithoutSandbox has a browser that can't set up its protection, as on some machines, and works without.
func TestWithoutSandbox(t *testing.T) {
	needsBrowser(t, sharedError)
	real, err := Find("")
	needsBrowser(t, err)
	program, _ := fake(t, fmt.Sprintf(`case " $* " in
		*" --no-sandbox "*) exec %s "$@";;
		*) echo "FATAL: No usable sandbox! Update your kernel" >&2; exit 1;;
	esac`, real))
	warned := ""
	b := fresh(t, Settings{Program: program, Warn: func(message string) { warned += message }})
	if _, err := b.PDF(context.Background(), []byte(sample), Options{Paper: A5}); err != nil {
		t.Error(err)
	}
	if !strings.Contains(warned, program) || !strings.Contains(warned, "sandbox") {
		t.Errorf("what was said is %q", warned)
	}
}

// TestNotForNobody has a browser in a folder that only we may enter. As administrator it then runs as ourselves,
// which is said.
func TestNotForNobody(t *testing.T) {
	needsBrowser(t, sharedError)
	real, err := Find("")
	needsBrowser(t, err)
	folder := filepath.Join(t.TempDir(), "closed")
	if err := os.Mkdir(folder, 0o700); err != nil {
		t.Fatal(err)
	}
	program := filepath.Join(folder, "browser")
	if err := os.WriteFile(program, []byte("#!/bin/sh\nexec "+real+" \"$@\"\n"), 0o700); err != nil {
		t.Fatal(err)
	}
	warned := ""
	b := fresh(t, Settings{Program: program, Warn: func(message string) { warned += message }})
	if _, err := b.PDF(context.Background(), []byte(sample), Options{Paper: A5}); err != nil {
		t.Error(err)
	}
	if administrator := os.Geteuid() == 0; administrator != (warned != "") {
		t.Errorf("what was said is %q", warned)
	}
}

// TestOtherFailuresAreNotRetried holds that protection is given up for no other reason.
func TestOtherFailuresAreNotRetried(t *testing.T) {
	program, numbers := fake(t, `echo "error: out of paper" >&2; exit 1`)
	_, err := Open(context.Background(), Settings{Program: program, Warn: func(message string) { t.Error(message) }})
	if !errors.Is(err, ErrBrowserCrashed) {
		t.Errorf("the error is %v", err)
	}
	text, err := os.ReadFile(numbers)
	if err != nil || strings.Count(string(text), "\n") != 1 {
		t.Errorf("it was started %d times (error %v)", strings.Count(string(text), "\n"), err)
	}
}

// TestByPort prints through a port, as where no pipe can be handed on.
func TestByPort(t *testing.T) {
	byPort = true
	defer func() { byPort = false }()
	b := fresh(t, Settings{})
	file, err := b.PDF(context.Background(), []byte(sample), Options{Paper: A5})
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(file, printed(t, sample, Options{Paper: A5})) {
		t.Error("the PDF is another")
	}
	b.Close()
	program, numbers := fake(t, "exit 3")
	if _, err := Open(context.Background(), Settings{Program: program}); !errors.Is(err, ErrBrowserCrashed) {
		t.Errorf("a program that ends at once: the error is %v", err)
	}
	gone(t, numbers)
}
