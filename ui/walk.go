package ui

import (
	"fmt"
	"slices"
	"time"

	"bide/plan"
	"bide/plan/session/planning"
	"bide/plan/words"
	"bide/ui/draw"
	"bide/ui/keys"

	tea "github.com/charmbracelet/bubbletea"
)

// walk goes through one changeover at the machine, one move at a time, over the
// whole screen. What was made is what really stands (the desk's truth); what is
// still to be made follows from that and from the plan, which stays the same from
// the first move to the last unless something is found to stand elsewhere.
type walk struct {
	job    *plan.Job
	o      *planning.Outcome // the plan that is walked; nil while it is worked out
	look   int               // which of the moves ahead is looked at; 0 is the next
	from   int               // first line shown of a text that is longer than the screen
	warned bool              // the cautions were seen
	form   *correction       // nil when none is open
	ticked time.Time         // when the last move was ticked
	was    *planned          // the plan before what was told last; nil when that changed none

	ending *ending    // asks what became of the job that ran before; nil when nothing does
	became plan.State // that; done unless something else was told
	sure   bool       // it was told
}

func (w *walk) Fits(draw.Size) bool { return true }

// Help is where the keys work.
func (w *walk) Help() keys.Scope {
	switch {
	case w.ending != nil:
		return keys.OnEnding
	case w.form != nil:
		return keys.OnCorrection
	case !w.warned:
		return keys.OnCautions
	}
	return keys.OnSetup
}

// setOut begins the walk, after asking again for the right to write where that is
// another's.
func (m *model) setOut() tea.Cmd {
	if !m.keep.asks {
		m.begin()
		return nil
	}
	return m.askAgain(nil, func(freed) tea.Cmd {
		said := m.news.text
		m.begin()
		m.news.text = words.Join("; ", said, m.news.text)
		return nil
	})
}

// begin begins the walk to the job that the beam is to be set up for next.
func (m *model) begin() {
	turn := m.nextUp()
	if turn < 0 {
		m.say("no job is waiting: there is nothing to set up")
		return
	}
	if picked := m.job(); m.turn != turn {
		m.pick(turn)
		m.say("%s comes first: the walk is to that, not to %s", m.job().ID, picked.ID)
	}
	w := &walk{job: m.job(), became: plan.Done}
	w.follow(m.desk)
	m.over = w
}

// nextUp is the turn of the job that the beam is to be set up for: the first that
// doesn't run already and that the beam can run, or that is half set up. Where the
// beam can run none it is the first of them, to be told why; -1 when none is left.
func (d *session) nextUp() int {
	first, half := -1, ""
	if s := d.truth.stands.Setting; s != nil {
		half = s.Job
	}
	for t, j := range d.jobs() {
		o := d.outcome(t)
		runs := j.State == plan.Running && d.truth.stands.Job == j.ID && half == ""
		if runs && (o == nil || o.Step.Changeover.Repositions == 0) {
			continue
		}
		if o == nil || len(o.Faults) == 0 || j.ID == half {
			return t
		}
		if first < 0 {
			first = t
		}
	}
	return first
}

// turnOf is the turn of the walk's job; -1 when it has none any more.
func (w *walk) turnOf(d *desk) int { return slices.Index(d.jobs(), w.job) }

// running is the job that runs before the walk's; nil without one.
func (w *walk) running(d *desk) *plan.Job {
	for _, j := range d.jobs()[:max(w.turnOf(d), 0)] {
		if j.State == plan.Running {
			return j
		}
	}
	return nil
}

// follow takes the plan as soon as it is there, and says what it came to where it is a
// new one.
func (w *walk) follow(d *desk) {
	turn := w.turnOf(d)
	if turn < 0 || w.o != nil || !d.forecast.Present.Whole() { // what is known before may change yet
		return
	}
	w.o = d.outcome(turn)
	if w.was != nil && d.news.text != "" {
		d.news.text = words.Join("; ", d.news.text, w.against(d))
	}
	w.was = nil
}

// planned is what a plan came to, to tell another one by.
type planned struct {
	left int         // moves
	able []*plan.Job // that could be run
}

// against tells what the plan came to, and which jobs of the day can't be run any more,
// against the one before.
func (w *walk) against(d *desk) string {
	text := ""
	if !w.refused() {
		text = fmt.Sprintf("planned again: %s left, %d before", words.Count(len(w.ahead(d)), "move"), w.was.left)
	}
	still := slices.DeleteFunc(w.was.able, func(j *plan.Job) bool { return len(lacking([]*plan.Job{j}, d.jobs())) > 0 }) // one may have ended
	return words.Join("; ", text, ables(still, d.able()))
}

// follow lets a walk that is under way see what has been worked out.
func (m *model) follow() {
	if w, ok := m.over.(*walk); ok {
		w.follow(m.desk)
	}
}

// refused reports whether the job can't be set up from what stands.
func (w *walk) refused() bool { return w.o != nil && len(w.o.Faults) > 0 }

// ahead are the moves still to be made, in the plan's order.
func (w *walk) ahead(d *desk) (out []plan.Move) {
	if w.o == nil {
		return nil
	}
	for _, m := range w.o.Step.Changeover.Moves {
		if d.truth.stands.At[m.Holder-1] != m.To {
			out = append(out, m)
		}
	}
	return out
}

// made are the moves that were made of this changeover, first to last.
func (w *walk) made(d *desk) []plan.Made {
	if s := d.truth.stands.Setting; s != nil && s.Job == w.job.ID {
		return s.Made
	}
	return nil
}

// move is the one looked at; nil when none is left.
func (w *walk) move(d *desk) *plan.Move {
	ahead := w.ahead(d)
	if len(ahead) == 0 {
		return nil
	}
	return &ahead[min(w.look, len(ahead)-1)]
}

// HandleKey walks on, or back, or looks ahead.
func (w *walk) HandleKey(a keys.Action, m *model) tea.Cmd {
	switch {
	case w.ending != nil:
		return w.answered(a, m)
	case w.form != nil:
		return w.answer(a, m)
	}
	last := max(len(w.ahead(m.desk))-1, 0)
	switch a {
	case keys.Proceed:
		w.warned, w.from = true, 0
	case keys.Confirm:
		return w.tick(m)
	case keys.TakeBack:
		return w.takeBack(m)
	case keys.Runs:
		return w.finish(m)
	case keys.Correct:
		w.form = newFoundForm(w.move(m.desk))
	case keys.Fault:
		w.form = newTroubleForm(w.move(m.desk))
	case keys.SaveAgain:
		return w.again(m)
	case keys.Reread:
		return m.readAgain()
	case keys.Left, keys.Up:
		w.look, w.from = max(w.look-1, 0), max(w.from-1, 0)
	case keys.Right, keys.Down:
		if w.from = min(w.from+1, w.beyond(m)); w.warned {
			w.look = min(w.look+1, last)
		}
	case keys.Top:
		w.look, w.from = 0, 0
	case keys.Bottom:
		w.look = last
	case keys.Back:
		w.leave(m)
	}
	return nil
}

// leave goes back to the panes. The day then begins with what stands.
func (w *walk) leave(m *model) {
	m.over = nil
	was := m.forecast.Start.Clock
	if m.forecast.Start.Standing != m.truth.stands {
		m.stand(m.truth)
	}
	if len(w.made(m.desk)) > 0 {
		m.say("%s", words.Join("; ", w.job.ID+" is half set up: w goes on with it", m.byTheWall(was)))
	}
}
