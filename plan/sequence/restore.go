package sequence

import (
	"bide/plan"
	"context"
	"slices"
)

// restore gives the jobs of the best day found the layouts back that they would have
// had if nothing had been looked for, wherever that costs nothing: a shift or an
// order of slits other than asked for is worth setting only where it saves something.
// Each job is tried by itself, at the places that then cost least between what
// stands before it and behind it, and the day is written down with it: O(n^2)
// changeovers for n jobs, all but O(n) of them with their places known.
func (f *finisher) restore(ctx context.Context) {
	if f.best == nil {
		return
	}
	t := f.tour
	for turn, j := range t.order {
		if ctx.Err() != nil {
			return
		}
		if !f.free(j) {
			continue
		}
		for _, c := range f.plainer(j, t.choices[j]) {
			day := t.clone()
			day.choices[j] = c
			var after []plan.Length
			if turn+1 < len(t.order) {
				after = t.stands[turn+2].At
			}
			if f.settleJob(j, c.cuts, t.stands[turn].At, after, day.stands[turn+1].At) && f.noWorse(day) {
				t = day
				break
			}
		}
	}
}

// plainer are layouts of a job nearer to the one asked for than the present one is,
// the nearest first: as listed and centred, as listed, centred.
func (k *seeker) plainer(j int, now choice) (all []choice) {
	job := k.jobs[j]
	listed := choice{slits: job.Slits(), entries: plan.EntriesOf(job, job.Slits())}
	try := func(c choice, shift plan.Length) {
		c.shift = shift
		c.cuts = k.p.Beam.Lay(job, c.slits, shift).Cuts
		if (shift != now.shift || !slices.Equal(c.slits, now.slits)) && plan.ClearOf(k.p.Beam.Bad, c.cuts, 0) {
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

// noWorse writes the tour down and keeps it if it is as good as the best so far.
func (f *finisher) noWorse(t *tour) bool {
	d := f.write(t)
	if !foresee(d) || !allHeld(d) {
		return false
	}
	sc := scoreOf(d.Steps())
	if sc.Compare(f.least, f.aim) > 0 {
		return false
	}
	f.best, f.least, f.tour = d, sc, t
	return true
}
