package shop

import (
	"strconv"
	"strings"
	"time"

	"bide/material"
	"bide/plan"
	"bide/plan/shop/knife"
	"bide/plan/shop/toml"
)

// readUnits reads the unit that the file's lengths are in.
func readUnits(d *toml.Document, root *toml.Table) {
	root.Need("units")
	d.Unit = plan.Unit(root.Choice("units", plan.Millimetres.String(), plan.Inches.String()))
}

// readBeam reads beam.toml.
func readBeam(d *toml.Document, root *toml.Table) (*plan.Beam, *knife.Anvil, material.Limits) {
	readUnits(d, root)
	b := &plan.Beam{Name: root.Text("name", "Beam")}
	root.Need("beam")
	if root.Has("beam") {
		readRail(root.Sub("beam"), b)
	}
	guide := root.Sub("guide")
	b.Guide = plan.Guide(guide.Choice("web_at", "centre", "operator", "drive"))
	guide.Granted(toml.Usual{Key: "web_at", Value: `"centre"`})
	guide.Done()
	readDrive(root.Sub("drive"), b)
	readSetup(root.Sub("setup"), &b.Setup, b.Drive.Kind)
	readCylinder(root.Sub("cylinder"), &b.Supply, b.HolderWidth)
	anvil := readAnvil(root, b.Web)
	if anvil != nil {
		b.Bad = plan.JoinSpans(anvil.Bad)
	}
	b.Line = readLine(root)
	readConditions(root.List("holder"), b)
	limits := readLimits(root.Sub("limits"))
	root.Done()
	return b, anvil, limits
}

// The least width of a holder, and the least speed that a drive has or gains in a second.
const (
	narrowest = plan.Millimetre
	slowest   = plan.Millimetre / 10
)

// readRail reads [beam]: the holders and where they may stand.
func readRail(t *toml.Table, b *plan.Beam) {
	t.Need("holders", "holder_width", "clearance", "rail", "web")
	b.Holders = make([]plan.Condition, t.Whole("holders", 0, 1, plan.MaxHolders))
	b.HolderWidth = t.Length("holder_width", 0, toml.AboveZero)
	if w := b.HolderWidth; w > 0 && w < narrowest { // with next to no pitch, places would be without number
		t.Refuse("holder_width", "correct it: is it in metres, or the file in other units?", "%s is below the %s accepted", t.Doc.Unit.Show(w), t.Doc.Unit.Show(narrowest))
		b.HolderWidth = 0
	}
	b.Clearance = t.Length("clearance", 0, toml.ZeroOrMore)
	b.Rail = t.Span("rail")
	b.Web = t.Span("web")
	b.ParkClearance = t.Length("park_clearance", 0, toml.ZeroOrMore)
	b.RestOverWeb = t.Flag("rest_over_web", true)
	b.PositionTolerance = t.Length("position_tolerance", 0, toml.ZeroOrMore)
	t.Granted(toml.Usual{Key: "rest_over_web", Value: "true"})
	if !b.RestOverWeb {
		t.Granted(toml.Usual{Key: "park_clearance", Value: t.Doc.Unit.Show(0)})
	}
	checkRail(t, b)
	t.Done()
}

// checkRail checks what the keys of [beam] must be together.
func checkRail(t *toml.Table, b *plan.Beam) {
	u, pitch := t.Doc.Unit, b.Pitch()
	if 2*b.PositionTolerance >= pitch && b.HolderWidth > 0 {
		t.Refuse("position_tolerance", "lower it", "%s is not below half the pitch of %s", u.Show(b.PositionTolerance), u.Show(pitch))
	}
	if len(b.Holders) == 0 || b.HolderWidth == 0 || b.Rail == (plan.Span{}) {
		return
	}
	need := pitch * plan.Length(len(b.Holders)-1)
	switch has := b.Rail.Length(); {
	case has > plan.MaxRail:
		t.Refuse("rail", "correct it", "a rail of %s is longer than the %s accepted", u.Show(has), u.Show(plan.MaxRail))
	case has < need:
		t.Refuse("rail", "lengthen the rail, or correct holders, holder_width or clearance",
			"%d holders at a pitch of %s need a rail of %s; this one is %s long", len(b.Holders), u.Show(pitch), u.Show(need), u.Show(has))
	}
}

// readDrive reads [drive].
func readDrive(t *toml.Table, b *plan.Beam) {
	fast := plan.Span{From: plan.Nanometre, To: plan.MaxRail}
	b.Drive = plan.Drive{
		Kind:         plan.DriveKind(t.Choice("kind", "shuttle", "own", "hand")),
		Speed:        t.Length("speed", 400*plan.Millimetre, fast),
		Acceleration: t.Length("acceleration", 800*plan.Millimetre, plan.Span{From: 0, To: plan.MaxRail}),
		Pick:         t.Duration("pick_s", 1.2, time.Second),
		Set:          t.Duration("set_s", 1.0, time.Second),
		Home:         t.Length("home", b.Rail.From, toml.AnyPlace),
		Hand:         t.Duration("hand_s", 25, time.Second),
	}
	if v := b.Drive.Speed; v < slowest { // sums of times would leave their range
		t.Refuse("speed", "correct it: is it in metres, or the file in other units?", "%s/s is below the %s/s accepted", t.Doc.Unit.Show(v), t.Doc.Unit.Show(slowest))
	}
	if a := b.Drive.Acceleration; a > 0 && a < slowest {
		t.Refuse("acceleration", "correct it: is it in metres, or the file in other units?", "%s/s² is below the %s/s² accepted; 0 is at once at full speed", t.Doc.Unit.Show(a), t.Doc.Unit.Show(slowest))
	}
	grantDrive(t, b)
	t.Done()
}

