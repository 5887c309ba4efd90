// Package carry makes the next day of a shop from what is left of one: its file has the jobs
// that aren't done, with the text about them, and the same hours on another date. Where the
// holders are stays as it is, and the old file is kept under its date.
package carry

import (
	"errors"
	"fmt"
	"slices"
	"time"

	"bide/plan"
	"bide/plan/shop"
	"bide/plan/shop/disk"
	"bide/plan/shop/record"
	"bide/plan/words"
)

// date is how dates are typed and shown.
const date = "2006-01-02"

// Day carries the day of the shop in a folder to the date typed, or to the next one whose
// shifts are still to come at a time, and says what it did. Errors are the shop's Problems,
// that another program has the shop, that nothing can be carried, or *SaveError; day.toml is
// then as it was.
func Day(dir, to string, now time.Time) (said string, err error) {
	if s, problems := shop.Open(dir); s == nil { // before anything is written there
		return "", problems
	}
	lock, err := disk.TakeLock(dir, now)
	if taken, ok := errors.AsType[*disk.TakenError](err); ok {
		return "", fmt.Errorf("nothing is carried: the shop is open for writing by %s; quit bide there first", taken.By)
	}
	if err != nil {
		return "", err
	}
	defer lock.Release()
	s, problems := shop.Open(dir)
	if s == nil {
		return "", problems
	}
	days, err := daysTo(s.Day, to, now)
	if err != nil {
		return "", err
	}
	next, from, err := rest(s.Day, days, now)
	if err != nil {
		return "", err
	}
	kept, err := s.KeepDay("day-" + s.Day.Start.Format(date))
	if err != nil {
		return "", err
	}
	out, err := s.SaveDay(next, from)
	switch {
	case err != nil:
		return "", err
	case out.Beside:
		return "", errors.New(out.Said)
	}
	said = fmt.Sprintf("%s carried to %s; the old day.toml is kept as %s", words.Count(len(next.Jobs), "job"), next.Start.Format("Mon "+date+" 15:04"), kept)
	for _, j := range next.Jobs {
		if j.State == plan.Running {
			said += fmt.Sprintf("\n%s runs: %.0f of its %.0f m are done by the clock; correct ran_m in day.toml if they aren't", j.ID, j.Ran, j.Metres)
		}
	}
	if err := noted(dir, next, now); err != nil {
		said += "\nthe record could not be added to: " + err.Error()
	}
	return said, nil
}

// noted writes the order of the new day into the record.
func noted(dir string, day *plan.Day, now time.Time) error {
	r, err := record.Open(dir)
	if err != nil {
		return err
	}
	e := record.Event{Time: now.Truncate(time.Second), Kind: record.Sequence}
	for _, j := range day.Jobs {
		e.Order = append(e.Order, j.ID)
	}
	return errors.Join(r.Append(e), r.Close())
}

// daysTo is how many days the hours of a day move: to a date, or else as few as let them
// begin when the old ones have ended and end after now. Hours that begin on several dates
// move by whole weeks then.
func daysTo(day *plan.Day, to string, now time.Time) (int, error) {
	shifts := day.Shifts()
	first, ends := shifts[0].From, shifts[len(shifts)-1].To
	if ends.IsZero() { // the day is over when its date is
		y, m, d := first.Date()
		ends = time.Date(y, m, d+1, 0, 0, 0, 0, first.Location())
	}
	if to != "" {
		at, err := time.ParseInLocation(date, to, time.UTC)
		if err != nil {
			return 0, fmt.Errorf("--to %s is no date: write it as %s", words.Clean(to), first.AddDate(0, 0, 1).Format(date))
		}
		y, m, d := first.Date()
		days := int(at.Sub(time.Date(y, m, d, 0, 0, 0, 0, time.UTC)) / (24 * time.Hour))
		if days < 1 || days > mostDays {
			return 0, fmt.Errorf("--to %s: the day begins on %s; name a date of the %d days after it", to, first.Format(date), mostDays)
		}
		return days, nil
	}
	if now.Before(ends) {
		return 0, fmt.Errorf("nothing is carried: the last shift ends on %s, which is still to come; to carry all the same, say to which date with --to", ends.Format(date+" at 15:04"))
	}
	step := 1
	if shifts[len(shifts)-1].From.YearDay() != first.YearDay() {
		step = 7
	}
	for days := step; ; days += step {
		if !first.AddDate(0, 0, days).Before(ends) && ends.AddDate(0, 0, days).After(now) {
			return days, nil
		}
	}
}

// mostDays is how far a day is carried: further off the date is mistyped.
const mostDays = 366

// rest is the day with the jobs that aren't done, its hours so many days later, and for each
// job the id that it has in the file.
func rest(day *plan.Day, days int, now time.Time) (*plan.Day, []string, error) {
	later := func(h plan.Hours) plan.Hours {
		h.From = h.From.AddDate(0, 0, days)
		if !h.To.IsZero() {
			h.To = h.To.AddDate(0, 0, days)
		}
		return h
	}
	next := *day
	shifts := day.Shifts()
	for i := range shifts {
		shifts[i] = later(shifts[i])
	}
	next.Start, next.End = shifts[0].From, shifts[len(shifts)-1].To
	if day.Calendar != nil {
		pauses := slices.Clone(day.Calendar.Pauses)
		for i := range pauses {
			pauses[i].Hours = later(pauses[i].Hours)
		}
		next.Calendar = plan.NewCalendar(shifts, pauses)
	}
	stopped := day.End
	if stopped.IsZero() || now.Before(stopped) {
		stopped = now
	}
	next.Jobs = nil
	var from []string
	for _, j := range left(day.Jobs) {
		if j.State == plan.Running && !j.Began.IsZero() {
			j.Ran = ranBy(&j, day.Calendar, stopped)
			j.Began = next.Start
		}
		next.Jobs, from = append(next.Jobs, j), append(from, j.ID)
	}
	if len(next.Jobs) == 0 {
		return nil, nil, errors.New("nothing is carried: all jobs of the day are done. Write the next ones into day.toml")
	}
	return &next, from, nil
}

// left are the jobs that aren't done. Those done are gone from after and from the numbers
// in the sequence.
func left(jobs []plan.Job) (out []plan.Job) {
	done := map[string]bool{}
	for _, j := range jobs {
		if j.State == plan.Done {
			done[j.ID] = true
		}
	}
	for _, j := range jobs {
		if done[j.ID] {
			continue
		}
		j.After = slices.DeleteFunc(slices.Clone(j.After), func(id string) bool { return done[id] })
		if j.Fixed > 0 {
			j.Fixed = max(j.Fixed-len(done), 0)
		}
		if j.Fixed < -(len(jobs) - len(done)) {
			j.Fixed = 0
		}
		out = append(out, j)
	}
	return out
}

// ranBy is how many metres a running job has run at a time, by the clock, to the metre.
func ranBy(j *plan.Job, c *plan.Calendar, at time.Time) float64 {
	whole := j.RunTime()
	share := 1.0
	if worked := c.Worked(j.Began, at); whole > 0 && worked < whole {
		share = max(worked.Seconds()/whole.Seconds(), 0)
	}
	return float64(int(j.Ran + share*(j.Metres-j.Ran)))
}
