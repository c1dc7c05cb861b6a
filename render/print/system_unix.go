//go:build unix

package print

import (
	"io"
	"os"
	"os/exec"
	"os/user"
	"path/filepath"
	"strconv"
	"syscall"
)

// account is a user of the machine that a browser can run as.
type account struct{ user, group uint32 }

// unprivileged gives the account to use in place of the administrator's, or nil when we aren't the administrator: a
// browser refuses to protect itself when run as root, and nothing that it does needs a right.
func unprivileged() *account {
	if os.Geteuid() != 0 {
		return nil
	}
	nobody, err := user.Lookup("nobody")
	if err != nil {
		return nil
	}
	uid, uidErr := strconv.ParseUint(nobody.Uid, 10, 32)
	gid, gidErr := strconv.ParseUint(nobody.Gid, 10, 32)
	if uidErr != nil || gidErr != nil {
		return nil
	}
	return &account{user: uint32(uid), group: uint32(gid)}
}

// administrator says whether we run with every right, where a browser's sandbox is refused.
func administrator() bool { return os.Geteuid() == 0 }

// temporaryFolder is where profiles are made: the usual place, unless the other account can't get there.
func temporaryFolder(owner *account) string {
	usual := os.TempDir()
	if owner == nil {
		return usual
	}
	for folder := usual; ; folder = filepath.Dir(folder) {
		info, err := os.Stat(folder)
		if err != nil || info.Mode().Perm()&0o001 == 0 {
			return "/tmp"
		}
		if folder == filepath.Dir(folder) {
			return usual
		}
	}
}

// setApart gives the command a process group of its own, so that it can be ended with all its children, and the
// rights of the account.
func setApart(cmd *exec.Cmd, as *account) {
	cmd.SysProcAttr = &syscall.SysProcAttr{Setpgid: true}
	if as != nil {
		cmd.SysProcAttr.Credential = &syscall.Credential{Uid: as.user, Gid: as.group}
	}
}

// killAll ends the process and every other of its group.
func killAll(process *os.Process) {
	_ = syscall.Kill(-process.Pid, syscall.SIGKILL)
}

// createLock makes the file and locks it. It gets its name only once it is locked, so that nobody sees it free.
func createLock(path string) (io.Closer, error) {
	file, err := os.OpenFile(path+".new", os.O_CREATE|os.O_EXCL|os.O_RDWR, 0o600)
	if err != nil {
		return nil, err
	}
	if err = syscall.Flock(int(file.Fd()), syscall.LOCK_EX|syscall.LOCK_NB); err == nil {
		err = os.Rename(path+".new", path)
	}
	if err != nil {
		file.Close()
		return nil, err
	}
	return file, nil
}

// takeLock locks a file that exists, or fails at once when another process holds it. It follows no link and waits
// for nothing, as anyone can put a file into a public temporary folder.
func takeLock(path string) (io.Closer, error) {
	file, err := os.OpenFile(path, os.O_RDONLY|syscall.O_NOFOLLOW|syscall.O_NONBLOCK, 0)
	if err != nil {
		return nil, err
	}
	if err := syscall.Flock(int(file.Fd()), syscall.LOCK_EX|syscall.LOCK_NB); err != nil {
		file.Close()
		return nil, err
	}
	return file, nil
}

func ownedByUs(info os.FileInfo) bool {
	stat, ok := info.Sys().(*syscall.Stat_t)
	return ok && int(stat.Uid) == os.Geteuid()
}
