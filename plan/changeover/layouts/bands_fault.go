package layouts

import (
	"slices"

	"bide/plan"
	"bide/plan/words"
)

// Why damaged bands of the anvil keep a job from being run.

// damageFaults says why the job can't be laid out clear of the damaged bands, if so.
func damageFaults(b *plan.Beam, j *plan.Job) []plan.Fault {
	if len(b.Bad) == 0 {
		return nil
	}
	if _, ok := Order(b, j); ok {
		return nil
	}
	l := b.Lay(j, j.Slits(), 0)
	if from, to := b.Window(j); from < to {
		return []plan.Fault{plan.NewFault("slits", "no shift from %s to %s keeps every cut out of the anvil's damaged bands%s; centred, %s",
			plan.Bare(from), to, reordered(j), bandsAt(b, l.Cuts))}
	}
	key, way := freed(b, j)
	return []plan.Fault{plan.NewFault(key, "%s%s%s", bandsAt(b, l.Cuts), reordered(j), way)}
}

// bandsAt names the first cut that lies in a band, and counts the others.
func bandsAt(b *plan.Beam, cuts []plan.Length) (first plan.Phrase) {
	more := 0
	for m, c := range cuts {
		band, in := b.Bad.At(c)
		switch {
		case !in:
		case first.Words == "":
			first = plan.Say("cut %d at %s lies in the damaged band of the anvil from %s to %s", m+1, c, plan.Bare(band.From), band.To)
		default:
			more++
		}
	}
	if more > 0 {
		return plan.Say("%s (and %s more in damaged bands)", first, words.Count(more, "cut"))
	}
	return first
}

// reordered says that other orders of the slits were tried, where they may be.
func reordered(j *plan.Job) string {
	if j.Arrange == plan.AsListed {
		return ""
	}
	return ", in no order of the slits that was tried"
}

// freed says whether a free shift would help a job that has none, and the key of
// the job at fault.
func freed(b *plan.Beam, j *plan.Job) (key string, way plan.Phrase) {
	loose := *j
	loose.Shift = plan.Free
	from, to := b.Window(&loose)
	if from >= to {
		return "slits", plan.Say("; its trim leaves no room to shift")
	}
	slits, ok := Order(b, &loose)
	if !ok {
		return "slits", plan.Say("; a free shift, from %s to %s, would not help", plan.Bare(from), to)
	}
	shift := nearestOf(Shifts(b, &loose, slits))
	side, order := "drive", ""
	if shift < 0 {
		side = "operator"
	}
	if !slices.Equal(slits, j.Slits()) {
		order = ", its slits in another order"
	}
	if by := shift.Abs() - plan.Nanometre; by >= leastShown { // the shift before it is on the end of a band
		return "shift", plan.Say("; with a free shift it keeps clear beyond %s to the %s side%s", by, side, order)
	}
	return "shift", plan.Say("; with a free shift it keeps clear as soon as it is off centred, to the %s side%s", side, order)
}

// leastShown is the least length that isn't shown as nothing in either unit.
const leastShown = plan.Inch / 20_000

// nearestOf is the shift nearest to centred in some stretches.
func nearestOf(all []plan.Span) plan.Length {
	best := all[0].From
	for _, s := range all {
		if x := min(max(0, s.From), s.To); Nearer(x, best) < 0 {
			best = x
		}
	}
	return best
}

// OnlyClear says where the layout keeps clear of the bands, and that it can't be
// set there.
func OnlyClear(b *plan.Beam, l plan.Layout, window plan.Span) plan.Phrase {
	const most = 4
	text, args := "the cuts keep out of the anvil's damaged bands only shifted ", []any(nil)
	all := AppendShifts(b, nil, l.Cuts, window)
	for i, s := range all[:min(most, len(all))] {
		if i > 0 {
			text += ", "
		}
		text += "from %s to %s"
		args = append(args, plan.Bare(s.From), s.To)
	}
	if more := len(all) - most; more > 0 {
		text += " and %d more"
		args = append(args, more)
	}
	return plan.Say(text+", and nowhere there can the holders be set", args...)
}

// Damaged is the fault of a layout one of whose cuts lies in a band.
func Damaged(b *plan.Beam, l plan.Layout) []plan.Fault {
	if b.Bad.Miss(l.Cuts, 0) {
		return nil
	}
	return []plan.Fault{{Key: "slits", Phrase: bandsAt(b, l.Cuts)}}
}
