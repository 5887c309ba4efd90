package ui

import (
	"errors"
	"slices"
	"sync"
	"time"

	"bide/plan"
	"bide/plan/shop"
	"bide/plan/words"

	tea "github.com/charmbracelet/bubbletea"
)

// keeper writes down what happens at the beam, before the screen says that it
// happened: positions.toml first, which is the truth, then record.jsonl, then
// day.toml where a job's state changed.
type keeper struct {
	shop   *shop.Shop
	barred string           // why nothing is written; empty where it is
	demo   bool             // the day is an invented one: there is nothing to write
	asks   bool             // the right to write may be had later: it is asked for again
	now    func() time.Time // the clock on the wall

	mutex  sync.Mutex // one save at a time, and none while the program ends
	lock   *shop.Lock
	record *shop.Record
	owed   []shop.Event // that belong into the record and aren't there yet
	day    *filed       // that belongs into day.toml and isn't there yet
	closed bool
}

// newKeeper is a keeper for a shop that is only looked at: take makes it write.
func newKeeper(s *shop.Shop) *keeper {
	return &keeper{shop: s, now: time.Now, barred: "nothing is written here"}
}

// clock is what the clock on the wall shows, to the second, without a zone: as times
// are in the shop's files.
func (k *keeper) clock() time.Time {
	t := k.now()
	return time.Date(t.Year(), t.Month(), t.Day(), t.Hour(), t.Minute(), t.Second(), 0, time.UTC)
}

// take takes the right to write the shop's folder, or tells why there is none.
func (k *keeper) take(demo bool) {
	switch {
	case demo:
		k.demo, k.barred = true, "an invented day, nothing is written"
		return
	case k.shop.Dir == "":
		return
	}
	k.lock, k.barred = k.ask(k.now())
	k.asks = k.lock == nil
}

// close waits for a save that is under way and gives the right back.
func (k *keeper) close() {
	k.mutex.Lock()
	defer k.mutex.Unlock()
	k.closed = true
	if k.record != nil {
		k.record.Close()
	}
	if k.lock != nil {
		k.lock.Release()
	}
}

// truth is what really stands at the beam, as far as anyone has told.
type truth struct {
	stands *plan.Standing
	marks  shop.Marks
}

// deed is something done at the beam, to be written down: what stands after it, what
// the record is to hold of it, and the day where that changed.
type deed struct {
	truth
	events []shop.Event
	day    *filed
	done   func(said string) // goes on with it on the screen; said is where it went, if that is unusual
}

// kept comes when a deed is written down, or could not be.
type kept struct {
	deed
	said string // what there is to say about where it went
	err  error
}

// keep writes a deed down, in the background.
func (k *keeper) keep(d deed) tea.Cmd {
	if k.barred != "" {
		said := ""
		if k.asks {
			said = k.barred
		}
		return func() tea.Msg { return kept{deed: d, said: said} }
	}
	return func() tea.Msg {
		said, err := k.write(d)
		return kept{d, said, err}
	}
}

// write writes a deed down. What can't go into the record or into day.toml now is owed
// to it, whatever else fails.
func (k *keeper) write(d deed) (said string, err error) {
	k.mutex.Lock()
	defer k.mutex.Unlock()
	if k.closed {
		return "", errors.New("the program is ending: nothing more is written")
	}
	k.owed = append(k.owed, d.events...)
	if d.day != nil {
		k.day = d.day
	}
	out, err := k.shop.SaveStanding(d.stands, d.marks)
	if err != nil {
		return "", err
	}
	if out.Said != "saved in "+out.File && out.File != "" {
		said = out.Said
	}
	err = k.settle()
	if k.day != nil {
		out, fault := k.shop.SaveDay(k.day.day, k.day.from)
		if err = errors.Join(err, fault); fault == nil {
			k.day = nil
		}
		if out.Beside {
			said = words.Join("; ", said, out.Said)
		}
	}
	return said, err
}

// settle brings into the record what is owed to it.
func (k *keeper) settle() (err error) {
	if k.record == nil {
		if k.record, err = shop.OpenRecord(k.shop.Dir); err != nil {
			return err
		}
	}
	for len(k.owed) > 0 {
		if err := k.record.Append(k.owed[0]); err != nil {
			return err
		}
		k.owed = slices.Delete(k.owed, 0, 1)
	}
	return nil
}

// brief is that nothing is written, in few words; empty when it is.
func (k *keeper) brief() string {
	if k.barred == "" {
		return ""
	}
	return "ticks not saved"
}
