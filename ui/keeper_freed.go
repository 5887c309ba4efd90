package ui

import (
	"errors"
	"time"

	"bide/plan/shop"

	tea "github.com/charmbracelet/bubbletea"
)

// A shop that another screen has can only be looked at. Whenever something is to be
// written, the right is asked for again: the other may have ended. What stands may have
// changed meanwhile; it is then read again before anything is written.

// freed comes when the right to write was asked for again.
type freed struct {
	lock   *shop.Lock // nil: it wasn't given
	barred string     // why not
	fresh  *shop.Shop // the files read again, where another has changed them; else nil
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
// wanted for.
func (d *desk) askAgain(then func(freed) tea.Cmd) tea.Cmd {
	if d.saving {
		d.say("wait: the last one is still being saved")
		return nil
	}
	d.saving = true
	keep, old, now := d.keep, d.shop, d.keep.now()
	return func() tea.Msg {
		f := freed{then: then}
		if f.lock, f.barred = keep.ask(now); f.lock == nil || len(old.Changed()) == 0 {
			return f
		}
		fresh, problems := shop.Open(old.Dir)
		if len(problems) > 0 {
			f.lock.Release()
			return freed{barred: "the shop is free, but " + problems[0].String() + ": nothing is written", then: then}
		}
		f.fresh = fresh
		return f
	}
}

// given goes on when the right was asked for again.
func (m *model) given(f freed) tea.Cmd {
	m.saving = false
	switch {
	case f.lock == nil:
		m.keep.barred = f.barred
	case f.fresh != nil:
		m.keep.own(f.lock, nil, nil)
		m.reread(f.fresh)
	default:
		m.keep.own(f.lock, m.owing, m.owedDay())
		m.say("the shop is free now, and written here")
	}
	return f.then(f)
}

// owedDay is the day for the file, where the states of jobs were told and not written.
func (d *desk) owedDay() *filed {
	for _, e := range d.owing {
		if e.Job != "" && e.Holder == 0 {
			return &filed{d.kept.day(d.shop.Day), d.origins(d.kept)}
		}
	}
	return nil
}

// reread goes on with the shop as its files are now. What was told here and not written
// isn't in them, and that is said; wishes for the day that aren't saved stay.
func (m *model) reread(fresh *shop.Shop) {
	lost := sumOf(m.owing)
	m.owing, m.claims, m.wear, m.unsaved = nil, nil, nil, ""
	if _, walks := m.over.(*walk); walks {
		m.over = nil
	}
	if m.changed() {
		m.shop.Stands(fresh)
		s := states{}
		for i := range fresh.Day.Jobs {
			s[fresh.Day.Jobs[i].ID] = fresh.Day.Jobs[i].State
		}
		m.become(s)
		m.history = history[draft]{now: newDraft(m.history.now.all)}
	} else {
		m.shop, m.keep.shop, m.stems = fresh, fresh, nil
		m.openDay(fresh)
		m.listed = chain{jobs: m.kept.jobs, centred: true}
	}
	m.truth = truth{m.shop.Standing, m.shop.Marks}
	m.stand(m.truth)
	m.pick(m.turn)
	says := "the shop is free now, and written here; it was changed meanwhile, and is read again"
	if lost != "" {
		says += "; not in it, tell it again: " + lost
	}
	m.say("%s", says)
}
