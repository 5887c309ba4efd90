package sequence

import (
	"context"
	"slices"

	"bide/plan"
)

// plainerLayouts gives the jobs of the best day found the layouts back that they would have
// had if nothing had been looked for, wherever that costs nothing: a shift or an
// order of slits other than asked for is worth setting only where it saves something.
// No setup is won by it (none on the demo or any trial): it is for people, who wonder at
// a web that is shifted for nothing. Each job is tried by itself, at the places that then cost least between the
// positions before it and behind it, and the day is written down with it: O(n^2)
// changeovers for n jobs, all but O(n) of them with their places known.
func (p *improver) plainerLayouts(ctx context.Context) {
	if p.best == nil {
		return
	}
	t := p.from
	for turn, j := range t.order {
		if ctx.Err() != nil {
			return
		}
		if !p.free(j) {
			continue
		}
		for _, c := range p.plainer(j, t.choices[j]) {
			day := t.clone()
			day.choices[j] = c
			var after []plan.Length
			if turn+1 < len(t.order) {
				after = t.positions[turn+2].At
			}
			if p.eval.between(j, c.cuts, t.positions[turn].At, after, day.positions[turn+1].At, false) && p.noWorse(day) {
				t = day
				break
			}
		}
	}
}

// plainer are layouts of a job nearer to the one asked for than the present one is,
// the nearest first: as listed and centred, as listed, centred.
func (in *instance) plainer(j int, now choice) (all []choice) {
	job := in.jobs[j]
	listed := choice{slits: job.Slits(), entries: plan.EntriesOf(job, job.Slits())}
	try := func(c choice, shift plan.Length) {
		c.shift = shift
		c.cuts = in.beam.Lay(job, c.slits, shift).Cuts
		if (shift != now.shift || !slices.Equal(c.slits, now.slits)) && in.beam.Bad.Miss(c.cuts, 0) {
			all = append(all, c)
		}
	}
	try(listed, 0)
	if now.shift != 0 && !slices.Equal(listed.slits, now.slits) {
		try(listed, now.shift)
		try(now, 0)
	}
	return all
}
