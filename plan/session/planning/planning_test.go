package planning

import (
	"fmt"
	"slices"
	"testing"
	"time"

	"bide/plan"
	"bide/plan/changeover"
	"bide/plan/changeover/layouts"
)

// beam is a small one, with a job for it.
func beam() (*plan.Beam, *plan.Positions, *plan.Job) {
	mm := plan.Millimetre
	b := &plan.Beam{HolderWidth: 12 * mm, Clearance: mm, Rail: plan.Span{To: 400 * mm}, Web: plan.Span{From: 50 * mm, To: 350 * mm}, RestOverWeb: true,
		Holders: make([]plan.Condition, 8), Drive: plan.Drive{Kind: plan.ByHand, Hand: 20 * time.Second}}
	stands := &plan.Positions{}
	for n := range plan.Length(8) {
		stands.At = append(stands.At, n*50*mm)
	}
	return b, stands, job(1, 5, 50)
}

// job is one of so many slits of that width.
func job(n, slits int, width plan.Length) *plan.Job {
	mm := plan.Millimetre
	return &plan.Job{ID: fmt.Sprintf("J-%d", n), Web: 260 * mm, Trim: 3 * mm, Shift: plan.Free, Metres: 100, Speed: 100,
		Entries: []plan.Entry{{Count: slits, Finished: width * mm, Width: width * mm}}}
}

// forecast is that of a small day: two kinds of jobs by turns, which is the dearest order.
func forecast(t *testing.T) *Forecast {
	t.Helper()
	b, stands, _ := beam()
	p, err := changeover.NewPlanner(b)
	if err != nil {
		t.Fatal(err)
	}
	jobs := []*plan.Job{job(1, 5, 50), job(2, 3, 80), job(3, 5, 50), job(4, 3, 80)}
	return New(p, b, stands, plan.Clock{At: time.Date(2026, 11, 25, 6, 0, 0, 0, time.UTC)}, jobs)
}

// work does all that is to be done, and counts it.
func work(f *Forecast) (n int) {
	for w := f.Next(); w != nil; w = f.Next() {
		f.Take(w())
		n++
	}
	return n
}

// Jobs are planned one by one, then together, and the listed order on its own; what was
// known once is there at once.
func TestForecast(t *testing.T) {
	f := forecast(t)
	jobs := f.Present.Jobs
	if n := work(f); n != 4+1+4 || !f.Present.Whole() || !f.Listed.Whole() {
		t.Fatalf("%d things were done, whole %v and %v", n, f.Present.Whole(), f.Listed.Whole())
	}
	before := f.Present.Totals
	better := []*plan.Job{jobs[0], jobs[2], jobs[1], jobs[3]}
	if f.Reorder(better, nil); f.Present.Whole() || len(f.Present.Known) != 1 {
		t.Errorf("of another order %d are known", len(f.Present.Known))
	}
	if work(f); f.Present.Totals.Repositions >= before.Repositions {
		t.Errorf("the better order takes %d moves, the other %d", f.Present.Totals.Repositions, before.Repositions)
	}
	if f.Reorder(jobs, nil); f.Next() != nil || f.Present.Totals != before {
		t.Errorf("the first order is worked out again, or comes to %+v, was %+v", f.Present.Totals, before)
	}
	other := *f.Start.Positions
	if f.Begin(&other, jobs); len(f.Present.Known) > 0 || len(f.Listed.Known) > 0 {
		t.Error("what was planned from other positions is kept")
	}
}

// day is the forecast's as a search wants it.
func day(f *Forecast) *plan.Day {
	d := &plan.Day{Start: f.Start.Clock.At}
	for _, j := range f.Present.Jobs {
		d.Jobs = append(d.Jobs, *j)
	}
	return d
}

