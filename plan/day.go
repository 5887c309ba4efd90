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
	RunStart   time.Time
	RunEnd     time.Time
	Late       time.Duration // behind the job's due time; nought when in time or none is given
}

// SetupTime is what one changeover takes, by cause. Positioner and crew work side
// by side; all else comes one after the other.
type SetupTime struct {
	Positioner time.Duration // all moves, the carriage's way back home included
	Crew       time.Duration // blade swaps, shared by the crew
	Every      time.Duration
	Rethread   time.Duration
	CleanDown  time.Duration
	Pressure   time.Duration
	Swaps      int    // blades swapped
	Carriage   Length // the carriage's way; nought without one
}

// Total is the setup from the last good roll to the first.
func (s SetupTime) Total() time.Duration {
	return max(s.Positioner, s.Crew) + s.Every + s.Rethread + s.CleanDown + s.Pressure
}

// Refusal is a job that the beam can't run, with every reason.
type Refusal struct {
	Job    *Job
	Faults []Fault
}

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
	Beam    *Beam
	Start   *Standing
	Done    int // jobs of the day that are done: the first turns
	Steps   []Step
	Refused []Refusal
	Totals  Totals
	// Floor bounds the repositions: of this order when it is listed, of any order
	// when it is the best found; nil where nothing above nought is proven.
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
