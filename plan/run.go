package plan

import (
	"math"
	"time"
)

// Line is how the web comes up to speed and stops, and what its stops take.
type Line struct {
	RampUp, RampDown float64 // m/s2; 0 means at once
	SetChange        Stop    // a set of finished rolls: stop, cut over, unload, cores, start
	ParentChange     Stop    // a parent roll
	ParentMetres     float64 // on a parent roll, where neither job nor material says so; 0 unknown
}

// Ramps reports whether the web is known to take time to come up to speed or to stop.
func (l *Line) Ramps() bool { return l.RampUp > 0 || l.RampDown > 0 }

// Stop is what a stop of the web takes. Where no file says so it is not counted.
type Stop struct {
	Takes time.Duration
	Given bool
}

// Run is what a run takes: the web running, from rest to rest between its stops, and the
// stops.
type Run struct {
	Web           time.Duration // ramps included
	Stops         time.Duration
	SetChanges    int // sets of finished rolls taken off before the last
	ParentChanges int
	Legs          int // from rest to rest
}

// Total is how long the run takes where nothing breaks it off.
func (r Run) Total() time.Duration { return r.Web + r.Stops }

// apartM is how near to each other, in metres of web, two ends of rolls are one stop, and
// the end of a roll is the run's.
const apartM = 1e-6

// Run is what it takes to run a job: a stop after each set of finished rolls but the last,
// and after each parent roll but at the run's end; where both fall together it is one stop
// that takes the time of both. What isn't known of a job or the line isn't counted, nor what
// a job that isn't done has run already. It takes time linear in the stops.
func (l *Line) Run(j *Job) (r Run) {
	if j.Speed <= 0 {
		return Run{}
	}
	seconds, at := 0.0, 0.0
	if j.State != Done {
		at = min(j.Ran, j.Metres)
	}
	sets, parents := ended(j.SetMetres, at), ended(j.ParentMetres, at)
	for {
		set, parent := endOf(j.SetMetres, sets+r.SetChanges+1), endOf(j.ParentMetres, parents+r.ParentChanges+1)
		stop := min(set, parent)
		if stop > j.Metres-apartM {
			break
		}
		if set < stop+apartM {
			r.SetChanges++
		}
		if parent < stop+apartM {
			r.ParentChanges++
		}
		seconds += RestToRest(stop-at, j.Speed, l.RampUp, l.RampDown)
		at = stop
		r.Legs++
	}
	seconds += RestToRest(j.Metres-at, j.Speed, l.RampUp, l.RampDown)
	r.Legs++
	r.Web = time.Duration(math.Round(seconds*1e6)) * time.Microsecond
	r.Stops = time.Duration(r.SetChanges)*l.SetChange.Takes + time.Duration(r.ParentChanges)*l.ParentChange.Takes
	return r
}

// endOf is the metre at which the nth of rolls so long ends; never where that isn't known.
func endOf(metres float64, n int) float64 {
	if metres <= 0 {
		return math.Inf(1)
	}
	return metres * float64(n)
}

// ended is how many rolls so long have ended at a metre.
func ended(metres, at float64) int {
	if metres <= 0 {
		return 0
	}
	return int((at + apartM) / metres)
}

// Uncounted are the ids of jobs whose stops aren't counted, since not all is given that
// they follow from.
type Uncounted struct{ Sets, Parents []string }

// Uncounted is what of the plan's runs isn't counted.
func (d *DayPlan) Uncounted() Uncounted { return UncountedIn(&d.Beam.Line, d.Jobs()) }

// UncountedIn says of which jobs that is so on a line.
func UncountedIn(l *Line, jobs []*Job) (u Uncounted) {
	for _, j := range jobs {
		if !l.SetChange.Given || j.SetMetres <= 0 {
			u.Sets = append(u.Sets, j.ID)
		}
		if !l.ParentChange.Given || j.ParentMetres <= 0 {
			u.Parents = append(u.Parents, j.ID)
		}
	}
	return u
}

// RestToRest is the seconds that a length of web takes from rest to rest: up to speed,
// along, and down. Metres from 0, speed in m/min above 0, ramps in m/s2, where 0 means at
// once. A run too short for full speed is a triangle: its peak v solves
// v^2/(2 up) + v^2/(2 down) = L (any textbook of mechanics).
func RestToRest(metres, speed, up, down float64) float64 {
	v := speed / 60
	slow := inverse(up) + inverse(down) // seconds of ramps for each m/s
	if v*v*slow/2 > metres {
		return math.Sqrt(2*metres/slow) * slow
	}
	return metres/v + v*slow/2
}

// inverse is 1/rate; a rate of 0 means at once, which takes no time.
func inverse(rate float64) float64 {
	if rate == 0 {
		return 0
	}
	return 1 / rate
}
