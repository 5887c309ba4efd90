package plantest

import (
	"slices"

	"bide/plan"
)

// Reasons are what the faults say.
func Reasons(faults []plan.Fault) []string {
	var out []string
	for _, f := range faults {
		out = append(out, f.Why(plan.Millimetres))
	}
	return out
}

// Same reports whether two plans of a day are alike, step for step.
func Same(a, b *plan.DayPlan) bool {
	return a.Totals == b.Totals && slices.EqualFunc(a.Steps(), b.Steps(), func(x, y *plan.Step) bool {
		return x.Job.ID == y.Job.ID && slices.Equal(x.Layout.Cuts, y.Layout.Cuts) &&
			slices.Equal(x.Changeover.Holders, y.Changeover.Holders) && slices.Equal(x.Changeover.Moves, y.Changeover.Moves)
	})
}

// Worse reports whether the first totals are worse than the second by the aim.
func Worse(a, b plan.Totals, aim plan.Aim) bool {
	order := [][2]int{{int(a.Late), int(b.Late)}, {a.LateJobs, b.LateJobs}, {int(a.Setup), int(b.Setup)}, {a.Repositions, b.Repositions}}
	if aim == plan.AimMoves {
		order[2], order[3] = order[3], order[2]
	}
	for _, v := range order {
		if v[0] != v[1] {
			return v[0] > v[1]
		}
	}
	return false
}

// Ends are where a changeover's holders end.
func Ends(c plan.Changeover) (at []plan.Length) {
	for _, h := range c.Holders {
		at = append(at, h.At)
	}
	return at
}

// StepOf are the step of a turn, empty where it is refused, and its faults.
func StepOf(t plan.Turn, _ *plan.Positions) (plan.Step, []plan.Fault) {
	if t.Refused() {
		return plan.Step{}, t.Faults
	}
	return *t.Step, nil
}
