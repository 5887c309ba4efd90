package plan

import "time"

// Step is one job of the day as planned: its layout, the changeover to it and
// when all of that happens.
type Step struct {
	Job        *Job
	Layout     Layout
	Changeover Changeover
	Setup      SetupTime
	SetupStart time.Time
	SetupEnd   time.Time
	RunStart   time.Time
	RunEnd     time.Time
	Paused     time.Duration // from the setup's start to the run's end: closed, or waiting for a run that may not be broken off
	Late       time.Duration // behind the job's due time; 0 when in time or none is given
}

// SetupTime is what one changeover takes, by cause, one after the other: hands stay off the
// beam while holders travel.
type SetupTime struct {
	Positioner time.Duration // all moves, the carriage's way back home included
	Crew       time.Duration // blade swaps, shared by the crew
	Every      time.Duration
	Rethread   time.Duration
	CleanDown  time.Duration
	Pressure   time.Duration
	Wicks      time.Duration
	Pistons    time.Duration
	Swaps      int    // blades swapped
	Carriage   Length // the carriage's way; 0 without one
	Beside     bool   // the site swaps blades while other holders travel: the longer of the two counts
}

// Total is the setup from the last good roll to the first.
func (s SetupTime) Total() time.Duration {
	atBeam := s.Positioner + s.Crew
	if s.Beside {
		atBeam = max(s.Positioner, s.Crew)
	}
	return atBeam + s.Every + s.Rethread + s.CleanDown + s.Pressure + s.Wicks + s.Pistons
}

// Turn is one number in the sequence of a day plan: a job with its step, or with every
// fault that keeps the beam from running it.
type Turn struct {
	Job    *Job
	Step   *Step // nil where the job is refused
	Faults []Fault
}

// Refused reports whether the beam can't run the turn's job.
func (t *Turn) Refused() bool { return t.Step == nil }

// Totals sums a day up.
type Totals struct {
	Jobs        int
	Repositions int
	Setup       time.Duration
	LateJobs    int
	Late        time.Duration
}

// Sequence says where the order of a day plan comes from.
type Sequence uint8

// The sequences.
const (
	SequenceListed Sequence = iota // the order of the file
	SequenceBest                   // the best order found
)

// String is the sequence's word.
func (s Sequence) String() string { return [...]string{"listed", "best"}[s] }

// DayPlan is a whole day planned in one order.
type DayPlan struct {
	Beam   *Beam
	Start  *Positions
	Begins Clock
	Done   int // jobs of the day that are done: the first numbers in the sequence
	Turns  []Turn
	Totals Totals
	// Floor bounds the repositions: of this order when it is listed, of any order
	// when it is the best found; nil where nothing above 0 is proven.
	Floor *Floor
	// How it was planned: the sequence, and for the best one the effort.
	Sequence Sequence
	Aim      Aim
	Rounds   int
	Seed     uint64
	// Listed is the order of the file, each changeover on its own, layouts centred
	// (nearest to it where centred doesn't fit).
	Listed Totals
}

// Steps are the turns that are planned, in their sequence.
func (d *DayPlan) Steps() []*Step {
	steps := make([]*Step, 0, len(d.Turns))
	for i := range d.Turns {
		if s := d.Turns[i].Step; s != nil {
			steps = append(steps, s)
		}
	}
	return steps
}

// Refused are the turns whose jobs the beam can't run.
func (d *DayPlan) Refused() (refused []Turn) {
	for _, t := range d.Turns {
		if t.Refused() {
			refused = append(refused, t)
		}
	}
	return refused
}

// Jobs are the planned jobs in their sequence; refused ones are left out.
func (d *DayPlan) Jobs() []*Job {
	var jobs []*Job
	for i := range d.Turns {
		if t := &d.Turns[i]; !t.Refused() {
			jobs = append(jobs, t.Job)
		}
	}
	return jobs
}

// TotalsOf adds the planned turns up.
func TotalsOf(turns []Turn) (t Totals) {
	for i := range turns {
		s := turns[i].Step
		if s == nil {
			continue
		}
		t.Jobs++
		t.Repositions += s.Changeover.Repositions
		t.Setup += s.Setup.Total()
		if s.Late > 0 {
			t.LateJobs++
			t.Late += s.Late
		}
	}
	return t
}

// Planned are the turns of steps.
func Planned(steps []*Step) []Turn {
	turns := make([]Turn, len(steps))
	for i, s := range steps {
		turns[i] = Turn{Job: s.Job, Step: s}
	}
	return turns
}
