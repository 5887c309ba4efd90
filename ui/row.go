package ui

import (
	"bide/plan"
	"bide/plan/session/planning"
	"bide/ui/draw"
)

// entry is one row of the list.
type entry struct {
	*desk
	turn    int
	job     *plan.Job
	outcome *planning.Outcome // nil while it is worked out
	focused bool
}

func (e entry) picked() bool { return e.turn == e.desk.turn }

func (e entry) refused() bool { return e.outcome != nil && len(e.outcome.Faults) > 0 }

// cursor marks the picked row, in a pane without the keys less.
func (e entry) cursor() (draw.Style, string) {
	switch {
	case !e.picked():
		return draw.Plain, ""
	case e.focused:
		return draw.Picked, e.Theme.Cursor
	}
	return draw.Picked, e.CursorBy
}

// flag is the row's letter: refused, an order that breaks a rule, running, fixed at a
// number, or to come after another job.
func (e entry) flag() (draw.Style, string) {
	switch {
	case e.refused():
		return draw.Late, "x"
	case e.Broken[e.job] != "":
		return draw.Late, "!"
	case e.job.State == plan.Running:
		return draw.Good, "r"
	case e.job.Fixed != 0:
		return draw.Accent, "f"
	case len(e.job.After) > 0:
		return draw.Faint, "<"
	}
	return draw.Plain, ""
}

// refusal is why the beam can't run the job.
func (e entry) refusal() string { return "refused: " + e.outcome.Faults[0].Why(e.Shop.Unit) }
