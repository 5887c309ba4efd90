package ui

import (
	"fmt"
	"slices"
	"time"

	"bide/plan"
	"bide/plan/shop"

	tea "github.com/charmbracelet/bubbletea"
)

// What is done on a walk. Each deed is written down first; then the screen says so.

// change begins a deed of the walk: what stands now, to be changed, with the
// changeover begun in it. The job that ran before has then ended: the machine stands.
func (w *walk) change(d *desk) (deed, states) {
	now, turn := d.truth.stands, w.turnOf(d)
	ended := states{}
	out := deed{}
	if turn > 0 && w.o != nil {
		now = d.before(turn)
		for _, j := range d.jobs()[:turn] {
			if j.State != plan.Running {
				continue
			}
			ended[j.ID] = plan.Done
			out.events = append(out.events, shop.Event{Time: d.keep.clock(), Kind: shop.EventJob, Job: j.ID, State: plan.Done, Metres: j.Metres})
		}
	}
	stands := *now
	stands.At = slices.Clone(d.truth.stands.At)
	stands.Recorded, stands.Assumed = d.keep.clock(), false
	setting := plan.Setting{Job: w.job.ID, Slits: w.job.Slits()}
	if w.o != nil && len(w.o.faults) == 0 {
		setting.Slits, setting.Shift = w.o.step.Layout.Slits, w.o.step.Layout.Shift
		for _, h := range w.o.step.Changeover.Holders {
			setting.To = append(setting.To, h.At)
		}
	}
	if s := d.truth.stands.Setting; s != nil && s.Job == w.job.ID {
		setting = *s
		setting.Made = slices.Clone(s.Made)
	}
	stands.Setting = &setting
	out.truth = truth{&stands, d.truth.marks}
	out.day = d.dayWith(ended)
	return out, ended
}

// begun tells the day what a first deed means for it.
func (w *walk) begun(d *desk, ended states) {
	if turn := w.turnOf(d); turn > 0 && len(ended) > 0 {
		last := turn - 1
		d.become(ended)
		d.carryOn(last)
		d.turn, d.move = max(w.turnOf(d), 0), 0
	}
}

// leastPause is the least time between two ticks: a key that is held down or bounces
// makes one. No move is made in less.
const leastPause = 500 * time.Millisecond

// tick tells that the move looked at was made.
func (w *walk) tick(m *model) tea.Cmd {
	move := w.move(m.desk)
	switch {
	case w.o == nil:
		m.say("wait: the rest is being planned")
		return nil
	case w.refused():
		m.say("%s can't be set up from what stands", w.job.ID)
		return nil
	case move == nil:
		m.say("all moves are made: %s tells that %s is set up", m.keyFor(setUp), w.job.ID)
		return nil
	}
	if n := m.forecast.beam.Blocks(m.truth.stands.At, *move); n != 0 {
		m.say("holder %d can't go yet: holder %d is in its way and goes first", move.Holder, n)
		return nil
	}
	if m.keep.now().Sub(w.ticked).Abs() < leastPause {
		m.say("that was quick: once more, when the move is made")
		return nil
	}
	d, ended := w.change(m.desk)
	d.stands.At[move.Holder-1] = move.To
	d.stands.Setting.Made = append(d.stands.Setting.Made, plan.Made{Holder: move.Holder, From: move.From})
	d.events = append(d.events, shop.Event{Time: m.keep.clock(), Kind: shop.EventMoved, Holder: move.Holder, From: move.From, To: move.To, Job: w.job.ID})
	d.done = func(said string) {
		w.begun(m.desk, ended)
		w.look, w.ticked = 0, m.keep.now()
		m.say("%s", join("; ", m.notKept()+fmt.Sprintf("%d made: it stands at %s", move.Holder, m.shop.Unit.Show(move.To)), said))
	}
	return m.perform(d)
}

// untick takes the last tick back: that move was not made.
func (w *walk) untick(m *model) tea.Cmd {
	made := w.made(m.desk)
	if len(made) == 0 {
		m.say("no move is ticked that could be taken back")
		return nil
	}
	last := made[len(made)-1]
	d, ended := w.change(m.desk)
	at := d.stands.At[last.Holder-1]
	d.stands.At[last.Holder-1] = last.From
	if faults := m.forecast.beam.Misplaced(d.stands.At); len(faults) > 0 {
		m.say("it can't have stayed there: %s", faults[0].Why(m.shop.Unit))
		return nil
	}
	d.stands.Setting.Made = d.stands.Setting.Made[:len(made)-1]
	d.events = append(d.events, shop.Event{Time: m.keep.clock(), Kind: shop.EventUnmoved, Holder: last.Holder, From: last.From, To: at, Job: w.job.ID})
	d.done = func(said string) {
		w.begun(m.desk, ended)
		if !w.holds(m.desk) {
			w.replan(m)
		}
		w.look = max(slices.IndexFunc(w.ahead(m.desk), func(a plan.Move) bool { return a.Holder == last.Holder }), 0)
		m.say("%s", join("; ", fmt.Sprintf("holder %d is back at %s: that move is not made", last.Holder, m.shop.Unit.Show(last.From)), said))
	}
	return m.perform(d)
}