// grantDrive notes what is assumed of the drive that the beam has.
func grantDrive(t *toml.Table, b *plan.Beam) {
	u, kind := t.Doc.Unit, toml.Usual{Key: "kind", Value: `"shuttle"`}
	machine := []toml.Usual{
		kind, {Key: "speed", Value: u.Show(400*plan.Millimetre) + toml.Rates["speed"]}, {Key: "acceleration", Value: u.Show(800*plan.Millimetre) + toml.Rates["acceleration"]},
		{Key: "pick_s", Value: seconds(1.2)}, {Key: "set_s", Value: seconds(1)},
	}
	switch b.Drive.Kind {
	case plan.Shuttle:
		t.Granted(append(machine, toml.Usual{Key: "home", Value: u.Show(b.Rail.From)})...)
	case plan.OwnDrive:
		t.Granted(machine...)
	default:
		t.Granted(toml.Usual{Key: "hand_s", Value: seconds(25)})
	}
}

// readSetup reads [setup].
func readSetup(t *toml.Table, s *plan.Setup, drive plan.DriveKind) {
	*s = plan.Setup{
		Every:     t.Duration("every_min", 6, time.Minute),
		Rethread:  t.Duration("rethread_min", 5, time.Minute),
		Blade:     t.Duration("blade_s", 40, time.Second),
		CleanDown: t.Duration("clean_down_min", 15, time.Minute),
		Pressure:  t.Duration("pressure_min", 0.5, time.Minute),
		Wicks:     t.Duration("wick_min", 0, time.Minute),
		Pistons:   t.Duration("piston_min", 0, time.Minute),
		Crew:      t.Whole("crew", 1, 1, 100),
		Beside:    t.Choice("blades", "after", "beside") == 1,
	}
	t.Granted(toml.Usual{Key: "every_min", Value: minutes(6)}, toml.Usual{Key: "rethread_min", Value: minutes(5)}, toml.Usual{Key: "blade_s", Value: seconds(40)},
		toml.Usual{Key: "clean_down_min", Value: minutes(15)}, toml.Usual{Key: "pressure_min", Value: minutes(0.5)}, toml.Usual{Key: "crew", Value: "1"})
	if s.Beside && drive == plan.ByHand {
		t.Refuse("blades", `write "after", or delete it`, "holders moved by hand leave no hands for blades meanwhile")
	}
	t.Done()
}

// readConditions reads the [[holder]] entries: the holders that aren't good.
func readConditions(entries []*toml.Table, b *plan.Beam) {
	first := map[int]bool{}
	for _, t := range entries {
		n := readNumber(t, len(b.Holders), first)
		t.Need("condition")
		c := plan.Condition(t.Choice("condition", plan.Good.String(), plan.NoCut.String(), plan.Stuck.String(), plan.Out.String()))
		if n > 0 {
			b.Holders[n-1] = c
		}
		t.Done()
	}
}

// readNumber reads the number of a [[holder]] entry and names the entry by it.
// It gives 0 for one that is missing, out of range or there already.
func readNumber(t *toml.Table, holders int, seen map[int]bool) int {
	t.Need("number")
	most := holders
	if holders == 0 { // the beam is at fault, not this entry
		most = plan.MaxHolders
	}
	n := t.Whole("number", 0, 1, most)
	if n == 0 || holders == 0 {
		return 0
	}
	if seen[n] {
		t.Refuse("number", "keep one entry for each holder", "holder %d is there already", n)
		return 0
	}
	seen[n] = true
	t.Called("number " + strconv.Itoa(n))
	return n
}

// anvilRange is the anvils that are taken: what is beyond is a slip of units.
var anvilRange = plan.Span{From: plan.Millimetre, To: 10_000 * plan.Millimetre}

// seconds and minutes are usual times.
func seconds(x float64) string { return toml.Plainly(x) + " s" }
func minutes(x float64) string { return toml.Plainly(x) + " min" }

// feet is a foot in metres, exact (NIST SP 811, B.8).
const feet = 0.3048

// showSpeed shows a line speed in m/min as a file in that unit writes it.
func showSpeed(mPerMin float64, u plan.Unit) string {
	x, unit := mPerMin, " m/min"
	if u == plan.Inches {
		x, unit = x/feet, " ft/min"
	}
	text := strconv.FormatFloat(x, 'f', 2, 64)
	return strings.TrimSuffix(strings.TrimRight(text, "0"), ".") + unit
}
