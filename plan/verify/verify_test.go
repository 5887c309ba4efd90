package verify_test

import (
	"slices"
	"strings"
	"testing"
	"time"

	"bide/plan"
	"bide/plan/plantest"
	"bide/plan/sequence"
	"bide/plan/verify"
)

const mm = plan.Millimetre

// The verifier is held against damage: a plan that passes is spoiled in one way,
// and the verifier must say so.

// trialPlan plans the trial day.
func trialPlan(t *testing.T, b *plan.Beam) *plan.DayPlan {
	t.Helper()
	at := make([]plan.Length, len(b.Holders))
	for i := range at {
		at[i] = plan.Length(-100+40*i) * mm
	}
	d := plantest.TrialDay()
	p, err := sequence.PlanDay(b, &plan.Positions{At: at, Blades: make([]plan.Blade, len(at))}, d)
	if err != nil {
		t.Fatal(err)
	}
	if err := verify.DayOf(p, d); err != nil {
		t.Fatalf("a sound plan is not passed:\n%v", err)
	}
	if len(p.Steps()) != 3 || len(p.Refused()) != 1 {
		t.Fatalf("%d steps and %d refusals", len(p.Steps()), len(p.Refused()))
	}
	return p
}

// damage spoils a plan in one way; must is a part of what the verifier is to say.
type damage struct {
	name string
	do   func(p *plan.DayPlan)
	must string
}

// second gives damages the plan's second step to spoil.
func second(do func(s *plan.Step)) func(*plan.DayPlan) {
	return func(p *plan.DayPlan) { do(p.Steps()[1]) }
}

