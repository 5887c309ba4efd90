package setup

import (
	"fmt"
	"slices"
	"strings"

	"bide/plan"
	"bide/plan/session"
	"bide/plan/words"
	"bide/ui/draw"
	"bide/ui/pane"
)

// step shows one move: its holder and new position in large figures, the same in full
// and in both units, why it moves and what it waits for, the picture of the beam
// around it, and what comes then.
func (w *Page) step(d *pane.Shared, s draw.Size) []draw.Line {
	move := w.Move()
	if s.H <= 1 {
		return []draw.Line{pane.MoveInShort(d, move, s.W)}
	}
	out := figures(w, d, move, s)
	if len(out) == 0 || s.W < 36 {
		out = pane.MoveInFull(d, move, s.W)
		if text := WaitsFor(w.Guide, move); text != "" {
			out = append(out[:min(2, len(out))], append(texts(d, s.W+2, draw.Span{Style: draw.Late, Text: text}), out[min(2, len(out)):]...)...)
		} else if text := swap(w, d, move, s.W-1); text != "" {
			out = slices.Insert(out, min(2, len(out)), texts(d, s.W+2, draw.Span{Style: draw.Strong, Text: text})...)
		}
		return out
	}
	out = append(out, facts(d, move, s.W)...)
	waits, swap, why := WaitsFor(w.Guide, move), swap(w, d, move, s.W-2), draw.Span{Style: draw.Plain, Text: whyOf(move, d.Shop.Unit)}
	for _, t := range []draw.Span{{Style: draw.Late, Text: waits}, {Style: draw.Strong, Text: swap}, why} { // what matters most first
		if t.Text != "" {
			out = append(out, texts(d, s.W, t)...)
		}
	}
	if text := Frees(w.Guide, move); waits == "" && text != "" {
		out = append(out, texts(d, s.W, draw.Span{Style: draw.Faint, Text: text})...)
	}
	if rest := s.H - len(out); rest >= 7 {
		then := w.then(d, s.W, max(1, rest/4))
		out = append(out, picture(w, d, move, draw.Size{W: s.W, H: rest - len(then)})...)
		return append(out, then...)
	}
	return append(out, w.then(d, s.W, max(s.H-len(out), 0))...)
}

// whyOf tells why a holder moves, or where to.
func whyOf(m *plan.Move, u plan.Unit) string {
	if m.Why.Cause == plan.ToCut {
		return fmt.Sprintf("Holder %d moves %s", m.Holder, m.Why.Text(u))
	}
	return "Why: " + m.Why.Text(u)
}

// figures are the holder's number and its new position, as large as there is room for;
// none where there is too little.
func figures(w *Page, d *pane.Shared, m *plan.Move, s draw.Size) (out []draw.Line) {
	arrow := ">"
	if m.To < m.From {
		arrow = "<"
	}
	parts := []draw.Span{{Style: draw.Picked, Text: fmt.Sprint(m.Holder)}, {Style: draw.Moved, Text: arrow}, {Style: draw.Picked, Text: d.Shop.Unit.Number(m.To)}}
	whole := parts[0].Text + " " + arrow + " " + parts[2].Text
	high := max(s.H*2/5, 0)
	if s.H >= 9 {
		high = max(high, draw.FaceRows)
	}
	g, fits := draw.Magnify(whole, draw.Size{W: s.W - 3, H: high})
	if !fits {
		return nil
	}
	if s.H >= 14 {
		l := d.Line()
		l.Add(draw.Faint, " holder")
		l.To(1 + g.Wide(parts[0].Text+" "+arrow+" ") + g.Across)
		l.Add(draw.Faint, "to, "+d.Shop.Unit.String())
		if look := w.Look; look > 0 {
			l.Add(draw.Late, fmt.Sprintf("   looking ahead: %s after the next", words.Count(look, "move")))
		}
		out = append(out, l)
	}
	rows := make([]draw.Line, g.High())
	for y := range rows {
		rows[y] = d.Line()
		rows[y].Add(draw.Plain, " ")
	}
	gap := g.Wide(" ") + 2*g.Across
	for i, p := range parts {
		for y, text := range g.Rows(p.Text, d.Block) {
			if i > 0 {
				rows[y].Add(draw.Plain, draw.Blanks(gap))
			}
			rows[y].Add(p.Style, text)
		}
	}
	out = append(out, rows...)
	if s.H >= 18 {
		out = append(out, d.Line())
	}
	return out
}

