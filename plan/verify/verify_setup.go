package verify

import (
	"math"
	"time"

	"bide/plan"
)

// The verifier's part for setup times: what the beam carries, and how long a
// changeover takes it and the crew.

// carried is what stands on the beam and what it last ran.
type carried struct {
	at           []plan.Length
	blades       []plan.Blade
	material     string // empty unknown
	web          plan.Length
	bar          float64 // 0 unknown
	siliconeFree bool
	job          string       // it last ran, or runs
	wick         string       // fitted; empty none
	pistons      plan.Pistons // fitted; none are the beam's own
}

// carry copies positions; blades that it does not give are unknown.
func carry(s *plan.Positions, holders int) *carried {
	c := &carried{append([]plan.Length(nil), s.At...), make([]plan.Blade, holders), s.Material, s.Web, s.SetBar, s.SiliconeFree, s.Job, s.Wick, s.Pistons}
	copy(c.blades, s.Blades)
	return c
}

// run is what stands once the step's job runs.
func (c *carried) run(s *plan.Step) {
	j := s.Job
	c.material, c.web, c.bar, c.siliconeFree, c.job = j.Material, j.Web, j.SetBar, j.SiliconeFree, j.ID
	c.pistons = j.Pistons
	if len(j.Wick) > 0 {
		c.wick = j.Wick
	}
	for i, h := range s.Changeover.Holders {
		c.at[i] = h.At
		if h.Use == plan.Cutting && (j.Blade != plan.Blade{}) {
			c.blades[i] = j.Blade
		}
	}
}

// setup: each part by its cause.
func (v *verifier) setup(now *carried, s *plan.Step) {
	b, j, reported := v.beam, s.Job, s.Setup
	if j.State == plan.Running && now.job == j.ID && len(s.Changeover.Moves) == 0 {
		v.must(reported == plan.SetupTime{}, "the job runs already, and its setup is reported as %+v", reported)
		return
	}
	cause := func(yes bool, d time.Duration) time.Duration {
		if yes {
			return d
		}
		return 0
	}
	v.must(reported.Every == b.Setup.Every, "%v for each changeover, reported %v", b.Setup.Every, reported.Every)
	rethread := cause(now.material != j.Material || now.web != j.Web, b.Setup.Rethread)
	v.must(reported.Rethread == rethread, "rethreading takes %v, reported %v", rethread, reported.Rethread)
	clean := cause(j.SiliconeFree && !now.siliconeFree && now.material != "", b.Setup.CleanDown)
	v.must(reported.CleanDown == clean, "cleaning down takes %v, reported %v", clean, reported.CleanDown)
	pressure := cause(now.bar == 0 || now.bar != j.SetBar, b.Setup.Pressure)
	v.must(reported.Pressure == pressure, "setting the pressure takes %v, reported %v", pressure, reported.Pressure)

	wicks := cause(len(j.Wick) > 0 && j.Wick != now.wick, b.Setup.Wicks)
	v.must(reported.Wicks == wicks, "fitting wicks takes %v, reported %v", wicks, reported.Wicks)
	pistons := cause(j.Pistons != now.pistons, b.Setup.Pistons)
	v.must(reported.Pistons == pistons, "fitting pistons takes %v, reported %v", pistons, reported.Pistons)
	v.must(reported.Beside == b.Setup.Beside, "blades swapped beside the moves: %t, reported %t", b.Setup.Beside, reported.Beside)

	swaps := 0
	for i, h := range s.Changeover.Holders {
		unlike := now.blades[i] != j.Blade // an unknown one too
		if h.Use == plan.Cutting && unlike && (j.Blade != plan.Blade{}) {
			swaps++
		}
	}
	v.must(reported.Swaps == swaps, "%d blades are swapped, reported %d", swaps, reported.Swaps)
	crew := turns(swaps, b.Setup.Crew, b.Setup.Blade)
	v.must(reported.Crew == crew, "the crew takes %v, reported %v", crew, reported.Crew)
	v.positioner(s)
}

// turns is how long people take who share equal pieces of work.
func turns(pieces, people int, each time.Duration) time.Duration {
	people = max(people, 1)
	n := pieces / people
	if pieces%people > 0 {
		n++
	}
	return time.Duration(n) * each
}

// positioner: the time of the moves in their order.
func (v *verifier) positioner(s *plan.Step) {
	drive, moves := v.beam.Drive, s.Changeover.Moves
	var takes time.Duration
	var way plan.Length
	switch drive.Kind {
	case plan.Shuttle:
		takes, way = v.shuttle(moves)
	case plan.OwnDrive:
		takes = v.own(moves)
	case plan.ByHand:
		takes = turns(len(moves), v.beam.Setup.Crew, drive.Hand)
	}
	v.near("positioning", s.Setup.Positioner, takes, 2*len(moves)+1)
	v.must(s.Setup.Carriage == way, "the carriage's way is %s, reported %s", mm(way), mm(s.Setup.Carriage))
}

// shuttle follows the one carriage from home to each holder, with it, and home.
func (v *verifier) shuttle(moves []plan.Move) (takes time.Duration, way plan.Length) {
	drive := v.beam.Drive
	stops := []plan.Length{drive.Home}
	for _, m := range moves {
		stops = append(stops, m.From, m.To)
		takes += drive.Pick + drive.Set
	}
	stops = append(stops, drive.Home)
	for i, stop := range stops[1:] {
		leg := apart(stop, stops[i])
		way += leg
		takes += v.leg(leg)
	}
	return takes, way
}

// own lets every holder drive itself as soon as the neighbours in its way are set.
func (v *verifier) own(moves []plan.Move) time.Duration {
	pitch := v.beam.HolderWidth + v.beam.Clearance
	set := map[int]time.Duration{} // by holder
	old := map[int]plan.Length{}
	var longest time.Duration
	for _, m := range moves {
		var start time.Duration
		if from, moved := old[m.Holder-1]; moved && m.To < from+pitch {
			start = max(start, set[m.Holder-1])
		}
		if from, moved := old[m.Holder+1]; moved && m.To > from-pitch {
			start = max(start, set[m.Holder+1])
		}
		old[m.Holder] = m.From
		set[m.Holder] = start + v.beam.Drive.Pick + v.leg(apart(m.To, m.From)) + v.beam.Drive.Set
		longest = max(longest, set[m.Holder])
	}
	return longest
}

// leg is the time of one way that starts and ends at rest: up to speed, along and
// down again, or half of it up and half down where full speed is not reached.
func (v *verifier) leg(way plan.Length) time.Duration {
	s, speed, rate := float64(way), float64(v.beam.Drive.Speed), float64(v.beam.Drive.Acceleration)
	if way == 0 || speed <= 0 {
		return 0
	}
	seconds := s / speed
	if rate > 0 {
		ramp := speed / rate
		if ramp*speed > s {
			seconds = 2 * math.Sqrt(s/rate)
		} else {
			seconds = 2*ramp + (s-ramp*speed)/speed
		}
	}
	return time.Duration(seconds * float64(time.Second))
}
