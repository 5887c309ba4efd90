package sequence

import (
	"context"
	"fmt"
	"math/bits"
	"math/rand/v2"
	"slices"
	"testing"
	"time"

	"bide/plan"
	"bide/plan/floor"
	"bide/plan/plantest"
	"bide/plan/verify"
)

// Tiny days, small enough to try every order and every resting place: the search
// and the floor are held against the true optimum.

// tiny is a beam of a few holders on a rail of a few nanometres, and jobs with
// fixed layouts.
func tiny(r *rand.Rand) (*plan.Beam, *plan.Positions, *plan.Day) {
	n := 2 + r.IntN(4)
	slack := 2 + r.IntN(4)
	b := &plan.Beam{HolderWidth: 2, Clearance: 1, RestOverWeb: r.IntN(3) > 0, Holders: make([]plan.Condition, n), ParkClearance: 1}
	b.Rail = plan.Span{From: 0, To: plan.Length(3*(n-1) + slack)}
	b.Web = plan.Span{From: 1, To: b.Rail.To - 1}
	if r.IntN(4) == 0 {
		b.Holders[r.IntN(n)] = plan.NoCut
	}
	at := make([]int, n)
	for i := range at {
		at[i] = r.IntN(slack + 1)
	}
	slices.Sort(at)
	s := &plan.Positions{}
	for i, x := range at {
		s.At = append(s.At, plan.Length(3*i+x))
	}
	d := &plan.Day{Start: time.Date(2026, 11, 25, 6, 0, 0, 0, time.UTC)}
	for k := range 2 + r.IntN(4) {
		j := plan.Job{ID: fmt.Sprint("T", k), Trim: 1, Metres: 1, Speed: 1}
		left := b.Web.Length() - 2
		for range 1 + r.IntN(n) {
			w := plan.Length(3 + r.IntN(3))
			if w > left {
				break
			}
			left -= w
			j.Entries = append(j.Entries, plan.Entry{Count: 1, Finished: w, Width: w})
		}
		j.Web = plan.Sum(j.Slits()) + 2 + plan.Length(r.IntN(int(left)+1))
		if len(j.Entries) > 0 {
			d.Jobs = append(d.Jobs, j)
		}
	}
	return b, s, d
}

// placings are all ways to stand on the rail.
func placings(b *plan.Beam) (out [][]plan.Length) {
	var place func(at []plan.Length, from plan.Length)
	place = func(at []plan.Length, from plan.Length) {
		if len(at) == len(b.Holders) {
			out = append(out, slices.Clone(at))
			return
		}
		for x := from; x <= b.Rail.To; x++ {
			place(append(at, x), x+b.Pitch())
		}
	}
	place(nil, b.Rail.From)
	return out
}

// sets reports whether a placing holds the layout, from first principles.
func sets(b *plan.Beam, l plan.Layout, at []plan.Length) bool {
	cut := 0
	for i, x := range at {
		switch {
		case cut < len(l.Cuts) && x == l.Cuts[cut]:
			if !b.Holders[i].Cuts() {
				return false
			}
			cut++
		case !b.RestOverWeb && x > l.Web.From-max(b.ParkClearance, 1) && x < l.Web.To+max(b.ParkClearance, 1):
			return false
		}
	}
	return cut == len(l.Cuts)
}

func moved(a, b []plan.Length) (n int) {
	for i := range a {
		if a[i] != b[i] {
			n++
		}
	}
	return n
}

// optimum is the fewest repositions over all orders of jobs in which each may come
// when the set before it has been run, the layouts that each of them may take, and all
// resting places; none where there is no such order.
func optimum(b *plan.Beam, start []plan.Length, layouts [][]plan.Layout, may func(before, j int) bool) int {
	all := placings(b)
	valid := make([][][]plan.Length, len(layouts))
	for j := range layouts {
		for _, at := range all {
			if slices.ContainsFunc(layouts[j], func(l plan.Layout) bool { return sets(b, l, at) }) {
				valid[j] = append(valid[j], at)
			}
		}
	}
	best := make([][][]int, 1<<len(layouts)) // set of jobs run, last job, placing
	for set := 1; set < len(best); set++ {
		best[set] = make([][]int, len(layouts))
		for j := range layouts {
			before := set &^ (1 << j)
			if set&(1<<j) == 0 || !may(before, j) {
				continue
			}
			for _, at := range valid[j] {
				least := 1 << 30
				if before == 0 {
					least = moved(start, at)
				}
				for u := range layouts {
					if before&(1<<u) == 0 || best[before][u] == nil {
						continue
					}
					for v, from := range valid[u] {
						least = min(least, best[before][u][v]+moved(from, at))
					}
				}
				best[set][j] = append(best[set][j], least)
			}
		}
	}
	least := none
	for _, ends := range best[len(best)-1] {
		for _, n := range ends {
			least = min(least, n)
		}
	}
	return least
}

