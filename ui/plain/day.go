// Package plain is the day in words, one thing a line, for screen readers and printers.
package plain

import (
	"fmt"
	"strings"

	"bide/plan"
	"bide/plan/session"
	"bide/plan/session/planning"
	"bide/plan/words"
	"bide/ui/caution"
	"bide/ui/draw"
	"bide/ui/frame"
	"bide/ui/pane"
	"bide/ui/pane/daylist"
	"bide/ui/pane/holders"
)

// page is text that grows line by line.
type page struct {
	*pane.Shared
	strings.Builder
	moving func(index, near int) planning.MoveCosts // what it costs to move a job by so many numbers
}

// tell adds a line, safe for any terminal.
func (p *page) tell(format string, args ...any) {
	p.WriteString(strings.TrimRight(p.Safe(fmt.Sprintf(format, args...)), " ") + "\n")
}

// chapter begins a chapter.
func (p *page) chapter(name string) { p.tell(""); p.tell("%s", name); p.tell("") }

// Text is the whole screen in words, with notes, the setup that comes next, and what it costs to
// move a job.
func Text(d *pane.Shared, notes []string, next *session.Guide, moving func(index, near int) planning.MoveCosts) string {
	p := &page{Shared: d, moving: moving}
	name := d.Shop.Beam.Name
	if d.Demo {
		name += ", DEMO, an invented day"
	}
	p.tell("bide: %s, %s, pitch %s", name, words.Count(len(d.Shop.Beam.Holders), "holder"), d.Shop.Unit.Show(d.Shop.Beam.Pitch()))
	p.tell("%s", strings.TrimSpace(frame.Endings(d)[0].Text()))
	for _, note := range notes {
		p.tell("Note: %s", note)
	}
	p.chapter("Before a hand goes near the beam")
	for _, c := range caution.All {
		p.tell("%s: %s", c.Head, c.Text)
	}
	p.day()
	p.guidedSetup(next)
	p.changeovers()
	p.dayMap()
	p.holders()
	p.settings()
	p.orders()
	p.movingJobs(mostMoves)
	return p.String()
}

// day is the jobs in their order.
func (p *page) day() {
	p.chapter("Day, " + daylist.DayHours(p.Shop.Day, "Mon 2 Jan 2006, 15:04", " to "))
	for index, j := range p.Jobs() {
		o := p.Outcome(index)
		switch {
		case o == nil:
			p.tell("Number %d, %s.", p.Number(index), j.ID)
		case len(o.Faults) > 0:
			p.tell("No number, %s.", j.ID)
		default:
			s := o.Step
			text := fmt.Sprintf("Number %d, %s: %s, %s min of setup from %s, runs %s to %s", p.Number(index), j.ID,
				words.Count(s.Changeover.Repositions, "move"), words.Minutes(s.Setup.Total()), p.Clock(s.SetupStart), p.Clock(s.RunStart), p.Clock(s.RunEnd))
			if !j.Due.IsZero() {
				text += ", due " + p.Clock(j.Due)
			}
			if s.Late > 0 {
				text += ", " + words.Hours(s.Late) + " late"
			}
			p.tell("%s.", text)
		}
		for _, s := range pane.AboutJob(p.Shared, index) {
			p.tell("  %s", s.Text)
		}
	}
	list := daylist.Pane{Size: draw.Size{W: draw.Longest, H: 50}}
	if len(p.Away()) > 0 {
		p.tell("%s", strings.TrimSpace(list.Away(p.Shared).Text()))
	}
	p.tell("%s", strings.TrimSpace(list.Total(p.Shared, daylist.ThisOrder(p.Shared), &p.Present).Text()))
	p.tell("%s", strings.TrimSpace(list.Total(p.Shared, "as listed, centred", &p.Listed).Text()))
}

// changeovers are the beam and the moves, job by job.
func (p *page) changeovers() {
	p.chapter("Beam and moves, changeover by changeover")
	for index, j := range p.Jobs() {
		o := p.Outcome(index)
		if o == nil || len(o.Faults) > 0 {
			p.tell("To %s: refused, nothing moves.", j.ID)
			continue
		}
		c := &o.Step.Changeover
		p.tell("To %s: %s, %s, %s. Web from %s to %s.", j.ID, words.Count(c.Repositions, "holder")+" to move",
			p.doing(c, plan.Cutting), words.Join(", ", p.doing(c, plan.Resting), p.doing(c, plan.Parked)),
			p.Shop.Unit.Number(o.Step.Layout.Web.From), p.Shop.Unit.Show(o.Step.Layout.Web.To))
		for n := range c.Moves {
			p.tell("  %d. %s.", n+1, pane.MoveSentence(&c.Moves[n], p.Shop.Unit))
		}
	}
}

// doing names the holders that do one thing.
func (p *page) doing(c *plan.Changeover, use plan.Use) string {
	var numbers []int
	for i, h := range c.Holders {
		if h.Use == use {
			numbers = append(numbers, i+1)
		}
	}
	if len(numbers) == 0 {
		return "none " + use.String()
	}
	return use.String() + ": " + words.Ranges(numbers)
}

// dayMap is each holder's way through the day.
func (p *page) dayMap() {
	u := p.Shop.Unit
	p.chapter("Day map, holder by holder, in " + u.String())
	use := p.Use()
	for i := range use.Holders {
		text := fmt.Sprintf("Holder %d from %s", i+1, u.Number(holders.PositionOf(p.Shared, i+1)))
		for step, s := range use.Holders[i].Stints {
			if s.Way != 0 {
				text += fmt.Sprintf(", to %s for %s", u.Number(s.At), p.Jobs()[use.Turns[step]].ID)
			}
		}
		if use.Holders[i].Moves == 0 {
			text += ", stays all day"
		}
		p.tell("%s.", text)
	}
}

// holders are what the day makes of each, and which changeovers move most.
func (p *page) holders() {
	p.chapter("Holders")
	for n := 1; n <= len(p.Beam.Holders); n++ {
		var parts []string
		for _, s := range holders.AboutHolder(p.Shared, n) {
			parts = append(parts, s.Text)
		}
		parts = parts[:len(parts)-min(len(p.NeverCut()), 1)] // but what is told once, below
		p.tell("%s.", strings.Join(parts, "; "))
	}
	if never := p.NeverCut(); len(never) > 0 {
		p.tell("Never used today: %s.", words.Ranges(never))
	}
	p.chapter("Changeovers by the moves they take")
	for _, pair := range p.Use().Pairs {
		p.tell("%s: from %s to %s, travel %s, %s min of setup.", words.Count(pair.Repositions, "move"), holders.BeforeID(p.Shared, &pair), pair.Job.ID,
			p.Travel(pair.Travel), words.Minutes(pair.Setup))
	}
}
