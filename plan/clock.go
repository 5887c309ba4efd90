package plan

import (
	"math"
	"time"
)

// SetupTime is what the changeover to a job takes, from the positions now. Unknown
// material counts as another one, an unknown web as another width, an unknown set
// pressure as another pressure, an unknown blade as a swap; no clean-down is counted from
// unknown material. A job without wicking leaves what is fitted. A job that runs already,
// as the holders are, takes none.
func (b *Beam) SetupTime(now *Positions, j *Job, c *Changeover) SetupTime {
	if j.State == Running && now.Job == j.ID && c.Repositions == 0 {
		return SetupTime{}
	}
	t := SetupTime{Every: b.Setup.Every, Beside: b.Setup.Beside}
	for i := range c.Holders {
		if now.swaps(j, c, i) {
			t.Swaps++
		}
	}
	t.Positioner, t.Carriage = b.PositionerTime(c.Moves)
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
	if j.Wick != "" && now.Wick != j.Wick {
		t.Wicks = b.Setup.Wicks
	}
	if now.Pistons != j.Pistons {
		t.Pistons = b.Setup.Pistons
	}
	return t
}

// swaps reports whether holder i, from 0, is to cut with another blade than it is known to
// carry.
func (now *Positions) swaps(j *Job, c *Changeover, i int) bool {
	return c.Holders[i].Use == Cutting && j.Blade.Known() && now.Blade(i) != j.Blade
}

// Blade is what holder i, from 0, carries, as far as known.
func (now *Positions) Blade(i int) Blade {
	if i < len(now.Blades) {
		return now.Blades[i]
	}
	return Blade{}
}

// shared is how long a crew takes over n equal pieces of work, one person a piece.
func shared(n, crew int, each time.Duration) time.Duration {
	crew = max(crew, 1)
	return time.Duration((n+crew-1)/crew) * each
}

// PositionerTime is how long the moves take in their order, by the positioner or by the
// crew's hands, and how far its carriage goes, its way from home and back included.
func (b *Beam) PositionerTime(moves []Move) (time.Duration, Length) {
	d := &b.Drive
	switch {
	case len(moves) == 0:
		return 0, 0
	case d.Kind == ByHand:
		return shared(len(moves), b.Setup.Crew, d.Hand), 0
	case d.Kind == OwnDrive:
		return d.together(moves, b.Pitch()), 0
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

// Begins is when a plan of the day begins: at its start, or when what is recorded ended, or
// now, whichever is the latest.
func (d *Day) Begins(now *Positions) Clock {
	at := d.Start
	later := func(t time.Time) {
		if t.After(at) {
			at = t
		}
	}
	later(now.Recorded)
	later(d.Now)
	for i := range d.Jobs {
		if d.Jobs[i].State == Done {
			later(d.Jobs[i].Ended)
		}
	}
	return Clock{at, d.Calendar}
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

// TypicalMove is about what one more move takes, for weighing moves against time.
func (b *Beam) TypicalMove() time.Duration {
	if b.Drive.Kind == ByHand {
		return max(b.Drive.Hand/time.Duration(max(b.Setup.Crew, 1)), time.Millisecond)
	}
	return max(b.Drive.Pick+b.Drive.Set, time.Second)
}

// Runs is what the run takes; length over speed where no line has said so.
func (j *Job) Runs() Run {
	if j.Run == (Run{}) {
		return new(Line).Run(j)
	}
	return j.Run
}

// RunTime is how long a job runs where nothing breaks it off.
func (j *Job) RunTime() time.Duration { return j.Runs().Total() }

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
