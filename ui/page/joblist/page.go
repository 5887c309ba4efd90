// Package joblist is the page of a list of jobs to choose from: what is done or on hold, or what a job
// may come after.
package joblist

import (
	"slices"

	"bide/plan"
	"bide/plan/session"
	"bide/ui/draw"
	"bide/ui/keys"
	"bide/ui/list"
	"bide/ui/pane"
)

// jobPick is a list of jobs over the panes, to choose from: what is done or on
// hold, or what a job may come after.
type jobPick struct {
	after *plan.Job // the one that comes after the chosen; nil for what is left out
	at    int
}

func (p *jobPick) Help() keys.Scope      { return keys.OnList }
func (p *jobPick) Fits(s draw.Size) bool { return s.W >= 40 && s.H >= 8 }

// jobs are what there is to choose from.
func (p *jobPick) jobs(d *pane.Shared) []*plan.Job {
	if p.after == nil {
		return d.Away()
	}
	return slices.DeleteFunc(slices.Clone(d.Now.All), func(j *plan.Job) bool { return j.ID == p.after.ID })
}

// OpenLeftOut lists what is done or on hold.
func OpenLeftOut(d *pane.Shared) pane.Want {
	if len(d.Away()) == 0 {
		return pane.Say("no job is done or on hold")
	}
	d.Over = &jobPick{}
	return nil
}

// OpenOrder lists what the picked job may come after.
func OpenOrder(d *pane.Shared) pane.Want {
	j := d.Job()
	if j == nil {
		return pane.Say("no job is picked")
	}
	d.Over = &jobPick{after: j}
	return nil
}

// HandleKey picks one of them, or does with it what the list is for.
func (p *jobPick) HandleKey(a keys.Action, d *pane.Shared) pane.Want {
	jobs := p.jobs(d)
	p.at = p.list(d, len(jobs)).Step(a)
	switch {
	case a == keys.Back || len(jobs) == 0:
		d.Over = nil
	case a == keys.Choose && p.after != nil:
		return func(s *session.Session) { p.after = s.OrderAfter(p.after, jobs[p.at]) }
	case a == keys.Choose:
		d.Over = nil
		return func(s *session.Session) { s.BringBack(jobs[p.at]) }
	case a == keys.RemoveJob && p.after == nil:
		d.Over = nil
		return func(s *session.Session) { s.Remove(jobs[p.at]) }
	}
	return nil
}

// list is the list in the room that the page has.
func (p *jobPick) list(d *pane.Shared, jobs int) list.List {
	return list.List{At: p.at, Rows: jobs, Shown: d.PageSize().H - 1}
}

// View draws the list.
func (p *jobPick) View(d *pane.Shared) []draw.Line {
	s, jobs := d.PageSize(), p.jobs(d)
	l := p.list(d, len(jobs))
	var body []draw.Line
	for i := l.From(); i < l.To(); i++ {
		body = append(body, p.row(d, jobs[i], i == p.at, s.W))
	}
	name, title := "Done or on hold", d.Line()
	if p.after != nil {
		name = "Jobs before " + d.Safe(p.after.ID)
		title.Add(draw.Faint, "Enter lets it come after a job, or not")
	} else {
		title.Add(draw.Faint, "Enter brings a job back, x removes it from the day")
	}
	return d.Frame(name, title, body, keys.OnList)
}

// row is one job of the list.
func (p *jobPick) row(d *pane.Shared, j *plan.Job, on bool, w int) draw.Line {
	l := d.Line()
	if on {
		l.Add(draw.Picked, d.Cursor)
	}
	l.To(2)
	if p.after != nil {
		mark := " "
		if slices.Contains(p.after.After, j.ID) {
			mark = "<"
		}
		l.Left(draw.Accent, mark, 2)
	}
	l.Left(draw.Pick(on, draw.Strong), j.ID, d.IDWidth()+2)
	state := map[plan.State]string{plan.Running: "running", plan.Done: "done", plan.OnHold: "on hold"}[j.State]
	l.Left(draw.Faint, state, 9)
	l.Add(draw.Faint, d.Short(j.Material, max(w-l.Width, 0)))
	return l
}
