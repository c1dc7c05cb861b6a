package print

import (
	"io"
	"os"
	"os/exec"
	"strconv"
	"syscall"
)

// account is a user of the machine that a browser can run as; on Windows it is always ourselves.
type account struct{ user, group uint32 }

func unprivileged() *account { return nil }

// administrator is false: on Windows the sandbox works with every right too.
func administrator() bool { return false }

func temporaryFolder(*account) string { return os.TempDir() }

func setApart(cmd *exec.Cmd, _ *account) {
	cmd.SysProcAttr = &syscall.SysProcAttr{HideWindow: true, CreationFlags: syscall.CREATE_NEW_PROCESS_GROUP}
}

// killAll ends the process and its children; the system's own tool knows which these are.
func killAll(process *os.Process) {
	_ = exec.Command("taskkill", "/T", "/F", "/PID", strconv.Itoa(process.Pid)).Run()
	_ = process.Kill()
}

func createLock(path string) (io.Closer, error) { return exclusively(path, syscall.CREATE_NEW) }

func takeLock(path string) (io.Closer, error) { return exclusively(path, syscall.OPEN_EXISTING) }

// exclusively opens a file that nobody else can open meanwhile.
func exclusively(path string, disposition uint32) (io.Closer, error) {
	name, err := syscall.UTF16PtrFromString(path)
	if err != nil {
		return nil, err
	}
	handle, err := syscall.CreateFile(name, syscall.GENERIC_READ|syscall.GENERIC_WRITE, 0, nil, disposition,
		syscall.FILE_ATTRIBUTE_NORMAL, 0)
	if err != nil {
		return nil, &os.PathError{Op: "open", Path: path, Err: err}
	}
	return os.NewFile(uintptr(handle), path), nil
}

// ownedByUs is true: on Windows each user has a temporary folder of their own.
func ownedByUs(os.FileInfo) bool { return true }
