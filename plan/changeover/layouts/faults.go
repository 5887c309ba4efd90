// Package layouts says which layouts a job allows on a beam, whatever stands there now:
// what keeps it from being laid out at all, the shifts at which its cuts keep out of the
// anvil's damaged bands, and the orders of its slits that do so best or that put the most
// cuts where they are wished.
package layouts

import (
	"slices"

	"bide/plan"
)

// Faults lists everything that keeps the job from being laid out on the beam,
// whatever the holders' conditions; empty when it can be.
func Faults(b *plan.Beam, j *plan.Job) []plan.Fault {
	var out []plan.Fault
	fault := func(key, words string, args ...any) { out = append(out, plan.NewFault(key, words, args...)) }
	if area := b.Web.Length(); j.Web > area {
		fault("web", "the web of %s is wider than the web area of %s", plan.Unlike(j.Web, area), plan.Unlike(area, j.Web))
	}
	if j.Uncut != "" {
		fault("material", "%s", j.Uncut)
	}
	slits := j.Slits()
	all := plan.Sum(slits)
	trim := j.Web - all
	switch {
	case len(slits) == 0:
		fault("slits", "no slits are listed")
	case trim < 0:
		fault("slits", "the slits add up to %s, more than the web of %s", plan.Unlike(all, j.Web), plan.Unlike(j.Web, all))
	case trim > 0 && j.Trim <= 0:
		fault("trim", "the least trim is %s; where there is trim, %s in all, it must be above 0", j.Trim, trim)
	case trim > 0 && trim < 2*j.Trim:
		fault("trim", "the trim is %s in all, less than the %s needed for %s on each side", plan.Unlike(trim, 2*j.Trim), plan.Unlike(2*j.Trim, trim), j.Trim)
	}
	inner := slits // strips between two cuts
	if trim == 0 {
		inner = slits[min(1, len(slits)):max(len(slits)-1, min(1, len(slits)))]
	}
	for i, s := range inner {
		if s < b.Pitch() {
			n := i + 1
			if trim == 0 {
				n++
			}
			fault("slits", "slit %d of %s is narrower than the pitch of %s: two holders can't be so near", n, plan.Unlike(s, b.Pitch()), plan.Unlike(b.Pitch(), s))
			break // the first says it; a run of equal slits would repeat it
		}
	}
	if n, good := cutCount(len(slits), trim), cutters(b); n > good {
		fault("slits", "%d cuts need as many holders; %d of the %d holders may cut", n, good, len(b.Holders))
	}
	if len(out) > 0 {
		return out
	}
	if off := offRail(b, j, slits); len(off) > 0 {
		fault("slits", "the cut at %s is off the rail, which runs from %s to %s", off[0], b.Rail.From, b.Rail.To)
		return out
	}
	return damageFaults(b, j)
}

// offRail lists the cuts that are off the rail at every allowed shift.
func offRail(b *plan.Beam, j *plan.Job, slits []plan.Length) []plan.Length {
	from, to := b.Window(j)
	var out []plan.Length
	for _, c := range b.Lay(j, slits, 0).Cuts {
		if c+to < b.Rail.From || c+from > b.Rail.To {
			out = append(out, c)
		}
	}
	return out
}

// cutters counts the holders that may cut.
func cutters(b *plan.Beam) int {
	n := 0
	for _, c := range b.Holders {
		if c.Cuts() {
			n++
		}
	}
	return n
}

// cutCount is the number of cuts of that many slits: one at each edge trim and one
// between any two neighbours.
func cutCount(slits int, trim plan.Length) int {
	if trim > 0 {
		return slits + 1
	}
	return max(slits-1, 0)
}

// Allows reports whether the job may be laid out as chosen, whatever the holders'
// conditions: its slits in an order that it allows, at a shift of its window that keeps
// every cut out of damaged bands.
func Allows(b *plan.Beam, j *plan.Job, c *plan.Chosen) bool {
	return j.Arranges(c.Slits) && slices.ContainsFunc(Shifts(b, j, c.Slits), func(s plan.Span) bool {
		return s.From <= c.Shift && c.Shift <= s.To
	})
}
