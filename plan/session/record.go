package session

import (
	"bide/plan/shop/record"
	"bide/plan/words"
	"os"
)

// recorded is a shop's record, summed up.
type recorded struct {
	summary  *record.Summary
	problems int
	err      error
}

// ReadRecord sums the shop's record up.
func (d *Session) ReadRecord() {
	dir, holders, since := d.Shop.Dir, len(d.Shop.Beam.Holders), d.Shop.Day.Start
	if dir == "" {
		return
	}
	d.Later(func() any {
		sum := record.NewSummary(holders, since)
		problems, err := record.Read(os.DirFS(dir), sum.Add)
		return recorded{sum, len(problems), err}
	})
}

// heard takes the record; what is wrong with it is told where nothing else is.
func (d *Session) heard(r recorded) {
	d.Wear = r.summary
	switch {
	case d.Notice.Text != "":
	case r.err != nil:
		d.Say("%v; the holders' past isn't shown", r.err)
	case r.problems > 0:
		d.Say("record.jsonl: %s can't be read and is left out", words.Count(r.problems, "line"))
	}
}
