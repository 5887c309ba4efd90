package planning

import (
	"testing"

	"bide/plan"
	"bide/plan/changeover"
)

// A changeover that the verifier turns down refuses the job.
func TestChangeoverThatDoesntHold(t *testing.T) {
	b, stands, j := beam()
	p, err := changeover.NewPlanner(b)
	if err != nil {
		t.Fatal(err)
	}
	q := question{stands: stands, job: j}
	if o := (worker{p, b, PlanJob}).work(q, plan.Clock{}); len(o.Faults) > 0 || len(o.Step.Changeover.Moves) == 0 {
		t.Fatalf("a sound changeover gives %+v", o)
	}
	other := *b // as if the planner had planned for another beam
	other.Clearance = 10 * other.HolderWidth
	o := worker{p, &other, PlanJob}.work(q, plan.Clock{})
	if len(o.Faults) != 1 || !o.Faults[0].Equal(unheld) || o.Positions != stands {
		t.Errorf("a changeover that doesn't hold gives %+v", o)
	}
}

// The memory keeps what was asked for of late and stays within its size.
func TestMemory(t *testing.T) {
	var m memory
	jobs := make([]plan.Job, 5*memorySize)
	for i := range jobs {
		m.keep(question{job: &jobs[i]}, &Outcome{})
		if m.find(question{job: &jobs[0]}) == nil {
			t.Fatalf("what is always asked for was forgotten after %d", i)
		}
		if len(m.young)+len(m.old) > 2*memorySize {
			t.Fatalf("%d answers are kept", len(m.young)+len(m.old))
		}
	}
	if m.find(question{job: &jobs[1]}) != nil {
		t.Error("what nobody asks for is never forgotten")
	}
}
