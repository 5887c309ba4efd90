package session

import (
	"bide/plan"
	"bide/plan/session/journal"
	"bide/plan/shop"
	"bide/plan/shop/record"
	"bide/plan/words"
	"fmt"
)

// FiledCondition is the condition that beam.toml gives a holder.
func (d *Session) FiledCondition(number int) plan.Condition {
	if d.Shop.Conditions == nil { // a shop that was not read from files
		return d.Shop.Beam.Holders[number-1]
	}
	return d.Shop.Conditions[number-1]
}

// remark is a change of a holder's mark, to be undone and done again.
type remark struct {
	number int
	was    shop.Mark
	is     shop.Mark
}

// markOf is a holder's mark; without one, what beam.toml says.
func (d *Session) markOf(number int) shop.Mark {
	if m, ok := d.Actual.Marks[number]; ok {
		return m
	}
	return shop.Mark{Condition: d.FiledCondition(number)}
}

// SetCondition marks a holder as good, unable to cut, stuck or out. It is saved where the
// shop may be written, the day is planned again, and it can be undone like any change
// of the day.
func (d *Session) SetCondition(number int, m shop.Mark) {
	r := &remark{number, d.markOf(number), m}
	switch {
	case r.was == r.is:
		d.Say("holder %d stays as it was", number)
	case d.Waits():
	default:
		next := d.History.Now
		next.About, next.Did, next.Cause = "", "", r
		d.History.Do(next)
		d.Report(number, m, "")
	}
}

// Report marks a holder as good, unable to cut, stuck or out, for a reason: it is saved
// and all is planned again, and said, after some words. A mark that says what beam.toml
// says is taken away.
func (d *Session) Report(number int, mark shop.Mark, after string) {
	d.mark(number, mark, d.condition(number, mark), fmt.Sprintf("%sholder %d is marked %s", after, number, mark.Condition))
}

// unreport takes a mark back: the holder has the one it had before, unless it has been
// given another since.
func (d *Session) unreport(r *remark) {
	if d.markOf(r.number) != r.is {
		d.Say("not taken back: %s", d.otherwise(r.number))
		return
	}
	d.mark(r.number, r.was, d.condition(r.number, r.is).TakenBack(d.Journal.Clock()),
		fmt.Sprintf("taken back: holder %d is marked %s again", r.number, r.was.Condition))
}

// rereport gives a mark that was taken back again, unless the holder has been given
// another since.
func (d *Session) rereport(r *remark) {
	if d.markOf(r.number) != r.was {
		d.Say("not done again: %s", d.otherwise(r.number))
		return
	}
	d.Report(r.number, r.is, "done again: ")
}

// otherwise tells that a holder has been marked after a mark that is to be undone or done
// again.
func (d *Session) otherwise(number int) string {
	return fmt.Sprintf("holder %d has been marked otherwise since, and stays %s", number, d.markOf(number).Condition)
}

// condition is the event of a holder's coming into a condition.
func (d *Session) condition(number int, mark shop.Mark) record.Event {
	return record.Event{Time: d.Journal.Clock(), Kind: record.Condition, Holder: number, Condition: mark.Condition, Reason: mark.Reason}
}

// mark gives a holder a mark, with what the record is to hold of it and what is said.
func (d *Session) mark(number int, mark shop.Mark, e record.Event, says string) {
	next, priced := d.Actual.Marked(number, mark, d.Shop), d.Priced()
	d.perform(journal.Deed{Actual: next, Events: []record.Event{e}, Done: func(said string) {
		d.Stand(d.Actual)
		if !d.Journal.Writes() || d.Journal.Fault() != "" {
			says += " (not saved)"
		}
		priced.Text = words.Join("; ", says, said)
		d.Notice = priced
	}})
}
