package plan

import (
	"slices"
)

// between is the changeover from places to the places of a layout, with uses,
// moves and reasons.
func (p *Planner) Between(from []Length, l Layout, to []Length) Changeover {
	p.Set(from, l.Web, l.Cuts)
	c := Changeover{From: slices.Clone(from), Holders: make([]Stand, 0, len(to))}
	cut := 0
	for i, at := range to {
		h := Stand{At: at}
		switch {
		case cut < len(l.Cuts) && p.Beam.Holders[i].Cuts() && (at == l.Cuts[cut] || at == from[i] && Abs(at-l.Cuts[cut]) <= p.Beam.InPlace && !inBand(p.Beam.Bad, at)):
			cut++
			h.Use, h.Cut = Cutting, cut
		case p.Now.over(at):
			h.Use = Resting
		default:
			h.Use = Parked
		}
		c.count(h, from[i])
	}
	c.Moves = p.order(&c)
	return c
}
