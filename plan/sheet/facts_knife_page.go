package sheet

import (
	"fmt"
	"slices"

	"bide/material"
	"bide/plan/words"
)

// atKnife says what holds at the knife for all the steps that are to be written.
type atKnife struct {
	*facts
	set []int // the steps whose settings are known
}

func (f *facts) atKnife() atKnife {
	k := atKnife{facts: f}
	for i, s := range f.steps {
		if f.options.turn(i) != nil && f.options.wants(s.Job) {
			k.set = append(k.set, i)
		}
	}
	return k
}

// The best method and the wicking in a column.
var (
	methods = map[material.Method]string{material.Score: "score", material.Shear: "shear", material.Razor: "razor", material.HotStill: "hot", material.HotTurning: "hot"}
	wicks   = map[material.Wick]string{material.NoWick: "none", material.WickEach: "each", material.WickBar: "bar"}
)

// startingValues says what the settings are worth.
const startingValues = "Starting values for a trial on the machine; not guaranteed. Pressures marked g are a guess: start low and find by trial the pressure that cuts through. Write it, without the margin, into materials.toml: its cut_through_bar is for this shop's cylinder as it is. Those marked x need pistons that this beam doesn't have."

// bendHow says how the bend comes about; empty where none is known.
func (f atKnife) bendHow() string {
	if f.options.rests() == "" {
		return ""
	}
	return "Bend is the anvil's largest under these blades; " + f.options.rests() + ". " + material.BendMatters
}

// settings is the table of what is set in each job.
func (f atKnife) settings() grid {
	g := grid{
		heads: [][]string{
			{"n", "job", "material", "best", "bevel", "tip", "wick", "set", "", "blade", "all", "bend"},
			{"", "", "", "by", "deg", "mm", "", "bar", "", "N", "kN", "mm"},
		},
		full:  []string{"No.", "Job", "Material", "Best by", "Bevel, degrees", "Tip, mm", "Wick", "Set, bar", "Mark", "One blade, N", "All, kN", "Bend, mm"},
		names: []bool{1: true, 2: true, 3: true, 6: true, 8: true, 11: false},
		wide:  2,
	}
	for _, i := range f.set {
		k, step := f.options.turn(i), f.steps[i]
		s, guess, bend := k.Settings, "", ""
		if s.Guessed && !s.Unfound {
			guess = "g"
		}
		if !s.Air.Own {
			guess += "x"
		}
		if k.Bending != nil {
			bend = fmt.Sprintf("%.3f", k.Bending.MostMM)
		}
		g.rows = append(g.rows, []string{fmt.Sprint(i + 1), words.Clean(step.Job.ID), words.Clean(step.Job.Material), methods[s.Method.Method],
			fmt.Sprintf("%g", s.Blade.Bevel), fmt.Sprintf("%g", s.Blade.Tip), wicks[s.Wicking.Wick], known(s, "%.2f", s.Air.SetBar), guess,
			known(s, "%.0f", s.Air.SetN), known(s, "%.1f", s.Air.SetN*float64(len(step.Layout.Cuts))/1000), bend})
	}
	return g
}

// known shows a pressure or force; a dash where none is known.
func known(s *material.Settings, format string, v float64) string {
	if s.Unfound {
		return "-"
	}
	return fmt.Sprintf(format, v)
}

// shared reports whether every planned job has the warning: it is shown once then.
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

// sharedWarnings are what is wrong with all jobs.
func (f atKnife) sharedWarnings() (out []string) {
	for _, w := range f.options.turn(f.set[0]).Settings.Warnings {
		if f.options.shared(w) {
			out = append(out, w)
		}
	}
	return out
}

// watch is a caution and the jobs that it is of, by their numbers.
type watch struct{ About, Text, Of string }

// cautions are those of the jobs, each once, in the order of the work: those of every
// job, and those of some.
func (f atKnife) cautions() (every, some []watch) {
	var all []material.Caution // as the first job has them
	of := map[material.Caution][]int{}
	for _, i := range f.set {
		for _, c := range f.options.turn(i).Settings.Cautions {
			c.Source = "" // the same words from two sources are one caution
			if of[c] == nil {
				all = append(all, c)
			}
			if n := len(of[c]); n == 0 || of[c][n-1] != i+1 {
				of[c] = append(of[c], i+1)
			}
		}
	}
	for _, c := range all {
		if len(of[c]) == len(f.set) {
			every = append(every, watch{c.About, c.Text, ""})
		} else {
			some = append(some, watch{c.About, c.Text, words.Ranges(of[c])})
		}
	}
	return every, some
}
