package workday

import (
	"slices"

	"bide/plan"
	"bide/plan/session/planning"
)

// Moving is a job that is to be moved, with what each number in the sequence would cost.
type Moving struct {
	planning.MoveCosts
	To int // picked: how many of the other jobs come before it then
}

// mover moves a job, once a person has seen what that costs.
type mover struct {
	*planning.MoveTo
	day *Day
	to  int
}

// MoveTo looks at moving a job.
func (d *Day) MoveTo(j *plan.Job) {
	if j.State == plan.Running {
		d.Say("%s is running: it stays where it is", j.ID)
		return
	}
	turn := slices.Index(d.Jobs(), j)
	d.Mover = &mover{d.Forecast.MoveTo(turn, d.Now.Done()), d, turn}
}

// Pick picks how many of the other jobs are to come before it.
func (m *mover) Pick(to int) { m.to = to }

// Stop leaves the job where it is.
func (m *mover) Stop() {
	m.end()
	m.day.Say("%s stays where it is", m.Job.ID)
}

func (m *mover) end() {
	m.End()
	m.day.Mover = nil
}

// Move moves the job to the picked number.
func (m *mover) Move() {
	switch {
	case m.Barred(m.to):
		m.day.Say("%s is running: nothing can come before it", m.Rest[m.to].ID)
	case m.to == m.Was:
		m.Stop()
	default:
		next := m.day.Now.Ordered(m.Apply(m.to))
		m.end()
		next.About = m.Job.ID
		m.day.do(next)
	}
}

// again looks at moving the same job in a day that begins otherwise now. Where it can't be
// moved any more that is said.
func (m *mover) again() {
	d := m.day
	m.end()
	turn := slices.IndexFunc(d.Jobs(), func(j *plan.Job) bool { return j.ID == m.Job.ID && j.State != plan.Running })
	if turn < 0 {
		d.mention(m.Job.ID + " doesn't wait any more, and can't be moved")
		return
	}
	d.Screen.Look(turn)
	d.MoveTo(d.Jobs()[turn])
	if m.to != m.Was {
		d.Mover.to = min(m.to, len(d.Mover.Rest))
	}
}
