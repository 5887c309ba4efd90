package ui

import (
	"errors"
	"slices"
	"sync"
	"time"

	"bide/plan"
	"bide/plan/shop"
	"bide/plan/shop/disk"
	"bide/plan/words"
)

// journal writes down what happens at the beam, before anyone says that it happened:
// positions.toml first, which is the truth, then record.jsonl, then day.toml where a
// job's state changed. One thing is written at a time. What can't be written now is owed,
// and written with the next thing that can be.
type journal struct {
	now   func() time.Time // the clock on the wall
	right right
	why   string // nothing is written; empty where it is

	busy   bool         // something is being written, read, or asked for: all else waits
	fault  string       // why what was reported last isn't written; empty when it is
	owed   []shop.Event // reported, and not all of it written
	noted  int          // how many of these are in the record all the same
	behind bool         // day.toml lacks states that jobs have come into

	mutex  sync.Mutex // what follows is used in the background too, and when the program ends
	lock   *disk.Lock
	record *shop.Record
	closed bool
}

// right is whether the shop's files may be written.
type right uint8

const (
	onlyLooked right = iota // nobody asked for it
	invented                // there is nothing to write
	another                 // another screen has it: it is asked for again
	own
)

func newJournal() *journal { return &journal{now: time.Now, why: "nothing is written here"} }

// owes reports whether something reported isn't written.
func (j *journal) owes() bool { return j.fault != "" || sumOf(j.owed) != "" }

// writes reports whether the files are written here.
func (j *journal) writes() bool { return j.right == own }

// clock is what the clock on the wall shows, to the second, without a zone: as times
// are in the shop's files.
func (j *journal) clock() time.Time {
	t := j.now()
	return time.Date(t.Year(), t.Month(), t.Day(), t.Hour(), t.Minute(), t.Second(), 0, time.UTC)
}

// take takes the right to write the shop's folder, or tells why there is none.
func (j *journal) take(dir string, demo bool) {
	switch {
	case demo:
		j.right, j.why = invented, "an invented day, nothing is written"
	case dir != "":
		lock, why := askFor(dir, j.now())
		j.given(lock, why)
	}
}

// askFor asks for the right to write a folder; without it, why.
func askFor(dir string, now time.Time) (lock *disk.Lock, why string) {
	lock, err := disk.TakeLock(dir, now)
	var taken *disk.TakenError
	switch {
	case errors.As(err, &taken):
		return nil, taken.Error() + ": nothing is written"
	case err != nil:
		return nil, err.Error() + ": nothing is written"
	}
	return lock, ""
}

// given has the right to write from here on, or not, and why.
func (j *journal) given(lock *disk.Lock, why string) {
	j.mutex.Lock()
	defer j.mutex.Unlock()
	j.lock, j.why, j.right = lock, why, another
	if lock == nil {
		return
	}
	if j.right = own; j.closed {
		lock.Release()
	}
}

// close waits for a save that is under way and gives the right back.
func (j *journal) close() {
	j.mutex.Lock()
	defer j.mutex.Unlock()
	j.closed = true
	if j.record != nil {
		j.record.Close()
	}
	if j.lock != nil {
		j.lock.Release()
	}
}

// truth is what is really at the beam, as far as anyone has reported.
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
	done   func(said string) // goes on with it; said is where it went, if that is unusual
}

// filed is a day for the file: where each job comes from, and the day.
type filed struct {
	day  *plan.Day
	from []string
}

// written comes when a deed is written down, or could not be.
type written struct {
	deed
	noted int    // events owed and new that the record got
	filed bool   // the day is in the file
	said  string // what there is to say about where it went
	err   error
}

// write is the work that writes a deed down.
func (j *journal) write(s *shop.Shop, d deed) func() any {
	if !j.writes() {
		w := written{deed: d}
		if j.right == another {
			w.said = j.why
		}
		return func() any { return w }
	}
	events := slices.Concat(j.owed[j.noted:], d.events)
	return func() any {
		w := written{deed: d}
		j.mutex.Lock()
		defer j.mutex.Unlock()
		w.err = j.put(s, events, &w)
		return w
	}
}

// put writes a deed down: what stands, or nothing; then all that can be.
func (j *journal) put(s *shop.Shop, events []shop.Event, w *written) (err error) {
	if j.closed {
		return errors.New("the program is ending: nothing more is written")
	}
	out, err := s.SaveStanding(w.stands, w.marks)
	if err != nil {
		return err
	}
	if out.Said != "saved in "+out.File && out.File != "" {
		w.said = out.Said
	}
	w.noted, err = j.note(s.Dir, events)
	if w.day != nil {
		out, fault := s.SaveDay(w.day.day, w.day.from)
		err, w.filed = errors.Join(err, fault), fault == nil
		if out.Beside {
			w.said = words.Join("; ", w.said, out.Said)
		}
	}
	return err
}

// note adds events to the record, and tells how many it got.
func (j *journal) note(dir string, events []shop.Event) (n int, err error) {
	if j.record == nil {
		if j.record, err = shop.OpenRecord(dir); err != nil {
			return 0, err
		}
	}
	for n < len(events) {
		if err := j.record.Append(events[n]); err != nil {
			return n, err
		}
		n++
	}
	return n, nil
}

// wrote takes what became of a deed.
func (j *journal) wrote(w written) {
	j.fault = ""
	switch {
	case j.right == invented:
		return
	case j.writes() && w.err == nil:
		j.settled()
		return
	case w.err != nil:
		j.fault = w.err.Error()
	}
	j.owed, j.noted = append(j.owed, w.events...), j.noted+w.noted
	j.behind = !w.filed && (j.behind || w.day != nil)
}

// settled is when nothing is owed any more, or what was is read again from the files.
func (j *journal) settled() { j.fault, j.owed, j.noted, j.behind = "", nil, 0, false }

// daySaved comes when the day was saved, or could not be.
type daySaved struct {
	draft draft
	out   shop.Outcome
	order shop.Event // for the record: in which order its jobs are
	noted int        // events owed that the record got, that one behind them
	err   error
}

// writeDay is the work that writes the day down, and into the record in which order its
// jobs are.
func (j *journal) writeDay(s *shop.Shop, draft draft, f filed) func() any {
	d := daySaved{draft: draft, order: shop.Event{Time: j.clock(), Kind: shop.EventSequence}}
	for _, job := range f.day.Jobs {
		d.order.Order = append(d.order.Order, job.ID)
	}
	events := append(slices.Clone(j.owed[j.noted:]), d.order)
	return func() any {
		j.mutex.Lock()
		defer j.mutex.Unlock()
		if j.closed {
			d.err = errors.New("the program is ending: nothing more is written")
			return d
		}
		if d.out, d.err = s.SaveDay(f.day, f.from); d.err != nil {
			return d
		}
		var fault error
		if d.noted, fault = j.note(s.Dir, events); fault != nil {
			d.out.Said += "; the record could not be added to: " + fault.Error()
		}
		return d
	}
}

// wroteDay takes what became of the day.
func (j *journal) wroteDay(d daySaved) {
	if d.err != nil {
		return
	}
	j.behind = false
	if j.noted += d.noted; j.noted > len(j.owed) {
		j.noted = len(j.owed)
		return
	}
	j.owed = append(j.owed, d.order)
}
