package changeover

import (
	"slices"

	"bide/plan"
)

// Between is the changeover from places to the places of a layout, with uses,
// moves and reasons.
func (p *Planner) Between(from []plan.Length, l plan.Layout, to []plan.Length) plan.Changeover {
	p.Set(from, l.Web, l.Cuts)
	c := plan.Changeover{From: slices.Clone(from), Holders: make([]plan.Stand, 0, len(to))}
	cut := 0
	for i, at := range to {
		h := plan.Stand{At: at}
		switch {
		case cut < len(l.Cuts) && p.Beam.Holders[i].Cuts() && (at == l.Cuts[cut] || at == from[i] && (at-l.Cuts[cut]).Abs() <= p.Beam.PositionTolerance && !p.Beam.Bad.Hold(at)):
			cut++
			h.Use, h.Cut = plan.Cutting, cut
		case p.Scene.over(at):
			h.Use = plan.Resting
		default:
			h.Use = plan.Parked
		}
		c.Count(h, from[i])
	}
	c.Moves = p.order(&c)
	return c
}
