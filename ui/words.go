package ui

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"bide/plan"
	"bide/ui/draw"
)

// minutes is a span of time in minutes and tenths.
func minutes(d time.Duration) string { return fmt.Sprintf("%.1f", d.Minutes()) }

// hours is a span of time in hours and minutes; what is more than nought is never
// shown as 0:00.
func hours(d time.Duration) string {
	m := int(d.Round(time.Minute) / time.Minute)
	if d > 0 {
		m = max(m, 1)
	}
	return fmt.Sprintf("%d:%02d", m/60, m%60)
}

// more is a number with its sign; nought is the same.
func more(n int) string {
	if n == 0 {
		return "="
	}
	return fmt.Sprintf("%+d", n)
}

// signedMinutes are minutes with their sign.
func signedMinutes(d time.Duration) string { return fmt.Sprintf("%+.1f", d.Minutes()) }

// sameOr is a figure, or that it is the same.
func sameOr(minutes string) string {
	if minutes == "+0.0" || minutes == "-0.0" {
		return "="
	}
	return minutes
}

// lateness is how late something is; nothing where it isn't.
func lateness(d time.Duration) string {
	if d == 0 {
		return ""
	}
	return "!" + hours(d)
}

// clock is a time of day to the minute, with the days since the day's own behind
// it where there are any.
func clock(t, day time.Time) string {
	if t.IsZero() {
		return ""
	}
	t = t.Round(time.Minute)
	date := func(t time.Time) time.Time { return time.Date(t.Year(), t.Month(), t.Day(), 0, 0, 0, 0, time.UTC) }
	days := int(date(t).Sub(date(day)).Hours()) / 24
	if days == 0 {
		return t.Format("15:04")
	}
	return fmt.Sprintf("%s%+d", t.Format("15:04"), days)
}

// count is a number with its noun: 1 job, 2 jobs.
func count(n int, noun string) string {
	if n == 1 {
		return "1 " + noun
	}
	return fmt.Sprintf("%d %ss", n, noun)
}

// against tells how the day's costs differ from those it had, what matters most first.
func against(now, was plan.Totals) string {
	var parts []string
	part := func(d time.Duration, text, less, more string) {
		switch {
		case d < 0 && text != "":
			parts = append(parts, text+" "+less)
		case d > 0 && text != "":
			parts = append(parts, text+" "+more)
		}
	}
	setup, behind := now.Setup-was.Setup, now.Late-was.Late
	part(behind, hours(behind.Abs()), "less late", "more late")
	if text := minutes(setup.Abs()); text != "0.0" {
		part(setup, text+" min", "less setup", "more setup")
	}
	switch n := now.Repositions - was.Repositions; {
	case n < 0:
		parts = append(parts, fmt.Sprintf("%s fewer", count(-n, "move")))
	case n > 0:
		parts = append(parts, fmt.Sprintf("%s more", count(n, "move")))
	}
	if len(parts) == 0 {
		return "it costs the same"
	}
	return strings.Join(parts, ", ")
}

// join joins those of the texts that say something.
func join(between string, texts ...string) string {
	said := slices.DeleteFunc(texts, func(text string) bool { return text == "" })
	return strings.Join(said, between)
}

// fitting is the first of the texts that fits into w cells, else the last.
func fitting(w int, texts ...string) string {
	for _, text := range texts {
		if draw.CellWidth(text) <= w {
			return text
		}
	}
	return texts[len(texts)-1]
}

// towards names the side that a way along the beam leads to.
func towards(by plan.Length) string {
	switch {
	case by > 0:
		return "drive side"
	case by < 0:
		return "operator side"
	}
	return ""
}

// side is the same in a narrow column.
func side(by plan.Length) string {
	if by < 0 {
		return "oper."
	}
	return "drive"
}

// ruler writes lengths of one column alike: in one unit, with as many decimals as
// the finest of them needs, so that their points stand in a line.
type ruler struct {
	unit     plan.Unit
	decimals int
}

// fineAs makes the ruler's decimals those that the length needs, or more.
func (r *ruler) fineAs(l plan.Length) {
	_, part, _ := strings.Cut(r.unit.Number(l), ".")
	r.decimals = max(r.decimals, len(part))
}

func (r ruler) number(l plan.Length) string {
	whole, part, _ := strings.Cut(r.unit.Number(l), ".")
	if r.decimals == 0 {
		return whole
	}
	return whole + "." + part + strings.Repeat("0", max(r.decimals-len(part), 0))
}

// signed is the number with + to the drive side.
func (r ruler) signed(l plan.Length) string {
	if l > 0 {
		return "+" + r.number(l)
	}
	return r.number(l)
}

// other is the unit that the shop doesn't use.
func other(u plan.Unit) plan.Unit {
	if u == plan.Inches {
		return plan.Millimetres
	}
	return plan.Inches
}

// exactly is a length for people, in inches as a fraction where it is one.
func exactly(l plan.Length, u plan.Unit) string {
	if fraction, ok := l.Fraction(); ok && u == plan.Inches {
		return fraction + " in"
	}
	return u.Show(l)
}