func damages() []damage {
	change := func(do func(c *plan.Changeover)) func(*plan.DayPlan) {
		return second(func(s *plan.Step) { do(&s.Changeover) })
	}
	return []damage{
		{"a cut moved", second(func(s *plan.Step) { s.Layout.Cuts[2]++ }), "cuts at"},
		{"web off the guide line", second(func(s *plan.Step) { s.Layout.Web.From++; s.Layout.Web.To++ }), "the web runs at"},
		{"slits swapped", second(func(s *plan.Step) { s.Layout.Slits[1], s.Layout.Slits[2] = s.Layout.Slits[2], s.Layout.Slits[1] }), "order it allows"},
		{"trim too small", second(func(s *plan.Step) { s.Job.Trim = 16 * mm }), "is the least"},
		{"trim that does not add up", second(func(s *plan.Step) { s.Layout.Trim[1]++ }), "does not add up"},
		{"shift though centred", func(p *plan.DayPlan) { shiftAll(p.Steps()[1], mm) }, "is to be centred"},
		{"shift wrong", func(p *plan.DayPlan) { p.Steps()[0].Layout.Shift++ }, "shift of"},
		{"trim where none is", func(p *plan.DayPlan) { p.Steps()[2].Layout.Trim = [2]plan.Length{mm, -mm} }, "nothing is trimmed"},
		{"cut held by nobody", change(func(c *plan.Changeover) { idle(c, 0) }), "cuts are held"},
		{"cut held by two", change(func(c *plan.Changeover) { c.Holders[cutter(c, 2)].Cut = 2 }), "where cut 3 is next"},
		{"holder off its cut", change(func(c *plan.Changeover) { c.Holders[cutter(c, 1)].At++ }), "is not on cut 2"},
		{"places exchanged", change(func(c *plan.Changeover) {
			c.Holders[3].At, c.Holders[4].At = c.Holders[4].At, c.Holders[3].At
		}), "nearer than the pitch"},
		{"too near", change(func(c *plan.Changeover) { c.Holders[1].At = c.Holders[0].At + mm }), "nearer than the pitch"},
		{"off the rail", change(func(c *plan.Changeover) { c.Holders[0].At = -101 * mm }), "off the rail"},
		{"resting called parked", change(func(c *plan.Changeover) { rename(c, plan.Resting, plan.Parked) }), "not parked"},
		{"parked called resting", change(func(c *plan.Changeover) { rename(c, plan.Parked, plan.Resting) }), "not resting"},
		{"unknown use", change(func(c *plan.Changeover) { c.Holders[2].Use = 7 }), "has use 7"},
		{"idle may not rest", func(p *plan.DayPlan) { p.Beam.RestOverWeb = false }, "over the web or within"},
		{"cutter may not cut", func(p *plan.DayPlan) { p.Beam.Holders[cutter(&p.Steps()[1].Changeover, 1)] = plan.NoCut }, "may not cut"},
		{"stuck one moved", func(p *plan.DayPlan) { p.Beam.Holders[p.Steps()[1].Changeover.Moves[0].Holder-1] = plan.Stuck }, "can't move"},
		{"out one cuts", func(p *plan.DayPlan) { p.Beam.Holders[cutter(&p.Steps()[1].Changeover, 1)] = plan.Out }, "may not cut"},
		{"repositions miscounted", change(func(c *plan.Changeover) { c.Repositions-- }), "repositions reported"},
		{"parked miscounted", change(func(c *plan.Changeover) { c.Parked++ }), "parked reported"},
		{"resting miscounted", change(func(c *plan.Changeover) { c.Resting++ }), "resting reported"},
		{"travel miscounted", change(func(c *plan.Changeover) { c.Travel++ }), "travel of"},
		{"other place before", change(func(c *plan.Changeover) { c.From[0]++ }), "starts at"},
		{"move left out", change(func(c *plan.Changeover) { c.Moves = c.Moves[1:] }), "has no move"},
		{"move twice", change(func(c *plan.Changeover) { c.Moves = append(c.Moves, c.Moves[0]) }), "moves twice"},
		{"move of nobody", change(func(c *plan.Changeover) { c.Moves[0].Holder = 13 }), "is of holder 13"},
		{"move elsewhere", change(func(c *plan.Changeover) { c.Moves[0].To++ }), "instead of from"},
		{"idle reason for a cut", change(func(c *plan.Changeover) { reason(c, plan.Why{Cause: plan.NearCut, Cut: 1}) }), "another reason"},
		{"other cut in the reason", change(func(c *plan.Changeover) { reason(c, plan.Why{Cause: plan.ToCut, Cut: 99}) }), "reason is not true"},
		{"unknown reason", change(func(c *plan.Changeover) { reason(c, plan.Why{Cause: 77}) }), "reason is not true"},
		{"waits for no job", waitFor("Z", 0), "until job Z and doesn't"},
		{"waits for a cut it never holds", waitFor("C", 1), "until job C and doesn't, or not for cut 1"},
		{"starts too early", second(func(s *plan.Step) { s.SetupStart = s.SetupStart.Add(-time.Second) }), "setup begins"},
		{"runs too early", second(func(s *plan.Step) { s.RunStart = s.RunStart.Add(-time.Second) }), "the run begins"},
		{"runs too fast", second(func(s *plan.Step) { s.RunEnd = s.RunEnd.Add(-time.Second) }), "the run ends"},
		{"lateness hidden", second(func(s *plan.Step) { s.Late = 0 }), "late by"},
		{"positioner too fast", second(func(s *plan.Step) { s.Setup.Positioner -= time.Second }), "positioning takes"},
		{"carriage's way too short", second(func(s *plan.Step) { s.Setup.Carriage-- }), "carriage's way"},
		{"blades not swapped", second(func(s *plan.Step) { s.Setup.Swaps = 0 }), "blades are swapped"},
		{"crew too fast", second(func(s *plan.Step) { s.Setup.Crew = 0 }), "the crew takes"},
		{"stop forgotten", second(func(s *plan.Step) { s.Setup.Every = 0 }), "for each changeover"},
		{"rethreading forgotten", second(func(s *plan.Step) { s.Setup.Rethread = 0 }), "rethreading takes"},
		{"clean-down forgotten", second(func(s *plan.Step) { s.Setup.CleanDown = 0 }), "cleaning down takes"},
		{"pressure set for nothing", second(func(s *plan.Step) { s.Setup.Pressure = time.Second }), "setting the pressure"},
		{"totals wrong", func(p *plan.DayPlan) { p.Totals.Repositions-- }, "totals"},
		{"step left out", func(p *plan.DayPlan) { p.Turns = slices.Delete(p.Turns, 1, 2) }, "starts at"},
		{"steps exchanged", func(p *plan.DayPlan) { p.Turns[0], p.Turns[1] = p.Turns[1], p.Turns[0] }, "setup begins"},
		{"job planned and refused", func(p *plan.DayPlan) { p.Turns = append(p.Turns, plan.Turn{Job: p.Turns[0].Job}) }, "comes twice"},
		{"planned with a fault", func(p *plan.DayPlan) { p.Turns[0].Faults = p.Refused()[0].Faults }, "planned and refused"},
		{"step of another job", func(p *plan.DayPlan) { p.Turns[0].Step = p.Turns[1].Step }, "another job's"},
		{"turn without a job", func(p *plan.DayPlan) { p.Turns[3].Job = nil }, "has no job"},
		{"refused without a reason", func(p *plan.DayPlan) { p.Turns[3].Faults = nil }, "without a reason"},
		{"step without a job", second(func(s *plan.Step) { s.Job = nil }), "has no job"},
		{"no beam", func(p *plan.DayPlan) { p.Beam = nil }, "without beam"},
		{"job forgotten", func(p *plan.DayPlan) { p.Turns = p.Turns[:3] }, "neither planned nor refused"},
		{"job of another day", func(p *plan.DayPlan) { p.Turns[3].Job = &plan.Job{ID: "Z"} }, "not of this day"},
		{"late start", func(p *plan.DayPlan) { p.Steps()[0].SetupStart = p.Steps()[0].SetupStart.Add(1) }, "setup begins"},
		{"later day", func(p *plan.DayPlan) { p.Begins.At = p.Begins.At.Add(1) }, "the day begins"},
		{"other calendar", func(p *plan.DayPlan) { p.Begins.Calendar = &plan.Calendar{} }, "another calendar"},
		{"setup ends late", second(func(s *plan.Step) { s.SetupEnd = s.SetupEnd.Add(1) }), "setup ends"},
		{"run begins late", second(func(s *plan.Step) { s.RunStart = s.RunStart.Add(1) }), "the run begins"},
	}
}

