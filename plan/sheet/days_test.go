package sheet_test

import (
	"fmt"
	"math/rand/v2"
	"os"
	"testing"
	"time"

	"bide/material"
	"bide/plan"
	"bide/plan/plantest"
	"bide/plan/sequence"
	"bide/plan/sheet"
	"bide/plan/shop"
	"bide/plan/shop/knife"
)

// sixOClock is when the days of these tests begin.
var sixOClock = time.Date(2026, 11, 25, 6, 0, 0, 0, time.Local)

// planned is a planned day with the options to write it.
type planned struct {
	name string
	plan *plan.DayPlan
	opts sheet.Options
}

// must plans a day that can be planned.
func must(t testing.TB, name string, u plan.Unit, b *plan.Beam, s *plan.Positions, d *plan.Day) planned {
	t.Helper()
	p, err := sequence.PlanDay(b, s, d)
	if err != nil {
		t.Fatalf("%s: %v", name, err)
	}
	return planned{name, p, sheet.Options{
		Unit: u, Day: d, Sequence: "listed", Aim: "minutes", Rounds: 20000, Seed: 1,
	}}
}

// demoDay is the built-in demo.
func demoDay(t testing.TB) planned {
	t.Helper()
	s, problems := shop.Read(os.DirFS("../../testdata/demo"))
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	p := must(t, "demo", s.Unit, s.Beam, s.Positions, s.Day)
	p.opts.Notes = s.Notes
	p.opts.Knife = s.Knife(s.Positions, p.plan.Steps())
	return p
}

// days are the days that the properties are held against: the demo, drawn days in
// both units and of many kinds, and extremes. They are planned once and not changed.
func days(t testing.TB) []planned {
	t.Helper()
	if all == nil {
		all = []planned{demoDay(t), hostileDay(t), crowdedDay(t), emptyDay(t), overnightDay(t), besideDay(), farDueDay(t, 14), farDueDay(t, 120)}
		for seed := range uint64(plantest.Worlds(4, 12)) {
			all = append(all, drawnDay(t, seed))
		}
	}
	return all
}

var all []planned

// evenBeam is a beam whose holders stand evenly spread over its rail.
func evenBeam(holders int, rail plan.Span) (*plan.Beam, *plan.Positions) {
	b := &plan.Beam{
		Name: "Drawn beam", HolderWidth: 12 * plan.Millimetre, Clearance: 300_000,
		Rail: rail, Web: plan.Span{From: 0, To: 1600 * plan.Millimetre},
		ParkClearance: 10 * plan.Millimetre, RestOverWeb: true,
		Holders: make([]plan.Condition, holders),
		Drive: plan.Drive{Speed: 400 * plan.Millimetre, Acceleration: 800 * plan.Millimetre,
			Pick: 1200 * time.Millisecond, Set: time.Second, Home: rail.From, Hand: 25 * time.Second},
		Setup: plan.Setup{Every: 6 * time.Minute, Rethread: 5 * time.Minute, Blade: 40 * time.Second,
			CleanDown: 15 * time.Minute, Pressure: 30 * time.Second, Crew: 1},
	}
	s := &plan.Positions{At: make([]plan.Length, holders), Blades: make([]plan.Blade, holders)}
	for i := range s.At {
		s.At[i] = rail.From + rail.Length()*plan.Length(i)/plan.Length(max(holders-1, 1))
	}
	return b, s
}

