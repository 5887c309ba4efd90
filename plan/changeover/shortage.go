package changeover

import (
	"fmt"
	"slices"

	"bide/plan"
	"bide/plan/words"
)

// What is short where a layout can't be set: holders that may cut, or room. Each of
// these alone rules the layout out.

// short names the stretches between holders that can't move, or a rail end, on
// which too few holders may cut or too little room is left for the idle ones.
func (p diagnosis) short(window plan.Span) (out []plan.Fault) {
	s := &p.Scene
	a := -1
	for b := 0; b <= len(s.At); b++ {
		if b < len(s.At) && s.condition[b].Moves() {
			continue
		}
		points := p.points(a, b)
		cuts, holders, good, room := len(points)-2, b-a-1, s.goodsBefore[b]-s.goodsBefore[a+1], 0
		for m := 1; m < len(points); m++ {
			room += max(0, s.roomIn(points[m-1], points[m]))
		}
		switch where := p.stretch(a, b); {
		case cuts > good:
			out = append(out, plan.NewFault("slits", "%s%s: %s to be held, and %s", whereCentred(window), where, words.Count(cuts, "cut"), able(good)))
		case holders-cuts > room:
			out = append(out, plan.NewFault("slits", "%s%s: %s to be idle, and room for %d", whereCentred(window), where, words.Count(holders-cuts, "holder"), room))
		}
		a = b
	}
	return out
}

// points are the places on a stretch that idle holders stand between: its ends and
// the cuts on it. a and b are holders that can't move, -1 and the number of holders
// the rail's ends, as if a holder stood a pitch beyond.
func (p diagnosis) points(a, b int) []plan.Length {
	s := &p.Scene
	from, to, after, before := s.Rail.From-s.pitch, s.Rail.To+s.pitch, 0, len(s.cuts)
	if a >= 0 {
		from, after = s.At[a], s.stays[a].after
	}
	if b < len(s.At) {
		to, before = s.At[b], s.stays[b].before
	}
	return slices.Concat([]plan.Length{from}, s.cuts[after:max(before, after)], []plan.Length{to})
}

// stretch names the rail between two holders that can't move.
func (p diagnosis) stretch(a, b int) plan.Phrase {
	name := func(i int) plan.Phrase {
		return plan.Say("holder %d (%s at %s)", i+1, p.Scene.condition[i], p.Scene.At[i])
	}
	switch {
	case a < 0 && b == len(p.Scene.At):
		return plan.Say("on the whole beam")
	case a < 0:
		return plan.Say("on the operator side of %s", name(b))
	case b == len(p.Scene.At):
		return plan.Say("on the drive side of %s", name(a))
	}
	return plan.Say("between %s and %s", name(a), name(b))
}

// penned names the runs of holders that may not cut, side by side, for which none
// of the gaps that they can stand in has room.
func (p diagnosis) penned(window plan.Span) (out []plan.Fault) {
	s := &p.Scene
	k, n := len(s.cuts), len(s.At)
	for i := 0; i < n; i++ {
		end := i
		for end < n && s.condition[end] == plan.NoCut {
			end++
		}
		if end == i {
			continue
		}
		least, most := max(0, k-(s.goodsBefore[n]-s.goodsBefore[end])), min(k, s.goodsBefore[i])
		room := 0
		points := p.points(-1, n)
		for m := least; m <= most; m++ { // the gap behind m cuts
			room = max(room, s.roomIn(points[m], points[m+1]))
		}
		if first, last := i+1, end; last-first+1 > room {
			out = append(out, plan.NewFault("slits", "%s%s", whereCentred(window), s.pennedText(first, last, least, most, room)))
		}
		i = end
	}
	return out
}

// pennedText says where a run of holders would have to stand.
func (s *Scene) pennedText(first, last, least, most, room int) string {
	who := fmt.Sprintf("holder %d may not cut and must be idle", first)
	if last > first {
		who = fmt.Sprintf("holders %d to %d may not cut and must be idle side by side", first, last)
	}
	where := fmt.Sprintf("behind %d to %d of the %d cuts", least, most, len(s.cuts))
	if least == most {
		where = fmt.Sprintf("behind %d of the %d cuts", least, len(s.cuts))
	}
	rest := ""
	if !s.anywhere {
		rest = " (idle holders may not rest over the web)"
	}
	return fmt.Sprintf("%s; with the holders on either side that may cut, that is %s, where there is room for at most %d%s", who, where, room, rest)
}

// whereCentred begins a reason that holds for the centred layout of one that may
// shift.
func whereCentred(window plan.Span) string {
	if window.Length() > 0 {
		return "no shift will do; with the layout centred, "
	}
	return ""
}

func able(n int) string {
	if n == 1 {
		return "1 holder there may cut"
	}
	return fmt.Sprintf("%d holders there may cut", n)
}
