package session

import (
	"slices"
	"time"

	"bide/plan"
	"bide/plan/changeover"
	"bide/plan/session/journal"
	"bide/plan/session/planning"
)

// Steps are the moves of one changeover: those that were made, as the positions have it, and
// those that the plan still asks for.
type Steps struct {
	Job    *plan.Job
	Plan   *planning.Outcome // that is followed; nil while it is worked out
	Look   int               // which of the moves ahead is looked at; 0 is the next
	actual *journal.Actual
	result *planning.Result
}

// Refused reports whether the job can't be set up from what stands.
func (s *Steps) Refused() bool { return s.Plan != nil && len(s.Plan.Faults) > 0 }

// Ahead are the moves still to be made, in the plan's order.
func (s *Steps) Ahead() (out []plan.Move) {
	if s.Plan == nil || s.Refused() {
		return nil
	}
	for _, m := range s.Plan.Step.Changeover.Moves {
		if s.actual.Positions.At[m.Holder-1] != m.To {
			out = append(out, m)
		}
	}
	return out
}

// Made are the moves that were made of this changeover, first to last.
func (s *Steps) Made() []plan.Made {
	if was := s.actual.Positions.Begun; was != nil && was.Job == s.Job.ID {
		return was.Made
	}
	return nil
}

// Move is the one looked at; nil when none is left.
func (s *Steps) Move() *plan.Move {
	ahead := s.Ahead()
	if len(ahead) == 0 {
		return nil
	}
	return &ahead[min(s.Look, len(ahead)-1)]
}

// BlockedBy is the number of the holder that is in the way of a move; 0 without one.
func (s *Steps) BlockedBy(m *plan.Move) int {
	return changeover.Blocks(s.result.Beam, s.actual.Positions.At, *m)
}

// Frees is the number of the first holder ahead that waits for a move; 0 where none does.
func (s *Steps) Frees(m *plan.Move) int {
	for _, n := range s.Ahead() {
		if s.BlockedBy(&n) == m.Holder {
			return n.Holder
		}
	}
	return 0
}

// TimeLeft is how long the positioner takes for the moves ahead.
func (s *Steps) TimeLeft() time.Duration {
	takes, _ := s.result.Beam.PositionerTime(s.Ahead())
	return takes
}

// Swaps are the holders that are to cut the job with another blade, by number.
func (s *Steps) Swaps() []int {
	if s.Plan == nil || s.Refused() {
		return nil
	}
	return s.actual.Positions.Swaps(s.Job, &s.Plan.Step.Changeover)
}

// lookAt looks at the move of a holder, if it is still to be made.
func (s *Steps) lookAt(holder int) {
	s.Look = max(slices.IndexFunc(s.Ahead(), func(a plan.Move) bool { return a.Holder == holder }), 0)
}

// holds reports whether the plan followed still leads on: each holder is where the
// plan took it from, or where it leads it.
func (s *Steps) holds() bool {
	if s.Plan == nil || len(s.Plan.Faults) > 0 {
		return false
	}
	c := &s.Plan.Step.Changeover
	for i, x := range s.actual.Positions.At {
		if x != c.From[i] && x != c.Holders[i].At {
			return false
		}
	}
	return true
}

// setting is the changeover under way, to be changed; as it begins, where it has not.
func (s *Steps) setting() *plan.Begun {
	if was := s.actual.Positions.Begun; was != nil && was.Job == s.Job.ID {
		out := *was
		out.Made = slices.Clone(was.Made)
		if was.Found {
			s.leadsTo(&out)
		}
		return &out
	}
	out := &plan.Begun{Job: s.Job.ID, Slits: s.Job.Slits()}
	s.leadsTo(out)
	return out
}

// leadsTo puts into a changeover under way where the plan followed leads, if there is one.
func (s *Steps) leadsTo(out *plan.Begun) {
	if s.Plan == nil || len(s.Plan.Faults) > 0 {
		return
	}
	out.Slits, out.Shift, out.To, out.Found = s.Plan.Step.Layout.Slits, s.Plan.Step.Layout.Shift, nil, false
	for _, h := range s.Plan.Step.Changeover.Holders {
		out.To = append(out.To, h.At)
	}
}