// drawnDay draws a day: of 8 jobs, some of which the beam can't run.
func drawnDay(t testing.TB, seed uint64) planned {
	t.Helper()
	r := rand.New(rand.NewPCG(seed, 1))
	u := plan.Unit(seed % 2)
	b, s := evenBeam(50+r.IntN(60), plan.Span{From: -450 * plan.Millimetre, To: 2050 * plan.Millimetre})
	b.Guide = plan.Guide(r.IntN(3))
	b.Drive.Kind = plan.DriveKind(r.IntN(3))
	b.Holders[r.IntN(len(b.Holders))] = plan.NoCut
	b.Setup.Beside = b.Drive.Kind != plan.ByHand && seed%2 == 0
	if seed%3 == 0 {
		b.PositionTolerance = 2 * plan.Millimetre
	}
	for i := range s.Blades {
		s.Blades[i] = drawnBlade(r)
	}
	d := &plan.Day{Start: sixOClock, End: sixOClock.Add(8 * time.Hour)}
	for i := range 8 {
		d.Jobs = append(d.Jobs, drawnJob(r, i, u))
	}
	return must(t, fmt.Sprintf("drawn with seed %d", seed), u, b, s, d)
}

func drawnBlade(r *rand.Rand) plan.Blade {
	return [...]plan.Blade{{}, {Bevel: 45, Tip: 0.15}, {Bevel: 60, Tip: 0.2}}[r.IntN(3)]
}

func drawnJob(r *rand.Rand, i int, u plan.Unit) plan.Job {
	j := plan.Job{
		ID: fmt.Sprintf("J%02d", i+1), Material: "yard stock",
		Web: plan.Length(12+r.IntN(5)) * 100 * plan.Millimetre, Trim: 6 * plan.Millimetre,
		Shift: plan.ShiftRule(r.IntN(2)), Metres: 2000, Speed: 150,
		Blade: drawnBlade(r), SetBar: 2.5 + float64(r.IntN(2)), SiliconeFree: r.IntN(4) == 0,
	}
	if r.IntN(2) == 0 {
		j.Due = sixOClock.Add(time.Duration(r.IntN(600)) * time.Minute)
	}
	for left := j.Web - 2*j.Trim; len(j.Entries) < 3; {
		width := plan.Length(13+r.IntN(90)) * plan.Millimetre
		if u == plan.Inches {
			width = plan.Length(32+r.IntN(200)) * plan.Inch / 64
		}
		most := int(left / width)
		if most == 0 {
			break
		}
		e := plan.Entry{Count: 1 + r.IntN(most), Finished: width, Width: width}
		if i%4 == 3 {
			e.Width += width / 200 // an allowance of half a per cent
			e.Count = max(1, e.Count-1)
		}
		j.Entries = append(j.Entries, e)
		left -= e.Width * plan.Length(e.Count)
	}
	return j
}

// hostileDay has names that try to break out of the sheet.
func hostileDay(t testing.TB) planned {
	t.Helper()
	b, s := evenBeam(40, plan.Span{From: -300 * plan.Millimetre, To: 1900 * plan.Millimetre})
	b.Name = "\x1b[31mBeam\f\n" + long("of a very long name ", 30)
	s.Job = "\u202egnol\x00" + long("id", 60)
	j := drawnJob(rand.New(rand.NewPCG(7, 7)), 0, plan.Millimetres)
	j.Material = "=cmd|' /C x'!A0\r\n\t" + long("material", 40)
	j.ID = "+D\u2028" + long("0123456789", 20)
	wide := j
	wide.ID, wide.Material = "\xff\xfe紙\u0085", "Kreppapier, weiß, größer"
	refused := j
	refused.ID, refused.Web = "@"+long("refused", 30), 9000*plan.Millimetre
	d := &plan.Day{Start: sixOClock, Jobs: []plan.Job{j, wide, refused}}
	p := must(t, "hostile", plan.Millimetres, b, s, d)
	p.opts.Notes = []string{"\x1b]0;title\a" + long("a note without end", 20), long("x", 300)}
	return p
}

func long(text string, times int) string {
	out := ""
	for range times {
		out += text
	}
	return out
}

