package shop

import (
	"bide/plan"
	"bide/plan/shop/knife"
	"bide/plan/shop/toml"
	"bide/plan/words"
)

// mostJobs bounds a day. With longestRun it keeps the day's clock in range.
const mostJobs = 500

// readDay reads day.toml. What a job's material asks of the beam is put into the
// job; known is false when the materials couldn't be read.
func readDay(d *toml.Document, root *toml.Table, on *knife.Equipment, known bool) *plan.Day {
	readUnits(d, root)
	day := &plan.Day{Zone: readZone(d, root), Aim: plan.Aim(root.Choice("aim", aimWords...))}
	readHours(root, day)
	entries := root.List("job")
	switch {
	case !root.Has("job"):
		d.Problem("", "", "there is no job", "add "+examples["job"])
	case len(entries) > mostJobs:
		root.Refuse("job", "keep some for another day", "%d jobs are more than the %d that are planned in one day", len(entries), mostJobs)
		entries = nil
	}
	for _, t := range entries {
		r := jobReader{t, on, known}
		day.Jobs = append(day.Jobs, r.read())
	}
	checkOrder(entries, day.Jobs)
	checkDue(entries, day)
	d.Notes = append(d.Notes, dayNotes(d, entries, day.Jobs, on.Materials)...)
	d.Notes = append(d.Notes, knifeNotes(on, day)...)
	for _, t := range entries {
		t.Done()
	}
	root.Done()
	return day
}

// checkOrder checks what the jobs say of each other: ids, after, fixed, state.
func checkOrder(entries []*toml.Table, jobs []plan.Job) {
	byID := map[string]int{}
	running := -1
	for i, t := range entries {
		j := &jobs[i]
		if first, ok := byID[j.ID]; ok && j.ID != "" {
			t.Refuse("id", "give each job an id of its own", "%s has the same id", entries[first].Place)
		} else {
			byID[j.ID] = i
		}
		if j.State == plan.Running && running >= 0 {
			t.Refuse("state", `only one job can run on a beam: write "waiting" or "done" for all but one`, "%s is running already", entries[running].Place)
		}
		if j.State == plan.Running {
			running = i
		}
	}
	checkAfter(entries, jobs, byID)
	checkTurns(entries, jobs)
}

// mostDays is how far a due time may lie from the day's start: further off the year
// is mistyped.
const mostDays = 366

// checkDue checks that due times belong to the day.
func checkDue(entries []*toml.Table, day *plan.Day) {
	for i, t := range entries {
		due := day.Jobs[i].Due
		if due.IsZero() || day.Start.IsZero() {
			continue
		}
		if days := due.Sub(day.Start).Abs().Hours() / 24; days > mostDays {
			t.Refuse("due", "look at the year", "due %s is more than %d days from the day's start, %s", due.Format("2006-01-02"), mostDays, day.Start.Format("2006-01-02"))
		}
	}
}

// checkAfter checks that every job named in an after is there, and that no job
// comes to wait for itself.
func checkAfter(entries []*toml.Table, jobs []plan.Job, byID map[string]int) {
	var ids []string
	for _, j := range jobs {
		ids = append(ids, j.ID)
	}
	waits := make([][]int, len(jobs))
	for i, t := range entries {
		for _, id := range jobs[i].After {
			k, ok := byID[id]
			switch {
			case !ok && t.Doc.Failed >= toml.MostProblems: // no more are shown
				t.Refuse("after", "correct it", "there is no job %s in the day", words.Quoted(id))
			case !ok:
				t.Refuse("after", meant(id, ids), "there is no job %s in the day", words.Quoted(id))
			case k == i:
				t.Refuse("after", "delete it", "the job is to come after itself")
			default:
				waits[i] = append(waits[i], k)
			}
		}
	}
	for _, i := range waitingForever(waits) {
		entries[i].Refuse("after", "delete one of the jobs from one after", "the job waits for itself, through the jobs named in after")
	}
}

// waitingForever lists the jobs on a circle of waits, or between two: those that
// are left when again and again every job is taken out that waits for none, or
// that none waits for. It takes time linear in the waits.
func waitingForever(waits [][]int) []int {
	back := make([][]int, len(waits))
	for i, ks := range waits {
		for _, k := range ks {
			back[k] = append(back[k], i)
		}
	}
	left := make([]bool, len(waits))
	for i := range left {
		left[i] = true
	}
	takeOut(waits, back, left)
	takeOut(back, waits, left)
	var out []int
	for i, on := range left {
		if on {
			out = append(out, i)
		}
	}
	return out
}

// takeOut takes out every node that has no edge to one that is left. The edges are
// in to, those against them in back.
func takeOut(to, back [][]int, left []bool) {
	open := make([]int, len(to))
	var ready []int
	for i, ks := range to {
		for _, k := range ks {
			if left[k] {
				open[i]++
			}
		}
		if open[i] == 0 {
			ready = append(ready, i)
		}
	}
	for len(ready) > 0 {
		i := ready[len(ready)-1]
		ready = ready[:len(ready)-1]
		left[i] = false
		for _, k := range back[i] {
			if open[k]--; open[k] == 0 {
				ready = append(ready, k)
			}
		}
	}
}

// checkTurns checks that fixed numbers are in the day and no two jobs have the same.
func checkTurns(entries []*toml.Table, jobs []plan.Job) {
	n := len(jobs)
	taken := map[int]int{}
	for i, t := range entries {
		turn := jobs[i].Fixed
		if turn == 0 {
			continue
		}
		if turn < -n || turn > n {
			t.Refuse("fixed", "count from 1, or from -1 for the last", "number %d is outside a day of %d jobs", turn, n)
			continue
		}
		if turn < 0 {
			turn += n + 1
		}
		if first, ok := taken[turn]; ok {
			t.Refuse("fixed", "give it another number", "%s has that number in the sequence already", entries[first].Place)
			continue
		}
		taken[turn] = i
	}
}
