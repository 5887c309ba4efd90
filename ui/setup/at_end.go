package setup

import (
	"fmt"
	"slices"
	"strings"

	"bide/plan"
	"bide/plan/session"
	"bide/ui/caution"
	"bide/ui/draw"
	"bide/ui/keys"
	"bide/ui/pane"
)

// ended tells what stands where when all moves are made, and what else a changeover
// asks for before the web runs.
func (w *Page) ended(d *pane.Shared, s draw.Size) []draw.Line {
	step := w.Plan.Step
	air := draw.Span{Style: draw.Late, Text: "! " + caution.AirBack}
	all := []draw.Span{{Style: draw.Strong, Text: fmt.Sprintf("All moves done. %s is set up. Press %s when it runs.", w.Job.ID, d.KeyFor(keys.Runs))}}
	if s.W < 36 || s.H < 6 { // what matters most first
		all = []draw.Span{{Style: draw.Strong, Text: "all done: " + d.KeyFor(keys.Runs) + " when " + w.Job.ID + " runs"}, {Style: draw.Late, Text: "air on: knives drop!"}, air}
	}
	all = append(all, draw.Span{Style: draw.Plain, Text: fmt.Sprintf("%d cutting, %d resting, %d parked", len(step.Changeover.Holders)-step.Changeover.Resting-step.Changeover.Parked, step.Changeover.Resting, step.Changeover.Parked)})
	if text := Blades(w, d); text != "" {
		all = append(all, draw.Span{Style: draw.Strong, Text: text})
	}
	if text := AlsoInSetup(step, w.Job); text != "" {
		all = append(all, draw.Span{Style: draw.Plain, Text: "Also in this setup: " + text})
	}
	all = append(all, draw.Span{Style: draw.Plain, Text: "At the knife: " + pane.ToSet(d, w.Job) + "."})
	if !slices.Contains(all, air) {
		all = append(all, air)
	}
	all = append(all, draw.Span{Style: draw.Plain, Text: "First-off: measure every strip of the first set, relaxed, before the run."})
	return append(texts(d, s.W, all...), positionsAtEnd(w, d, s.W)...)
}

// positionsAtEnd are the holders' positions at the end: in a table, or in words where that is too wide.
func positionsAtEnd(w *Page, d *pane.Shared, width int) (out []draw.Line) {
	all, u := GroupsAtEnd(w.Plan.Step.Changeover.Holders), d.Shop.Unit
	if width < 48 {
		for _, g := range all {
			out = append(out, texts(d, width, draw.Span{Style: draw.Plain, Text: g.Numbers() + " " + g.Use() + ": " + g.Positions(u) + " " + u.String()})...)
		}
		return out
	}
	l := d.Line()
	l.Add(draw.Head, fmt.Sprintf(" %-9s %-14s %s", "holders", "use", "from, to ("+u.String()+")"))
	out = append(out, l)
	for _, g := range all {
		l := d.Line()
		l.Add(draw.Strong, fmt.Sprintf(" %-9s ", g.Numbers()))
		l.Add(draw.Plain, fmt.Sprintf("%-14s ", g.Use()))
		l.Add(draw.Faint, g.Positions(u))
		out = append(out, l)
	}
	return out
}

// AlsoInSetup tells what a setup asks for beside the moves.
func AlsoInSetup(s *plan.Step, j *plan.Job) string {
	var parts []string
	if s.Setup.CleanDown > 0 {
		parts = append(parts, "clean-down to free of silicone")
	}
	if s.Setup.Rethread > 0 {
		parts = append(parts, "rethread "+j.Material)
	}
	return strings.Join(parts, ", ")
}

// group is a run of neighbours that do the same.
type group struct {
	First, Last int // numbers
	from, to    plan.Stand
}

// GroupsAtEnd are the holders in runs.
func GroupsAtEnd(holders []plan.Stand) (out []group) {
	for i, h := range holders {
		if n := len(out); n > 0 && out[n-1].to.Use == h.Use {
			out[n-1].Last, out[n-1].to = i+1, h
			continue
		}
		out = append(out, group{i + 1, i + 1, h, h})
	}
	return out
}

// Numbers are those of the first and the last holder, or of the only one.
func (g group) Numbers() string { return stretch(fmt.Sprint(g.First), fmt.Sprint(g.Last)) }

// Use is what the holders do: which cuts they make, or how they idle.
func (g group) Use() string {
	if g.from.Use != plan.Cutting {
		return g.from.Use.String()
	}
	return "cut " + stretch(fmt.Sprint(g.from.Cut), fmt.Sprint(g.to.Cut))
}

// Positions are where the first and the last are, or the only one.
func (g group) Positions(u plan.Unit) string {
	if g.First == g.Last {
		return u.Number(g.from.At)
	}
	return u.Number(g.from.At) + " to " + u.Number(g.to.At)
}

// stretch is from one to another, or one alone.
func stretch(a, b string) string {
	if a == b {
		return a
	}
	return a + "-" + b
}

// answered takes what became of the job that ran before.
func (w *Page) answered(a keys.Action) pane.Want {
	state := plan.Done
	switch a {
	case keys.Back:
		return func(s *session.Session) { s.Setup.RunsOn() }
	case keys.RunOnHold:
		state = plan.OnHold
	case keys.RunEnded:
	default:
		return nil
	}
	w.form = nil
	return func(s *session.Session) { s.Setup.Ended(state) }
}

// asking asks what became of it.
func asking(w *Page, d *pane.Shared, width int) []draw.Line {
	e := w.Ending
	return texts(d, width,
		draw.Span{Style: draw.Strong, Text: fmt.Sprintf("%s was to run until %s, and it is %s. Has it ended?", e.Job.ID, d.Clock(e.Till), d.Clock(e.Now))},
		draw.Span{Style: draw.Plain, Text: "y: yes, it is done."},
		draw.Span{Style: draw.Plain, Text: "z: it was stopped early. It is put on hold; Z in the day brings it back."},
		draw.Span{Style: draw.Plain, Text: "Esc: it is still running. Nothing is recorded."})
}
