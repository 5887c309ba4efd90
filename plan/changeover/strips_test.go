package changeover_test

import (
	"strings"
	"testing"

	"bide/plan"
	"bide/plan/changeover"
	"bide/plan/plantest"
	"bide/plan/verify"
)

// stripsBeam is a beam of n holders of the given pitch with a web area of 1.2 m.
func stripsBeam(n int, pitch plan.Length) *plan.Beam {
	return &plan.Beam{HolderWidth: pitch, RestOverWeb: true, Holders: make([]plan.Condition, n),
		Rail: plan.Span{From: -500 * mm, To: 1700 * mm}, Web: plan.Span{To: 1200 * mm}}
}

// stripsJob cuts a web into n strips of one width, with some trim on each side or none.
func stripsJob(n int, width, trim plan.Length) *plan.Job {
	return &plan.Job{ID: "strips", Web: plan.Length(n)*width + 2*trim, Trim: trim,
		Entries: []plan.Entry{{Count: n, Finished: width, Width: width}}}
}

// evenly spreads the beam's holders over its rail.
func evenly(b *plan.Beam) []plan.Length {
	at := make([]plan.Length, len(b.Holders))
	for i := range at {
		at[i] = b.Rail.From + b.Rail.Length()/plan.Length(len(at))*plan.Length(i)
	}
	return at
}

// tries plans the job on the beam, verifies the plan, and returns why it can't be.
func tries(t *testing.T, b *plan.Beam, j *plan.Job) []string {
	t.Helper()
	p, err := changeover.NewPlanner(b)
	if err != nil {
		t.Fatal(err)
	}
	standing := evenly(b)
	l, c, faults := p.Best(standing, j)
	if len(faults) > 0 {
		return plantest.Reasons(faults)
	}
	if err := verify.Changeover(b, j, standing, l, c); err != nil {
		t.Fatal(err)
	}
	return nil
}

// n strips take n - 1 cuts without trim and n + 1 with trim on both sides, and a holder for
// each: one less is refused. Strips as narrow as the pitch are cut, since the pitches add up
// to no more than the strips do; strips a nanometre narrower aren't, however long the rail.
func TestStripsAsNarrowAsThePitch(t *testing.T) {
	for _, c := range []struct {
		strips int
		width  plan.Length
	}{{7, 40 * mm}, {31, 19 * mm}, {46, 17*mm + 500_000}, {60, plan.Inch * 3 / 4}, {73, 15 * mm}} {
		for trim, cuts := range map[plan.Length]int{0: c.strips - 1, 4 * mm: c.strips + 1} {
			j := stripsJob(c.strips, c.width, trim)
			if why := tries(t, stripsBeam(cuts, c.width), j); why != nil {
				t.Errorf("%d holders, %d strips of %s mm, trim %s: refused: %v", cuts, c.strips, c.width.MM(), trim.MM(), why)
			}
			if why := tries(t, stripsBeam(cuts-1, c.width), j); why == nil {
				t.Errorf("%d holders, %d strips of %s mm, trim %s: planned", cuts-1, c.strips, c.width.MM(), trim.MM())
			}
			why := tries(t, stripsBeam(cuts, c.width+1), j)
			if !strings.Contains(strings.Join(why, " "), "narrower than the pitch") {
				t.Errorf("%d strips a nanometre below the pitch: %v", c.strips, why)
			}
		}
	}
}
