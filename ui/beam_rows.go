package ui

import (
	"fmt"

	"bide/plan"
)

// The rows above and below the threads.

// labels are short texts on one line at columns of their own.
type labels []span

func newLabels(w int) labels {
	out := make(labels, max(w, 0))
	for x := range out {
		out[x].text = " "
	}
	return out
}

// put writes a text of single cells from a column on, if there is room for it
// between those that were put before.
func (l labels) put(column int, i ink, text string) {
	runes := []rune(text)
	if column < 0 || column+len(runes) > len(l) {
		return
	}
	for x := max(column-1, 0); x <= min(column+len(runes), len(l)-1); x++ {
		if l[x].text != " " {
			return
		}
	}
	for n, r := range runes {
		l[column+n] = span{i, string(r)}
	}
}

// numbers is the scale.
func numbers(k *look, s scale, u plan.Unit) line {
	l := newLabels(s.width)
	unit := u.String()
	l.put(s.width-len(unit), faint, unit)
	for _, x := range s.numbers() {
		l.put(s.column(x), faint, k.tick+u.Number(x))
	}
	return runs(k, l)
}

// letters stand behind the numbers of holders that aren't good.
var letters = map[plan.Condition]string{plan.NoCut: "n", plan.Stuck: "s", plan.Out: "o"}

// numbered names the picked holder where it stands now, those that aren't good, and
// every tenth.
func (d *desk) numbered(s scale) line { return d.numberedAt(s, d.before(d.turn), d.aimed()) }

// numberedAt does the same where they stand at another time, with one picked; there
// may be none.
func (d *desk) numberedAt(s scale, now *plan.Standing, aimed int) line {
	l := newLabels(s.width)
	if now == nil {
		return runs(d.look, l)
	}
	if n := aimed; n > 0 {
		l.put(s.column(now.At[n-1]), picked, d.aim+fmt.Sprint(n))
	}
	for i, c := range d.forecast.beam.Holders {
		if letter := letters[c]; letter != "" {
			l.put(s.column(now.At[i]), late, fmt.Sprint(i+1)+letter)
		}
	}
	for i := 9; i < len(now.At); i += 10 {
		l.put(s.column(now.At[i]), faint, fmt.Sprint(i+1))
	}
	return runs(d.look, l)
}

// web is the job's web under the threads, with its edges, its cuts and its trim.
func web(k *look, s scale, l *plan.Layout) line {
	from, to := s.column(l.Web.From), s.column(l.Web.To)
	cells := make([]span, s.width)
	for x := range cells {
		cells[x] = span{plain, " "}
		if from <= x && x <= to {
			cells[x] = span{accent, k.web}
		}
	}
	mark := func(x int, i ink, text string) {
		if x >= 0 && x < len(cells) {
			cells[x] = span{i, text}
		}
	}
	if n := len(l.Cuts); n > 0 && l.Trim[0]+l.Trim[1] > 0 {
		for x := max(from, 0); x < s.column(l.Cuts[0]); x++ {
			mark(x, faint, k.trim)
		}
		for x := s.column(l.Cuts[n-1]) + 1; x <= min(to, s.width-1); x++ {
			mark(x, faint, k.trim)
		}
	}
	mark(from, accent, k.webFrom)
	mark(to, accent, k.webTo)
	for _, c := range l.Cuts {
		mark(s.column(c), accent, k.cut)
	}
	return runs(k, cells)
}

// strips names the slits below the web, equal ones side by side together.
func strips(d *desk, s scale, lay *plan.Layout) line {
	l := newLabels(s.width)
	at := lay.Web.From + lay.Trim[0]
	for i := 0; i < len(lay.Slits); {
		n, from := i, at
		for ; n < len(lay.Slits) && lay.Slits[n] == lay.Slits[i]; n++ {
			at += lay.Slits[n]
		}
		text := fmt.Sprintf("%d x %s", n-i, exactly(lay.Slits[i], d.shop.Unit))
		a, b := max(s.column(from), 0), min(s.column(at), s.width)
		if b-a >= cells(text) {
			l.put((a+b-cells(text))/2, accent, text)
		}
		i = n
	}
	return runs(d.look, l)
}
