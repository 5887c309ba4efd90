package pane

import (
	"bide/plan"
	"bide/plan/session/planning"
	"bide/ui/draw"
)

// JobRow is a job of the day as one row of a list.
type JobRow struct {
	*Shared
	Index   int
	Job     *plan.Job
	Outcome *planning.Outcome // nil while it is worked out
	Focused bool
}

// Picked reports whether it is the picked job's.
func (e JobRow) Picked() bool { return e.Index == e.Shared.JobAt }

// Refused reports whether the beam can't run the job.
func (e JobRow) Refused() bool { return e.Outcome != nil && len(e.Outcome.Faults) > 0 }

// Cursor marks the picked row.
func (e JobRow) Cursor() (draw.Style, string) { return e.RowCursor(e.Picked(), e.Focused) }

// Flag is the row's letter: refused, an order that breaks a rule, running, fixed at a
// number, or to come after another job.
func (e JobRow) Flag() (draw.Style, string) {
	switch {
	case e.Refused():
		return draw.Late, "x"
	case e.Broken[e.Job] != "":
		return draw.Late, "!"
	case e.Job.State == plan.Running:
		return draw.Good, "r"
	case e.Job.Fixed != 0:
		return draw.Accent, "f"
	case len(e.Job.After) > 0:
		return draw.Faint, "<"
	}
	return draw.Plain, ""
}

// Refusal is why the beam can't run the job.
func (e JobRow) Refusal() string { return "refused: " + e.Outcome.Faults[0].Why(e.Shop.Unit) }
