package shop

import (
	"time"

	"bide/plan"
	"bide/plan/shop/dayfile"
	"bide/plan/shop/knife"
	"bide/plan/shop/toml"
)

// The keys of day.toml in the order in which bide writes them.
var (
	dayKeys   = []string{"units", "zone", "start", "end", "aim"}
	hoursKeys = []string{"from", "to"}
	jobKeys   = []string{"id", "material", "web", "slits", "trim", "shift", "arrange", chosenSlits, chosenShift, chosenIdle, chosenMoves, chosenSetup, "length_m", "speed", "due", "after", "state", "began", "ended", "ran_m", "fixed", "unbroken", "core", "roll_m", "roll_diameter", "parent_m", "customer", "note"}
)

// recordedKeys are those of a job that are written when it runs and ends.
var recordedKeys = []string{"began", "ended", "ran_m"}

// dayReading is a text of a day as read, right or wrong.
type dayReading struct {
	on       *knife.Equipment // of the beam whose day it would be
	day      *plan.Day
	unit     plan.Unit
	zone     *time.Location
	entries  []*toml.Table
	shifts   bool // its hours are [[shift]] entries
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
	r.unit, r.zone, r.entries, r.shifts = d.Unit, d.Zone, root.List("job"), root.Has("shift")
	if len(text) > toml.LargestFile {
		d.Problem("", "", "the day is too large for its file", "keep some jobs for another day")
	}
	return r, r.problems.Sorted()
}

// holds reports whether the text holds the day wanted, and nothing wrong.
func (r *dayReading) holds(d *plan.Day) bool {
	if r == nil || len(r.problems) > 0 || len(r.day.Jobs) != len(d.Jobs) || len(r.above(d)) > 0 || len(r.hours(d)) > 0 || !sameHours(r.day, d) {
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
	switch {
	case r.day.Start.Equal(d.Start):
	case r.shifts && d.Start.Equal(d.Shifts()[0].From):
		out = append(out, dayfile.Edit{Key: "start"})
	default:
		out = append(out, dayfile.Edit{Key: "start", Value: r.time(d.Start)})
	}
	if !r.day.End.Equal(d.End) && !r.shifts {
		out = append(out, dayfile.Edit{Key: "end", Value: r.time(d.End)})
	}
	if r.day.Aim != d.Aim {
		out = append(out, dayfile.Edit{Key: "aim", Value: word(aimWords, int(d.Aim))})
	}
	return out
}

// entryEdit is a change of one key of an entry, counted from 0, of a list.
type entryEdit struct {
	list string
	at   int
	dayfile.Edit
}

// hours lists what must be changed of the shifts and pauses, where there are as many.
func (r *dayReading) hours(d *plan.Day) (out []entryEdit) {
	change := func(list string, have, want []plan.Hours) {
		for i := range min(len(have), len(want)) {
			if !have[i].From.Equal(want[i].From) {
				out = append(out, entryEdit{list, i, dayfile.Edit{Key: "from", Value: r.time(want[i].From)}})
			}
			if !have[i].To.Equal(want[i].To) {
				out = append(out, entryEdit{list, i, dayfile.Edit{Key: "to", Value: r.time(want[i].To)}})
			}
		}
	}
	if r.shifts {
		change("shift", r.day.Shifts(), d.Shifts())
	}
	change("pause", pausesOf(r.day), pausesOf(d))
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
	for _, e := range r.hours(d) {
		t.ChangeEntry(e.list, e.at, e.Edit, hoursKeys)
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
	pieces := dayfile.New(wholeHead+"units = "+toml.String(u.String())+"\n"+hoursText(d)+"\n", len(d.Jobs))
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
