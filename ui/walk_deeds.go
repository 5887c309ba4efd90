package ui

import (
	"fmt"
	"slices"
	"time"

	"bide/plan"
	"bide/plan/session/planning"
	"bide/plan/shop"
	"bide/plan/words"
	"bide/ui/keys"

	tea "github.com/charmbracelet/bubbletea"
)

// What is done on a walk. Each deed is written down first; then the screen says so.

// change begins a deed of the walk: what stands now, to be changed, with the
// changeover begun in it. The job that ran before has then ended: the machine stands.
func (w *walk) change(d *desk) (deed, states) {
	now, turn := d.truth.stands, w.turnOf(d)
	became, out := states{}, deed{}
	if turn > 0 && w.o != nil {
		now = d.before(turn)
		for _, j := range d.jobs()[:turn] {
			if j.State == plan.Running {
				became[j.ID] = w.became
				e := shop.Event{Time: d.keep.clock(), Kind: shop.EventJob, Job: j.ID, State: w.became}
				if w.became == plan.Done {
					e.Metres = j.Metres
				}
				out.events = append(out.events, e)
			}
		}
	}
	stands := *now
	stands.At = slices.Clone(d.truth.stands.At)
	stands.Recorded, stands.Assumed = d.keep.clock(), false
	stands.Setting = w.setting(d)
	out.truth = truth{&stands, d.truth.marks}
	return out, became
}

// setting is the changeover under way, to be changed; as it begins, where it has not.
func (w *walk) setting(d *desk) *plan.Setting {
	if s := d.truth.stands.Setting; s != nil && s.Job == w.job.ID {
		out := *s
		out.Made = slices.Clone(s.Made)
		if s.Found {
			w.leadsTo(&out)
		}
		return &out
	}
	out := &plan.Setting{Job: w.job.ID, Slits: w.job.Slits()}
	w.leadsTo(out)
	return out
}

// leadsTo puts into a changeover under way where the plan walked leads, if there is one.
func (w *walk) leadsTo(s *plan.Setting) {
	if w.o == nil || len(w.o.Faults) > 0 {
		return
	}
	s.Slits, s.Shift, s.To, s.Found = w.o.Step.Layout.Slits, w.o.Step.Layout.Shift, nil, false
	for _, h := range w.o.Step.Changeover.Holders {
		s.To = append(s.To, h.At)
	}
}

// begun tells the day what a first deed means for it.
func (w *walk) begun(d *desk, became states) {
	turn := w.turnOf(d)
	d.become(became)
	if turn > 0 && len(became) > 0 {
		d.carryOn(turn - 1)
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
		m.say("all moves are made: %s tells that %s is set up", m.KeyFor(keys.Runs), w.job.ID)
		return nil
	}
	if n := m.forecast.Beam.Blocks(m.truth.stands.At, *move); n != 0 {
		m.say("holder %d can't go yet: holder %d is in its way and goes first", move.Holder, n)
		m.news.brief = fmt.Sprintf("%d goes first", n)
		return nil
	}
	if m.keep.now().Sub(w.ticked).Abs() < leastPause {
		m.say("that was quick: once more, when the move is made")
		m.news.brief = "quick! once more"
		return nil
	}
	if w.asks(m, w.tick) {
		return nil
	}
	d, became := w.change(m.desk)
	d.stands.At[move.Holder-1] = move.To
	d.stands.Setting.Made = append(d.stands.Setting.Made, plan.Made{Holder: move.Holder, From: move.From})
	d.events = append(d.events, shop.Event{Time: m.keep.clock(), Kind: shop.EventMoved, Holder: move.Holder, From: move.From, To: move.To, Job: w.job.ID})
	what := fmt.Sprintf("%d made", move.Holder)
	return w.tell(m, d, became, what, what+": it stands at "+m.shop.Unit.Show(move.To), func() {
		w.begun(m.desk, became)
		w.look, w.ticked = 0, m.keep.now()
	})
}

// untick takes back the last tick that positions.toml has: that move was not made.
func (w *walk) untick(m *model) tea.Cmd {
	made := w.made(m.desk)
	if len(made) == 0 {
		m.say("nothing told on this walk is left to be taken back")
		return nil
	}
	last := made[len(made)-1]
	d, became := w.change(m.desk)
	at := d.stands.At[last.Holder-1]
	d.stands.At[last.Holder-1] = last.From
	if faults := m.forecast.Beam.Misplaced(d.stands.At); len(faults) > 0 {
		m.say("it can't have stayed there: %s", faults[0].Why(m.shop.Unit))
		return nil
	}
	d.stands.Setting.Made = d.stands.Setting.Made[:len(made)-1]
	d.events = append(d.events, shop.Event{Time: m.keep.clock(), Kind: shop.EventMoved, Holder: last.Holder, From: last.From, To: at, Job: w.job.ID}.TakenBack(m.keep.clock()))
	d.day = m.dayWith(became)
	d.done = func(said string) {
		w.begun(m.desk, became)
		if !w.holds(m.desk) {
			w.replan(m, nil)
		}
		w.lookAt(m.desk, last.Holder)
		m.say("%s", words.Join("; ", m.notKept()+fmt.Sprintf("taken back: holder %d is at %s again", last.Holder, m.shop.Unit.Show(last.From)), said))
		m.news.brief = m.notKept() + fmt.Sprintf("%d taken back", last.Holder)
	}
	return m.perform(d)
}

