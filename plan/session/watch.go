package session

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"bide/plan/session/workday"
	"bide/plan/shop"
	"bide/plan/words"
)

// The shop's files may be changed by another screen, or in an editor, while they are
// shown here. They are looked at every few seconds. Where nothing told or wished here
// would be lost they are read anew; else it is said that they have changed, until a
// person has them read.

// watch is what is known of the files.
type watch struct {
	On    bool       // they are looked at again and again
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
func (d *Session) Peek() {
	s, was, reads := d.Shop, d.Watch.stamp, d.idle()
	if s.Dir == "" || d.Journal.Invented() || d.Journal.Busy() {
		return
	}
	late := reads && len(d.Watch.stale) > 0 && d.Watch.wrong == ""
	d.Later(func() any {
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
// nothing is opened or told meanwhile: what is read would be older than that.
func (d *Session) ReadAgain() {
	s := d.Shop
	if s.Dir == "" || d.Journal.Invented() {
		d.Say("an invented day: there are no files to be read")
		return
	}
	d.busyWith(func() any {
		l := Looked{of: s, stamp: s.Stamp(), files: s.Changed(), Asked: true}
		if len(l.files) > 0 {
			l.open()
		}
		return l
	})
}

// idle reports whether the files can be read anew without a loss: another may write
// them, or nobody does, and nothing is told, wished or typed here.
func (d *Session) idle() bool {
	return !d.Journal.Writes() && !d.Journal.Busy() && !d.Loses() && len(d.Claims) == 0 && d.Viewer.Quiet() &&
		(d.Setup == nil || d.Setup.Ending == nil && !d.Setup.sure)
}

// sees goes on when the files were looked at.
func (d *Session) sees(l Looked) {
	if l.Asked {
		d.Journal.End()
	}
	if l.of != d.Shop {
		return
	}
	d.Watch.stamp, d.Watch.stale, d.Watch.wrong = l.stamp, l.files, l.wrong
	switch {
	case l.Asked && l.wrong != "":
		d.Say("not read again: %s", l.wrong)
	case l.Asked && len(l.files) == 0:
		d.Say("read again: the files are as they are here")
	case l.fresh == nil || d.Journal.Busy() || !l.Asked && !d.idle():
	default:
		if wrong := d.cantTake(l.fresh); wrong != "" {
			d.Say("not read again: %s", wrong)
			return
		}
		read := ": read again"
		if d.Changed() {
			read = ": what stands is read again"
		}
		d.Reread(l.fresh, nil, strings.Join(l.files, ", ")+" changed meanwhile"+read)
	}
}

// cantTake tells why a shop read anew can't be gone on with; empty when it can.
func (d *Session) cantTake(fresh *shop.Shop) string {
	if d.Changed() && !d.Shop.SameMachine(fresh) {
		return "beam.toml or materials.toml has changed, and the day here has changes that aren't saved: save them or undo them first"
	}
	return ""
}

// Outdated says that what is shown may be; empty while it isn't.
func (d *Session) Outdated() (text, brief string) {
	w := &d.Watch
	if len(w.stale) == 0 {
		return "", ""
	}
	since := w.since.Format("15:04")
	if now := d.Journal.Clock(); now.YearDay() != w.since.YearDay() {
		since = w.since.Format("2 Jan 15:04")
	}
	if d.Changed() && slices.Equal(w.stale, []string{"day.toml"}) {
		return fmt.Sprintf("day.toml has been changed by another since %s: the changes made here are kept, and %s saves them beside it", since, d.Viewer.KeyOf(workday.ToSave)), "day.toml changed"
	}
	has := "has"
	if len(w.stale) > 1 {
		has = "have"
	}
	text = fmt.Sprintf("%s %s changed since %s: what is shown may be out of date; %s reads it again", strings.Join(w.stale, ", "), has, since, d.Viewer.KeyOf(workday.ToReread))
	return words.Join("; ", text, w.wrong), "changed: " + d.Viewer.KeyOf(workday.ToReread) + " reads"
}
