package plan

import "fmt"

// Changeover plans the move from the standing to a layout, exactly: the fewest
// repositions, then the fewest parked holders, then the least travel, then the
// smallest places by holder number. With the moves come an order in which they can
// be made and the reason for each. The faults say why the layout can't be set; the
// changeover is then empty.
func (p *Planner) Changeover(standing []Length, l Layout) (Changeover, []Fault) {
	if faults := p.wrongStanding(standing); len(faults) > 0 {
		return Changeover{}, faults
	}
	p.set(standing, l.Web, l.Cuts)
	if !p.keep.find(p) {
		return Changeover{}, p.refusal(l, Span{})
	}
	c := p.read(p.places.solve(&p.now, &p.keep, nil))
	c.Moves = p.order(&c)
	return c, nil
}

// wrongStanding tells why holders can't stand as given, which no plan mends.
func (p *Planner) wrongStanding(standing []Length) []Fault {
	wrong := func(format string, args ...any) []Fault {
		return []Fault{{Key: "standing", Why: func(Unit) string { return fmt.Sprintf(format, args...) }}}
	}
	if len(standing) != len(p.beam.Holders) {
		return wrong("%d holders stand on a beam of %d", len(standing), len(p.beam.Holders))
	}
	for i, x := range standing {
		if x < p.beam.Rail.From || x > p.beam.Rail.To {
			return wrong("holder %d stands off the rail", i+1)
		}
		if i > 0 && x-standing[i-1] < p.pitch {
			return wrong("holders %d and %d stand nearer than the pitch", i, i+1)
		}
	}
	return nil
}

// read takes the changeover from the solved places, from the first holder's
// candidate on.
func (p *Planner) read(q int) Changeover {
	s := &p.now
	c := Changeover{From: append([]Length(nil), s.at...), Holders: make([]Stand, 0, len(s.at))}
	for i := range s.at {
		cand := &p.places.list[q]
		h := Stand{At: cand.at}
		switch {
		case cand.after > cand.before:
			h.Use, h.Cut = Cutting, int(cand.after)
		case s.over(cand.at):
			h.Use = Resting
			c.Resting++
		default:
			h.Use = Parked
			c.Parked++
		}
		if h.At != s.at[i] {
			c.Repositions++
			c.Travel += abs(h.At - s.at[i])
		}
		c.Holders = append(c.Holders, h)
		q = int(cand.next)
	}
	return c
}
