package shop

import (
	"bide/material"
	"bide/plan"
)

// Anvil is the hardened roll that the blades press on. Lengths are exact.
type Anvil struct {
	Diameter, Bore plan.Length
	Span           plan.Length // between its bearings
	HardnessHRC    float64
	Bearing        *plan.Length // place of the operator-side one; nil unknown
	Face           plan.Span    // what of it is hardened and ground; nothing is unknown
	Bad            []plan.Span  // damaged bands as written; those of the plan's beam are in order
}

// Line is how the web's speed comes and goes, m/s2; 0 is unknown.
type Line struct{ RampUp, RampDown float64 }

// readAnvil reads [anvil]; nil when there is none.
func readAnvil(root *table, web plan.Span) *Anvil {
	t := root.sub("anvil")
	if !root.has("anvil") {
		return nil
	}
	t.need("diameter")
	a := &Anvil{
		Diameter:    t.length("diameter", 0, anvilRange),
		Bore:        t.length("bore", 0, zeroOrMore),
		Span:        t.length("span", 0, aboveZero),
		HardnessHRC: t.number("hardness_hrc", 0, material.SoftestHRC, material.HardestHRC),
	}
	if a.Diameter > 0 && a.Bore >= a.Diameter {
		u := t.doc.unit
		t.refuse("bore", "correct bore or diameter", "%s is not below the diameter of %s", u.Show(a.Bore), u.Show(a.Diameter))
	}
	readBearings(t, a, web)
	oddAnvil(t, a, web)
	for _, bad := range t.list("bad") {
		bad.place = "anvil." + bad.place
		before := t.doc.failed
		bad.need("from", "to")
		band := plan.Span{From: bad.length("from", 0, anyPlace), To: bad.length("to", 0, anyPlace)}
		if t.doc.failed == before {
			a.Bad = append(a.Bad, bad.ascending("from", band))
			if web != (plan.Span{}) && (band.To < web.From || band.From > web.To) {
				u := t.doc.unit
				bad.note("from", "a band from %s to %s lies beside the web area, %s to %s: no cut comes there", u.Number(band.From), u.Show(band.To), u.Number(web.From), u.Show(web.To))
			}
		}
		bad.done()
	}
	t.done()
	return a
}

// readBearings reads where the anvil lies: without these keys that is taken from the
// web area.
func readBearings(t *table, a *Anvil, web plan.Span) {
	u := t.doc.unit
	if t.has("bearing") {
		at := t.length("bearing", 0, anyPlace)
		a.Bearing = &at
		if !t.has("span") {
			t.refuse("bearing", "add "+t.example("span"), "there is no span to the other bearing")
		}
	}
	if !t.has("face") {
		return
	}
	a.Face = t.span("face")
	if a.Face != (plan.Span{}) && web != (plan.Span{}) && (a.Face.From > web.From || a.Face.To < web.To) {
		t.refuse("face", "correct it, or the web area in [beam]", "a face from %s to %s leaves a part of the web area, %s to %s, without an anvil below the blades",
			u.Number(a.Face.From), u.Show(a.Face.To), u.Number(web.From), u.Show(web.To))
	}
}

// The hardness of anvils that are hardened for score cutting at all, HRC (common practice,
// no source).
const softAnvil, hardAnvil = 55.0, 68.0

// oddAnvil notes an anvil that is likely meant otherwise, or that ends short of the web
// area.
func oddAnvil(t *table, a *Anvil, web plan.Span) {
	if h := a.HardnessHRC; h != 0 && (h < softAnvil || h > hardAnvil) {
		t.note("hardness_hrc", "%s HRC is not what a hardened anvil has, %s to %s: blades of usual hardness would groove it, or they chip", plainly(h), plainly(softAnvil), plainly(hardAnvil))
	}
	if a.Span == 0 || web == (plan.Span{}) {
		return
	}
	from := a.from(web)
	if from > web.From || from+a.Span < web.To {
		u := t.doc.unit
		t.note("span", "bearings at %s and %s leave a part of the web area, %s to %s, beside the anvil: where blades cut there its bend isn't worked out",
			u.Number(from), u.Show(from+a.Span), u.Number(web.From), u.Show(web.To))
	}
}

// from is the place of the operator-side bearing. Where no file says so, bearings are taken
// to lie evenly about the middle of the web area.
func (a *Anvil) from(web plan.Span) plan.Length {
	if a.Bearing != nil {
		return *a.Bearing
	}
	return (web.From + web.To - a.Span) / 2
}

// readLine reads [line]: what speed is gained in a second, in m/min, or ft/min in a
// file in inches.
func readLine(root *table) Line {
	if !root.has("line") {
		return Line{}
	}
	t := root.sub("line")
	t.need("ramp_up")
	perUnit := 1.0 / 60
	if t.doc.unit == plan.Inches {
		perUnit *= feet
	}
	up := t.number("ramp_up", 0, 0.01, 20_000)
	down := t.number("ramp_down", up, 0.01, 20_000)
	t.done()
	return Line{up * perUnit, down * perUnit}
}
