// Package dayfile edits the text of a day's file, which people type, line by line: comments,
// the order of keys and the line ends of all that isn't changed stay to the byte. It knows
// blocks and keys, not what they mean.
package dayfile

import (
	"slices"
	"strings"

	"bide/plan/shop/toml"
)

// Text is the text of day.toml cut into pieces that an edit leaves whole. Put
// together again they are the text, to the byte.
type Text struct {
	eol  string   // how its lines end
	head string   // what stands before the first job
	jobs []string // each with the comment lines directly above it and directly below
	gaps []string // behind each job: blank lines, and comments that stand apart
}

// Split cuts a text in time linear in it. It reports false for a text whose jobs
// don't each stand under a [[job]] of their own, or not all one behind the other.
func Split(text string) (t Text, ok bool) {
	mark := ""
	if strings.HasPrefix(text, toml.ByteOrderMark) {
		mark, text = toml.ByteOrderMark, text[len(toml.ByteOrderMark):]
	}
	t.eol = "\n"
	if i := strings.IndexByte(text, '\n'); i > 0 && text[i-1] == '\r' {
		t.eol = "\r\n"
	}
	ok = true
	begun, done := 0, 0            // start of the present piece; end of the last statement
	inJobs, behind := false, false // tables of another kind stand above the jobs or behind them
	for _, st := range toml.StatementsOf(text) {
		job := st.Header && strings.HasPrefix(st.Path, "job[") && strings.HasSuffix(st.Path, "]")
		behind = behind || inJobs && st.Header && !job
		ok = ok && !(job && behind) && (inJobs || st.Header || st.Key != "job")
		if behind {
			continue
		}
		if job {
			above := commentsAbove(text[done:st.Line]) + done
			t.cut(text[begun:done], text[done:above])
			begun, inJobs = above, true
		}
		done = st.End
	}
	t.cut(text[begun:done], text[done:])
	t.head = mark + t.head
	return t, ok && len(t.jobs) > 0
}

// cut adds the piece that has come to its end: its statements, and what stands
// behind them up to the comments of the next.
func (t *Text) cut(piece, behind string) {
	if t.gaps == nil { // the head; all that stands behind it is its own
		t.head, t.gaps = piece+behind, []string{}
		return
	}
	below := commentsBelow(behind)
	t.jobs = append(t.jobs, piece+behind[:below])
	t.gaps = append(t.gaps, behind[below:])
}

// String is the text that the pieces make.
func (t *Text) String() string {
	var b strings.Builder
	b.WriteString(t.head)
	for i, job := range t.jobs {
		b.WriteString(job)
		b.WriteString(t.gaps[i])
	}
	return b.String()
}

// New is a text with a head and that many jobs, each an empty block.
func New(head string, jobs int) Text {
	t := Text{eol: "\n", head: head}
	return t.Arranged(slices.Repeat([]Origin{{job: -1}}, jobs))
}

// Jobs counts the jobs of the text.
func (t *Text) Jobs() int { return len(t.jobs) }

// ChangeHead makes an edit above the jobs; keys come in that order.
func (t *Text) ChangeHead(e Edit, order []string) { t.head = e.apply(t.head, t.eol, order) }

// ChangeEntry makes an edit in an entry, counted from 0, of a list that stands above the jobs
// or behind them.
func (t *Text) ChangeEntry(list string, i int, e Edit, order []string) {
	for _, piece := range []*string{&t.head, &t.gaps[len(t.gaps)-1]} {
		headers := slices.DeleteFunc(toml.StatementsOf(*piece), func(st toml.Statement) bool { return !st.Header })
		for k, st := range headers {
			if !strings.HasPrefix(st.Path, list+"[") {
				continue
			}
			if i > 0 {
				i--
				continue
			}
			end := len(*piece)
			if k+1 < len(headers) {
				end = headers[k+1].Line
			}
			*piece = (*piece)[:st.End] + e.apply((*piece)[st.End:end], t.eol, order) + (*piece)[end:]
			return
		}
	}
}

// ChangeJob makes an edit in a job, counted from 0; keys come in that order.
func (t *Text) ChangeJob(i int, e Edit, order []string) {
	t.jobs[i] = e.apply(t.jobs[i], t.eol, order)
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
