package sheet

import (
	"fmt"
	"strings"
	"time"

	"bide/plan"
	"bide/plan/words"
)

// mostHours is how many shifts, and how many pauses, the first page names.
const mostHours = 10

// hours names the shifts and pauses of the day, each with its date where there are more
// dates than one; empty where the day is one shift without a pause.
func (f *facts) hours() string {
	day := f.options.Day
	if day == nil || day.Calendar == nil {
		return ""
	}
	c := day.Calendar
	text := ""
	for i, s := range c.Shifts {
		if i < mostHours {
			text += ", " + f.stretch(s)
		}
	}
	text = strings.TrimPrefix(text, ", ") + more(len(c.Shifts))
	if len(c.Pauses) == 0 {
		return text
	}
	text += "; paused"
	for i, p := range c.Pauses {
		if i >= mostHours {
			break
		}
		text += " " + f.stretch(p.Hours)
		var notes []string
		if p.Why != "" {
			notes = append(notes, words.Clean(p.Why))
		}
		if p.Runs {
			notes = append(notes, "runs go on")
		}
		if len(notes) > 0 {
			text += " (" + strings.Join(notes, ", ") + ")"
		}
		text += ","
	}
	return strings.TrimSuffix(text, ",") + more(len(c.Pauses))
}

func more(n int) string {
	if n <= mostHours {
		return ""
	}
	return fmt.Sprintf(", and %d more", n-mostHours)
}

// stretch is when a stretch of time begins and ends.
func (f *facts) stretch(h plan.Hours) string {
	if h.To.IsZero() {
		return "from " + f.clock(h.From)
	}
	return f.clock(h.From) + " to " + f.clock(h.To)
}

// fromNow says when the plan begins, where that isn't the day's start.
func (f *facts) fromNow() string {
	if at := f.plan.Begins.At; f.options.Day != nil && at.After(f.options.Day.Start) {
		return "planned from " + f.clock(at) + " on" + onDate(at, f.day)
	}
	return ""
}

// onDate names a date that isn't the day's own.
func onDate(at, day time.Time) string {
	if at.YearDay() == day.YearDay() && at.Year() == day.Year() {
		return ""
	}
	return ", " + at.Format(dateOfDay)
}
