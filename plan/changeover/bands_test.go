package changeover_test

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"bide/plan"
	"bide/plan/changeover"
	"bide/plan/changeover/layouts"
	"bide/plan/plantest"
	"bide/plan/verify"
)

// drawBands damages the anvil of a small world here and there, a few nanometres
// each time, off the web too.
func drawBands(r *rand.Rand, b *plan.Beam) {
	var bands []plan.Span
	for range 1 + r.IntN(3) {
		from := b.Web.From - 4 + plan.Length(r.IntN(int(b.Web.Length())+8))
		bands = append(bands, plan.Span{From: from, To: from + plan.Length(r.IntN(3))})
	}
	b.Bad = plan.JoinSpans(bands)
}

// The shifts left are those that trying each one leaves.
func TestShiftsAgainstEveryShift(t *testing.T) {
	some := 0
	for seed := range uint64(5000) {
		r := rand.New(rand.NewPCG(seed, 82))
		w := drawWide(r)
		drawBands(r, &w.beam)
		from, to := w.window()
		left := layouts.Shifts(&w.beam, &w.job, w.job.Slits())
		for i, s := range left {
			if s.From > s.To || s.From < from || s.To > to || i > 0 && s.From <= left[i-1].To+1 {
				t.Fatalf("seed %d: stretches %v of the window %d to %d\n%v", seed, left, from, to, w)
			}
		}
		if len(left) > 1 {
			some++
		}
		for shift := from; shift <= to; shift++ {
			in := slices.ContainsFunc(left, func(s plan.Span) bool { return s.From <= shift && shift <= s.To })
			clear := !slices.ContainsFunc(lay(&w.beam, &w.job, shift).Cuts, func(c plan.Length) bool { return damaged(&w.beam, c) })
			if in != clear {
				t.Fatalf("seed %d: shift %d is clear: %v, stretches %v\n%v", seed, shift, clear, left, w)
			}
		}
	}
	if some < 500 {
		t.Errorf("only %d windows are split", some)
	}
}

// Drawn worlds with damaged bands: the best shift, and the nearest to centred, by
// trying every shift and every placing.
func TestBruteForceWithBands(t *testing.T) {
	t.Parallel()
	n := plantest.Worlds(3_000, 30_000)
	planned, failed := 0, 0
	for seed := range uint64(n) {
		r := rand.New(rand.NewPCG(seed, 83))
		w := drawWorld(r)
		drawBands(r, &w.beam)
		p, err := changeover.NewPlanner(&w.beam)
		if err != nil {
			t.Fatalf("seed %d: %v\n%v", seed, err, w)
		}
		err = w.compare(p)
		if err == nil {
			err = w.compareNearest(p)
		}
		if err != nil {
			t.Errorf("seed %d: %v\n%v", seed, err, w)
			if failed++; failed == 5 {
				t.FailNow()
			}
		}
		if w.best().found {
			planned++
		}
	}
	if planned < n/5 || planned > n*9/10 {
		t.Errorf("%d of %d worlds can be planned: the draw shows too little of one side", planned, n)
	}
}

// compareNearest holds the shift that Nearest takes against trying those nearer.
func (w *world) compareNearest(p *changeover.Planner) error {
	var want answer
	for away := plan.Length(0); away <= w.job.Web && !want.found; away++ {
		for _, shift := range []plan.Length{-away, away} {
			if l := lay(&w.beam, &w.job, shift); !want.found && w.allows(l) {
				tryPlacings(&w.beam, w.standing, l, &want)
			}
		}
	}
	l, c, faults := p.Nearest(w.standing, &w.job)
	if err := compareOne(want, l, c, faults); err != nil {
		return fmt.Errorf("nearest: %w", err)
	}
	return nil
}

