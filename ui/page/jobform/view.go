package jobform

import (
	"fmt"
	"strings"

	"bide/plan"
	"bide/plan/words"
	"bide/ui/draw"
)

// formLabel is the width of the fields' names.
const formLabel = 14

// view draws the form in a box of that size: the fields with what is wrong beside them, and
// what the job comes to. The title is what stands beside the name of the page.
func (f *jobForm) view(k *draw.Theme, s draw.Size) (title draw.Line, body []draw.Line) {
	foot := f.comesTo(k, s.W)
	foot = foot[:min(len(foot), max(s.H/3, 1))]
	body = f.fields(k, draw.Size{W: s.W, H: max(s.H-1-len(foot), 1)})
	title = k.Line()
	if f.naming() {
		title.Add(draw.Faint, f.count())
	} else {
		title.Add(draw.Faint, fmt.Sprintf("lengths in %s unless a unit is given", f.shop.DayUnit()))
	}
	return title, append(body, foot...)
}

// fields are the fields' lines around the one that is typed into, below that one the
// list of names where it has one.
func (f *jobForm) fields(k *draw.Theme, s draw.Size) (out []draw.Line) {
	at := f.At
	for i := range f.Fields {
		out = append(out, f.field(k, i, s.W))
		if i == f.At && f.naming() {
			names := f.names(k, draw.Size{W: s.W, H: max(s.H-2, 1)})
			out = append(out, names...)
			at += len(names) / 2
		}
	}
	from := draw.Window(at, len(out), s.H)
	if f.naming() {
		from = min(from, f.At)
	}
	out = out[from:min(from+s.H, len(out))]
	for len(out) < s.H {
		out = append(out, k.Line())
	}
	return out
}

// field is one field's line, with what is wrong or how it is filled in.
func (f *jobForm) field(k *draw.Theme, i, w int) draw.Line {
	in, on := &f.Fields[i], i == f.At
	if p := f.problem(in.Key); p != nil {
		mark := "! "
		if p.Refused {
			mark = "x refused: "
		}
		return f.Row(k, i, formLabel, w, draw.Span{Style: draw.Late, Text: mark + inForm(p.What)}, 12)
	}
	hint := ""
	switch {
	case on && in.Proposed:
		hint = "proposed: typing replaces it, the arrows keep it"
	case on:
		hint = in.Hint
	}
	return f.Row(k, i, formLabel, w, draw.Span{Style: draw.Faint, Text: hint}, 0)
}

// comesTo tells what is wrong in full, and what the job as typed comes to.
func (f *jobForm) comesTo(k *draw.Theme, w int) (out []draw.Line) {
	add := func(i draw.Style, text string) {
		for _, row := range k.Wrap(text, w-2) {
			l := k.Line()
			l.Add(draw.Plain, " ")
			l.Add(i, row)
			out = append(out, l)
		}
	}
	if said := f.said(); said != "" {
		add(draw.Late, said)
	} else {
		add(draw.Good, "no errors")
	}
	if text := f.sums(); text != "" {
		add(draw.Faint, text)
	}
	return out[:min(len(out), 4)]
}

// sums tells what the slits come to and what is left for trim.
func (f *jobForm) sums() string {
	j, u := &f.result, f.shop.DayUnit()
	if j.Web == 0 || len(j.Entries) == 0 {
		return ""
	}
	var sum plan.Length
	n := 0
	for _, s := range j.Slits() {
		sum += s
		n++
	}
	parts := []string{fmt.Sprintf("%s, %s wide together", words.Count(n, "slit"), u.Show(sum)), fmt.Sprintf("trim %s in all", u.Show(j.Web-sum))}
	if j.Speed > 0 && j.Metres > 0 {
		parts = append(parts, fmt.Sprintf("runs %.1f min", j.RunTime().Minutes()))
	}
	return strings.Join(parts, ", ")
}
