//go:build unix

package keep

import (
	"bufio"
	"errors"
	"fmt"
	"hash/crc32"
	"math/rand/v2"
	"os"
	"os/exec"
	"strconv"
	"strings"
	"testing"
	"time"
)

// What this file tests needs a program of its own: to be killed, to write beside
// another, to have no rights, to have a full disk. The test is that program too.
var children = map[string]func(dir string) error{
	"type and save": typeAndSave, "add lines": addLines, "without rights": withoutRights, "with small files": withSmallFiles,
}

func TestMain(m *testing.M) {
	if what := os.Getenv("KEEP_TEST_CHILD"); what != "" {
		if err := children[what](os.Getenv("KEEP_TEST_FOLDER")); err != nil {
			fmt.Println("error:", err)
			os.Exit(1)
		}
		os.Exit(0)
	}
	os.Exit(m.Run())
}

// child is a program that does one of these things in a folder.
func child(t *testing.T, what, dir string) *exec.Cmd {
	t.Helper()
	command := exec.Command(must(os.Executable())(t))
	command.Env = append(os.Environ(), "KEEP_TEST_CHILD="+what, "KEEP_TEST_FOLDER="+dir)
	command.Stderr = os.Stderr
	return command
}

// page is a text that shows whether it is whole: its number, many lines, a checksum.
func page(number int) []byte {
	body := fmt.Sprintf("number %d\n", number) + strings.Repeat(fmt.Sprintf("line of %d\n", number), 500+number%300)
	return fmt.Appendf(nil, "%ssum %08x\n", body, crc32.ChecksumIEEE([]byte(body)))
}

func numberOf(text []byte) (int, error) {
	first, _, _ := strings.Cut(string(text), "\n")
	number, err := strconv.Atoi(strings.TrimPrefix(first, "number "))
	if err == nil && string(page(number)) != string(text) {
		err = errors.New("half written")
	}
	return number, err
}

// typeAndSave types and saves pages without end, each time from the one before, and
// says which number is written down and which is saved.
func typeAndSave(dir string) error {
	f, err := Open(dir)
	if err != nil {
		return err
	}
	text, err := f.Read("method.md")
	if err != nil {
		return err
	}
	number, err := numberOf(text.Typed)
	if err != nil {
		return err
	}
	for print := text.TypedPrint; ; {
		number++
		if print, err = f.Draft("method.md", page(number), print); err != nil {
			return err
		}
		fmt.Println("typed", number)
		if number%3 > 0 {
			continue
		}
		if print, err = f.Save("method.md", page(number), print); err != nil {
			return err
		}
		fmt.Println("saved", number)
	}
}

// TestKilled: a program that types and saves is killed 200 times at any moment. The
// file is whole each time; nothing that was said to be saved or written down is lost;
// and the next program goes on from there.
func TestKilled(t *testing.T) {
	dir := t.TempDir()
	put(t, dir, "method.md", string(page(0)))
	random := rand.New(rand.NewPCG(8, 8))
	typed, saved, killed := 0, 0, 0
	for killed < 200 {
		program := child(t, "type and save", dir)
		out := must(program.StdoutPipe())(t)
		if err := program.Start(); err != nil {
			t.Fatal(err)
		}
		lines := bufio.NewScanner(out)
		if !lines.Scan() {
			t.Fatal("it does not begin")
		}
		timer := time.AfterFunc(time.Duration(random.IntN(25_000))*time.Microsecond, func() { program.Process.Kill() })
		for more := true; more; more = lines.Scan() {
			what, number, _ := strings.Cut(lines.Text(), " ")
			n, err := strconv.Atoi(number)
			switch {
			case what == "typed" && err == nil:
				typed = n
			case what == "saved" && err == nil:
				saved = n
			default:
				t.Fatal(lines.Text())
			}
		}
		timer.Stop()
		if err := program.Wait(); err == nil {
			t.Fatal("it came to an end by itself")
		}
		killed++
		checkAfterKill(t, dir, typed, saved)
		if t.Failed() {
			t.Fatalf("after %d kills", killed)
		}
	}
	t.Log(killed, "kills,", typed, "typed,", saved, "saved")
	if entries := must(os.ReadDir(dir))(t); len(entries) != 2 {
		t.Errorf("left in the folder: %v", entries)
	}
}

func checkAfterKill(t *testing.T, dir string, typed, saved int) {
	t.Helper()
	onDisk, err := numberOf([]byte(on(t, dir, "method.md")))
	if err != nil || onDisk < saved || onDisk > typed+1 {
		t.Errorf("number %d is on the disk, %d was saved: %v", onDisk, saved, err)
	}
	f := must(Open(dir))(t)
	defer f.Close()
	must(f.Drafts())(t)
	text := must(f.Read("method.md"))(t)
	if n, err := numberOf(text.Typed); err != nil || n < typed || n > typed+1 {
		t.Errorf("number %d is kept, %d was typed: %v", n, typed, err)
	}
	states := must(f.History("method.md"))(t)
	for _, s := range states[:min(3, len(states))] {
		if _, err := numberOf(must(f.State("method.md", s.ID))(t)); err != nil {
			t.Errorf("state %s: %v", s.ID, err)
		}
	}
}

// addLines adds forty lines to a file, each by reading, adding and saving, and where
// another has been faster, by taking both texts over.
func addLines(dir string) error {
	f, err := Open(dir)
	if err != nil {
		return err
	}
	for i := range 40 {
		for {
			text, err := f.Read("list.md")
			if err != nil {
				return err
			}
			line := fmt.Sprintf("%d of %d\n", i, os.Getpid())
			_, err = f.Save("list.md", append(text.Typed, line...), text.TypedPrint)
			if err == nil {
				break
			}
			if !errors.As(err, new(*Conflict)) {
				return err
			}
		}
	}
	return nil
}

// TestTwoWriters: two programs that save one file at the same time do not overwrite
// each other's lines.
func TestTwoWriters(t *testing.T) {
	dir := t.TempDir()
	put(t, dir, "list.md", "")
	programs := []*exec.Cmd{child(t, "add lines", dir), child(t, "add lines", dir), child(t, "add lines", dir)}
	for _, program := range programs {
		program.Stdout = os.Stdout
		if err := program.Start(); err != nil {
			t.Fatal(err)
		}
	}
	for _, program := range programs {
		if err := program.Wait(); err != nil {
			t.Error(err)
		}
	}
	got := on(t, dir, "list.md")
	for _, program := range programs {
		for i := range 40 {
			if line := fmt.Sprintf("\n%d of %d\n", i, program.Process.Pid); strings.Count("\n"+got, line) != 1 {
				t.Errorf("%q is there %d times", line, strings.Count("\n"+got, line))
			}
		}
	}
}
