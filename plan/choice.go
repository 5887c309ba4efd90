package plan

import (
	"slices"
	"time"
)

// Chosen is how a search laid a job out, among the layouts that the job allows, and which
// holders it left idle. The day is planned so, as long as the job still allows the layout
// and it can be set, until the job is planned anew.
type Chosen struct {
	Slits []Length // cut widths, operator side first
	Shift Length   // from centred, + to the drive side
	Idle  *Idle    // nil where only the layout was chosen
}

// Idle says which holders don't cut in a job, and where those go that move. All others
// cut, in their order. It stands for the places of all holders, and still does when one is
// found elsewhere that doesn't cut. Moves and Setup are what the changeover took as it was
// chosen: one that takes more is chosen no longer.
type Idle struct {
	Holders []Rest // in ascending order of their numbers
	Moves   int    // repositions
	Setup   time.Duration
}

// Rest is one holder of a job, numbered from 1, that is idle, or cuts and goes to its cut
// though it could cut from where it stands (see Beam.PositionTolerance).
type Rest struct {
	Number int
	Cuts   bool
	Moved  bool   // idle, it goes elsewhere
	To     Length // where it goes then
}

// setupStep is to what a chosen changeover's setup is kept: above what it took.
const setupStep = 100 * time.Millisecond

// Choose is what a step has chosen for its job.
func (b *Beam) Choose(s *Step) *Chosen {
	took := s.Setup.Total() + setupStep - 1
	idle := &Idle{Moves: s.Changeover.Repositions, Setup: took - took%setupStep}
	for i, h := range s.Changeover.Holders {
		from := s.Changeover.From[i]
		switch moved := h.At != from; {
		case h.Use != Cutting && moved:
			idle.Holders = append(idle.Holders, Rest{Number: i + 1, Moved: true, To: h.At})
		case h.Use != Cutting:
			idle.Holders = append(idle.Holders, Rest{Number: i + 1})
		case moved && (from-h.At).Abs() <= b.PositionTolerance:
			idle.Holders = append(idle.Holders, Rest{Number: i + 1, Cuts: true})
		}
	}
	return &Chosen{Slits: s.Layout.Slits, Shift: s.Layout.Shift, Idle: idle}
}

// Same reports whether two choices are the same, none being one of them.
func (c *Chosen) Same(o *Chosen) bool {
	if c == nil || o == nil {
		return c == o
	}
	return c.Lays(o.Slits, o.Shift) && c.Idle.same(o.Idle)
}

// Lays reports whether that layout was chosen.
func (c *Chosen) Lays(slits []Length, shift Length) bool {
	return c != nil && c.Shift == shift && slices.Equal(c.Slits, slits)
}

func (d *Idle) same(o *Idle) bool {
	if d == nil || o == nil {
		return d == o
	}
	return d.Moves == o.Moves && d.Setup == o.Setup && slices.Equal(d.Holders, o.Holders)
}

// Chooses reports whether there is anything to choose in the job's layout.
func (j *Job) Chooses() bool { return j.Shift == Free || j.Arrange != AsListed }

// LaidLike reports whether both jobs allow the same layouts, as far as the jobs say:
// what was chosen for one of them may be kept for the other.
func (j *Job) LaidLike(o *Job) bool {
	return j.Web == o.Web && j.Trim == o.Trim && j.Shift == o.Shift && j.Arrange == o.Arrange && slices.Equal(j.Entries, o.Entries)
}

// Arranges reports whether cut widths, operator side first, are the job's slits in an
// order that it allows.
func (j *Job) Arranges(slits []Length) bool {
	listed := j.Slits()
	switch j.Arrange {
	case AsListed:
		return slices.Equal(slits, listed)
	case ByEntries:
		_, ok := entryOrder(j.Entries, slits)
		return ok
	}
	slits = slices.Clone(slits)
	slices.Sort(slits)
	slices.Sort(listed)
	return slices.Equal(slits, listed)
}

// EntriesOf is an order of the job's entries in which their slits are those given; as
// listed where there is none.
func EntriesOf(j *Job, slits []Length) []int {
	if order, ok := entryOrder(j.Entries, slits); ok {
		return order
	}
	order := make([]int, len(j.Entries))
	for e := range order {
		order[e] = e
	}
	return order
}
