//go:build unix

package terminal

import (
	"errors"
	"io"
	"os"
	"time"

	"golang.org/x/sys/unix"
)

// Reader reads what is typed at a terminal.
func Reader(f *os.File) io.Reader { return &Input{f, ready, keyRest} }

// ready waits until more can be read, or the time is over.
func ready(f *os.File, within time.Duration) bool {
	fd := int(f.Fd())
	if fd >= unix.FD_SETSIZE {
		return false
	}
	for end := time.Now().Add(within); ; {
		var set unix.FdSet
		set.Set(fd)
		left := unix.NsecToTimeval(max(time.Until(end), 0).Nanoseconds())
		n, err := unix.Select(fd+1, &set, nil, nil, &left)
		if !errors.Is(err, unix.EINTR) {
			return err == nil && n > 0
		}
	}
}
