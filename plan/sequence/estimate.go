package sequence

import (
	"time"

	"bide/plan"
)

// estimator works out quickly about what the day of a candidate costs whose layouts are
// chosen: it counts the cuts at which no holder can have been kept since an earlier
// job cut there, as floor.OfOrder does, and leaves out where idle holders go and
// which holders push others along. That is some per cent too little, but of two
// candidates that differ a little it nearly always picks the better one, and in a small
// part of the time that planning takes. So a search looks at the estimate first and
// plans only what passes (delayed acceptance: Christen & Fox 2005, Journal of
// Computational and Graphical Statistics 14:795, doi:10.1198/106186005X76983, less
// their correction, since here only the best candidate counts).
//
// Kept places lie at least a pitch apart, since a cut ends all that are nearer. So
// a turn costs one pass over them and the job's cuts.
type estimator struct {
	*instance
	kept   []keptPlace // before the turn that comes next, ascending
	spare  []keptPlace // memory for the turn after
	ending [][]int16   // by two turns: places kept from one until the other
	until  []int       // by turn: places of those running that are kept until then
	sum    plan.Score
	clock  time.Time
}

// keptPlace is where a holder may have been kept since its last use.
type keptPlace struct {
	at   plan.Length
	last int // turn, -1 for the start
}

func newEstimator(in *instance) *estimator {
	n := len(in.jobs) + 1
	s := &estimator{instance: in, until: make([]int, n)}
	for range n - 1 {
		s.ending = append(s.ending, make([]int16, n))
	}
	return s
}

// begin starts a day from positions.
func (s *estimator) begin(at []plan.Length, clock time.Time) {
	s.kept, s.sum, s.clock = s.kept[:0], plan.Score{}, clock
	for _, x := range at {
		s.kept = append(s.kept, keptPlace{x, -1})
	}
	for i := range s.ending {
		clear(s.ending[i])
	}
}

// turn goes on by a turn of the candidate, whose layout is chosen.
func (s *estimator) turn(t *candidate, turn int) {
	j := t.order[turn]
	moves, setup := s.pass(turn, s.beam.WebOf(s.jobs[j].Web), t.choices[j].cuts), s.first[j]
	if turn > 0 {
		setup = s.setup[t.order[turn-1]][j]
	}
	setup += time.Duration(moves) * s.move
	s.sum.Repositions += moves
	s.sum.Setup += setup
	if s.due {
		s.clock = s.run(&s.sum, s.clock, j, setup)
	}
}

// end is the energy of the day, all turns passed.
func (s *estimator) end(t *candidate) int64 {
	lost := s.scarce(func(turn int) int { return len(t.choices[t.order[turn]].cuts) })
	s.sum.Repositions += lost
	s.sum.Setup += time.Duration(lost) * s.move
	return energy(s.sum, s.aim, s.move)
}

// pass goes on by a turn, and returns how many of its cuts no holder can have been
// kept at.
func (s *estimator) pass(turn int, web plan.Span, cuts []plan.Length) (arrivals int) {
	pitch, gap, m, out := s.beam.Pitch(), max(s.beam.ParkClearance, plan.Nanometre), 0, s.spare[:0]
	for _, p := range s.kept {
		for ; m < len(cuts) && cuts[m] <= p.at-pitch; m++ {
			out = append(out, keptPlace{cuts[m], turn})
			arrivals++
		}
		switch {
		case m < len(cuts) && (cuts[m]-p.at).Abs() <= s.beam.PositionTolerance:
			out = append(out, keptPlace{p.at, turn})
			s.ending[p.last+1][turn]++
			m++
		case m < len(cuts) && cuts[m] < p.at+pitch: // too near: it must go
		case s.beam.RestOverWeb || p.at <= web.From-gap || p.at >= web.To+gap:
			out = append(out, p)
		}
	}
	for ; m < len(cuts); m++ {
		out = append(out, keptPlace{cuts[m], turn})
		arrivals++
	}
	s.kept, s.spare = out, s.kept
	return arrivals
}

// scarce counts the places that can't be kept after all for want of holders, given
// how many cuts each turn has; see keeping.
func (s *estimator) scarce(cuts func(turn int) int) (lost int) {
	n, running := len(s.ending), 0
	clear(s.until)
	for turn := range n {
		for end := turn + 1; end < n; end++ {
			s.until[end] += int(s.ending[turn][end])
			running += int(s.ending[turn][end])
		}
		running -= s.until[turn]
		s.until[turn] = 0
		drop := running - max(len(s.beam.Holders)-cuts(turn), 0)
		for last := n - 1; drop > 0; last-- {
			d := min(drop, s.until[last])
			s.until[last] -= d
			running, drop, lost = running-d, drop-d, lost+d
		}
	}
	return lost
}
