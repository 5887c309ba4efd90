package sequence_test

import (
	"strings"
	"testing"
	"time"
	_ "time/tzdata" // the zones, wherever it runs

	"bide/plan"
	"bide/plan/sequence"
	"bide/plan/verify"
)

// The day of these tests: three holders at 0, 20 and 40 on a beam with a pitch of 10, and
// a web of 140 centred on 150 that is cut at 100 and 200. Holder 3 goes 40 to 200, then
// holder 2 goes 20 to 100, which waits for it; holder 1 rests at 0. Their blades aren't
// known: two swaps. 1000 m at 100 m/min run 10 min.
//
// A setup is 5 min, the moves, and 30 s a blade:
//
//	by hand, 60 s a holder, crew of 1:   300 + 120 + 60 = 480 s, of 2: 300 + 60 + 30 = 390 s
//	own drives, 20 mm/s, 2 s and 1 s:    2 + 160/20 + 1 = 11, then 2 + 80/20 + 1 = 7: 18 s
//	a carriage from 0 and back to 0:     2+2+8+1, 9+2+4+1, 5 = 34 s
type handDay struct {
	beam *plan.Beam
	now  *plan.Positions
	day  *plan.Day
}

func newHandDay(start string) *handDay {
	begin := at(start)
	job := plan.Job{ID: "A", Web: 140 * mm, Trim: 5 * mm, Metres: 1000, Speed: 100, Blade: plan.Blade{Bevel: 45, Tip: 0.1},
		Entries: []plan.Entry{{Count: 1, Width: 100 * mm, Finished: 100 * mm}}}
	return &handDay{
		beam: &plan.Beam{
			HolderWidth: 10 * mm, Rail: plan.Span{From: 0, To: 400 * mm}, Web: plan.Span{From: 0, To: 300 * mm}, RestOverWeb: true,
			Holders: make([]plan.Condition, 3),
			Drive:   plan.Drive{Kind: plan.ByHand, Hand: time.Minute, Speed: 20 * mm, Pick: 2 * time.Second, Set: time.Second},
			Setup:   plan.Setup{Every: 5 * time.Minute, Blade: 30 * time.Second, Crew: 1},
		},
		now: &plan.Positions{At: []plan.Length{0, 20 * mm, 40 * mm}},
		day: &plan.Day{Start: begin, Jobs: []plan.Job{job}},
	}
}

// hours are shifts or pauses, written "06:00 14:00", on the day's own date or, with +1, the
// next.
func (d *handDay) hours(text string) plan.Hours {
	moment := func(text string) time.Time {
		clock, next := strings.CutSuffix(text, "+1")
		t, err := time.ParseInLocation("2006-01-02 15:04", d.day.Start.Format("2006-01-02 ")+clock, d.day.Start.Location())
		if err != nil {
			panic(err)
		}
		if next {
			t = t.AddDate(0, 0, 1)
		}
		return t
	}
	from, to, _ := strings.Cut(text, " ")
	return plan.Hours{From: moment(from), To: moment(to)}
}

func (d *handDay) shifts(texts ...string) (shifts []plan.Hours) {
	for _, text := range texts {
		shifts = append(shifts, d.hours(text))
	}
	return shifts
}

func (d *handDay) pause(text string, runs bool) []plan.Pause {
	return []plan.Pause{{Hours: d.hours(text), Runs: runs}}
}

// sets lets the beam's line have ends of rolls.
func (d *handDay) rolls(set, parent float64) {
	d.beam.Line = plan.Line{SetChange: plan.Stop{Takes: time.Minute, Given: true}, ParentChange: plan.Stop{Takes: 5 * time.Minute, Given: true}}
	j := &d.day.Jobs[0]
	j.SetMetres, j.ParentMetres = set, parent
	j.Run = d.beam.Line.Run(j)
}

