package ui

import (
	"fmt"
	"maps"
	"slices"
	"time"

	"bide/plan"
	"bide/plan/shop"
	"bide/plan/words"

	tea "github.com/charmbracelet/bubbletea"
)

// claim is something told of the beam on a walk, so that it can be taken back: what was
// true before and after it, what of it is in the record, and which jobs came into other
// states by it.
type claim struct {
	job      string // id of the walk's
	what     string // it, in few words
	was, is  truth
	events   []shop.Event
	were     states // of the jobs that came into other states, those before
	finished *walk  // the walk that it ended; nil while that goes on
}

// tell has a deed of the walk written down, to be taken back with u; then it goes on,
// and says what was told, in full or in few words. Jobs have become what they became by it.
func (w *walk) tell(m *model, d deed, became states, what, says string, then func()) tea.Cmd {
	t, was := &claim{job: w.job.ID, what: what, was: m.truth, is: d.truth, events: d.events, were: m.statesOf(became)}, m.forecast.Start.Clock
	d.day = m.dayWith(became)
	d.done = func(said string) {
		m.claims = append(m.claims, t)
		then()
		m.say("%s", words.Join("; ", m.notKept()+says, outcomes(became, w.job.ID), said, m.byTheWall(was)))
		m.news.brief = m.notKept() + what
	}
	return m.perform(d)
}

// byTheWall says that the day goes on by the clock on the wall from here on, where it
// began as its file has it before; else nothing.
func (d *session) byTheWall(was time.Time) string {
	if now := d.forecast.Start.Clock; was.Equal(d.shop.Day.Start) && !now.Equal(was) {
		return "the day goes by the real time now, from " + d.at(now) + " on"
	}
	return ""
}

// statesOf are the present states of these jobs.
func (d *session) statesOf(jobs states) states {
	out := states{}
	for id := range jobs {
		if j := d.history.now.find(id); j != nil {
			out[id] = j.State
		}
	}
	return out
}

// outcomes tell what became of other jobs.
func outcomes(became states, but string) string {
	var parts []string
	for _, id := range slices.Sorted(maps.Keys(became)) {
		if id != but {
			parts = append(parts, id+" is "+map[plan.State]string{plan.Done: "done", plan.Aside: "set aside", plan.Running: "running", plan.Waiting: "waiting again"}[became[id]])
		}
	}
	return words.Join(", ", parts...)
}

// takeBack takes back what was told last on this walk; after a restart, the last tick
// that positions.toml has. That the job ran, told at the end of an earlier walk to it, is
// taken back as in the panes.
func (w *walk) takeBack(m *model) tea.Cmd {
	n := len(m.claims)
	if n == 0 || m.claims[n-1].job != w.job.ID {
		return w.untick(m)
	}
	last := m.claims[n-1]
	if last.finished != nil {
		return m.unrun(last)
	}
	return m.unsay(last, func() { w.resume(m, last) })
}

// backable reports whether there is something to take back.
func (w *walk) backable(d *desk) bool {
	n := len(d.claims)
	return n > 0 && d.claims[n-1].job == w.job.ID || len(w.made(d)) > 0
}

// unsay has a thing told written down as told by mistake.
func (m *model) unsay(t *claim, then func()) tea.Cmd {
	back, wrong := t.before(m.truth)
	if faults := m.forecast.Beam.Misplaced(back.stands.At); wrong == "" && len(faults) > 0 {
		wrong = faults[0].Why(m.shop.Unit)
	}
	if wrong != "" {
		m.say("%s can't be taken back: %s", t.what, wrong)
		return nil
	}
	now := m.keep.clock()
	if back.stands.Setting != nil { // else it stands again as it was recorded then
		back.stands.Recorded = now
	}
	d := deed{truth: back, day: m.dayWith(t.were)}
	for _, e := range slices.Backward(t.events) {
		d.events = append(d.events, e.TakenBack(now))
	}
	d.done = func(said string) {
		m.claims = slices.DeleteFunc(m.claims, func(c *claim) bool { return c == t })
		m.become(t.were)
		then()
		m.say("%s", words.Join("; ", m.notKept()+"taken back: "+words.Join(", ", m.again(t), outcomes(t.were, "")), said))
		m.news.brief = m.notKept() + m.briefly(t)
	}
	return m.perform(d)
}

