package shop

import (
	"strconv"

	"bide/material"
	"bide/plan"
	"bide/plan/shop/knife"
	"bide/plan/shop/toml"
)

// What presses one blade where no file says it (a guess), and the least that a holder has
// beside a round piston on each side (common practice, no source).
const (
	usualArea    = 260.0 // mm2 of one piston
	usualPistons = 2
	mostPistons  = 20
	usualWall    = plan.Millimetre
)

// The pistons that are taken: what is beyond is a slip of units.
const leastArea, mostArea = 0.01, 1e6 // mm2

var boreRange = plan.Span{From: plan.Millimetre / 10, To: 1000 * plan.Millimetre}

// readCylinder reads [cylinder]. No value of a missing table is more than a guess.
func readCylinder(t *toml.Table, a *plan.Air, holder plan.Length) {
	*a = plan.Air{
		Area:        t.Number("piston_area", usualArea, leastArea, mostArea),
		Bore:        t.Length("bore", 0, boreRange),
		Room:        max(holder-2*t.Length("wall", usualWall, toml.ZeroOrMore), 0),
		Pistons:     t.Whole("pistons", usualPistons, 1, mostPistons),
		SupplyBar:   t.Number("supply_bar", 6.3, 0.1, 100),
		MarginBar:   t.Number("margin_bar", 0.8, 0, 100),
		MostPistons: t.Whole("most_pistons", 0, 1, mostPistons),
		MostArea:    t.Number("most_piston_area", 0, leastArea, mostArea),
	}
	if text, _ := material.CheckSupply(a.SupplyBar); text != "" {
		t.Note("supply_bar", "%s", text)
	}
	granted := []toml.Usual{{Key: "pistons", Value: strconv.Itoa(usualPistons)}, {Key: "supply_bar", Value: "6.3 bar"}, {Key: "margin_bar", Value: "0.8 bar"}}
	if a.Bore > 0 {
		a.Area = material.RoundArea(knife.InMM(a.Bore))
		checkBore(t, a, holder)
	} else {
		granted = append([]toml.Usual{{Key: "piston_area", Value: toml.Plainly(usualArea) + " mm2"}}, granted...)
	}
	t.Granted(granted...)
	t.Done()
}

// checkBore refuses a round piston that its holder has no room for, or that is given twice.
func checkBore(t *toml.Table, a *plan.Air, holder plan.Length) {
	u := t.Doc.Unit
	if t.Has("piston_area") {
		t.Refuse("bore", "keep the one that is so: bore for a round piston, piston_area for any other", "piston_area is given too")
	}
	if holder > 0 && a.Bore > a.Room {
		t.Refuse("bore", "correct it, holder_width or wall; for an oval piston or a diaphragm give piston_area, in mm2, instead",
			"a round piston of %s doesn't fit a holder %s wide, which with a wall of %s on each side has room for %s", u.Show(a.Bore), u.Show(holder), u.Show((holder-a.Room)/2), u.Show(a.Room))
	}
}

// readLimits reads [limits]: the shop's own in place of the usual rules of thumb. What isn't
// given stays the usual, and is shown as that where it counts.
func readLimits(t *toml.Table) material.Limits {
	perUnit := 1.0
	if t.Doc.Unit == plan.Inches {
		perUnit = feet
	}
	long := func(key string) float64 { return knife.InMM(t.Length(key, 0, rollRange)) }
	l := material.Limits{
		HolderSpeed:     t.Number("holder_speed", 0, 1, 20_000) * perUnit,
		FastHolderSpeed: t.Number("fast_holder_speed", 0, 1, 20_000) * perUnit,
		ThicknessMM:     knife.InMM(t.Length("thickness", 0, plan.Span{From: plan.Millimetre / 100, To: plan.MaxRail})),
		MarginLeastBar:  t.Number("least_margin_bar", 0, 0.01, 100),
		MarginMostBar:   t.Number("most_margin_bar", 0, 0.01, 100),
		RollMM:          long("roll_diameter"),
		CoreMM:          long("core"),
		NeckInPct:       t.Number("neck_in_pct", 0, 0.01, 100),
		TrimLostPct:     t.Number("trim_lost_pct", 0, 0.01, 100),
	}
	all := l.OrUsual()
	ordered := func(key string, below, above float64, what string) {
		if below > above {
			t.Refuse(key, "correct it, or give both", "it is not above the %s", what)
		}
	}
	ordered("fast_holder_speed", all.HolderSpeed, all.FastHolderSpeed, "speed of standard holders")
	ordered("most_margin_bar", all.MarginLeastBar, all.MarginMostBar, "least margin")
	t.Done()
	return l
}
