package shop

import (
	"fmt"
	"slices"
	"strings"
	"time"
	_ "time/tzdata" // the zones that a shop may name, on any machine

	"bide/plan"
	"bide/plan/shop/toml"
)

// mostHours bounds the shifts, and the pauses, of one file.
const mostHours = 400

// readZone reads the zone that all times of the shop are in: the machine's where none is
// given.
func readZone(d *toml.Document, root *toml.Table) string {
	name := root.Text("zone", "")
	d.Zone = time.Local
	if name == "" {
		return ""
	}
	zone, err := time.LoadLocation(name)
	if err != nil {
		root.Refuse("zone", "write a name of the IANA time zone database: "+root.Example("zone"), "there is no time zone %q", name)
		return ""
	}
	d.Zone = zone
	return name
}

// readHours reads when the day begins, its shifts and its pauses. Without [[shift]] it is
// one shift, from start to end.
func readHours(root *toml.Table, day *plan.Day) {
	day.Start, day.End = root.Clock("start"), root.Clock("end")
	var shifts []plan.Hours
	for _, t := range hoursOf(root, "shift") {
		h := readStretch(t)
		if n := len(shifts); n > 0 && h.From.Before(shifts[n-1].To) {
			t.Refuse("from", "put shifts in the order of their times, none over another", "it begins before the shift above it ends")
		}
		shifts = append(shifts, h)
		t.Done()
	}
	switch n := len(shifts); {
	case n == 0:
		root.Need("start")
		if !day.End.IsZero() && !day.Start.IsZero() && !day.End.After(day.Start) {
			root.Refuse("end", "correct start or end", "the end is not after the start")
		}
		shifts = []plan.Hours{{From: day.Start, To: day.End}}
	default:
		if root.Has("end") {
			root.Refuse("end", "delete it", "the end is that of the last shift")
		}
		if !root.Has("start") || day.Start.Before(shifts[0].From) {
			day.Start = shifts[0].From
		}
		day.End = shifts[n-1].To
		if !day.Start.Before(day.End) {
			root.Refuse("start", "correct start or the shifts", "the start is not before the last shift's end")
		}
	}
	pauses := readPauses(root, shifts)
	if len(shifts) > 1 || len(pauses) > 0 {
		day.Calendar = plan.NewCalendar(shifts, pauses)
	}
}

// hoursOf are the entries of a list of times, none where there are too many.
func hoursOf(root *toml.Table, key string) []*toml.Table {
	entries := root.List(key)
	if len(entries) > mostHours {
		root.Refuse(key, "plan a shorter time", "%d are more than the %d accepted", len(entries), mostHours)
		return nil
	}
	return entries
}

// readStretch reads from and to of an entry.
func readStretch(t *toml.Table) plan.Hours {
	t.Need("from", "to")
	h := plan.Hours{From: t.Clock("from"), To: t.Clock("to")}
	if !h.From.IsZero() && !h.To.IsZero() && !h.To.After(h.From) {
		t.Refuse("to", "correct from or to", "it is not after from")
	}
	return h
}

func readPauses(root *toml.Table, shifts []plan.Hours) (pauses []plan.Pause) {
	for _, t := range hoursOf(root, "pause") {
		p := plan.Pause{Hours: readStretch(t), Why: t.Text("why", ""), Runs: t.Flag("runs", false)}
		inside := slices.ContainsFunc(shifts, func(s plan.Hours) bool {
			return p.To.After(s.From) && (s.To.IsZero() || p.From.Before(s.To))
		})
		if !inside && !p.From.IsZero() && !p.To.IsZero() {
			t.Refuse("from", "correct from and to, or delete the pause", "it is in no shift")
		}
		pauses = append(pauses, p)
		t.Done()
	}
	return pauses
}

// pausesOf are the hours of a day's pauses.
func pausesOf(d *plan.Day) (out []plan.Hours) {
	if d.Calendar != nil {
		for _, p := range d.Calendar.Pauses {
			out = append(out, p.Hours)
		}
	}
	return out
}

// sameHours reports whether two days have the same zone, shifts and pauses.
func sameHours(a, b *plan.Day) bool {
	same := func(a, b plan.Hours) bool { return a.From.Equal(b.From) && a.To.Equal(b.To) }
	ac, bc := a.Calendar, b.Calendar
	if ac == nil || bc == nil {
		return ac == bc && a.Zone == b.Zone
	}
	return a.Zone == b.Zone && slices.EqualFunc(ac.Shifts, bc.Shifts, same) && slices.EqualFunc(ac.Pauses, bc.Pauses, func(p, q plan.Pause) bool {
		return same(p.Hours, q.Hours) && p.Why == q.Why && p.Runs == q.Runs
	})
}

// hoursText is what stands above the jobs of a file for a day's zone, shifts and pauses.
func hoursText(d *plan.Day) string {
	var b strings.Builder
	if d.Zone != "" {
		fmt.Fprintf(&b, "zone = %s\n", toml.String(d.Zone))
	}
	if d.Calendar == nil {
		return b.String()
	}
	if len(d.Calendar.Shifts) == 1 {
		fmt.Fprintf(&b, "start = %s\n", toml.Time(d.Start))
		if !d.End.IsZero() {
			fmt.Fprintf(&b, "end = %s\n", toml.Time(d.End))
		}
	} else {
		for _, s := range d.Calendar.Shifts {
			fmt.Fprintf(&b, "\n[[shift]]\nfrom = %s\nto = %s\n", toml.Time(s.From), toml.Time(s.To))
		}
	}
	for _, p := range d.Calendar.Pauses {
		fmt.Fprintf(&b, "\n[[pause]]\nfrom = %s\nto = %s\n", toml.Time(p.From), toml.Time(p.To))
		if p.Why != "" {
			fmt.Fprintf(&b, "why = %s\n", toml.String(p.Why))
		}
		if p.Runs {
			b.WriteString("runs = true\n")
		}
	}
	return b.String()
}
