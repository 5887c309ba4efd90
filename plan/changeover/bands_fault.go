package changeover

import (
	"bide/plan"
	"fmt"
	"slices"
)

// Why damaged bands of the anvil keep a job from being run.

// damaged tells why the job can't be laid out clear of the damaged bands, if so.
func damageFaults(b *plan.Beam, j *plan.Job) []plan.Fault {
	if len(b.Bad) == 0 {
		return nil
	}
	if _, ok := laidOut(b, j); ok {
		return nil
	}
	l := b.Lay(j, j.Slits(), 0)
	if from, to := b.Window(j); from < to {
		return []plan.Fault{{Key: "slits", Why: func(u plan.Unit) string {
			return fmt.Sprintf("no shift from %s to %s keeps every cut out of the anvil's damaged bands%s; centred, %s",
				u.Number(from), u.Show(to), reordered(j), bandsAt(b, l.Cuts, u))
		}}}
	}
	key, way := freed(b, j)
	return []plan.Fault{{Key: key, Why: func(u plan.Unit) string { return bandsAt(b, l.Cuts, u) + reordered(j) + way(u) }}}
}

// inBands names the first cut that lies in a band, and counts the others.
func bandsAt(b *plan.Beam, cuts []plan.Length, u plan.Unit) string {
	text, more := "", 0
	for m, c := range cuts {
		band, in := plan.BandAt(b.Bad, c)
		switch {
		case !in:
		case text == "":
			text = fmt.Sprintf("cut %d at %s lies in the damaged band of the anvil from %s to %s", m+1, u.Show(c), u.Number(band.From), u.Show(band.To))
		default:
			more++
		}
	}
	if more > 0 {
		text += fmt.Sprintf(" (and %s more in damaged bands)", many(more, "cut"))
	}
	return text
}

// reordered tells that other orders of the slits were tried, where they may be.
func reordered(j *plan.Job) string {
	if j.Arrange == plan.AsListed {
		return ""
	}
	return ", in no order of the slits that was tried"
}

// freed tells whether a free shift would help a job that has none, and the key of
// the job at fault.
func freed(b *plan.Beam, j *plan.Job) (key string, way func(plan.Unit) string) {
	say := func(text string) func(plan.Unit) string { return func(plan.Unit) string { return text } }
	loose := *j
	loose.Shift = plan.Free
	from, to := b.Window(&loose)
	if from >= to {
		return "slits", say("; its trim leaves no room to shift")
	}
	slits, ok := laidOut(b, &loose)
	if !ok {
		return "slits", func(u plan.Unit) string {
			return fmt.Sprintf("; a free shift, from %s to %s, would not help", u.Number(from), u.Show(to))
		}
	}
	shift := nearestOf(Shifts(b, &loose, slits))
	return "shift", func(u plan.Unit) string { // the shift before it is on the end of a band
		side, order := "drive", ""
		if shift < 0 {
			side = "operator"
		}
		if !slices.Equal(slits, j.Slits()) {
			order = ", its slits in another order"
		}
		if by := u.Show(plan.Abs(shift) - plan.Nanometre); by != u.Show(0) {
			return fmt.Sprintf("; with a free shift it keeps clear beyond %s to the %s side%s", by, side, order)
		}
		return fmt.Sprintf("; with a free shift it keeps clear as soon as it is off centred, to the %s side%s", side, order)
	}
}

// nearestOf is the shift nearest to centred in some stretches.
func nearestOf(all []plan.Span) plan.Length {
	best := all[0].From
	for _, s := range all {
		if x := min(max(0, s.From), s.To); nearer(x, best) < 0 {
			best = x
		}
	}
	return best
}

// onlyClear tells where the layout keeps clear of the bands, and that it can't be
// set there.
func onlyClear(b *plan.Beam, l plan.Layout, window plan.Span) func(plan.Unit) string {
	const most = 4
	return func(u plan.Unit) string {
		text, all := "", allowedShifts(b, nil, l.Cuts, window)
		for i, s := range all {
			switch {
			case i == most:
				return fmt.Sprintf("%s and %s more, and nowhere there can the holders be set", text, many(len(all)-most, "stretch"))
			case i > 0:
				text += ", "
			default:
				text = "the cuts keep out of the anvil's damaged bands only shifted "
			}
			text += fmt.Sprintf("from %s to %s", u.Number(s.From), u.Show(s.To))
		}
		return text + ", and nowhere there can the holders be set"
	}
}

// damagedCut is the fault of a layout one of whose cuts lies in a band.
func damagedCut(b *plan.Beam, l plan.Layout) []plan.Fault {
	if plan.ClearOf(b.Bad, l.Cuts, 0) {
		return nil
	}
	return []plan.Fault{{Key: "slits", Why: func(u plan.Unit) string { return bandsAt(b, l.Cuts, u) }}}
}
