//go:build !unix

package plantest

import "time"

var start = time.Now()

// processor is the time that has gone by, where the system doesn't say what a process takes.
func processor() time.Duration { return time.Since(start) }
