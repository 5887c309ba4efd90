package changeover_test

import (
	"fmt"
	"slices"
	"strings"

	"bide/plan"
)

// One changeover as a mixed-integer program, from the model in words and nothing
// else: which holder takes which cut, who stays, who rests or is parked. Unit: 0.1
// mm, so that all data are whole numbers and the solvers' tolerances far below one.
//
//	y_i        place of holder i             s     shift, in its window
//	z_i_m      1 if holder i takes cut m     r_i   1 if holder i is repositioned
//	o_i        1 if it rests over the web    p_i, q_i  1 if parked to the left, right
//	t_i        its travel
//
// Every "if" is a row with the least constant that frees it: holder i can only be
// between lo_i and hi_i, where the others leave it room.
type program struct {
	beam     *plan.Beam
	standing []plan.Length
	layout   plan.Layout // at shift 0
	window   [2]plan.Length
	rows     strings.Builder
	binaries []string
	bounds   []string
}

const grid = plan.Millimetre / 10

// steps is a length in grid steps, which it is a whole number of.
func steps(l plan.Length) int {
	if l%grid != 0 {
		panic(fmt.Sprintf("%d is off the grid", l))
	}
	return int(l / grid)
}

// row adds one constraint.
func (p *program) row(format string, args ...any) { fmt.Fprintf(&p.rows, " "+format+"\n", args...) }

// binary names a 0/1 variable.
func (p *program) binary(format string, args ...any) string {
	name := fmt.Sprintf(format, args...)
	p.binaries = append(p.binaries, name)
	return name
}

// newProgram writes the rows that hold whatever is aimed at.
func newProgram(b *plan.Beam, standing []plan.Length, l plan.Layout, from, to plan.Length) *program {
	p := &program{beam: b, standing: standing, layout: l, window: [2]plan.Length{from, to}}
	p.bounds = append(p.bounds, fmt.Sprintf("%d <= s <= %d", steps(from), steps(to)))
	for i := range standing {
		p.holder(i)
		p.use(i)
		for m := range l.Cuts {
			p.take(i, m)
		}
		if !b.Holders[i].Moves() {
			p.fixed(i)
		}
	}
	for m := range l.Cuts {
		p.heldOnce(m)
	}
	if n := len(l.Cuts); n > 0 {
		p.row("s >= %d", steps(b.Rail.From)-steps(l.Cuts[0]))
		p.row("s <= %d", steps(b.Rail.To)-steps(l.Cuts[n-1]))
	}
	return p
}

// reach is where holder i can be at all: the others stand a pitch apart beside it.
func (p *program) reach(i int) (lo, hi int) {
	pitch := steps(p.beam.Pitch())
	return steps(p.beam.Rail.From) + i*pitch, steps(p.beam.Rail.To) - (len(p.standing)-1-i)*pitch
}

// holder: the rail, the pitch to the next, and that it stays unless repositioned.
func (p *program) holder(i int) {
	lo, hi := p.reach(i)
	x := steps(p.standing[i])
	p.bounds = append(p.bounds, fmt.Sprintf("%d <= y_%d <= %d", lo, i, hi))
	if i > 0 {
		p.row("y_%d - y_%d >= %d", i, i-1, steps(p.beam.Pitch()))
	}
	p.binary("r_%d", i)
	p.row("y_%d - %d r_%d <= %d", i, max(hi-x, 0), i, x)
	p.row("y_%d + %d r_%d >= %d", i, max(x-lo, 0), i, x)
	p.row("t_%d - y_%d >= %d", i, i, -x)
	p.row("t_%d + y_%d >= %d", i, i, x)
}

// use: a holder takes one cut or rests or is parked. The edge of the web counts as
// over it; where resting is forbidden, idle ones keep the store gap.
func (p *program) use(i int) {
	lo, hi := p.reach(i)
	from, to := steps(p.layout.Web.From), steps(p.layout.Web.To)
	uses := []string{p.binary("p_%d", i), p.binary("q_%d", i)}
	if p.beam.RestOverWeb {
		uses = append(uses, p.binary("o_%d", i))
		p.row("y_%d - %d o_%d >= %d", i, from-min(lo, from), i, min(lo, from))
		p.row("y_%d + %d o_%d <= %d", i, max(hi, to)-to, i, max(hi, to))
	} else {
		gap := max(steps(p.beam.ParkClearance), 1)
		left, right := from-gap, to+gap
		p.row("y_%d + %d p_%d <= %d", i, max(hi, left)-left, i, max(hi, left))
		p.row("y_%d - %d q_%d >= %d", i, right-min(lo, right), i, min(lo, right))
	}
	for m := range p.layout.Cuts {
		uses = append(uses, fmt.Sprintf("z_%d_%d", i, m))
	}
	p.row("%s = 1", strings.Join(uses, " + "))
}

