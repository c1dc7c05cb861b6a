//go:build linux

package print

import (
	"context"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"time"
)

// fake writes a program that is no browser. It notes its own number and that of a child, which it leaves running,
// in the file returned second.
func fake(t *testing.T, script string) (program, numbers string) {
	t.Helper()
	folder := openFolder(t)
	numbers = filepath.Join(folder, "numbers")
	if err := os.WriteFile(numbers, nil, 0o666); err != nil {
		t.Fatal(err)
	}
	if err := os.Chmod(numbers, 0o666); err != nil { // as the program may run as another user
		t.Fatal(err)
	}
	program = filepath.Join(folder, "browser")
	text := fmt.Sprintf("#!/bin/sh\nsleep 600 3<&- 4>&- &\necho $$ $! >> %s\n%s\n", numbers, script)
	if err := os.WriteFile(program, []byte(text), 0o755); err != nil {
		t.Fatal(err)
	}
	return program, numbers
}

// gone fails the test unless all the processes noted in the file have ended.
func gone(t *testing.T, numbers string) {
	t.Helper()
	text, err := os.ReadFile(numbers)
	if err != nil {
		t.Fatal(err)
	}
	fields := strings.Fields(string(text))
	if len(fields) < 2 {
		t.Fatalf("the program never ran: %q", text)
	}
	for _, field := range fields {
		number, err := strconv.Atoi(field)
		if err != nil {
			t.Fatal(err)
		}
		if !ended(number) {
			t.Errorf("process %d is still there", number)
		}
	}
}

// ended waits a moment for a process to be gone, or dead and not yet collected by its parent.
func ended(number int) bool {
	return soon(func() bool {
		stat, err := os.ReadFile(fmt.Sprintf("/proc/%d/stat", number))
		return err != nil || isDead(string(stat))
	})
}

// groupEnded waits a moment for all processes of a group to be gone, or dead and not yet collected: where the first
// process of the machine collects nobody's children, the dead stay listed.
func groupEnded(t *testing.T, group int) bool {
	t.Helper()
	return soon(func() bool {
		files, err := filepath.Glob("/proc/[0-9]*/stat")
		if err != nil || len(files) == 0 {
			t.Fatal("the processes of this machine can't be listed")
		}
		for _, file := range files {
			stat, err := os.ReadFile(file)
			if err != nil || isDead(string(stat)) {
				continue
			}
			_, after, _ := strings.Cut(string(stat), ") ")
			if fields := strings.Fields(after); len(fields) > 2 && fields[2] == strconv.Itoa(group) {
				return false
			}
		}
		return true
	})
}

// isDead reads the state behind the name in a line of /proc/N/stat.
func isDead(stat string) bool {
	_, after, _ := strings.Cut(stat, ") ")
	return strings.HasPrefix(after, "Z") || strings.HasPrefix(after, "X")
}

func soon(done func() bool) bool {
	for range 50 {
		if done() {
			return true
		}
		time.Sleep(20 * time.Millisecond)
	}
	return false
}

// TestBadBrowsers starts programs that are no browsers, each bad in its own way.
func TestBadBrowsers(t *testing.T) {
	const short = 2 * time.Second // for those that hang; the others should fail long before a limit
	for name, bad := range map[string]struct {
		script string
		want   error
		says   string
	}{
		"hangs":               {"exec sleep 600", ErrBrowserHung, "gave no answer within 2s"},
		"hangs, deaf to TERM": {"trap '' TERM INT; while :; do sleep 1; done", ErrBrowserHung, "gave no answer within 2s"},
		"ends at once":        {"exit 3", ErrBrowserCrashed, "exit status 3"},
		"ends well":           {"exit 0", ErrBrowserCrashed, "exit status 0"},
		"says why":            {"echo 'error: no such library' >&2; exit 127", ErrBrowserCrashed, "its last words: error: no such library"},
		"kills itself":        {"kill -9 $$", ErrBrowserCrashed, "signal: killed"},
		"writes nonsense":     {`printf 'nonsense\0' >&4; exec sleep 600`, ErrBrowserCrashed, "not a browser's language"},
		"writes other JSON":   {`printf '["id"]\0' >&4; exec sleep 600`, ErrBrowserCrashed, "not a browser's language"},
		"writes wrong JSON":   {`printf '{"id":"one"}\0' >&4; exec sleep 600`, ErrBrowserCrashed, "not a browser's language"},
		"nonsense everywhere": {"cat /dev/urandom | head -c 300000 | tee /dev/stderr >&4; exec sleep 600", ErrBrowserCrashed, "not a browser's language"},
		"nonsense, no end":    {`yes nonsense >&2`, ErrBrowserHung, "gave no answer within 2s"},
		"closes its ears":     {"exec 3<&- 4>&-; exec sleep 600", ErrBrowserCrashed, "stopped listening"},
	} {
		t.Run(name, func(t *testing.T) {
			temporary := ownTemporary(t)
			program, numbers := fake(t, bad.script)
			limit := time.Minute
			if bad.want == ErrBrowserHung {
				limit = short
			}
			begin := time.Now()
			b, err := Open(context.Background(), Settings{Program: program, StartTimeout: limit})
			if took := time.Since(begin); took > short+busy {
				t.Errorf("it took %v", took)
			}
			if err == nil {
				b.Close()
				t.Fatal("it passed for a browser")
			}
			if !errors.Is(err, bad.want) || !strings.Contains(err.Error(), bad.says) {
				t.Errorf("the error is %v", err)
			}
			if !strings.Contains(err.Error(), program) || !strings.Contains(err.Error(), ProgramVariable) {
				t.Errorf("the error doesn't say which program, or what to do: %v", err)
			}
			for _, r := range err.Error() {
				if r < ' ' && r != '\n' {
					t.Errorf("the error has the control character %q", r)
				}
			}
			gone(t, numbers)
			if left := profiles(t, temporary); len(left) > 0 {
				t.Errorf("left behind: %v", left)
			}
		})
	}
}

// TestNoProgram asks for programs that aren't there or can't run.
func TestNoProgram(t *testing.T) {
	folder := t.TempDir()
	notProgram := filepath.Join(folder, "text")
	if err := os.WriteFile(notProgram, []byte("text"), 0o644); err != nil {
		t.Fatal(err)
	}
	for _, program := range []string{filepath.Join(folder, "none"), notProgram, folder} {
		_, err := Open(context.Background(), Settings{Program: program})
		if !errors.Is(err, ErrNoBrowser) || !strings.Contains(err.Error(), program) {
			t.Errorf("%s: the error is %v", program, err)
		}
		t.Setenv(ProgramVariable, program)
		_, err = Open(context.Background(), Settings{})
		if !errors.Is(err, ErrNoBrowser) || !strings.Contains(err.Error(), ProgramVariable+" is "+program) {
			t.Errorf("%s by variable: the error is %v", program, err)
		}
	}
	for _, wanted := range []string{"Debian", "apt install chromium-headless-shell", "other Linux", "macOS", "Windows", "Everything but the PDF works"} {
		if !strings.Contains(ErrNoBrowser.Error(), wanted) {
			t.Errorf("the message doesn't say %q", wanted)
		}
	}
	garbage := filepath.Join(openFolder(t), "garbage")
	if err := os.WriteFile(garbage, []byte("\x7fELF no program at all"), 0o755); err != nil {
		t.Fatal(err)
	}
	if _, err := Open(context.Background(), Settings{Program: garbage}); !errors.Is(err, ErrBrowserCrashed) {
		t.Errorf("a file that is no program: the error is %v", err)
	}
}
