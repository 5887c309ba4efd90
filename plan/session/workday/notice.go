package workday

import (
	"fmt"
	"slices"
	"strings"

	"bide/plan"
	"bide/plan/words"
)

// Notice is what just happened, said until something else is.
type Notice struct {
	Text    string
	Brief   string       // the same where there is little room; may be empty
	also    string       // what came from the background meanwhile
	job     string       // id of the one that was changed
	against *plan.Totals // of the day before it, where they were known
	priced  bool         // what it costs is said, though no job was changed
	able    []*plan.Job  // that could be run before it
}

// mention says what came from the background, beside what just happened.
func (d *Day) mention(text string) { d.Notice.also = text }

// Say says what just happened, or why nothing did.
func (d *Day) Say(format string, args ...any) {
	d.Notice = Notice{Text: fmt.Sprintf(format, args...)}
}

// Told is the news in words: what happened and what it costs, lateness first. Where
// a rule is broken, that comes before all, and what happened last: what is cut off
// at the end matters least.
func (d *View) Told(pending string) string {
	text := d.Notice.Text
	if d.Notice.job == "" && !d.Notice.priced {
		return words.Join("; ", text, d.Notice.also)
	}
	costs := ""
	switch {
	case d.Notice.against == nil:
	case d.Present.Whole():
		costs = d.Notice.costs(d.Present.Totals, d.Able())
	default:
		costs = pending
	}
	for _, j := range d.Jobs() {
		if why := d.Broken[j]; why != "" {
			return words.Join("; ", "rule broken: "+why, costs, text, d.Notice.also)
		}
	}
	return words.Join("; ", words.Join(": ", text, costs), d.Notice.also)
}

// Priced are news that say what something costs against the day as it is now.
func (d *View) Priced() Notice {
	out := Notice{priced: true, able: d.Able()}
	if d.Present.Whole() {
		totals := d.Present.Totals
		out.against = &totals
	}
	return out
}

// Ables says which jobs of those before can be run no longer, and which can be again.
func Ables(before, now []*plan.Job) string {
	lost, found := Lacking(before, now), Lacking(now, before)
	var parts []string
	if len(lost) > 0 {
		parts = append(parts, fmt.Sprintf("!%s can no longer be run", strings.Join(lost, ", ")))
	}
	if len(found) > 0 {
		parts = append(parts, fmt.Sprintf("%s can be run again", strings.Join(found, ", ")))
	}
	return strings.Join(parts, ", ")
}

// Lacking are the IDs of those of the jobs that are missing among others.
func Lacking(jobs, others []*plan.Job) (out []string) {
	for _, j := range jobs {
		if !slices.ContainsFunc(others, func(o *plan.Job) bool { return o.ID == j.ID }) {
			out = append(out, j.ID)
		}
	}
	return out
}

// costs says what the day costs against the one before the notice, and which jobs can be run
// no longer, or again: the costs are without them, or with them.
func (n *Notice) costs(now plan.Totals, able []*plan.Job) string {
	by, text := words.Against(now, *n.against), ""
	if n.priced {
		text = Ables(n.able, able)
	}
	if text == "" {
		return by
	}
	return text + "; so " + by
}
