package sheet

import (
	"fmt"
	"strconv"
	"strings"

	"bide/plan"
)

// changeover is the sheet of one changeover, step i of the day: on as few pages as
// its groups of moves allow, in the smallest groups that do.
func (t *text) changeover(i int) {
	before, fewest := len(t.pages), []*page(nil)
	for _, group := range []int{5, 10, 20} {
		t.pages, t.group = t.pages[:before:before], group
		t.changeoverIn(i)
		if now := t.pages[before:]; fewest == nil || len(now) < len(fewest) {
			fewest = now
		}
	}
	t.pages = append(t.pages[:before:before], fewest...)
}

func (t *text) changeoverIn(i int) {
	s := &t.plan.Steps[i]
	t.begin(fmt.Sprintf("CHANGEOVER %d of %d", i+1, len(t.plan.Steps)), t.between(i),
		"setup "+t.clock(s.SetupStart)+", run "+t.clock(s.RunStart))
	t.job(s, t.swaps[i])
	t.knife(i)
	t.setup(s)
	t.picture(s)
	t.bend(i)
	t.para(before()...)
	t.moves(s)
	t.result(s)
	t.close(t.mark, append(append(after(s.Setup.Swaps), ""), signOff()...)...)
}

const longestID = 18 // of two side by side in a title

// between names the jobs that step i changes from and to.
func (t *text) between(i int) string {
	from, to := t.plan.Start.Job, "to "+cut(t.plan.Steps[i].Job.ID, longestID)
	if i > 0 {
		from = t.plan.Steps[i-1].Job.ID
	}
	if from == "" {
		return to
	}
	return cut(from, longestID) + " " + to
}

// job tells what is to be run.
func (t *text) job(s *plan.Step, w swap) {
	u, j, l := t.options.Unit, s.Job, &s.Layout
	if runes(j.ID) > longestID {
		t.add(labelled("Job", j.ID)...)
	}
	t.add(labelled("Material", j.Material)...)
	t.add(labelled("Web", fmt.Sprintf("%s, guided to the %s of the web area; from %s to %s",
		both(j.Web, u), guides[t.plan.Beam.Guide], u.Number(l.Web.From), u.Show(l.Web.To)))...)
	t.slits(s)
	t.add(labelled("Trim", trim(l, u))...)
	t.add(labelled("Blade", blade(j, u))...)
	if len(w.change) > 0 {
		t.add(labelled("", "swap "+count(len(w.change), "blade")+": "+holders(w.change))...)
	}
	if len(w.unknown) > 0 {
		t.add(labelled("", "not known what these carry, look before they cut: "+holders(w.unknown))...)
	}
	t.add(labelled("Pressure", pressure(j))...)
	if j.SiliconeFree {
		t.add(labelled("Clean", "SILICONE-FREE job: blades, wicks and rolls must be clean of silicone")...)
	}
	t.add(labelled("Run", t.run(s))...)
	t.conditions()
}

var guides = [...]string{plan.GuideCentre: "centre", plan.GuideOperator: "operator edge", plan.GuideDrive: "drive edge"}

// holders names holders in words.
func holders(numbers []int) string {
	if len(numbers) == 1 {
		return fmt.Sprintf("holder %d", numbers[0])
	}
	return "holders " + ranges(numbers)
}

// slits lists the slits as runs of equal ones, the operator side first.
func (t *text) slits(s *plan.Step) {
	slits, want := s.Layout.Slits, finished(s)
	t.add(labelled("Slits", fmt.Sprintf("%d, counted from the operator side", len(slits)))...)
	for i := 0; i < len(slits); {
		n := i + 1
		for n < len(slits) && slits[n] == slits[i] {
			n++
		}
		which := strconv.Itoa(i + 1)
		if n > i+1 {
			which += "-" + strconv.Itoa(n)
		}
		text := both(slits[i], t.options.Unit)
		if want != nil && want[i] != slits[i] {
			text += ", to finish at " + both(want[i], t.options.Unit)
		}
		t.add(hang(fmt.Sprintf("%11s%-8s %4d x ", "", which, n-i), text)...)
		i = n
	}
}

// trim tells the waste on both sides and how far the layout is from centred.
func trim(l *plan.Layout, u plan.Unit) string {
	if l.Trim == [2]plan.Length{} {
		return "none: the slits fill the web"
	}
	text := fmt.Sprintf("operator side %s, drive side %s", u.Show(l.Trim[0]), u.Show(l.Trim[1]))
	switch {
	case l.Shift > 0:
		return text + "; the layout is " + both(l.Shift, u) + " to the drive side of centred"
	case l.Shift < 0:
		return text + "; the layout is " + both(-l.Shift, u) + " to the operator side of centred"
	}
	return text + "; centred"
}

