package shop

import "bide/plan"

// mostJobs bounds a day. With longestRun it keeps the day's clock in range.
const mostJobs = 500

// readDay reads day.toml. What a job's material asks of the beam is put into the
// job; known is false when the materials couldn't be read.
func readDay(d *document, root *table, s *Shop, known bool) *plan.Day {
	readUnits(d, root)
	root.need("start")
	day := &plan.Day{Start: root.clock("start"), End: root.clock("end"), Aim: plan.Aim(root.choice("aim", aimWords...))}
	if !day.End.IsZero() && !day.Start.IsZero() && !day.End.After(day.Start) {
		root.refuse("end", "correct start or end", "the end is not after the start")
	}
	entries := root.list("job")
	switch {
	case !root.has("job"):
		d.problem("", "", "there is no job", "add "+examples["job"])
	case len(entries) > mostJobs:
		root.refuse("job", "keep some for another day", "%d jobs are more than the %d that are planned in one day", len(entries), mostJobs)
		entries = nil
	}
	for _, t := range entries {
		r := jobReader{t, s, known}
		day.Jobs = append(day.Jobs, r.read())
	}
	checkOrder(entries, day.Jobs)
	checkDue(entries, day)
	d.notes = append(d.notes, dayNotes(d, entries, day.Jobs, s.Materials)...)
	d.notes = append(d.notes, s.knifeNotes(day)...)
	for _, t := range entries {
		t.done()
	}
	root.done()
	return day
}

// checkOrder checks what the jobs say of each other: ids, after, fixed, state.
func checkOrder(entries []*table, jobs []plan.Job) {
	byID := map[string]int{}
	running := -1
	for i, t := range entries {
		j := &jobs[i]
		if first, ok := byID[j.ID]; ok && j.ID != "" {
			t.refuse("id", "give each job an id of its own", "%s has the same id", entries[first].place)
		} else {
			byID[j.ID] = i
		}
		if j.State == plan.Running && running >= 0 {
			t.refuse("state", `only one job can run on a beam: write "waiting" or "done" for all but one`, "%s is running already", entries[running].place)
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
func checkDue(entries []*table, day *plan.Day) {
	for i, t := range entries {
		due := day.Jobs[i].Due
		if due.IsZero() || day.Start.IsZero() {
			continue
		}
		if days := due.Sub(day.Start).Abs().Hours() / 24; days > mostDays {
			t.refuse("due", "look at the year", "due %s is more than %d days from the day's start, %s", due.Format("2006-01-02"), mostDays, day.Start.Format("2006-01-02"))
		}
	}
}

// checkAfter checks that every job named in an after is there, and that no job
// comes to wait for itself.
func checkAfter(entries []*table, jobs []plan.Job, byID map[string]int) {
	var ids []string
	for _, j := range jobs {
		ids = append(ids, j.ID)
	}
	waits := make([][]int, len(jobs))
	for i, t := range entries {
		for _, id := range jobs[i].After {
			k, ok := byID[id]
			switch {
			case !ok && t.doc.failed >= mostProblems: // no more are shown
				t.refuse("after", "correct it", "there is no job %s in the day", quoted(id))
			case !ok:
				t.refuse("after", meant(id, ids), "there is no job %s in the day", quoted(id))
			case k == i:
				t.refuse("after", "take it out", "the job is to come after itself")
			default:
				waits[i] = append(waits[i], k)
			}
		}
	}
	for _, i := range waitingForever(waits) {
		entries[i].refuse("after", "take one of the jobs out of one after", "the job waits for itself by way of the jobs named in after")
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
func checkTurns(entries []*table, jobs []plan.Job) {
	n := len(jobs)
	taken := map[int]int{}
	for i, t := range entries {
		turn := jobs[i].Turn
		if turn == 0 {
			continue
		}
		if turn < -n || turn > n {
			t.refuse("fixed", "count from 1, or from -1 for the last", "number %d is outside a day of %d jobs", turn, n)
			continue
		}
		if turn < 0 {
			turn += n + 1
		}
		if first, ok := taken[turn]; ok {
			t.refuse("fixed", "give it another number", "%s has that number in the sequence already", entries[first].place)
			continue
		}
		taken[turn] = i
	}
}
