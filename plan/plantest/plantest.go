// Package plantest draws beams and days for tests, and says how much tests try. One that goes
// through drawn worlds asks here how many: few and small ones in the usual run, so that all
// packages together are done in a minute, and with -long more and large ones; -worlds draws
// that many times as many. What takes long even once runs with -long alone.
//
// Only tests import this package.
package plantest

import (
	"flag"
	"testing"
	"time"
)

var (
	long   = flag.Bool("long", false, "draw many worlds, and run the tests that take long")
	worlds = flag.Int("worlds", 1, "draw that many times as many worlds")
)

// Worlds is how many worlds a test draws: few, or with -long many.
func Worlds(few, many int) int {
	if *long {
		few = many
	}
	return few * *worlds
}

// Sizes are the sizes that a benchmark measures: all, or with -short, where it is only to be
// seen that it runs, the first.
func Sizes[T any](all ...T) []T {
	if testing.Short() {
		return all[:1]
	}
	return all
}

// IsLong reports whether tests are to try all they can.
func IsLong() bool { return *long }

// Long skips a test that takes long, but for a run with -long.
func Long(t testing.TB) {
	t.Helper()
	if !*long {
		t.Skip("it takes long: run it with -long")
	}
}

// Within fails a test whose work takes more time of the processor than it may. What else the
// machine does meanwhile doesn't count; what else the process does counts, so no other test
// may run beside it.
func Within(t testing.TB, limit time.Duration, work func()) {
	t.Helper()
	before := processor()
	work()
	if took := processor() - before; took > limit {
		t.Errorf("it took %v of the processor, above %v", took, limit)
	}
}