// idle makes the holder of the cut (from 0) an idle one.
func idle(c *plan.Changeover, cut int) {
	h := &c.Holders[cutter(c, cut)]
	h.Use, h.Cut = plan.Resting, 0
}

// cutter is the index of the holder of the cut (from 0).
func cutter(c *plan.Changeover, cut int) int {
	return slices.IndexFunc(c.Holders, func(h plan.Stand) bool { return h.Cut == cut+1 })
}

// rename calls the first holder of one use another.
func rename(c *plan.Changeover, from, to plan.Use) {
	c.Holders[slices.IndexFunc(c.Holders, func(h plan.Stand) bool { return h.Use == from })].Use = to
}

// reason gives the first move to a cut another reason.
func reason(c *plan.Changeover, w plan.Why) {
	for i, m := range c.Moves {
		if m.Why.Cause == plan.ToCut {
			c.Moves[i].Why = w
			return
		}
	}
}

// waitFor says that the first idle holder moved in the plan waits for a job's cut.
func waitFor(job string, cut int) func(*plan.DayPlan) {
	return func(p *plan.DayPlan) {
		for _, s := range p.Steps() {
			for i, m := range s.Changeover.Moves {
				if s.Changeover.Holders[m.Holder-1].Use != plan.Cutting {
					s.Changeover.Moves[i].Why = plan.Why{Cause: plan.ForLaterJob, Job: job, Cut: cut}
					return
				}
			}
		}
		panic("no idle holder moves")
	}
}

// shiftAll shifts the step's layout and all that stands on it.
func shiftAll(s *plan.Step, by plan.Length) {
	s.Layout.Shift += by
	s.Layout.Trim[0] += by
	s.Layout.Trim[1] -= by
	for i := range s.Layout.Cuts {
		s.Layout.Cuts[i] += by
	}
}

