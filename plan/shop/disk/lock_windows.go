package disk

import (
	"errors"
	"os"
	"syscall"
	"unsafe"
)

var (
	kernel       = syscall.NewLazyDLL("kernel32.dll")
	lockFileEx   = kernel.NewProc("LockFileEx")
	unlockFileEx = kernel.NewProc("UnlockFileEx")
)

const (
	failImmediately = 1 // LOCKFILE_FAIL_IMMEDIATELY
	exclusive       = 2 // LOCKFILE_EXCLUSIVE_LOCK
	lockViolation   = syscall.Errno(33)
)

// far is one byte far behind the text: what is locked others can't read, and they
// are to read who has it.
func far() *syscall.Overlapped { return &syscall.Overlapped{OffsetHigh: 1} }

// lock takes the lock on a file at once or not at all.
func lock(f *os.File) error {
	ok, _, err := lockFileEx.Call(f.Fd(), failImmediately|exclusive, 0, 1, 0, uintptr(unsafe.Pointer(far())))
	switch {
	case ok != 0:
		return nil
	case errors.Is(err, lockViolation):
		return errLocked
	}
	return err
}

func unlock(f *os.File) error {
	if ok, _, err := unlockFileEx.Call(f.Fd(), 0, 1, 0, uintptr(unsafe.Pointer(far()))); ok == 0 {
		return err
	}
	return nil
}
