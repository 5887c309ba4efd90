package changeover

import (
	"math"
	"slices"

	"bide/plan"
)

// Breaking ties: among the plans with the fewest repositions those with the fewest
// parked holders, then the least travel, then the smallest places by number.
//
// The cost of a plan is a sum over its holders, and neighbours are tied by the
// pitch alone, so a dynamic program over holder and place is exact once the places
// that an optimum can need are listed. In an optimum with the smallest places no
// run of touching holders can slide either way: sliding changes travel linearly
// until it breaks or makes a contact. So each run is held by a cut, by a holder
// that stays, by a rail end, by a park edge or by a web edge (where resting turns
// to parked), and its members stand whole pitches from that: place = anchor +
// pitch * (difference in number). See anchors.go for the list.

// Places is the dynamic program's memory.
type Places struct {
	anchors
	lo, hi []plan.Length // bounds of each holder's place
	first  []int         // first[i] is where holder i's candidates begin in list
	List   []candidate
	queue  []int32
	weights
}

// weights make one number of the criteria, so that no sum of a lower one reaches
// one of a higher. Travel counts 1 for each grain of length.
type weights struct {
	grain         plan.Length
	perParked     int64
	perStep       int64 // of what is gained or lost later; StepsPerMove make a reposition
	PerReposition int64
}

// StepsPerMove is how finely gains at later changeovers are weighed against a
// reposition at this one.
const StepsPerMove = 64

// candidate is one place that a holder may end at.
type candidate struct {
	At            plan.Length
	cost          int64 // of this holder and all to its drive side
	Next          int32 // candidate of the next holder on the best way; -1 none
	before, after int16 // cuts served before it, and with it
}

// Unreachable is the cost of what no way leads to.
const Unreachable = math.MaxInt64

// Weigh sets the weights. The limits on holders and rail keep all sums within 63
// bits; where later changeovers count, travel is taken to the micrometre.
func (p *Places) Weigh(s *Scene, later bool) {
	n, rail := int64(len(s.At)), int64(s.Rail.Length())
	p.grain, p.perParked = plan.Nanometre, n*rail+1
	if later {
		p.grain = 1000 * plan.Nanometre
		p.perParked = 2*n*(rail/1000+1) + 1
	}
	p.perStep = p.perParked * (n + 1)
	p.PerReposition = p.perStep
	if later {
		p.PerReposition *= StepsPerMove
	}
}

// Most is how many repositions each of n holders may cost, at the weights set last,
// for all costs together to stay far within 63 bits.
func (p *Places) Most(n int) int64 {
	return max(math.MaxInt64/8/(int64(n)*p.PerReposition), 1)
}

// Solve finds the best places for s, whose stays have been found; it returns the
// index of the first holder's candidate, or -1 when there is no way. The look-ahead
// may be nil. Every candidate is looked at a constant number of times.
func (p *Places) Solve(s *Scene, k *staySet, o *Lookahead) int {
	p.Weigh(s, o != nil)
	if o != nil && o.Noise > 0 {
		o.Noise = p.PerReposition / int64(len(s.At)+1) // all shakes together stay below a reposition
	}
	p.bound(s, k)
	p.anchors.find(s, k, o)
	if o != nil {
		o.shared, o.cuts = o.usesOf(o.shared, p.shared, s.pitch), o.usesOf(o.cuts, s.cuts, s.pitch)
	}
	n := len(s.At)
	p.first, p.List = p.first[:0], p.List[:0]
	for i := range n {
		p.first = append(p.first, len(p.List))
		p.offer(s, k, o, i)
	}
	p.first = append(p.first, len(p.List))
	p.end(int16(len(s.cuts)))
	for i := n - 2; i >= 0; i-- {
		p.join(i, s.pitch)
	}
	return p.begin()
}

// bound finds the stretch in which each holder must end, from what can't move in a
// fewest plan, the rail, the pitch, and the holders left for the cuts on either
// side.
func (p *Places) bound(s *Scene, k *staySet) {
	p.lo, p.hi = p.lo[:0], p.hi[:0]
	n, cuts := len(s.At), len(s.cuts)
	at := s.Rail.From - s.pitch
	for i, x := range s.At {
		at += s.pitch
		if k.must[i] {
			at = max(at, x)
		}
		if m := cuts - (s.goodsBefore[n] - s.goodsBefore[i+1]); m > 0 {
			at = max(at, s.cuts[m-1]-s.tolerance)
		}
		p.lo, p.hi = append(p.lo, at), append(p.hi, 0)
	}
	at = s.Rail.To + s.pitch
	for i := n - 1; i >= 0; i-- {
		at -= s.pitch
		if k.must[i] {
			at = min(at, s.At[i])
		}
		if m := s.goodsBefore[i]; m < cuts {
			at = min(at, s.cuts[m]+s.tolerance)
		}
		p.hi[i] = at
	}
}

