// Package schedule is the day along the clock: setups, runs, due times and the end of the shift, one
// job a line or all in one.
package schedule

import (
	"slices"

	"bide/ui/draw"
	"bide/ui/keys"
	"bide/ui/list"
	"bide/ui/pane"
)

// Pane draws the day along the clock: each job's setup and run, when it is due
// and the end of the shift. Where there are few lines all jobs are in one.
type Pane struct {
	draw.Size
	filter list.Filter
	hours  timeView // what is shown
}

func (p *Pane) SetSize(s draw.Size) { p.Size = s }
func (p *Pane) Help() keys.Scope    { return keys.OnSchedule }

// HandleKey picks a job, or shows another part of the day.
func (p *Pane) HandleKey(a keys.Action, d *pane.Shared) pane.Want {
	if list.Steps(a) {
		d.Pick(pane.PickRow(p.rows(d), d.JobAt, a, max(p.jobs(d)-1, 1)))
		p.hours.follow(d)
	} else {
		p.hours.look(a, d)
	}
	return nil
}

// rows are the indexes of the jobs that the filter leaves; all where they are in one line.
func (p *Pane) rows(d *pane.Shared) []int {
	if p.inOne() {
		return new(list.Filter).Rows(len(d.Jobs()), d.FilterWords)
	}
	return p.filter.Rows(len(d.Jobs()), d.FilterWords)
}

// fewLines is below how many lines all jobs are drawn in one.
const fewLines = 16

func (p *Pane) inOne() bool { return p.H < fewLines }

// jobs is how many jobs are shown, one a line; what is left tells about the picked one.
func (p *Pane) jobs(d *pane.Shared) int {
	room := p.H - 3
	return max(min(max(len(p.rows(d)), 1), room-min(room/4, 2)), 0)
}

// shown are the indexes of the jobs that there is room for, around the picked one.
func (p *Pane) shown(d *pane.Shared) []int {
	rows, n := p.rows(d), p.jobs(d)
	l := pane.ListOf(rows, d.JobAt, n)
	return rows[l.From():l.To()]
}

// View draws the pane.
func (p *Pane) View(d *pane.Shared, focused bool) []draw.Line {
	n := p.jobs(d)
	if p.inOne() {
		return draw.Box(d.Theme, "Schedule", p.legend(d), p.oneLine(d), p.Size, focused)
	}
	title := pane.RowsShown(d, &p.filter, p.rows(d), n)
	title.Join(p.legend(d))
	body := p.lines(d, p.shown(d), focused)
	return draw.Box(d.Theme, "Schedule", title, pane.WithDetail(d, body, p.Size, max(min(p.H-3-n, 5), 0)), p.Size, focused)
}

func (p *Pane) Filtered() *list.Filter { return &p.filter }

func (p *Pane) PickShown(d *pane.Shared) {
	d.Pick(pane.ShownRow(p.rows(d), d.JobAt))
	p.hours.follow(d)
}

func (p *Pane) Hides(d *pane.Shared) bool {
	return d.Job() != nil && !slices.Contains(p.rows(d), d.JobAt)
}

// Click picks the job of a line, or where all are in one the job at a time.
func (p *Pane) Click(d *pane.Shared, x, y int) {
	const heads = 3 // with the pane's rule
	if !p.inOne() {
		if indexes := p.shown(d); y >= heads && y-heads < len(indexes) {
			d.Pick(indexes[y-heads])
		}
		return
	}
	from, long := p.hours.span(d)
	s := timeScale{from, from.Add(long), p.W}
	for index := range d.Jobs() {
		if o := d.Outcome(index); o != nil && len(o.Faults) == 0 && s.column(o.Step.SetupStart) <= x && x <= s.column(o.Step.RunEnd) {
			d.Pick(index)
		}
	}
}
