package ui

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"bide/plan/shop"
	"bide/plan/words"
)

// The shop's files may be changed by another screen, or in an editor, while they are
// shown here. They are looked at every few seconds. Where nothing told or wished here
// would be lost they are read anew; else it is said that they have changed, until a
// person has them read.

// watch is what is known of the files.
type watch struct {
	on    bool       // they are looked at again and again
	stamp shop.Stamp // at the last look
	stale []string   // those that have changed since they were read
	wrong string     // why they can't be read anew; empty where that isn't known
	since time.Time  // when they were read
}

// looked comes when the files were looked at and their dates had changed, or when they
// were read anew.
type looked struct {
	of    *shop.Shop
	stamp shop.Stamp
	files []string   // that have changed
	fresh *shop.Shop // read anew; nil where that wasn't wanted, or couldn't be done
	wrong string     // why it couldn't
	asked bool       // a person wanted it
}

// peek looks at the files, in the background.
func (d *session) peek() {
	s, was, reads := d.shop, d.watch.stamp, d.idle()
	if s.Dir == "" || d.journal.Invented() || d.journal.Busy() {
		return
	}
	late := reads && len(d.watch.stale) > 0 && d.watch.wrong == ""
	d.later(func() any {
		stamp := s.Stamp()
		if stamp == was && !late {
			return nil
		}
		l := looked{of: s, stamp: stamp, files: s.Changed()}
		if reads && len(l.files) > 0 {
			l.open()
		}
		return l
	})
}

// open reads the files.
func (l *looked) open() {
	fresh, problems := shop.Open(l.of.Dir)
	if len(problems) > 0 {
		l.wrong = problems[0].String()
		return
	}
	l.fresh = fresh
}

// readAgain reads the files anew because a person wants it. As while something is saved,
// nothing is opened or told meanwhile: what is read would be older than that.
func (d *session) readAgain() {
	s := d.shop
	if s.Dir == "" || d.journal.Invented() {
		d.say("an invented day: there are no files to be read")
		return
	}
	d.busyWith(func() any {
		l := looked{of: s, stamp: s.Stamp(), files: s.Changed(), asked: true}
		if len(l.files) > 0 {
			l.open()
		}
		return l
	})
}

// idle reports whether the files can be read anew without a loss: another may write
// them, or nobody does, and nothing is told, wished or typed here.
func (d *session) idle() bool {
	return !d.journal.Writes() && !d.journal.Busy() && !d.loses() && len(d.claims) == 0 && d.viewer.quiet() &&
		(d.setup == nil || d.setup.ending == nil && !d.setup.sure)
}

// sees goes on when the files were looked at.
func (d *session) sees(l looked) {
	if l.asked {
		d.journal.End()
	}
	if l.of != d.shop {
		return
	}
	d.watch.stamp, d.watch.stale, d.watch.wrong = l.stamp, l.files, l.wrong
	switch {
	case l.asked && l.wrong != "":
		d.say("not read again: %s", l.wrong)
	case l.asked && len(l.files) == 0:
		d.say("read again: the files are as they are here")
	case l.fresh == nil || d.journal.Busy() || !l.asked && !d.idle():
	default:
		if wrong := d.cantTake(l.fresh); wrong != "" {
			d.say("not read again: %s", wrong)
			return
		}
		read := ": read again"
		if d.changed() {
			read = ": what stands is read again"
		}
		d.reread(l.fresh, nil, strings.Join(l.files, ", ")+" changed meanwhile"+read)
	}
}

// cantTake tells why a shop read anew can't be gone on with; empty when it can.
func (d *session) cantTake(fresh *shop.Shop) string {
	if d.changed() && !d.shop.SameMachine(fresh) {
		return "beam.toml or materials.toml has changed, and the day here has changes that aren't saved: save them or undo them first"
	}
	return ""
}

// outdated says that what is shown may be; empty while it isn't.
func (d *session) outdated() (text, brief string) {
	w := &d.watch
	if len(w.stale) == 0 {
		return "", ""
	}
	since := w.since.Format("15:04")
	if now := d.journal.Clock(); now.YearDay() != w.since.YearDay() {
		since = w.since.Format("2 Jan 15:04")
	}
	if d.changed() && slices.Equal(w.stale, []string{"day.toml"}) {
		return fmt.Sprintf("day.toml has been changed by another since %s: the changes made here are kept, and %s saves them beside it", since, d.viewer.keyOf(toSave)), "day.toml changed"
	}
	has := "has"
	if len(w.stale) > 1 {
		has = "have"
	}
	text = fmt.Sprintf("%s %s changed since %s: what is shown may be out of date; %s reads it again", strings.Join(w.stale, ", "), has, since, d.viewer.keyOf(toReread))
	return words.Join("; ", text, w.wrong), "changed: " + d.viewer.keyOf(toReread) + " reads"
}
