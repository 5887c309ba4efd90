package changeover_test

import (
	"strings"
	"testing"

	"bide/plan"
	"bide/plan/changeover"
	"bide/plan/plantest"
	"bide/plan/verify"
)

// Facts of the trade: common practice, no source.

// halfInchBeam is a beam of n holders of the given pitch, wide enough for a web of
// 63 in.
func halfInchBeam(n int, pitch plan.Length) *plan.Beam {
	return &plan.Beam{HolderWidth: pitch, RestOverWeb: true, Holders: make([]plan.Condition, n),
		Rail: plan.Span{From: -500 * mm, To: 2200 * mm}, Web: plan.Span{To: 63 * plan.Inch}}
}

// halfInchJob cuts a web of 62 in into half-inch strips, with an edge trim of an
// eighth on each side beyond it or none.
func halfInchJob(trim bool) *plan.Job {
	j := &plan.Job{ID: "half-inch", Web: 62 * plan.Inch, Entries: []plan.Entry{{Count: 124, Finished: plan.Inch / 2, Width: plan.Inch / 2}}}
	if trim {
		j.Web += plan.Inch / 4
		j.Trim = plan.Inch / 8
	}
	return j
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

// A 62 in web in half-inch strips needs about 124 holders: 62 / 0.5 = 124 strips,
// which take 123 cuts without trim and 125 with trim on both sides.
func TestHalfInchStripsNeedAbout124Holders(t *testing.T) {
	for _, c := range []struct {
		trim bool
		cuts int
	}{{false, 123}, {true, 125}} {
		if why := tries(t, halfInchBeam(c.cuts, 12*mm), halfInchJob(c.trim)); why != nil {
			t.Errorf("%d holders, trim %v: refused: %v", c.cuts, c.trim, why)
		}
		if why := tries(t, halfInchBeam(c.cuts-1, 12*mm), halfInchJob(c.trim)); why == nil {
			t.Errorf("%d holders, trim %v: planned", c.cuts-1, c.trim)
		}
	}
}

// Holders of 12 mm let half-inch slits stand side by side across a beam of over a
// hundred holders: their pitches don't add up, since each is below a strip's width.
// Holders a little wider than half an inch don't, however long the rail.
func TestTwelveMillimetreHoldersStandAtHalfAnInch(t *testing.T) {
	for _, pitch := range []plan.Length{12 * mm, 12*mm + 300_000, plan.Inch / 2} {
		if why := tries(t, halfInchBeam(140, pitch), halfInchJob(true)); why != nil {
			t.Errorf("pitch %s mm: refused: %v", pitch.MM(), why)
		}
	}
	why := tries(t, halfInchBeam(140, plan.Inch/2+1), halfInchJob(true))
	if len(why) == 0 || !strings.Contains(strings.Join(why, " "), "narrower than the pitch") {
		t.Errorf("pitch a nanometre above half an inch: %v", why)
	}
}
