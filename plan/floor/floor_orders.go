package floor

import (
	"slices"

	"bide/plan"
)

// mostOnWay is how many jobs a way is sought through: 2^m m^2 steps for m.
const mostOnWay = 11

// longestWay bounds the moves of all jobs in any order, from the distances between
// each two of them, the last row from the start. Whatever the order, some jobs of it
// come one after the other, and the moves between one of them and the next are
// different ones; so each set of jobs bounds it by the shortest way from the start
// through all of them. The set is grown job by job, and then changed one job at a
// time as long as that helps: any set is a bound. A round of changes looks at up to
// (n + 1) mostOnWay ways of n jobs.
func longestWay(apart [][]int, r *plan.Rules) int {
	var set []int
	before := r.Precedence()
	best, n := 0, len(apart)-1
	for most := set; len(most) < min(n, mostOnWay); {
		next, way := -1, -1
		for j := range n {
			if slices.Contains(most, j) {
				continue
			}
			if w := shortestWay(apart, before, append(slices.Clone(most), j)); w > way {
				next, way = j, w
			}
		}
		if most = append(most, next); way > best {
			best, set = way, slices.Clone(most)
		}
	}
	for again := len(set) > 0; again; {
		again = false
		for i := 0; i < len(set) && !again; i++ {
			for j := -1; j < n && !again; j++ {
				other := swapped(set, i, j)
				if w := shortestWay(apart, before, other); w > best {
					best, set, again = w, other, true
				}
			}
		}
	}
	return best
}

// swapped is the set with job j in the place of its ith, or without that where j is
// none or in the set already.
func swapped(set []int, i, j int) []int {
	out := slices.Clone(set)
	if j < 0 || slices.Contains(set, j) {
		return slices.Delete(out, i, i+1)
	}
	out[i] = j
	return out
}

// shortestWay is the length of the shortest way from the start, the last row of
// distances, through all jobs of a set in any order that has before[i][j] kept: i before
// j; 0 where there is none (Held & Karp 1962, Journal of the Society for Industrial
// and Applied Mathematics 10:196, doi:10.1137/0110015; Bellman 1962, Journal of the ACM
// 9:61, doi:10.1145/321105.321111). O(2^m m^2) for m jobs.
func shortestWay(apart [][]int, before [][]bool, jobs []int) int {
	m := len(jobs)
	if m == 0 {
		return 0
	}
	const far = 1 << 40
	ways := make([]int, m<<m) // by jobs done and the last of them
	for i := range ways {
		ways[i] = far
	}
	first := make([]int, m) // of each job, those of the set that come before it
	for i, j := range jobs {
		for u, other := range jobs {
			if before[other][j] {
				first[i] |= 1 << u
			}
		}
		if first[i] == 0 {
			ways[m<<i+i] = apart[len(apart)-1][j]
		}
	}
	for done := 1; done < 1<<m; done++ {
		for last, way := range ways[m*done : m*done+m] {
			for next := range m {
				if way < far && done&(1<<next) == 0 && first[next]&^done == 0 {
					to := &ways[m*(done|1<<next)+next]
					*to = min(*to, way+apart[jobs[last]][jobs[next]])
				}
			}
		}
	}
	if way := slices.Min(ways[len(ways)-m:]); way < far {
		return way
	}
	return 0 // no order keeps the rules
}