// Days added up by hand: each sum stands beside its case.
func TestClockByHand(t *testing.T) {
	const six = "2026-11-25T06:00:00"
	for _, c := range []struct {
		name, start string
		change      func(*handDay)
		want        string // setup's start and end, the run's start and end, of each job
		paused      string
	}{
		{"by hand", six, func(*handDay) {}, "06:00:00 06:08:00 06:08:00 06:18:00", "0s"},
		{"two people", six, func(d *handDay) { d.beam.Setup.Crew = 2 }, "06:00:00 06:06:30 06:06:30 06:16:30", "0s"},
		{"own drives", six, func(d *handDay) { d.beam.Drive.Kind = plan.OwnDrive }, "06:00:00 06:06:18 06:06:18 06:16:18", "0s"}, // 300 + 18 + 60
		{"own drives, blades beside", six, func(d *handDay) { d.beam.Drive.Kind, d.beam.Setup.Beside = plan.OwnDrive, true }, "06:00:00 06:06:00 06:06:00 06:16:00", "0s"},
		{"a carriage", six, func(d *handDay) { d.beam.Drive.Kind = plan.Shuttle }, "06:00:00 06:06:34 06:06:34 06:16:34", "0s"}, // 300 + 34 + 60
		{"a carriage, blades beside", six, func(d *handDay) {
			d.beam.Drive.Kind, d.beam.Setup.Beside, d.beam.Setup.Blade = plan.Shuttle, true, 10*time.Second
		}, "06:00:00 06:05:34 06:05:34 06:15:34", "0s"}, // 34 is more than 20
		{"every other cause", six, func(d *handDay) {
			d.beam.Setup = plan.Setup{Every: time.Minute, Rethread: 2 * time.Minute, CleanDown: 3 * time.Minute, Pressure: 4 * time.Minute, Wicks: 5 * time.Minute, Pistons: 6 * time.Minute, Crew: 1}
			d.now.Material = "other"
			j := &d.day.Jobs[0]
			j.SiliconeFree, j.SetBar, j.Wick, j.Pistons = true, 3, "bar", plan.Pistons{Number: 2, Area: 80}
		}, "06:00:00 06:23:00 06:23:00 06:33:00", "0s"}, // 1 + 2 + 3 + 4 + 5 + 6 + 2 moves
		{"sets divide evenly", six, func(d *handDay) { d.rolls(250, 0) }, "06:00:00 06:08:00 06:08:00 06:21:00", "0s"}, // 3 changes
		{"sets don't", six, func(d *handDay) { d.rolls(300, 0) }, "06:00:00 06:08:00 06:08:00 06:21:00", "0s"},         // at 300, 600, 900
		{"sets and parents", six, func(d *handDay) { d.rolls(200, 400) }, "06:00:00 06:08:00 06:08:00 06:32:00", "0s"}, // 4 + 2 * 5
		{"parents alone", six, func(d *handDay) { d.rolls(0, 500) }, "06:00:00 06:08:00 06:08:00 06:23:00", "0s"},      // the second ends with the run
		{"a part has run", six, func(d *handDay) { // 550 of 1000 m: 4.5 min are left, and stops at 600, 800 (with a parent)
			d.day.Jobs[0].Ran = 550
			d.rolls(200, 400)
		}, "06:00:00 06:08:00 06:08:00 06:19:30", "0s"},
		{"a pause in the setup", six, func(d *handDay) {
			d.day.Calendar = plan.NewCalendar(d.shifts("06:00 14:00"), d.pause("06:03 06:18", true))
		}, "06:00:00 06:23:00 06:23:00 06:33:00", "15m0s"},
		{"a pause in the run", six, func(d *handDay) {
			d.day.Calendar = plan.NewCalendar(d.shifts("06:00 14:00"), d.pause("06:10 06:25", false))
		}, "06:00:00 06:08:00 06:08:00 06:33:00", "15m0s"},
		{"a run goes on", six, func(d *handDay) {
			d.day.Calendar = plan.NewCalendar(d.shifts("06:00 14:00"), d.pause("06:10 06:25", true))
		}, "06:00:00 06:08:00 06:08:00 06:18:00", "0s"},
		{"ends as the pause begins", six, func(d *handDay) {
			d.day.Calendar = plan.NewCalendar(d.shifts("06:00 14:00"), d.pause("06:08 06:18", false))
		}, "06:00:00 06:08:00 06:18:00 06:28:00", "10m0s"},
		{"a shift ends", six, func(d *handDay) { d.day.Calendar = plan.NewCalendar(d.shifts("06:00 06:10", "22:00 06:00+1"), nil) }, "06:00:00 06:08:00 06:08:00 22:08:00", "15h50m0s"},
		{"past the last end", six, func(d *handDay) { d.day.Calendar = plan.NewCalendar(d.shifts("05:00 05:30", "06:00 06:10"), nil) }, "06:00:00 06:08:00 06:08:00 06:18:00", "0s"},
		{"unbroken", six, func(d *handDay) {
			d.day.Jobs[0].Unbroken = true
			d.day.Calendar = plan.NewCalendar(d.shifts("06:00 14:00"), d.pause("06:10 06:25", false))
		}, "06:00:00 06:08:00 06:25:00 06:35:00", "17m0s"}, // 15 closed, 2 waited
		{"unbroken, past the end", six, func(d *handDay) {
			d.day.Jobs[0].Unbroken = true
			d.day.Calendar = plan.NewCalendar(d.shifts("05:00 05:30", "06:00 06:10"), nil)
		}, "06:00:00 06:08:00 06:08:00 06:18:00", "0s"},
		{"two jobs", six, func(d *handDay) {
			second := d.day.Jobs[0]
			second.ID = "B" // nothing moves, no blade is swapped: 5 min
			d.day.Jobs = append(d.day.Jobs, second)
			d.day.Calendar = plan.NewCalendar(d.shifts("06:00 14:00"), d.pause("06:15 06:30", true))
		}, "06:00:00 06:08:00 06:08:00 06:18:00, 06:30:00 06:35:00 06:35:00 06:45:00", "0s"},
		{"running since", six, func(d *handDay) {
			j := &d.day.Jobs[0]
			j.State, j.Began = plan.Running, at("2026-11-25T05:55:00")
			d.now.At, d.now.Job = []plan.Length{0, 100 * mm, 200 * mm}, "A"
			second := *j
			second.ID, second.State = "B", plan.Waiting
			d.now.Blades = []plan.Blade{j.Blade, j.Blade, j.Blade}
			d.day.Jobs = append(d.day.Jobs, second)
		}, "05:55:00 05:55:00 05:55:00 06:05:00, 06:05:00 06:10:00 06:10:00 06:20:00", "0s"},
		{"running for longer than planned", six, func(d *handDay) {
			j := &d.day.Jobs[0]
			j.State, j.Began = plan.Running, at("2026-11-25T05:55:00")
			d.now.At, d.now.Job, d.now.Blades = []plan.Length{0, 100 * mm, 200 * mm}, "A", []plan.Blade{j.Blade, j.Blade, j.Blade}
			d.day.Now = at("2026-11-25T06:07:00")
		}, "05:55:00 05:55:00 05:55:00 06:07:00", "0s"},
		{"from now on", six, func(d *handDay) { d.day.Now = at("2026-11-25T09:00:00") }, "09:00:00 09:08:00 09:08:00 09:18:00", "0s"},
		{"clocks go forward", "2026-03-29T01:50:00", func(d *handDay) { d.in("Europe/Berlin") }, "01:50:00 01:58:00 01:58:00 03:08:00", "0s"},
		{"clocks go back", "2026-10-25T02:50:00", func(d *handDay) { d.in("Europe/Berlin") }, "02:50:00 02:58:00 02:58:00 02:08:00", "0s"},
	} {
		t.Run(strings.ReplaceAll(c.name, " ", "_"), func(t *testing.T) {
			d := newHandDay(c.start)
			c.change(d)
			p, err := sequence.PlanDay(d.beam, d.now, d.day)
			if err != nil {
				t.Fatal(err)
			}
			if err := verify.DayOf(p, d.day); err != nil {
				t.Error(err)
			}
			var got []string
			var paused time.Duration
			for _, s := range p.Steps() {
				var times []string
				for _, at := range []time.Time{s.SetupStart, s.SetupEnd, s.RunStart, s.RunEnd} {
					times = append(times, at.In(d.day.Start.Location()).Format("15:04:05"))
				}
				got = append(got, strings.Join(times, " "))
				paused += s.Paused
			}
			if text := strings.Join(got, ", "); text != c.want || paused.String() != c.paused {
				t.Errorf("%s, paused %s; want %s, paused %s", text, paused, c.want, c.paused)
			}
		})
	}
}

