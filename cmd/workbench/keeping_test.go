package workbench

import (
	"bufio"
	"context"
	"net"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/go-rod/rod/lib/input"
)

// Another program changes a file that is open: what it changed is shown, what is typed here
// in other lines stays, and both are saved.
func TestAnotherProgramChangesAFile(t *testing.T) {
	b := newBench(t, "drawer-sachets")
	w := b.open("/kit/drawer-sachets/box")
	w.size(1400, 900)
	b.replaceIn("drawer-sachets/kit.yaml", "edition: 1", "edition: 7  # for the spring fair")
	w.wait("the edition that another program wrote", `() => document.getElementById("f-edition-in").value === "7"`)
	w.sees("#top", "edition 7")

	w.goTo("http://" + b.host + "/kit/drawer-sachets/method")
	w.typeAtEnd("\nHang them up for [10 minutes](wait:).\n")
	b.replaceIn("drawer-sachets/method.md", "## [Tie the bags]", "## [Tie all the bags]")
	w.reads("Tie all the bags", input.End)
	w.saved()
	b.until("both changes on the disk", func() bool {
		text := b.file("drawer-sachets/method.md")
		return strings.Contains(text, "Tie all the bags") && strings.Contains(text, "Hang them up")
	})
	if text := b.file("drawer-sachets/kit.yaml"); !strings.Contains(text, "edition: 7  # for the spring fair\n") {
		t.Errorf("the line of the other program is another:\n%.300s", text)
	}
	w.fine()
}

// Another program changes the same line while something is typed into it that is not saved
// yet: both are shown side by side, and nothing is saved until the maker chooses.
func TestTwoProgramsChangeOneLine(t *testing.T) {
	b := newBench(t, "drawer-sachets")
	d, err := b.desk("drawer-sachets")
	if err != nil {
		t.Fatal(err)
	}
	w := b.open("/kit/drawer-sachets/box")
	w.size(1400, 900)
	d.lock.Lock() // so that nothing is saved before the other program has written
	text, err := d.read("kit.yaml")
	if err == nil {
		_, err = d.put("kit.yaml", []byte(strings.Replace(string(text.Typed), "edition: 1", "edition: 2", 1)), text.TypedPrint)
	}
	b.replaceIn("drawer-sachets/kit.yaml", "edition: 1", "edition: 3")
	d.lock.Unlock()
	if err != nil {
		t.Fatal(err)
	}
	w.sees("#notices", "same lines")
	if on := b.file("drawer-sachets/kit.yaml"); !strings.Contains(on, "edition: 3") {
		t.Error("the other program's text was written over")
	}
	w.look("notice")
	w.press("#notices a")
	w.sees("h1", "Two changes of one place")
	w.ready()
	w.sees(".beside .differs", "edition: 2")
	w.look("clash")
	w.press("[data-choose=mine]")
	b.until("mine on the disk", func() bool { return strings.Contains(b.file("drawer-sachets/kit.yaml"), "edition: 2") })
	w.sees("h1", "The box")
	w.ready()
	w.seesNot("#notices", "same lines")
	w.goTo("http://" + b.host + "/kit/drawer-sachets/earlier")
	w.sees(".states", "another program")
	w.fine()
}