// none is the optimum where no order may be run.
const none = 1 << 30

// asListed and anyOrder say when a job may come, for optimum.
func asListed(before, j int) bool { return before == 1<<j-1 }
func anyOrder(int, int) bool      { return true }

func TestTinyDays(t *testing.T) {
	t.Parallel()
	days, hit, floors, tight, enough := 0, 0, 0, 0, plantest.Worlds(45, 120)
	for seed := uint64(0); days < enough; seed++ {
		b, start, d := tiny(rand.New(rand.NewPCG(seed, 41)))
		best, err := Search(context.Background(), b, start, d, Effort{Aim: plan.AimMoves, Seed: 1})
		if err != nil {
			t.Fatalf("seed %d: %v", seed, err)
		}
		if len(best.Steps()) < 2 {
			continue
		}
		days++
		if err := verify.Plan(best); err != nil {
			t.Fatalf("seed %d: %v", seed, err)
		}
		var layouts [][]plan.Layout
		listed, _ := PlanDay(b, start, d)
		for _, s := range listed.Steps() {
			layouts = append(layouts, []plan.Layout{s.Layout})
		}
		least, inOrder := optimum(b, start.At, layouts, anyOrder), optimum(b, start.At, layouts, asListed)
		if best.Totals.Repositions < least || listed.Totals.Repositions < inOrder {
			t.Fatalf("seed %d: planned %d and %d, below the optima %d and %d", seed, best.Totals.Repositions, listed.Totals.Repositions, least, inOrder)
		}
		if best.Totals.Repositions == least {
			hit++
		}
		if best.Totals.Repositions > least {
			var lay [][]plan.Layout
			for _, s := range best.Steps() {
				lay = append(lay, []plan.Layout{s.Layout})
			}
			t.Logf("seed %d: %d jobs, %d holders: planned %d, optimum %d, of that order %d", seed, len(best.Steps()), len(start.At), best.Totals.Repositions, least, optimum(b, start.At, lay, asListed))
		}
		if f := best.Floor; f != nil && f.Repositions > least {
			t.Errorf("seed %d: floor of any order %d above the optimum %d", seed, f.Repositions, least)
		}
		if f := listed.Floor; f != nil {
			floors++
			if f.Repositions > inOrder {
				t.Errorf("seed %d: floor of the order %d above its optimum %d", seed, f.Repositions, inOrder)
			}
			if f.Repositions == inOrder {
				tight++
			}
		}
	}
	t.Logf("%d days: optimum reached on %d; a floor for %d listed orders, met by the optimum on %d", days, hit, floors, tight)
	if 100*hit < 99*days {
		t.Errorf("the optimum is reached on %d of %d days, below 99 in 100", hit, days)
	}
}

// A floor stands below what is planned also where some jobs may shift or be
// arranged anew between others that may not. The hand-made day needs no move: the
// middle job cuts where the others do.
func TestFloorsOfMixedDays(t *testing.T) {
	t.Parallel()
	b := &plan.Beam{HolderWidth: 9, Clearance: 1, Rail: plan.Span{From: 0, To: 200}, Web: plan.Span{From: 0, To: 200}, RestOverWeb: true, Holders: make([]plan.Condition, 3)}
	start := &plan.Positions{At: []plan.Length{50, 100, 150}}
	d := &plan.Day{}
	for i, rule := range []plan.ShiftRule{plan.Centred, plan.Free, plan.Centred} {
		d.Jobs = append(d.Jobs, plan.Job{ID: fmt.Sprint(i), Web: 160, Trim: 20, Shift: rule, Entries: []plan.Entry{{Count: 2, Finished: 50, Width: 50}}})
	}
	p, err := PlanDay(b, start, d)
	if err != nil || p.Totals.Repositions != 0 || p.Floor != nil {
		t.Errorf("%+v, floor %+v, %v; want no move and no floor", p.Totals, p.Floor, err)
	}
	for seed := range uint64(2000) {
		r := rand.New(rand.NewPCG(seed, 42))
		b, start, d := tiny(r)
		for i := range d.Jobs {
			d.Jobs[i].Shift, d.Jobs[i].Arrange = plan.ShiftRule(r.IntN(2)), plan.Arrange(r.IntN(3))
		}
		p, err := PlanDay(b, start, d)
		if err != nil {
			t.Fatal(err)
		}
		if p.Floor != nil && p.Floor.Repositions > p.Totals.Repositions {
			t.Errorf("seed %d: floor %d above the plan's %d", seed, p.Floor.Repositions, p.Totals.Repositions)
		}
	}
}

