package sequence

import (
	"bide/plan"
	"slices"
	"time"
)

// tour is a day in the making: an order of jobs, a layout for each, and what
// stands before each turn.
type tour struct {
	order   []int           // job of each turn
	choices []choice        // by job
	stands  []plan.Standing // stands[i] is before turn i
	sums    []plan.Score    // sums[i] is of the turns before i
	clocks  []time.Time
	guess   int64 // its sketch
}

// choice is one layout that a job allows.
type choice struct {
	slits   []plan.Length // cut widths, operator side first
	entries []int         // order of the entries, where they may change places
	shift   plan.Length
	cuts    []plan.Length
}

// newTour is the tour of n jobs that begins with the standing.
func newTour(start *plan.Standing, clock time.Time, choices []choice) *tour {
	n := len(choices)
	t := &tour{
		choices: choices,
		stands:  make([]plan.Standing, n+1),
		sums:    make([]plan.Score, n+1),
		clocks:  make([]time.Time, n+1),
	}
	for i := range n {
		t.order = append(t.order, i)
	}
	t.stands[0].Take(start) // others read it too
	t.clocks[0] = clock
	return t
}

// take gives t the order and choices of another tour. Choices are shared: one is
// replaced, never changed.
func (t *tour) take(other *tour) {
	t.order = append(t.order[:0], other.order...)
	t.choices = append(t.choices[:0], other.choices...)
}

// stand gives t what stands up to a turn in another tour.
func (t *tour) stand(other *tour, turn int) {
	for i := 0; i <= turn; i++ {
		t.stands[i].Take(&other.stands[i])
		t.sums[i], t.clocks[i] = other.sums[i], other.clocks[i]
	}
}

// like reports whether two tours have one order and one set of layouts.
func (t *tour) like(other *tour) bool {
	if !slices.Equal(t.order, other.order) {
		return false
	}
	for j := range t.choices {
		if !slices.Equal(t.choices[j].cuts, other.choices[j].cuts) {
			return false
		}
	}
	return true
}

// joins reports whether t stands before a turn as the other tour does.
func (t *tour) joins(other *tour, turn int) bool {
	a, b := &t.stands[turn], &other.stands[turn]
	return a.Job == b.Job && slices.Equal(a.At, b.At) && slices.Equal(a.Blades, b.Blades)
}

// follow lets t go on from a turn as the other tour does, from which it differs in
// nothing that comes.
func (t *tour) follow(other *tour, turn int) {
	for i := turn + 1; i <= len(t.order); i++ {
		t.stands[i].Take(&other.stands[i])
		t.sums[i] = t.sums[turn].Plus(other.sums[i].Minus(other.sums[turn]))
		t.clocks[i] = t.clocks[turn].Add(other.clocks[i].Sub(other.clocks[turn]))
	}
}

// clone is a copy of the tour that shares no memory with it but the choices'.
func (t *tour) clone() *tour {
	c := newTour(&t.stands[0], t.clocks[0], slices.Clone(t.choices))
	c.take(t)
	c.stand(t, len(t.order))
	return c
}