// offer lists holder i's candidates in order of place: the shared ones, those that
// hang on a holder that stays, and the cuts.
func (p *Places) offer(s *Scene, k *staySet, o *Lookahead, i int) {
	if k.must[i] {
		if o != nil {
			o.now = nil
		}
		p.consider(s, o, i, s.At[i], 0)
		return
	}
	lo, hi, up := p.lo[i], p.hi[i], plan.Length(i)*s.pitch
	a, _ := slices.BinarySearch(p.shared, lo)
	b, _ := slices.BinarySearch(p.kept, lo-up)
	c, _ := slices.BinarySearch(s.cuts, lo)
	const none = plan.Length(math.MaxInt64)
	at := func(list []plan.Length, n int, up plan.Length) plan.Length {
		if n < len(list) {
			return list[n] + up
		}
		return none
	}
	sa, sb, sc := at(p.shared, a, 0), at(p.kept, b, up), at(s.cuts, c, 0)
	for m := max(c-1, 0); ; { // a cut before that lies further off than position_tolerance
		y := min(sa, sb, sc)
		if y > hi {
			return
		}
		if o != nil {
			o.now = nil
			if sa == y {
				o.now = &o.shared[a]
			}
		}
		m = p.consider(s, o, i, y, m)
		for ; sa == y; sa = at(p.shared, a, 0) {
			a++
		}
		for ; sb == y; sb = at(p.kept, b, up) {
			b++
		}
		for ; sc == y; sc = at(s.cuts, c, 0) {
			c++
		}
	}
}

// consider adds the place as a candidate of holder i if it can be one; m is a
// number of cuts known to lie before it, and the true number is returned.
func (p *Places) consider(s *Scene, o *Lookahead, i int, at plan.Length, m int) int {
	for m < len(s.cuts) && s.cuts[m] < at-s.tolerance {
		m++
	}
	c, stays, after := s.condition[i], at == s.At[i], m
	if !stays && !c.Moves() {
		return m
	}
	cost := int64(0)
	switch {
	case m < len(s.cuts) && s.cuts[m]-at <= s.tolerance: // in reach of a cut: serves it or can't be here
		if !c.Cuts() || !stays && at != s.cuts[m] || s.bad.Hold(at) {
			return m
		}
		after++
		if o != nil {
			cost += o.swap(i) * p.perStep
		}
	case !s.MayIdle(at):
		return m
	case !s.over(at):
		cost += p.perParked
	}
	if m > s.goodsBefore[i] || len(s.cuts)-after > s.goodsBefore[len(s.At)]-s.goodsBefore[i+1] {
		return m
	}
	if !stays {
		cost += p.PerReposition + int64((at-s.At[i]).Abs()/p.grain)
	}
	if o != nil {
		cost += p.later(s, o, i, m, at)
		if o.Noise > 0 {
			cost += o.Chance.Int64N(o.Noise)
		}
	}
	p.List = append(p.List, candidate{At: at, cost: cost, before: int16(m), after: int16(after)})
	return m
}

// later is what holder i loses at later changeovers by standing at a place with m
// cuts before it.
func (p *Places) later(s *Scene, o *Lookahead, i, m int, at plan.Length) int64 {
	if o.Then != nil {
		if at == o.Then[i] {
			return 0
		}
		return p.PerReposition + int64((at-o.Then[i]).Abs()/p.grain)
	}
	var seen uses
	switch {
	case o.now != nil:
		seen = *o.now
	case m < len(s.cuts) && s.cuts[m] == at:
		seen = o.cuts[m]
	case o.Rough && at != s.At[i]: // behind a holder that stays: of no later use but by accident
		return o.all() * p.perStep
	default:
		seen = o.useAt(at, s.pitch)
	}
	return o.lost(&seen, i, len(s.At)) * p.perStep
}

// end closes the last holder's candidates: all cuts must be served.
func (p *Places) end(cuts int16) {
	for q := p.first[len(p.first)-2]; q < len(p.List); q++ {
		p.List[q].Next = -1
		if p.List[q].after != cuts {
			p.List[q].cost = Unreachable
		}
	}
}

// join adds to each candidate of holder i the best way on. The next holder must
// stand at least a pitch further and follow the same number of cuts; both ends of
// that window only move one way, so a queue of rising costs holds its minimum. Of
// equal costs the smaller place wins.
func (p *Places) join(i int, pitch plan.Length) {
	p.queue = p.queue[:0]
	head, enter := 0, p.first[i+2]-1
	for q := p.first[i+1] - 1; q >= p.first[i]; q-- {
		c := &p.List[q]
		for ; enter >= p.first[i+1] && p.List[enter].At >= c.At+pitch; enter-- {
			cost := p.List[enter].cost
			if cost == Unreachable {
				continue
			}
			for len(p.queue) > head && p.List[p.queue[len(p.queue)-1]].cost >= cost {
				p.queue = p.queue[:len(p.queue)-1]
			}
			p.queue = append(p.queue, int32(enter))
		}
		for head < len(p.queue) && p.List[p.queue[head]].before > c.after {
			head++
		}
		if head == len(p.queue) {
			c.cost, c.Next = Unreachable, -1
			continue
		}
		c.Next = p.queue[head]
		c.cost += p.List[c.Next].cost
	}
}

// begin picks the first holder's best candidate, -1 if none leads to the end.
func (p *Places) begin() int {
	pick, cost := -1, int64(Unreachable)
	for q := p.first[0]; q < p.first[1]; q++ {
		if c := &p.List[q]; c.before == 0 && c.cost < cost {
			pick, cost = q, c.cost
		}
	}
	return pick
}
