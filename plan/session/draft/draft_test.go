package draft

import (
	"strings"
	"testing"

	"bide/plan"
)

// of is a draft of jobs by id: r runs, d is done, h on hold where the id is followed by that.
func of(ids string) Draft {
	states := map[byte]plan.State{'r': plan.Running, 'd': plan.Done, 'h': plan.OnHold}
	var all []*plan.Job
	for _, id := range strings.Fields(ids) {
		j := &plan.Job{ID: id[:1]}
		if len(id) > 1 {
			j.State = states[id[1]]
		}
		all = append(all, j)
	}
	return New(all, plan.AimMoves)
}

func ids(jobs []*plan.Job) (out string) {
	for _, j := range jobs {
		out += j.ID
	}
	return out
}

// Jobs that are done or on hold have no turn, and keep their places when the others change
// theirs.
func TestOrdered(t *testing.T) {
	d := of("Ad Br C Dh E F")
	if ids(d.Jobs) != "BCEF" || ids(d.Away()) != "AD" || d.Done() != 1 {
		t.Errorf("%s, away %s, %d done", ids(d.Jobs), ids(d.Away()), d.Done())
	}
	if next := d.Ordered([]*plan.Job{d.Jobs[0], d.Jobs[3], d.Jobs[2], d.Jobs[1]}); ids(next.All) != "ABFDEC" || next.Aim != plan.AimMoves || ids(d.All) != "ABCDEF" {
		t.Errorf("%s of %s", ids(next.All), ids(d.All))
	}
}

// What the beam is half set up for comes before all that wait, and behind what runs.
func TestFirst(t *testing.T) {
	for _, c := range []struct{ ids, first, want string }{
		{"Ar B C D", "D", "ADBC"}, {"A B C", "A", "ABC"}, {"A B C", "C", "CAB"}, {"Ar B", "A", "AB"}, {"A B", "X", "AB"}, {"Ar Br", "B", "AB"},
	} {
		if got := ids(of(c.ids).First(c.first).Jobs); got != c.want {
			t.Errorf("%s with %s first: %s, want %s", c.ids, c.first, got, c.want)
		}
	}
}

// In another order jobs that it doesn't name come behind those that they come behind now.
func TestLike(t *testing.T) {
	for _, c := range []struct{ ids, order, half, want string }{
		{"A B C D", "D C B A", "", "DCBA"},
		{"A B C D", "D A", "", "DABC"},
		{"A B C", "", "", "ABC"},
		{"Ar B C", "C B A", "", "ACB"},
		{"Ar B C D", "D C B A", "B", "ABDC"},
	} {
		var half *plan.Begun
		if c.half != "" {
			half = &plan.Begun{Job: c.half}
		}
		if got := ids(of(c.ids).Like(strings.Fields(c.order), half).Jobs); got != c.want {
			t.Errorf("%s like %s: %s, want %s", c.ids, c.order, got, c.want)
		}
	}
}

// A job that comes into another state is one new job in all drafts; what it was is left alone.
func TestStates(t *testing.T) {
	d, turned := of("Ar B C"), map[*plan.Job]*plan.Job{}
	s := States{"A": {State: plan.Done}, "B": {State: plan.Waiting}}
	one, two := s.In(d, turned), s.In(d.Ordered([]*plan.Job{d.Jobs[0], d.Jobs[2], d.Jobs[1]}), turned)
	if one.Find("A") != two.Find("A") || one.Find("A").State != plan.Done || d.Find("A").State != plan.Running || one.Find("B") != d.Find("B") || len(turned) != 1 {
		t.Errorf("%+v, %+v", one.Find("A"), two.Find("A"))
	}
	if ids(one.Jobs) != "BC" || ids(two.Jobs) != "CB" {
		t.Errorf("%s and %s", ids(one.Jobs), ids(two.Jobs))
	}
	if was := d.StatesOf(States{"A": {State: plan.Done}, "X": {State: plan.Done}}); len(was) != 1 || was["A"].State != plan.Running {
		t.Errorf("they were %v", was)
	}
	if e := Ended(of("Ar Br C"), "B"); e.Find("A").State != plan.Done || e.Find("B").State != plan.Running {
		t.Errorf("ended: %v, %v", e.Find("A").State, e.Find("B").State)
	}
}

// What was undone is done again until something else is done; what is taken out is neither.
func TestHistory(t *testing.T) {
	h := History[string]{Now: "a"}
	if h.Undo() || h.Redo() {
		t.Error("there is nothing to undo or do again")
	}
	h.Do("b")
	h.Do("c")
	h.Do("d")
	for range 2 {
		if !h.Undo() {
			t.Error("it isn't undone")
		}
	}
	if h.Now != "b" {
		t.Errorf("now %s", h.Now)
	}
	if next, any := h.Next(); !any || next != "c" || !h.Redo() || h.Now != "c" {
		t.Errorf("next %s, now %s", next, h.Now)
	}
	h.Each(strings.ToUpper)
	h.Drop(func(s string) bool { return s == "C" })
	if h.Now != "B" || !h.Redo() || h.Now != "D" {
		t.Errorf("without C: %s", h.Now)
	}
	h.Drop(func(s string) bool { return s == "B" })
	if !h.Undo() || h.Now != "A" || h.Undo() {
		t.Errorf("without B: %s", h.Now)
	}
	if h.Do("E"); h.Redo() {
		t.Error("what was undone is done again behind another")
	}
}
