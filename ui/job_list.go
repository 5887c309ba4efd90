package ui

import (
	"slices"

	"bide/plan"
	"bide/ui/draw"
	"bide/ui/keys"
	"bide/ui/list"

	tea "github.com/charmbracelet/bubbletea"
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
func (p *jobPick) jobs(m *model) []*plan.Job {
	if p.after == nil {
		return m.Away()
	}
	return slices.DeleteFunc(slices.Clone(m.History.Now.All), func(j *plan.Job) bool { return j.ID == p.after.ID })
}

// openLeftOut lists what is done or on hold.
func (m *model) openLeftOut() {
	if len(m.Away()) == 0 {
		m.Say("no job is done or on hold")
		return
	}
	m.over = &jobPick{}
}

// openOrder lists what the picked job may come after.
func (m *model) openOrder() {
	j := m.job()
	if j == nil {
		m.Say("no job is picked")
		return
	}
	m.over = &jobPick{after: j}
}

// HandleKey picks one of them, or does with it what the list is for.
func (p *jobPick) HandleKey(a keys.Action, m *model) tea.Cmd {
	jobs := p.jobs(m)
	p.at = p.list(m, len(jobs)).Step(a)
	switch {
	case a == keys.Back || len(jobs) == 0:
		m.over = nil
	case a == keys.Choose && p.after != nil:
		p.after = m.OrderAfter(p.after, jobs[p.at])
	case a == keys.Choose:
		m.BringBack(jobs[p.at])
		m.over = nil
	case a == keys.RemoveJob && p.after == nil:
		m.Remove(jobs[p.at])
		m.over = nil
	}
	return nil
}

// list is the list in the room that the page has.
func (p *jobPick) list(m *model, jobs int) list.List {
	return list.List{At: p.at, Rows: jobs, Shown: m.pageSize().H - 1}
}

// View draws the list.
func (p *jobPick) View(m *model) []draw.Line {
	s, jobs := m.pageSize(), p.jobs(m)
	l := p.list(m, len(jobs))
	var body []draw.Line
	for i := l.From(); i < l.To(); i++ {
		body = append(body, p.row(m, jobs[i], i == p.at, s.W))
	}
	name, title := "Done or on hold", m.Line()
	if p.after != nil {
		name = m.Safe(p.after.ID) + " comes after"
		title.Add(draw.Faint, "Enter puts a job before it, or frees it")
	} else {
		title.Add(draw.Faint, "Enter brings a job back, x removes it from the day")
	}
	return m.page(name, title, body, keys.OnList)
}

// row is one job of the list.
func (p *jobPick) row(m *model, j *plan.Job, on bool, w int) draw.Line {
	l := m.Line()
	if on {
		l.Add(draw.Picked, m.Cursor)
	}
	l.To(2)
	if p.after != nil {
		mark := " "
		if slices.Contains(p.after.After, j.ID) {
			mark = "<"
		}
		l.Left(draw.Accent, mark, 2)
	}
	l.Left(draw.Pick(on, draw.Strong), j.ID, m.idWidth()+2)
	state := map[plan.State]string{plan.Running: "running", plan.Done: "done", plan.OnHold: "on hold"}[j.State]
	l.Left(draw.Faint, state, 9)
	l.Add(draw.Faint, m.Short(j.Material, max(w-l.Width, 0)))
	return l
}
