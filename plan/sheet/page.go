package sheet

import (
	"fmt"
	"io"
	"strings"
)

// The paper: 80 columns, and lines that fit on A4 and letter at six to the inch.
const (
	width     = 80
	pageLines = 60
)

// paper gathers pages of text. Its lines are at most width columns wide.
type paper struct {
	left, right string // what heads every page: whose sheet, and of when
	note        string // what every page says in its rule; empty for nothing
	pages       []*page
}

// page is one page: its title, what stands beside that, and the lines below.
type page struct {
	title, left, right string
	lines              []string
}

const headLines = 4 // heading, title, rule, blank

// begin begins a page with a title and what stands beside it, to the left and to
// the right.
func (p *paper) begin(title, left, right string) {
	p.pages = append(p.pages, &page{title: title, left: left, right: right})
}

// room is how many lines are left on the page.
func (p *paper) room() int {
	return pageLines - headLines - len(p.pages[len(p.pages)-1].lines)
}

// next goes on, on a new page with the same title.
func (p *paper) next() {
	now := p.pages[len(p.pages)-1]
	p.begin(strings.TrimSuffix(now.title, continued)+continued, now.left, "")
}

const continued = ", continued"

// close adds the last lines of a title. Where only the next page has room for them
// it takes along what stands from the mark on, so that they aren't alone there.
func (p *paper) close(mark int, lines ...string) {
	p.space()
	now := p.pages[len(p.pages)-1]
	if len(lines) > p.room() && 0 < mark && mark < len(now.lines) && len(now.lines)-mark+len(lines) <= pageLines-headLines {
		along := now.lines[mark:]
		now.lines = now.lines[:mark:mark]
		p.next()
		p.add(along...)
		if p.room() > len(lines) && along[len(along)-1] != "" {
			p.space()
		}
	}
	p.add(lines...)
}

// add adds lines that belong together: on the next page if only that has room
// for all of them.
func (p *paper) add(lines ...string) {
	if n := len(lines); n > p.room() && n <= pageLines-headLines {
		p.next()
	}
	for _, l := range lines {
		if p.room() == 0 {
			p.next()
		}
		now := p.pages[len(p.pages)-1]
		now.lines = append(now.lines, strings.TrimRight(l, " "))
	}
}

// space leaves a line blank, but not at the head of a page.
func (p *paper) space() {
	if now := p.pages[len(p.pages)-1]; len(now.lines) > 0 && p.room() > 0 {
		now.lines = append(now.lines, "")
	}
}

// table adds rows below a head that each page repeats. A row is one or more lines
// and stays on one page; after every group rows a line is left blank, to guide the
// eye (never if group is 0).
func (p *paper) table(head []string, rows [][]string, group int) {
	for i, row := range rows {
		switch {
		case i == 0:
			p.add(append(append([]string{}, head...), row...)...)
			continue
		case group > 0 && i%group == 0:
			p.space()
		}
		if len(row) > p.room() {
			p.next()
			p.add(head...)
		}
		p.add(row...)
	}
}

// write writes the pages. Between them is a form feed, on a line of its own.
func (p *paper) write(w io.Writer) error {
	for i, pg := range p.pages {
		feed := ""
		if i > 0 {
			feed = "\f\n"
		}
		number := fmt.Sprintf("page %d of %d", i+1, len(p.pages))
		head := []string{
			apart(p.left, p.right+"    "+number),
			apart(pg.title+"   "+pg.left, pg.right),
			p.rule(),
			"",
		}
		text := strings.TrimRight(strings.Join(append(head, pg.lines...), "\n"), "\n")
		if _, err := io.WriteString(w, feed+text+"\n"); err != nil {
			return err
		}
	}
	return nil
}

// rule is the line below a title.
func (p *paper) rule() string {
	if p.note == "" {
		return strings.Repeat("=", width)
	}
	left := strings.Repeat("=", (width-runes(p.note)-2)/2) + " " + p.note + " "
	return left + strings.Repeat("=", width-runes(left))
}

// apart puts two texts at the two ends of a line; the left one is cut if need be.
func apart(left, right string) string {
	room := width - runes(right) - 2
	if right == "" {
		room = width
	}
	return strings.TrimRight(pad(left, room)+"  "+right, " ")
}