func TestVerifierTellsEveryDamage(t *testing.T) {
	for _, d := range damages() {
		t.Run(strings.ReplaceAll(d.name, " ", "_"), func(t *testing.T) {
			p := trialPlan(t, plantest.TrialBeam())
			day := plantest.TrialDay()
			d.do(p)
			err := verify.DayOf(p, day)
			if err == nil || !strings.Contains(err.Error(), d.must) {
				t.Errorf("the verifier says: %v\nand not: %s", err, d.must)
			}
		})
	}
}

// Damages to the order of moves and to reasons of idle holders, on a changeover
// SmallBeam enough to see: three holders a pitch of 10 mm apart give way to each other.
func TestVerifierTellsDamagedMoves(t *testing.T) {
	b := &plan.Beam{HolderWidth: 10 * mm, Rail: plan.Span{To: 100 * mm}, Web: plan.Span{To: 100 * mm}, RestOverWeb: true, Holders: make([]plan.Condition, 3)}
	from := []plan.Length{10 * mm, 20 * mm, 30 * mm}
	l := plan.Layout{Web: plan.Span{To: 100 * mm}, Cuts: []plan.Length{25 * mm}}
	sound := func() plan.Changeover {
		return plan.Changeover{From: from, Repositions: 2, Resting: 2, Travel: 10 * mm,
			Holders: []plan.Stand{{At: 10 * mm, Use: plan.Resting}, {At: 25 * mm, Cut: 1}, {At: 35 * mm, Use: plan.Resting}},
			Moves: []plan.Move{
				{Holder: 3, From: 30 * mm, To: 35 * mm, Why: plan.Why{Cause: plan.NearCut, Cut: 1, Distance: 5 * mm, Least: 10 * mm}},
				{Holder: 2, From: 20 * mm, To: 25 * mm, Why: plan.Why{Cause: plan.ToCut, Cut: 1}},
			}}
	}
	check := func(name, must string, do func(c *plan.Changeover)) {
		t.Helper()
		c := sound()
		do(&c)
		err := verify.Changeover(b, nil, from, l, c)
		if (err == nil) != (must == "") || err != nil && !strings.Contains(err.Error(), must) {
			t.Errorf("%s: the verifier says: %v\nand not: %s", name, err, must)
		}
	}
	why := func(w plan.Why) func(c *plan.Changeover) {
		return func(c *plan.Changeover) { c.Moves[0].Why = w }
	}
	check("sound", "", func(c *plan.Changeover) {})
	check("other order", "move 1: holder 2 comes to", func(c *plan.Changeover) { slices.Reverse(c.Moves) })
	check("true: makes room", "", why(plan.Why{Cause: plan.MakesRoom, Holder: 2, Distance: 5 * mm}))
	check("room for one further off", "reason is not true", why(plan.Why{Cause: plan.MakesRoom, Holder: 1, Distance: 20 * mm}))
	check("room, wrong distance", "reason is not true", why(plan.Why{Cause: plan.MakesRoom, Holder: 2, Distance: 4 * mm}))
	check("nobody goes past", "reason is not true", why(plan.Why{Cause: plan.MakesWay, Holder: 2, Distance: 5 * mm}))
	check("wrong distance to the cut", "reason is not true", why(plan.Why{Cause: plan.NearCut, Cut: 1, Distance: 6 * mm, Least: 10 * mm}))
	check("wrong minimum", "reason is not true", why(plan.Why{Cause: plan.NearCut, Cut: 1, Distance: 5 * mm, Least: 9 * mm}))
	check("another cut", "reason is not true", why(plan.Why{Cause: plan.NearCut, Cut: 2, Distance: 5 * mm, Least: 10 * mm}))
	check("a number too many", "reason is not true", why(plan.Why{Cause: plan.NearCut, Cut: 1, Distance: 5 * mm, Least: 10 * mm, Holder: 2}))
	check("over the web, where resting is free", "reason is not true", why(plan.Why{Cause: plan.OverWeb, Distance: -30 * mm}))
	check("goes to a cut it does not hold", "reason is not true", why(plan.Why{Cause: plan.ToCut, Cut: 1}))
}

