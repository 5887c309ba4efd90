package ui

import (
	"slices"

	"bide/plan"
	"bide/plan/session/planning"
	"bide/ui/draw"
	"bide/ui/keys"
	"bide/ui/pane"
)

// movePage is the page of what it costs to move a job to each number in the sequence.
type movePage struct {
	*planning.MoveTo
	to int // picked: how many of the other jobs come before it then
}

func (p *movePage) Help() keys.Scope      { return keys.OnMoveTo }
func (p *movePage) Fits(s draw.Size) bool { return s.W >= 60 && s.H >= 10 }

// openMoveTo looks at moving the picked job.
func openMoveTo(d *pane.Shared) {
	j := d.Job()
	switch {
	case j == nil:
		d.Say("no job is picked")
	case j.State == plan.Running:
		d.Say("%s is running: it stays where it is", j.ID)
	default:
		d.Over = &movePage{movable(d, d.JobAt), d.JobAt}
	}
}

// movable is the job at an index of the present order, to be moved.
func movable(d *pane.Shared, index int) *planning.MoveTo {
	return d.Forecast.MoveTo(index, d.History.Now.Done())
}

// movesOn is what is to be worked out next for the page, if it is open.
func movesOn(d *pane.Shared) (all []planning.Work) {
	p, open := d.Over.(*movePage)
	if open && p.Stale() {
		p, open = moveAgain(d, p)
	}
	if open {
		all = p.Next(p.to)
	}
	return all
}

// moveAgain looks at moving the same job in a day that begins otherwise now. Where it can't
// be moved any more that is said.
func moveAgain(d *pane.Shared, p *movePage) (again *movePage, open bool) {
	p.End()
	d.Over = nil
	index := slices.IndexFunc(d.Jobs(), func(j *plan.Job) bool { return j.ID == p.Job.ID && j.State != plan.Running })
	if index < 0 {
		d.Mention(p.Job.ID + " doesn't wait any more, and can't be moved")
		return nil, false
	}
	d.Pick(index)
	again = &movePage{movable(d, index), index}
	if p.to != p.Was {
		again.to = min(p.to, len(again.Rest))
	}
	d.Over = again
	return again, true
}

// moves takes what work came to, if it was for the page that is open.
func takeMove(d *pane.Shared, result any) {
	if p, open := d.Over.(*movePage); open {
		p.Take(result)
	}
}

// HandleKey picks a number, moves the job there or leaves it.
func (p *movePage) HandleKey(a keys.Action, d *pane.Shared) {
	p.to = p.list(d.PageSize()).Step(a)
	switch a {
	case keys.Cheapest:
		p.to = p.Best(p.to)
	case keys.Choose:
		p.move(d)
	case keys.Back:
		p.close(d)
	}
}

// close leaves the job where it is.
func (p *movePage) close(d *pane.Shared) {
	p.End()
	d.Over = nil
	d.Say("%s stays where it is", p.Job.ID)
}

// move moves the job to the picked number.
func (p *movePage) move(d *pane.Shared) {
	switch {
	case p.Barred(p.to):
		d.Say("%s is running: nothing can come before it", p.Rest[p.to].ID)
		return
	case p.to == p.Was:
		p.close(d)
		return
	}
	next := d.History.Now.Ordered(p.Apply(p.to))
	p.End()
	d.Over = nil
	next.About, next.Did = p.Job.ID, ""
	d.Do(next)
}
