package changeover

import (
	"bide/plan"
	"fmt"
)

// Faults lists everything that keeps the job from being laid out on the beam,
// whatever the holders' conditions; empty when it can be.
func Faults(b *plan.Beam, j *plan.Job) []plan.Fault {
	var out []plan.Fault
	fault := func(key string, why func(plan.Unit) string) { out = append(out, plan.Fault{Key: key, Why: why}) }
	if j.Web > b.Web.Length() {
		fault("web", func(u plan.Unit) string {
			web, area := u.Apart(j.Web, b.Web.Length())
			return fmt.Sprintf("the web of %s is wider than the web area of %s", web, area)
		})
	}
	if j.Uncut != "" {
		fault("material", func(plan.Unit) string { return j.Uncut })
	}
	slits := j.Slits()
	trim := j.Web - plan.SumOf(slits)
	switch {
	case len(slits) == 0:
		fault("slits", func(plan.Unit) string { return "no slits are listed" })
	case trim < 0:
		fault("slits", func(u plan.Unit) string {
			all, web := u.Apart(plan.SumOf(slits), j.Web)
			return fmt.Sprintf("the slits add up to %s, more than the web of %s", all, web)
		})
	case trim > 0 && j.Trim <= 0:
		fault("trim", func(u plan.Unit) string {
			return fmt.Sprintf("the least trim is %s; where there is trim, %s in all, it must be above 0", u.Show(j.Trim), u.Show(trim))
		})
	case trim > 0 && trim < 2*j.Trim:
		fault("trim", func(u plan.Unit) string {
			has, needs := u.Apart(trim, 2*j.Trim)
			return fmt.Sprintf("the trim is %s in all, less than the %s needed for %s on each side", has, needs, u.Show(j.Trim))
		})
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
			fault("slits", func(u plan.Unit) string {
				slit, pitch := u.Apart(s, b.Pitch())
				return fmt.Sprintf("slit %d of %s is narrower than the pitch of %s: two holders can't stand so near", n, slit, pitch)
			})
			break // the first says it; a run of equal slits would repeat it
		}
	}
	if n, good := cutCount(len(slits), trim), cutters(b); n > good {
		fault("slits", func(plan.Unit) string {
			return fmt.Sprintf("%d cuts need as many holders; %d of the %d holders may cut", n, good, len(b.Holders))
		})
	}
	if len(out) == 0 && len(offRail(b, j, slits)) > 0 {
		cuts := offRail(b, j, slits)
		fault("slits", func(u plan.Unit) string {
			return fmt.Sprintf("the cut at %s is off the rail, which runs from %s to %s", u.Show(cuts[0]), u.Show(b.Rail.From), u.Show(b.Rail.To))
		})
	}
	if len(out) == 0 {
		out = damageFaults(b, j)
	}
	return out
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
