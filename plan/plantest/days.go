package plantest

import (
	"fmt"
	"math/rand/v2"
	"time"

	"bide/plan"
)

const mm = plan.Millimetre

// SmallBeam has ten holders 12 mm apart at least, rail -100 to 400 mm, web area 0 to 300 mm.
func SmallBeam(conditions map[int]plan.Condition, rest bool) *plan.Beam {
	b := &plan.Beam{
		HolderWidth: 11 * mm, Clearance: mm, Rail: plan.Span{From: -100 * mm, To: 400 * mm}, Web: plan.Span{To: 300 * mm},
		RestOverWeb: rest, ParkClearance: mm, Holders: make([]plan.Condition, 10),
	}
	for number, c := range conditions {
		b.Holders[number-1] = c
	}
	return b
}

// TrialBeam is a beam of 12 holders, all good but one.
func TrialBeam() *plan.Beam {
	b := &plan.Beam{
		Name: "trial", HolderWidth: 12 * mm, Clearance: 300_000,
		Rail: plan.Span{From: -100 * mm, To: 500 * mm}, Web: plan.Span{To: 400 * mm},
		RestOverWeb: true, Holders: make([]plan.Condition, 12),
		Drive: plan.Drive{Speed: 400 * mm, Acceleration: 800 * mm, Pick: 1200 * time.Millisecond, Set: time.Second, Home: -100 * mm, Hand: 25 * time.Second},
		Setup: plan.Setup{Every: 6 * time.Minute, Rethread: 5 * time.Minute, Blade: 40 * time.Second, CleanDown: 15 * time.Minute, Pressure: 30 * time.Second, Crew: 1},
	}
	b.Holders[11] = plan.NoCut
	return b
}

// TrialDay is a day of four jobs, the last of which the beam can't run.
func TrialDay() *plan.Day {
	start := time.Date(2026, 3, 4, 6, 0, 0, 0, time.UTC)
	entry := func(n int, w plan.Length) plan.Entry { return plan.Entry{Count: n, Finished: w, Width: w} }
	blade := plan.Blade{Bevel: 45, Tip: 0.15}
	return &plan.Day{Start: start, Jobs: []plan.Job{
		{ID: "A", Material: "paper", Web: 300 * mm, Entries: []plan.Entry{entry(4, 60*mm)}, Trim: 3 * mm, Shift: plan.Free, Metres: 3000, Speed: 150, Blade: blade, SetBar: 2.5},
		{ID: "B", Material: "film", Web: 300 * mm, Entries: []plan.Entry{entry(2, 25*mm), entry(3, 50*mm), entry(1, 70*mm)}, Trim: 3 * mm, Metres: 1000, Speed: 120, Due: start.Add(20 * time.Minute), Blade: plan.Blade{Bevel: 60, Tip: 0.1}, SetBar: 2.5, SiliconeFree: true},
		{ID: "C", Material: "film", Web: 350 * mm, Entries: []plan.Entry{entry(7, 50*mm)}, Metres: 500, Speed: 100, Blade: blade, SetBar: 3, SiliconeFree: true},
		{ID: "D", Material: "film", Web: 350 * mm, Entries: []plan.Entry{entry(20, 10*mm)}, Trim: 3 * mm, Metres: 500, Speed: 100},
	}}
}

// DrawDay draws a beam of 20 to 40 holders, positions and a day of up to ten jobs.
func DrawDay(r *rand.Rand) (*plan.Beam, *plan.Positions, *plan.Day) {
	return drawDay(r, 20+r.IntN(21), 8, 3, 5)
}

// DrawQuickDay draws a day as DrawDay does with -long, and else one of few jobs on few
// holders: it is planned jointly in a hundredth of the time.
func DrawQuickDay(r *rand.Rand) (*plan.Beam, *plan.Positions, *plan.Day) {
	if IsLong() {
		return DrawDay(r)
	}
	return drawDay(r, 10+r.IntN(7), 5, 3, 3)
}

// drawDay draws a day for that many holders: three jobs and up to more, each of some entries
// of some slits.
func drawDay(r *rand.Rand, holders, more, entries, slits int) (*plan.Beam, *plan.Positions, *plan.Day) {
	b := TrialBeam()
	b.Holders = make([]plan.Condition, holders)
	for range r.IntN(3) {
		b.Holders[r.IntN(len(b.Holders))] = plan.Condition(r.IntN(4))
	}
	b.Rail = plan.Span{From: -300 * mm, To: 1300 * mm}
	b.Web = plan.Span{To: 1000 * mm}
	b.RestOverWeb = r.IntN(3) > 0
	b.ParkClearance = plan.Length(r.IntN(20)) * mm
	b.PositionTolerance = plan.Length(r.IntN(2)) * mm / 5
	b.Guide = plan.Guide(r.IntN(3))
	b.Drive.Kind = plan.DriveKind(r.IntN(3))
	b.Setup.Crew = 1 + r.IntN(2)
	s := &plan.Positions{At: Places(r, len(b.Holders), b.Rail, b.Pitch(), mm/10), Material: []string{"", "paper", "film"}[r.IntN(3)], SiliconeFree: r.IntN(2) == 0}
	for range b.Holders {
		s.Blades = append(s.Blades, drawBlade(r))
	}
	d := TrialDay()
	d.Jobs = nil
	for i := range 3 + r.IntN(more) {
		d.Jobs = append(d.Jobs, drawJob(r, i, d.Start, entries, slits))
	}
	b.Setup.Beside = b.Drive.Kind != plan.ByHand && r.IntN(2) == 0
	b.Setup.Wicks, b.Setup.Pistons = time.Duration(r.IntN(3))*time.Minute, time.Duration(r.IntN(3))*time.Minute
	for i := range d.Jobs {
		d.Jobs[i].Wick, d.Jobs[i].Pistons = []string{"", "each", "bar"}[r.IntN(3)], plan.Pistons{Number: r.IntN(2)}
	}
	return b, s, d
}

func drawBlade(r *rand.Rand) plan.Blade {
	return []plan.Blade{{}, {Bevel: 45, Tip: 0.1}, {Bevel: 60, Tip: 0.1}}[r.IntN(3)]
}

// DrawJob draws a job of up to three entries of up to five slits.
func DrawJob(r *rand.Rand, i int, start time.Time) plan.Job { return drawJob(r, i, start, 3, 5) }

func drawJob(r *rand.Rand, i int, start time.Time, entries, slits int) plan.Job {
	j := plan.Job{
		ID: fmt.Sprintf("J-%d", i), Material: []string{"paper", "film", "foam"}[r.IntN(3)], Trim: 3 * mm, Shift: plan.ShiftRule(r.IntN(2)),
		Arrange: plan.Arrange(r.IntN(3)), Metres: float64(r.IntN(5000)) / 3, Speed: 150, State: []plan.State{0, 0, 0, 0, plan.Done, plan.OnHold, plan.Running}[r.IntN(7)],
		Blade: drawBlade(r), SetBar: float64(r.IntN(3)), SiliconeFree: r.IntN(3) == 0,
	}
	if r.IntN(2) == 0 {
		j.Due = start.Add(time.Duration(r.IntN(200)) * time.Minute)
	}
	for range 1 + r.IntN(entries) {
		w := plan.Length(130+r.IntN(600)) * mm / 10
		j.Entries = append(j.Entries, plan.Entry{Count: 1 + r.IntN(slits), Finished: w, Width: w})
		j.Web += w * plan.Length(j.Entries[len(j.Entries)-1].Count)
	}
	j.Web += []plan.Length{0, 7 * mm, 12*mm + 1, 20 * mm}[r.IntN(4)]
	return j
}
