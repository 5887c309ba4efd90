package sheet

import (
	"fmt"
	"time"

	"bide/plan"
	"bide/plan/words"
)

// facts says in words what a day and its changeovers are: the same words in each of
// the forms that people read.
type facts struct {
	plan    *plan.DayPlan
	steps   []*plan.Step // of the plan
	options *Options
	day     time.Time // whose hours are shown without a date
	swaps   []swap    // by step
}

func newFacts(d *plan.DayPlan, o *Options) *facts {
	return &facts{plan: d, steps: d.Steps(), options: o, day: o.begins(d), swaps: swaps(d)}
}

// fact is one thing said: its name, and the words; without a name it goes on with the
// one before.
type fact struct {
	Name, Text string
	Runs       []slitRun // of slits
}

// clock is a time of day on the sheet's day.
func (f *facts) clock(at time.Time) string { return words.Clock(at, f.day) }

// tellsDay reports whether the page of the day is to be written: for one job only where
// something is wrong with it.
func (f *facts) tellsDay() bool {
	return f.options.Only == "" || len(f.options.refused(f.plan)) > 0 || len(f.options.broken(f.plan)) > 0
}

// order says how the day's order came about.
func (f *facts) order() string {
	if f.options.Sequence == "best" {
		return "in the best order found"
	}
	return "in the order of the file"
}

// brokenHead warns of an order that breaks rules of the day's file.
const brokenHead = "RULES BROKEN: this order doesn't keep what the day's file asks for"

// jobs is the table of the day's jobs.
func (f *facts) jobs() grid {
	u := f.options.Unit
	g := grid{
		heads: [][]string{
			{"n", "job", "material", "web", "cuts", "moves", "setup", "run", "", "due", "late"},
			{"", "", "", u.String(), "", "", "min", "from", "to", "", "h:min"},
		},
		full:  []string{"No.", "Job", "Material", "Web, " + u.String(), "Cuts", "Moves", "Setup, min", "Run from", "Run to", "Due", "Late, h:min"},
		names: []bool{1: true, 2: true, 7: true, 8: true, 9: true, 10: false},
		wide:  2,
	}
	for i, s := range f.steps {
		late := ""
		if s.Late > 0 {
			late = words.Hours(s.Late)
		}
		g.rows = append(g.rows, []string{fmt.Sprint(i + 1), words.Clean(s.Job.ID), words.Clean(s.Job.Material), u.Number(s.Job.Web),
			fmt.Sprint(len(s.Layout.Cuts)), fmt.Sprint(s.Changeover.Repositions), words.Minutes(s.Setup.Total()),
			f.clock(s.RunStart), f.clock(s.RunEnd), f.clock(s.Job.Due), late})
	}
	return g
}

// inAll adds the day up, and sets beside it what the file's order takes centred.
func (f *facts) inAll() []fact {
	out := []fact{
		{Name: "In all", Text: sum(f.plan.Totals)},
		{Name: "Compare", Text: "in the order of the file, layouts centred: " + sum(f.plan.Listed)},
	}
	add := func(name, text string) {
		if text != "" {
			out = append(out, fact{Name: name, Text: text})
		}
	}
	if f.plan.Sequence == plan.SequenceBest {
		add("Saved", saved(f.plan.Totals, f.plan.Listed))
	}
	add("Least", f.floor())
	add("Counted", words.Without(f.plan.Uncounted()))
	add("Hours", f.hours())
	add("Begins", f.fromNow())
	add("Ends", f.ends())
	add("Left out", leftOut(f.options.Day))
	return out
}

// counting says how holders and places are counted.
func (f *facts) counting() string {
	return "Holders, slits and cuts are counted from the operator side. A position is the centre line of a holder on the beam's scale; + is to the drive side. The pitch, the least distance of two neighbours, is " +
		words.Both(f.plan.Beam.Pitch(), f.options.Unit) + "."
}

// floor says how few moves there could be at best; empty where nothing is proven.
func (f *facts) floor() string {
	least := f.plan.Floor
	if least == nil {
		return ""
	}
	which := "in this order"
	if f.options.Sequence == "best" {
		which = "in any order"
	}
	if f.plan.Totals.Repositions == least.Repositions {
		return fmt.Sprintf("these are the fewest moves %s: proven by %s", which, least.By)
	}
	return fmt.Sprintf("no plan %s can need fewer than %s: proven by %s", which, words.Count(least.Repositions, "move"), least.By)
}

// ends says when the last run ends, and how that lies to the shift's end.
func (f *facts) ends() string {
	steps, day := f.steps, f.options.Day
	if len(steps) == 0 || day == nil || day.End.IsZero() {
		return ""
	}
	last := steps[len(steps)-1].RunEnd
	lies := "before"
	over := day.End.Sub(last)
	if over < 0 {
		lies, over = "after", -over
	}
	return fmt.Sprintf("the last run at %s, %s %s the shift's end at %s", f.clock(last), words.Lasting(over), lies, f.clock(day.End))
}
