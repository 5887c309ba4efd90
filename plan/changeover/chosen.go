package changeover

import (
	"slices"

	"bide/plan"
)

// IdlePlaces is where all holders stand when those idle go or stay as chosen and the others
// cut; a holder that may cut from where it stands stays (see Beam.PositionTolerance). It is not ok
// where holders and cuts don't come out even. O(H) for H holders.
func IdlePlaces(d *plan.Idle, b *plan.Beam, at, cuts []plan.Length) (to []plan.Length, ok bool) {
	to, rests, cut := slices.Clone(at), d.Holders, 0
	for i := range to {
		exact := false
		if len(rests) > 0 && rests[0].Number == i+1 {
			r := rests[0]
			rests = rests[1:]
			if r.Moved {
				to[i] = r.To
			}
			if exact = r.Cuts; !exact {
				continue
			}
		}
		if cut == len(cuts) {
			return nil, false
		}
		if exact || (at[i]-cuts[cut]).Abs() > b.PositionTolerance || b.Bad.Hold(at[i]) {
			to[i] = cuts[cut]
		}
		cut++
	}
	return to, len(rests) == 0 && cut == len(cuts)
}

// asChosen is the changeover that leaves the holders idle that were chosen to be, where
// that can still be made and takes no more repositions than it did.
func (p *Planner) asChosen(at []plan.Length, j *plan.Job, l plan.Layout) (plan.Changeover, bool) {
	idle := j.Chosen.Idle
	if idle == nil {
		return plan.Changeover{}, false
	}
	to, ok := IdlePlaces(idle, p.Beam, at, l.Cuts)
	if !ok {
		return plan.Changeover{}, false
	}
	c, ok := p.goTo(at, j, l, to, plan.AsChosen)
	return c, ok && c.Repositions <= idle.Moves
}
