package plan

import "time"

// ShiftRule says whether a job's layout may move sideways inside its trim.
type ShiftRule uint8

// The shift rules.
const (
	Centred ShiftRule = iota // half the trim on each side
	Free                     // anywhere that keeps the least trim on both sides
)

// Arrange says which slits of a job may change places.
type Arrange uint8

// The arrangement rules.
const (
	AsListed   Arrange = iota
	ByEntries          // entries may change places, each entry's slits stay side by side
	AnyArrange         // any slit anywhere
)

// State is how far a job of the day has come.
type State uint8

// The states of a job.
const (
	Waiting State = iota
	Running
	Done
	OnHold
)

// String is the state as files hold it.
func (s State) String() string { return [...]string{"waiting", "running", "done", "hold"}[s] }

// Entry is a run of equal slits side by side.
type Entry struct {
	Count    int
	Finished Length // width the customer gets
	Width    Length // width cut: finished width with the material's allowance, rounded once
}

// Blade is the edge a holder carries or a job wants. The zero Blade is unknown.
type Blade struct {
	Bevel float64 // included angle, degrees
	Tip   float64 // tip radius, mm
}

// Known reports whether the blade has been described.
func (b Blade) Known() bool { return b != Blade{} }

// Pistons are those that press one blade. The zero Pistons are the beam's own.
type Pistons struct {
	Number int
	Area   float64 // of one, mm2
}

// Roll is what a job's file says of its rolls: 0 is unknown.
type Roll struct {
	Core, Diameter Length  // outside of a finished roll's core, and of the roll
	Metres         float64 // on a finished roll
	Parent         float64 // metres on a parent roll
}

// Job is one order of the day.
type Job struct {
	ID       string
	Material string
	Web      Length
	Entries  []Entry // operator side first
	Trim     Length  // least edge trim on each side
	Shift    ShiftRule
	Arrange  Arrange
	Metres   float64 // to run
	Speed    float64 // m/min
	Roll     Roll
	Due      time.Time
	After    []string // ids of jobs that come before
	State    State
	Fixed    int     // fixed number in the sequence from 1, -1 the last, 0 none
	Unbroken bool    // its run may not be broken off
	Chosen   *Chosen // how an earlier search laid it out; nil when none did

	Customer, Note string // shown and printed; no plan depends on them

	// What is recorded of a job that runs or is done; zero is unknown.
	Began, Ended time.Time // its run
	Ran          float64   // metres that it has run: in all once it is done, else before it began

	// What its rolls, its line and its material make of it.
	SetMetres    float64 // on each finished roll; 0 is unknown, and isn't counted
	ParentMetres float64 // on a parent roll, likewise
	Run          Run     // none is length over speed
	Blade        Blade
	SetBar       float64 // set pressure, bar; 0 unknown
	SiliconeFree bool    // blades and felts must be clean of silicone first
	Wick         string  // its wicking and fluid; empty for none
	Pistons      Pistons // what presses its blades; none is the shop's own
	Uncut        string  // why no pressure of the beam parts it, with the numbers; empty when one does
}

// Slits are the cut widths as listed, operator side first.
func (j *Job) Slits() []Length {
	var out []Length
	for _, e := range j.Entries {
		for range e.Count {
			out = append(out, e.Width)
		}
	}
	return out
}

// Day is a day's jobs in the order of its file.
type Day struct {
	Start, End time.Time // of the first and the last shift; End is zero when not given
	Zone       string    // that the file names for its times; empty for none
	Now        time.Time // it is planned from then on, if that is later; zero where no clock counts
	Calendar   *Calendar // its shifts and pauses; nil where it has neither
	Aim        Aim       // what it is planned for
	Jobs       []Job
}

// Positions are where every holder stands now, what it carries, and what the beam
// last ran.
type Positions struct {
	At       []Length  // by number; At[0] is holder 1
	Blades   []Blade   // by number; nil or zero Blades are unknown
	Metres   []float64 // cut with the edge, by number; nil is unknown
	Recorded time.Time
	Job      string // what the beam last ran; empty is unknown
	Material string
	Web      Length
	SetBar   float64
	// SiliconeFree is what the material last run asked for.
	SiliconeFree bool
	Wick         string  // fitted; empty is none, or unknown
	Pistons      Pistons // fitted
	Assumed      bool    // no file: holders taken to stand evenly spread
	// Begun is the changeover that is under way; nil when none is. Job, Material,
	// Web and SetBar are then still those of the job before.
	Begun *Begun
}
