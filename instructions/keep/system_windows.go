package keep

import (
	"errors"
	"os"

	"golang.org/x/sys/windows"
)

// tryLock takes the lock of a file for this program alone; ok is false while another
// has it. It goes with the file, however the program ends.
func tryLock(file *os.File) (ok bool, err error) {
	err = windows.LockFileEx(windows.Handle(file.Fd()), windows.LOCKFILE_EXCLUSIVE_LOCK|windows.LOCKFILE_FAIL_IMMEDIATELY, 0, 1, 0, &windows.Overlapped{})
	if errors.Is(err, windows.ERROR_LOCK_VIOLATION) {
		return false, nil
	}
	return err == nil, err
}

// isFull: the disk, or the share of it that a person may fill.
func isFull(err error) bool {
	return errors.Is(err, windows.ERROR_DISK_FULL) || errors.Is(err, windows.ERROR_HANDLE_DISK_FULL) || errors.Is(err, windows.ERROR_DISK_QUOTA_EXCEEDED)
}
