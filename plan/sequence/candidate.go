package sequence

import (
	"slices"
	"time"

	"bide/plan"
)

// candidate is a day in the making: an order of jobs, a layout for each, and the
// positions before each turn.
type candidate struct {
	order     []int            // job of each turn
	choices   []choice         // by job
	positions []plan.Positions // positions[i] are those before turn i
	sums      []plan.Score     // sums[i] is of the turns before i
	clocks    []time.Time
	guess     int64 // its estimate
}

// choice is one layout that a job allows.
type choice struct {
	slits   []plan.Length // cut widths, operator side first
	entries []int         // order of the entries, where they may change places
	shift   plan.Length
	cuts    []plan.Length
}

// newCandidate is the candidate of n jobs that begins with the positions.
func newCandidate(start *plan.Positions, clock time.Time, choices []choice) *candidate {
	n := len(choices)
	t := &candidate{
		choices:   choices,
		positions: make([]plan.Positions, n+1),
		sums:      make([]plan.Score, n+1),
		clocks:    make([]time.Time, n+1),
	}
	for i := range n {
		t.order = append(t.order, i)
	}
	t.positions[0].Take(start) // others read it too
	t.clocks[0] = clock
	return t
}

// take gives t the order and choices of another candidate. Choices are shared: one is
// replaced, never changed.
func (t *candidate) take(other *candidate) {
	t.order = append(t.order[:0], other.order...)
	t.choices = append(t.choices[:0], other.choices...)
}

// copyPositions gives t the positions up to a turn of another candidate.
func (t *candidate) copyPositions(other *candidate, turn int) {
	for i := 0; i <= turn; i++ {
		t.positions[i].Take(&other.positions[i])
		t.sums[i], t.clocks[i] = other.sums[i], other.clocks[i]
	}
}

// like reports whether two candidates have one order and one set of layouts.
func (t *candidate) like(other *candidate) bool {
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

// joins reports whether t has the positions of the other before a turn.
func (t *candidate) joins(other *candidate, turn int) bool {
	a, b := &t.positions[turn], &other.positions[turn]
	return a.Job == b.Job && a.Wick == b.Wick && slices.Equal(a.At, b.At) && slices.Equal(a.Blades, b.Blades)
}

// follow lets t go on from a turn as the other does, from which it differs in
// nothing that comes.
func (t *candidate) follow(other *candidate, turn int) {
	for i := turn + 1; i <= len(t.order); i++ {
		t.positions[i].Take(&other.positions[i])
		t.sums[i] = t.sums[turn].Plus(other.sums[i].Minus(other.sums[turn]))
		t.clocks[i] = t.clocks[turn].Add(other.clocks[i].Sub(other.clocks[turn]))
	}
}

// clone is a copy of the candidate that shares no memory with it but the choices'.
func (t *candidate) clone() *candidate {
	c := newCandidate(&t.positions[0], t.clocks[0], slices.Clone(t.choices))
	c.take(t)
	c.copyPositions(t, len(t.order))
	return c
}

// begin lets the candidate begin with a step that is begun already.
func (t *candidate) begin(s *plan.Step) {
	t.clocks[1] = s.RunEnd
	t.sums[1] = t.sums[0]
	t.sums[1].Add(s)
	t.positions[0].Advance(&t.positions[1], s.Job, s.Changeover.Holders)
}

// moves counts the repositions from turn to turn.
func (t *candidate) moves() (n int) {
	for turn := range t.order {
		n += differing(t.positions[turn].At, t.positions[turn+1].At)
	}
	return n
}

// differing counts the holders that stand elsewhere.
func differing(a, b []plan.Length) (n int) {
	for i := range a {
		if a[i] != b[i] {
			n++
		}
	}
	return n
}
