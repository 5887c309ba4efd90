package shop

import (
	"cmp"
	"fmt"
	"math/big"
	"strings"
	"time"

	"bide/material"
	"bide/plan"
	"bide/plan/shop/knife"
	"bide/plan/shop/toml"
	"bide/plan/words"
)

// longestRun is the longest time in minutes that a job may run: a week.
const longestRun = 7 * 24 * 60

// defaultTrim is the least edge trim of a job that names none.
const defaultTrim = 3 * plan.Millimetre

// The words of a job's rules and states, in the order of their values.
var (
	shiftWords   = []string{"centred", "free"}
	arrangeWords = []string{"listed", "entries", "any"}
	stateWords   = []string{plan.Waiting.String(), plan.Running.String(), plan.Done.String(), plan.OnHold.String()}
	aimWords     = []string{"minutes", "moves"} // of the day
)

// jobReader reads one [[job]] entry of the day.
type jobReader struct {
	*toml.Table
	on    *knife.Equipment // the beam and its materials, as far as they could be read
	known bool             // the shop's materials could be read
}

func (t jobReader) read() plan.Job {
	j := plan.Job{ID: t.Text("id", "")}
	t.Called(j.ID)
	t.Need("id", "material", "web", "slits", "length_m")
	j.Web = t.Length("web", 0, toml.AboveZero)
	j.Trim = t.Length("trim", defaultTrim, toml.ZeroOrMore)
	j.Shift = plan.ShiftRule(t.Choice("shift", shiftWords...))
	j.Arrange = plan.Arrange(t.Choice("arrange", arrangeWords...))
	j.Metres = t.Number("length_m", 0, 0.001, 1e7)
	j.Roll = t.roll()
	j.Due = t.Clock("due")
	j.After = t.ids("after")
	j.State = plan.State(t.Choice("state", stateWords...))
	j.Began, j.Ended, j.Ran = t.Clock("began"), t.Clock("ended"), t.Number("ran_m", 0, 0, 1e7)
	if !j.Ended.IsZero() && j.Ended.Before(j.Began) {
		t.Refuse("ended", "correct began or ended", "it ended before it began")
	}
	j.Unbroken = t.Flag("unbroken", false)
	if t.Has("fixed") {
		j.Fixed = t.Whole("fixed", 0, -mostJobs, mostJobs)
		if t.Keys["fixed"] == int64(0) {
			t.Refuse("fixed", "count from 1, or from -1 for the last", "there is no number 0")
		}
	}
	j.Customer, j.Note = t.Text("customer", ""), t.Text("note", "")
	m := t.material(&j)
	j.Entries = t.entries("slits", m)
	j.Chosen = t.chosen(m, &j)
	j.Speed = t.speed(m)
	t.press(&j)
	t.run(&j, m)
	t.checkRun(&j)
	return j
}

// checkRun refuses a job that runs too long for a day's clock.
func (t jobReader) checkRun(j *plan.Job) {
	switch {
	case j.Speed > 0 && j.Metres/j.Speed > longestRun:
		t.Refuse("length_m", "correct length_m or speed", "%s m at %s m/min run longer than a week", toml.Plainly(j.Metres), toml.Plainly(j.Speed))
	case j.Run.Total() > longestRun*time.Minute:
		t.Refuse("length_m", "correct length_m, the rolls, or [line] in beam.toml", "%s m, with ramps and stops for each roll, run longer than a week", toml.Plainly(j.Metres))
	}
}

// material finds the job's material and puts what it asks of the beam into the job.
func (t jobReader) material(j *plan.Job) material.Material {
	j.Material = t.Text("material", "")
	m, ok := t.on.Materials.Lookup(j.Material)
	if !ok {
		if j.Material != "" && t.known {
			t.Refuse("material", materialRemedy(j.Material, t.on.Materials), "%s is no material of the table", words.Quoted(j.Material))
		}
		return m
	}
	j.Blade = plan.Blade{Bevel: m.Bevel, Tip: m.Tip}
	j.SiliconeFree = m.SiliconeFree
	return m
}

// The outside of cores and rolls that is taken: what is beyond is a slip of units.
var rollRange = plan.Span{From: plan.Millimetre, To: 10_000 * plan.Millimetre}

// roll reads what is asked of a finished roll, and what is on a parent roll.
func (t jobReader) roll() plan.Roll {
	r := plan.Roll{Core: t.Length("core", 0, rollRange), Metres: t.Number("roll_m", 0, 0.1, 1e7), Diameter: t.Length("roll_diameter", 0, rollRange), Parent: t.Number("parent_m", 0, 0.1, 1e7)}
	if t.Has("roll_m") && t.Has("roll_diameter") {
		t.Refuse("roll_diameter", "give roll_m or roll_diameter, the other follows from it", "roll_m says how much is on a roll already")
	}
	u, core, taken := t.Doc.Unit, r.Core, ""
	if core == 0 {
		core, taken = plan.Length(t.on.Limits.OrUsual().CoreMM*float64(plan.Millimetre)), ", assumed since no core is given"
	}
	if r.Diameter > 0 && r.Diameter <= core {
		t.Refuse("roll_diameter", "correct it, or give the outside of the core as core", "a roll of %s is no larger than a core of %s%s", u.Show(r.Diameter), u.Show(core), taken)
	}
	return r
}

