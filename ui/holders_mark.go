package ui

import (
	"fmt"

	"bide/plan"
	"bide/plan/shop"

	tea "github.com/charmbracelet/bubbletea"
)

// answer takes the condition that the person has chosen, and asks why.
func (p *holdersPane) answer(a action, d *desk) {
	number := p.marking
	p.marking = 0
	switch a {
	case markDrop:
	case markFiled:
		d.change(number, shop.Mark{Condition: d.filed(number)})
	default:
		c := map[action]plan.Condition{markGood: plan.Good, markNoCut: plan.NoCut, markStuck: plan.Stuck, markOut: plan.Out}[a]
		d.prompt = &prompt{
			label:   fmt.Sprintf("why is holder %d %s? Enter marks it, Esc doesn't", number, c),
			done:    func(reason string) { d.change(number, shop.Mark{Condition: c, Reason: reason}) },
			dropped: func() { d.say("holder %d stays as it was", number) },
		}
	}
}

// filed is the condition that beam.toml gives a holder.
func (d *desk) filed(number int) plan.Condition {
	if d.shop.Conditions == nil { // a shop that was not read from files
		return d.shop.Beam.Holders[number-1]
	}
	return d.shop.Conditions[number-1]
}

// remark is a change of a holder's mark, to be undone and done again.
type remark struct {
	number int
	was    shop.Mark
	is     shop.Mark
}

// markOf is a holder's mark; without one, what beam.toml says.
func (d *desk) markOf(number int) shop.Mark {
	if m, ok := d.truth.marks[number]; ok {
		return m
	}
	return shop.Mark{Condition: d.filed(number)}
}

// change marks a holder as good, unable to cut, stuck or out. It is saved where the
// shop may be written, the day is planned again, and it can be undone like any change
// of the day.
func (d *desk) change(number int, m shop.Mark) {
	r := &remark{number, d.markOf(number), m}
	switch {
	case r.was == r.is:
		d.say("holder %d stays as it was", number)
	case d.saving:
		d.say("wait: the last change is still being saved")
	default:
		next := d.history.now
		next.about, next.did, next.remark = "", "", r
		d.history.do(next)
		d.todo = d.report(number, m)
	}
}

// wanted is what a pane wants done, once.
func (d *desk) wanted() tea.Cmd {
	cmd := d.todo
	d.todo = nil
	return cmd
}

// priced are news that tell what something costs against the day as it is now.
func (d *desk) priced() news {
	out := news{priced: true, able: d.present.able()}
	if d.present.whole() {
		totals := d.present.totals
		out.against = &totals
	}
	return out
}

// able is how many of the jobs known can be run.
func (c *chain) able() (n int) {
	for _, o := range c.known {
		if len(o.faults) == 0 {
			n++
		}
	}
	return n
}

// unable tells how many jobs can be run no longer, or again.
func (d *desk) unable() string {
	switch by := d.present.able() - d.news.able; {
	case !d.news.priced || by == 0:
		return ""
	case by < 0:
		return "!" + count(-by, "job") + " can't be run any more"
	default:
		return count(by, "job") + " can be run again"
	}
}
