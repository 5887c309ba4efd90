package shop

import (
	"fmt"
	"time"

	"bide/plan"
	"bide/plan/shop/toml"
)

// readLine reads [line]: what speed is gained in a second, in m/min, or ft/min in a
// file in inches, and what the stops of a run take.
func readLine(root *toml.Table) (l plan.Line) {
	t := root.Sub("line")
	perUnit := 1.0 / 60
	if t.Doc.Unit == plan.Inches {
		perUnit *= feet
	}
	up := t.Number("ramp_up", 0, 0.01, 20_000)
	down := t.Number("ramp_down", up, 0.01, 20_000)
	l.RampUp, l.RampDown = up*perUnit, down*perUnit
	l.SetChange = readStop(t, "set_change_s")
	l.ParentMetres = t.Number("parent_m", 0, 0.1, 1e7)
	l.ParentChange = readStop(t, "parent_change_s")
	t.Done()
	return l
}

func readStop(t *toml.Table, key string) plan.Stop {
	return plan.Stop{Takes: t.Duration(key, 0, time.Second), Given: t.Has(key)}
}

// uncountedNotes say which stops of the runs are not counted, and what would have to be
// given.
func uncountedNotes(l *plan.Line, jobs []plan.Job) (notes []string) {
	u := plan.UncountedIn(l, waiting(jobs))
	without := func(what, key string, given bool, rolls, of string, ids []string) {
		switch {
		case !given:
			notes = append(notes, fmt.Sprintf("%s: times are without %s: [line] has no %s", beamFile, what, key))
		case len(ids) > 0:
			notes = append(notes, fmt.Sprintf("%s: times are without %s for jobs without %s: %s%s", dayFile, what, rolls, some(ids), of))
		}
	}
	without("roll changes", "set_change_s", l.SetChange.Given, "roll_m or roll_diameter", "", u.Sets)
	without("parent roll changes", "parent_change_s", l.ParentChange.Given, "parent_m", " (parent_m in [line], the material or the job)", u.Parents)
	return notes
}

// waiting are the jobs that are still to be run.
func waiting(jobs []plan.Job) (out []*plan.Job) {
	for i := range jobs {
		if s := jobs[i].State; s == plan.Waiting || s == plan.Running {
			out = append(out, &jobs[i])
		}
	}
	return out
}
