package sheet

import (
	"fmt"
	"slices"
	"strings"

	"bide/material"
	"bide/plan"
)

// theKnife is the page that tells once what holds for many jobs: what is set in each,
// what is wrong with all of them, what to watch, and how the day wears the anvil.
func (t *text) theKnife() {
	steps := t.set()
	if len(steps) == 0 {
		return
	}
	t.begin("THE KNIFE", "what is set, and what to watch", "")
	t.add(hang("", "Starting values for a trial on the machine, never a promise. Pressures marked g are a guess: start low, find them by trial and write them into materials.toml.")...)
	t.settings(steps)
	if rests := t.options.Knife.Rests; rests != "" {
		t.para(hang("", "Bend is the anvil's largest under these blades, without its own weight; "+rests+".")...)
	}
	t.sharedWarnings(steps)
	t.cautions(steps)
	if t.options.Only == "" {
		t.wear()
	}
}

// set lists the steps that are to be written and whose settings are known.
func (t *text) set() (steps []int) {
	for i := range t.plan.Steps {
		if t.options.turn(i) != nil && t.options.wants(t.plan.Steps[i].Job) {
			steps = append(steps, i)
		}
	}
	return steps
}

// The best method and the wicking in a column.
var (
	methods = map[material.Method]string{material.Score: "score", material.Shear: "shear", material.Razor: "razor", material.HotStill: "hot", material.HotTurning: "hot"}
	wicks   = map[material.Wick]string{material.NoWick: "none", material.WickEach: "each", material.WickBar: "bar"}
)

// settings is the table of what is set in each job.
func (t *text) settings(steps []int) {
	g := grid{
		heads: [][]string{
			{"n", "job", "material", "best", "bevel", "tip", "wick", "set", "", "blade", "all", "bend"},
			{"", "", "", "by", "deg", "mm", "", "bar", "", "N", "kN", "mm"},
		},
		names: []bool{1: true, 2: true, 3: true, 6: true, 8: true, 11: false},
		wide:  2,
	}
	for _, i := range steps {
		k, step := t.options.turn(i), &t.plan.Steps[i]
		s, guess, bend := k.Settings, "", ""
		if s.Guessed {
			guess = "g"
		}
		if k.Bending != nil {
			bend = fmt.Sprintf("%.3f", k.Bending.MostMM)
		}
		g.rows = append(g.rows, []string{fmt.Sprint(i + 1), tidy(step.Job.ID), tidy(step.Job.Material), methods[s.Method.Method],
			fmt.Sprintf("%g", s.Blade.Bevel), fmt.Sprintf("%g", s.Blade.Tip), wicks[s.Wicking.Wick], fmt.Sprintf("%.2f", s.Air.SetBar), guess,
			fmt.Sprintf("%.0f", s.Air.SetN), fmt.Sprintf("%.1f", s.Air.SetN*float64(len(step.Layout.Cuts))/1000), bend})
	}
	head, lines := g.lines()
	rows := make([][]string, len(lines))
	for i, l := range lines {
		rows[i] = []string{l}
	}
	t.space()
	t.table(head, rows, 5)
}

// shared reports whether every planned job has the warning: it is told once then.
func (o *Options) shared(warning string) bool {
	if o.Only != "" || o.Knife == nil || len(o.Knife.Turns) < 2 {
		return false
	}
	for _, k := range o.Knife.Turns {
		if k.Settings == nil || !slices.Contains(k.Settings.Warnings, warning) {
			return false
		}
	}
	return true
}

// sharedWarnings tells what is wrong with all jobs.
func (t *text) sharedWarnings(steps []int) {
	var told []string
	for _, w := range t.options.turn(steps[0]).Settings.Warnings {
		if t.options.shared(w) {
			told = append(told, hang("  - ", w)...)
		}
	}
	if len(told) > 0 {
		t.para(append([]string{"LOOK OUT, in every job"}, told...)...)
	}
}

// cautions tells each caution once: those of any job, then those of some with the
// jobs that they are of.
func (t *text) cautions(steps []int) {
	var all []material.Caution // in the order of the work, as the first job has them
	of := map[material.Caution][]int{}
	for _, i := range steps {
		for _, c := range t.options.turn(i).Settings.Cautions {
			c.Source = "" // the same words from two sources are one caution
			if of[c] == nil {
				all = append(all, c)
			}
			if n := len(of[c]); n == 0 || of[c][n-1] != i {
				of[c] = append(of[c], i)
			}
		}
	}
	t.para("CAUTIONS of every job here. Local codes and licensed people come first.")
	for _, c := range all {
		if len(of[c]) == len(steps) {
			t.add(hang("  "+pad(c.About, 12), c.Text)...)
		}
	}
	first := true
	for _, c := range all {
		if len(of[c]) == len(steps) {
			continue
		}
		if first {
			t.para("CAUTIONS of some, by their number above")
			first = false
		}
		numbers := make([]int, len(of[c]))
		for k, i := range of[c] {
			numbers[k] = i + 1
		}
		t.add(hang("  "+pad(c.About, 12), c.Text+" ("+ranges(numbers)+")")...)
	}
}

// wear draws the metres that the day cuts on each band of the anvil's face.
func (t *text) wear() {
	f := t.options.Knife.Face
	if f == nil || f.Worst < 0 {
		return
	}
	line, rail, u := newStrip(t.plan.Beam.Rail), t.plan.Beam.Rail, t.options.Unit
	most := f.Metres[f.Worst]
	for b, metres := range f.Metres {
		from, to := f.Span(b)
		for c := line.column(plan.Length(from)); c < len(line.marks) && (line.place(c) < plan.Length(to) || b == len(f.Metres)-1 && line.place(c) == plan.Length(to)); c++ {
			line.marks[c] = tenths(metres, most)
		}
	}
	from, to := f.Span(f.Worst)
	t.para(
		fmt.Sprintf("THE ANVIL'S FACE: metres that the day cuts on it, in bands of %s", u.Show(plan.Length(f.Band))),
		apart("oper. "+u.Show(rail.From), u.Show(rail.To)+" drive"),
		"cut  "+strings.TrimRight(string(line.marks), " "))
	t.add(hang("     ", fmt.Sprintf("0 to 9: tenths of the most, %.0f m from %s to %s; the bands that are cut in have %.0f %% of that on average. Shifts and another order of slits spread the wear.",
		most, u.Number(plan.Length(from)), u.Show(plan.Length(to)), 100*f.Evenness()))...)
}
