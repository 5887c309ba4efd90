package shop

import (
	"strconv"
	"time"

	"bide/material"
	"bide/plan"
)

// readUnits reads the unit that the file's lengths are in.
func readUnits(d *document, root *table) {
	root.need("units")
	d.unit = plan.Unit(root.choice("units", plan.Millimetres.String(), plan.Inches.String()))
}

// readBeam reads beam.toml.
func readBeam(d *document, root *table) (*plan.Beam, *Anvil, Line) {
	readUnits(d, root)
	b := &plan.Beam{Name: root.text("name", "Beam")}
	root.need("beam")
	if root.has("beam") {
		readRail(root.sub("beam"), b)
	}
	guide := root.sub("guide")
	b.Guide = plan.Guide(guide.choice("web_at", "centre", "operator", "drive"))
	guide.granted(usual{"web_at", `"centre"`})
	guide.done()
	readDrive(root.sub("drive"), b)
	readSetup(root.sub("setup"), &b.Setup)
	readCylinder(root.sub("cylinder"), &b.Supply)
	anvil := readAnvil(root, b.Web)
	if anvil != nil {
		b.Bad = plan.Bands(anvil.Bad)
	}
	line := readLine(root)
	readConditions(root.list("holder"), b)
	root.done()
	return b, anvil, line
}

// The least width of a holder, and the least speed that a drive has or gains in a second.
const (
	narrowest = plan.Millimetre
	slowest   = plan.Millimetre / 10
)

// readRail reads [beam]: the holders and where they may stand.
func readRail(t *table, b *plan.Beam) {
	t.need("holders", "holder_width", "clearance", "rail", "web")
	b.Holders = make([]plan.Condition, t.whole("holders", 0, 1, plan.MaxHolders))
	b.HolderWidth = t.length("holder_width", 0, aboveZero)
	if w := b.HolderWidth; w > 0 && w < narrowest { // with next to no pitch, places would be without number
		t.refuse("holder_width", "correct it: is it in metres, or the file in other units?", "%s is below the %s accepted", t.doc.unit.Show(w), t.doc.unit.Show(narrowest))
		b.HolderWidth = 0
	}
	b.Clearance = t.length("clearance", 0, zeroOrMore)
	b.Rail = t.span("rail")
	b.Web = t.span("web")
	b.StoreGap = t.length("park_clearance", 0, zeroOrMore)
	b.RestOverWeb = t.flag("rest_over_web", true)
	b.InPlace = t.length("position_tolerance", 0, zeroOrMore)
	t.granted(usual{"rest_over_web", "true"})
	if !b.RestOverWeb {
		t.granted(usual{"park_clearance", t.doc.unit.Show(0)})
	}
	checkRail(t, b)
	t.done()
}

// checkRail checks what the keys of [beam] must be together.
func checkRail(t *table, b *plan.Beam) {
	u, pitch := t.doc.unit, b.Pitch()
	if 2*b.InPlace >= pitch && b.HolderWidth > 0 {
		t.refuse("position_tolerance", "lower it", "%s is not below half the pitch of %s", u.Show(b.InPlace), u.Show(pitch))
	}
	if len(b.Holders) == 0 || b.HolderWidth == 0 || b.Rail == (plan.Span{}) {
		return
	}
	need := pitch * plan.Length(len(b.Holders)-1)
	switch has := b.Rail.Length(); {
	case has > plan.MaxRail:
		t.refuse("rail", "correct it", "a rail of %s is longer than the %s accepted", u.Show(has), u.Show(plan.MaxRail))
	case has < need:
		t.refuse("rail", "lengthen the rail, or correct holders, holder_width or clearance",
			"%d holders at a pitch of %s need a rail of %s; this one is %s long", len(b.Holders), u.Show(pitch), u.Show(need), u.Show(has))
	}
}