// A stuck holder within position_tolerance of a cut serves it and then nothing is wrong;
// idle so near to it, or serving one and too near to another, it is.
func TestVerifierKnowsStuckHolders(t *testing.T) {
	b := &plan.Beam{HolderWidth: 10 * mm, PositionTolerance: 2 * mm, Rail: plan.Span{To: 100 * mm}, Web: plan.Span{To: 100 * mm},
		RestOverWeb: true, Holders: []plan.Condition{plan.Good, plan.Stuck}}
	check := func(must string, cuts []plan.Length, holders ...plan.Stand) {
		t.Helper()
		from := []plan.Length{holders[0].At, holders[1].At}
		c := plan.Changeover{From: from, Holders: holders, Resting: 2 - len(cuts)}
		err := verify.Changeover(b, nil, from, plan.Layout{Web: b.Web, Cuts: cuts}, c)
		if (err == nil) != (must == "") || err != nil && !strings.Contains(err.Error(), must) {
			t.Errorf("the verifier says: %v\nand not: %s", err, must)
		}
	}
	at := func(x plan.Length, cut int) plan.Stand {
		if cut == 0 {
			return plan.Stand{At: x * mm, Use: plan.Resting}
		}
		return plan.Stand{At: x * mm, Cut: cut}
	}
	check("", []plan.Length{41 * mm}, at(20, 0), at(40, 1))
	check("is not on cut 1", []plan.Length{43 * mm}, at(20, 0), at(40, 1))
	check("is 9 from cut 1", []plan.Length{31 * mm}, at(30, 1), at(40, 0))
	check("is 9 from cut 1", []plan.Length{31 * mm, 41 * mm}, at(30, 1), at(40, 2))
}

// Which orders of slits each rule allows: by hand.
func TestVerifierKnowsArrangements(t *testing.T) {
	b := &plan.Beam{HolderWidth: mm, Rail: plan.Span{To: 100 * mm}, Web: plan.Span{To: 90 * mm}}
	entries := []plan.Entry{{Count: 2, Width: 10 * mm}, {Count: 1, Width: 20 * mm}, {Count: 3, Width: 10 * mm}, {Count: 1, Width: 20 * mm}}
	for _, c := range []struct {
		arrange plan.Arrange
		slits   string // a 10 mm, b 20 mm
		allowed bool
	}{
		{plan.AsListed, "aabaaab", true}, {plan.AsListed, "aaabaab", false}, {plan.AsListed, "aabaaa", false},
		{plan.ByEntries, "aabaaab", true}, {plan.ByEntries, "aaabaab", true}, {plan.ByEntries, "bbaaaaa", true},
		{plan.ByEntries, "abaaaab", false}, {plan.ByEntries, "aaaabab", false}, {plan.ByEntries, "aabaaaa", false},
		{plan.AnyArrange, "abaaaab", true}, {plan.AnyArrange, "bbabaaa", false}, {plan.AnyArrange, "aabaaabb", false},
	} {
		j := &plan.Job{ID: "x", Web: 90 * mm, Entries: entries, Arrange: c.arrange}
		l := plan.Layout{Web: plan.Span{To: 90 * mm}}
		at := plan.Length(0)
		for _, s := range c.slits {
			l.Slits = append(l.Slits, map[rune]plan.Length{'a': 10 * mm, 'b': 20 * mm}[s])
			at += l.Slits[len(l.Slits)-1]
			l.Cuts = append(l.Cuts, at)
		}
		l.Cuts = l.Cuts[:len(l.Cuts)-1]
		err := verify.Changeover(b, j, nil, l, plan.Changeover{})
		refused := err != nil && strings.Contains(err.Error(), "order it allows")
		if refused == c.allowed {
			t.Errorf("rule %d, %s: %v", c.arrange, c.slits, err)
		}
	}
}
