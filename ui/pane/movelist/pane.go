// Package movelist is the pane of the picked changeover's moves, in an order in which each can be made
// as it comes.
package movelist

import (
	"fmt"

	"bide/plan/words"
	"bide/ui/caution"
	"bide/ui/draw"
	"bide/ui/keys"
	"bide/ui/list"
	"bide/ui/pane"
)

// Pane lists the picked changeover's moves, in the order in which each can be
// made as it comes.
type Pane struct {
	draw.Size
	filter list.Filter
}

func (p *Pane) SetSize(s draw.Size) { p.Size = s }
func (p *Pane) Help() keys.Scope    { return keys.OnMoves }

// HandleKey picks a move, or another changeover.
func (p *Pane) HandleKey(a keys.Action, d *pane.Shared) pane.Want {
	d.PickMove(pane.PickRow(p.rows(d), d.MoveAt, a, max(p.list()-1, 1)))
	switch a {
	case keys.Left:
		d.Pick(d.JobAt - 1)
	case keys.Right:
		d.Pick(d.JobAt + 1)
	}
	return nil
}

// detail is how many lines tell about the picked move and caution.
func (p *Pane) detail() int { return max(min((p.H-2)/2, 6), 0) }

// list is how many moves are shown.
func (p *Pane) list() int { return max(p.H-2-p.detail(), 0) }

// View draws the pane.
func (p *Pane) View(d *pane.Shared, focused bool) []draw.Line {
	title := d.Line()
	moves := d.Moves()
	if o := d.Outcome(d.JobAt); o != nil && len(o.Faults) == 0 {
		title.Add(draw.Faint, p.shown(d, len(moves)))
	}
	var body []draw.Line
	if len(moves) > 0 {
		columns := draw.ColumnsFor(pane.MoveColumns(d, moves), p.W)
		body = append(body, draw.Heads(d.Theme, columns))
		rows := p.rows(d)
		l := pane.ListOf(rows, d.MoveAt, p.list())
		for _, n := range rows[l.From():l.To()] {
			body = append(body, draw.RowOf(d.Theme, columns, pane.MoveRow{Shared: d, Index: n, Move: &moves[n], Focused: focused}))
		}
	} else {
		body = append(body, pane.NoMoves(d, p.W)...)
	}
	for len(body) < p.H-1-p.detail() {
		body = append(body, d.Line())
	}
	return draw.Box(d.Theme, "Moves", title, append(body[:max(p.H-1-p.detail(), 0)], p.about(d)...), p.Size, focused)
}

// shown tells how many moves there are, to which job, and which are in the list.
func (p *Pane) shown(d *pane.Shared, n int) string {
	if f := &p.filter; f.On() {
		return f.Count(len(p.rows(d)), n) + "to " + d.Job().ID
	}
	if some := draw.Range(draw.Window(d.MoveAt, n, p.list()), p.list(), n); some != "" {
		return draw.Fitting(p.W-len("-->Moves  "), some+" to "+d.Job().ID, some)
	}
	return fmt.Sprintf("to %s: %s", d.Job().ID, inOrder(n))
}

func inOrder(n int) string {
	switch n {
	case 0:
		return "no moves"
	case 1:
		return "1 move"
	}
	return fmt.Sprintf("%d in order", n)
}

// about tells the picked move in full, in both units, and the caution below it.
func (p *Pane) about(d *pane.Shared) []draw.Line {
	n := p.detail()
	var out []draw.Line
	tell := func(i draw.Style, text string, room int) {
		for _, row := range d.Wrap(text, p.W-2) {
			if room--; room < 0 {
				return
			}
			l := d.Line()
			l.Add(draw.Plain, " ")
			l.Add(i, row)
			out = append(out, l)
		}
	}
	warn := min(len(d.Wrap(caution.InShort(p.W), p.W-2)), n)
	if moves := d.Moves(); d.MoveAt < len(moves) {
		tell(draw.Picked, pane.MoveSentence(&moves[d.MoveAt], d.Shop.Unit), n-warn)
	}
	for len(out) < n-warn {
		out = append(out, d.Line())
	}
	tell(draw.Faint, caution.InShort(p.W), warn)
	return out
}

func (p *Pane) Filtered() *list.Filter { return &p.filter }

func (p *Pane) PickShown(d *pane.Shared) { d.PickMove(pane.ShownRow(p.rows(d), d.MoveAt)) }

func (p *Pane) Hides(*pane.Shared) bool { return false } // moves are changed by nothing

// rows are the moves that the filter of the moves leaves.
func (p *Pane) rows(d *pane.Shared) []int {
	moves, u := d.Moves(), d.Shop.Unit
	return p.filter.Rows(len(moves), func(n int) []string {
		m := &moves[n]
		return []string{fmt.Sprintf("%d h%d", m.Holder, m.Holder), u.Number(m.From), u.Number(m.To), words.Towards(m.To - m.From), m.Why.Text(u)}
	})
}

// Click picks the move of a row.
func (p *Pane) Click(d *pane.Shared, _, y int) {
	rows := p.rows(d)
	l := pane.ListOf(rows, d.MoveAt, p.list())
	if row := l.From() + y - 2; row >= l.From() && row < l.To() {
		d.PickMove(rows[row])
	}
}
