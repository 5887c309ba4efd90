package changeover

import (
	"slices"

	"bide/plan"
)

// Scene is one changeover to be planned: who stands where, and the cuts wanted.
// A scene can be mirrored, so it keeps all that depends on the side.
type Scene struct {
	pitch       plan.Length
	tolerance   plan.Length
	Rail        plan.Span
	web         plan.Span // the job's web
	idle        plan.Span // idle holders stand at or outside its ends; see anywhere
	anywhere    bool      // idle holders may stand over the web too
	At          []plan.Length
	condition   []plan.Condition
	cuts        []plan.Length
	stays       []stay
	plain       bool       // all holders good, exact places: count.go does
	Impossible  bool       // cuts too near, off the rail or in a damaged band, or an unmovable holder in the way
	bad         plan.Spans // damaged bands
	goodsBefore []int
}

// stay is the one way in which a holder can end where it stands. The number of
// cuts to its operator side is before; after differs by one when it serves a cut.
type stay struct {
	can           bool
	before, after int
}

// never marks what can't be among numbers of holders that stay that are compared and added to.
const never = -1 << 30

// set makes the scene the changeover from the holders' positions to cuts on a web of the beam.
func (s *Scene) set(b *plan.Beam, now []plan.Length, web plan.Span, cuts []plan.Length) {
	gap := max(b.ParkClearance, plan.Nanometre) // the edge of the web is not outside
	s.pitch, s.tolerance, s.Rail, s.web, s.anywhere = b.Pitch(), b.PositionTolerance, b.Rail, web, b.RestOverWeb
	s.idle = plan.Span{From: web.From - gap, To: web.To + gap}
	s.bad = b.Bad
	s.At = append(s.At[:0], now...)
	s.condition = append(s.condition[:0], b.Holders...)
	s.cuts = append(s.cuts[:0], cuts...)
	s.look()
}

// look works out what follows from places and cuts: the ways to stay and whether
// anything rules the layout out at once.
func (s *Scene) look() {
	s.plain = s.tolerance == 0 && (s.anywhere || len(s.cuts) > 0)
	s.Impossible = len(s.cuts) > 0 && (s.cuts[0] < s.Rail.From || s.cuts[len(s.cuts)-1] > s.Rail.To)
	s.Impossible = s.Impossible || !s.bad.Miss(s.cuts, 0)
	for m := 1; m < len(s.cuts); m++ {
		s.Impossible = s.Impossible || s.cuts[m]-s.cuts[m-1] < s.pitch
	}
	s.stays, s.goodsBefore = s.stays[:0], append(s.goodsBefore[:0], 0)
	for i, c := range s.condition {
		s.plain = s.plain && c == plan.Good
		s.goodsBefore = append(s.goodsBefore, s.goodsBefore[i])
		if c.Cuts() {
			s.goodsBefore[i+1]++
		}
	}
	goods := s.goodsBefore[len(s.condition)]
	s.Impossible = s.Impossible || goods < len(s.cuts)
	before := 0 // cuts wholly to the operator side of the holder
	for i, x := range s.At {
		for before < len(s.cuts) && s.cuts[before] < x-s.tolerance {
			before++
		}
		c := s.condition[i]
		st := s.stayOf(x, c, before)
		// Holders on either side must be enough for the cuts there.
		st.can = st.can && st.before <= s.goodsBefore[i] && len(s.cuts)-st.after <= goods-s.goodsBefore[i+1]
		if !c.Moves() && !(st.can && s.clear(x, st)) {
			s.Impossible = true
		}
		s.stays = append(s.stays, st)
	}
}

// stayOf is how a holder at x could stay, with that many cuts before it. A holder
// near to a cut, within the tolerance, can only stay to serve it: that is below half the
// pitch, so whoever else served that cut would be nearer than a pitch. It can't on a
// damaged band.
func (s *Scene) stayOf(x plan.Length, c plan.Condition, before int) stay {
	if before < len(s.cuts) && s.cuts[before]-x <= s.tolerance {
		return stay{c.Cuts() && !s.bad.Hold(x), before, before + 1}
	}
	// Whoever serves a cut may itself stand up to the tolerance off it.
	can := s.MayIdle(x) &&
		(before == 0 || x-s.cuts[before-1] >= s.pitch-s.tolerance) &&
		(before == len(s.cuts) || s.cuts[before]-x >= s.pitch-s.tolerance)
	return stay{can, before, before}
}

// clear reports whether a holder that can't move leaves every cut that it doesn't
// serve a whole pitch.
func (s *Scene) clear(x plan.Length, st stay) bool {
	return (st.before == 0 || x-s.cuts[st.before-1] >= s.pitch) &&
		(st.after == len(s.cuts) || s.cuts[st.after]-x >= s.pitch)
}

// MayIdle reports whether an idle holder may stand at x, neighbours apart.
func (s *Scene) MayIdle(x plan.Length) bool {
	return s.anywhere || x <= s.idle.From || x >= s.idle.To
}

// over reports whether x is over the web, edges included.
func (s *Scene) over(x plan.Length) bool { return x >= s.web.From && x <= s.web.To }

// mirrorTo sets m to the scene seen from the drive side: places negated, order
// turned round.
func (s *Scene) mirrorTo(m *Scene) {
	turn := func(sp plan.Span) plan.Span { return plan.Span{From: -sp.To, To: -sp.From} }
	m.pitch, m.tolerance, m.anywhere = s.pitch, s.tolerance, s.anywhere
	m.Rail, m.web, m.idle = turn(s.Rail), turn(s.web), turn(s.idle)
	m.bad = m.bad[:0]
	for _, band := range slices.Backward(s.bad) {
		m.bad = append(m.bad, turn(band))
	}
	m.At, m.condition, m.cuts = m.At[:0], m.condition[:0], m.cuts[:0]
	for i := len(s.At) - 1; i >= 0; i-- {
		m.At = append(m.At, -s.At[i])
		m.condition = append(m.condition, s.condition[i])
	}
	for i := len(s.cuts) - 1; i >= 0; i-- {
		m.cuts = append(m.cuts, -s.cuts[i])
	}
	m.look()
}

// roomIn is how many idle holders can stand between a cut or stay and the next one,
// each a pitch from both.
func (s *Scene) roomIn(from, to plan.Length) int {
	if s.anywhere {
		return int((to-from+2*s.tolerance)/s.pitch) - 1
	}
	room := 0
	from, to = from+s.pitch-s.tolerance, to-s.pitch+s.tolerance
	if last := min(to, s.idle.From); last >= from {
		room = int((last-from)/s.pitch) + 1
	}
	if first := max(from, s.idle.To); first <= to {
		room += int((to-first)/s.pitch) + 1
	}
	return room
}

// mostStays is a bound on the stays that the scene allows, -1 if it is impossible:
// no more than can stay each on its own, and a cut that no holder stands at takes
// a move.
func (s *Scene) mostStays() int {
	if s.Impossible {
		return -1
	}
	can, served := 0, 0
	for _, st := range s.stays {
		if st.can {
			can++
			served += st.after - st.before
		}
	}
	return min(can, len(s.At)-len(s.cuts)+served)
}