// crowdedDay has as many holders as are planned, all of them to move.
func crowdedDay(t testing.TB) planned {
	t.Helper()
	b, s := evenBeam(plan.MaxHolders, plan.Span{From: -20_000 * plan.Millimetre, To: 20_000 * plan.Millimetre})
	b.Web = plan.Span{From: -10_000 * plan.Millimetre, To: 10_000 * plan.Millimetre}
	many := plan.Job{ID: "MANY", Material: "film", Web: 19_999 * plan.Millimetre, Metres: 9e6, Speed: 1500, Trim: 1,
		Entries: []plan.Entry{{Count: 499, Finished: 40_000_001, Width: 40_000_001}}}
	few := plan.Job{ID: "FEW", Material: "film", Trim: 1, Web: 10_000 * plan.Millimetre, Metres: 1, Speed: 1,
		Entries: []plan.Entry{{Count: 1, Finished: 9_000_000_123, Width: 9_000_000_123}}}
	none := plan.Job{ID: "NONE", Material: "film", Web: 5_000 * plan.Millimetre, Metres: 1, Speed: 1,
		Entries: []plan.Entry{{Count: 1, Finished: 5_000 * plan.Millimetre, Width: 5_000 * plan.Millimetre}}}
	return must(t, "crowded", plan.Inches, b, s, &plan.Day{Start: sixOClock, Jobs: []plan.Job{many, few, none}})
}

// emptyDay has nothing that can be planned.
func emptyDay(t testing.TB) planned {
	t.Helper()
	b, s := evenBeam(10, plan.Span{From: -300 * plan.Millimetre, To: 1900 * plan.Millimetre})
	j := drawnJob(rand.New(rand.NewPCG(3, 3)), 0, plan.Millimetres)
	j.Web = 5000 * plan.Millimetre
	done := j
	done.ID, done.State = "J00", plan.Done
	return must(t, "empty", plan.Millimetres, b, s, &plan.Day{Start: sixOClock, Jobs: []plan.Job{done, j}})
}

// overnightDay runs over days, and is late.
func overnightDay(t testing.TB) planned {
	t.Helper()
	b, s := evenBeam(60, plan.Span{From: -450 * plan.Millimetre, To: 2050 * plan.Millimetre})
	r := rand.New(rand.NewPCG(5, 5))
	d := &plan.Day{Start: sixOClock.Add(15 * time.Hour), End: sixOClock.Add(20 * time.Hour)}
	for i := range 14 {
		j := drawnJob(r, i, plan.Millimetres)
		j.Metres, j.Speed = 30_000, 20 // 25 h
		j.Due = sixOClock.Add(time.Duration(24*i) * time.Hour)
		d.Jobs = append(d.Jobs, j)
	}
	return must(t, "overnight", plan.Millimetres, b, s, d)
}

// farDueDay has jobs of long ids and materials, some due twenty years ago, as after a
// slip of the pen, the others in more than a hundred years.
func farDueDay(t testing.TB, jobs int) planned {
	t.Helper()
	b, s := evenBeam(4, plan.Span{From: -450 * plan.Millimetre, To: 2050 * plan.Millimetre})
	r := rand.New(rand.NewPCG(9, 9))
	d := &plan.Day{Start: sixOClock}
	for i := range jobs {
		j := drawnJob(r, i, plan.Millimetres)
		j.Entries = []plan.Entry{{Count: 1, Finished: 500 * plan.Millimetre, Width: 500 * plan.Millimetre}}
		j.ID, j.Material = fmt.Sprintf("%d-%s", i, long("order", 15)), long("stock", 16)
		j.Web += 123_456 // nm, so that it takes all its decimals
		j.Due = sixOClock.AddDate(173, 0, 0)
		if i < 12 {
			j.Due = sixOClock.AddDate(-20, 0, 0)
		}
		d.Jobs = append(d.Jobs, j)
	}
	return must(t, fmt.Sprintf("%d jobs due far off", jobs), plan.Millimetres, b, s, d)
}

