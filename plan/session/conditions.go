package session

import (
	"fmt"

	"bide/plan"
	"bide/plan/session/journal"
	"bide/plan/shop"
	"bide/plan/shop/record"
	"bide/plan/words"
)

// Conditions are those of the holders, as people at the beam say them: a holder is good, can't
// cut, is stuck, or is out. What differs from beam.toml is a mark, kept with the positions.
type Conditions struct{ *Session }

// Filed is the condition that beam.toml gives a holder.
func (c *Conditions) Filed(number int) plan.Condition {
	if c.Shop.Conditions == nil { // a shop that was not read from files
		return c.Shop.Beam.Holders[number-1]
	}
	return c.Shop.Conditions[number-1]
}

// change is a change of a holder's mark, to be undone and done again.
type change struct {
	number int
	was    shop.Mark
	is     shop.Mark
}

// of is a holder's mark; without one, what beam.toml says.
func (c *Conditions) of(number int) shop.Mark {
	if m, ok := c.Actual.Marks[number]; ok {
		return m
	}
	return shop.Mark{Condition: c.Filed(number)}
}

// Set gives a holder a condition. It is saved where the shop may be written, the day is
// planned again, and it can be undone like any change of the day.
func (c *Conditions) Set(number int, m shop.Mark) {
	r := &change{number, c.of(number), m}
	if r.was == r.is {
		c.Say("holder %d stays as it was", number)
		return
	}
	c.give(r, "", func() {
		next := *c.Now
		next.About, next.Did, next.Cause = "", "", r
		c.History.Do(next)
	})
}

// give gives a holder the condition of a change, and says so after some words.
func (c *Conditions) give(r *change, after string, then func()) {
	c.record(r.number, r.is, c.event(r), fmt.Sprintf("%sholder %d is recorded as %s", after, r.number, r.is.Condition), then)
}

// takeBack undoes a change: the holder has the condition it had before, unless it has been
// given another since.
func (c *Conditions) takeBack(r *change) {
	undo := func() { c.History.Undo() }
	if c.of(r.number) != r.is {
		undo()
		c.Say("not undone: %s", c.changedSince(r.number))
		return
	}
	c.record(r.number, r.was, c.event(r).TakenBack(c.TimeNow()),
		fmt.Sprintf("undone: holder %d is %s again", r.number, r.was.Condition), undo)
}

// giveAgain does a change again that was undone, unless the holder has been given another
// condition since.
func (c *Conditions) giveAgain(r *change) {
	redo := func() { c.History.Redo() }
	if c.of(r.number) != r.was {
		redo()
		c.Say("not redone: %s", c.changedSince(r.number))
		return
	}
	c.give(r, "redone: ", redo)
}

// changedSince says that a holder has been given a condition after a change that is to be
// undone or done again.
func (c *Conditions) changedSince(number int) string {
	return fmt.Sprintf("the condition of holder %d has changed since: it stays %s", number, c.of(number).Condition)
}

// event is what the record holds of a change.
func (c *Conditions) event(r *change) record.Event {
	return record.Event{Time: c.TimeNow(), Kind: record.Condition, Holder: r.number, Condition: r.is.Condition, Reason: r.is.Reason}
}

// record gives a holder a mark, with what the record is to hold of it; once that is written
// it goes on, and says so. A mark that says what beam.toml says is taken away.
func (c *Conditions) record(number int, mark shop.Mark, e record.Event, says string, then func()) {
	next, priced := c.Actual.Marked(number, mark, c.Shop), c.Priced()
	c.perform(journal.Deed{Actual: next, Events: []record.Event{e}, Done: func(said string) {
		then()
		c.Stand(c.Actual)
		if !c.Journal.Writes() || c.Journal.Fault() != "" {
			says += " (not saved)"
		}
		priced.Text = words.Join("; ", says, said)
		c.Notice = priced
	}})
}
