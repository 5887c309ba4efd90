package plan

import (
	"time"
)

// energy is the score as one number for the search, in milliseconds: lateness
// weighs a hundred times as much as setup, and of what the aim doesn't ask for a
// little is kept to lead the search out of ties.
func energy(a score, aim Aim, move time.Duration) int64 {
	late := 100*a.late.Milliseconds() + 60_000*int64(a.lateJobs)
	if aim == AimMoves {
		return late + int64(a.repositions)*move.Milliseconds() + a.setup.Milliseconds()/1000
	}
	return late + a.setup.Milliseconds() + int64(a.repositions)
}
