package record

import (
	"time"

	"bide/plan"
	"bide/plan/shop/toml"
)

// Wear is what a record says of one holder.
type Wear struct {
	Moves     int         // in all
	Recent    int         // since the time asked for
	Travel    plan.Length // of all moves
	Corrected int         // times that its position was corrected
	Jams      int         // times that it was marked stuck
	Faults    int         // times that it was marked no cut or out
	Last      time.Time   // its last move; zero without one
}

// Summary is what a record says of a beam.
type Summary struct {
	Holders []Wear // by number; Holders[0] is holder 1
	since   time.Time
}

// NewSummary is a summary without events, of a beam with that many holders. Moves
// at or after since count as recent; a shift's start or midnight will do.
func NewSummary(holders int, since time.Time) *Summary {
	return &Summary{make([]Wear, holders), toml.Local(since)}
}

// Add counts an event. Those of holders that the beam doesn't have, and of kinds
// that say nothing of wear, are left out.
func (s *Summary) Add(e Event) {
	if e.Holder < 1 || e.Holder > len(s.Holders) {
		return
	}
	w, by := &s.Holders[e.Holder-1], 1
	if e.Back {
		by = -1
	}
	count := func(n *int) { *n = max(*n+by, 0) }
	switch e.Kind {
	case Moved:
		count(&w.Moves)
		w.Travel = max(w.Travel+plan.Length(by)*max(e.To-e.From, e.From-e.To), 0)
		if !e.Back {
			w.Last = e.Time
		}
		if !e.Time.Before(s.since) {
			count(&w.Recent)
		}
	case Corrected:
		count(&w.Corrected)
	case Condition:
		switch e.Condition {
		case plan.Stuck:
			count(&w.Jams)
		case plan.NoCut, plan.Out:
			count(&w.Faults)
		}
	}
}
