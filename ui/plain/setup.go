package plain

import (
	"fmt"
	"strings"

	"bide/plan/session"
	"bide/plan/words"
	"bide/ui/caution"
	"bide/ui/pane"
	"bide/ui/setup"
)

// guidedSetup is the changeover that comes next: how far it is, the next move and what is in its
// way, what is left, and where the holders are at its end.
func (p *page) guidedSetup(next *session.Guide) {
	p.chapter("Guided setup: the changeover that comes next")
	w := &setup.Page{Guide: next}
	switch {
	case next == nil:
		p.tell("No job is waiting: there is nothing to set up.")
		return
	case w.Plan == nil:
		p.tell("To %s: it is still being planned.", w.Job.ID)
		return
	case w.Refused():
		for _, f := range w.Plan.Faults {
			p.tell("To %s: it can't be set up from the positions now: %s.", w.Job.ID, f.Why(p.Shop.Unit))
		}
		return
	}
	made, ahead := len(w.Made()), w.Ahead()
	p.tell("To %s: %s made, %d left, which take the positioner %s min.", w.Job.ID, words.Count(made, "move"), len(ahead), words.Minutes(w.TimeLeft()))
	p.tell("First the cautions above, and at every move: keep hands away from moving holders.")
	if text := setup.Blades(w, p.Shared); text != "" {
		p.tell("%s", text)
	}
	if p.Actual.Positions.Assumed {
		p.tell("The positions of the holders are only assumed: measure before the first move.")
	}
	p.nextMove(w)
	p.atItsEnd(w)
}

// nextMove tells the next move, what is in its way, and which holders come then.
func (p *page) nextMove(w *setup.Page) {
	next := w.Move()
	if next == nil {
		p.tell("All moves are made.")
		return
	}
	p.tell("Next: %s.", pane.MoveSentence(next, p.Shop.Unit))
	if text := setup.WaitsFor(w.Guide, next); text != "" {
		p.tell("It %s.", strings.TrimPrefix(text, "! "))
	} else {
		p.tell("%s", setup.Frees(w.Guide, next))
	}
	var then []string
	for _, m := range w.Ahead()[1:] {
		then = append(then, fmt.Sprint(m.Holder))
	}
	if len(then) > 0 {
		p.tell("Then, in this order, holders %s: each move is listed below.", strings.Join(then, ", "))
	}
}

// atItsEnd tells what else the setup asks for, and what stands where at its end.
func (p *page) atItsEnd(w *setup.Page) {
	step := w.Plan.Step
	if text := setup.AlsoInSetup(step, w.Job); text != "" {
		p.tell("Also in this setup: %s.", text)
	}
	p.tell("At the knife: %s.", pane.ToSet(p.Shared, w.Job))
	for _, g := range setup.GroupsAtEnd(step.Changeover.Holders) {
		p.tell("At its end: %s %s, at %s %s.", map[bool]string{true: "holder", false: "holders"}[g.First == g.Last]+" "+g.Numbers(), g.Use(), g.Positions(p.Shop.Unit), p.Shop.Unit)
	}
	p.tell("%s", caution.AirBack)
	p.tell("First-off: measure every strip of the first set, relaxed, before the run.")
}
