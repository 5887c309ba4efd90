package ui

import (
	"fmt"
	"slices"
	"strings"

	"bide/plan"
	"bide/plan/shop"
	"bide/ui/keys"
)

// answer takes the condition that the person has chosen, and asks why.
func (p *holdersPane) answer(a keys.Action, d *desk) {
	number := p.marking
	p.marking = 0
	switch a {
	case keys.MarkDrop:
	case keys.MarkFiled:
		d.change(number, shop.Mark{Condition: d.filed(number)})
	default:
		c := map[keys.Action]plan.Condition{keys.MarkGood: plan.Good, keys.MarkNoCut: plan.NoCut, keys.MarkStuck: plan.Stuck, keys.MarkOut: plan.Out}[a]
		label := fmt.Sprintf("why is holder %d %s? Enter saves, Esc cancels", number, c)
		d.prompt = newPrompt(label, "", func(reason string) { d.change(number, shop.Mark{Condition: c, Reason: reason}) })
		d.prompt.dropped = func() { d.say("holder %d stays as it was", number) }
	}
}

// filed is the condition that beam.toml gives a holder.
func (d *session) filed(number int) plan.Condition {
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
func (d *session) markOf(number int) shop.Mark {
	if m, ok := d.truth.marks[number]; ok {
		return m
	}
	return shop.Mark{Condition: d.filed(number)}
}

// change marks a holder as good, unable to cut, stuck or out. It is saved where the
// shop may be written, the day is planned again, and it can be undone like any change
// of the day.
func (d *session) change(number int, m shop.Mark) {
	r := &remark{number, d.markOf(number), m}
	switch {
	case r.was == r.is:
		d.say("holder %d stays as it was", number)
	case d.waits():
	default:
		next := d.history.now
		next.about, next.did, next.remark, next.ran, next.tossed = "", "", r, nil, nil
		d.history.do(next)
		d.report(number, m, "")
	}
}

// priced are news that tell what something costs against the day as it is now.
func (d *session) priced() news {
	out := news{priced: true, able: d.able()}
	if d.forecast.Present.Whole() {
		totals := d.forecast.Present.Totals
		out.against = &totals
	}
	return out
}

// unable tells which jobs can be run no longer, or again: the costs are without them,
// or with them.
func (d *session) unable() string {
	if !d.news.priced {
		return ""
	}
	return ables(d.news.able, d.able())
}

// ables tells which jobs of those before can be run no longer, and which can be again.
func ables(before, now []*plan.Job) string {
	lost, found := lacking(before, now), lacking(now, before)
	var parts []string
	if len(lost) > 0 {
		parts = append(parts, fmt.Sprintf("!%s can no longer be run", strings.Join(lost, ", ")))
	}
	if len(found) > 0 {
		parts = append(parts, fmt.Sprintf("%s can be run again", strings.Join(found, ", ")))
	}
	return strings.Join(parts, ", ")
}

// lacking are the IDs of those of the jobs that are missing among others.
func lacking(jobs, others []*plan.Job) (out []string) {
	for _, j := range jobs {
		if !slices.ContainsFunc(others, func(o *plan.Job) bool { return o.ID == j.ID }) {
			out = append(out, j.ID)
		}
	}
	return out
}

// costsOf tells what the day costs against the one before the news.
func (d *session) costsOf() string {
	text, by := d.unable(), against(d.forecast.Present.Totals, *d.news.against)
	if text == "" {
		return by
	}
	return text + "; so " + by
}
