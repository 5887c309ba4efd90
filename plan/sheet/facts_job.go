package sheet

import (
	"fmt"
	"strconv"
	"strings"

	"bide/material"
	"bide/plan"
	"bide/plan/words"
)

const longestID = 18 // of two side by side in a title

// between names the jobs that step i changes from and to.
func (f *facts) between(i int) string {
	from, to := f.plan.Start.Job, "to "+cut(f.steps[i].Job.ID, longestID)
	if i > 0 {
		from = f.steps[i-1].Job.ID
	}
	if from == "" {
		return to
	}
	return cut(from, longestID) + " " + to
}

// job says what is to be run at step i.
func (f *facts) job(i int) (out []fact) {
	s, w := f.steps[i], f.swaps[i]
	u, j, l := f.options.Unit, s.Job, &s.Layout
	add := func(name, text string) { out = append(out, fact{Name: name, Text: text}) }
	if runes(j.ID) > longestID {
		add("Job", j.ID)
	}
	add("Material", j.Material)
	if j.Customer != "" {
		add("Customer", j.Customer)
	}
	if j.Note != "" {
		add("Note", j.Note)
	}
	add("Web", fmt.Sprintf("%s, guided to the %s of the web area; from %s to %s",
		words.Both(j.Web, u), guides[f.plan.Beam.Guide], u.Number(l.Web.From), u.Show(l.Web.To)))
	out = append(out, f.slits(s))
	add("Trim", trim(l, u))
	add("Blade", blade(j, u))
	if len(w.change) > 0 {
		add("", "swap "+words.Count(len(w.change), "blade")+": "+words.Holders(w.change))
	}
	if len(w.unknown) > 0 {
		add("", "not known what these carry, look first: "+words.Holders(w.unknown))
	}
	add("Pressure", f.pressure(i))
	if j.SiliconeFree {
		add("Clean", "SILICONE-FREE job: blades, wicks and rolls must be clean of silicone")
	}
	add("Run", f.run(s))
	if text := f.conditions(); text != "" {
		add("Not good", text)
	}
	if moves := s.Changeover.Repositions; j.State == plan.Running && moves > 0 {
		add("RUNNING", fmt.Sprintf("this job is said to run already, and %s right for it: look what really runs, correct the shop's files and plan again before one moves.", standWrong(moves)))
	}
	if f.plan.Start.Assumed {
		add("ASSUMED", assumed)
	}
	return out
}

// standWrong counts holders that don't stand right.
func standWrong(n int) string {
	if n == 1 {
		return "1 holder isn't"
	}
	return fmt.Sprintf("%d holders aren't", n)
}

// assumed warns of a plan that stands on no measured places.
const assumed = "nobody has measured the positions from which the day begins: they are assumed evenly spaced. Measure each, write positions.toml and plan again before moving any."

var guides = [...]string{plan.GuideCentre: "centre", plan.GuideOperator: "operator edge", plan.GuideDrive: "drive edge"}

// slitRun is a run of equal slits side by side.
type slitRun struct {
	Which string // 3, or 3-12
	N     int
	Width string
}

// slits lists the slits as runs of equal ones, the operator side first.
func (f *facts) slits(s *plan.Step) fact {
	slits, want := s.Layout.Slits, finished(s)
	out := fact{Name: "Slits", Text: fmt.Sprintf("%d, counted from the operator side", len(slits))}
	for i := 0; i < len(slits); {
		n := i + 1
		for n < len(slits) && slits[n] == slits[i] {
			n++
		}
		r := slitRun{strconv.Itoa(i + 1), n - i, words.Both(slits[i], f.options.Unit)}
		if n > i+1 {
			r.Which += "-" + strconv.Itoa(n)
		}
		if want != nil && want[i] != slits[i] {
			r.Width += ", to finish at " + words.Both(want[i], f.options.Unit)
		}
		out.Runs = append(out.Runs, r)
		i = n
	}
	return out
}

// trim gives the waste on both sides and how far the layout is from centred.
func trim(l *plan.Layout, u plan.Unit) string {
	if l.Trim == [2]plan.Length{} {
		return "none: the slits fill the web"
	}
	text := fmt.Sprintf("operator side %s, drive side %s", u.Show(l.Trim[0]), u.Show(l.Trim[1]))
	switch {
	case l.Shift > 0:
		return text + "; the layout is " + words.Both(l.Shift, u) + " to the drive side of centred"
	case l.Shift < 0:
		return text + "; the layout is " + words.Both(-l.Shift, u) + " to the operator side of centred"
	}
	return text + "; centred"
}

// blade gives the edge that the job wants.
func blade(j *plan.Job, u plan.Unit) string {
	if !j.Blade.Known() {
		return "the material's blade is not known"
	}
	tip := strconv.FormatFloat(j.Blade.Tip, 'f', -1, 64) + " mm"
	if u == plan.Inches {
		tip += fmt.Sprintf(" (%.4f in)", j.Blade.Tip/25.4)
	}
	return fmt.Sprintf("included bevel %v deg, tip radius %s", j.Blade.Bevel, tip)
}

// pressure says what to set, and what it is worth.
func (f *facts) pressure(i int) string {
	j := f.steps[i].Job
	if j.SetBar == 0 {
		return "not known; find by trial"
	}
	text := fmt.Sprintf("set %s bar (%.0f psi)", rounded(j.SetBar, 2), material.Psi(j.SetBar))
	k := f.options.turn(i)
	if k != nil && !k.Settings.Air.Own {
		text += " on " + k.Settings.Line(material.IDPistons).Value + ", not fitted on this beam"
	}
	if k != nil && k.Settings.Guessed {
		return text + ", from a guess: start low, and prove it on the first-off"
	}
	return text + ", a starting value: prove it on the first-off"
}

// rounded is a number with so many decimals at most.
func rounded(v float64, decimals int) string {
	text := strconv.FormatFloat(v, 'f', decimals, 64)
	if decimals == 0 {
		return text
	}
	return strings.TrimSuffix(strings.TrimRight(text, "0"), ".")
}

// run says how long, how fast and when.
func (f *facts) run(s *plan.Step) string {
	length, speed := rounded(s.Job.Metres, 3)+" m", rounded(s.Job.Speed, 2)+" m/min"
	if f.options.Unit == plan.Inches {
		length += fmt.Sprintf(" (%s ft)", rounded(material.Feet(s.Job.Metres), 1))
		speed = fmt.Sprintf("%s ft/min (%s)", rounded(material.Feet(s.Job.Speed), 1), speed)
	}
	text := fmt.Sprintf("%s at %s, %s to %s", length, speed, f.clock(s.RunStart), f.clock(s.RunEnd))
	if stops := words.Stops(s.Job.Runs()); stops != "" {
		text += "; " + stops
	}
	if s.Paused > 0 {
		text += "; paused " + words.Lasting(s.Paused)
	}
	if !s.Job.Due.IsZero() {
		text += "; due " + f.clock(s.Job.Due)
	}
	if s.Late > 0 {
		text += ", LATE by " + words.Lasting(s.Late)
	}
	return text
}

// conditions names the holders that aren't good; empty where all are.
func (f *facts) conditions() string {
	of := map[plan.Condition][]int{}
	for i, c := range f.plan.Beam.Holders {
		of[c] = append(of[c], i+1)
	}
	text := ""
	for _, c := range []plan.Condition{plan.NoCut, plan.Stuck, plan.Out} {
		if len(of[c]) > 0 {
			text += "; " + c.String() + ": " + words.Holders(of[c])
		}
	}
	return strings.TrimPrefix(text, "; ")
}
