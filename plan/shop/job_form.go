package shop

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
	"time"

	"bide/plan"
	"bide/plan/changeover/layouts"
	"bide/plan/shop/toml"
	"bide/plan/words"
)

// Typed is one job as a person types it into a form, by the keys of day.toml: the
// values without TOML's quotes and brackets. A key that is missing or empty isn't
// given. Slits and after are lists with commas or semicolons; due may be a time of
// day alone, which is the next one from the day's start on.
type Typed map[string]string

// FieldProblem is one thing wrong in a form.
type FieldProblem struct {
	Key    string // of day.toml: the field it belongs to
	What   string
	Remedy string
	// Refused says that the job is right as such, but this beam can't run it: it
	// may be kept in the day, and is refused by the plan.
	Refused bool
}

// JobKeys are the keys of a job that a form has, in the order in which files have them
// too. What a search chose, and what is recorded, isn't typed.
func JobKeys() []string {
	return slices.DeleteFunc(slices.Clone(jobKeys), func(key string) bool { return slices.Contains(chosenKeys, key) || slices.Contains(recordedKeys, key) })
}

// DayUnit is the unit that lengths of the day's jobs are typed and written in; with
// inches, speeds are in ft/min.
func (s *Shop) DayUnit() plan.Unit { return s.dayUnit }

// ReadJob reads a form with the checks that day.toml is read with: the same ranges,
// words and rules among the day's jobs. The day is the one that the job is to be in,
// and i its turn there from 0, or len(day.Jobs) for a job to be added. What is left
// out is as it is in a file. With problems that aren't Refused the job is not to be
// used.
//
// Where a job gets another id, after in other jobs is taken to be changed along
// with it: see Renamed. A layout that was chosen for the job stays, as long as it is to
// be laid out as before: see plan.Job's LaidLike.
func (s *Shop) ReadJob(f Typed, day *plan.Day, i int) (plan.Job, []FieldProblem) {
	told := &form{}
	t := toml.NewTyped(dayFile, "job", s.dayUnit, f.tree(day.Start), examples, told.note)
	t.Doc.Zone = day.Start.Location()
	j := jobReader{t, &s.Equipment, true}.read()
	entries, others := dumb(day), slices.Clone(day.Jobs)
	if i < len(others) {
		old := others[i].ID
		entries, others = slices.Delete(entries, i, i+1), Renamed(slices.Delete(others, i, i+1), old, j.ID)
		before := &day.Jobs[i]
		if j.LaidLike(before) {
			j.Chosen = before.Chosen
		}
		j.Began, j.Ended, j.Ran = before.Began, before.Ended, before.Ran
	}
	checkOrder(append(entries, t), append(others, j)) // the last has the clash reported
	checkDue([]*toml.Table{t}, &plan.Day{Start: day.Start, Jobs: []plan.Job{j}})
	t.Done()
	if told.laidOut() {
		probe := j
		if len(told.problems) > 0 {
			probe.Uncut = "" // what is set at the knife may follow from what is wrong
		}
		s.refusals(told, &probe)
	}
	return j, told.problems
}

// laidOut reports whether all is right by which a job is laid out on the beam.
func (f *form) laidOut() bool {
	return !slices.ContainsFunc(f.problems, func(p FieldProblem) bool {
		return slices.Contains([]string{"web", "slits", "trim", "shift", "arrange"}, p.Key)
	})
}

// Renamed is the jobs with one job's new id in every after that named the old one.
func Renamed(jobs []plan.Job, old, id string) []plan.Job {
	out := slices.Clone(jobs)
	for i := range out {
		if slices.Contains(out[i].After, old) {
			out[i].After = slices.Clone(out[i].After) // an after may name it more than once
			for k, after := range out[i].After {
				if after == old {
					out[i].After[k] = id
				}
			}
		}
	}
	return out
}

// Released is the jobs with one job's id taken out of every after, as when that job
// is taken out of the day.
func Released(jobs []plan.Job, id string) []plan.Job {
	out := slices.Clone(jobs)
	for i := range out {
		if slices.Contains(out[i].After, id) {
			out[i].After = slices.DeleteFunc(slices.Clone(out[i].After), func(after string) bool { return after == id })
		}
	}
	return out
}

// form gathers the problems of what a person typed.
type form struct{ problems []FieldProblem }

// note keeps a problem at a path such as job.slits.
func (f *form) note(path, what, remedy string) {
	f.problems = append(f.problems, FieldProblem{Key: path[strings.LastIndexByte(path, '.')+1:], What: what, Remedy: remedy})
}

// refusals adds what keeps the job from being laid out on the beam.
func (s *Shop) refusals(f *form, j *plan.Job) {
	for _, fault := range layouts.Faults(s.Beam, j) {
		why := fault.Why(s.dayUnit)
		f.problems = append(f.problems, FieldProblem{fault.Key, why + s.allowance(j, why), s.remedy(fault.Key, why), true})
	}
}

// dumb are entries for the day's other jobs, whose problems are not those of the
// form.
func dumb(day *plan.Day) []*toml.Table {
	out := make([]*toml.Table, len(day.Jobs))
	for i := range out {
		out[i] = toml.NewTyped(dayFile, fmt.Sprintf("job %d", i+1), 0, map[string]any{}, examples, (&form{}).note)
		out[i].Called(day.Jobs[i].ID)
	}
	return out
}

