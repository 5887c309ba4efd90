package plan

import "slices"

// Chosen is a layout that a search chose for a job among those that the job allows.
// The day is planned with it, as long as the job still allows it and it can be set,
// until something better is found.
type Chosen struct {
	Slits []Length // cut widths, operator side first
	Shift Length   // from centred, + to the drive side
}

// Same reports whether two choices are the same, none being one of them.
func (c *Chosen) Same(o *Chosen) bool {
	if c == nil || o == nil {
		return c == o
	}
	return c.Shift == o.Shift && slices.Equal(c.Slits, o.Slits)
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

// Allows reports whether the job may be laid out as chosen, whatever the holders'
// conditions: its slits in an order that it allows, at a shift of its window that keeps
// every cut out of damaged bands.
func (b *Beam) Allows(j *Job, c *Chosen) bool {
	return j.Arranges(c.Slits) && slices.ContainsFunc(b.Shifts(j, c.Slits), func(s Span) bool {
		return s.From <= c.Shift && c.Shift <= s.To
	})
}

// entriesOf is an order of the job's entries in which their slits are those given; as
// listed where there is none.
func entriesOf(j *Job, slits []Length) []int {
	if order, ok := entryOrder(j.Entries, slits); ok {
		return order
	}
	order := make([]int, len(j.Entries))
	for e := range order {
		order[e] = e
	}
	return order
}
