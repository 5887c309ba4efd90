package session

import (
	"fmt"
	"maps"
	"slices"

	"bide/plan"
	"bide/plan/session/draft"
	"bide/plan/session/journal"
	"bide/plan/shop"
	"bide/plan/shop/record"
	"bide/plan/words"
)

// Report is something recorded at the beam in a guided setup, so that it can be undone: what was
// true before and after it, what of it is in the record, and which jobs came into other
// states by it.
type Report struct {
	job     string // id of the setup's
	what    string // it, in few words
	was, is journal.Actual
	events  []record.Event
	were    draft.States // of the jobs that came into other states, those before
	ran     bool         // it is that the job runs, which ended the setup
	goOn    func()       // what to do when it was taken back
}

// before is what is true without what was recorded: of what has changed since, that
// changes nothing. wrong is why it can't be taken out any more.
func (r *Report) before(now journal.Actual) (out journal.Actual, wrong string) {
	stands := *r.was.Positions
	stands.At, stands.Assumed = slices.Clone(now.Positions.At), false
	for i, is := range r.is.Positions.At {
		switch was := r.was.Positions.At[i]; {
		case was == is:
		case now.Positions.At[i] != is:
			wrong = fmt.Sprintf("holder %d has moved since", i+1)
		default:
			stands.At[i] = was
		}
	}
	marks := maps.Clone(now.Marks)
	for _, n := range slices.Concat(slices.Collect(maps.Keys(r.was.Marks)), slices.Collect(maps.Keys(r.is.Marks))) {
		was, before := r.was.Marks[n]
		is, after := r.is.Marks[n]
		switch {
		case was == is && before == after:
		case now.Marks[n] != is:
			wrong = fmt.Sprintf("the condition of holder %d has changed since", n)
		case before:
			if marks == nil {
				marks = shop.Marks{}
			}
			marks[n] = was
		default:
			delete(marks, n)
		}
	}
	return journal.Actual{Positions: &stands, Marks: marks}, wrong
}

// asBefore says where holders are and in which condition again, what was recorded of them
// undone.
func (r *Report) asBefore(b *plan.Beam, u plan.Unit) string {
	var parts []string
	for _, e := range r.events {
		switch e.Kind {
		case record.Moved, record.Corrected:
			parts = append(parts, fmt.Sprintf("%d is at %s again", e.Holder, u.Show(e.From)))
		case record.Condition:
			parts = append(parts, fmt.Sprintf("%d is %s again", e.Holder, b.Holders[e.Holder-1]))
		}
	}
	return words.Join(", ", parts...)
}

// briefly says in few words what is so again.
func (r *Report) briefly(b *plan.Beam) string {
	if len(r.events) == 0 {
		return "undone"
	}
	found := 0
	for _, e := range r.events {
		if e.Kind == record.Corrected {
			found++
		}
	}
	switch e := r.events[len(r.events)-1]; {
	case e.Kind == record.Moved:
		return fmt.Sprintf("%d undone", e.Holder)
	case e.Kind == record.Condition:
		return fmt.Sprintf("%d is %s again", e.Holder, b.Holders[e.Holder-1])
	case found > 1:
		return fmt.Sprintf("%d as before", found)
	case found == 1:
		return fmt.Sprintf("%d as before", e.Holder)
	case e.Job != "":
		return e.Job + " waits again"
	}
	return "undone"
}

// outcomes say what became of other jobs.
func outcomes(became draft.States, but string) string {
	var parts []string
	for _, id := range slices.Sorted(maps.Keys(became)) {
		if id != but {
			parts = append(parts, id+" is "+map[plan.State]string{plan.Done: "done", plan.OnHold: "on hold", plan.Running: "running", plan.Waiting: "waiting again"}[became[id].State])
		}
	}
	return words.Join(", ", parts...)
}