// Two windows on one kit: each sees what the other does, and neither writes over it.
func TestTwoWindows(t *testing.T) {
	b := newBench(t, "drawer-sachets")
	one, two := b.open("/kit/drawer-sachets/box"), b.open("/kit/drawer-sachets/box")
	one.front()
	one.fill("f-about-in", "Said in one window.")
	two.front()
	two.wait("what the other window said", `() => document.getElementById("f-about-in").value === "Said in one window."`)
	two.fill("f-maker-in", "Quay Two")
	one.front()
	one.wait("what the second window said", `() => document.getElementById("f-maker-in").value === "Quay Two"`)

	// The same field: the second learns what it has become, and nothing is written over.
	said := b.order("drawer-sachets", order{Act: "set", Path: []string{"about"}, Value: "Late.", Was: "Eight cotton sachets"})
	if !strings.Contains(said.Wrong, "Said in one window.") || b.value("drawer-sachets", "about") != "Said in one window." {
		t.Errorf("a late window is told %q; the field is %q", said.Wrong, b.value("drawer-sachets", "about"))
	}

	// Two editors on one text.
	one.goTo("http://" + b.host + "/kit/drawer-sachets/method")
	two.goTo("http://" + b.host + "/kit/drawer-sachets/method")
	one.front()
	one.typeAtEnd("\nWritten in the first window.\n")
	two.front()
	two.reads("Written in the first window.", input.End)
	two.cursor(input.Home)
	two.must(two.page.InsertText("Written in the second.\n\n"))
	one.front()
	one.reads("Written in the second.", input.Home)
	one.saved()
	b.until("both on the disk", func() bool {
		text := b.file("drawer-sachets/method.md")
		return strings.HasPrefix(text, "Written in the second.") && strings.Contains(text, "Written in the first window.")
	})
	one.fine()
	two.fine()
}

// The folder goes away while something is typed: the page says so and keeps the words; when
// it is back they are saved.
func TestTheFolderVanishes(t *testing.T) {
	b := newBench(t, "drawer-sachets")
	w := b.open("/kit/drawer-sachets/method")
	w.size(1400, 900)
	path := filepath.Join(b.folder, "drawer-sachets")
	if err := os.Rename(path, path+"-away"); err != nil {
		t.Fatal(err)
	}
	w.typeAtEnd("\nKept all the same.\n")
	w.sees("#notices", "folder")
	w.look("vanished")
	if err := os.Rename(path+"-away", path); err != nil {
		t.Fatal(err)
	}
	b.until("the words on the disk", func() bool { return strings.Contains(b.file("drawer-sachets/method.md"), "Kept all the same.") })
	w.seesNot("#notices", "folder")
	w.fine()
}

// A file that may not be written: the page says so and keeps what is typed; when it may be
// written again it is saved.
func TestAReadOnlyFile(t *testing.T) {
	b := newBench(t, "drawer-sachets")
	path := filepath.Join(b.folder, "drawer-sachets/kit.yaml")
	if err := os.Chmod(path, 0o444); err != nil {
		t.Fatal(err)
	}
	w := b.open("/kit/drawer-sachets/box")
	w.size(1400, 900)
	w.fill("f-about-in", "Typed all the same.")
	w.sees("#notices .trouble", "kit.yaml")
	w.look("read-only")
	if text := b.file("drawer-sachets/kit.yaml"); strings.Contains(text, "Typed all the same.") {
		t.Error("a file that may not be written was written")
	}
	w.goTo("http://" + b.host + "/kit/drawer-sachets/box")
	w.wait("what was typed", `() => document.getElementById("f-about-in").value === "Typed all the same."`)
	if err := os.Chmod(path, 0o644); err != nil {
		t.Fatal(err)
	}
	b.until("it is saved", func() bool { return strings.Contains(b.file("drawer-sachets/kit.yaml"), "about: Typed all the same.") })
	w.seesNot("#notices", "kit.yaml")
	w.fine()
}

