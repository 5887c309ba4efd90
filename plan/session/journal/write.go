package journal

import (
	"errors"
	"slices"

	"bide/plan"
	"bide/plan/shop"
	"bide/plan/shop/record"
	"bide/plan/words"
)

// Deed is something done at the beam, to be written down: what stands after it, what
// the record is to hold of it, and the day where that changed.
type Deed struct {
	Actual
	Events []record.Event
	Day    *Filed
	Done   func(said string) // goes on with it; said is where it went, if that is unusual
}

// Filed is a day for the file: where each job comes from, and the day.
type Filed struct {
	Day  *plan.Day
	From []string
}

// Written comes when a deed is written down, or could not be.
type Written struct {
	Deed
	noted int    // events owed and new that the record got
	filed bool   // the day is in the file
	Said  string // what there is to say about where it went
	err   error
}

// Write is the work that writes a deed down.
func (j *Journal) Write(s *shop.Shop, d Deed) func() any {
	if !j.Writes() {
		w := Written{Deed: d}
		if j.right == another {
			w.Said = j.wont
		}
		return func() any { return w }
	}
	events := slices.Concat(j.owed[j.noted:], d.Events)
	return func() any {
		w := Written{Deed: d}
		j.mutex.Lock()
		defer j.mutex.Unlock()
		w.err = j.put(s, events, &w)
		return w
	}
}

// put writes a deed down: what stands, or nothing; then all that can be.
func (j *Journal) put(s *shop.Shop, events []record.Event, w *Written) (err error) {
	if j.closed {
		return errors.New("the program is ending: nothing more is written")
	}
	out, err := s.SavePositions(w.Positions, w.Marks)
	if err != nil {
		return err
	}
	if out.Said != "saved in "+out.File && out.File != "" {
		w.Said = out.Said
	}
	w.noted, err = j.note(s.Dir, events)
	if w.Day != nil {
		out, fault := s.SaveDay(w.Day.Day, w.Day.From)
		err, w.filed = errors.Join(err, fault), fault == nil
		if out.Beside {
			w.Said = words.Join("; ", w.Said, out.Said)
		}
	}
	return err
}

// note adds events to the record, and says how many it got.
func (j *Journal) note(dir string, events []record.Event) (n int, err error) {
	if j.record == nil {
		if j.record, err = record.Open(dir); err != nil {
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

// Wrote takes what became of a deed.
func (j *Journal) Wrote(w Written) {
	j.works, j.failed = false, ""
	switch {
	case j.right == nothing:
		return
	case j.Writes() && w.err == nil:
		j.Settled()
		return
	case w.err != nil:
		j.failed = w.err.Error()
	}
	j.owed, j.noted = append(j.owed, w.Events...), j.noted+w.noted
	j.behind = !w.filed && (j.behind || w.Day != nil)
}

// Settled is when nothing is owed any more, or what was is read again from the files.
func (j *Journal) Settled() { j.failed, j.owed, j.noted, j.behind = "", nil, 0, false }

// DaySaved comes when the day was saved, or could not be.
type DaySaved struct {
	Out   shop.Outcome
	order record.Event // for the record: in which order its jobs are
	noted int          // events owed that the record got, that one behind them
	Err   error
	Then  func(DaySaved)
}

// WriteDay is the work that writes the day down, and into the record in which order its
// jobs are; then goes on with it.
func (j *Journal) WriteDay(s *shop.Shop, f Filed, then func(DaySaved)) func() any {
	d := DaySaved{Then: then, order: record.Event{Time: j.Clock(), Kind: record.Sequence}}
	for _, job := range f.Day.Jobs {
		d.order.Order = append(d.order.Order, job.ID)
	}
	events := append(slices.Clone(j.owed[j.noted:]), d.order)
	return func() any {
		j.mutex.Lock()
		defer j.mutex.Unlock()
		if j.closed {
			d.Err = errors.New("the program is ending: nothing more is written")
			return d
		}
		if d.Out, d.Err = s.SaveDay(f.Day, f.From); d.Err != nil {
			return d
		}
		var fault error
		if d.noted, fault = j.note(s.Dir, events); fault != nil {
			d.Out.Said += "; the record could not be added to: " + fault.Error()
		}
		return d
	}
}

// WroteDay takes what became of the day.
func (j *Journal) WroteDay(d DaySaved) {
	j.works = false
	if d.Err != nil {
		return
	}
	j.behind = false
	if j.noted += d.noted; j.noted > len(j.owed) {
		j.noted = len(j.owed)
		return
	}
	j.owed = append(j.owed, d.order)
}

// Undone says of a deed that isn't done and was to take something back; nothing of
// another.
func (d *Deed) Undone() string {
	if slices.ContainsFunc(d.Events, func(e record.Event) bool { return e.Back }) {
		return "nothing is undone"
	}
	return ""
}
