package session

import (
	"time"

	"bide/plan"
)

// TimeNow is what the clock on the wall shows, in the day's zone, to the second. In an invented
// day time stands where its plan begins.
func (d *Session) TimeNow() time.Time {
	if d.Journal.Invented() {
		return d.Start.Clock.At
	}
	return d.Journal.Clock().In(d.Shop.Day.Start.Location())
}

// begins is when the day begins with these positions: not before now, where it is a day
// that is worked by.
func (d *Session) begins(now *plan.Positions) plan.Clock {
	switch {
	case d.Journal.Invented():
		return d.Start.Clock
	case d.Journal.Asked():
		day := *d.Shop.Day
		day.Now = d.TimeNow().Truncate(time.Minute)
		return day.Begins(now)
	}
	return d.Shop.Day.Begins(now)
}

// Opened lets a day that is worked by begin now, and says so where it was to begin earlier.
func (d *Session) Opened() {
	if d.FollowClock() && d.Journal.Asked() {
		d.Say("planned from now, %[2]s: the day was to begin at %[1]s", d.Clock(d.Shop.Day.Start), d.Clock(d.Start.Clock.At))
	}
}

// FollowClock lets the day go on: what is still to come is planned from now on, its jobs in their
// order and set as they were, at later times. It reports whether the minute is another.
func (d *Session) FollowClock() bool {
	clock := d.begins(d.Actual.Positions)
	if clock.At.Equal(d.Start.Clock.At) {
		return false
	}
	d.Forecast.At(clock)
	if d.Offer != nil {
		d.Offer.At(clock)
	}
	d.Refresh()
	d.followPlan()
	return true
}
