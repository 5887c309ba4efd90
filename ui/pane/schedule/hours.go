package schedule

import (
	"time"

	"bide/ui/draw"
	"bide/ui/keys"
	"bide/ui/pane"
)

// wholeTime is the time that the schedule shows: from the day's start to the last run's
// end, due time, or the shift's end.
func wholeTime(d *pane.Shared) (from, to time.Time) {
	from, to = d.Start.Clock.At, d.Shop.Day.End
	if from.IsZero() {
		from = d.Shop.Day.Start
	}
	later := func(t time.Time) {
		if t.After(to) {
			to = t
		}
	}
	later(from.Add(time.Hour))
	for _, o := range d.Present.Known {
		later(o.Clock.At)
	}
	for _, j := range d.Jobs() {
		if !j.Due.IsZero() && j.Due.Sub(from) < 72*time.Hour {
			later(j.Due)
		}
	}
	return from, to
}

// timeView is the part of the time that is shown.
type timeView struct {
	zoom int       // how often it was halved
	from time.Time // where it begins, when it was
}

// nearestTime is how often the time may be halved.
const nearestTime = 5

// look changes what is shown: nearer, around the picked job, or along the clock.
func (v *timeView) look(a keys.Action, d *pane.Shared) {
	_, long := v.span(d)
	switch a {
	case keys.ZoomIn:
		v.zoom = min(v.zoom+1, nearestTime)
		v.center(d)
	case keys.ZoomOut:
		v.zoom = max(v.zoom-1, 0)
		v.center(d)
	case keys.WholeBeam:
		v.zoom = 0
	case keys.Left:
		v.from = v.from.Add(-long / 2)
	case keys.Right:
		v.from = v.from.Add(long / 2)
	}
	v.from, _ = v.span(d)
}

// center puts the picked job into the middle.
func (v *timeView) center(d *pane.Shared) {
	from, to := wholeTime(d)
	v.from = from
	if o := d.Outcome(d.JobAt); o != nil && len(o.Faults) == 0 {
		s := o.Step
		v.from = s.SetupStart.Add(s.RunEnd.Sub(s.SetupStart) / 2).Add(-(to.Sub(from) >> v.zoom) / 2)
	}
}

// follow brings the picked job into sight.
func (v *timeView) follow(d *pane.Shared) {
	from, long := v.span(d)
	o := d.Outcome(d.JobAt)
	if o != nil && len(o.Faults) == 0 && (o.Step.SetupStart.Before(from) || o.Step.RunEnd.After(from.Add(long))) {
		v.center(d)
	}
}

// span is where the view begins, and how long it is; it stays within the whole time.
func (v *timeView) span(d *pane.Shared) (time.Time, time.Duration) {
	from, to := wholeTime(d)
	long := to.Sub(from) >> v.zoom
	if v.zoom == 0 {
		return from, long
	}
	last := to.Add(-long)
	switch {
	case v.from.Before(from):
		return from, long
	case v.from.After(last):
		return last, long
	}
	return v.from, long
}

// timeScale maps the clock to columns.
type timeScale struct {
	from, to time.Time
	width    int
}

func (s timeScale) column(t time.Time) int {
	all := int(max(s.to.Sub(s.from), time.Minute) / time.Second)
	return draw.Floor(int(t.Sub(s.from)/time.Second)*(s.width-1), all)
}

// closed marks the columns in whose middle nobody works.
func (s timeScale) closed(d *pane.Shared, mark marking) {
	c := d.Shop.Day.Calendar
	each := s.to.Sub(s.from) / time.Duration(max(s.width-1, 1))
	for x := range s.width {
		if !c.Works(s.from.Add(time.Duration(x)*each + each/2)) {
			mark(x, draw.Faint, d.Closed)
		}
	}
}

// steps between the hours that are numbered, in minutes.
var hourSteps = []int{5, 10, 15, 30, 60, 120, 240, 480, 720, 1440, 2880}

// clocks numbers the scale.
func (s timeScale) clocks(d *pane.Shared) draw.Line {
	l := pane.NewLabels(s.width)
	all := int(s.to.Sub(s.from) / time.Minute)
	step := hourSteps[len(hourSteps)-1]
	for _, n := range hourSteps {
		if all/n*(d.ClockWidth()+4) <= s.width {
			step = n
			break
		}
	}
	by := time.Duration(step) * time.Minute
	year, month, day := s.from.Date()
	midnight := time.Date(year, month, day, 0, 0, 0, 0, s.from.Location())
	for t := midnight; !t.After(s.to); t = t.Add(by) {
		if !t.Before(s.from) {
			l.Put(s.column(t), draw.Faint, d.Tick+d.Clock(t))
		}
	}
	return draw.FromCells(d.Theme, l)
}
