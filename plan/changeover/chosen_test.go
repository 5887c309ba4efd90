package changeover_test

import (
	"math/rand/v2"
	"testing"

	"bide/plan"
	"bide/plan/changeover"
	"bide/plan/changeover/layouts"
	"bide/plan/plantest"
	"bide/plan/verify"
)

// A job that runs stays as it stands, whatever was chosen for it.
func TestChosenLeavesWhatRuns(t *testing.T) {
	ran := 0
	for seed := range uint64(40) {
		b, start, d := plantest.DrawDay(rand.New(rand.NewPCG(seed, 77)))
		p, err := changeover.NewPlanner(b)
		if err != nil {
			t.Fatal(err)
		}
		j := &d.Jobs[0]
		j.State = plan.Waiting
		first, stands := p.Next(start, d.Begins(start), j)
		from, to := b.Window(j)
		if first.Refused() || from == to {
			continue
		}
		for _, shift := range []plan.Length{from, to} {
			j.State, j.Chosen = plan.Running, &plan.Chosen{Slits: j.Slits(), Shift: shift}
			if now, _ := p.Resume(stands, d.Begins(start), j); now.Refused() || now.Step.Changeover.Repositions > 0 {
				t.Errorf("seed %d: moves of a job that runs, or refused: %+v", seed, now)
			}
		}
		ran++
	}
	if ran < 5 {
		t.Errorf("%d jobs are too few to tell", ran)
	}
}

// A layout is allowed exactly where it can be set on a beam of good holders and the
// verifier, which shares nothing with that, finds nothing wrong with it.
func TestAllowsIsTheVerifiers(t *testing.T) {
	t.Parallel()
	allowed, refused := 0, 0
	for seed := range uint64(3000) {
		r := rand.New(rand.NewPCG(seed, 79))
		b := plantest.TrialBeam()
		b.Holders = make([]plan.Condition, 30)
		b.Rail, b.Web = plan.Span{From: -600 * mm, To: 1600 * mm}, plan.Span{To: 1000 * mm}
		for range r.IntN(3) {
			at := plan.Length(r.IntN(1000)) * mm
			b.Bad = append(b.Bad, plan.Span{From: at, To: at + plan.Length(r.IntN(15))*mm})
		}
		b.Bad = plan.JoinSpans(b.Bad)
		j := plantest.DrawJob(r, 0, plantest.TrialDay().Start)
		for k := range j.Entries { // a few widths, so that entries can meet
			j.Entries[k].Width = plan.Length(20+r.IntN(2)*10) * mm
		}
		j.Web = 14*mm + plan.Length(r.IntN(2))
		for _, s := range j.Slits() {
			j.Web += s
		}
		if j.Web > b.Web.Length() || len(layouts.Faults(b, &j)) > 0 {
			continue
		}
		slits := j.Slits()
		for range r.IntN(4) {
			x, y := r.IntN(len(slits)), r.IntN(len(slits))
			slits[x], slits[y] = slits[y], slits[x]
		}
		if r.IntN(8) == 0 {
			slits = slits[1:]
		}
		c := plan.Chosen{Slits: slits, Shift: plan.Length(r.IntN(12)-6) * mm * plan.Length(r.IntN(2))}
		p, err := changeover.NewPlanner(b)
		if err != nil {
			t.Fatal(err)
		}
		at := plantest.Places(r, len(b.Holders), b.Rail, b.Pitch(), mm)
		l := b.Lay(&j, c.Slits, c.Shift)
		want := false
		if change, faults := p.Changeover(at, l); len(faults) == 0 {
			want = verify.Changeover(b, &j, at, l, change) == nil
		}
		if got := layouts.Allows(b, &j, &c); got != want {
			t.Fatalf("seed %d: %+v of %+v: allowed %v, the verifier %v", seed, c, j, got, want)
		}
		if want {
			allowed++
		} else {
			refused++
		}
	}
	if allowed < 300 || refused < 300 {
		t.Errorf("%d allowed and %d refused are too few to tell", allowed, refused)
	}
}
