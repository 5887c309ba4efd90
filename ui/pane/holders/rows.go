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
	Number    int // from 1
	Usage     *plan.Usage
	condition plan.Condition
	stint     *plan.Stint // in the picked job; nil while that isn't known
	idle      time.Duration
	indexes   int // that it is idle, around the picked one
	next      int // turn from the picked one on in which it cuts, -1 none
	focused   bool
}

// NewRow is what is known of a holder, seen from the picked job.
func NewRow(d *pane.Shared, number int, focused bool) holderRow {
	r := holderRow{Shared: d, Number: number, condition: d.Forecast.Beam.Holders[number-1], next: -1, focused: focused}
	use := d.Use()
	if number > len(use.Holders) {
		return r
	}
	r.Usage = &use.Holders[number-1]
	r.next = use.Next(number, d.JobAt)
	if s := use.Step(d.JobAt); s >= 0 {
		r.stint = &r.Usage.Stints[s]
		r.indexes, r.idle = r.Usage.Spell(s)
	}
	return r
}

// Order is what a list of holders is sorted by.
type Order uint8

const (
	ByNumber Order = iota
	ByIdle
	ByNext
	ByMoves
	ByMetres
	ByEdge
	ByState
	Orders
)

var OrderWords = [Orders]string{"number", "idle time", "next job", "moves", "metres", "blade metres", "condition"}

// compare is the order of two holders: what maintenance looks for first.
func (o Order) compare(a, b holderRow) int {
	switch o {
	case ByIdle:
		return cmp.Compare(b.idle, a.idle)
	case ByNext:
		return cmp.Compare(a.needed(), b.needed())
	case ByMoves:
		return cmp.Compare(b.movesToday(), a.movesToday())
	case ByMetres:
		return cmp.Compare(b.metresToday(), a.metresToday())
	case ByEdge:
		x, _ := a.worn()
		y, _ := b.worn()
		return cmp.Compare(y, x)
	case ByState:
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
	if r.Usage == nil {
		return 0
	}
	return r.Usage.Moves
}

func (r holderRow) metresToday() float64 {
	if r.Usage == nil {
		return 0
	}
	return r.Usage.Metres
}

// Rows are the holders that the filter lets through, sorted.
func (p *Pane) Rows(d *pane.Shared, focused bool) []holderRow {
	var out []holderRow
	f := &p.filter
	for n := 1; n <= len(d.Forecast.Beam.Holders); n++ {
		r := NewRow(d, n, focused)
		if !f.On() || f.Lets(r.words()...) {
			out = append(out, r)
		}
	}
	slices.SortStableFunc(out, p.By.compare)
	if p.turned {
		slices.Reverse(out)
	}
	return out
}

// words are what a filter looks in.
func (r holderRow) words() []string {
	out := []string{fmt.Sprintf("%d h%d", r.Number, r.Number), r.condition.String(), r.does(), r.blade()}
	if m, ok := r.Actual.Marks[r.Number]; ok {
		out = append(out, "condition "+m.Reason)
	}
	switch {
	case r.Usage == nil:
	case r.Usage.Never():
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
	blades := r.Forecast.Start.Positions.Blades
	if r.Number > len(blades) || !blades[r.Number-1].Known() {
		return ""
	}
	b := blades[r.Number-1]
	return fmt.Sprintf("%g/%g", b.Bevel, b.Tip)
}

// worn is how many metres its blade had cut when the positions were recorded.
func (r holderRow) worn() (metres float64, known bool) {
	if all := r.Forecast.Start.Positions.Metres; r.Number <= len(all) {
		return all[r.Number-1], true
	}
	return 0, false
}
