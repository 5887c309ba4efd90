package plan

import (
	"math"
	"slices"
)

// Breaking ties: among the plans with the fewest repositions those with the fewest
// parked holders, then the least travel, then the smallest places by number.
//
// The cost of a plan is a sum over its holders, and neighbours are tied by the
// pitch alone, so a dynamic program over holder and place is exact once the places
// that an optimum can need are listed. In an optimum with the smallest places no
// run of touching holders can slide either way: sliding changes travel linearly
// until it breaks or makes a contact. So each run is held by a cut, by a holder
// that stays, by a rail end, by a store edge or by a web edge (where resting turns
// to parked), and its members stand whole pitches from that: place = anchor +
// pitch * (difference in number).

// places is the dynamic program's memory.
type places struct {
	shared []Length // where any idle holder may end: whole pitches from cuts and edges
	kept   []Length // x(j) - j*pitch of each holder j that may stay, ascending
	lo, hi []Length // bounds of each holder's place
	first  []int    // first[i] is where holder i's candidates begin in list
	list   []candidate
	queue  []int

	perReposition, perParked int64 // weights; travel counts 1 for each nm
}

// candidate is one place that a holder may end at.
type candidate struct {
	at            Length
	before, after int   // cuts served before it, and with it
	cost          int64 // of this holder and all to its drive side
	next          int   // candidate of the next holder on the best way; -1 none
}

const unreachable = math.MaxInt64

// solve finds the best places for p.now, whose keep has been found; it returns the
// index of the first holder's candidate, or -1 when there is no way. Every entry
// is looked at a constant number of times: O(sum of candidates).
func (p *places) solve(s *scene, k *keep) int {
	p.weigh(s)
	p.bound(s, k)
	p.anchor(s, k)
	n := len(s.at)
	p.first, p.list = p.first[:0], p.list[:0]
	for i := range n {
		p.first = append(p.first, len(p.list))
		p.offer(s, k, i)
	}
	p.first = append(p.first, len(p.list))
	for i := n - 1; i >= 0; i-- {
		if i == n-1 {
			p.end(len(s.cuts))
		} else {
			p.join(i, s.pitch)
		}
	}
	return p.begin()
}

// weigh sets the weights so that no sum of a lower criterion reaches one of a
// higher. The limits on holders and rail keep all of it within 63 bits.
func (p *places) weigh(s *scene) {
	n := int64(len(s.at))
	p.perParked = n*int64(s.rail.Length()) + 1
	p.perReposition = p.perParked * (n + 1)
}

// bound finds the stretch in which each holder must end, from what can't move in a
// fewest plan, the rail and the pitch.
func (p *places) bound(s *scene, k *keep) {
	p.lo, p.hi = p.lo[:0], p.hi[:0]
	at := s.rail.From - s.pitch
	for i, x := range s.at {
		at += s.pitch
		if k.must[i] {
			at = max(at, x)
		}
		p.lo, p.hi = append(p.lo, at), append(p.hi, 0)
	}
	at = s.rail.To + s.pitch
	for i := len(s.at) - 1; i >= 0; i-- {
		at -= s.pitch
		if k.must[i] {
			at = min(at, s.at[i])
		}
		p.hi[i] = at
	}
}

// anchor lists the places for idle holders that hang on cuts and edges, and the
// offsets of those that hang on a holder that stays.
func (p *places) anchor(s *scene, k *keep) {
	p.shared, p.kept = p.shared[:0], p.kept[:0]
	for j, x := range s.at {
		if k.may[j] {
			p.kept = append(p.kept, x-Length(j)*s.pitch)
		}
	}
	for m := 0; m <= len(s.cuts); m++ {
		from, to := s.rail.From, s.rail.To
		if m > 0 {
			from = s.cuts[m-1] + s.pitch
		}
		if m < len(s.cuts) {
			to = s.cuts[m] - s.pitch
		}
		p.fill(s, Span{from, to})
	}
	slices.Sort(p.shared)
	p.shared = slices.Compact(p.shared)
}

// fill lists the places between two neighbouring cuts, or a cut and a rail end:
// whole pitches from either end and from the edges in between.
func (p *places) fill(s *scene, gap Span) {
	// A cut served from up to inPlace off it gives its neighbours that much more.
	wide := Span{max(gap.From-s.inPlace, s.rail.From), min(gap.To+s.inPlace, s.rail.To)}
	p.run(s, gap.From, wide)
	p.run(s, gap.To, wide)
	if s.anywhere {
		p.run(s, s.web.From, wide)
		p.run(s, s.web.To, wide)
	} else {
		p.run(s, s.idle.From, wide)
		p.run(s, s.idle.To, wide)
	}
}