// blade tells the edge that the job wants.
func blade(j *plan.Job, u plan.Unit) string {
	if !j.Blade.Known() {
		return "not known what the material wants"
	}
	tip := strconv.FormatFloat(j.Blade.Tip, 'f', -1, 64) + " mm"
	if u == plan.Inches {
		tip += fmt.Sprintf(" (%.4f in)", j.Blade.Tip/25.4)
	}
	return fmt.Sprintf("included bevel %v deg, tip radius %s", j.Blade.Bevel, tip)
}

// psi is a bar in pounds-force to the square inch (NIST SP 811, B.8: 1 psi is
// 6.894 757 kPa).
const psi = 100 / 6.894757

func pressure(j *plan.Job) string {
	if j.SetBar == 0 {
		return "not known; find by trial"
	}
	return fmt.Sprintf("set %.1f bar (%.0f psi), a starting value: prove it on the first-off", j.SetBar, j.SetBar*psi)
}

// run tells how long, how fast and when.
func (t *text) run(s *plan.Step) string {
	const feet = 0.3048 // metres to the foot, exact
	speed := fmt.Sprintf("%.0f m/min", s.Job.Speed)
	if t.options.Unit == plan.Inches {
		speed = fmt.Sprintf("%.0f ft/min (%s)", s.Job.Speed/feet, speed)
	}
	text := fmt.Sprintf("%.0f m at %s, %s to %s", s.Job.Metres, speed, t.clock(s.RunStart), t.clock(s.RunEnd))
	if !s.Job.Due.IsZero() {
		text += "; due " + t.clock(s.Job.Due)
	}
	if s.Late > 0 {
		text += ", LATE by " + span(s.Late)
	}
	return text
}

// conditions names the holders that aren't good.
func (t *text) conditions() {
	of := map[plan.Condition][]int{}
	for i, c := range t.plan.Beam.Holders {
		of[c] = append(of[c], i+1)
	}
	text := ""
	for _, c := range []plan.Condition{plan.NoCut, plan.Stuck, plan.Out} {
		if len(of[c]) > 0 {
			text += "; " + c.String() + ": " + holders(of[c])
		}
	}
	if text != "" {
		t.add(labelled("Not good", text[2:])...)
	}
}

// setup tells the minutes by cause.
func (t *text) setup(s *plan.Step) {
	c := &s.Setup
	causes := []struct {
		minutes string
		counts  bool
		what    string
	}{
		{minutes(max(c.Positioner, c.Crew)), c.Positioner > 0 || c.Crew > 0, sideWork(t.plan.Beam, c)},
		{minutes(c.Every), c.Every > 0, "stop, unload, first-off"},
		{minutes(c.Rethread), c.Rethread > 0, "rethread: other material or web width"},
		{minutes(c.CleanDown), c.CleanDown > 0, "clean down to free of silicone"},
		{minutes(c.Pressure), c.Pressure > 0, "other set pressure"},
	}
	t.add(labelled("Setup", minutes(c.Total())+" min in all")...)
	for _, w := range causes {
		if w.counts {
			t.add(hang(strings.Repeat(" ", 11)+fmt.Sprintf("%5s  ", w.minutes), w.what)...)
		}
	}
}

// beside says what time reckoned side by side does not permit.
const beside = "away from the beam, and only where the site's procedure allows it"

// sideWork tells what is reckoned side by side: the moves, and the blades.
func sideWork(b *plan.Beam, c *plan.SetupTime) string {
	by := [...]string{plan.Shuttle: "by the carriage", plan.OwnDrive: "by the holders' drives", plan.ByHand: "by hand"}
	blades := count(c.Swaps, "blade") + " swapped"
	switch {
	case c.Swaps == 0:
		return "moves " + by[b.Drive.Kind]
	case c.Positioner == 0:
		return blades
	case c.Crew > c.Positioner:
		return fmt.Sprintf("%s; the moves, %s min, are reckoned beside that: %s", blades, minutes(c.Positioner), beside)
	}
	return fmt.Sprintf("moves %s; %s, %s min, reckoned beside that: %s", by[b.Drive.Kind], blades, minutes(c.Crew), beside)
}
