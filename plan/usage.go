package plan

import (
	"cmp"
	"slices"
	"time"
)

// Stint is what one holder does in one step of a day.
type Stint struct {
	Use    Use
	Cut    int           // the cut it holds, from 1 at the operator side; 0 when idle
	At     Length        // where it stands while the job runs
	Way    Length        // how far it was moved to get there, + to the drive side; 0 where it stays
	Metres float64       // cut in the run; 0 when idle
	Time   time.Duration // of setup and run
}

// Usage is what a planned day makes of one holder.
type Usage struct {
	Stints   []Stint // by step
	Moves    int
	Travel   Length        // of all its moves
	Metres   float64       // cut in all
	Cuts     int           // steps in which it cuts
	Idle     int           // steps in which it doesn't
	IdleTime time.Duration // of those, setups and runs
}

// Usages says for each holder, by number, what the planned steps make of it. All
// steps are of one beam. It takes time and memory in proportion to holders times
// steps, and gives none for no steps.
func Usages(steps []*Step) []Usage {
	if len(steps) == 0 {
		return nil
	}
	n := len(steps)
	out := make([]Usage, len(steps[0].Changeover.Holders))
	all := make([]Stint, n*len(out))
	for h := range out {
		u := &out[h]
		u.Stints = all[h*n : (h+1)*n : (h+1)*n]
		for i := range steps {
			u.add(i, stintOf(steps[i], h))
		}
	}
	return out
}

// stintOf is what holder h, from 0, does in a step.
func stintOf(s *Step, h int) Stint {
	stand := s.Changeover.Holders[h]
	st := Stint{Use: stand.Use, Cut: stand.Cut, At: stand.At, Way: stand.At - s.Changeover.From[h], Time: s.RunEnd.Sub(s.SetupStart)}
	if st.Use == Cutting {
		st.Metres = s.Job.Metres
	}
	return st
}

// add counts the stint in step i.
func (u *Usage) add(i int, s Stint) {
	u.Stints[i] = s
	if s.Way != 0 {
		u.Moves++
		u.Travel += s.Way.Abs()
	}
	if s.Use == Cutting {
		u.Cuts++
		u.Metres += s.Metres
		return
	}
	u.Idle++
	u.IdleTime += s.Time
}

// Never reports whether the day leaves the holder idle throughout.
func (u *Usage) Never() bool { return u.Cuts == 0 }

// Next is the first step from the given one on, that one too, in which the holder
// cuts; -1 when there is none.
func (u *Usage) Next(step int) int {
	for i := max(step, 0); i < len(u.Stints); i++ {
		if u.Stints[i].Use == Cutting {
			return i
		}
	}
	return -1
}

// Last is the last step before the given one in which the holder cuts; -1 when
// there is none.
func (u *Usage) Last(step int) int {
	for i := min(step, len(u.Stints)) - 1; i >= 0; i-- {
		if u.Stints[i].Use == Cutting {
			return i
		}
	}
	return -1
}

// Touched is the first step after the given one in which the holder cuts or is moved;
// -1 when there is none. Until then it is left alone: it may be worked on, or taken out,
// and the plan stays as it is.
func (u *Usage) Touched(step int) int {
	for i := max(step+1, 0); i < len(u.Stints); i++ {
		if u.Stints[i].Use == Cutting || u.Stints[i].Way != 0 {
			return i
		}
	}
	return -1
}

// Spell is the run of steps without a cut that the given step lies in: how many
// there are and how long they take, from the one after the holder's last cut to the
// one before its next, or to an end of the day. Zeros where it cuts in that step.
func (u *Usage) Spell(step int) (steps int, time time.Duration) {
	if step < 0 || step >= len(u.Stints) || u.Stints[step].Use == Cutting {
		return 0, 0
	}
	end := u.Next(step)
	if end < 0 {
		end = len(u.Stints)
	}
	for _, s := range u.Stints[u.Last(step)+1 : end] {
		steps, time = steps+1, time+s.Time
	}
	return steps, time
}

// Pair is two jobs that follow each other, and what the changeover between them
// takes.
type Pair struct {
	Step        int  // of the later one, from 0
	Before      *Job // nil for the first step: what stands at the start
	Job         *Job
	Repositions int
	Travel      Length
	Setup       time.Duration
}

// Pairs are the day's changeovers, the one with the most repositions first; of
// equal ones the one with more travel, then the earlier.
func Pairs(steps []*Step) []Pair {
	out := make([]Pair, len(steps))
	for i, s := range steps {
		out[i] = Pair{Step: i, Job: s.Job, Repositions: s.Changeover.Repositions, Travel: s.Changeover.Travel, Setup: s.Setup.Total()}
		if i > 0 {
			out[i].Before = steps[i-1].Job
		}
	}
	slices.SortStableFunc(out, func(a, b Pair) int {
		return cmp.Or(b.Repositions-a.Repositions, cmp.Compare(b.Travel, a.Travel))
	})
	return out
}