// take: a holder with a cut stands on it, or within position_tolerance if it stayed.
func (p *program) take(i, m int) {
	lo, hi := p.reach(i)
	cut, near := steps(p.layout.Cuts[m]), steps(p.beam.PositionTolerance)
	first, last := cut+steps(p.window[0]), cut+steps(p.window[1])
	z := p.binary("z_%d_%d", i, m)
	if !p.beam.Holders[i].Cuts() {
		p.row("%s = 0", z)
		return
	}
	above, below := max(hi-first, 0), max(last-lo, 0)
	p.row("y_%d - s + %d %s + %d r_%d <= %d", i, above, z, near, i, cut+above+near)
	p.row("y_%d - s - %d %s - %d r_%d >= %d", i, below, z, near, i, cut-below-near)
}

// fixed: one that can't move stays, a pitch from every cut that another takes.
func (p *program) fixed(i int) {
	p.row("r_%d = 0", i)
	x, pitch := steps(p.standing[i]), steps(p.beam.Pitch())
	for m, cut := range p.layout.Cuts {
		first, last := steps(cut+p.window[0]), steps(cut+p.window[1])
		if left := takers(0, i, m); left != nil { // the cut is to the left of it
			big := max(last-x+pitch, 0)
			p.row("s + %s <= %d", scaled(big, left), x-pitch-steps(cut)+big)
		}
		if right := takers(i+1, len(p.standing), m); right != nil {
			big := max(x+pitch-first, 0)
			p.row("s - %s >= %d", strings.ReplaceAll(scaled(big, right), "+", "-"), x+pitch-steps(cut)-big)
		}
	}
}

// takers names the variables of holders from..to-1 for the cut.
func takers(from, to, m int) []string {
	var out []string
	for i := from; i < to; i++ {
		out = append(out, fmt.Sprintf("z_%d_%d", i, m))
	}
	return out
}

// scaled is the sum of the variables, each times a factor.
func scaled(factor int, names []string) string {
	out := slices.Clone(names)
	for k := range out {
		out[k] = fmt.Sprintf("%d %s", factor, out[k])
	}
	return strings.Join(out, " + ")
}

// heldOnce: one holder for each cut, and the next cut's holder further on. The
// second follows from the places; it is given to make the relaxation tight.
func (p *program) heldOnce(m int) {
	n := len(p.standing)
	p.row("%s = 1", strings.Join(takers(0, n, m), " + "))
	if m == 0 {
		return
	}
	for i := range n {
		row := strings.Join(takers(0, i+1, m), " + ")
		if i > 0 {
			row += " - " + strings.Join(takers(0, i, m-1), " - ")
		}
		p.row("%s <= 0", row)
	}
}

// The aims, as sums over the holders.
var aims = [3][]string{{"r"}, {"p", "q"}, {"t"}}

// aim is the text of one aim's sum.
func (p *program) aim(k int) string {
	var terms []string
	for i := range p.standing {
		for _, v := range aims[k] {
			terms = append(terms, fmt.Sprintf("%s_%d", v, i))
		}
	}
	return strings.Join(terms, " + ")
}

// text is the program in CPLEX-LP form with one aim, the aims before it held: half
// a step above their least, which whole numbers can't use and the solvers' sums may.
func (p *program) text(aim int, held []int) string {
	var out strings.Builder
	fmt.Fprintf(&out, "Minimize\n obj: %s\nSubject To\n%s", p.aim(aim), p.rows.String())
	for k, most := range held {
		fmt.Fprintf(&out, " %s <= %d.5\n", p.aim(k), most)
	}
	fmt.Fprintf(&out, "Bounds\n %s\nBinary\n %s\nEnd\n", strings.Join(p.bounds, "\n "), strings.Join(p.binaries, "\n "))
	return out.String()
}