// The program is killed in the middle of the typing (kill -9), and started again: every
// keystroke that the page had sent is there, the rest the page sends when the program answers
// again, and no file is half written.
func TestKilledInTheMiddle(t *testing.T) {
	b := newBench(t, "drawer-sachets")
	b.stop() // the one of this process gives way to one that can be killed
	program := startProgram(t, b, "")
	w := b.openWith(program.address, "/kit/drawer-sachets/method")
	w.size(1400, 900)
	w.typeAtEnd("\nTyped before the kill.")
	w.wait("it is sent", `() => !document.documentElement.dataset.busy`)
	program.kill()
	w.must(w.page.InsertText(" Typed while nobody answered."))
	w.sees("#lost", "does not answer")
	w.look("lost")
	if text := b.file("drawer-sachets/method.md"); !strings.HasPrefix(text, "#") && !strings.HasPrefix(text, ">") && len(text) < 1000 {
		t.Errorf("method.md is half a file: %d bytes", len(text))
	}
	program = startProgram(t, b, b.host)
	defer program.kill()
	// The new program has a new key: its address is opened once more, and the words written
	// down by the old one are there.
	again := b.openWith(program.address, "/kit/drawer-sachets/method")
	again.reads("Typed before the kill.", input.End)
	// The window that stayed open has the cookie now, and sends what it still held.
	w.front()
	w.wait("the page is answered again", `() => !document.getElementById("lost")`)
	b.until("all of it on the disk", func() bool {
		return strings.Contains(b.file("drawer-sachets/method.md"), "Typed before the kill. Typed while nobody answered.")
	})
}

// A program is a workbench in a process of its own.
type program struct {
	*testing.T
	command *exec.Cmd
	address string
}

// startProgram runs this test binary as a workbench (TestMain does it).
func startProgram(t *testing.T, b *bench, at string) *program {
	t.Helper()
	if at == "" {
		at = "127.0.0.1:0"
	}
	command := exec.Command(os.Args[0])
	command.Env = append(os.Environ(), servedFolder+"="+b.folder, servedAt+"="+at)
	command.Stderr = os.Stderr
	out, err := command.StdoutPipe()
	if err != nil {
		t.Fatal(err)
	}
	if err := command.Start(); err != nil {
		t.Fatal(err)
	}
	p := &program{T: t, command: command}
	t.Cleanup(p.kill)
	line, err := bufio.NewReader(out).ReadString('\n')
	if err != nil {
		t.Fatal(err)
	}
	p.address = strings.TrimSpace(line)
	b.host = strings.TrimPrefix(strings.Split(p.address, "/open")[0], "http://")
	return p
}

func (p *program) kill() {
	_ = p.command.Process.Kill() // SIGKILL: nothing of the program runs any more
	_ = p.command.Wait()
}

// The variables by which a test binary is told to be a workbench.
const servedFolder, servedAt = "WORKBENCH_TEST_FOLDER", "WORKBENCH_TEST_AT"

// beProgram serves a folder until the process is killed.
func beProgram(folder, at string) {
	made, err := New(Settings{Folder: folder, Version: "test"})
	if err != nil {
		panic(err)
	}
	var listener net.Listener
	for range 50 { // the port of a killed process is free after a moment
		if listener, err = net.Listen("tcp4", at); err == nil {
			break
		}
		time.Sleep(50 * time.Millisecond)
	}
	if err != nil {
		panic(err)
	}
	_, _ = os.Stdout.WriteString(made.Address(listener.Addr().String()) + "\n")
	panic(made.Serve(context.Background(), listener))
}

// replaceIn changes a file as another program does: whole, in the place of the old one.
func (b *bench) replaceIn(name, old, with string) {
	b.Helper()
	text := b.file(name)
	if !strings.Contains(text, old) {
		b.Fatalf("%s holds no %q", name, old)
	}
	path := filepath.Join(b.folder, name)
	err := os.WriteFile(path+".new", []byte(strings.Replace(text, old, with, 1)), 0o644)
	if err == nil {
		err = os.Rename(path+".new", path)
	}
	if err != nil {
		b.Fatal(err)
	}
}

// until waits for something on the disk.
func (b *bench) until(what string, so func() bool) {
	b.Helper()
	for end := time.Now().Add(patience); !so(); time.Sleep(20 * time.Millisecond) {
		if time.Now().After(end) {
			b.Fatalf("waited in vain for %s", what)
		}
	}
}

// front brings a window to the front: browsers give the others no news.
func (w *window) front() {
	w.bench.Helper()
	_, err := w.page.Activate()
	w.must(err)
}