// in lets the day be in a zone, at the same time by the clock: the first of two.
func (d *handDay) in(zone string) {
	location, err := time.LoadLocation(zone)
	if err != nil {
		panic(err)
	}
	s := d.day.Start
	d.day.Start = time.Date(s.Year(), s.Month(), s.Day(), s.Hour(), s.Minute(), s.Second(), 0, location)
	if earlier := d.day.Start.Add(-time.Hour); earlier.Hour() == s.Hour() {
		d.day.Start = earlier
	}
}

// A run of 10 min that may not be broken off fits into no open time of 5 or 8 min, and is
// refused with the numbers; a pause that it may go on through joins the two.
func TestUnbrokenRunIsRefused(t *testing.T) {
	for runs, refused := range map[bool]bool{false: true, true: false} {
		d := newHandDay("2026-11-25T06:00:00")
		d.day.Jobs[0].Unbroken = true
		d.day.Calendar = plan.NewCalendar(d.shifts("06:00 06:20"), d.pause("06:05 06:12", runs))
		p, err := sequence.PlanDay(d.beam, d.now, d.day)
		if err != nil {
			t.Fatal(err)
		}
		if err := verify.DayOf(p, d.day); err != nil {
			t.Error(err)
		}
		turn := p.Turns[0]
		if turn.Refused() != refused {
			t.Fatalf("runs through the pause: %t, refused %t", runs, turn.Refused())
		}
		if refused {
			if why := turn.Faults[0].Why(plan.Millimetres); !strings.Contains(why, "10.0 min") || !strings.Contains(why, "8.0 min") {
				t.Errorf("%q", why)
			}
		}
	}
}
