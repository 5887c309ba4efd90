package ui

import (
	"slices"

	"bide/plan"

	tea "github.com/charmbracelet/bubbletea"
)

// jobPick is a list of jobs over the panes, to choose from: what is done or set
// aside, or what a job may come after.
type jobPick struct {
	after *plan.Job // the one that comes after the chosen; nil for what is left out
	at    int
}

func (p *jobPick) Help() scope      { return onList }
func (p *jobPick) Fits(s size) bool { return s.w >= 40 && s.h >= 8 }

// jobs are what there is to choose from.
func (p *jobPick) jobs(m *model) []*plan.Job {
	if p.after == nil {
		return m.away()
	}
	return slices.DeleteFunc(slices.Clone(m.history.now.all), func(j *plan.Job) bool { return j.ID == p.after.ID })
}

// openLeftOut lists what is done or set aside.
func (m *model) openLeftOut() {
	if len(m.away()) == 0 {
		m.say("no job is done or set aside")
		return
	}
	m.over = &jobPick{}
}

// openOrder lists what the picked job may come after.
func (m *model) openOrder() {
	j := m.job()
	if j == nil {
		m.say("no job is picked")
		return
	}
	m.over = &jobPick{after: j}
}

// HandleKey picks one of them, or does with it what the list is for.
func (p *jobPick) HandleKey(a action, m *model) tea.Cmd {
	jobs := p.jobs(m)
	page := max(m.h-6, 1)
	p.at += map[action]int{up: -1, down: 1, pageUp: -page, pageDown: page, top: -len(jobs), bottom: len(jobs)}[a]
	p.at = max(0, min(p.at, len(jobs)-1))
	switch {
	case a == back || len(jobs) == 0:
		m.over = nil
	case a == choose && p.after != nil:
		p.after = m.orderAfter(p.after, jobs[p.at])
	case a == choose:
		m.bringBack(jobs[p.at])
		m.over = nil
	case a == removeJob && p.after == nil:
		m.remove(jobs[p.at])
		m.over = nil
	}
	return nil
}

// View draws the list.
func (p *jobPick) View(m *model) []line {
	s, jobs := m.pageSize(), p.jobs(m)
	from := window(p.at, len(jobs), s.h-1)
	var body []line
	for i := from; i < min(from+s.h-1, len(jobs)); i++ {
		body = append(body, p.row(m, jobs[i], i == p.at, s.w))
	}
	name, title := "Left out", m.line()
	if p.after != nil {
		name = m.safe(p.after.ID) + " comes after"
		title.add(faint, "Enter puts a job before it, or frees it")
	} else {
		title.add(faint, "Enter brings a job back, x takes it out of the day")
	}
	return m.page(name, title, body, onList)
}

// row is one job of the list.
func (p *jobPick) row(m *model, j *plan.Job, on bool, w int) line {
	l := m.line()
	if on {
		l.add(picked, m.cursor)
	}
	l.to(2)
	if p.after != nil {
		mark := " "
		if slices.Contains(p.after.After, j.ID) {
			mark = "<"
		}
		l.left(accent, mark, 2)
	}
	l.left(pick(on, strong), j.ID, m.idWidth()+2)
	state := map[plan.State]string{plan.Running: "running", plan.Done: "done", plan.Aside: "aside"}[j.State]
	l.left(faint, state, 9)
	l.add(faint, m.short(j.Material, max(w-l.width, 0)))
	return l
}