// holds reports whether the plan walked still leads on: each holder stands where the
// plan took it from, or where it leads it.
func (w *walk) holds(d *desk) bool {
	if w.o == nil || len(w.o.faults) > 0 {
		return false
	}
	c := &w.o.step.Changeover
	for i, x := range d.truth.stands.At {
		if x != c.From[i] && x != c.Holders[i].At {
			return false
		}
	}
	return true
}

// replan has the rest planned from what stands.
func (w *walk) replan(m *model) {
	m.stand(m.truth)
	w.o, w.look = nil, 0
	w.follow(m.desk)
}

// correct tells that holders stand elsewhere than thought, or are in another
// condition; the rest is planned again.
func (w *walk) correct(m *model, places map[int]plan.Length, marks map[int]shop.Mark, what string) tea.Cmd {
	d, ended := w.change(m.desk)
	for n := range d.stands.At {
		if to, told := places[n+1]; told && to != d.stands.At[n] {
			d.events = append(d.events, shop.Event{Time: m.keep.clock(), Kind: shop.EventFound, Holder: n + 1, From: d.stands.At[n], To: to, Job: w.job.ID})
			d.stands.At[n] = to
		}
		if mark, told := marks[n+1]; told {
			d.marks = d.truth.marked(n+1, mark, m.shop).marks
			d.events = append(d.events, shop.Event{Time: m.keep.clock(), Kind: shop.EventCondition, Holder: n + 1, Condition: mark.Condition, Reason: mark.Reason, Job: w.job.ID})
		}
	}
	d.done = func(said string) {
		w.begun(m.desk, ended)
		w.replan(m)
		m.say("%s", join("; ", what, said))
	}
	return m.perform(d)
}

// finish tells that the changeover is done: the job runs.
func (w *walk) finish(m *model) tea.Cmd {
	switch {
	case w.o == nil || w.refused():
		m.say("there is no plan to finish")
		return nil
	case len(w.ahead(m.desk)) > 0:
		m.say("%s still to be made", count(len(w.ahead(m.desk)), "move"))
		return nil
	}
	d, _ := w.change(m.desk)
	d.stands = w.o.after(d.stands)
	d.stands.Recorded = m.keep.clock()
	became := states{w.job.ID: plan.Running}
	for _, j := range m.jobs() {
		if j != w.job && j.State == plan.Running {
			became[j.ID] = plan.Done
		}
	}
	d.day = m.dayWith(became)
	d.events = append(d.events, shop.Event{Time: m.keep.clock(), Kind: shop.EventJob, Job: w.job.ID, State: plan.Running})
	begins := w.o.step.RunStart // in an invented day time goes as planned
	if m.keep.barred == "" {
		begins = m.shop.Day.Begins(d.stands)
	}
	d.done = func(said string) {
		m.become(became)
		m.start.clock = begins
		m.stand(m.truth)
		m.over, m.turn, m.move = nil, 0, 0
		m.say("%s", join("; ", w.job.ID+" is set up and runs", said))
	}
	return m.perform(d)
}

// after is what stands when the changeover is done: what it carries and where, but
// nothing run yet with it.
func (o *outcome) after(now *plan.Standing) *plan.Standing {
	stands := *o.stands
	stands.At = slices.Clone(now.At)
	stands.Metres = slices.Clone(now.Metres)
	for i := range stands.Metres {
		if i < len(now.Blades) && now.Blades[i].Known() && stands.Blades[i] != now.Blades[i] {
			stands.Metres[i] = 0 // a fresh edge
		}
	}
	return &stands
}

// again saves what could not be saved.
func (w *walk) again(m *model) tea.Cmd {
	if m.unsaved == "" {
		m.say("all that was told is saved")
		return nil
	}
	return m.perform(deed{truth: m.truth, done: func(said string) {
		if m.unsaved == "" {
			m.say("%s", join("; ", "all that was told is saved now", said))
		}
	}})
}

// notKept says so where what was done is in memory alone.
func (d *desk) notKept() string {
	if d.keep.barred != "" || d.unsaved != "" {
		return "not saved: "
	}
	return ""
}
