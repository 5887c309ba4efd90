package plan

import (
	"math/rand/v2"
	"slices"
	"testing"
)

// Two jobs that want the last number, one as number 4 of what were five and one counted
// from the end, close up: the one counted from the end comes last. A running job
// comes before one fixed to number 1.
func TestFixedNumbersCloseUp(t *testing.T) {
	x, y := &Job{ID: "X"}, &Job{ID: "Y"}
	fourth, last := &Job{ID: "fourth", Fixed: 4}, &Job{ID: "last", Fixed: -1}
	runs, first := &Job{ID: "runs", State: Running}, &Job{ID: "first", Fixed: 1}
	for _, c := range []struct {
		jobs   []*Job
		broken int
	}{
		{[]*Job{x, y, fourth, last}, 0},
		{[]*Job{x, y, last, fourth}, 2},
		{[]*Job{runs, first, x}, 0},
		{[]*Job{first, runs, x}, 2},
		{[]*Job{x, last, y}, 1},
	} {
		if got := Broken(c.jobs, 0); len(got) != c.broken {
			t.Errorf("%s ... %s: %d rules broken, want %d", c.jobs[0].ID, c.jobs[len(c.jobs)-1].ID, len(got), c.broken)
		}
	}
}

// A job fixed to number 3 is the third of the day, also once two are done; what wanted
// a number that is over comes as soon as it can.
func TestNumbersCountTheJobsDone(t *testing.T) {
	x, third, second := &Job{ID: "X"}, &Job{ID: "third", Fixed: 3}, &Job{ID: "second", Fixed: 2}
	for _, c := range []struct {
		jobs         []*Job
		done, broken int
	}{
		{[]*Job{x, second, third}, 0, 0},
		{[]*Job{second, third, x}, 1, 0},
		{[]*Job{third, x}, 2, 0},
		{[]*Job{x, third}, 2, 1},
		{[]*Job{second, x}, 2, 0},
	} {
		if got := Broken(c.jobs, c.done); len(got) != c.broken {
			t.Errorf("%s first, %d done: %d rules broken, want %d", c.jobs[0].ID, c.done, len(got), c.broken)
		}
	}
}

// Where no order keeps the rules, mending says so.
func TestRulesThatNoOrderKeeps(t *testing.T) {
	a := &Job{ID: "A", After: []string{"B"}}
	b := &Job{ID: "B", Fixed: -1}
	r := RulesOf([]*Job{a, b}, 0, nil)
	if order, ok := r.Mend([]int{0, 1}); ok {
		t.Errorf("mended to %v", order)
	}
}

// The job that the beam is being set up for comes first, and what is fixed to the first
// number behind it.
func TestWhatIsBegunComesFirst(t *testing.T) {
	begun, first, x := &Job{ID: "begun"}, &Job{ID: "first", Fixed: 1}, &Job{ID: "X"}
	r := RulesOf([]*Job{begun, x, first}, 0, begun)
	for _, c := range []struct {
		order []int
		kept  bool
	}{{[]int{0, 2, 1}, true}, {[]int{2, 0, 1}, false}, {[]int{0, 1, 2}, false}} {
		if got := r.Kept(c.order); got != c.kept {
			t.Errorf("order %v: kept %v, want %v", c.order, got, c.kept)
		}
	}
}

// Numbers in the sequence count from 1 and count the jobs done.
func TestBrokenRulesSayTheNumbers(t *testing.T) {
	x, fourth := &Job{ID: "X"}, &Job{ID: "F", Fixed: 4}
	runs := &Job{ID: "R", State: Running}
	for _, c := range []struct {
		jobs []*Job
		want string
	}{
		{[]*Job{fourth, x, {ID: "Y"}}, "job F is fixed at number 4 in the sequence and comes at number 3"},
		{[]*Job{x, runs}, "job R is running and is number 4, after one that waits"},
	} {
		if got := Broken(c.jobs, 2); len(got) != 1 || got[0].Why(Millimetres) != c.want {
			t.Errorf("%v, want %s", got, c.want)
		}
	}
}

// An order is mended to one that keeps the rules wherever there is one, by trying all; one
// that keeps them stays.
func TestMendFindsAnOrderWhereThereIsOne(t *testing.T) {
	mended, none := 0, 0
	for seed := range uint64(3000) {
		r := rand.New(rand.NewPCG(seed, 47))
		jobs := make([]*Job, 2+r.IntN(4))
		for i := range jobs {
			jobs[i] = &Job{ID: string(rune('A' + i))}
			if r.IntN(4) == 0 {
				jobs[i].Fixed = r.IntN(len(jobs)+2) - 1
			}
		}
		for range r.IntN(5) {
			j := jobs[r.IntN(len(jobs))]
			j.After = append(j.After, jobs[r.IntN(len(jobs))].ID)
		}
		rules := RulesOf(jobs, 0, nil)
		there := false
		Orders(len(jobs), func(order []int) { there = there || rules.Kept(order) })
		given := r.Perm(len(jobs))
		got, ok := rules.Mend(given)
		if ok != there || ok && (!rules.Kept(got) || rules.Kept(given) && !slices.Equal(got, given)) {
			t.Fatalf("seed %d: %v mended to %v (%v), there is one: %v", seed, given, got, ok, there)
		}
		if !ok {
			none++
		} else if !slices.Equal(got, given) {
			mended++
		}
	}
	if min(mended, none) < 300 {
		t.Errorf("%d orders mended, none for %d: too few to tell", mended, none)
	}
}
