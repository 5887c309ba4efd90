package changeover

import (
	"slices"

	"bide/plan"
	"bide/plan/changeover/layouts"
)

// Changeover plans the move from the holders' positions to a layout, exactly: the fewest
// repositions, then the fewest parked holders, then the least travel, then the
// smallest places by holder number. With the moves come an order in which they can
// be made and the reason for each. The faults say why the layout can't be set; the
// changeover is then empty.
func (p *Planner) Changeover(now []plan.Length, l plan.Layout) (plan.Changeover, []plan.Fault) {
	if faults := p.wrongPositions(now); len(faults) > 0 {
		return plan.Changeover{}, faults
	}
	if faults := layouts.Damaged(p.Beam, l); len(faults) > 0 {
		return plan.Changeover{}, faults
	}
	p.Set(now, l.Web, l.Cuts)
	if !p.Stays.Find(&p.Scene) {
		return plan.Changeover{}, diagnosis{p}.refusal(l, plan.Span{})
	}
	c := p.read(p.Places.Solve(&p.Scene, &p.Stays, nil))
	c.Moves = p.order(&c)
	return c, nil
}

// wrongPositions says why holders can't stand as given, which no plan mends.
func (p *Planner) wrongPositions(now []plan.Length) []plan.Fault {
	wrong := func(words string, args ...any) []plan.Fault {
		return []plan.Fault{plan.NewFault("positions", words, args...)}
	}
	if len(now) != len(p.Beam.Holders) {
		return wrong("%d positions for the %d holders of the beam", len(now), len(p.Beam.Holders))
	}
	for i, x := range now {
		if x < p.Beam.Rail.From || x > p.Beam.Rail.To {
			return wrong("holder %d is off the rail", i+1)
		}
		if i > 0 && x-now[i-1] < p.Pitch {
			return wrong("holders %d and %d are nearer to each other than the pitch", i, i+1)
		}
	}
	return nil
}

// read takes the changeover from the solved places, from the first holder's
// candidate on, its moves left out.
func (p *Planner) read(q int) plan.Changeover {
	c := plan.Changeover{From: slices.Clone(p.Scene.At), Holders: make([]plan.Stand, 0, len(p.Scene.At))}
	p.ReadInto(&c, q)
	return c
}

// ReadInto reads like read, into a changeover whose memory is used again.
func (p *Planner) ReadInto(c *plan.Changeover, q int) {
	*c = plan.Changeover{From: append(c.From[:0], p.Scene.At...), Holders: c.Holders[:0], Moves: c.Moves[:0]}
	for i := range p.Scene.At {
		cand := &p.Places.List[q]
		h := plan.Stand{At: cand.At}
		switch {
		case cand.after > cand.before:
			h.Use, h.Cut = plan.Cutting, int(cand.after)
		case p.Scene.over(cand.At):
			h.Use = plan.Resting
		default:
			h.Use = plan.Parked
		}
		c.Count(h, p.Scene.At[i])
		q = int(cand.Next)
	}
}
