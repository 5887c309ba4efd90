package workday

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"time"

	"bide/plan"
	"bide/plan/session/draft"
	"bide/plan/shop"
	"bide/plan/shop/toml"
)

// Ended proposes when a job ended and how many metres it ran, if it is marked as done now,
// as a person may type it: what was planned, or, where its run isn't over by the clock, now
// and by then. It is false, and says why, for one that hasn't run.
func (d Editor) Ended(j *plan.Job) (proposal string, ok bool) {
	if s := d.Start.Positions.Begun; s != nil && s.Job == j.ID {
		d.Say("the setup of %s has begun and it has not run: %s continues it, %s puts it on hold", j.ID, d.Screen.KeyOf(ToSetUp), d.Screen.KeyOf(ToHold))
		return "", false
	}
	at, metres := d.Start.Clock.At, j.Metres
	if running := j.State == plan.Running && !j.Began.IsZero(); running {
		ran, whole := d.Start.Clock.Calendar.Worked(j.Began, at), j.RunTime()
		switch {
		case ran <= 0: // an invented day, in which time goes as planned
			at = j.Began.Add(whole)
		case ran < whole:
			metres = math.Round(j.Ran + (metres-j.Ran)*ran.Seconds()/whole.Seconds())
		}
	}
	clock := at.Format("15:04")
	if next, err := shop.TimeOf(clock, d.Shop.Day.Start); err != nil || next.Sub(at).Abs() >= time.Minute {
		clock = at.Format("2006-01-02 15:04")
	}
	return clock + ", " + toml.Number(metres), true
}

// MarkDone marks a job as done, as a person types it: when it ended, and the metres that it
// ran. The error says why that can't be so.
func (d Editor) MarkDone(j *plan.Job, typed string) error {
	at, metres, err := d.ended(j, typed)
	if err == nil {
		d.becomes(j, j.ID+" is done; the positions stay as recorded last", draft.ProgressOf(j).Done(at, metres))
	}
	return err
}

// ended reads when a job ended and how far it ran.
func (d Editor) ended(j *plan.Job, typed string) (at time.Time, metres float64, err error) {
	clock, length, given := strings.Cut(typed, ",")
	if at, err = shop.TimeOf(clock, d.Shop.Day.Start); err != nil {
		return at, 0, err
	}
	if metres, err = strconv.ParseFloat(strings.TrimSpace(strings.TrimSuffix(strings.TrimSpace(length), "m")), 64); err != nil || metres < 0 || metres > 1e7 {
		if given {
			return at, 0, fmt.Errorf("%q are no metres", strings.TrimSpace(length))
		}
		return at, 0, fmt.Errorf("give the time and the metres, with a comma between: %s, %s", clock, toml.Number(j.Metres))
	}
	if at.Before(j.Began) {
		return at, 0, fmt.Errorf("it began to run at %s", d.Clock(j.Began))
	}
	return at, metres, nil
}
