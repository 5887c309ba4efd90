// Package changeover plans one changeover on a beam, exactly: the fewest repositions, then
// the fewest parked holders, then the least travel, then the smallest places by number;
// over a free shift too. It says in which order the moves can be made and why each is
// needed, or, with the numbers, why a layout can't be set. What it promises holds for any
// beam and any condition of its holders; only for slits in any order is the layout asked
// for from outside (package sequence searches those).
//
// A Planner sets up a Scene, counts who can stay (stays.go; count.go and packing.go), slides
// the layout where it may (shift.go), and breaks ties over all places that matter
// (places.go, with those of anchors.go and the gains at later jobs of lookahead.go).
package changeover

import (
	"errors"
	"fmt"
	"math"

	"bide/plan"
)

// Planner plans changeovers on one beam. It keeps its working memory between
// calls, so that planning in the steady state allocates next to nothing; one
// goroutine may use it at a time.
type Planner struct {
	Beam  *plan.Beam
	Pitch plan.Length

	Scene  Scene // the changeover being planned
	Stays  staySet
	Places Places
	shifts shifts
}

// NewPlanner makes a planner for the beam. It fails when no changeover at all can
// be planned: no holders, more than the limits, a rail too short for the holders.
func NewPlanner(b *plan.Beam) (*Planner, error) {
	n, pitch := len(b.Holders), b.Pitch()
	switch {
	case n == 0:
		return nil, errors.New("the beam has no holders")
	case n > plan.MaxHolders:
		return nil, fmt.Errorf("%d holders are more than the %d that are planned", n, plan.MaxHolders)
	case pitch <= 0 || b.HolderWidth <= 0 || b.Clearance < 0:
		return nil, errors.New("holder width must be above 0 and clearance not below it")
	case b.Rail.Length() < 0 || b.Rail.Length() > plan.MaxRail:
		return nil, fmt.Errorf("the rail must be between 0 and %d mm long", plan.MaxRail/plan.Millimetre)
	case max(b.Rail.From.Abs(), b.Rail.To.Abs(), b.Web.From.Abs(), b.Web.To.Abs()) > math.MaxInt64/1024:
		return nil, errors.New("positions on the beam are too large to be planned")
	case b.PositionTolerance < 0 || 2*b.PositionTolerance >= pitch:
		return nil, errors.New("position_tolerance must be 0 or more and below half the pitch")
	case b.Rail.Length() < plan.Length(n-1)*pitch:
		return nil, fmt.Errorf("%d holders at a pitch of %d nm don't fit on a rail of %d nm", n, pitch, b.Rail.Length())
	case !ascend(b.Bad):
		return nil, errors.New("damaged bands must ascend and lie apart")
	case b.ParkClearance < 0:
		return nil, errors.New("park_clearance must not be below 0")
	}
	return &Planner{Beam: b, Pitch: pitch}, nil
}

// ascend reports whether bands ascend and lie apart.
func ascend(bands []plan.Span) bool {
	for i, s := range bands {
		if s.From > s.To || i > 0 && s.From <= bands[i-1].To {
			return false
		}
	}
	return true
}

// Set makes p.Scene the changeover from the holders' positions to cuts on a web.
func (p *Planner) Set(now []plan.Length, web plan.Span, cuts []plan.Length) {
	p.Scene.set(p.Beam, now, web, cuts)
}

// Count is the fewest holders that must move from the holders' positions to the layout,
// exactly; ok is false when the layout can't be set at all. With all holders good
// and position_tolerance 0 it takes O(H^2) for H holders; otherwise see packing.
func (p *Planner) Count(now []plan.Length, l plan.Layout) (repositions int, ok bool) {
	p.Set(now, l.Web, l.Cuts)
	stays, ok := p.Stays.count(&p.Scene)
	return len(now) - stays, ok
}
