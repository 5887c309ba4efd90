package floor

import (
	"math/rand/v2"
	"slices"
	"testing"

	"bide/plan"
)

// switches is how many tools an order of jobs inserts into an empty magazine of
// that many places, by the count behind the floor.
func switches(jobs [][]int, order []int, places int) int {
	total, last := 0, map[int]int{}
	var all []interval
	free := make([]int, len(order))
	for i, j := range order {
		total += len(jobs[j-1])
		free[i] = places - len(jobs[j-1])
		for _, tool := range jobs[j-1] {
			if use, ok := last[tool]; ok {
				all = append(all, interval{use + 1, i})
			}
			last[tool] = i
		}
	}
	return total - held(all, free)
}

// Published orders of tool-switching problems: a place on the beam that some jobs
// cut is a tool that some jobs need. Where the first load of the magazine is free,
// as many insertions as it has places are not counted. Published are the orders named so;
// counts as listed and with 5 to 7 places are computed by keeping what is needed soonest.
func TestKeepingAgainstToolSwitching(t *testing.T) {
	// Tang & Denardo 1988, Operations Research 36(5):767.
	ten := [][]int{{1, 4, 8, 9}, {1, 3, 5}, {2, 6, 7, 8}, {1, 5, 7, 9}, {3, 5, 8}, {1, 2, 4}, {1}, {6}, {3}, {5, 7}}
	// Yanasse & Senne's instance of 15 jobs and 15 tools, as handed on in later papers.
	fifteen := [][]int{{3, 7, 10, 11}, {1, 3, 5, 8, 11}, {2, 5, 9, 11, 14}, {7, 8, 9, 11, 13, 14}, {1, 4, 5, 11, 12, 14},
		{2, 3, 5, 7, 11, 13}, {1, 2, 5, 8, 10, 11, 12}, {4, 7, 8, 11, 12, 13, 14}, {1, 3, 5, 6, 7, 9, 11, 15},
		{1, 4, 5, 6, 7, 8, 9, 10}, {4, 5, 7, 8, 9, 10, 11, 13}, {2, 3, 4, 5, 9, 10, 13, 14, 15},
		{1, 2, 5, 8, 9, 10, 12, 14, 15}, {3, 4, 5, 6, 8, 9, 11, 12, 13, 14}, {1, 2, 4, 7, 9, 10, 12, 13, 14, 15}}
	listed := func(n int) (out []int) {
		for i := range n {
			out = append(out, i+1)
		}
		return out
	}
	for _, c := range []struct {
		name   string
		jobs   [][]int
		order  []int
		places int
		want   int // the first load free
	}{
		{"Tang & Denardo, an optimal order", ten, []int{1, 6, 3, 8, 5, 2, 7, 9, 4, 10}, 4, 7},
		{"Tang & Denardo, as listed", ten, listed(10), 4, 15},
		{"as listed, 5 places", ten, listed(10), 5, 11},
		{"as listed, 6 places", ten, listed(10), 6, 7},
		{"as listed, 7 places", ten, listed(10), 7, 4},
		// Laporte, Salazar & Semet 2004, IIE Transactions 36:37: the first six jobs.
		{"six jobs, an optimal order", ten, []int{4, 2, 5, 3, 6, 1}, 4, 7},
		{"six jobs, as listed", ten, listed(6), 4, 12},
		{"Yanasse & Senne, an order of theirs", fifteen, []int{3, 12, 6, 11, 1, 8, 4, 14, 5, 9, 2, 10, 7, 13, 15}, 10, 13},
		{"Yanasse & Senne, another", fifteen, []int{2, 9, 10, 1, 11, 14, 8, 4, 6, 12, 15, 13, 7, 3, 5}, 10, 13},
		{"Yanasse & Senne, as listed", fifteen, listed(15), 10, 26},
	} {
		if got := switches(c.jobs, c.order, c.places) - c.places; got != c.want {
			t.Errorf("%s: %d switches, want %d", c.name, got, c.want)
		}
	}
}

// The optimum over all orders of the first six jobs, by trying them all, is 7 as
// published.
func TestBestOrderOfToolSwitching(t *testing.T) {
	six := [][]int{{1, 4, 8, 9}, {1, 3, 5}, {2, 6, 7, 8}, {1, 5, 7, 9}, {3, 5, 8}, {1, 2, 4}}
	best := 1 << 30
	plan.Orders(len(six), func(order []int) {
		jobs := make([]int, len(order)) // counted from 1, as published
		for i, j := range order {
			jobs[i] = j + 1
		}
		best = min(best, switches(six, jobs, 4)-4)
	})
	if best != 7 {
		t.Errorf("best order of six jobs needs %d switches, published 7", best)
	}
}

// Held intervals against every choice of them.
func TestHeldIsMost(t *testing.T) {
	for seed := range uint64(3000) {
		r := rand.New(rand.NewPCG(seed, 31))
		free := make([]int, 1+r.IntN(6))
		for i := range free {
			free[i] = r.IntN(4)
		}
		var all []interval
		for range r.IntN(10) {
			from := r.IntN(len(free) + 1)
			all = append(all, interval{from, from + r.IntN(len(free)+1-from)})
		}
		most := 0
		for set := range 1 << len(all) {
			load, n, ok := make([]int, len(free)), 0, true
			for v, iv := range all {
				if set&(1<<v) == 0 {
					continue
				}
				n++
				for i := iv.from; i < iv.until; i++ {
					load[i]++
					ok = ok && load[i] <= free[i]
				}
			}
			if ok {
				most = max(most, n)
			}
		}
		if got := held(slices.Clone(all), free); got != most {
			t.Fatalf("seed %d: %d of %v held with %v free, most is %d", seed, got, all, free, most)
		}
	}
}
