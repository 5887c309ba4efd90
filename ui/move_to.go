package ui

import (
	"slices"

	"bide/plan"
	"bide/plan/session/planning"
	"bide/ui/draw"
	"bide/ui/keys"

	tea "github.com/charmbracelet/bubbletea"
)

// movePage is the page of what it costs to move a job to each number in the sequence.
type movePage struct {
	*planning.MoveTo
	to int // picked: how many of the other jobs come before it then
}

func (p *movePage) Help() keys.Scope      { return keys.OnMoveTo }
func (p *movePage) Fits(s draw.Size) bool { return s.W >= 60 && s.H >= 10 }

// openMoveTo looks at moving the picked job.
func (m *model) openMoveTo() {
	j := m.job()
	switch {
	case j == nil:
		m.Say("no job is picked")
	case j.State == plan.Running:
		m.Say("%s is running: it stays where it is", j.ID)
	default:
		m.over = &movePage{m.movable(m.turn), m.turn}
	}
}

// movable is the job at an index of the present order, to be moved.
func (d *desk) movable(index int) *planning.MoveTo {
	return d.Forecast.MoveTo(index, d.History.Now.Done())
}

// movesOn is what is to be worked out next for the page, if it is open.
func (m *model) movesOn() (all []tea.Cmd) {
	p, open := m.over.(*movePage)
	if open && p.Stale() {
		p, open = m.moveAgain(p)
	}
	if open {
		for _, w := range p.Next(p.to) {
			all = append(all, background(w))
		}
	}
	return all
}

// moveAgain looks at moving the same job in a day that begins otherwise now. Where it can't
// be moved any more that is said.
func (m *model) moveAgain(p *movePage) (again *movePage, open bool) {
	p.End()
	m.over = nil
	index := slices.IndexFunc(m.Jobs(), func(j *plan.Job) bool { return j.ID == p.Job.ID && j.State != plan.Running })
	if index < 0 {
		m.Mention(p.Job.ID + " doesn't wait any more, and can't be moved")
		return nil, false
	}
	m.pick(index)
	again = &movePage{m.movable(index), index}
	if p.to != p.Was {
		again.to = min(p.to, len(again.Rest))
	}
	m.over = again
	return again, true
}

// moves takes what work came to, if it was for the page that is open.
func (m *model) takeMove(result any) {
	if p, open := m.over.(*movePage); open {
		p.Take(result)
	}
}

// HandleKey picks a number, moves the job there or leaves it.
func (p *movePage) HandleKey(a keys.Action, m *model) tea.Cmd {
	p.to = p.list(m.pageSize()).Step(a)
	switch a {
	case keys.Cheapest:
		p.to = p.Best(p.to)
	case keys.Choose:
		p.move(m)
	case keys.Back:
		p.close(m)
	}
	return nil
}

// close leaves the job where it is.
func (p *movePage) close(m *model) {
	p.End()
	m.over = nil
	m.Say("%s stays where it is", p.Job.ID)
}

// move moves the job to the picked number.
func (p *movePage) move(m *model) {
	switch {
	case p.Barred(p.to):
		m.Say("%s is running: nothing can come before it", p.Rest[p.to].ID)
		return
	case p.to == p.Was:
		p.close(m)
		return
	}
	next := m.History.Now.Ordered(p.Apply(p.to))
	p.End()
	m.over = nil
	next.About, next.Did = p.Job.ID, ""
	m.desk.Do(next)
}
