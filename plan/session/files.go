package session

import (
	"fmt"
	"os"
	"slices"
	"strings"
	"time"

	"bide/plan/session/workday"
	"bide/plan/shop"
	"bide/plan/shop/record"
	"bide/plan/words"
)

// The shop's files may be changed by another screen, or in an editor, while they are
// shown here. They are looked at every few seconds. Where nothing entered or wished here
// would be lost they are read anew; else it is said that they have changed, until a
// person has them read.

// Files are the shop's files, as they were read and as they are now: they are looked at,
// read again, and the day is saved to them.
type Files struct {
	*Session
	Watched bool            // they are looked at again and again
	SavedTo string          // the file that the day was saved to where day.toml could not be; else empty
	Wear    *record.Summary // of the record; nil while it isn't read

	stamp shop.Stamp // at the last look
	stale []string   // those that have changed since they were read
	wrong string     // why they can't be read anew; empty where that isn't known
	since time.Time  // when they were read
}

// Looked comes when the files were looked at and their dates had changed, or when they
// were read anew.
type Looked struct {
	of    *shop.Shop
	stamp shop.Stamp
	files []string   // that have changed
	fresh *shop.Shop // read anew; nil where that wasn't wanted, or couldn't be done
	wrong string     // why it couldn't
	Asked bool       // a person wanted it
}

// Peek looks at the files, in the background.
func (f *Files) Peek() {
	s, was, reads := f.Shop, f.stamp, f.idle()
	if s.Dir == "" || f.Journal.Invented() || f.Journal.Busy() {
		return
	}
	late := reads && len(f.stale) > 0 && f.wrong == ""
	f.Later(func() any {
		stamp := s.Stamp()
		if stamp == was && !late {
			return nil
		}
		l := Looked{of: s, stamp: stamp, files: s.Changed()}
		if reads && len(l.files) > 0 {
			l.open()
		}
		return l
	})
}

// open reads the files.
func (l *Looked) open() {
	fresh, problems := shop.Open(l.of.Dir)
	if len(problems) > 0 {
		l.wrong = problems[0].String()
		return
	}
	l.fresh = fresh
}

// ReadAgain reads the files anew because a person wants it. As while something is saved,
// nothing is opened or entered meanwhile: what is read would be older than that.
func (f *Files) ReadAgain() {
	s := f.Shop
	if s.Dir == "" || f.Journal.Invented() {
		f.Say("an invented day: there are no files to read")
		return
	}
	f.alone(func() any {
		l := Looked{of: s, stamp: s.Stamp(), files: s.Changed(), Asked: true}
		if len(l.files) > 0 {
			l.open()
		}
		return l
	})
}

// idle reports whether the files can be read anew without a loss: another may write
// them, or nobody does, and nothing is entered, wished or typed here.
func (f *Files) idle() bool {
	return !f.Journal.Writes() && !f.Journal.Busy() && !f.Loses() && len(f.Reports) == 0 && f.Viewer.Quiet() &&
		(f.Setup == nil || f.Setup.Ending == nil && !f.Setup.sure)
}

// sees goes on when the files were looked at.
func (f *Files) sees(l Looked) {
	if l.Asked {
		f.Journal.End()
	}
	if l.of != f.Shop {
		return
	}
	f.stamp, f.stale, f.wrong = l.stamp, l.files, l.wrong
	switch {
	case l.Asked && l.wrong != "":
		f.Say("not read again: %s", l.wrong)
	case l.Asked && len(l.files) == 0:
		f.Say("read again: the files have not changed")
	case l.fresh == nil || f.Journal.Busy() || !l.Asked && !f.idle():
	default:
		if wrong := f.cantTake(l.fresh); wrong != "" {
			f.Say("not read again: %s", wrong)
			return
		}
		read := ": read again"
		if f.Changed() {
			read = ": the positions are read again"
		}
		f.Reread(l.fresh, nil, strings.Join(l.files, ", ")+" changed meanwhile"+read)
	}
}

// cantTake says why a shop read anew can't be gone on with; empty when it can.
func (f *Files) cantTake(fresh *shop.Shop) string {
	if f.Changed() && !f.Shop.SameMachine(fresh) {
		return "beam.toml or materials.toml has changed, and the day here has changes that aren't saved: save them or undo them first"
	}
	return ""
}

// outdated says that what is shown may be; empty while it isn't.
func (f *Files) outdated() (text, brief string) {
	if len(f.stale) == 0 {
		return "", ""
	}
	since := f.since.Format("15:04")
	if now := f.TimeNow(); now.YearDay() != f.since.YearDay() {
		since = f.since.Format("2 Jan 15:04")
	}
	if f.Changed() && slices.Equal(f.stale, []string{"day.toml"}) {
		return fmt.Sprintf("someone else has changed day.toml since %s: the changes made here are kept, and %s saves them in a file of their own", since, f.Viewer.KeyOf(workday.ToSave)), "day.toml changed"
	}
	has := "has"
	if len(f.stale) > 1 {
		has = "have"
	}
	text = fmt.Sprintf("%s %s changed since %s: what is shown may be out of date; %s reads it again", strings.Join(f.stale, ", "), has, since, f.Viewer.KeyOf(workday.ToReread))
	return words.Join("; ", text, f.wrong), "changed: " + f.Viewer.KeyOf(workday.ToReread) + " reads"
}

// recorded is a shop's record, summed up.
type recorded struct {
	summary  *record.Summary
	problems int
	err      error
}

// ReadRecord sums the shop's record up.
func (f *Files) ReadRecord() {
	dir, holders, since := f.Shop.Dir, len(f.Shop.Beam.Holders), f.Shop.Day.Start
	if dir == "" {
		return
	}
	f.Later(func() any {
		sum := record.NewSummary(holders, since)
		problems, err := record.Read(os.DirFS(dir), sum.Add)
		return recorded{sum, len(problems), err}
	})
}

// heard takes the record; what is wrong with it is said where nothing else is.
func (f *Files) heard(r recorded) {
	f.Wear = r.summary
	switch {
	case f.Notice.Text != "":
	case r.err != nil:
		f.Say("%v; the holders' history isn't shown", r.err)
	case r.problems > 0:
		f.Say("record.jsonl: %s can't be read and is left out", words.Count(r.problems, "line"))
	}
}
