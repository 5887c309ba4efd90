package ui

import (
	"errors"
	"fmt"
	"slices"
	"time"

	"bide/plan"
	"bide/plan/shop"
	"bide/plan/words"

	tea "github.com/charmbracelet/bubbletea"
)

// A shop that another screen has can only be looked at. Whenever something is to be
// written, the right is asked for again: the other may have ended. What stands may have
// changed meanwhile; it is then read again before anything is written.

// freed comes when the right to write was asked for again.
type freed struct {
	lock   *shop.Lock // nil: it wasn't given
	barred string     // why not
	files  []string   // that another has changed
	fresh  *shop.Shop // those read again; else nil
	hand   *deed      // that the right is wanted for; nil where it is for another thing
	then   func(freed) tea.Cmd
}

// ask asks for the right to write the shop's folder; without it, why.
func (k *keeper) ask(now time.Time) (lock *shop.Lock, barred string) {
	lock, err := shop.TakeLock(k.shop.Dir, now)
	var taken *shop.TakenError
	switch {
	case errors.As(err, &taken):
		return nil, taken.Error() + ": nothing is written"
	case err != nil:
		return nil, err.Error() + ": nothing is written"
	}
	return lock, ""
}

// own has the right to write from here on, and owes the record what was told before.
func (k *keeper) own(lock *shop.Lock, owed []shop.Event, day *filed) {
	k.mutex.Lock()
	defer k.mutex.Unlock()
	k.lock, k.barred, k.asks = lock, "", false
	k.owed, k.day = append(k.owed, owed...), day
	if k.closed {
		lock.Release()
	}
}

// askAgain asks for the right to write, in the background, and goes on with what it is
// wanted for: a deed, if that is in hand.
func (d *session) askAgain(hand *deed, then func(freed) tea.Cmd) tea.Cmd {
	if d.saving {
		d.tellsToWait()
		return nil
	}
	d.saving = true
	keep, old, now := d.keep, d.shop, d.keep.now()
	return func() tea.Msg {
		f := freed{hand: hand, then: then}
		f.lock, f.barred = keep.ask(now)
		if f.files = old.Changed(); len(f.files) == 0 {
			return f
		}
		fresh, problems := shop.Open(old.Dir)
		if len(problems) > 0 && f.lock != nil {
			f.lock.Release()
			return freed{barred: "the shop is free, but " + problems[0].String() + ": nothing is written", hand: hand, then: then}
		}
		f.fresh = fresh
		return f
	}
}

// given goes on when the right was asked for again.
func (m *model) given(f freed) tea.Cmd {
	m.saving = false
	m.watch.stale = f.files
	switch wrong := ""; {
	case f.fresh == nil && f.lock == nil:
		m.keep.barred = f.barred
	case f.fresh == nil:
		m.keep.own(f.lock, m.owing, m.owedDay())
		m.say("the shop is free now, and written here")
	case f.lock == nil && (m.loses() || len(m.claims) > 0): // what is told here waits for the right
		m.keep.barred, f.fresh = f.barred, nil
	case f.lock == nil:
		m.keep.barred = f.barred
		m.reread(f.fresh, f.hand, "the shop was changed meanwhile, and is read again: nothing was told")
	default:
		if wrong = m.cantTake(f.fresh); wrong != "" {
			f.lock.Release()
			f.lock, f.fresh, f.barred = nil, nil, "the shop is free, but "+wrong+": nothing is written"
			m.keep.barred = f.barred
			break
		}
		m.keep.own(f.lock, nil, nil)
		m.reread(f.fresh, f.hand, "the shop is free now, and written here; it was changed meanwhile, and is read again")
	}
	return f.then(f)
}

// owedDay is the day for the file, where the states of jobs were told and not written.
func (d *session) owedDay() *filed {
	for _, e := range d.owing {
		if e.Job != "" && e.Holder == 0 {
			return d.keptDay()
		}
	}
	return nil
}

// reread goes on with the shop as its files are now, and says so. What was told here and
// isn't in them is named, to be told again; wishes for the day that aren't saved stay. A
// walk on which nothing is lost goes on with what stands. A deed in hand isn't done: it
// rests on what was there before.
func (m *model) reread(fresh *shop.Shop, hand *deed, says string) {
	lost, picked := m.missing(fresh), m.job()
	w, walks := m.over.(*walk)
	walks = walks && lost == ""
	if hand != nil {
		m.truth, m.owing = hand.truth, append(m.owing, hand.events...)
		if lost = m.missing(fresh); lost == "" {
			says = words.Join("; ", says, hand.undone())
		}
	}
	m.owing, m.claims, m.wear, m.unsaved = nil, nil, nil, ""
	if w != nil {
		m.over = nil
	}
	if m.changed() {
		says = words.Join("; ", says, "the day here isn't saved and stays; undo begins anew")
		m.shop.Stands(fresh)
		m.become(m.statesIn(fresh))
		m.history = history[draft]{now: newDraft(m.history.now.all, m.history.now.aim)}
	} else {
		m.shop, m.keep.shop, m.stems = fresh, fresh, nil
		m.openDay(fresh)
		m.forecast.Aim = m.history.now.aim
	}
	m.watch = watch{on: m.watch.on, since: m.keep.clock()}
	m.truth = truth{m.shop.Standing, m.shop.Marks}
	m.forecast.Start.Clock = m.shop.Day.Begins(m.truth.stands)
	m.stand(m.truth)
	m.holder = min(m.holder, len(m.shop.Beam.Holders))
	m.pickAgain(picked)
	if walks {
		says = words.Join("; ", says, m.walkAgain(w))
	}
	if lost != "" {
		says += "; not in it, tell it again: " + lost
	}
	m.say("%s", says)
}

