package changeover

import (
	"slices"

	"bide/plan"
	"bide/plan/changeover/layouts"
)

// Why a layout that fits the beam can't be set. What a beam can set depends on its
// holders' conditions and on where those that can't move stand; on where the others
// stand only with position_tolerance, since one that serves off its cut leaves more room.

// diagnosis is a planner that has found no way to set its scene, and says why.
type diagnosis struct{ *Planner }

// refusal names what keeps p.Scene, centred at l, from being set at any shift in the
// window: first what stands in the way of a fixed layout, else every restriction
// without which the layout could be set, with its numbers.
func (p diagnosis) refusal(l plan.Layout, window plan.Span) []plan.Fault {
	p.Set(append([]plan.Length(nil), p.Scene.At...), l.Web, l.Cuts)
	var out []plan.Fault
	if window.Length() > 0 && len(p.Beam.Bad) > 0 {
		whole := *p.Beam
		whole.Bad = nil
		if settable(&whole, p.Scene.At, l, window) {
			return []plan.Fault{{Key: "slits", Phrase: layouts.OnlyClear(p.Beam, l, window)}}
		}
	}
	if window.Length() == 0 {
		out = p.inTheWay(l)
	}
	if len(out) == 0 {
		out = append(p.short(window), p.penned(window)...)
	}
	if len(out) > 0 {
		return out
	}
	all := []restriction{
		{func(b *plan.Beam) bool { return replace(b.Holders, plan.Good, plan.Stuck, plan.Out) }, p.splits(l)},
		{func(b *plan.Beam) bool { return replace(b.Holders, plan.Good, plan.NoCut) }, p.cantCut(l)},
		{func(b *plan.Beam) bool { rest := b.RestOverWeb; b.RestOverWeb = true; return !rest }, p.parking(l)},
	}
	var present []plan.Fault
	for _, r := range all {
		eased := *p.Beam
		eased.Holders = append([]plan.Condition(nil), p.Beam.Holders...)
		if !r.ease(&eased) {
			continue
		}
		fault := plan.Fault{Key: "slits", Phrase: r.why}
		present = append(present, fault)
		if settable(&eased, p.Scene.At, l, window) {
			out = append(out, fault)
		}
	}
	switch {
	case len(out) > 0:
		return out
	case len(present) > 0: // no single one decides, so all of them are given
		return present
	}
	return []plan.Fault{{Key: "slits", Phrase: p.crowded(l)}}
}

// restriction is something that can rule a layout out: ease takes it away and
// reports whether it was there.
type restriction struct {
	ease func(*plan.Beam) bool
	why  plan.Phrase
}

// settable reports whether the layout can be set on a beam at some shift in the window.
func settable(b *plan.Beam, now []plan.Length, l plan.Layout, window plan.Span) bool {
	s := slider{&Planner{Beam: b, Pitch: b.Pitch()}}
	s.Set(now, l.Web, l.Cuts)
	s.slides(l.Cuts, window)
	_, ok := s.nearest(window)
	return ok
}

// replace turns every holder of some conditions into another; it reports whether
// there was one.
func replace(holders []plan.Condition, to plan.Condition, from ...plan.Condition) (found bool) {
	for i, c := range holders {
		if slices.Contains(from, c) {
			holders[i], found = to, true
		}
	}
	return found
}

// inTheWay lists the holders that can't move and stand where the fixed layout
// allows none.
func (p diagnosis) inTheWay(l plan.Layout) []plan.Fault {
	var out []plan.Fault
	s := &p.Scene
	for i, x := range s.At {
		st := s.stayOf(x, s.condition[i], s.stays[i].before) // whatever lies on either side
		if s.condition[i].Moves() || st.can && s.clear(x, st) {
			continue
		}
		why := plan.Say("holder %d (%s) is at %s, where no idle holder may be while a web runs from %s to %s",
			i+1, s.condition[i], x, l.Web.From, l.Web.To)
		if m, d := nearestCut(l.Cuts, x); m > 0 && d < p.Pitch {
			why = plan.Say("holder %d (%s) is %s from cut %d, nearer than the pitch of %s", i+1, s.condition[i], d, m, p.Pitch)
		}
		out = append(out, plan.Fault{Key: "slits", Phrase: why})
	}
	return out
}

