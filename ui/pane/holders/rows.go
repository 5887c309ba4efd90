package holders

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"time"

	"bide/plan"
	"bide/ui/pane"
)

// holderRow is one holder in the list.
type holderRow struct {
	*pane.Shared
	number    int // from 1
	usage     *plan.Usage
	condition plan.Condition
	stint     *plan.Stint // in the picked job; nil while that isn't known
	idle      time.Duration
	indexes   int // that it is idle, around the picked one
	next      int // turn from the picked one on in which it cuts, -1 none
	focused   bool
}

// newRow is what is known of a holder, seen from the picked job.
func newRow(d *pane.Shared, number int, focused bool) holderRow {
	r := holderRow{Shared: d, number: number, condition: d.Beam.Holders[number-1], next: -1, focused: focused}
	use := d.Use()
	if number > len(use.Holders) {
		return r
	}
	r.usage = &use.Holders[number-1]
	r.next = use.Next(number, d.JobAt)
	if s := use.Step(d.JobAt); s >= 0 {
		r.stint = &r.usage.Stints[s]
		r.indexes, r.idle = r.usage.Spell(s)
	}
	return r
}

// order is what a list of holders is sorted by.
type order uint8

const (
	byNumber order = iota
	byIdle
	byNext
	byMoves
	byMetres
	byEdge
	byState
	orders
)

var orderWords = [orders]string{"number", "idle time", "next job", "moves", "metres", "blade metres", "condition"}

// compare is the order of two holders: what maintenance looks for first.
func (o order) compare(a, b holderRow) int {
	switch o {
	case byIdle:
		return cmp.Compare(b.idle, a.idle)
	case byNext:
		return cmp.Compare(a.needed(), b.needed())
	case byMoves:
		return cmp.Compare(b.movesToday(), a.movesToday())
	case byMetres:
		return cmp.Compare(b.metresToday(), a.metresToday())
	case byEdge:
		x, _ := a.worn()
		y, _ := b.worn()
		return cmp.Compare(y, x)
	case byState:
		return cmp.Compare(b.condition, a.condition)
	}
	return 0
}

// needed is the job, by index, for which it is next needed, far off when it isn't.
func (r holderRow) needed() int {
	if r.next < 0 {
		return math.MaxInt
	}
	return r.next
}

func (r holderRow) movesToday() int {
	if r.usage == nil {
		return 0
	}
	return r.usage.Moves
}

func (r holderRow) metresToday() float64 {
	if r.usage == nil {
		return 0
	}
	return r.usage.Metres
}

// rows are the holders that the filter lets through, sorted.
func (p *Pane) rows(d *pane.Shared, focused bool) []holderRow {
	var out []holderRow
	f := &p.filter
	for n := 1; n <= len(d.Beam.Holders); n++ {
		r := newRow(d, n, focused)
		if !f.On() || f.Lets(r.words()...) {
			out = append(out, r)
		}
	}
	slices.SortStableFunc(out, p.by.compare)
	if p.turned {
		slices.Reverse(out)
	}
	return out
}

// words are what a filter looks in.
func (r holderRow) words() []string {
	out := []string{fmt.Sprintf("%d h%d", r.number, r.number), r.condition.String(), r.does(), r.blade()}
	if m, ok := r.Actual.Marks[r.number]; ok {
		out = append(out, "condition "+m.Reason)
	}
	switch {
	case r.usage == nil:
	case r.usage.Never():
		out = append(out, "never used")
	case r.movesToday() > 0:
		out = append(out, "moved today")
	}
	if r.stint != nil && r.stint.Way != 0 {
		out = append(out, "moves")
	}
	if r.stint != nil && r.stint.Use != plan.Cutting {
		out = append(out, "idle")
	}
	return out
}

// does is what it does in the picked job.
func (r holderRow) does() string {
	switch {
	case r.stint == nil:
		return ""
	case r.stint.Use == plan.Cutting:
		return fmt.Sprintf("cut %d", r.stint.Cut)
	case r.stint.Use == plan.Resting:
		return "resting"
	}
	return "parked"
}

// blade is what it carries, as the positions have it.
func (r holderRow) blade() string {
	blades := r.Start.Positions.Blades
	if r.number > len(blades) || !blades[r.number-1].Known() {
		return ""
	}
	b := blades[r.number-1]
	return fmt.Sprintf("%g/%g", b.Bevel, b.Tip)
}

// worn is how many metres its blade had cut when the positions were recorded.
func (r holderRow) worn() (metres float64, known bool) {
	if all := r.Start.Positions.Metres; r.number <= len(all) {
		return all[r.number-1], true
	}
	return 0, false
}