// undone tells of a deed that isn't done and was to take something back; nothing of
// another.
func (d *deed) undone() string {
	if slices.ContainsFunc(d.events, func(e shop.Event) bool { return e.Back }) {
		return "nothing is taken back"
	}
	return ""
}

// statesIn are the states of a shop's jobs: where the beam is half set up for another,
// what ran has ended, as openDay has it.
func (d *session) statesIn(fresh *shop.Shop) states {
	s, half := states{}, fresh.Standing.Setting
	d.behind = false
	for i := range fresh.Day.Jobs {
		j := &fresh.Day.Jobs[i]
		if s[j.ID] = j.State; half != nil && j.State == plan.Running && j.ID != half.Job {
			s[j.ID], d.behind = plan.Done, true
		}
	}
	return s
}

// pickAgain picks a job, read again, or what stands at its turn now.
func (m *model) pickAgain(j *plan.Job) {
	if j != nil {
		if turn := slices.IndexFunc(m.jobs(), func(now *plan.Job) bool { return now.ID == j.ID }); turn >= 0 {
			m.pick(turn)
		}
	}
	m.pick(m.turn)
}

// walkAgain opens a walk anew over a shop read again, as far as it was read; where its
// job is set up already, that is said.
func (m *model) walkAgain(was *walk) string {
	turn := m.nextUp()
	if turn < 0 || m.jobs()[turn].ID != was.job.ID {
		return "the walk to " + was.job.ID + " is over"
	}
	m.pick(turn)
	w := &walk{job: m.jobs()[turn], became: plan.Done, warned: was.warned}
	w.follow(m.desk)
	m.over = w
	return ""
}

// missing names what was told here at the beam, was not written down, and is not in the
// shop as read again either.
func (d *session) missing(fresh *shop.Shop) string {
	var parts []string
	u, stands := d.shop.Unit, d.truth.stands.At
	for n := 1; n <= min(len(stands), len(fresh.Standing.At)); n++ {
		told := d.owed(n, shop.EventMoved, shop.EventCorrected)
		if at := stands[n-1]; told != nil && at != fresh.Standing.At[n-1] {
			parts = append(parts, fmt.Sprintf("holder %d from %s to %s", n, u.Show(told.From), u.Show(at)))
		}
		if told = d.owed(n, shop.EventCondition); told != nil && fresh.Beam.Holders[n-1] != told.Condition {
			parts = append(parts, fmt.Sprintf("holder %d is %s", n, told.Condition))
		}
	}
	for _, j := range d.kept.all {
		i := slices.IndexFunc(fresh.Day.Jobs, func(there plan.Job) bool { return there.ID == j.ID })
		if state, told := d.owedState(j.ID); told && i >= 0 && fresh.Day.Jobs[i].State != state {
			parts = append(parts, outcomes(states{j.ID: state}, ""))
		}
	}
	return words.Join(", ", parts...)
}

// owed is what was told of a holder, of these kinds, not written down and not taken back;
// nil where nothing is. It leads from where the first one did.
func (d *session) owed(holder int, kinds ...shop.Kind) *shop.Event {
	var open []shop.Event
	for _, e := range d.owing {
		switch {
		case e.Holder != holder || !slices.Contains(kinds, e.Kind):
		case !e.Back:
			open = append(open, e)
		case len(open) > 0:
			open = open[:len(open)-1]
		}
	}
	if len(open) == 0 {
		return nil
	}
	last := open[len(open)-1]
	last.From = open[0].From
	return &last
}

// owedState is what a job was told to have become last; false where nothing was, or it
// was taken back.
func (d *session) owedState(id string) (state plan.State, told bool) {
	var open []plan.State
	for _, e := range d.owing {
		switch {
		case e.Job != id || e.Kind != shop.EventJob:
		case !e.Back:
			open = append(open, e.State)
		case len(open) > 0:
			open = open[:len(open)-1]
		}
	}
	if len(open) == 0 {
		return 0, false
	}
	return open[len(open)-1], true
}