// facts are from, to and by in both units, and the side that the way leads to: where
// there is no room for both, in the shop's unit and with the side.
func facts(d *pane.Shared, m *plan.Move, width int) (out []draw.Line) {
	u, o := d.Shop.Unit, words.Other(d.Shop.Unit)
	way := m.To - m.From
	ours, theirs := words.ExactRuler(u, m.From, m.To, way), words.ExactRuler(o, m.From, m.To, way)
	row := func(label string, i draw.Style, a, b, more string) (short, whole draw.Line) {
		l := d.Line()
		l.Left(draw.Faint, " "+label, 7)
		l.Right(i, a, 11)
		l.Add(draw.Faint, " "+u.String())
		short, whole = d.Line(), d.Line()
		short.Join(l)
		whole.Join(l)
		whole.Right(draw.Plain, b, 12)
		whole.Add(draw.Faint, " "+o.String())
		if more != "" {
			short.Add(i, "   "+more)
			whole.Add(i, "   "+more)
		}
		return short, whole
	}
	_, from := row("from", draw.Plain, ours.Number(m.From), theirs.Number(m.From), "")
	_, to := row("to", draw.Picked, ours.Number(m.To), theirs.Number(m.To), fraction(m.To))
	if to.Width > width {
		_, to = row("to", draw.Picked, ours.Number(m.To), theirs.Number(m.To), "")
	}
	side := strings.ToUpper(words.Towards(way))
	_, by := row("by", draw.Moved, ours.Signed(way), theirs.Signed(way), "to the "+side)
	if by.Width > width {
		by, _ = row("by", draw.Moved, ours.Signed(way), theirs.Signed(way), side)
	}
	return []draw.Line{from, to, by}
}

// fraction is a position as a rule in inches shows it, where it does.
func fraction(at plan.Length) string {
	if text, ok := at.Fraction(); ok && strings.Contains(text, "/") {
		return text + " in"
	}
	return ""
}

// WaitsFor tells which holder is in the way of a move.
func WaitsFor(g *session.Guide, m *plan.Move) string {
	if n := g.BlockedBy(m); n != 0 {
		return fmt.Sprintf("! waits for holder %d, which is in its way", n)
	}
	return ""
}

// Frees tells which holder waits for a move.
func Frees(g *session.Guide, m *plan.Move) string {
	if n := g.Frees(m); n != 0 {
		return fmt.Sprintf("Path clear. Holder %d moves after this one.", n)
	}
	return "Path clear."
}

// then lists what comes after the move looked at, in n lines.
func (w *Page) then(d *pane.Shared, width, n int) (out []draw.Line) {
	ahead := w.Ahead()
	u := d.Shop.Unit
	for k := min(w.Look, len(ahead)-1) + 1; k < len(ahead) && len(out) < n; k++ {
		m := &ahead[k]
		l := d.Line()
		l.Left(draw.Faint, map[bool]string{true: " then"}[len(out) == 0], 6)
		l.Right(draw.Strong, fmt.Sprint(m.Holder), 4)
		l.Right(draw.Plain, u.Number(m.From), 10)
		l.Add(draw.Faint, " "+d.To)
		l.Right(draw.Plain, u.Number(m.To), 10)
		l.Add(draw.Faint, " "+u.String())
		l.Add(draw.Faint, "  "+d.Short(m.Why.Text(u), max(width-l.Width-3, 0)))
		out = append(out, l)
	}
	if len(out) == 0 && n > 0 {
		l := d.Line()
		l.Add(draw.Faint, " this is the last move")
		out = append(out, l)
	}
	return out
}

// picture is the beam around a move: where holders are now above,
// where they will be below.
func picture(w *Page, d *pane.Shared, m *plan.Move, s draw.Size) []draw.Line {
	c := w.Plan.Step.Changeover
	c.From = d.Actual.Positions.At
	sc := draw.NewScale(around(d, m), s.W, d.Shop.Unit)
	pic := draw.NewPicture(d.Theme, s.W, max(s.H-3, 0))
	fine := sc
	fine.Cols *= pic.Across()
	pic.Draw(draw.Threads(&c, m.Holder, fine.Column))
	out := []draw.Line{pane.ScaleNumbers(d.Theme, sc, d.Shop.Unit), named(d, m, sc)}
	for y := range max(s.H-3, 0) {
		out = append(out, pic.Line(y))
	}
	return append(out, pane.WebRow(d.Theme, sc, &w.Plan.Step.Layout))
}

// around is what of the beam is shown around a move: its way, and neighbours on both
// sides.
func around(d *pane.Shared, m *plan.Move) plan.Span {
	b, all := d.Shop.Beam, pane.BeamSpan(d.Shop.Beam)
	side := 6 * b.Pitch()
	from, to := min(m.From, m.To)-side, max(m.From, m.To)+side
	if least := 20 * b.Pitch(); to-from < least {
		mid := (from + to) / 2
		from, to = mid-least/2, mid+least/2
	}
	return plan.Span{From: max(from, all.From), To: min(to, all.To)}
}

// named names the moved holder at its position, then its neighbours as there is room.
func named(d *pane.Shared, m *plan.Move, s draw.Scale) draw.Line {
	l := pane.NewLabels(s.Width)
	at := d.Actual.Positions.At
	l.Put(s.Column(at[m.Holder-1]), draw.Picked, d.Aim+fmt.Sprint(m.Holder))
	for far := 1; far < len(at); far++ {
		for _, n := range []int{m.Holder - far, m.Holder + far} {
			if n >= 1 && n <= len(at) {
				c := d.Beam.Holders[n-1]
				l.Put(s.Column(at[n-1]), map[bool]draw.Style{true: draw.Faint, false: draw.Late}[c == plan.Good], fmt.Sprint(n)+pane.ConditionLetters[c])
			}
		}
	}
	return draw.FromCells(d.Theme, l)
}
