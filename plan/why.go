package plan

import (
	"fmt"
)

// Text is the reason in words, with lengths in the unit.
func (w Why) Text(u Unit) string {
	switch w.Cause {
	case GoesToCut:
		return fmt.Sprintf("goes to cut %d", w.Cut)
	case NearCut:
		if w.Distance == 0 {
			return fmt.Sprintf("stands on cut %d and isn't to cut it", w.Cut)
		}
		return fmt.Sprintf("stands %s from cut %d", u.Show(w.Distance), w.Cut)
	case OverWeb:
		if w.Distance <= 0 {
			return fmt.Sprintf("stands over the web, %s inside its edge", u.Show(-w.Distance))
		}
		return fmt.Sprintf("stands %s beside the web, nearer than the store gap", u.Show(w.Distance))
	case MakesRoom:
		return fmt.Sprintf("makes room for holder %d, which comes within %s", w.Holder, u.Show(w.Distance))
	case MakesWay:
		return fmt.Sprintf("makes way for holder %d, which goes %s past where it stood", w.Holder, u.Show(w.Distance))
	}
	switch {
	case w.Cause == AsBegun:
		return "goes where it was to stand when this changeover was begun"
	case w.Cause == AsChosen:
		return "goes where a search had it stand for later jobs"
	case w.Cut > 0:
		return fmt.Sprintf("goes ahead to where job %s has cut %d", w.Job, w.Cut)
	}
	return fmt.Sprintf("moves now, and stays until job %s has run", w.Job)
}

// Count adds a holder's stand to the changeover.
func (c *Changeover) Count(h Stand, from Length) {
	switch h.Use {
	case Resting:
		c.Resting++
	case Parked:
		c.Parked++
	}
	if h.At != from {
		c.Repositions++
		c.Travel += (h.At - from).Abs()
	}
	c.Holders = append(c.Holders, h)
}
