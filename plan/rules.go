package plan

import (
	"cmp"
	"slices"
)

// Rules are what an order of the day's jobs must keep: jobs that come before
// others, fixed numbers, and the job that is running, which comes first.
type Rules struct {
	After [][]int // after[j]: jobs (indices) that must come before job j
	Fixed []int   // fixed number from 0, -1 none
	None  bool
}

// RulesOf are the rules among the jobs, which are those that can be planned; what
// they ask of jobs that are not among them is taken as done. Turns count the day's
// jobs that are done, so many, as its first. A number beyond the last is the last.
//
// The beam is being set up for the job begun, which comes first like one that runs; nil
// where that isn't so.
func RulesOf(jobs []*Job, done int, begun *Job) Rules {
	r := Rules{After: make([][]int, len(jobs)), Fixed: make([]int, len(jobs)), None: true}
	byID := map[string]int{}
	for i, j := range jobs {
		byID[j.ID] = i
	}
	for i, j := range jobs {
		for _, id := range j.After {
			if before, ok := byID[id]; ok && before != i {
				r.After[i] = append(r.After[i], before)
			}
		}
		r.Fixed[i] = -1
	}
	r.fix(jobs, done, begun)
	for i := range jobs {
		r.None = r.None && r.Fixed[i] < 0 && len(r.After[i]) == 0
	}
	return r
}

// fix gives the jobs with a fixed number theirs, running ones and the one begun first.
// Where jobs that can't be planned leave fewer numbers than were counted on, those fixed
// keep their order and close up.
func (r *Rules) fix(jobs []*Job, done int, begun *Job) {
	first := func(j *Job) bool { return j.State == Running || j == begun }
	wanted := func(j *Job) int {
		switch {
		case first(j):
			return -1
		case j.Fixed < 0:
			return max(len(jobs)+j.Fixed, 0)
		}
		return max(min(j.Fixed-done, len(jobs))-1, 0)
	}
	var fixed []int
	for i, j := range jobs {
		if first(j) || j.Fixed != 0 {
			fixed = append(fixed, i)
		}
	}
	slices.SortStableFunc(fixed, func(a, b int) int {
		// Of two that want the same number, one counted from the end comes later.
		return cmp.Or(cmp.Compare(wanted(jobs[a]), wanted(jobs[b])), -cmp.Compare(jobs[a].Fixed, jobs[b].Fixed))
	})
	next := 0
	for _, i := range fixed {
		r.Fixed[i] = max(wanted(jobs[i]), next)
		next = r.Fixed[i] + 1
	}
	last := len(jobs)
	for n := len(fixed) - 1; n >= 0; n-- {
		r.Fixed[fixed[n]] = min(r.Fixed[fixed[n]], last-1)
		last = r.Fixed[fixed[n]]
	}
}

// Precedence says of each two jobs whether the one comes before the other in every
// order that keeps the rules: because the other comes after it, directly or not, or
// comes later.
func (r *Rules) Precedence() [][]bool {
	n := len(r.Fixed)
	before := make([][]bool, n)
	for i := range before {
		before[i] = make([]bool, n)
	}
	for j := range n {
		for _, i := range r.After[j] {
			before[i][j] = true
		}
		for i := range n {
			if i != j && r.Fixed[j] >= 0 && (r.Fixed[i] >= 0 && r.Fixed[i] < r.Fixed[j] || r.Fixed[i] < 0 && r.Fixed[j] == n-1) {
				before[i][j] = true
			}
			if i != j && r.Fixed[j] == 0 {
				before[j][i] = true
			}
		}
	}
	for k := range n {
		for i := range n {
			for j := range n {
				before[i][j] = before[i][j] || before[i][k] && before[k][j]
			}
		}
	}
	return before
}

// Only is the order of the jobs where each of them has a fixed number of its own.
func (r *Rules) Only() (order []int, one bool) {
	order = make([]int, len(r.Fixed))
	for j, number := range r.Fixed {
		if number < 0 || number >= len(order) {
			return nil, false
		}
		order[number] = j
	}
	return order, r.Kept(order)
}

// Kept reports whether the order keeps the rules.
func (r *Rules) Kept(order []int) bool {
	if r.None {
		return true
	}
	for at, j := range order {
		if r.Fixed[j] >= 0 && r.Fixed[j] != at {
			return false
		}
		for _, before := range r.After[j] {
			if slices.Index(order, before) > at {
				return false
			}
		}
	}
	return true
}

// Mend is an order near to the one given that keeps the rules: fixed numbers first,
// then to each number left the job that may come next and must come soonest, the
// first in the order of several. For jobs of one turn each that is exact (earliest
// deadline first: Horn 1974, Naval Research Logistics 21:177), so ok is false only
// where no order keeps the rules.
func (r *Rules) Mend(order []int) (out []int, ok bool) {
	if r.Kept(order) {
		return order, true
	}
	fixed, placed, latest := map[int]int{}, make([]bool, len(order)), r.latest()
	for _, j := range order {
		if t := r.Fixed[j]; t >= 0 {
			if _, taken := fixed[t]; taken {
				return order, false
			}
			fixed[t] = j
		}
	}
	for at := range order {
		pick, there := fixed[at]
		if !there {
			pick = -1
			for _, j := range order {
				if !placed[j] && r.Fixed[j] < 0 && r.ready(j, placed) && (pick < 0 || latest[j] < latest[pick]) {
					pick = j
				}
			}
		}
		if pick < 0 {
			return order, false
		}
		placed[pick] = true
		out = append(out, pick)
	}
	return out, r.Kept(out)
}

// ready reports whether all that must come before the job has been placed.
func (r *Rules) ready(j int, placed []bool) bool {
	for _, before := range r.After[j] {
		if !placed[before] {
			return false
		}
	}
	return true
}

// latest is the last number that each job can have for those that must follow it to
// keep their fixed numbers.
func (r *Rules) latest() []int {
	out := make([]int, len(r.Fixed))
	for j, t := range r.Fixed {
		out[j] = len(out) - 1
		if t >= 0 {
			out[j] = t
		}
	}
	for range out { // a chain is at most as long as the day
		for j := range out {
			for _, before := range r.After[j] {
				out[before] = min(out[before], out[j]-1)
			}
		}
	}
	return out
}

// Breach is a rule that an order breaks, and the job whose rule it is.
type Breach struct {
	Job *Job
	Fault
}

// Broken lists the rules that an order of jobs breaks; the jobs are those that can
// be planned, and so many of the day are done before them.
func Broken(jobs []*Job, done int) []Breach {
	var out []Breach
	r := RulesOf(jobs, done, nil)
	for at, j := range jobs {
		breach := func(key, words string, args ...any) { out = append(out, Breach{j, NewFault(key, words, args...)}) }
		switch t := r.Fixed[at]; {
		case t < 0 || t == at:
		case j.State == Running:
			breach("state", "job %s is running and is number %d, after one that waits", j.ID, done+at+1)
		default:
			breach("fixed", "job %s is fixed at number %d in the sequence and comes at number %d", j.ID, done+t+1, done+at+1)
		}
		for _, before := range r.After[at] {
			if before > at {
				breach("after", "job %s is to come after %s and comes before it", j.ID, jobs[before].ID)
			}
		}
	}
	return out
}