// allowed are all layouts that a job allows, found by trying every order of its slits
// and every shift.
func allowed(b *plan.Beam, j *plan.Job) (out []plan.Layout) {
	slits := j.Slits()
	plan.Orders(len(slits), func(order []int) {
		var in []plan.Length
		for i, e := range order {
			in = append(in, slits[e])
			if j.Arrange == plan.AsListed && i != e {
				return
			}
		}
		for shift := -b.Web.Length(); shift <= b.Web.Length(); shift++ {
			l := b.Lay(j, in, shift)
			if j.Shift == plan.Centred && shift != 0 || min(l.Trim[0], l.Trim[1]) < j.Trim {
				continue
			}
			out = append(out, l)
		}
	})
	return out
}

// The floors of days whose jobs may shift and be arranged anew, against every order,
// layout and resting place there is. One slit of one width makes an entry, so the
// entries' orders are the slits'.
func TestFloorsOfFreeDays(t *testing.T) {
	t.Parallel()
	days, enough := 0, plantest.Worlds(400, 3000)
	var proven, met [3]int
	for seed := uint64(0); days < enough; seed++ {
		r := rand.New(rand.NewPCG(seed, 43))
		b, start, d := tiny(r)
		for i := range d.Jobs {
			d.Jobs[i].Shift, d.Jobs[i].Arrange = plan.ShiftRule(r.IntN(2)), plan.Arrange(r.IntN(3))
			if r.IntN(4) == 0 {
				d.Jobs[i].Fixed = r.IntN(len(d.Jobs)+2) - 1
			}
			if r.IntN(3) == 0 {
				d.Jobs[i].After = append(d.Jobs[i].After, d.Jobs[r.IntN(len(d.Jobs))].ID)
			}
		}
		p, err := PlanDay(b, start, d)
		if err != nil {
			t.Fatal(err)
		}
		if len(p.Steps()) < 2 {
			continue
		}
		days++
		var layouts [][]plan.Layout
		for _, j := range p.Jobs() {
			layouts = append(layouts, allowed(b, j))
		}
		ruled, between := &search{instance: newInstance(p, plan.AimMoves)}, plan.RulesOf(p.Jobs(), 0, nil)
		unruled := plan.Rules{After: make([][]int, len(p.Steps())), Fixed: slices.Repeat([]int{-1}, len(p.Steps())), None: true}
		keeps := func(before, j int) bool {
			for _, i := range between.After[j] {
				if before&(1<<i) == 0 {
					return false
				}
			}
			return between.Fixed[j] < 0 || between.Fixed[j] == bits.OnesCount(uint(before))
		}
		for i, c := range []struct {
			*plan.Floor
			may func(before, j int) bool
		}{{p.Floor, asListed}, {floor.OfAnyOrder(start.At, floor.NeedsOf(b, p.Jobs()), ruled.apart, &unruled), anyOrder}, {ruled.provenFloor(), keeps}} {
			if c.Floor == nil {
				continue
			}
			proven[i]++
			switch least := optimum(b, start.At, layouts, c.may); {
			case c.Repositions > least:
				t.Errorf("seed %d: floor %d (%s) above the optimum %d", seed, c.Repositions, c.By, least)
			case c.Repositions == least:
				met[i]++
			}
		}
	}
	t.Logf("%d days: floors for %d of the orders listed, %d of all and %d that keep rules, met by the optimum on %d", days, proven[0], proven[1], proven[2], met)
	if min(met[0], met[1], met[2]) < days/4 {
		t.Errorf("of %d days the optimum meets the floors of %d", days, met)
	}
}