// Wider windows and more holders: every shift is asked for, as without bands.
func TestBestAgainstEveryShiftWithBands(t *testing.T) {
	t.Parallel()
	n := plantest.Worlds(3_000, 20_000)
	failed := 0
	for seed := range uint64(n) {
		r := rand.New(rand.NewPCG(seed, 84))
		w := drawWide(r)
		drawBands(r, &w.beam)
		p, err := changeover.NewPlanner(&w.beam)
		if err != nil {
			t.Fatalf("seed %d: %v\n%v", seed, err, w)
		}
		l, c, faults := p.Best(w.standing, &w.job)
		if err := compareOne(w.everyShift(p), l, c, faults); err != nil {
			t.Errorf("seed %d: %v\n%v", seed, err, w)
			if failed++; failed == 5 {
				t.FailNow()
			}
		}
	}
}

// A job whose slits may change places is refused only where no order keeps clear:
// with its shift fixed that is tried out, with a free one an order may be missed.
func TestOtherOrdersKeepClear(t *testing.T) {
	other, missed := 0, 0
	for seed := range uint64(6000) {
		r := rand.New(rand.NewPCG(seed, 85))
		w := drawWide(r)
		w.job.Shift, w.job.Arrange = plan.ShiftRule(r.IntN(2)), plan.Arrange(1+r.IntN(2))
		drawBands(r, &w.beam)
		listed := len(layouts.Shifts(&w.beam, &w.job, w.job.Slits())) > 0
		whole := w.beam
		whole.Bad = nil
		if len(layouts.Faults(&whole, &w.job)) > 0 || listed {
			continue
		}
		there, refused := w.someOrder(), len(layouts.Faults(&w.beam, &w.job)) > 0
		switch {
		case there && refused && w.job.Shift == plan.Free:
			missed++
		case there == refused:
			t.Fatalf("seed %d: an order keeps clear: %v, refused: %v\n%v", seed, there, refused, w)
		case !refused:
			other++
			p, _ := changeover.NewPlanner(&w.beam)
			if l, c, faults := p.Best(w.standing, &w.job); len(faults) == 0 {
				if err := verify.Changeover(&w.beam, &w.job, w.standing, l, c); err != nil {
					t.Fatalf("seed %d: %v\n%v", seed, err, w)
				}
			}
		}
	}
	if other < 100 || missed > other/10 {
		t.Errorf("another order is taken %d times and missed %d times", other, missed)
	}
}

// someOrder tries all orders of the entries, one slit each, at all shifts.
func (w *world) someOrder() (found bool) {
	j := w.job
	plan.Orders(len(j.Entries), func(order []int) {
		for i, e := range order {
			if i == 0 {
				j.Entries = nil
			}
			j.Entries = append(j.Entries, w.job.Entries[e])
		}
		from, to := w.window()
		for shift := from; shift <= to && !found; shift++ {
			found = !slices.ContainsFunc(lay(&w.beam, &j, shift).Cuts, func(c plan.Length) bool { return damaged(&w.beam, c) })
		}
	})
	return found
}

