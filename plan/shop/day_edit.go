package shop

import (
	"bide/plan"
	"bide/plan/shop/dayfile"
	"bide/plan/shop/knife"
	"bide/plan/shop/toml"
)

// The keys of day.toml in the order in which bide writes them.
var (
	dayKeys = []string{"units", "start", "end", "aim"}
	jobKeys = []string{"id", "material", "web", "slits", "trim", "shift", "arrange", chosenSlits, chosenShift, chosenIdle, chosenMoves, chosenSetup, "length_m", "speed", "due", "after", "state", "fixed", "core", "roll_m", "roll_diameter", "customer", "note"}
)

// dayReading is a text of a day as read, right or wrong.
type dayReading struct {
	on       *knife.Equipment // of the beam whose day it would be
	day      *plan.Day
	unit     plan.Unit
	entries  []*toml.Table
	problems toml.Problems
}

// readDayText reads a text as the shop's day.toml would be; nil when it can't be
// parsed at all.
func readDayText(on *knife.Equipment, text string) (*dayReading, toml.Problems) {
	r := &dayReading{on: on}
	d := toml.NewDocument(dayFile, examples, &r.problems)
	root := d.Parse(text)
	if root == nil {
		return nil, r.problems
	}
	r.day = readDay(d, root, on, true)
	r.unit, r.entries = d.Unit, root.List("job")
	if len(text) > toml.LargestFile {
		d.Problem("", "", "the day is too large for its file", "keep some jobs for another day")
	}
	return r, r.problems.Sorted()
}

// holds reports whether the text holds the day wanted, and nothing wrong.
func (r *dayReading) holds(d *plan.Day) bool {
	if r == nil || len(r.problems) > 0 || len(r.day.Jobs) != len(d.Jobs) || len(r.above(d)) > 0 {
		return false
	}
	for i := range d.Jobs {
		if len(r.edits(i, &d.Jobs[i])) > 0 {
			return false
		}
	}
	return true
}

// above lists what must be changed above the jobs.
func (r *dayReading) above(d *plan.Day) (out []dayfile.Edit) {
	if !r.day.Start.Equal(toml.Local(d.Start)) {
		out = append(out, dayfile.Edit{Key: "start", Value: optionalTime(d.Start)})
	}
	if !r.day.End.Equal(toml.Local(d.End)) {
		out = append(out, dayfile.Edit{Key: "end", Value: optionalTime(d.End)})
	}
	if r.day.Aim != d.Aim {
		out = append(out, dayfile.Edit{Key: "aim", Value: word(aimWords, int(d.Aim))})
	}
	return out
}

// edited is a text of a day changed into one that holds the day wanted, line by
// line: comments, order of keys and line ends of all that isn't changed stay to the
// byte. from names, for each job, the id of the job of the text that it is or was
// copied from. It reports false when the text is of another build, so that this
// can't be done.
//
// Each round reads what the last one made and changes what still differs: a job's
// default may depend on a key changed with it, as the speed does on the material.
func edited(on *knife.Equipment, text string, d *plan.Day, from []string) (string, bool) {
	pieces, ok := dayfile.Split(text)
	r, _ := readDayText(on, text)
	if !ok || r == nil || len(r.day.Jobs) != pieces.Jobs() {
		return "", false
	}
	pieces = pieces.Arranged(dayfile.Origins(ids(d), from, ids(r.day)))
	const rounds = 3
	for range rounds {
		text = pieces.String()
		if r, _ = readDayText(on, text); r == nil || len(r.day.Jobs) != len(d.Jobs) || len(r.entries) != len(d.Jobs) {
			return "", false
		}
		if !r.change(&pieces, d) {
			break
		}
	}
	return text, r.holds(d)
}

// change makes the edits of a text that are left, and reports whether there were any.
func (r *dayReading) change(t *dayfile.Text, d *plan.Day) (changed bool) {
	for _, e := range r.above(d) {
		t.ChangeHead(e, dayKeys)
		changed = true
	}
	for i := range d.Jobs {
		for _, e := range r.edits(i, &d.Jobs[i]) {
			t.ChangeJob(i, e, jobKeys)
			changed = true
		}
	}
	return changed
}

// wholeDay is a text for the day written anew, and what keeps it from being right.
func wholeDay(on *knife.Equipment, u plan.Unit, d *plan.Day) (string, toml.Problems) {
	pieces := dayfile.New(wholeHead+"units = "+toml.String(u.String())+"\n\n", len(d.Jobs))
	var r *dayReading
	var problems toml.Problems
	for range 3 {
		if r, problems = readDayText(on, pieces.String()); r == nil || len(r.day.Jobs) != len(d.Jobs) || !r.change(&pieces, d) {
			break
		}
	}
	for i := range problems {
		problems[i].Line = 0 // of a text that nobody has seen
	}
	if len(problems) == 0 && !r.holds(d) {
		problems = toml.Problems{{File: dayFile, What: "the day would not be read back as it is", Remedy: "correct names and times"}}
	}
	return pieces.String(), problems
}

const wholeHead = `# Written by bide: the day as it is on the screen.
`

// ids are the ids of a day's jobs.
func ids(d *plan.Day) []string {
	out := make([]string, len(d.Jobs))
	for i := range d.Jobs {
		out[i] = d.Jobs[i].ID
	}
	return out
}
