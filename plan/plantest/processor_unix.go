//go:build unix

package plantest

import (
	"syscall"
	"time"
)

// processor is the time that this process has taken of all processors.
func processor() time.Duration {
	var use syscall.Rusage
	if err := syscall.Getrusage(syscall.RUSAGE_SELF, &use); err != nil {
		return 0
	}
	return time.Duration(use.Utime.Nano() + use.Stime.Nano())
}