// Refusals, worked out by hand: the web of 200 mm runs from 50 to 250 and the slits of
// 5 x 30 leave 25 mm of trim on each side, so cuts at 75, 105, 135, 165, 195, 225;
// with 6 mm least trim the shift is from -19 to 19 mm.
func TestBandRefusals(t *testing.T) {
	at := make([]plan.Length, 10)
	for i := range at {
		at[i] = plan.Length(-100+20*i) * mm
	}
	for _, c := range []struct {
		name  string
		rule  plan.ShiftRule
		web   plan.Length
		bands []plan.Span
		key   string
		wants string
	}{
		// To the operator side 195 goes below 190 with more than 5 mm, to the drive side above 196 with more than 1.
		{"centred", plan.Centred, 200, []plan.Span{{From: 190 * mm, To: 196 * mm}}, "shift",
			"cut 5 at 195 mm lies in the damaged band of the anvil from 190 to 196 mm; with a free shift it keeps clear beyond 1 mm to the drive side"},
		{"on the end of a band, and another cut in one", plan.Centred, 200, []plan.Span{{From: 135 * mm, To: 145 * mm}, {From: 220 * mm, To: 226 * mm}}, "shift",
			"cut 3 at 135 mm lies in the damaged band of the anvil from 135 to 145 mm (and 1 cut more in damaged bands); with a free shift it keeps clear beyond 5 mm to the operator side"},
		// With both its ends the band holds as many places as a slit is wide, so it is met at every shift.
		{"a band as wide as a slit", plan.Centred, 200, []plan.Span{{From: 110 * mm, To: 140*mm - 1}}, "slits",
			"cut 3 at 135 mm lies in the damaged band of the anvil from 110 to 140 mm; a free shift, from -19 to 19 mm, would not help"},
		{"free", plan.Free, 200, []plan.Span{{From: 110 * mm, To: 140 * mm}}, "slits",
			"no shift from -19 to 19 mm keeps every cut out of the anvil's damaged bands; centred, cut 3 at 135 mm lies in the damaged band of the anvil from 110 to 140 mm"},
		// A web of 150 mm from 75 to 225 has no trim and cuts at 105, 135, 165, 195.
		{"no trim", plan.Free, 150, []plan.Span{{From: 105 * mm, To: 106 * mm}}, "slits",
			"cut 1 at 105 mm lies in the damaged band of the anvil from 105 to 106 mm; its trim leaves no room to shift"},
	} {
		b := plantest.SmallBeam(nil, true)
		b.Bad = c.bands
		j := &plan.Job{ID: "A", Web: c.web * mm, Trim: 6 * mm, Shift: c.rule, Entries: []plan.Entry{{Count: 5, Finished: 30 * mm, Width: 30 * mm}}}
		p, err := changeover.NewPlanner(b)
		if err != nil {
			t.Fatal(err)
		}
		_, _, faults := p.Best(at, j)
		if len(faults) != 1 || faults[0].Key != c.key || faults[0].Why(plan.Millimetres) != c.wants {
			t.Errorf("%s:\n  got %s\n want %s", c.name, strings.Join(plantest.Reasons(faults), "\n      "), c.wants)
		}
	}
}

// A holder that can't move leaves one shift, and the band takes it: stuck at 140, it
// must be on a cut or a pitch of 12 mm from both 135+s and 165+s, so s is at most -7,
// or 5, or from 17 on: at most -7 puts 135+s at 128 or below.
func TestRefusalTellsWhereTheBandsLeaveTheLayout(t *testing.T) {
	b := plantest.SmallBeam(map[int]plan.Condition{5: plan.Stuck}, true)
	at := []plan.Length{-100 * mm, -60 * mm, 20 * mm, 100 * mm, 140 * mm, 200 * mm, 240 * mm, 280 * mm, 320 * mm, 360 * mm}
	j := &plan.Job{ID: "A", Web: 200 * mm, Trim: 6 * mm, Shift: plan.Free, Entries: []plan.Entry{{Count: 5, Finished: 30 * mm, Width: 30 * mm}}}
	b.Bad = plan.JoinSpans([]plan.Span{{From: 56 * mm, To: 68 * mm}, {From: 80 * mm, To: 80 * mm}, {From: 92 * mm, To: 94 * mm}})
	p, err := changeover.NewPlanner(b)
	if err != nil {
		t.Fatal(err)
	}
	_, _, faults := p.Best(at, j)
	// 75+s keeps out of the bands, and 105+s out of 92 to 94: s from -7+1 nm on less 5 and 17 to 19.
	const want = "the cuts keep out of the anvil's damaged bands only shifted from -7 to 5 mm, from 5 to 17 mm, and nowhere there can the holders be set"
	if len(faults) != 1 || faults[0].Why(plan.Millimetres) != want {
		t.Errorf("got  %s\nwant %s", strings.Join(plantest.Reasons(faults), "\n     "), want)
	}
}
