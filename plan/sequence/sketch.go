package sequence

import (
	"bide/plan"
	"time"
)

// sketch reckons quickly about what the day of a tour costs whose layouts are
// chosen: it counts the cuts at which no holder can have been kept since an earlier
// job cut there, as FloorOfOrder does, and leaves out where idle holders go and
// which holders push others along. That is some per cent too little, but of two
// tours that differ a little it nearly always tells the better one, and in a small
// part of the time that planning takes. So a search looks at the sketch first and
// plans only what passes (delayed acceptance: Christen & Fox 2005, Journal of
// Computational and Graphical Statistics 14:795, doi:10.1198/106186005X76983, less
// their correction, since here only the best tour counts).
//
// Kept places lie at least a pitch apart, since a cut ends all that are nearer. So
// a turn costs one pass over them and the job's cuts.
type sketch struct {
	beam   *plan.Beam
	move   time.Duration     // about what a move takes
	first  []time.Duration   // by job: setup besides moves when it comes first
	setup  [][]time.Duration // by two jobs: setup besides moves of the second
	kept   []keptPlace       // before the turn that comes next, ascending
	spare  []keptPlace       // memory for the turn after
	ending [][]int16         // by two turns: places kept from one until the other
	until  []int             // by turn: places of those running that are kept until then
}

// keptPlace is where a holder may have been kept since its last use.
type keptPlace struct {
	at   plan.Length
	last int // turn, -1 for the start
}

func newSketch(b *plan.Beam, start *plan.Standing, jobs []*plan.Job) *sketch {
	s := &sketch{beam: b, move: b.Drive.Typical(), until: make([]int, len(jobs)+1)}
	for _, u := range jobs {
		s.first = append(s.first, b.SetupTime(start, u, &plan.Changeover{}).Total())
		before, row := jobLeft(u), []time.Duration(nil)
		for _, j := range jobs {
			row = append(row, b.SetupTime(&before, j, &plan.Changeover{}).Total())
		}
		s.setup = append(s.setup, row)
		s.ending = append(s.ending, make([]int16, len(jobs)+1))
	}
	return s
}

// left is what a job leaves behind for the next, besides places and blades.
func jobLeft(j *plan.Job) plan.Standing {
	return plan.Standing{Job: j.ID, Material: j.Material, Web: j.Web, SetBar: j.SetBar, SiliconeFree: j.SiliconeFree}
}

// begin sets the places of a standing.
func (s *sketch) begin(at []plan.Length) {
	s.kept = s.kept[:0]
	for _, x := range at {
		s.kept = append(s.kept, keptPlace{x, -1})
	}
	for i := range s.ending {
		clear(s.ending[i])
	}
}

// pass goes on by a turn, and returns how many of its cuts no holder can have been
// kept at.
func (s *sketch) pass(turn int, web plan.Span, cuts []plan.Length) (arrivals int) {
	pitch, gap, m, out := s.beam.Pitch(), max(s.beam.StoreGap, plan.Nanometre), 0, s.spare[:0]
	for _, p := range s.kept {
		for ; m < len(cuts) && cuts[m] <= p.at-pitch; m++ {
			out = append(out, keptPlace{cuts[m], turn})
			arrivals++
		}
		switch {
		case m < len(cuts) && plan.Abs(cuts[m]-p.at) <= s.beam.InPlace:
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
func (s *sketch) scarce(cuts func(turn int) int) (lost int) {
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

// sketch chooses the layouts that are to be chosen anew, and returns about what the
// tour's day costs.
func (k *seeker) sketch(t *tour) int64 {
	s, sum, clock := k.rough, plan.Score{}, t.clocks[0]
	s.begin(t.stands[0].At)
	for turn, j := range t.order {
		if k.redo[j] {
			was := t.choices[j].shift
			t.choices[j] = k.choose(t, turn)
			k.slide(t, turn+1, t.choices[j].shift-was)
		}
		moves, setup := s.pass(turn, k.p.Beam.WebOf(k.jobs[j].Web), t.choices[j].cuts), s.first[j]
		if turn > 0 {
			setup = s.setup[t.order[turn-1]][j]
		}
		setup += time.Duration(moves) * s.move
		sum.Repositions += moves
		sum.Setup += setup
		if k.due {
			clock = k.hand(&sum, clock, j, setup)
		}
	}
	lost := s.scarce(func(turn int) int { return len(t.choices[t.order[turn]].cuts) })
	sum.Repositions += lost
	sum.Setup += time.Duration(lost) * s.move
	return energy(sum, k.aim, k.move)
}

// hand counts the lateness of job j in, which is set up from the clock on, and
// returns when it ends.
func (k *seeker) hand(sum *plan.Score, clock time.Time, j int, setup time.Duration) time.Time {
	step := plan.Step{Job: k.jobs[j], SetupStart: clock, Setup: plan.SetupTime{Every: setup}}
	step.Clock()
	sum.Tell(step.Late)
	return step.RunEnd
}
