// Package route puts the moves of a changeover in an order in which each can be made as it
// comes, straight and a pitch clear of its neighbours, and for one carriage in the order
// with the least way, or less time where acceleration allows. An order always exists.
package route

import (
	"slices"
	"time"

	"bide/plan"
)

// The route of one carriage that moves holder after holder and starts and ends at
// home.
//
// At constant speed the shortest way is known in closed form. The chains lie one
// behind the other along the rail. Whatever the carriage does, rail between home
// and the outermost chain is crossed once out and once back; within a chain it must
// go from where it comes in to the first holder, through the chain's own way (its
// order is forced), and from the last holder's new place to where it goes home.
// That bound is reached, since a chain passes both its ends on its own way: one
// bound away from home ends its first move at the far end, one bound for home
// takes its last holder from there, and just then all that lies further out is
// done without an extra step.

// Quickest lists the holders that move (from 0) in an order in which each move can be
// made as it comes: for one carriage the least way, and from there on less time where
// acceleration allows; else along the beam. O(n^2) a round of improvement for n moves.
func Quickest(d *plan.Drive, pitch plan.Length, c *plan.Changeover) []int {
	chains := chainsOf(c, pitch)
	if d.Kind != plan.Shuttle {
		return along(chains)
	}
	return quicken(d, c, chains, shortest(d, chains))
}

// Shortest is Quickest, but leaves out what acceleration would still gain.
func Shortest(d *plan.Drive, pitch plan.Length, c *plan.Changeover) []int {
	chains := chainsOf(c, pitch)
	if d.Kind != plan.Shuttle {
		return along(chains)
	}
	return shortest(d, chains)
}

// shortest is the order with the least way at constant speed.
func shortest(d *plan.Drive, chains []chain) []int {
	var below, above []chain // entirely to the operator or the drive side of home
	var here *chain
	for i := range chains {
		switch w := &chains[i]; {
		case w.reach.From >= d.Home:
			above = append(above, *w)
		case w.reach.To <= d.Home:
			below = append(below, *w)
		default:
			here = w
		}
	}
	slices.Reverse(below)
	up, down := excursion(above, true), excursion(below, false)
	if here == nil {
		return append(up, down...)
	}
	// The chain around home reaches its own two ends with its first move and before
	// its last one.
	moves := here.inOrder()
	last := len(moves) - 1
	ahead, behind := up, down // beyond the end that the first move reaches, and the other
	if !here.up {
		ahead, behind = down, up
	}
	if last == 0 {
		return slices.Concat(behind, moves, ahead)
	}
	return slices.Concat(moves[:1], ahead, moves[1:last], behind, moves[last:])
}

// excursion lists the holders of chains that lie one further out than the other on
// one side of home, for a carriage that goes out past all of them and comes back.
func excursion(outward []chain, up bool) []int {
	var out, back []int
	for _, w := range outward {
		moves := w.inOrder()
		turn := len(moves) - 1 // bound for home: the last move is made on the way back
		if w.up == up {
			turn = 1
		}
		out = append(out, moves[:turn]...)
		back = append(slices.Clone(moves[turn:]), back...)
	}
	return append(out, back...)
}

// quicken moves single holders to other turns in the order while that saves time
// and no holder comes before one of its chain that it waits for. The result never
// takes longer than the order given.
func quicken(d *plan.Drive, c *plan.Changeover, chains []chain, order []int) []int {
	if d.Acceleration <= 0 || len(order) < 3 {
		return order
	}
	chainOf := make([]int, len(c.Holders))
	for k, w := range chains {
		for i := w.first; i <= w.last; i++ {
			chainOf[i] = k
		}
	}
	for better := true; better; {
		better = false
		for i := range order {
			if j, ok := betterTurn(d, c, chainOf, order, i); ok {
				h := order[i]
				order = slices.Insert(slices.Delete(order, i, i+1), j, h)
				better = true
			}
		}
	}
	return order
}

// betterTurn finds the turn (counted without the holder itself) that saves most
// time for the holder at turn i.
func betterTurn(d *plan.Drive, c *plan.Changeover, chainOf, order []int, i int) (turn int, ok bool) {
	h := order[i]
	// The carriage leaves a turn at the holder's new place and comes to it at the
	// old one; turns beyond either end are home.
	leave := func(j int) plan.Length {
		if j < 0 {
			return d.Home
		}
		return c.Holders[order[j]].At
	}
	come := func(j int) plan.Length {
		if j == len(order) {
			return d.Home
		}
		return c.From[order[j]]
	}
	leg := func(from, to plan.Length) time.Duration { return d.Travel((to - from).Abs()) }
	gone := leg(leave(i-1), come(i)) + leg(leave(i), come(i+1)) - leg(leave(i-1), come(i+1))
	var most time.Duration
	try := func(before, after, at int) {
		from, to := leave(before), come(after)
		put := leg(from, c.From[h]) + leg(c.Holders[h].At, to) - leg(from, to)
		if gone-put > most {
			most, turn, ok = gone-put, at, true
		}
	}
	for j := i + 1; j < len(order) && chainOf[order[j]] != chainOf[h]; j++ {
		try(j, j+1, j)
	}
	for j := i - 1; j >= 0 && chainOf[order[j]] != chainOf[h]; j-- {
		try(j-1, j, j)
	}
	return turn, ok
}
