package holders

import (
	"fmt"
	"strings"

	"bide/plan"
	"bide/plan/shop"
	"bide/plan/shop/record"
	"bide/plan/words"
	"bide/ui/draw"
	"bide/ui/pane"
)

// AboutHolder is what there is to say about a holder, what is wrong first.
func AboutHolder(d *pane.Shared, number int) (out []draw.Span) {
	r := newRow(d, number, false)
	u := d.Shop.Unit
	say := func(i draw.Style, format string, args ...any) {
		out = append(out, draw.Span{Style: i, Text: fmt.Sprintf(format, args...)})
	}
	at := PositionOf(d, number)
	say(draw.Picked, "Holder %d is at %s (%s)%s", number, u.Show(at), words.Other(u).Show(at), r.inJob())
	if m, marked := d.Actual.Marks[number]; marked || r.condition != plan.Good {
		say(draw.Late, "%s", condition(r.condition, m, marked))
	}
	if text := r.edgeWords(); text != "" {
		say(draw.Plain, "%s", text)
	}
	if r.usage != nil {
		say(draw.Plain, "today: cuts in %d of %s, %.0f m; %s over %s; %s", r.usage.Cuts, words.Count(len(r.usage.Stints), "job"), r.usage.Metres,
			words.Count(r.usage.Moves, "move"), u.Show(r.usage.Travel), r.idleWords())
	}
	if text := r.record(); text != "" {
		say(draw.Faint, "%s", text)
	}
	if never := d.NeverCut(); len(never) > 0 {
		say(draw.Faint, "never used today: %s", words.Ranges(never))
	}
	return out
}

// inJob is what it does in the picked job.
func (r holderRow) inJob() string {
	if r.stint == nil {
		return ""
	}
	text := fmt.Sprintf("; in %s it %s", r.Job().ID, map[plan.Use]string{
		plan.Cutting: fmt.Sprintf("cuts at cut %d", r.stint.Cut), plan.Resting: "rests over the web", plan.Parked: "is parked"}[r.stint.Use])
	u := r.Shop.Unit
	switch {
	case r.stint.Way != 0:
		text += fmt.Sprintf(", moved to %s", u.Show(r.stint.At))
	case r.stint.At != PositionOf(r.Shared, r.number):
		text += fmt.Sprintf(" at %s", u.Show(r.stint.At))
	}
	return text
}

// condition is a holder's condition in words, with the reason that was given.
func condition(c plan.Condition, m shop.Mark, marked bool) string {
	text := map[plan.Condition]string{
		plan.Good: "good", plan.NoCut: "n no cut: it moves but may not cut", plan.Stuck: "s stuck: it can't move but may cut where it is",
		plan.Out: "o out: it may neither move nor cut"}[c]
	switch {
	case marked && m.Reason != "":
		text += "; reason: " + m.Reason
	case marked:
		text += "; set at the machine"
	default:
		text += "; from beam.toml"
	}
	return text
}

// idleWords say how long it has been and will be idle, and how long it is left alone.
func (r holderRow) idleWords() string {
	all := fmt.Sprintf("idle %s in %s", words.Hours(r.usage.IdleTime), words.Count(r.usage.Idle, "job"))
	switch {
	case r.usage.Never() && r.Present.Whole():
		return words.Join("; ", "never used", r.alone())
	case r.stint == nil || r.stint.Use == plan.Cutting:
		return all + " of the day"
	}
	here := fmt.Sprintf("here for %s, %s", words.Count(r.indexes, "job"), words.Hours(r.idle))
	if r.next >= 0 {
		here += fmt.Sprintf(", then needed for %s at %s", r.Jobs()[r.next].ID, r.Clock(r.Outcome(r.next).Step.SetupStart))
	} else if r.Present.Whole() {
		here += ", to the end of the day"
	}
	return words.Join("; ", all, here, r.alone())
}

// alone says until when nothing is done to an idle holder: so long it may be worked on
// and the plan stays as it is.
func (r holderRow) alone() string {
	use := r.Use()
	step := use.Step(r.JobAt)
	if step < 0 || !r.Present.Whole() {
		return ""
	}
	next := r.usage.Touched(step)
	if next < 0 {
		return "it is not moved again"
	}
	index := use.Turns[next]
	return fmt.Sprintf("it stays until %s at %s", r.Jobs()[index].ID, r.Clock(r.Outcome(index).Step.SetupStart))
}

// edgeWords are about its blade, and how often it was stuck: what its columns show where
// there is room for them.
func (r holderRow) edgeWords() string {
	var parts []string
	if r.blade() != "" {
		b := r.Start.Positions.Blades[r.number-1]
		parts = append(parts, fmt.Sprintf("blade of %g degrees, tip %g mm", b.Bevel, b.Tip))
	}
	if metres, known := r.worn(); known {
		parts = append(parts, fmt.Sprintf("%.0f m cut with this blade before the day", metres))
	}
	if w := wearOf(r.Shared, r.number); w != nil && w.Jams > 0 {
		parts = append(parts, "stuck "+words.Times(w.Jams)+" before")
	}
	return strings.Join(parts, ", ")
}

// record says what the record has of it.
func (r holderRow) record() string {
	w := wearOf(r.Shared, r.number)
	if w == nil || *w == (record.Wear{}) {
		return ""
	}
	text := fmt.Sprintf("record: %s over %s; stuck %s, no cut or out %s, position corrected %s", words.Count(w.Moves, "move"), r.Travel(w.Travel),
		words.Times(w.Jams), words.Times(w.Faults), words.Times(w.Corrected))
	if !w.Last.IsZero() {
		text += "; last moved " + w.Last.Format("2 Jan 2006, 15:04")
	}
	return text
}

// wearOf is what the record has of a holder; nil while it isn't read, or there is
// none.
func wearOf(d *pane.Shared, number int) *record.Wear {
	if d.Wear == nil || number > len(d.Wear.Holders) {
		return nil
	}
	return &d.Wear.Holders[number-1]
}
