//go:build unix

package keep

import (
	"errors"
	"os"
	"syscall"
)

// tryLock takes the lock of a file for this program alone; ok is false while another
// has it. It goes with the file, however the program ends.
func tryLock(file *os.File) (ok bool, err error) {
	err = syscall.Flock(int(file.Fd()), syscall.LOCK_EX|syscall.LOCK_NB)
	if errors.Is(err, syscall.EWOULDBLOCK) || errors.Is(err, syscall.EINTR) {
		return false, nil
	}
	return err == nil, err
}

// isFull: the disk, the share of it that a person may fill, or the size a file may have.
func isFull(err error) bool {
	return errors.Is(err, syscall.ENOSPC) || errors.Is(err, syscall.EDQUOT) || errors.Is(err, syscall.EFBIG)
}
