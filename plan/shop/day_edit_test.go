package shop

import (
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"bide/plan"
	"bide/plan/changeover/layouts"
	"bide/plan/plantest"
	"bide/plan/shop/toml"

	"github.com/google/go-cmp/cmp"
)

// wantedDay is a day as a person changes it, with where its jobs come from and
// which jobs of the file are untouched.
type wantedDay struct {
	day       *plan.Day
	from      []string
	untouched map[string]bool
	fresh     int
}

func (w *wantedDay) change(r *rand.Rand) {
	jobs := w.day.Jobs
	i := r.IntN(len(jobs))
	switch r.IntN(6) {
	case 0: // move
		job, from := jobs[i], w.from[i]
		jobs, w.from = slices.Delete(jobs, i, i+1), slices.Delete(w.from, i, i+1)
		k := r.IntN(len(jobs) + 1)
		w.day.Jobs, w.from = slices.Insert(jobs, k, job), slices.Insert(w.from, k, from)
	case 1: // remove
		if len(jobs) > 1 {
			w.forget(jobs[i].ID)
			w.day.Jobs, w.from = slices.Delete(w.day.Jobs, i, i+1), slices.Delete(w.from, i, i+1)
		}
	case 2: // copy, behind it
		w.fresh++
		job := jobs[i]
		job.ID, job.Fixed = fmt.Sprintf("new %d", w.fresh), 0
		w.day.Jobs, w.from = slices.Insert(jobs, i+1, job), slices.Insert(w.from, i+1, w.from[i])
	case 3: // add
		w.fresh++
		job := plan.Job{ID: fmt.Sprintf("new %d", w.fresh), Material: "felt", Web: 250 * plan.Millimetre, Trim: 2540, Metres: 10, Speed: 12.5,
			Entries: []plan.Entry{{Count: 2, Finished: 1_190_625}, {Count: 1, Finished: 30 * plan.Millimetre}}, Arrange: plan.ByEntries}
		k := r.IntN(len(jobs) + 1)
		w.day.Jobs, w.from = slices.Insert(jobs, k, job), slices.Insert(w.from, k, "")
	case 4: // the clock
		w.day.End = []time.Time{{}, time.Date(2026, 11, 26, 6, 30, 0, 0, time.UTC)}[r.IntN(2)]
		w.day.Aim = plan.Aim(r.IntN(2))
	default:
		delete(w.untouched, w.from[i])
		changeJob(r, &jobs[i])
	}
}

// forget takes a job's id out of the after of all others, and fixed turns, which
// may be outside a shorter day.
func (w *wantedDay) forget(id string) {
	for i, j := range w.day.Jobs {
		if j.ID == id || j.Fixed != 0 || slices.Contains(j.After, id) {
			delete(w.untouched, w.from[i])
		}
		w.day.Jobs[i].Fixed = 0
	}
	w.day.Jobs = Released(w.day.Jobs, id)
}

func changeJob(r *rand.Rand, j *plan.Job) {
	was := *j
	defer func() {
		if !j.LaidLike(&was) {
			j.Chosen = nil
		}
	}()
	switch r.IntN(14) {
	case 0:
		j.Material = []string{"felt", "paper tape", "foil"}[r.IntN(3)]
	case 1:
		j.Web = []plan.Length{254_000_001, 250 * plan.Millimetre, 12 * plan.Inch}[r.IntN(3)]
	case 2:
		j.Entries = append(slices.Clone(j.Entries), plan.Entry{Count: 1 + r.IntN(2), Finished: plan.Length(1 + r.IntN(5e7))})
	case 3:
		j.Entries = slices.Clone(j.Entries[:1])
	case 4:
		j.Trim, j.Shift = plan.Length(r.IntN(5e6)), plan.ShiftRule(r.IntN(2))
	case 5:
		j.Arrange, j.State = plan.Arrange(r.IntN(3)), []plan.State{plan.Waiting, plan.Done, plan.OnHold}[r.IntN(3)]
	case 6:
		j.Metres, j.Speed = 1+1e4*r.Float64(), 10+200*r.Float64()
	case 7:
		j.Due = []time.Time{{}, time.Date(2026, 11, 25, 12, 15, 0, 0, time.UTC)}[r.IntN(2)]
	case 8:
		j.Fixed = 0
	case 9:
		j.Chosen = drawChosen(r, j, 5)
	case 10:
		j.Chosen = nil
	case 11:
		j.Roll = []plan.Roll{{}, {Core: 82 * plan.Millimetre, Metres: 66.5}, {Core: 3 * plan.Inch, Diameter: 8*plan.Inch + 1}}[r.IntN(3)]
	case 12:
		j.Customer, j.Note = []string{"", "hall 2", `a "quoted" \\ name`}[r.IntN(3)], []string{"", "# no comment"}[r.IntN(2)]
	default:
		j.After = nil
	}
}

// drawChosen draws a layout that the job allows and which of the holders are idle; nil
// where that is not to be told.
func drawChosen(r *rand.Rand, j *plan.Job, holders int) *plan.Chosen {
	b := &plan.Beam{}
	from, to := b.Window(j)
	c := &plan.Chosen{Slits: j.Slits(), Shift: from + plan.Length(r.Int64N(int64(max(to-from, 0))+1))}
	if j.Arrange == plan.AnyArrange {
		r.Shuffle(len(c.Slits), func(i, k int) { c.Slits[i], c.Slits[k] = c.Slits[k], c.Slits[i] })
	}
	if slices.Contains(c.Slits, 0) || !layouts.Allows(b, j, c) {
		return nil
	}
	if cuts := len(b.Lay(j, c.Slits, c.Shift).Cuts); cuts <= holders && r.IntN(3) > 0 {
		c.Idle = drawIdle(r, holders, cuts)
	}
	return c
}

