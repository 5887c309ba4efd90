package ui

import (
	"fmt"
	"regexp"
	"strings"

	"bide/plan"
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
		title.Add(draw.Faint, fmt.Sprintf("lengths in %s unless said otherwise", m.shop.DayUnit()))
	}
	return m.page(name, title, append(body, foot...), f.Help())
}

// fields are the fields' lines around the one that is typed into, below that one the
// list of names where it has one.
func (f *jobForm) fields(m *model, s draw.Size) (out []draw.Line) {
	at := f.on
	for i := range f.keys {
		out = append(out, f.field(m, i, s.W))
		if i == f.on && f.naming() {
			names := f.list.lines(m, f, draw.Size{W: s.W, H: max(s.H-2, 1)})
			out = append(out, names...)
			at += len(names) / 2
		}
	}
	from := draw.Window(at, len(out), s.H)
	if f.naming() {
		from = min(from, f.on)
	}
	out = out[from:min(from+s.H, len(out))]
	for len(out) < s.H {
		out = append(out, m.Line())
	}
	return out
}

// field is one field's line.
func (f *jobForm) field(m *model, i, w int) draw.Line {
	key, on := f.keys[i], i == f.on
	l := m.Line()
	if on {
		l.Add(draw.Picked, m.Cursor)
	}
	l.To(2)
	word := fieldWords[key]
	if word == "" {
		word = key
	}
	if key == "speed" {
		word = "speed, m/min"
		if m.shop.DayUnit() == plan.Inches {
			word = "speed, ft/min"
		}
	}
	l.Left(pick(on, draw.Faint), word, formLabel)
	l.To(2 + formLabel)
	p := f.problem(key)
	room := w - l.Width - 1
	if p != nil {
		room = max(room/2, min(room, draw.CellWidth(f.typed[key])+4))
		room = min(room, w-l.Width-12)
	}
	f.input(m, &l, i, room)
	if p != nil {
		mark, ink := "! ", draw.Late
		if p.Refused {
			mark = "x refused: "
		}
		l.Add(draw.Plain, " ")
		l.Add(ink, m.Short(mark+inForm(p.What), w-l.Width))
	} else if on && f.proposes() {
		l.Add(draw.Faint, m.Short(" proposed: typing replaces it, the arrows keep it", w-l.Width))
	} else if on {
		l.Add(draw.Faint, m.Short(" "+fieldHints[key], w-l.Width))
	}
	return l
}

// formWords are the keys of day.toml that a problem may name, as the form calls them.
var formWords = regexp.MustCompile(`\b(length_m|roll_m|roll_diameter)\b|^(id|web|trim) is missing`)

// inForm tells a problem in the words of the form: people who fill it in need not know
// what the file calls its keys.
func inForm(text string) string {
	return formWords.ReplaceAllStringFunc(text, func(word string) string {
		key, tail, _ := strings.Cut(word, " ")
		name := strings.TrimSuffix(fieldWords[key], ", m")
		return join(" ", strings.Replace(name, ", ", " ", 1), tail)
	})
}

// fieldHints tell how a field is filled in.
var fieldHints = map[string]string{
	"core":          "of a finished roll, if known",
	"roll_m":        "on a finished roll, if known",
	"roll_diameter": "or how thick a finished roll is",
	"slits":         "operator side first: 24 x 25.4; 12 x 50.8",
	"trim":          "on each side; nothing is 3 mm",
	"due":           "15:30, or 2026-11-25 15:30",
	"after":         "ids with ; between",
	"fixed":         "1 is the first, -1 the last",
	"shift":         "left and right change it",
	"arrange":       "left and right change it",
	"state":         "left and right change it",
	"web":           "width",
	"speed":         "nothing is the material's",
}

// input draws a field's text with its caret, scrolled so that the caret shows.
func (f *jobForm) input(m *model, l *draw.Line, i, w int) {
	text := f.typed[f.keys[i]]
	words := fieldChoices[f.keys[i]]
	switch {
	case words != nil:
		if text == "" {
			text = words[0]
		}
		if draw.CellWidth(strings.Join(words, "    "))+2 > w {
			l.Add(pick(i == f.on, draw.Strong), "("+text+")")
			return
		}
		for _, word := range words {
			if word == text {
				l.Add(pick(i == f.on, draw.Strong), "("+word+") ")
			} else {
				l.Add(draw.Faint, " "+word+"  ")
			}
		}
		return
	case i != f.on:
		l.Add(draw.Plain, m.Short(text, w))
		return
	}
	if f.proposes() {
		l.Add(draw.Picked, m.Short(text, w-1))
		l.Add(draw.Picked, m.Caret)
		return
	}
	runes := []rune(text)
	at := min(f.caret, len(runes))
	before := endOf(m.Safe(string(runes[:at])), w-2)
	l.Add(draw.Strong, before)
	l.Add(draw.Picked, m.Caret)
	l.Add(draw.Strong, draw.Clip(m.Safe(string(runes[at:])), w-1-draw.CellWidth(before)))
}

// endOf is the end of a text, in at most w cells.
func endOf(text string, w int) string {
	runes := []rune(text)
	from := len(runes)
	for wide := 0; from > 0; from-- {
		if wide += draw.CellWidth(string(runes[from-1])); wide > w {
			break
		}
	}
	return string(runes[from:])
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
	if said := f.said(f.on); said != "" {
		add(draw.Late, said)
	} else {
		add(draw.Good, "nothing is wrong with it")
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
	parts := []string{fmt.Sprintf("%s, %s wide together", count(n, "slit"), u.Show(sum)), fmt.Sprintf("trim %s in all", u.Show(j.Web-sum))}
	if j.Speed > 0 && j.Metres > 0 {
		parts = append(parts, fmt.Sprintf("runs %.1f min", j.RunTime().Minutes()))
	}
	return strings.Join(parts, ", ")
}
