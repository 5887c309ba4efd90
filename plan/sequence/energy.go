package sequence

import (
	"time"

	"bide/plan"
)

// energy is the score as one number for the search, in milliseconds: lateness
// weighs a hundred times as much as setup, and of what the aim doesn't ask for a
// little is kept to lead the search out of ties.
func energy(a plan.Score, aim plan.Aim, move time.Duration) int64 {
	late := 100*a.Late.Milliseconds() + 60_000*int64(a.LateJobs)
	if aim == plan.AimMoves {
		return late + int64(a.Repositions)*move.Milliseconds() + a.Setup.Milliseconds()/1000
	}
	return late + a.Setup.Milliseconds() + int64(a.Repositions)
}
