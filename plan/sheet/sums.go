package sheet

import (
	"fmt"
	"time"

	"bide/plan"
	"bide/plan/words"
)

// saved says what a day takes less than the file's order does: the difference of
// what sum prints of both.
func saved(now, listed plan.Totals) string {
	const tenth = 6 * time.Second // of a minute
	moves := listed.Repositions - now.Repositions
	setup := listed.Setup.Round(tenth) - now.Setup.Round(tenth)
	late := time.Duration(words.WholeMinutes(listed.Late)-words.WholeMinutes(now.Late)) * time.Minute
	text := ""
	if moves != 0 {
		text = words.Count(max(moves, -moves), "move")
	}
	if moves != 0 && setup != 0 {
		if (moves < 0) != (setup < 0) {
			text += lessOrMore(moves < 0)
		}
		text += " and "
	}
	if setup != 0 {
		text += words.Minutes(setup.Abs()) + " min of setup"
	}
	switch {
	case text != "":
		text += lessOrMore(setup < 0 || setup == 0 && moves < 0) + " than the listed order"
	case late == 0:
		return "the same as the listed order"
	default:
		text = "moves and setup the same as the listed order"
	}
	if late != 0 {
		text += "; " + words.Lasting(late.Abs()) + lessOrMore(late < 0) + " late"
	}
	return text
}

func lessOrMore(more bool) string {
	if more {
		return " more"
	}
	return " less"
}

// sum says what a day comes to.
func sum(t plan.Totals) string {
	late := "none late"
	if t.LateJobs > 0 {
		late = fmt.Sprintf("%d late by %s in all", t.LateJobs, words.Lasting(t.Late))
	}
	return fmt.Sprintf("%s, %s, %s min of setup, %s", words.Count(t.Jobs, "job"), words.Count(t.Repositions, "move"), words.Minutes(t.Setup), late)
}

// leftOut names the jobs of the day that aren't planned.
func leftOut(day *plan.Day) string {
	text := ""
	if day != nil {
		for _, j := range day.Jobs {
			if j.State == plan.Done {
				text = and(text, j.ID+" (done)")
			}
			if j.State == plan.OnHold {
				text = and(text, j.ID+" (on hold)")
			}
		}
	}
	return text
}

// and adds one more to a list of words.
func and(list, more string) string {
	if list == "" {
		return more
	}
	return list + ", " + more
}
