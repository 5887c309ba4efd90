package plan

import (
	"fmt"
)

// Text is the reason in words, with lengths in the unit.
func (w Why) Text(u Unit) string {
	switch w.Cause {
	case ToCut:
		return fmt.Sprintf("to cut %d", w.Cut)
	case NearCut:
		if w.Distance == 0 {
			return fmt.Sprintf("on cut %d, which another holder cuts", w.Cut)
		}
		return fmt.Sprintf("too close to cut %d (%s; minimum %s)", w.Cut, u.Show(w.Distance), u.Number(w.Least))
	case OverWeb:
		if w.Distance <= 0 {
			return fmt.Sprintf("over the web, %s inside its edge", u.Show(-w.Distance))
		}
		return fmt.Sprintf("too close to the web (%s; minimum %s)", u.Show(w.Distance), u.Number(w.Least))
	case MakesRoom:
		return fmt.Sprintf("makes room for holder %d, which comes within %s", w.Holder, u.Show(w.Distance))
	case MakesWay:
		return fmt.Sprintf("makes way for holder %d, which moves %s past its position", w.Holder, u.Show(w.Distance))
	}
	switch {
	case w.Cause == AsBegun:
		return "to its target as this changeover began"
	case w.Cause == AsChosen:
		return "to its position for later jobs, from the search"
	case w.Cut > 0:
		return fmt.Sprintf("ahead to cut %d of job %s", w.Cut, w.Job)
	}
	return fmt.Sprintf("now, to stay until job %s has run", w.Job)
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