// press puts the pressure that parts the material into the job, or why none does, and what
// is fitted for it.
func (t jobReader) press(j *plan.Job) {
	set := t.on.Settings(j)
	if set == nil {
		return
	}
	j.SetBar, j.Uncut = set.Air.SetBar, set.Refused
	j.Wick, j.Pistons = knife.Fitted(set)
	if w := set.Wound; w != nil && !w.Whole {
		j.SetMetres = w.Metres
	}
}

// mostStops bounds the stops of one run.
const mostStops = 10_000

// run puts what the run takes into the job, with its stops as far as they are known.
func (t jobReader) run(j *plan.Job, m material.Material) {
	j.SetMetres = cmp.Or(j.SetMetres, j.Roll.Metres)
	j.ParentMetres = cmp.Or(j.Roll.Parent, m.ParentMetres)
	if t.on.Beam != nil {
		j.ParentMetres = cmp.Or(j.ParentMetres, t.on.Beam.Line.ParentMetres)
	}
	for metres, key := range map[float64]string{j.SetMetres: "roll_m or roll_diameter", j.ParentMetres: "parent_m"} {
		if metres > 0 && j.Metres/metres > mostStops {
			t.Refuse("length_m", "correct length_m, "+key, "%s m on rolls of %s m each stop more than %d times", toml.Plainly(j.Metres), toml.Plainly(metres), mostStops)
			return
		}
	}
	if t.on.Beam != nil {
		j.Run = t.on.Beam.Line.Run(j)
	}
}

// materialRemedy names the material that was likely meant, or where to add it.
func materialRemedy(name string, table material.Table) string {
	if near := words.Nearest(name, table.Names()); near != "" {
		return "did you mean " + words.Quoted(near) + "?"
	}
	return "add it to materials.toml, or write a built-in group such as " + words.Quoted(material.Groups()[0].Name)
}

// entries reads a list of slit entries and widens them by the material's allowance;
// none when the key is missing.
func (t jobReader) entries(key string, m material.Material) []plan.Entry {
	value, ok := t.Get(key)
	if !ok {
		return nil
	}
	list, ok := value.([]any)
	if !ok {
		t.Wrong(key, "list of slits", value)
		return nil
	}
	if len(list) == 0 {
		t.Refuse(key, "", "the list is empty")
	}
	factor := new(big.Rat).Quo(m.AllowancePct, big.NewRat(100, 1))
	factor.Add(factor, big.NewRat(1, 1))
	var out []plan.Entry
	total := 0
	for i, item := range list {
		n, finished, err := t.slit(item)
		switch {
		case err != nil:
			t.RefuseLength(key, fmt.Errorf("entry %d: %w", i+1, err))
			continue
		case finished <= 0 || finished > toml.Largest:
			t.Refuse(key, "correct it", "entry %d: a slit of %s must be above 0 and at most %s", i+1, t.Doc.Unit.Show(finished), t.Doc.Unit.Show(toml.Largest))
			continue
		}
		width, _ := finished.Times(factor) // within the range: largest doubled at most
		out = append(out, plan.Entry{Count: n, Finished: finished, Width: width})
		total += n
	}
	if total > plan.MaxCount {
		t.Refuse(key, "correct the counts", "%d slits are more than the %d accepted", total, plan.MaxCount)
		return nil
	}
	return out
}

// slit reads one entry, a length or COUNT x LENGTH.
func (t jobReader) slit(item any) (int, plan.Length, error) {
	if text, ok := item.(string); ok {
		return plan.ParseEntry(words.Clean(text), t.Doc.Unit)
	}
	l, err := t.ReadLength(item)
	return 1, l, err
}

// speed is the job's line speed in m/min; a file in inches gives ft/min. A job
// that names none runs at its material's.
func (t jobReader) speed(m material.Material) float64 {
	if !t.Has("speed") {
		return m.SpeedMax
	}
	perUnit := 1.0
	if t.Doc.Unit == plan.Inches {
		perUnit = feet
	}
	return t.Number("speed", 0, 0.1, 20_000) * perUnit
}

// mostAfter bounds the jobs that one job may wait for.
const mostAfter = 100

// ids is a key's list of job ids.
func (t jobReader) ids(key string) []string {
	value, ok := t.Get(key)
	if !ok {
		return nil
	}
	list, ok := value.([]any)
	if !ok {
		t.Wrong(key, "list of job ids", value)
	}
	if len(list) > mostAfter {
		t.Refuse(key, "name only the jobs that it must wait for", "%d entries are more than the %d accepted", len(list), mostAfter)
		return nil
	}
	var out []string
	for i, item := range list {
		id, ok := item.(string)
		if !ok {
			t.Refuse(key, "", "entry %d: %s is no job id", i+1, toml.KindOf(item))
			continue
		}
		out = append(out, words.Clean(strings.TrimSpace(id)))
	}
	return out
}