// again tells where holders stand and how they are marked again, what was told of them
// taken back.
func (m *model) again(t *claim) string {
	var parts []string
	for _, e := range t.events {
		switch e.Kind {
		case shop.EventMoved, shop.EventCorrected:
			parts = append(parts, fmt.Sprintf("%d is at %s again", e.Holder, m.shop.Unit.Show(e.From)))
		case shop.EventCondition:
			parts = append(parts, fmt.Sprintf("%d is %s again", e.Holder, m.forecast.Beam.Holders[e.Holder-1]))
		}
	}
	return words.Join(", ", parts...)
}

// briefly tells in few words what is so again.
func (m *model) briefly(t *claim) string {
	if len(t.events) == 0 {
		return "taken back"
	}
	found := 0
	for _, e := range t.events {
		if e.Kind == shop.EventCorrected {
			found++
		}
	}
	switch e := t.events[len(t.events)-1]; {
	case e.Kind == shop.EventMoved:
		return fmt.Sprintf("%d taken back", e.Holder)
	case e.Kind == shop.EventCondition:
		return fmt.Sprintf("%d is %s again", e.Holder, m.forecast.Beam.Holders[e.Holder-1])
	case found > 1:
		return fmt.Sprintf("%d as thought again", found)
	case found == 1:
		return fmt.Sprintf("%d as thought again", e.Holder)
	case e.Job != "":
		return e.Job + " waits again"
	}
	return "taken back"
}

// before is what is true without what was told: of what has changed since, what was
// told changes nothing. wrong is why it can't be taken out any more.
func (t *claim) before(now truth) (out truth, wrong string) {
	stands := *t.was.stands
	stands.At, stands.Assumed = slices.Clone(now.stands.At), false
	for i, is := range t.is.stands.At {
		switch was := t.was.stands.At[i]; {
		case was == is:
		case now.stands.At[i] != is:
			wrong = fmt.Sprintf("holder %d stands elsewhere since", i+1)
		default:
			stands.At[i] = was
		}
	}
	marks := maps.Clone(now.marks)
	for _, n := range slices.Concat(slices.Collect(maps.Keys(t.was.marks)), slices.Collect(maps.Keys(t.is.marks))) {
		was, before := t.was.marks[n]
		is, after := t.is.marks[n]
		switch {
		case was == is && before == after:
		case now.marks[n] != is:
			wrong = fmt.Sprintf("holder %d has been marked otherwise since", n)
		case before:
			if marks == nil {
				marks = shop.Marks{}
			}
			marks[n] = was
		default:
			delete(marks, n)
		}
	}
	return truth{&stands, marks}, wrong
}

// resume goes on with the walk after something was taken back: with the plan as it is
// where only a tick was, else with a new one.
func (w *walk) resume(m *model, t *claim) {
	if len(t.were) > 0 {
		w.became, w.sure = plan.Done, false
	}
	tick := len(t.were) == 0 && len(t.events) == 1 && t.events[0].Kind == shop.EventMoved
	if !tick || !w.holds(m.desk) {
		w.replan(m, nil)
		return
	}
	w.lookAt(m.desk, t.events[0].Holder)
}

// unrun takes back that a job is set up and runs: its walk goes on at its end. What was
// edited since stays.
func (m *model) unrun(t *claim) tea.Cmd {
	if !slices.Contains(m.claims, t) {
		m.say("that %s runs was taken back already", t.job)
		return nil
	}
	if s := m.truth.stands.Setting; s != nil {
		m.say("%s is half set up: take that back first, with w and then u", s.Job)
		return nil
	}
	return m.unsay(t, func() {
		m.history.drop(func(f draft) bool { return f.ran == t })
		w := t.finished
		w.job, w.look = m.history.now.find(t.job), 0
		m.over = w
		m.stand(m.truth)
	})
}

// undo takes the last change back.
func (m *model) undo() tea.Cmd {
	if t := m.history.now.ran; t != nil {
		return m.unrun(t)
	}
	m.desk.undo()
	return nil
}
