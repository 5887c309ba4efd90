// Package settings is the page of what is set at the knife for the picked job, what changes against
// the job before, and what all of it does to the anvil.
package settings

import (
	"fmt"

	"bide/material"
	"bide/plan"
	"bide/ui/draw"
	"bide/ui/keys"
	"bide/ui/pane"
)

// Pane tells of the picked job what is set at the knife, why and from which
// source, what changes against the job before, what its blades do to the anvil, and
// what to watch.
type Pane struct {
	draw.Size
	from int       // first line shown
	of   *plan.Job // whose lines they are
}

func (p *Pane) SetSize(s draw.Size) { p.Size = s }

// Help is where the pane's keys work.
func (p *Pane) Help() keys.Scope { return keys.OnSettings }

// HandleKey scrolls, or goes to another job.
func (p *Pane) HandleKey(a keys.Action, d *pane.Shared) pane.Want {
	switch a {
	case keys.Left:
		d.Pick(d.JobAt - 1)
	case keys.Right:
		d.Pick(d.JobAt + 1)
	}
	n := len(p.lines(d))
	by := map[keys.Action]int{keys.Up: -1, keys.Down: 1, keys.PageUp: -p.room(), keys.PageDown: p.room(), keys.Top: -n, keys.Bottom: n}[a]
	p.from, p.of = p.first(d, n, by), d.Job()
	return nil
}

// room is how many lines are shown.
func (p *Pane) room() int { return max(p.H-1, 1) }

// first is the first line shown, some lines on from the one that was: the job's first
// where another was shown before.
func (p *Pane) first(d *pane.Shared, lines, by int) int {
	from := p.from
	if p.of != d.Job() {
		from = 0
	}
	return max(0, min(from+by, lines-p.room()))
}

// View draws the pane.
func (p *Pane) View(d *pane.Shared, focused bool) []draw.Line {
	body := p.lines(d)
	from := p.first(d, len(body), 0)
	l := d.Line()
	if j := d.Job(); j != nil {
		l.Add(draw.Strong, j.ID+" ")
		l.Add(draw.Plain, d.Theme.Short(j.Material, 30)+" ")
	}
	if part := draw.Range(from, p.room(), len(body)); part != "" {
		l.Add(draw.Faint, "lines "+part)
	}
	return draw.Box(d.Theme, "Settings", l, body[min(from, len(body)):], p.Size, focused)
}

// lines are all of it, broken to the pane's width.
func (p *Pane) lines(d *pane.Shared) []draw.Line {
	t := &text{Shared: d, w: max(p.W, 20)}
	j := d.Job()
	if j == nil {
		return nil
	}
	k := d.KnifeFor(d.JobAt)
	if k == nil {
		t.para(draw.Plain, fmt.Sprintf("%s: %s, so there are no settings for it. Add it to materials.toml.", j.ID, d.Shop.Unset(j)))
		return t.out
	}
	t.glance(k.Settings)
	for _, w := range warningsOf(d, k) {
		t.entry(draw.Late, "!", 3, draw.Plain, w)
	}
	t.changes(k, d.Outcome(d.JobAt))
	t.settings(k.Settings)
	t.anvil(k)
	t.face()
	t.chapter("Take care", "")
	for _, c := range k.Settings.Cautions {
		t.pair(draw.Strong, c.About, draw.Plain, c.Text, "["+c.Source+"]")
	}
	t.para(draw.Faint, "Local codes, the site's procedure and licensed people decide; nothing here permits anything.")
	return t.out
}

// warningsOf are what is wrong or unusual, the reasons for a refusal first.
func warningsOf(d *pane.Shared, k *material.Turn) (out []string) {
	if o := d.Outcome(d.JobAt); o != nil {
		for _, f := range o.Faults {
			if why := f.Why(d.Shop.Unit); why != k.Settings.Refused {
				out = append(out, "Refused: "+why+".")
			}
		}
	}
	return append(out, k.Settings.Warnings...)
}
