package plain

import (
	"fmt"
	"strings"
	"time"

	"bide/plan"
	"bide/plan/session/planning"
	"bide/plan/words"
	"bide/ui/keys"
	"bide/ui/page/compare"
	"bide/ui/page/moveto"
)

// orders are the order of the file against the present one: in all, and job by job.
func (p *page) orders() {
	lefts, now := compare.Sides(p.Shared, nil)
	file := lefts[len(lefts)-1]
	p.chapter("Two orders: the file's, layouts centred, and this one")
	if !file.Full() || !now.Full() || len(now.Known) == 0 {
		p.tell("There is nothing to compare.")
		return
	}
	a, b := file.Totals, now.Totals
	p.tell("Setup: %s min in the file's order, %s in this.", words.Minutes(a.Setup), words.Minutes(b.Setup))
	p.tell("Moves: %d and %d.", a.Repositions, b.Repositions)
	p.tell("Late: %s, and %s.", words.Late(a), words.Late(b))
	p.tell("End: %s and %s.", p.Clock(file.Ends()), p.Clock(now.Ends()))
	p.tell("So this order costs: %s.", words.Against(b, a))
	for turn, j := range now.Jobs {
		was, is := file.Step(j.ID), now.Step(j.ID)
		if was == nil || is == nil {
			p.tell("%s: refused, or only in one of the two orders.", j.ID)
			continue
		}
		p.tell("%s: number %s in the file's order, number %s in this; setup %s and %s min; %s and %d; ends %s and %s%s.", j.ID,
			file.Number(file.Index(j.ID)), now.Number(turn), words.Minutes(was.Setup.Total()), words.Minutes(is.Setup.Total()),
			words.Count(was.Changeover.Repositions, "move"), is.Changeover.Repositions, p.Clock(was.RunEnd), p.Clock(is.RunEnd), bothLate(was.Late, is.Late))
	}
}

// bothLate tells how late a job is in two orders; nothing where it is late in none.
func bothLate(a, b time.Duration) string {
	if a == 0 && b == 0 {
		return ""
	}
	words := func(d time.Duration) string {
		if d == 0 {
			return "in time"
		}
		return words.Hours(d) + " late"
	}
	return fmt.Sprintf("; %s and %s", words(a), words(b))
}

// mostMoves bounds what is worked out of moving jobs, in changeovers planned times the
// square of the holders: a few seconds.
const mostMoves = 25_000_000

// movingJobs tells for each job what it costs to move it to another number in the sequence, by
// estimates: to all, or as many around its own as the bound allows.
func (p *page) movingJobs(bound int) {
	p.chapter("What it costs to move a job: an estimate, each day planned job by job, against this one")
	jobs := p.Jobs()
	holders := len(p.Beam.Holders)
	near := bound / max(len(jobs)*len(jobs)*holders*holders, 1)
	switch {
	case len(jobs) < 2:
		p.tell("There is no job to move.")
		return
	case near == 0:
		p.tell("That takes too long to calculate for %s on so many holders. On the screen, %s shows it for one job.", words.Count(len(jobs), "job"), p.KeyFor(keys.MoveTo))
		return
	case near < len(jobs)-1:
		p.tell("For so large a day, only moves by up to %s. On the screen, %s shows all for one job.", words.Count(near, "number"), p.KeyFor(keys.MoveTo))
	}
	for index, j := range jobs {
		if j.State != plan.Running {
			p.movingJob(p.moving(index, near))
		}
	}
}

// movingJob tells what it costs to move one job, by estimates.
func (p *page) movingJob(m planning.MoveCosts) {
	p.tell("%s, now %s. Without it: %s.", m.Job.ID, strings.TrimSuffix(moveto.Where(&m, m.Was), " (now)"), words.Cost(m.Out(planning.Cost{}).Difference))
	for index := range len(m.Rest) + 1 {
		c, known := m.Cost(index)
		switch {
		case index == m.Was || !known:
		case m.Barred(index):
			p.tell("  Moved %s: not possible, %s is running.", moveto.Where(&m, index), m.Rest[index].ID)
		default:
			p.tell("  Moved %s: %s.", moveto.Where(&m, index), words.Join("; ", words.Cost(c.Difference), p.troubles(c.Difference)))
		}
	}
}

// troubles are the jobs that a gap makes late, and what it breaks or refuses.
func (p *page) troubles(s plan.Difference) string {
	var parts []string
	if len(s.Late) > 0 {
		parts = append(parts, "late there, but not now: "+words.Jobs(s.Late))
	}
	for _, b := range s.Broken {
		parts = append(parts, "breaks a rule: "+b.Why(p.Shop.Unit))
	}
	for _, r := range s.Refused {
		parts = append(parts, r.Job.ID+" would be refused")
	}
	return strings.Join(parts, "; ")
}
