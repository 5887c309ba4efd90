package changeover

import (
	"slices"

	"bide/plan"
)

// anchors lists the places at which an optimum can set an idle holder: whole
// pitches from whatever can hold a run of touching holders.
type anchors struct {
	shared []plan.Length // for any holder: from cuts and edges, and wanted places; ascending
	kept   []plan.Length // x(j) - j*pitch of each holder j that may stay, and of the rail's ends, ascending; add i*pitch for holder i
}

// find fills both lists for the scene.
func (a *anchors) find(s *Scene, k *staySet, o *Lookahead) {
	a.shared, a.kept = a.shared[:0], append(a.kept[:0], s.Rail.From)
	for j, x := range s.At {
		if k.may[j] {
			a.kept = append(a.kept, x-plan.Length(j)*s.pitch)
		}
	}
	a.kept = append(a.kept, s.Rail.To-plan.Length(len(s.At)-1)*s.pitch)
	for m := 0; m <= len(s.cuts); m++ {
		gap := s.Rail
		if m > 0 {
			gap.From = s.cuts[m-1] + s.pitch
		}
		if m < len(s.cuts) {
			gap.To = s.cuts[m] - s.pitch
		}
		if o == nil || !o.Rough {
			a.fill(s, gap)
		} else if m > 0 && m < len(s.cuts) {
			a.run(s, gap.From, gap)
		}
	}
	if o != nil {
		o.anchor(s, a)
	}
	slices.Sort(a.shared)
	a.shared = slices.Compact(a.shared)
}

// fill lists the places between two neighbouring cuts, or a cut and a rail end:
// whole pitches from either end and from the edges in between.
func (a *anchors) fill(s *Scene, gap plan.Span) {
	// A cut served from up to the tolerance off it gives its neighbours that much more.
	wide := plan.Span{From: max(gap.From-s.tolerance, s.Rail.From), To: min(gap.To+s.tolerance, s.Rail.To)}
	if wide.From > wide.To {
		return
	}
	edges := s.web
	if !s.anywhere {
		edges = s.idle
	}
	for _, anchor := range [4]plan.Length{gap.From, gap.To, edges.From, edges.To} {
		// A rail end holds one place for each holder: see find. An edge beyond a cut
		// holds none here.
		if anchor > s.Rail.From && anchor < s.Rail.To && anchor >= wide.From && anchor <= wide.To {
			a.run(s, anchor, wide)
		}
	}
}

// run lists every place in the stretch that is whole pitches from the anchor and
// where an idle holder may stand.
func (a *anchors) run(s *Scene, anchor plan.Length, in plan.Span) {
	for at := anchor + (in.From-anchor)/s.pitch*s.pitch - s.pitch; at <= in.To; at += s.pitch {
		if at >= in.From && s.MayIdle(at) {
			a.shared = append(a.shared, at)
		}
	}
}