// besideDay is one changeover made by hand, in which two holders serve their cuts
// from beside them: web 0 to 100, slits 30, 30 and 20 from 10 on. Between the second cut
// and the third the anvil is damaged.
func besideDay() planned {
	mm := plan.Millimetre
	b := &plan.Beam{Name: "Beside", HolderWidth: 9 * mm, Clearance: mm, Rail: plan.Span{From: -50 * mm, To: 150 * mm},
		Web: plan.Span{From: 0, To: 100 * mm}, RestOverWeb: true, PositionTolerance: 2 * mm, Holders: make([]plan.Condition, 6), Bad: []plan.Span{{From: 42 * mm, To: 60 * mm}},
		Supply: plan.Air{Area: 260, Pistons: 2, SupplyBar: 6.3, MarginBar: 0.8}}
	from := []plan.Length{-50 * mm, 10 * mm, 41 * mm, 55 * mm, 69_500_000, 130 * mm}
	j := plan.Job{ID: "B-1", Material: "film", Web: 100 * mm, Trim: 5 * mm, Metres: 500, Speed: 100,
		Entries: []plan.Entry{{Count: 2, Finished: 30 * mm, Width: 30 * mm}, {Count: 1, Finished: 20 * mm, Width: 20 * mm}},
		Blade:   plan.Blade{Bevel: 45, Tip: 0.15}, SetBar: 2.9}
	step := plan.Step{
		Job: &j,
		Layout: plan.Layout{Web: b.Web, Slits: []plan.Length{30 * mm, 30 * mm, 20 * mm}, Trim: [2]plan.Length{10 * mm, 10 * mm},
			Cuts: []plan.Length{10 * mm, 40 * mm, 70 * mm, 90 * mm}},
		Changeover: plan.Changeover{
			From: from,
			Holders: []plan.Stand{{At: -50 * mm, Use: plan.Parked}, {At: 10 * mm, Use: plan.Cutting, Cut: 1},
				{At: 41 * mm, Use: plan.Cutting, Cut: 2}, {At: 55 * mm, Use: plan.Resting},
				{At: 69_500_000, Use: plan.Cutting, Cut: 3}, {At: 90 * mm, Use: plan.Cutting, Cut: 4}},
			Moves:       []plan.Move{{Holder: 6, From: 130 * mm, To: 90 * mm, Why: plan.Why{Cause: plan.ToCut, Cut: 4}}},
			Repositions: 1, Parked: 1, Resting: 1, Travel: 40 * mm,
		},
		Setup:      plan.SetupTime{Positioner: 12 * time.Second, Crew: 120 * time.Second, Every: 6 * time.Minute, Swaps: 3},
		SetupStart: sixOClock, SetupEnd: sixOClock.Add(492 * time.Second), RunStart: sixOClock.Add(492 * time.Second), RunEnd: sixOClock.Add(792 * time.Second),
	}
	other := plan.Blade{Bevel: 60, Tip: 0.2}
	start := &plan.Positions{At: from, Job: "B-0", Blades: []plan.Blade{other, other, {}, other, j.Blade, other}}
	sum := plan.Totals{Jobs: 1, Repositions: 1, Setup: 492 * time.Second}
	d := &plan.DayPlan{Beam: b, Start: start, Begins: plan.Clock{At: sixOClock}, Turns: plan.Planned([]*plan.Step{&step}), Totals: sum, Listed: sum}
	g, _ := material.GroupNamed("film tape")
	film := g.Start("film")
	film.ThicknessMM, film.Adhesive, film.CutThroughBar, film.Bevel, film.Tip, film.Source = 0.06, material.Silicone, 2.1, 45, 0.15, "trial 2026-01-20"
	s := &shop.Shop{Equipment: knife.Equipment{Beam: b, Anvil: &knife.Anvil{Diameter: 60 * mm, Span: 300 * mm, HardnessHRC: 64}, Materials: material.Table{film}}}
	return planned{"beside", d, sheet.Options{Day: &plan.Day{Start: sixOClock, Jobs: []plan.Job{j}}, Sequence: "listed", Aim: "minutes", Knife: s.Knife(start, d.Steps())}}
}