// A plan that leaves out a job of its day doesn't hold, nor one of which a move ends elsewhere.
func TestVerified(t *testing.T) {
	f := forecast(t)
	work(f)
	of := day(f)
	if _, err := verified(f.day(), of, nil); err != nil {
		t.Fatalf("a sound plan: %v", err)
	}
	of.Jobs = append(of.Jobs, of.Jobs[0])
	of.Jobs[len(of.Jobs)-1].ID = "left out"
	if _, err := verified(f.day(), of, nil); err == nil {
		t.Error("a plan that leaves out a job of its day is taken")
	}
	bad := f.day()
	bad.Steps()[1].Changeover.Moves[0].To++
	if _, err := verified(bad, nil, nil); err == nil {
		t.Error("a plan of which a move ends elsewhere is taken")
	}
}

// What a search finds is offered, with the layouts found kept in jobs of their own; given
// to the forecast it is there at once.
func TestSearchIsOffered(t *testing.T) {
	f := forecast(t)
	work(f)
	s := NewSearch()
	in := f.Inputs(0)
	found := s.Begin(in, day(f), 200, Errand{Opens: true})().(Found)
	if now := s.State(); !now.Running || now.Progress == nil || now.Progress.Best.Jobs != 4 || now.Share() <= 0 {
		t.Errorf("running %v, progress %+v", s.Running(), s.State().Progress)
	}
	if !s.Take(found) || s.Busy() || found.Err != nil || !found.Opens || !found.Day.Totals.Better(f.Present.Totals, plan.AimMinutes) || !Keeps(found.Day) {
		t.Fatalf("busy %v, found %+v, before %+v", s.Busy(), found.Day.Totals, f.Present.Totals)
	}
	o := NewOffer(found.Day, in, s.Aim)
	for i, j := range o.Jobs {
		was := o.From[j]
		if was == nil {
			was = j
		}
		if !slices.Contains(in.Jobs, was) || was.Chosen != nil || !layouts.Allows(in.beam, was, j.Chosen) || o.Index(was.ID) != i || o.Number(i, 2) != i+3 {
			t.Errorf("%s is laid out as %+v", was.ID, j.Chosen)
		}
	}
	f.Reorder(o.Jobs, o.Known)
	if f.Present.Totals != found.Day.Totals || !f.Present.Whole() || !f.Present.Ends().Equal(o.Ends()) {
		t.Errorf("accepted it comes to %+v, found was %+v", f.Present.Totals, found.Day.Totals)
	}
}

// What a search that was given up comes to is dropped; one whose day becomes another ends,
// once.
func TestSearchEnds(t *testing.T) {
	f := forecast(t)
	work(f)
	s := NewSearch()
	if s.Stop() || s.Interrupt(f.Inputs(1)) {
		t.Error("a search that doesn't run is stopped")
	}
	first := s.Begin(f.Inputs(0), day(f), 1<<40, Errand{})
	if s.Interrupt(f.Inputs(0)) || !s.Interrupt(f.Inputs(1)) || s.Interrupt(f.Inputs(1)) || !s.ended {
		t.Error("a search isn't ended as its day becomes another")
	}
	found := first().(Found) // at once: it was stopped
	if found.Err != nil || found.Day == nil {
		t.Errorf("stopped it comes to %v", found.Err)
	}
	second := s.Begin(f.Inputs(1), day(f), 1<<40, Errand{Fits: true})
	if s.Take(found) || !s.Running() || !s.Stop() {
		t.Error("what an earlier search found is taken")
	}
	if !s.Take(second().(Found)) || s.Busy() {
		t.Error("the second search isn't taken")
	}
	s.Hold(found)
	if !s.Busy() || s.Running() || s.Held().Day != found.Day {
		t.Error("what was found doesn't wait")
	}
}

// A job of another day that is to be laid out alike gets what was found for it; one that
// isn't, doesn't.
func TestLaidAs(t *testing.T) {
	f := forecast(t)
	s := NewSearch()
	found := s.Begin(f.Inputs(0), day(f), 50, Errand{})().(Found)
	next := day(f)
	next.Jobs[1].Shift = plan.Centred
	for i, j := range LaidAs(found.Day, next, f.Beam).Jobs {
		if (j.Chosen != nil) != (i != 1) {
			t.Errorf("%s has %+v", j.ID, j.Chosen)
		}
	}
}