// lookAt looks at the move of a holder, if it is still to be made.
func (w *walk) lookAt(d *desk, holder int) {
	w.look = max(slices.IndexFunc(w.ahead(d), func(a plan.Move) bool { return a.Holder == holder }), 0)
}

// holds reports whether the plan walked still leads on: each holder stands where the
// plan took it from, or where it leads it.
func (w *walk) holds(d *desk) bool {
	if w.o == nil || len(w.o.Faults) > 0 {
		return false
	}
	c := &w.o.Step.Changeover
	for i, x := range d.truth.stands.At {
		if x != c.From[i] && x != c.Holders[i].At {
			return false
		}
	}
	return true
}

// replan has the rest planned from what stands, and what that came to told against the
// plan before, if there is one.
func (w *walk) replan(m *model, was *planned) {
	m.stand(m.truth)
	w.o, w.look, w.from, w.was = nil, 0, 0, was
}

// correct tells that holders stand elsewhere than thought, or are in another
// condition; the rest is planned again.
func (w *walk) correct(m *model, places map[int]plan.Length, marks map[int]shop.Mark, what, says string) tea.Cmd {
	if w.asks(m, func(m *model) tea.Cmd { return w.correct(m, places, marks, what, says) }) {
		return nil
	}
	w.form = nil
	was := &planned{len(w.ahead(m.desk)), m.able()}
	d, became := w.change(m.desk)
	for n := range d.stands.At {
		if to, told := places[n+1]; told && to != d.stands.At[n] {
			d.events = append(d.events, shop.Event{Time: m.keep.clock(), Kind: shop.EventCorrected, Holder: n + 1, From: d.stands.At[n], To: to, Job: w.job.ID})
			d.stands.At[n], d.stands.Setting.Found = to, true
		}
		if mark, told := marks[n+1]; told {
			d.marks = d.truth.marked(n+1, mark, m.shop).marks
			d.events = append(d.events, shop.Event{Time: m.keep.clock(), Kind: shop.EventCondition, Holder: n + 1, Condition: mark.Condition, Reason: mark.Reason, Job: w.job.ID})
		}
	}
	return w.tell(m, d, became, what, says, func() {
		w.begun(m.desk, became)
		w.replan(m, was)
	})
}

// finish tells that the changeover is done: the job runs.
func (w *walk) finish(m *model) tea.Cmd {
	switch {
	case w.o == nil || w.refused():
		m.say("there is no plan to finish")
		return nil
	case len(w.ahead(m.desk)) > 0:
		m.say("%s still to be made", words.Count(len(w.ahead(m.desk)), "move"))
		return nil
	case w.asks(m, w.finish):
		return nil
	}
	d, became := w.change(m.desk)
	d.stands = carriedOver(w.o, d.stands)
	d.stands.Recorded = m.keep.clock()
	became[w.job.ID] = plan.Running
	for _, j := range m.jobs() {
		if _, ended := became[j.ID]; j.State == plan.Running && !ended {
			became[j.ID] = plan.Done
		}
	}
	d.events = append(d.events, shop.Event{Time: m.keep.clock(), Kind: shop.EventJob, Job: w.job.ID, State: plan.Running})
	return w.tell(m, d, became, w.job.ID+" runs (u undo)", w.job.ID+" is set up and runs (u takes that back)", func() { w.ran(m, became) })
}

// ran goes back to the panes when the job runs; u there takes it back.
func (w *walk) ran(m *model, became states) {
	last := m.claims[len(m.claims)-1]
	last.finished = w
	m.become(became)
	next := m.history.now
	next.about, next.did, next.remark, next.ran = "", "", nil, last
	m.history.do(next)
	m.forecast.Start.Clock = w.o.Step.RunStart // in an invented day time goes as planned
	m.stand(m.truth)
	if m.over == overlay(w) {
		m.over = nil
	}
	m.turn, m.move, m.ran = 0, 0, w.job.ID
	if next := m.nextUp(); next >= 0 {
		m.pick(next) // what is to be set up then
	}
}

// carriedOver is what stands when the changeover is done: what it carries and where, but
// nothing run yet with it.
func carriedOver(o *planning.Outcome, now *plan.Standing) *plan.Standing {
	stands := *o.Standing
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
	if !m.owes() {
		m.say("all that was told is saved")
		return nil
	}
	return m.perform(deed{truth: m.truth, done: func(said string) {
		switch {
		case m.owes() && m.unsaved == "":
			m.say("%s", "not saved: "+said)
		case m.unsaved == "":
			m.say("%s", words.Join("; ", "all that was told is saved now", said))
			m.news.brief = "all is saved now"
		}
	}})
}

// owes reports whether something told isn't written down.
func (d *session) owes() bool { return d.unsaved != "" || sumOf(d.owing) != "" }

// notKept says so where what was done is in memory alone.
func (d *session) notKept() string {
	if !d.keep.demo && d.keep.barred != "" || d.unsaved != "" {
		return "not saved: "
	}
	return ""
}
