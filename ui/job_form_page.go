package ui

import (
	"fmt"
	"strings"

	"bide/plan"
	"bide/plan/words"
	"bide/ui/draw"
)

// formLabel is the width of the fields' names.
const formLabel = 14

// View draws the form: the fields with what is wrong beside them, and what the job
// comes to.
func (f *jobForm) View(m *model) []draw.Line {
	s := m.pageSize()
	foot := f.comesTo(m, s.W)
	foot = foot[:min(len(foot), max(s.H/3, 1))]
	room := max(s.H-1-len(foot), 1)
	body := f.fields(m, draw.Size{W: s.W, H: room})
	name := "Add a job"
	if f.job != nil {
		name = "Edit " + m.Safe(f.job.ID)
	} else if f.stem != "" {
		name = "Add a copy of " + m.Safe(f.stem)
	}
	title := m.Line()
	if f.naming() {
		title.Add(draw.Faint, f.list.count(m, f))
	} else {
		title.Add(draw.Faint, fmt.Sprintf("lengths in %s unless a unit is given", m.shop.DayUnit()))
	}
	return m.page(name, title, append(body, foot...), f.Help())
}

// fields are the fields' lines around the one that is typed into, below that one the
// list of names where it has one.
func (f *jobForm) fields(m *model, s draw.Size) (out []draw.Line) {
	at := f.At
	for i := range f.Fields {
		out = append(out, f.field(m, i, s.W))
		if i == f.At && f.naming() {
			names := f.list.lines(m, f, draw.Size{W: s.W, H: max(s.H-2, 1)})
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
		out = append(out, m.Line())
	}
	return out
}

// field is one field's line, with what is wrong or how it is filled in.
func (f *jobForm) field(m *model, i, w int) draw.Line {
	in, on := &f.Fields[i], i == f.At
	if p := f.problem(in.Key); p != nil {
		mark := "! "
		if p.Refused {
			mark = "x refused: "
		}
		return f.Row(m.Theme, i, formLabel, w, draw.Span{Style: draw.Late, Text: mark + inForm(p.What)}, 12)
	}
	hint := ""
	switch {
	case on && in.Proposed:
		hint = "proposed: typing replaces it, the arrows keep it"
	case on:
		hint = in.Hint
	}
	return f.Row(m.Theme, i, formLabel, w, draw.Span{Style: draw.Faint, Text: hint}, 0)
}

// comesTo tells what is wrong in full, and what the job as typed comes to.
func (f *jobForm) comesTo(m *model, w int) (out []draw.Line) {
	add := func(i draw.Style, text string) {
		for _, row := range m.Wrap(text, w-2) {
			l := m.Line()
			l.Add(draw.Plain, " ")
			l.Add(i, row)
			out = append(out, l)
		}
	}
	if said := f.said(f.At); said != "" {
		add(draw.Late, said)
	} else {
		add(draw.Good, "no errors")
	}
	if text := f.sums(m); text != "" {
		add(draw.Faint, text)
	}
	return out[:min(len(out), 4)]
}

// sums tells what the slits come to and what is left for trim.
func (f *jobForm) sums(m *model) string {
	j, u := &f.read, m.shop.DayUnit()
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
