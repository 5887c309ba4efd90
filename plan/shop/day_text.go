package shop

import (
	"bide/plan/shop/toml"
	"strings"
)

// dayText is the text of day.toml cut into pieces that an edit leaves whole. Put
// together again they are the text, to the byte.
type dayText struct {
	eol  string   // how its lines end
	head string   // what stands before the first job
	jobs []string // each with the comment lines directly above it and directly below
	gaps []string // behind each job: blank lines, and comments that stand apart
}

// splitDay cuts a text in time linear in it. It reports false for a text whose jobs
// don't each stand under a [[job]] of their own.
func splitDay(text string) (d dayText, ok bool) {
	mark := ""
	if strings.HasPrefix(text, toml.ByteOrderMark) {
		mark, text = toml.ByteOrderMark, text[len(toml.ByteOrderMark):]
	}
	d.eol = "\n"
	if i := strings.IndexByte(text, '\n'); i > 0 && text[i-1] == '\r' {
		d.eol = "\r\n"
	}
	ok = true
	begun, done := 0, 0 // start of the present piece; end of the last statement
	for _, st := range toml.StatementsOf(text) {
		if st.Header {
			above := commentsAbove(text[done:st.Line]) + done
			d.cut(text[begun:done], text[done:above])
			begun = above
		}
		ok = ok && (!st.Header || strings.HasPrefix(st.Path, "job[") && strings.HasSuffix(st.Path, "]"))
		ok = ok && (len(d.gaps) > 0 || st.Header || st.Key != "job")
		done = st.End
	}
	d.cut(text[begun:done], text[done:])
	d.head = mark + d.head
	return d, ok && len(d.jobs) > 0
}

// cut adds the piece that has come to its end: its statements, and what stands
// behind them up to the comments of the next.
func (d *dayText) cut(piece, behind string) {
	if d.gaps == nil { // the head; all that stands behind it is its own
		d.head, d.gaps = piece+behind, []string{}
		return
	}
	below := commentsBelow(behind)
	d.jobs = append(d.jobs, piece+behind[:below])
	d.gaps = append(d.gaps, behind[below:])
}

// String is the text that the pieces make.
func (d *dayText) String() string {
	var b strings.Builder
	b.WriteString(d.head)
	for i, job := range d.jobs {
		b.WriteString(job)
		b.WriteString(d.gaps[i])
	}
	return b.String()
}

// commentsAbove is where the comment lines at the end of a text begin.
func commentsAbove(text string) int {
	for at := len(text); ; {
		line := 1 + strings.LastIndexByte(text[:max(at-1, 0)], '\n')
		if at == 0 || !isComment(text[line:at]) {
			return at
		}
		at = line
	}
}

// commentsBelow is where the comment lines at the start of a text end.
func commentsBelow(text string) (at int) {
	for at < len(text) {
		end := len(text)
		if i := strings.IndexByte(text[at:], '\n'); i >= 0 {
			end = at + i + 1
		}
		if !isComment(text[at:end]) {
			break
		}
		at = end
	}
	return at
}

func isComment(line string) bool {
	return strings.HasPrefix(strings.TrimLeft(line, " \t\r"), "#")
}
