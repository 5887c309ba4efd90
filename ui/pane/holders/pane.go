// Package holders is the page of the holders, for those who maintain them: where each is, what it does
// in the day, which are idle, and the changeovers by the moves that they take.
package holders

import (
	"fmt"
	"slices"

	"bide/plan/words"
	"bide/ui/draw"
	"bide/ui/keys"
	"bide/ui/list"
	"bide/ui/pane"
)

// Pane lists the holders, where each is and what it does in each job of
// the day; and in a second view the changeovers by the moves they take.
type Pane struct {
	draw.Size
	by      order
	turned  bool // the order turned round
	filter  list.Filter
	pairs   bool // the second view
	marking int  // number of the holder whose condition is asked for; 0 none
}

func (p *Pane) SetSize(s draw.Size) { p.Size = s }

// Help is where the pane's keys work.
func (p *Pane) Help() keys.Scope {
	if p.marking > 0 {
		return keys.OnMark
	}
	return keys.OnHolders
}

// HandleKey picks a holder or, among the changeovers, a job.
func (p *Pane) HandleKey(a keys.Action, d *pane.Shared) pane.Want {
	switch a {
	case keys.Left:
		d.Pick(d.JobAt - 1)
	case keys.Right:
		d.Pick(d.JobAt + 1)
	case keys.Sort:
		p.by = (p.by + 1) % orders
	case keys.Reverse:
		p.turned = !p.turned
	case keys.Pairs:
		p.pairs = !p.pairs
	case keys.Marking:
		p.marking = Picked(d)
	case keys.MarkGood, keys.MarkNoCut, keys.MarkStuck, keys.MarkOut, keys.MarkFiled, keys.MarkDrop:
		return p.answer(a, d)
	default:
		p.scroll(a, d)
	}
	return nil
}

// scroll picks another row.
func (p *Pane) scroll(a keys.Action, d *pane.Shared) {
	rows, at := p.picks(d)
	switch {
	case len(rows) == 0 || !list.Steps(a):
	case at < 0: // the picked one is filtered out
		p.choose(d, rows[0])
	default:
		p.choose(d, rows[list.List{At: at, Rows: len(rows), Shown: max(p.list(d)-1, 1)}.Step(a)])
	}
}

// choose picks what a row stands for.
func (p *Pane) choose(d *pane.Shared, row int) {
	if p.pairs {
		d.Pick(row)
		return
	}
	followHolder(d, row)
}

// picks are what the rows stand for, holders or jobs, and which row is picked; -1
// when none is.
func (p *Pane) picks(d *pane.Shared) (rows []int, at int) {
	if p.pairs {
		use := d.Use()
		for _, pair := range p.pairRows(d) {
			rows = append(rows, use.Turns[pair.Step])
		}
		return rows, slices.Index(rows, d.JobAt)
	}
	for _, r := range p.rows(d, false) {
		rows = append(rows, r.number)
	}
	return rows, slices.Index(rows, Picked(d))
}

// Picked is the picked holder; before one is picked, that of the picked move.
func Picked(d *pane.Shared) int {
	number := d.Holder
	if number == 0 {
		number = max(d.AimedHolder(), 1)
	}
	return min(number, len(d.Beam.Holders))
}

// followHolder picks a holder, and its move where the changeover has one.
func followHolder(d *pane.Shared, number int) {
	d.Holder = number
	for n, m := range d.Moves() {
		if m.Holder == number {
			d.MoveAt = n
		}
	}
}

// detail is how many lines tell about what is picked: at 80x24 all there is.
func (p *Pane) detail() int { return max(min((p.H-2)*2/5, 7), 0) }

// list is how many rows are shown.
func (p *Pane) list(*pane.Shared) int { return max(p.H-2-p.detail(), 0) }

// View draws the pane.
func (p *Pane) View(d *pane.Shared, focused bool) []draw.Line {
	rows, at := p.picks(d)
	n := p.list(d)
	from := draw.Window(max(at, 0), len(rows), n)
	var body []draw.Line
	if p.pairs {
		body = p.pairLines(d, from, n, focused)
	} else {
		body = p.holderLines(d, from, n, focused)
	}
	for len(body) < p.H-1-p.detail() {
		body = append(body, d.Line())
	}
	body = append(body[:max(p.H-1-p.detail(), 0)], p.about(d)...)
	return draw.Box(d.Theme, "Holders", p.title(d, from, n, len(rows)), body, p.Size, focused)
}

// title tells which rows are shown, in which order, seen from which job.
func (p *Pane) title(d *pane.Shared, from, n, rows int) draw.Line {
	l := d.Line()
	of := len(d.Beam.Holders)
	if p.pairs {
		of = len(d.Use().Pairs)
	}
	switch part := draw.Range(from, n, rows); {
	case p.filter.On():
		l.Add(draw.Picked, p.filter.Count(rows, of))
	case part != "":
		l.Add(draw.Faint, part+" ")
	case p.pairs:
		l.Add(draw.Faint, words.Count(rows, "changeover")+" ")
	default:
		l.Add(draw.Faint, words.Count(rows, "holder")+" ")
	}
	by := "by " + orderWords[p.by]
	if p.turned {
		by += ", reversed"
	}
	if p.pairs {
		by = "by moves"
	}
	l.Add(draw.Faint, by)
	if j := d.Job(); j != nil {
		l.Add(draw.Faint, ", in ")
		l.Add(draw.Strong, j.ID)
	}
	if n := len(d.NeverCut()); n > 0 && !p.pairs {
		l.Add(draw.Faint, fmt.Sprintf(", %d never used", n))
	}
	return l
}

// about tells about what is picked, in the pane's last lines.
func (p *Pane) about(d *pane.Shared) []draw.Line {
	n := p.detail()
	var spans []draw.Span
	switch {
	case p.marking > 0:
		spans = []draw.Span{{Style: draw.Picked, Text: fmt.Sprintf("Holder %d is %s. New condition: g good; n no cut: it moves but may not cut; s stuck: it can't move but may cut where it is; o out: neither; b as in beam.toml. Esc: no change.",
			p.marking, d.Beam.Holders[p.marking-1])}}
	case p.pairs:
		spans = aboutPair(d)
	case n < 3:
		spans = AboutHolder(d, Picked(d))
	default: // the legend is shown however much there is about the holder
		lines := draw.Paragraphs(d.Theme, AboutHolder(d, Picked(d)), draw.Size{W: p.W, H: n - 1})
		return append(lines, draw.Paragraphs(d.Theme, []draw.Span{{Style: draw.Faint, Text: stripLegend}}, draw.Size{W: p.W, H: 1})...)
	}
	return draw.Paragraphs(d.Theme, spans, draw.Size{W: p.W, H: n})
}

func (p *Pane) Filtered() *list.Filter { return &p.filter }

func (p *Pane) PickShown(d *pane.Shared) {
	if rows, at := p.picks(d); at < 0 && len(rows) > 0 {
		p.choose(d, rows[0])
	}
}

func (p *Pane) Hides(d *pane.Shared) bool { _, at := p.picks(d); return at < 0 }

// Click picks the row, a holder or a changeover.
func (p *Pane) Click(d *pane.Shared, _, y int) {
	rows, at := p.picks(d)
	n := p.list(d)
	from, row := draw.Window(max(at, 0), len(rows), n), y-2
	if row < 0 || row >= n || from+row >= len(rows) {
		return
	}
	p.choose(d, rows[from+row])
}
