// Package journal writes down what happens at the beam: positions.toml first, which is the
// truth, then record.jsonl, then day.toml where a job's state changed. Nothing that was
// reported is lost or said to be done while it isn't written: what can't be written is owed.
package journal

import (
	"errors"
	"sync"
	"time"

	"bide/plan/shop/disk"
	"bide/plan/shop/record"
)

// Journal writes down what happens at the beam, before anyone says that it happened:
// positions.toml first, which is the truth, then record.jsonl, then day.toml where a
// job's state changed. One thing is written at a time. What can't be written now is owed,
// and written with the next thing that can be.
type Journal struct {
	Saving
	Now   func() time.Time // the clock on the wall
	noted int              // how many of the events owed are in the record all the same

	mutex  sync.Mutex // what follows is used in the background too, and when the program ends
	lock   *disk.Lock
	record *record.Record
	closed bool
}

// Saving is what is written and what isn't.
type Saving struct {
	right  right
	wont   string         // why nothing is written; empty where it is
	works  bool           // something is being written, read, or asked for: all else waits
	failed string         // why what was reported last isn't written; empty when it is
	owed   []record.Event // reported, and not all of it written
	behind bool           // day.toml lacks states that jobs have come into
}

// right is whether the shop's files may be written.
type right uint8

const (
	looks   right = iota // nobody asked for it
	nothing              // the day is an invented one: there is nothing to write
	another              // another screen has it: it is asked for again
	own
)

// New is a journal of a shop that is only looked at, until Take.
func New() *Journal { return &Journal{Now: time.Now, Saving: Saving{wont: "nothing is saved here"}} }

// Owes reports whether something reported isn't written.
func (s *Saving) Owes() bool { return s.failed != "" || s.Owing() != "" }

// Busy reports whether something is being written, read or asked for: until it has ended
// nothing else is begun.
func (s *Saving) Busy() bool { return s.works }

// Begin begins something that all else waits for.
func (j *Journal) Begin() { j.works = true }

// End ends it.
func (j *Journal) End() { j.works = false }

// Fault is why what was reported last isn't written; empty when it is.
func (s *Saving) Fault() string { return s.failed }

// Why is why nothing is saved here; empty where it is.
func (s *Saving) Why() string { return s.wont }

// Invented reports whether the day is an invented one, of which nothing is written.
func (s *Saving) Invented() bool { return s.right == nothing }

// OthersHave reports whether another screen has the right to write: it is asked for again.
func (s *Saving) OthersHave() bool { return s.right == another }

// DayLags reports whether day.toml lacks states that jobs have come into.
func (s *Saving) DayLags() bool { return s.behind }

// SetDayLags says whether it does.
func (j *Journal) SetDayLags(so bool) { j.behind = so }

// Writes reports whether the files are written here.
func (s *Saving) Writes() bool { return s.right == own }

// Clock is what the clock on the wall shows, to the second.
func (j *Journal) Clock() time.Time { return j.Now().Truncate(time.Second) }

// Asked reports whether the right to write was asked for: then the day is one that is
// worked by.
func (j *Journal) Asked() bool { return j.right == own || j.right == another }

// Take takes the right to write the shop's folder, or says why there is none.
func (j *Journal) Take(dir string, demo bool) {
	switch {
	case demo:
		j.right, j.wont = nothing, "an invented day, nothing is saved"
	case dir != "":
		lock, why := Ask(dir, j.Now())
		j.Given(lock, why)
	}
}

// Ask asks for the right to write a folder; without it, why.
func Ask(dir string, now time.Time) (lock *disk.Lock, why string) {
	lock, err := disk.TakeLock(dir, now)
	var taken *disk.TakenError
	switch {
	case errors.As(err, &taken):
		return nil, taken.Error() + ": nothing is saved here"
	case err != nil:
		return nil, err.Error() + ": nothing is saved here"
	}
	return lock, ""
}

// Given has the right to write from here on, or not, and why.
func (j *Journal) Given(lock *disk.Lock, why string) {
	j.works = false
	j.mutex.Lock()
	defer j.mutex.Unlock()
	j.lock, j.wont, j.right = lock, why, another
	if lock == nil {
		return
	}
	if j.right = own; j.closed {
		lock.Release()
	}
}

// Close waits for a save that is under way and gives the right back.
func (j *Journal) Close() {
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