// tree is the form as the tree of a file: numbers and times where they are such,
// and else text, which the reader then says.
func (f Typed) tree(start time.Time) map[string]any {
	out := map[string]any{}
	for key, text := range f {
		if text = strings.TrimSpace(text); text == "" {
			continue
		}
		switch key {
		case "slits", "after":
			out[key] = listed(text)
		case "length_m", "speed", "roll_m", "parent_m":
			out[key] = orText(strconv.ParseFloat(text, 64))(text)
		case "unbroken":
			out[key] = orText(strconv.ParseBool(map[string]string{"yes": "true", "no": "false"}[text]))(text)
		case "fixed":
			out[key] = orText(strconv.ParseInt(text, 10, 64))(text)
		case "due":
			out[key] = orText(typedTime(text, start))(text)
		default:
			out[key] = text
		}
	}
	return out
}

// orText is a value, or the text that it couldn't be read from.
func orText[T any](value T, err error) func(string) any {
	return func(text string) any {
		if err != nil {
			return text
		}
		return value
	}
}

// listed cuts a typed list at its semicolons and line ends or, where it has none,
// at its commas. A comma right between two digits is a decimal one.
func listed(text string) []any {
	var out []any
	add := func(item string) {
		if item = strings.TrimSpace(item); item != "" {
			out = append(out, item)
		}
	}
	if strings.ContainsAny(text, ";\n") {
		for _, item := range strings.FieldsFunc(text, func(r rune) bool { return r == ';' || r == '\n' }) {
			add(item)
		}
		return out
	}
	from := 0
	for i := range len(text) {
		if decimal := i > 0 && i+1 < len(text) && isDigit(text[i-1]) && isDigit(text[i+1]); text[i] == ',' && !decimal {
			add(text[from:i])
			from = i + 1
		}
	}
	add(text[from:])
	return out
}

func isDigit(b byte) bool { return b >= '0' && b <= '9' }

// TimeOf is a time that a person types, in the zone of a day that starts then: a date and
// time, or a time of day alone, which is the next one from the start on.
func TimeOf(text string, start time.Time) (time.Time, error) {
	at, err := typedTime(strings.TrimSpace(text), start)
	if err != nil {
		return at, fmt.Errorf("%s is no time: write 09:30, or %s", words.Quoted(text), start.Format("2006-01-02T")+"09:30")
	}
	local, ok := toml.InZone(at, start.Location())
	if !ok {
		return at, fmt.Errorf("there is no %s that day: clocks go forward then", at.Format("15:04"))
	}
	return local, nil
}

// typedTime reads a date and time, or a time of day: the next one from the day's
// start on. The zone is the one by which the reader knows a local time.
func typedTime(text string, start time.Time) (at time.Time, err error) {
	local := time.FixedZone("datetime-local", 0)
	for _, layout := range []string{"2006-01-02T15:04:05", "2006-01-02T15:04", "2006-01-02 15:04:05", "2006-01-02 15:04"} {
		if at, err = time.ParseInLocation(layout, text, local); err == nil {
			return at, nil
		}
	}
	clock, err := time.ParseInLocation("15:04", text, local)
	if err != nil {
		return at, err
	}
	at = time.Date(start.Year(), start.Month(), start.Day(), clock.Hour(), clock.Minute(), 0, 0, local)
	if at.Before(time.Date(start.Year(), start.Month(), start.Day(), start.Hour(), start.Minute(), start.Second(), 0, local)) {
		at = at.AddDate(0, 0, 1)
	}
	return at, nil
}

// Typed is a job as a form shows it: read again, it is the same job.
func (s *Shop) Typed(j *plan.Job) Typed {
	length := func(l plan.Length) string { text, _ := toml.LengthText(l, s.dayUnit); return text }
	entries := make([]string, len(j.Entries))
	for i, e := range j.Entries {
		entries[i] = toml.EntryText(e, s.dayUnit)
	}
	after := strings.Join(j.After, "; ")
	if strings.Contains(after, ",") { // of one id: it is no list
		after += ";"
	}
	due := ""
	if !j.Due.IsZero() {
		due = strings.TrimSuffix(strings.Replace(toml.Time(j.Due), "T", " ", 1), ":00")
	}
	given := func(l plan.Length) string {
		text, _ := toml.LengthText(l, s.dayUnit)
		return map[bool]string{true: text}[l > 0]
	}
	return Typed{
		"id": j.ID, "material": j.Material, "web": length(j.Web), "slits": strings.Join(entries, "; "), "trim": length(j.Trim),
		"shift": shiftWords[j.Shift], "arrange": arrangeWords[j.Arrange], "state": stateWords[j.State],
		"length_m": toml.Number(j.Metres), "speed": speedText(j.Speed, s.dayUnit),
		"core": given(j.Roll.Core), "roll_m": optionalNumber(j.Roll.Metres), "roll_diameter": given(j.Roll.Diameter), "parent_m": optionalNumber(j.Roll.Parent),
		"due": due, "after": after, "fixed": turnText(j.Fixed),
		"unbroken": map[bool]string{true: "yes"}[j.Unbroken], "customer": j.Customer, "note": j.Note,
	}
}
