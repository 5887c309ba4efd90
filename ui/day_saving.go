package ui

import (
	"errors"
	"fmt"

	"bide/plan"
	"bide/plan/shop"
	"bide/plan/words"

	tea "github.com/charmbracelet/bubbletea"
)

// daySaved comes when the day was saved, or could not be.
type daySaved struct {
	draft draft
	out   shop.Outcome
	err   error
}

// saveDay saves the day as it is on the screen, in the background.
func (m *model) saveDay() tea.Cmd {
	if m.keep.asks {
		return m.askAgain(nil, func(f freed) tea.Cmd {
			if f.lock == nil {
				m.say("not saved: %s", f.barred)
				return nil
			}
			return m.saveDay()
		})
	}
	switch {
	case m.keep.barred != "":
		m.say("not saved: %s", m.keep.barred)
		return nil
	case m.saving:
		m.say("wait: the last one is still being saved")
		return nil
	case !m.changed() && !m.behind:
		m.say("there is nothing to save: day.toml is as it is here")
		return nil
	}
	m.saving = true
	now, keep := m.history.now, m.keep
	day, from := now.day(m.shop.Day), m.origins(now)
	m.say("saving day.toml %s", m.Pending)
	return func() tea.Msg {
		out, err := keep.saveDay(day, from)
		return daySaved{now, out, err}
	}
}

// saved goes on when the day was saved: what was saved is now the file's.
func (m *model) saved(s daySaved) {
	m.saving = false
	if s.err != nil {
		m.say("NOT SAVED: %v", s.err)
		return
	}
	m.kept, m.behind, m.aside = s.draft, false, ""
	if s.out.Beside {
		m.aside = s.out.File
	}
	m.relist()
	m.say("%s", words.Join(", ", s.out.Said, s.draft.chosen()))
}

// saveDay writes the day down, and into the record in which order its jobs are.
func (k *keeper) saveDay(day *plan.Day, from []string) (shop.Outcome, error) {
	k.mutex.Lock()
	defer k.mutex.Unlock()
	if k.closed {
		return shop.Outcome{}, errors.New("the program is ending: nothing more is written")
	}
	out, err := k.shop.SaveDay(day, from)
	if err != nil {
		return out, err
	}
	k.day = nil // what it was to hold is in this one too
	var order []string
	for _, j := range day.Jobs {
		order = append(order, j.ID)
	}
	k.owed = append(k.owed, shop.Event{Time: k.clock(), Kind: shop.EventSequence, Order: order})
	if err := k.settle(); err != nil {
		out.Said += "; the record could not be added to: " + err.Error()
	}
	return out, nil
}

// chosen tells that what a search chose is saved with the day.
func (d draft) chosen() string {
	n := 0
	for _, j := range d.all {
		if j.Chosen != nil {
			n++
		}
	}
	if n == 0 {
		return ""
	}
	return fmt.Sprintf("with what a search chose for %s", words.Count(n, "job"))
}
