package changeover_test

import (
	"fmt"
	"math/rand/v2"
	"slices"

	"bide/plan"
)

const mm = plan.Millimetre

// Small worlds, drawn or laid out by hand, and a plain way to lay a job out.

// world is one beam with a standing and a job.
type world struct {
	beam     plan.Beam
	standing []plan.Length
	job      plan.Job
}

func (w *world) String() string {
	b := &w.beam
	return fmt.Sprintf("holders %v pitch %d (width %d) rail %v web %v guide %d rest %v gap %d in place %d damaged %v\nstanding %v\njob web %d entries %v trim %d shift rule %d",
		b.Holders, b.Pitch(), b.HolderWidth, b.Rail, b.Web, b.Guide, b.RestOverWeb, b.ParkClearance, b.PositionTolerance, b.Bad,
		w.standing, w.job.Web, w.job.Entries, w.job.Trim, w.job.Shift)
}

// lay lays the job's slits out at a shift from centred, as the model says in words.
func lay(b *plan.Beam, j *plan.Job, shift plan.Length) plan.Layout {
	var l plan.Layout
	waste := j.Web
	for _, e := range j.Entries {
		for range e.Count {
			l.Slits = append(l.Slits, e.Width)
			waste -= e.Width
		}
	}
	beside := b.Web.To - b.Web.From - j.Web
	l.Web.From = b.Web.From + map[plan.Guide]plan.Length{plan.GuideCentre: beside / 2, plan.GuideDrive: beside}[b.Guide]
	l.Web.To = l.Web.From + j.Web
	l.Shift = shift
	l.Trim = [2]plan.Length{waste/2 + shift, waste - waste/2 - shift}
	at := l.Web.From + l.Trim[0]
	l.Cuts = append(l.Cuts, at)
	for _, s := range l.Slits {
		at += s
		l.Cuts = append(l.Cuts, at)
	}
	if waste == 0 {
		l.Cuts = l.Cuts[1 : len(l.Cuts)-1]
	}
	return l
}

// drawWorld draws a small world from r.
func drawWorld(r *rand.Rand) *world {
	w := &world{}
	b := &w.beam
	b.HolderWidth, b.Clearance = plan.Length(1+r.IntN([]int{3, 3, 7}[r.IntN(3)])), plan.Length(r.IntN(2))
	if b.Pitch() < 2 {
		b.Clearance = 1
	}
	if r.IntN(3) == 0 {
		b.PositionTolerance = plan.Length(r.IntN(int(b.Pitch()+1) / 2))
	}
	n := 1 + r.IntN(5)
	for range n {
		b.Holders = append(b.Holders, plan.Good)
	}
	for range max(0, r.IntN(n+2)-2) {
		b.Holders[r.IntN(n)] = drawCondition(r)
	}
	start := plan.Length(r.IntN(7) - 3)
	b.Rail = plan.Span{From: start, To: start + plan.Length(n-1)*b.Pitch() + plan.Length(r.IntN(11))}
	b.RestOverWeb = r.IntN(2) == 0
	b.ParkClearance = plan.Length(r.IntN(4))
	b.Guide = plan.Guide(r.IntN(3))
	w.standing = drawStanding(r, b)
	drawJob(r, w)
	return w
}

// drawCondition draws what a holder can no longer do.
func drawCondition(r *rand.Rand) plan.Condition {
	return []plan.Condition{plan.NoCut, plan.Stuck, plan.Out}[r.IntN(3)]
}

// drawStanding draws places for every holder of the beam.
func drawStanding(r *rand.Rand, b *plan.Beam) []plan.Length {
	n := len(b.Holders)
	slack := int(b.Rail.Length() - plan.Length(n-1)*b.Pitch())
	at := make([]plan.Length, n)
	for i := range at {
		at[i] = b.Rail.From + plan.Length(r.IntN(slack+1))
	}
	slices.Sort(at)
	for i := range at {
		at[i] += plan.Length(i) * b.Pitch()
	}
	return at
}

// drawJob draws a web and slits that mostly fit the beam.
func drawJob(r *rand.Rand, w *world) {
	b, j := &w.beam, &w.job
	j.ID = "drawn"
	j.Shift = plan.ShiftRule(r.IntN(2))
	j.Trim = plan.Length(1 + r.IntN(2))
	total := plan.Length(0)
	cutters := 0
	for _, c := range b.Holders {
		if c.Cuts() {
			cutters++
		}
	}
	for range 1 + r.IntN(max(1, min(3, cutters))) {
		width := max(1, b.Pitch()-1+plan.Length(r.IntN(4)))
		if r.IntN(8) > 0 {
			width = max(width, b.Pitch())
		}
		j.Entries = append(j.Entries, plan.Entry{Count: 1, Finished: width, Width: width})
		total += width
	}
	j.Web = total + plan.Length(max(0, r.IntN(9)-1))
	area := j.Web + plan.Length(r.IntN(4))
	from := b.Rail.From + plan.Length(r.IntN(int(max(1, b.Rail.Length()-area+4)))) - 2
	b.Web = plan.Span{From: from, To: from + area}
}
