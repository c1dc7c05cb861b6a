package keep

import (
	"errors"
	"os"
	"path/filepath"
	"syscall"
	"testing"
)

func init() { children["on a small disk"] = onASmallDisk }

// onASmallDisk writes on a disk of a few hundred KB that is in memory.
func onASmallDisk(dir string) error {
	if err := syscall.Mount("tmpfs", dir, "tmpfs", 0, "size=200k"); err != nil {
		return err
	}
	if err := os.WriteFile(filepath.Join(dir, "ballast"), make([]byte, 100_000), 0o644); err != nil {
		return err
	}
	return fillUp(dir, func() error { return os.Remove(filepath.Join(dir, "ballast")) })
}

// TestFullDisk fills a true disk. It takes a name space of its own, which a system may
// refuse to users without rights; TestFilesWithoutRoom asks the same of every system.
func TestFullDisk(t *testing.T) {
	program := child(t, "on a small disk", t.TempDir())
	program.SysProcAttr = &syscall.SysProcAttr{Cloneflags: syscall.CLONE_NEWUSER | syscall.CLONE_NEWNS,
		UidMappings: []syscall.SysProcIDMap{{ContainerID: 0, HostID: os.Getuid(), Size: 1}},
		GidMappings: []syscall.SysProcIDMap{{ContainerID: 0, HostID: os.Getgid(), Size: 1}}}
	out, err := program.Output()
	if errors.Is(err, syscall.EPERM) || errors.Is(err, syscall.ENOSPC) || errors.Is(err, syscall.EINVAL) {
		report(t, child(t, "with small files", t.TempDir()))
		return
	}
	if err != nil || string(out) != "done\n" {
		t.Errorf("%v: %s", err, out)
	}
}
