package ui

import (
	"bide/plan/shop"
	"bide/plan/words"
	"os"
)

// recorded is a shop's record, summed up.
type recorded struct {
	summary  *shop.Summary
	problems int
	err      error
}

// readRecord sums the shop's record up.
func (d *session) readRecord() {
	dir, holders, since := d.shop.Dir, len(d.shop.Beam.Holders), d.shop.Day.Start
	if dir == "" {
		return
	}
	d.later(func() any {
		sum := shop.NewSummary(holders, since)
		problems, err := shop.ReadRecord(os.DirFS(dir), sum.Add)
		return recorded{sum, len(problems), err}
	})
}

// heard takes the record; what is wrong with it is told where nothing else is.
func (d *session) heard(r recorded) {
	d.wear = r.summary
	switch {
	case d.news.text != "":
	case r.err != nil:
		d.say("%v; the holders' past isn't shown", r.err)
	case r.problems > 0:
		d.say("record.jsonl: %s can't be read and is left out", words.Count(r.problems, "line"))
	}
}
