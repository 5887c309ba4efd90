package changeover

import "bide/plan"

// Counting the fewest repositions. Most holders that stay = fewest that move. A
// holder has at most one way to stay, and a stay fixes how many cuts lie before
// it, so a plan's stays are a chain i1 < i2 < ... in which each neighbouring pair
// must leave the holders between it a way to stand. The longest chain is the
// answer: adding a holder beyond either end of the rail, as if it stayed there,
// makes it a longest path from the first to the last.

// chain is the longest path over stays as if every holder could move and cut. The
// h holders between two neighbouring stays must serve the g cuts between them, and
// the h - g spare ones must find room beside them: between neighbouring cuts or
// stays a pitch apart or more, room is floor(gap/pitch) - 1. With running sums of
// it, both tests are differences:
//
//	h >= g        <=>  in.spare >= out.spare
//	h - g <= room <=>  in.spare - in.room <= out.spare - out.room
//
// Where idle holders may rest anywhere, no cut between two stays (g = 0) needs no
// test: those that stand there now can stay. Where they may not rest over the web,
// there is room before the first cut and behind the last one alone.
//
// The result is exact for good holders and exact places. Otherwise it is a bound
// from above: what holders can't do only takes stays away, and room counted with
// each cut served up to position_tolerance off is never too small.
type chain struct {
	nodes []node
	best  []int // longest chain from the first end to the node, itself counted
	back  []int // longest chain from the node to the last end
	room  []int // room[m]: spare holders that fit between the first cut and cut m
}

// node is a holder that can stay, or one of the two ends.
type node struct {
	holder        int
	eased         bool // no test is needed where no cut lies between
	before, after int  // cuts before the node, and before whatever follows it
	inSpare       int  // holders before it less cuts before it
	inTight       int  // inSpare less the room up to it
	outSpare      int
	outTight      int
}

// longest is the most holders that can stay; it leaves best filled.
func (c *chain) longest(s *Scene) (stays int, ok bool) {
	c.build(s)
	c.best = append(c.best[:0], 0)
	for j := 1; j < len(c.nodes); j++ {
		to, most := &c.nodes[j], never
		// The longest chain up to i grows by at most one a node, so what lies
		// further back than most can't improve on it.
		for i := j - 1; i >= 0 && i > most; i-- {
			if c.best[i] > most && c.nodes[i].joins(to) {
				most = c.best[i]
			}
		}
		c.best = append(c.best, most+1)
	}
	stays = c.best[len(c.best)-1] - 1
	return max(stays, 0), stays >= 0
}

// backwards fills back, as longest fills best.
func (c *chain) backwards() {
	n := len(c.nodes)
	c.back = append(c.back[:0], make([]int, n)...)
	for i := n - 2; i >= 0; i-- {
		from, most := &c.nodes[i], never
		for j := i + 1; j < n && n-1-j > most; j++ {
			if c.back[j] > most && from.joins(&c.nodes[j]) {
				most = c.back[j]
			}
		}
		c.back[i] = most + 1
	}
}

// joins reports whether n and a later node can be neighbouring stays.
func (n *node) joins(to *node) bool {
	return n.eased && n.after == to.before || to.inSpare >= n.outSpare && to.inTight <= n.outTight
}

// build lists the ends and every holder that can stay.
func (c *chain) build(s *Scene) {
	c.room = append(c.room[:0], 0)
	for m := 1; m < len(s.cuts); m++ {
		c.room = append(c.room, c.room[m-1]+s.roomIn(s.cuts[m-1], s.cuts[m]))
	}
	c.nodes = c.nodes[:0]
	c.add(s, -1, s.Rail.From-s.pitch, 0, 0)
	for i, st := range s.stays {
		if st.can {
			c.add(s, i, s.At[i], st.before, st.after)
		}
	}
	c.add(s, len(s.At), s.Rail.To+s.pitch, len(s.cuts), len(s.cuts))
}

// add lists one node at place x.
func (c *chain) add(s *Scene, holder int, x plan.Length, before, after int) {
	n := node{holder: holder, eased: s.anywhere || len(s.cuts) == 0, before: before, after: after}
	n.inSpare, n.outSpare = holder-before, holder+1-after
	n.inTight, n.outTight = n.inSpare, n.outSpare
	if before > 0 {
		n.inTight -= c.room[before-1] + s.roomIn(s.cuts[before-1], x)
	}
	if after < len(s.cuts) {
		n.outTight -= c.room[after] - s.roomIn(x, s.cuts[after])
	}
	c.nodes = append(c.nodes, n)
}
