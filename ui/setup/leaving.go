package setup

import (
	"fmt"

	"bide/plan"
	"bide/ui/draw"
	"bide/ui/keys"
	"bide/ui/pane"
)

// answered takes what became of the job that ran before.
func (w *Page) answered(a keys.Action) {
	switch a {
	case keys.RunEnded:
		w.Form = nil
		w.Setup.Ended(plan.Done)
	case keys.RunOnHold:
		w.Form = nil
		w.Setup.Ended(plan.OnHold)
	case keys.Back:
		w.RunsOn()
	}
}

// asking asks what became of it.
func (w *Page) asking(d *pane.Shared, width int) []draw.Line {
	e := w.Ending
	return w.texts(d, width,
		draw.Span{Style: draw.Strong, Text: fmt.Sprintf("%s was to run until %s, and it is %s. Has it ended?", e.Job.ID, d.Clock(e.Till), d.Clock(e.Now))},
		draw.Span{Style: draw.Plain, Text: "y: yes, it is done."},
		draw.Span{Style: draw.Plain, Text: "z: it was stopped early. It is put on hold; Z in the day brings it back."},
		draw.Span{Style: draw.Plain, Text: "Esc: it is still running. Nothing is recorded."})
}
