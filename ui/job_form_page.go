package ui

import (
	"fmt"
	"regexp"
	"strings"

	"bide/plan"
)

// formLabel is the width of the fields' names.
const formLabel = 14

// View draws the form: the fields with what is wrong beside them, and what the job
// comes to.
func (f *jobForm) View(m *model) []line {
	s := m.pageSize()
	foot := f.comesTo(m, s.w)
	foot = foot[:min(len(foot), max(s.h/3, 1))]
	room := max(s.h-1-len(foot), 1)
	body := f.fields(m, size{s.w, room})
	name := "Add a job"
	if f.job != nil {
		name = "Edit " + m.safe(f.job.ID)
	} else if f.stem != "" {
		name = "Add a copy of " + m.safe(f.stem)
	}
	title := m.line()
	if f.naming() {
		title.add(faint, f.list.count(m, f))
	} else {
		title.add(faint, fmt.Sprintf("lengths in %s unless said otherwise", m.shop.DayUnit()))
	}
	return m.page(name, title, append(body, foot...), f.Help())
}

// fields are the fields' lines around the one that is typed into, below that one the
// list of names where it has one.
func (f *jobForm) fields(m *model, s size) (out []line) {
	at := f.on
	for i := range f.keys {
		out = append(out, f.field(m, i, s.w))
		if i == f.on && f.naming() {
			names := f.list.lines(m, f, size{s.w, max(s.h-2, 1)})
			out = append(out, names...)
			at += len(names) / 2
		}
	}
	from := window(at, len(out), s.h)
	if f.naming() {
		from = min(from, f.on)
	}
	out = out[from:min(from+s.h, len(out))]
	for len(out) < s.h {
		out = append(out, m.line())
	}
	return out
}

// field is one field's line.
func (f *jobForm) field(m *model, i, w int) line {
	key, on := f.keys[i], i == f.on
	l := m.line()
	if on {
		l.add(picked, m.cursor)
	}
	l.to(2)
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
	l.left(pick(on, faint), word, formLabel)
	l.to(2 + formLabel)
	p := f.problem(key)
	room := w - l.width - 1
	if p != nil {
		room = max(room/2, min(room, cells(f.typed[key])+4))
		room = min(room, w-l.width-12)
	}
	f.input(m, &l, i, room)
	if p != nil {
		mark, ink := "! ", late
		if p.Refused {
			mark = "x refused: "
		}
		l.add(plain, " ")
		l.add(ink, m.short(mark+inForm(p.What), w-l.width))
	} else if on && f.proposes() {
		l.add(faint, m.short(" proposed: typing replaces it, the arrows keep it", w-l.width))
	} else if on {
		l.add(faint, m.short(" "+fieldHints[key], w-l.width))
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
	"turn":          "1 is the first, -1 the last",
	"shift":         "left and right change it",
	"arrange":       "left and right change it",
	"state":         "left and right change it",
	"web":           "width",
	"speed":         "nothing is the material's",
}

// input draws a field's text with its caret, scrolled so that the caret shows.
func (f *jobForm) input(m *model, l *line, i, w int) {
	text := f.typed[f.keys[i]]
	words := fieldChoices[f.keys[i]]
	switch {
	case words != nil:
		if text == "" {
			text = words[0]
		}
		if cells(strings.Join(words, "    "))+2 > w {
			l.add(pick(i == f.on, strong), "("+text+")")
			return
		}
		for _, word := range words {
			if word == text {
				l.add(pick(i == f.on, strong), "("+word+") ")
			} else {
				l.add(faint, " "+word+"  ")
			}
		}
		return
	case i != f.on:
		l.add(plain, m.short(text, w))
		return
	}
	if f.proposes() {
		l.add(picked, m.short(text, w-1))
		l.add(picked, m.caret)
		return
	}
	runes := []rune(text)
	at := min(f.caret, len(runes))
	before := endOf(m.safe(string(runes[:at])), w-2)
	l.add(strong, before)
	l.add(picked, m.caret)
	l.add(strong, clip(m.safe(string(runes[at:])), w-1-cells(before)))
}

// endOf is the end of a text, in at most w cells.
func endOf(text string, w int) string {
	runes := []rune(text)
	from := len(runes)
	for wide := 0; from > 0; from-- {
		if wide += cells(string(runes[from-1])); wide > w {
			break
		}
	}
	return string(runes[from:])
}

// comesTo tells what is wrong in full, and what the job as typed comes to.
func (f *jobForm) comesTo(m *model, w int) (out []line) {
	add := func(i ink, text string) {
		for _, row := range m.wrap(text, w-2) {
			l := m.line()
			l.add(plain, " ")
			l.add(i, row)
			out = append(out, l)
		}
	}
	if said := f.said(f.on); said != "" {
		add(late, said)
	} else {
		add(good, "nothing is wrong with it")
	}
	if text := f.sums(m); text != "" {
		add(faint, text)
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