// drawIdle draws which holders are idle, in runs and single ones, some moved by odd
// lengths, and some that go to their cuts.
func drawIdle(r *rand.Rand, holders, cuts int) *plan.Idle {
	idle := &plan.Idle{Moves: r.IntN(30), Setup: time.Duration(r.IntN(40_000)) * 100 * time.Millisecond}
	cutting := r.Perm(holders)[:cuts]
	for n := 1; n <= holders; n++ {
		h := plan.Rest{Number: n}
		switch cuts := slices.Contains(cutting, n-1); {
		case cuts && r.IntN(4) > 0:
			continue
		case cuts:
			h.Cuts = true
		case r.IntN(4) == 0:
			h.Moved, h.To = true, plan.Length(r.Int64N(500_000_000))-100_000_000
			if r.IntN(2) == 0 {
				h.To -= h.To % 396_875 // sixty-fourths of an inch
			}
		}
		idle.Holders = append(idle.Holders, h)
	}
	return idle
}

// asFiled is a day without what follows from its materials.
func asFiled(d *plan.Day) *plan.Day {
	out := *d
	out.Jobs = slices.Clone(d.Jobs)
	for i := range out.Jobs {
		j := &out.Jobs[i]
		j.Blade, j.SetBar, j.SiliconeFree, j.Wick, j.Pistons = plan.Blade{}, 0, false, "", plan.Pistons{}
		j.SetMetres, j.ParentMetres, j.Run = 0, 0, plan.Run{}
		j.Entries = slices.Clone(j.Entries)
		for k := range j.Entries {
			j.Entries[k].Width = 0
		}
		if len(j.After) == 0 {
			j.After = nil
		}
	}
	return &out
}

// nearly takes speeds for the same that differ by the rounding of ft/min.
var nearly = cmp.Comparer(func(a, b float64) bool { return math.Abs(a-b) <= 1e-11*math.Abs(b) })

func dayOf(s *Shop) *wantedDay {
	d := *s.Day
	d.Jobs = slices.Clone(d.Jobs)
	w := &wantedDay{day: &d, untouched: map[string]bool{}}
	for _, j := range d.Jobs {
		w.from, w.untouched[j.ID] = append(w.from, j.ID), true
	}
	return w
}

// TestDayEdits: after any edits of any day the file reads back as the day wanted;
// blocks that no edit touches are there to the byte, and so is every comment
// outside the jobs that were taken out and the keys that were; and undoing all
// gives the file as it was, to the byte.
func TestDayEdits(t *testing.T) {
	days := uint64(plantest.Worlds(25, 250))
	for seed := range days {
		r := rand.New(rand.NewPCG(seed, 3))
		text := drawDay(r)
		s := folder(t, map[string]string{dayFile: text})
		path := filepath.Join(s.Dir, dayFile)
		first := dayOf(s)
		w := dayOf(s)
		for range 1 + r.IntN(5) {
			for range 1 + r.IntN(3) {
				w.change(r)
			}
			out, err := s.SaveDay(w.day, w.from)
			if err != nil || out.Beside {
				t.Fatalf("seed %d: %+v, %v\n%s", seed, out, err, text)
			}
			after, err := os.ReadFile(path)
			if err != nil {
				t.Fatal(err)
			}
			checkEdited(t, text, string(after), w)
			if diff := cmp.Diff(asFiled(w.day), asFiled(reopen(t, s).Day), nearly); diff != "" {
				t.Errorf("(-want +got):\n%s", diff)
			}
			if t.Failed() {
				t.Fatalf("seed %d, from\n%s\nto\n%s", seed, text, after)
			}
		}
		if _, err := s.SaveDay(first.day, first.from); err != nil {
			t.Fatalf("seed %d: undo: %v", seed, err)
		}
		holds(t, path, text)
		alone(t, s.Dir, beamFile, dayFile)
	}
}

// checkEdited holds an edited text against the one it was.
func checkEdited(t *testing.T, before, after string, w *wantedDay) {
	t.Helper()
	eol := "\n"
	if strings.Contains(before, "\r\n") {
		eol = "\r\n"
	}
	if strings.Count(after, eol) != strings.Count(after, "\n") || strings.HasPrefix(before, toml.ByteOrderMark) != strings.HasPrefix(after, toml.ByteOrderMark) {
		t.Errorf("other line ends, or another mark at the start")
	}
	blocks := blocksOf(before)
	for id := range w.untouched {
		if !strings.Contains(after, strings.TrimRight(blocks[id], "\r\n")) {
			t.Errorf("the block of %s isn't as it was", id)
		}
	}
	for _, line := range strings.Split(before, eol) {
		_, comment, ok := strings.Cut(line, "# ")
		if !ok || strings.HasPrefix(comment, "line ") { // goes with its key
			continue
		}
		gone := false
		for id, block := range blocks {
			gone = gone || strings.Contains(block+eol, "# "+comment+eol) && !slices.Contains(w.from, id)
		}
		if n := strings.Count(after+eol, "# "+comment+eol); n != 1 && !gone && !(n > 1 && isBody(comment)) {
			t.Errorf("the comment %q is there %d times", comment, n)
		}
	}
}

// isBody tells comments inside a block, which a copy of the job has too.
func isBody(comment string) bool {
	for _, kind := range []string{"between ", "slit ", "header "} {
		if strings.HasPrefix(comment, kind) {
			return true
		}
	}
	return false
}