// run lists every place in the stretch that is whole pitches from the anchor and
// where an idle holder may stand.
func (p *places) run(s *scene, anchor Length, in Span) {
	from := anchor + (in.From-anchor)/s.pitch*s.pitch
	for at := from - s.pitch; at <= in.To; at += s.pitch {
		if at >= in.From && s.mayIdle(at) {
			p.shared = append(p.shared, at)
		}
	}
}

// offer lists holder i's candidates in order of place.
func (p *places) offer(s *scene, k *keep, i int) {
	if k.must[i] {
		p.consider(s, i, s.at[i], 0)
		return
	}
	lo, hi := p.lo[i], p.hi[i]
	a, _ := slices.BinarySearch(p.shared, lo)
	b, _ := slices.BinarySearch(p.kept, lo-Length(i)*s.pitch)
	c, _ := slices.BinarySearch(s.cuts, lo)
	m := 0
	for last := lo - 1; ; {
		at := Length(math.MaxInt64)
		if a < len(p.shared) {
			at = p.shared[a]
		}
		if b < len(p.kept) {
			at = min(at, p.kept[b]+Length(i)*s.pitch)
		}
		if c < len(s.cuts) {
			at = min(at, s.cuts[c])
		}
		if at > hi {
			return
		}
		for a < len(p.shared) && p.shared[a] == at {
			a++
		}
		for b < len(p.kept) && p.kept[b]+Length(i)*s.pitch == at {
			b++
		}
		if c < len(s.cuts) && s.cuts[c] == at {
			c++
		}
		if at > last {
			m = p.consider(s, i, at, m)
			last = at
		}
	}
}

// consider adds the place as a candidate of holder i if it can be one; m is a
// number of cuts known to lie before it, and the true number is returned.
func (p *places) consider(s *scene, i int, at Length, m int) int {
	for m < len(s.cuts) && s.cuts[m] < at-s.inPlace {
		m++
	}
	c, stays := s.condition[i], at == s.at[i]
	if !stays && !c.Moves() {
		return m
	}
	cand := candidate{at: at, before: m, after: m, cost: int64(abs(at - s.at[i]))}
	if !stays {
		cand.cost += p.perReposition
	}
	switch {
	case m < len(s.cuts) && s.cuts[m]-at <= s.inPlace: // in reach of a cut: serves it or can't be here
		if !c.Cuts() || !stays && at != s.cuts[m] {
			return m
		}
		cand.after++
	case !s.mayIdle(at):
		return m
	case !s.over(at):
		cand.cost += p.perParked
	}
	goods := s.goodsBefore[len(s.at)] - s.goodsBefore[i+1]
	if cand.before <= s.goodsBefore[i] && len(s.cuts)-cand.after <= goods {
		p.list = append(p.list, cand)
	}
	return m
}

// end closes the last holder's candidates: all cuts must be served.
func (p *places) end(cuts int) {
	for q := p.first[len(p.first)-2]; q < len(p.list); q++ {
		p.list[q].next = -1
		if p.list[q].after != cuts {
			p.list[q].cost = unreachable
		}
	}
}

// join adds to each candidate of holder i the best way on. The next holder must
// stand at least a pitch further and follow the same number of cuts; both ends of
// that window only move one way, so a queue of rising costs holds its minimum. Of
// equal costs the smaller place wins.
func (p *places) join(i int, pitch Length) {
	p.queue = p.queue[:0]
	head, enter := 0, p.first[i+2]-1
	for q := p.first[i+1] - 1; q >= p.first[i]; q-- {
		c := &p.list[q]
		for ; enter >= p.first[i+1] && p.list[enter].at >= c.at+pitch; enter-- {
			cost := p.list[enter].cost
			if cost == unreachable {
				continue
			}
			for len(p.queue) > head && p.list[p.queue[len(p.queue)-1]].cost >= cost {
				p.queue = p.queue[:len(p.queue)-1]
			}
			p.queue = append(p.queue, enter)
		}
		for head < len(p.queue) && p.list[p.queue[head]].before > c.after {
			head++
		}
		if head == len(p.queue) {
			c.cost, c.next = unreachable, -1
			continue
		}
		c.next = p.queue[head]
		c.cost += p.list[c.next].cost
	}
}

// begin picks the first holder's best candidate, -1 if none leads to the end.
func (p *places) begin() int {
	pick, cost := -1, int64(unreachable)
	for q := p.first[0]; q < p.first[1]; q++ {
		if c := &p.list[q]; c.before == 0 && c.cost < cost {
			pick, cost = q, c.cost
		}
	}
	return pick
}
