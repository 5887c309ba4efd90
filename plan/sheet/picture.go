package sheet

import (
	"bytes"
	"fmt"

	"bide/plan"
)

// picture draws the beam before and after, to orient; the numbered moves are what
// counts. A column that several holders share shows one that cuts before an idle
// one.
func (t *text) picture(s *plan.Step) {
	rail, u := t.plan.Beam.Rail, t.options.Unit
	c := &s.Changeover
	was, now, web := newStrip(rail), newStrip(rail), newStrip(rail)
	for _, x := range c.From {
		was.mark(x, '\'')
	}
	for _, idle := range []bool{true, false} {
		for _, h := range c.Holders {
			switch {
			case idle && h.Use != plan.Cutting:
				now.mark(h.At, '.')
			case !idle && h.Use == plan.Cutting:
				now.mark(h.At, '|')
			}
		}
	}
	web.fill(s.Layout.Web, '-')
	t.para(
		apart("oper. "+u.Show(rail.From), u.Show(rail.To)+" drive"),
		fmt.Sprintf("was  %s", was.marks),
		fmt.Sprintf("then %s", now.marks),
		fmt.Sprintf("web  %s", web.marks),
		"     ' a holder    | cutting    . idle",
	)
}

// strip is one line along the rail.
type strip struct {
	rail  plan.Span
	marks []byte
}

func newStrip(rail plan.Span) strip {
	return strip{rail, bytes.Repeat([]byte{' '}, width-5)}
}

// column is where a place on the rail comes to on the line; places off the rail
// come to its ends.
func (s strip) column(x plan.Length) int {
	if s.rail.Length() <= 0 {
		return 0
	}
	last := len(s.marks) - 1
	at := int(int64(x-s.rail.From) * int64(last) / int64(s.rail.Length()))
	return max(0, min(at, last))
}

// place is where a column lies on the rail.
func (s strip) place(column int) plan.Length {
	return s.rail.From + s.rail.Length()*plan.Length(column)/plan.Length(max(len(s.marks)-1, 1))
}

func (s strip) mark(x plan.Length, with byte) { s.marks[s.column(x)] = with }

// over marks a stretch, at least the column that it lies in.
func (s strip) over(stretch plan.Span, with byte) {
	for i := s.column(stretch.From); i <= s.column(stretch.To); i++ {
		s.marks[i] = with
	}
}

func (s strip) fill(stretch plan.Span, with byte) {
	s.over(stretch, with)
	s.mark(stretch.From, '[')
	s.mark(stretch.To, ']')
}
