// Package moveto is the page of what it costs to move a job to each number in the sequence.
package moveto

import (
	"slices"

	"bide/plan"
	"bide/plan/session/planning"
	"bide/ui/draw"
	"bide/ui/keys"
	"bide/ui/pane"
)

// Page is the page of what it costs to move a job to each number in the sequence.
type Page struct {
	*planning.MoveTo
	To int // picked: how many of the other jobs come before it then
}

func (p *Page) Help() keys.Scope      { return keys.OnMoveTo }
func (p *Page) Fits(s draw.Size) bool { return s.W >= 60 && s.H >= 10 }

// Open looks at moving the picked job.
func Open(d *pane.Shared) {
	j := d.Job()
	switch {
	case j == nil:
		d.Say("no job is picked")
	case j.State == plan.Running:
		d.Say("%s is running: it stays where it is", j.ID)
	default:
		d.Over = &Page{Movable(d, d.JobAt), d.JobAt}
	}
}

// Movable is the job at an index of the present order, to be moved.
func Movable(d *pane.Shared, index int) *planning.MoveTo {
	return d.Forecast.MoveTo(index, d.History.Now.Done())
}

// Work is what is to be worked out next for the page, if it is open.
func Work(d *pane.Shared) (all []planning.Work) {
	p, open := d.Over.(*Page)
	if open && p.Stale() {
		p, open = moveAgain(d, p)
	}
	if open {
		all = p.Next(p.To)
	}
	return all
}

// moveAgain looks at moving the same job in a day that begins otherwise now. Where it can't
// be moved any more that is said.
func moveAgain(d *pane.Shared, p *Page) (again *Page, open bool) {
	p.End()
	d.Over = nil
	index := slices.IndexFunc(d.Jobs(), func(j *plan.Job) bool { return j.ID == p.Job.ID && j.State != plan.Running })
	if index < 0 {
		d.Mention(p.Job.ID + " doesn't wait any more, and can't be moved")
		return nil, false
	}
	d.Pick(index)
	again = &Page{Movable(d, index), index}
	if p.To != p.Was {
		again.To = min(p.To, len(again.Rest))
	}
	d.Over = again
	return again, true
}

// Take takes what work came to, if it was for the page that is open.
func Take(d *pane.Shared, result any) {
	if p, open := d.Over.(*Page); open {
		p.Take(result)
	}
}

// HandleKey picks a number, moves the job there or leaves it.
func (p *Page) HandleKey(a keys.Action, d *pane.Shared) {
	p.To = p.list(d.PageSize()).Step(a)
	switch a {
	case keys.Cheapest:
		p.To = p.Best(p.To)
	case keys.Choose:
		p.move(d)
	case keys.Back:
		p.close(d)
	}
}

// close leaves the job where it is.
func (p *Page) close(d *pane.Shared) {
	p.End()
	d.Over = nil
	d.Say("%s stays where it is", p.Job.ID)
}

// move moves the job to the picked number.
func (p *Page) move(d *pane.Shared) {
	switch {
	case p.Barred(p.To):
		d.Say("%s is running: nothing can come before it", p.Rest[p.To].ID)
		return
	case p.To == p.Was:
		p.close(d)
		return
	}
	next := d.History.Now.Ordered(p.Apply(p.To))
	p.End()
	d.Over = nil
	next.About, next.Did = p.Job.ID, ""
	d.Do(next)
}