// nearestCut is the cut (from 1) nearest to x that isn't served from there, and
// its distance; 0 without cuts.
func nearestCut(cuts []plan.Length, x plan.Length) (m int, d plan.Length) {
	for i, c := range cuts {
		if m == 0 || (c-x).Abs() < d {
			m, d = i+1, (c - x).Abs()
		}
	}
	return m, d
}

// splits says what lies on either side of the holders that can't move.
func (p diagnosis) splits(l plan.Layout) (text plan.Phrase) {
	for i, c := range p.Beam.Holders {
		if c.Moves() {
			continue
		}
		before := 0
		for before < len(l.Cuts) && l.Cuts[before] < p.Scene.At[i] {
			before++
		}
		text = also(text, "holder %d is %s at %s: %d holders on its operator side may cut and %d on its drive side, for %d and %d cuts and all idle holders there",
			i+1, c, p.Scene.At[i], p.Scene.goodsBefore[i], p.goodsAfter(i), before, len(l.Cuts)-before)
	}
	return text
}

// cantCut says between which cuts the holders that may not cut must stand.
func (p diagnosis) cantCut(l plan.Layout) (text plan.Phrase) {
	k := len(l.Cuts)
	for i, c := range p.Beam.Holders {
		if c != plan.NoCut {
			continue
		}
		least, most := max(0, k-p.goodsAfter(i)), min(k, p.Scene.goodsBefore[i])
		text = also(text, "holder %d may not cut; %d holders on its operator side and %d on its drive side may, so between %d and %d of the %d cuts must lie on its operator side, and it finds no room to be idle there",
			i+1, p.Scene.goodsBefore[i], p.goodsAfter(i), least, most, k)
	}
	return text
}

// parking says how many idle holders there are and what room is left for them.
func (p diagnosis) parking(l plan.Layout) plan.Phrase {
	s := &p.Scene
	return plan.Say("%d idle holders may not rest over the web; clear of it there is room for %d on the operator side, up to %s, and for %d on the drive side, from %s",
		len(s.At)-len(l.Cuts), fit(s.idle.From-s.Rail.From, p.Pitch), s.idle.From, fit(s.Rail.To-s.idle.To, p.Pitch), s.idle.To)
}

// crowded says that the idle holders find no room between the cuts and beside
// them.
func (p diagnosis) crowded(l plan.Layout) plan.Phrase {
	rail, n := p.Beam.Rail, len(p.Beam.Holders)
	room := fit(rail.Length(), p.Pitch)
	if k := len(l.Cuts); k > 0 {
		room = int((l.Cuts[0]-rail.From)/p.Pitch) + int((rail.To-l.Cuts[k-1])/p.Pitch)
		for m := 1; m < k; m++ {
			room += int((l.Cuts[m]-l.Cuts[m-1])/p.Pitch) - 1
		}
	}
	return plan.Say("%d idle holders find no room: between the cuts and beside them there is room for %d", n-len(l.Cuts), room)
}

// fit is how many holders stand on a stretch of that length, both ends included.
func fit(length, pitch plan.Length) int {
	if length < 0 {
		return 0
	}
	return int(length/pitch) + 1
}

// goodsAfter counts the holders to the drive side of holder i that may cut.
func (p diagnosis) goodsAfter(i int) int {
	return p.Scene.goodsBefore[len(p.Scene.At)] - p.Scene.goodsBefore[i+1]
}

// also appends a sentence to a phrase.
func also(p plan.Phrase, words string, args ...any) plan.Phrase {
	if p.Words != "" {
		p.Words += "; "
	}
	return plan.Say(p.Words+words, append(p.Args, args...)...)
}