// readDrive reads [drive].
func readDrive(t *table, b *plan.Beam) {
	fast := plan.Span{From: plan.Nanometre, To: plan.MaxRail}
	b.Drive = plan.Drive{
		Kind:         plan.DriveKind(t.choice("kind", "shuttle", "own", "hand")),
		Speed:        t.length("speed", 400*plan.Millimetre, fast),
		Acceleration: t.length("acceleration", 800*plan.Millimetre, plan.Span{From: 0, To: plan.MaxRail}),
		Pick:         t.duration("pick_s", 1.2, time.Second),
		Set:          t.duration("set_s", 1.0, time.Second),
		Home:         t.length("home", b.Rail.From, anyPlace),
		Hand:         t.duration("hand_s", 25, time.Second),
		Crew:         t.whole("crew", 1, 1, 100),
	}
	if v := b.Drive.Speed; v < slowest { // sums of times would leave their range
		t.refuse("speed", "correct it: is it in metres, or the file in other units?", "%s/s is below the %s/s accepted", t.doc.unit.Show(v), t.doc.unit.Show(slowest))
	}
	if a := b.Drive.Acceleration; a > 0 && a < slowest {
		t.refuse("acceleration", "correct it: is it in metres, or the file in other units?", "%s/s² is below the %s/s² accepted; 0 is at once at full speed", t.doc.unit.Show(a), t.doc.unit.Show(slowest))
	}
	grantDrive(t, b)
	t.done()
}

// grantDrive notes what is taken for granted of the drive that the beam has.
func grantDrive(t *table, b *plan.Beam) {
	u, kind := t.doc.unit, usual{"kind", `"shuttle"`}
	machine := []usual{
		kind, {"speed", u.Show(400*plan.Millimetre) + rates["speed"]}, {"acceleration", u.Show(800*plan.Millimetre) + rates["acceleration"]},
		{"pick_s", seconds(1.2)}, {"set_s", seconds(1)},
	}
	switch b.Drive.Kind {
	case plan.Shuttle:
		t.granted(append(machine, usual{"home", u.Show(b.Rail.From)})...)
	case plan.OwnDrive:
		t.granted(machine...)
	default:
		t.granted(usual{"hand_s", seconds(25)}, usual{"crew", "1"})
	}
}

// readSetup reads [setup].
func readSetup(t *table, s *plan.Setup) {
	*s = plan.Setup{
		Every:     t.duration("every_min", 6, time.Minute),
		Rethread:  t.duration("rethread_min", 5, time.Minute),
		Blade:     t.duration("blade_s", 40, time.Second),
		CleanDown: t.duration("clean_down_min", 15, time.Minute),
		Pressure:  t.duration("pressure_min", 0.5, time.Minute),
		Crew:      t.whole("crew", 1, 1, 100),
	}
	t.granted(usual{"every_min", minutes(6)}, usual{"rethread_min", minutes(5)}, usual{"blade_s", seconds(40)},
		usual{"clean_down_min", minutes(15)}, usual{"pressure_min", minutes(0.5)}, usual{"crew", "1"})
	t.done()
}

// readCylinder reads [cylinder]. No value of a missing table is more than a guess.
func readCylinder(t *table, a *plan.Air) {
	*a = plan.Air{
		Bore:      t.length("bore", 28*plan.Millimetre, boreRange),
		Pistons:   t.whole("pistons", 1, 1, 20),
		SupplyBar: t.number("supply_bar", 6.3, 0.1, 100),
		MarginBar: t.number("margin_bar", 0.8, 0, 100),
	}
	if text, _ := material.CheckSupply(a.SupplyBar); text != "" {
		t.note("supply_bar", "%s", text)
	}
	t.granted(usual{"bore", t.doc.unit.Show(28 * plan.Millimetre)}, usual{"pistons", "1"},
		usual{"supply_bar", "6.3 bar"}, usual{"margin_bar", "0.8 bar"})
	t.done()
}

// readConditions reads the [[holder]] entries: the holders that aren't good.
func readConditions(entries []*table, b *plan.Beam) {
	first := map[int]bool{}
	for _, t := range entries {
		n := readNumber(t, len(b.Holders), first)
		t.need("condition")
		c := plan.Condition(t.choice("condition", plan.Good.String(), plan.NoCut.String(), plan.Stuck.String(), plan.Out.String()))
		if n > 0 {
			b.Holders[n-1] = c
		}
		t.done()
	}
}

// readNumber reads the number of a [[holder]] entry and names the entry by it.
// It gives 0 for one that is missing, out of range or there already.
func readNumber(t *table, holders int, seen map[int]bool) int {
	t.need("number")
	most := holders
	if holders == 0 { // the beam is at fault, not this entry
		most = plan.MaxHolders
	}
	n := t.whole("number", 0, 1, most)
	if n == 0 || holders == 0 {
		return 0
	}
	if seen[n] {
		t.refuse("number", "keep one entry for each holder", "holder %d is there already", n)
		return 0
	}
	seen[n] = true
	t.called("number " + strconv.Itoa(n))
	return n
}
