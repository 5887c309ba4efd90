package pane

import (
	"fmt"
	"strings"

	"bide/plan"
	"bide/plan/session/workday"
	"bide/plan/words"
	"bide/ui/draw"
	"bide/ui/keys"
	"bide/ui/list"
)

// AboutPicked is about the picked job, in n lines of w cells.
func AboutPicked(d *Shared, n, w int) []draw.Line {
	out := make([]draw.Line, 0, n)
	for _, s := range AboutJob(d, d.JobAt) {
		for i, text := range d.Wrap(s.Text, w-3) {
			if len(out) == n {
				return out
			}
			l := d.Line()
			l.Add(draw.Plain, draw.Blanks(1+min(i, 1)*2))
			l.Add(s.Style, text)
			out = append(out, l)
		}
	}
	for len(out) < n {
		out = append(out, d.Line())
	}
	return out
}

// AboutJob is all there is to say about a job of the day, what is wrong first.
func AboutJob(d *Shared, index int) (out []draw.Span) {
	if index >= len(d.Jobs()) {
		return []draw.Span{{Style: draw.Plain, Text: "no job is waiting"}}
	}
	j, o, u := d.Jobs()[index], d.Outcome(index), d.Shop.Unit
	say := func(i draw.Style, format string, args ...any) {
		out = append(out, draw.Span{Style: i, Text: fmt.Sprintf(format, args...)})
	}
	if why := d.Broken[j]; why != "" {
		say(draw.Late, "! %s", why)
	}
	if j.State == plan.Running {
		say(draw.Good, "r %s is running", j.ID)
	}
	if j.Note != "" {
		say(draw.Plain, "note: %s", j.Note)
	}
	if text := rulesOf(j); text != "" {
		say(draw.Plain, "%s", text)
	}
	if o == nil {
		say(draw.Faint, "%s its changeover is being planned", d.Pending)
		return out
	}
	for _, f := range o.Faults {
		say(draw.Late, "x refused: %s", f.Why(u))
	}
	if len(o.Faults) > 0 {
		return out
	}
	s := o.Step
	if d.Estimated() {
		say(draw.Faint, "~ estimate: each job planned on its own; planning all jobs together still runs")
	}
	say(draw.Plain, "setup %s min: %s", words.Minutes(s.Setup.Total()), words.BriefCauses(&s.Setup, d.Beam.Drive.Kind))
	say(draw.Plain, "%d cutting, %d resting, %d parked; travel %s",
		len(s.Changeover.Holders)-s.Changeover.Resting-s.Changeover.Parked, s.Changeover.Resting, s.Changeover.Parked, d.Travel(s.Changeover.Travel))
	say(draw.Plain, "%s", LayoutText(j, &s.Layout, u))
	say(draw.Faint, "%s", words.Join("; ", chosen(j, &s.Layout), permits(j)))
	say(draw.Faint, "%s, runs %s to %s", words.Join(" for ", j.Material, j.Customer), words.Clock(s.RunStart, d.Shop.Day.Start), words.Clock(s.RunEnd, d.Shop.Day.Start))
	return out
}

// rulesOf says what the job asks of the order.
func rulesOf(j *plan.Job) string {
	var parts []string
	switch {
	case j.Fixed < 0:
		parts = append(parts, "fixed as the last job")
	case j.Fixed > 0:
		parts = append(parts, fmt.Sprintf("fixed at number %d", j.Fixed))
	}
	if len(j.After) > 0 {
		parts = append(parts, "comes after "+strings.Join(j.After, ", "))
	}
	return strings.Join(parts, "; ")
}

// permits says what the job's layout may do.
func permits(j *plan.Job) string {
	text := "centred, or as near as possible"
	if j.Shift == plan.Free {
		text = "may shift inside its trim"
	}
	return text + "; " + workday.Arranges[j.Arrange]
}

// chosen is about a layout that a search chose for the job.
func chosen(j *plan.Job, l *plan.Layout) string {
	switch {
	case j.Chosen == nil || !j.Chooses():
		return ""
	case j.Chosen.Lays(l.Slits, l.Shift):
		return "layout from an accepted search"
	}
	return "the layout from the accepted search can't be set now"
}

// LayoutText is the job's web, slits and trim.
func LayoutText(j *plan.Job, l *plan.Layout, u plan.Unit) string {
	var slits []string
	for i := 0; i < len(l.Slits); {
		n := i
		for n < len(l.Slits) && l.Slits[n] == l.Slits[i] {
			n++
		}
		slits = append(slits, fmt.Sprintf("%d x %s", n-i, u.Number(l.Slits[i])))
		i = n
	}
	text := fmt.Sprintf("web %s, slits %s", u.Show(j.Web), strings.Join(slits, ", "))
	if l.Trim[0]+l.Trim[1] == 0 {
		return text + ", no trim"
	}
	text += fmt.Sprintf(", trim %s and %s", u.Number(l.Trim[0]), u.Number(l.Trim[1]))
	if l.Shift != 0 {
		text += fmt.Sprintf(", shifted %s to the %s", u.Number(max(l.Shift, -l.Shift)), words.Towards(l.Shift))
	}
	return text
}

// WithDetail are a page's rows, and below them so many lines about the picked job.
func WithDetail(d *Shared, body []draw.Line, s draw.Size, detail int) []draw.Line {
	if len(body) == 2 { // the heads alone
		l := d.Line()
		l.Add(draw.Faint, " no job matches the filter; "+d.KeyFor(keys.FilterRows)+" changes it")
		body = append(body, l)
	}
	for len(body) < s.H-1-detail {
		body = append(body, d.Line())
	}
	return append(body, AboutPicked(d, detail, s.W)...)
}

// RowsShown tells which n of a page's rows are shown, where not all are.
func RowsShown(d *Shared, f *list.Filter, rows []int, n int) draw.Line {
	l := d.Line()
	if f.On() {
		l.Add(draw.Picked, f.Count(len(rows), len(d.Jobs()))+" ")
	} else if text := ListOf(rows, d.JobAt, n).Range(); text != "" {
		l.Add(draw.Faint, text+"  ")
	}
	return l
}
