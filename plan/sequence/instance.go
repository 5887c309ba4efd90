package sequence

import (
	"slices"
	"time"

	"bide/plan"
	"bide/plan/floor"
)

// instance is the day to be planned: what all parts of a search read and none of them
// changes. They share one, side by side.
type instance struct {
	beam   *plan.Beam
	start  *plan.Positions
	clock  plan.Clock    // when the first setup begins
	listed *plan.DayPlan // the sequence given
	steps  []*plan.Step  // of that
	jobs   []*plan.Job   // of those: the ones that can be run
	aim    plan.Aim
	move   time.Duration // about what a move takes

	rules   plan.Rules
	inOrder bool         // the sequence stays as it is
	due     bool         // there are due times
	windows []plan.Span  // by job: the shifts that it allows
	pinned  []bool       // by job: it runs, or the beam is being set up for it, so it stays as it is
	begun   []*plan.Step // by job: its step where it is pinned and comes first, else nil
	laid    []bool       // by job: its layout was chosen and stays

	// Of each two jobs, the second after the first.
	common [][]int           // most cuts that they can have in common
	apart  [][]int           // how far they are apart; behind the last job from the start
	least  [][]int64         // the least energy of the changeover
	setup  [][]time.Duration // the setup besides moves and blades
	first  []time.Duration   // by job: the same when it comes first
}

func newInstance(listed *plan.DayPlan, aim plan.Aim) *instance {
	b := listed.Beam
	in := &instance{beam: b, start: listed.Start, clock: listed.Begins, listed: listed, steps: listed.Steps(), jobs: listed.Jobs(), aim: aim, move: b.TypicalMove()}
	var begun *plan.Job
	if len(in.jobs) > 0 && in.setting(in.jobs[0]) && in.jobs[0].Fixed == 0 {
		begun = in.jobs[0]
	}
	in.rules = plan.RulesOf(in.jobs, listed.Done, begun)
	_, in.inOrder = in.rules.Only()
	in.laid = make([]bool, len(in.jobs))
	in.begun = make([]*plan.Step, len(in.jobs))
	for i, j := range in.jobs {
		in.pinned = append(in.pinned, j.State == plan.Running || in.setting(j))
		if in.pinned[i] && i == 0 { // planned from the same start
			in.begun[i] = in.steps[i]
		}
		from, to := b.Window(j)
		in.windows = append(in.windows, plan.Span{From: from, To: to})
		in.due = in.due || !j.Due.IsZero()
	}
	in.comparePairs()
	return in
}

// setting reports whether the beam is being set up for a job.
func (in *instance) setting(j *plan.Job) bool {
	return in.start.Begun != nil && in.start.Begun.Job == j.ID
}

// comparePairs works out what is known of each two jobs beforehand.
func (in *instance) comparePairs() {
	n := floor.NeedsOf(in.beam, in.jobs)
	in.apart = floor.Distances(in.beam, in.start.At, in.jobs, n)
	for u, job := range in.jobs {
		in.first = append(in.first, in.beam.SetupTime(in.start, job, &plan.Changeover{}).Total())
		common, least, setup := make([]int, len(n)), make([]int64, len(n)), make([]time.Duration, len(n))
		for j := range n {
			common[j] = meeting(&n[u], &n[j])
			before := jobLeft(job, in.jobs[j])
			setup[j] = in.beam.SetupTime(&before, in.jobs[j], &plan.Changeover{}).Total()
			least[j] = energy(plan.Score{Setup: setup[j], Repositions: in.apart[u][j]}, in.aim, in.move)
		}
		in.common, in.least, in.setup = append(in.common, common), append(in.least, least), append(in.setup, setup)
	}
}

// meeting is the most cuts that the layouts of two jobs have in common at any
// shifts that they allow.
func meeting(a, b *floor.Needs) int {
	lo, hi := a.Window.From-b.Window.To, a.Window.To-b.Window.From // shift of a less shift of b
	var differ []plan.Length
	for _, x := range a.Listed {
		for _, y := range b.Listed {
			if d := y - x; d >= lo && d <= hi {
				differ = append(differ, d)
			}
		}
	}
	slices.Sort(differ)
	most, run := 0, 0
	for i, d := range differ {
		if i > 0 && d == differ[i-1] {
			run++
		} else {
			run = 1
		}
		most = max(most, run)
	}
	return most
}

// jobLeft is what a job leaves behind for the next, besides places and blades. The wicks are
// those of the job, or those of a job further back where it has none: then they are taken
// to be the next one's, so that what follows from it is never too much.
func jobLeft(j, next *plan.Job) plan.Positions {
	left := plan.Positions{Job: j.ID, Material: j.Material, Web: j.Web, SetBar: j.SetBar, SiliconeFree: j.SiliconeFree, Wick: j.Wick, Pistons: j.Pistons}
	if left.Wick == "" {
		left.Wick = next.Wick
	}
	return left
}

// fixed is the instance with its sequence kept, whatever rule it breaks, and layouts that
// were chosen for a job kept too.
func (in *instance) fixed() *instance {
	out := *in
	out.inOrder, out.rules = true, plan.Rules{None: true}
	out.laid = make([]bool, len(in.jobs))
	for i, s := range in.steps {
		out.laid[i] = in.jobs[i].Chosen.Lays(s.Layout.Slits, s.Layout.Shift)
	}
	return &out
}

// free reports whether a job leaves any choice of layout.
func (in *instance) free(j int) bool {
	return !in.pinned[j] && !in.laid[j] && (in.windows[j].Length() > 0 || in.jobs[j].Arrange != plan.AsListed && len(in.jobs[j].Entries) > 1)
}

// locked reports whether there is nothing to search for: one order, and no choice
// of layouts.
func (in *instance) locked() bool {
	fixed := 0
	for j, turn := range in.rules.Fixed {
		if in.free(j) {
			return false
		}
		if turn >= 0 {
			fixed++
		}
	}
	return len(in.jobs)-fixed < 2
}

// timed reports whether setup times are needed to compare orders.
func (in *instance) timed() bool { return in.aim == plan.AimMinutes || in.due }

// given is the sequence given with its layouts; the positions in between are not set.
func (in *instance) given() *candidate {
	choices := make([]choice, len(in.jobs))
	for i, s := range in.steps {
		l := &s.Layout
		choices[i] = choice{slits: l.Slits, shift: l.Shift, cuts: l.Cuts, entries: plan.EntriesOf(in.jobs[i], l.Slits)}
	}
	return newCandidate(in.start, in.clock.At, choices)
}

// by is the clock of the day at a time.
func (in *instance) by(at time.Time) plan.Clock {
	return plan.Clock{At: at, Calendar: in.clock.Calendar}
}

// run counts the lateness of job j in, which is set up from the clock on in the time
// given, and returns when it ends.
func (in *instance) run(sum *plan.Score, clock time.Time, j int, setup time.Duration) time.Time {
	step := plan.Step{Job: in.jobs[j], Setup: plan.SetupTime{Every: setup}}
	step.Clock(in.by(clock))
	sum.AddLate(step.Late)
	return step.RunEnd
}
