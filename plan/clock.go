package plan

import (
	"math"
	"time"
)

// SetupTime is what the changeover to a job takes, from the positions now. Unknown
// material counts as another one, an unknown web as another width, an unknown set
// pressure as another pressure; a holder whose blade is unknown is taken to carry
// what is wanted, and no clean-down is counted from unknown material. A job that
// runs already, as the holders are, takes none.
func (b *Beam) SetupTime(now *Positions, j *Job, c *Changeover) SetupTime {
	if j.State == Running && now.Job == j.ID && c.Repositions == 0 {
		return SetupTime{}
	}
	t := SetupTime{Every: b.Setup.Every}
	for i := range c.Holders {
		if now.swaps(j, c, i) {
			t.Swaps++
		}
	}
	t.Positioner, t.Carriage = b.Drive.Time(c.Moves, b.Pitch())
	t.Crew = shared(t.Swaps, b.Setup.Crew, b.Setup.Blade)
	if now.Material != j.Material || now.Web != j.Web {
		t.Rethread = b.Setup.Rethread
	}
	if j.SiliconeFree && now.Material != "" && !now.SiliconeFree {
		t.CleanDown = b.Setup.CleanDown
	}
	if now.SetBar == 0 || now.SetBar != j.SetBar {
		t.Pressure = b.Setup.Pressure
	}
	return t
}

// swaps reports whether holder i, from 0, is to cut with another blade than it carries.
func (now *Positions) swaps(j *Job, c *Changeover, i int) bool {
	return c.Holders[i].Use == Cutting && i < len(now.Blades) && now.Blades[i].Known() && j.Blade.Known() && now.Blades[i] != j.Blade
}

// shared is how long a crew takes over n equal pieces of work, one person a piece.
func shared(n, crew int, each time.Duration) time.Duration {
	crew = max(crew, 1)
	return time.Duration((n+crew-1)/crew) * each
}

// Time is how long the positioner takes over the moves in their order, and how far
// its carriage goes, its way from home and back included.
func (d *Drive) Time(moves []Move, pitch Length) (time.Duration, Length) {
	switch {
	case len(moves) == 0:
		return 0, 0
	case d.Kind == ByHand:
		return shared(len(moves), d.Crew, d.Hand), 0
	case d.Kind == OwnDrive:
		return d.together(moves, pitch), 0
	}
	at, way, t := d.Home, Length(0), time.Duration(0)
	for _, m := range moves {
		t += d.Travel((m.From - at).Abs()) + d.Pick + d.Travel((m.To - m.From).Abs()) + d.Set
		way += (m.From - at).Abs() + (m.To - m.From).Abs()
		at = m.To
	}
	return t + d.Travel((d.Home - at).Abs()), way + (d.Home - at).Abs()
}

// together is how long the moves take when each holder drives itself and starts as
// soon as the neighbour it waits for has been set. The order lists that neighbour
// just before it.
func (d *Drive) together(moves []Move, pitch Length) time.Duration {
	var longest, end time.Duration
	for i, m := range moves {
		start := time.Duration(0)
		if i > 0 && waits(m, moves[i-1], pitch) {
			start = end
		}
		end = start + d.Pick + d.Travel((m.To - m.From).Abs()) + d.Set
		longest = max(longest, end)
	}
	return longest
}

// waits reports whether move m can be made only after the move of a neighbour.
func waits(m, before Move, pitch Length) bool {
	switch m.Holder {
	case before.Holder - 1:
		return m.To > before.From-pitch
	case before.Holder + 1:
		return m.To < before.From+pitch
	}
	return false
}

// Begins is when a day that is under way goes on: when the positions were recorded, if
// that was in the day, else at the day's start.
func (d *Day) Begins(now *Positions) time.Time {
	const day = 24 * time.Hour
	if now.Recorded.After(d.Start) && now.Recorded.Before(d.Start.Add(day)) {
		return now.Recorded
	}
	return d.Start
}

// Travel is how long one move of that length takes: a trapezoid of speed, a
// triangle where the way is too short to reach full speed. To the microsecond.
func (d *Drive) Travel(way Length) time.Duration {
	s, v, a := float64(way), float64(d.Speed), float64(d.Acceleration)
	t := 0.0
	switch {
	case way == 0 || v <= 0:
	case a <= 0:
		t = s / v
	case s*a < v*v:
		t = 2 * math.Sqrt(s/a)
	default:
		t = s/v + v/a
	}
	return time.Duration(math.Round(t*1e6)) * time.Microsecond
}

// Typical is about what one more move takes, for weighing moves against time.
func (d *Drive) Typical() time.Duration {
	if d.Kind == ByHand {
		return max(d.Hand/time.Duration(max(d.Crew, 1)), time.Millisecond)
	}
	return max(d.Pick+d.Set, time.Second)
}

// Clock sets when the step's job is set up, runs and ends, and how late that is.
func (s *Step) Clock() {
	s.RunStart = s.SetupStart.Add(s.Setup.Total())
	s.RunEnd = s.RunStart.Add(s.Job.RunTime())
	s.Late = 0
	if !s.Job.Due.IsZero() {
		s.Late = max(s.RunEnd.Sub(s.Job.Due), 0)
	}
}

// RunTime is how long a job runs: what it takes with ramps where that is known, else its
// length over its speed. To the microsecond.
func (j *Job) RunTime() time.Duration {
	switch {
	case j.Takes > 0:
		return j.Takes
	case j.Speed <= 0:
		return 0
	}
	return time.Duration(math.Round(j.Metres/j.Speed*60e6)) * time.Microsecond
}

// Swaps lists the holders, by number, that are to cut the job with another blade than
// they carry: those that the setup time counts.
func (now *Positions) Swaps(j *Job, c *Changeover) (holders []int) {
	for i := range c.Holders {
		if now.swaps(j, c, i) {
			holders = append(holders, i+1)
		}
	}
	return holders
}
