package shop

import (
	"bide/material"
	"bide/plan"
	"bide/plan/shop/knife"
	"bide/plan/shop/toml"
)

// readAnvil reads [anvil]; nil when there is none.
func readAnvil(root *toml.Table, web plan.Span) *knife.Anvil {
	t := root.Sub("anvil")
	if !root.Has("anvil") {
		return nil
	}
	t.Need("diameter")
	a := &knife.Anvil{
		Diameter:    t.Length("diameter", 0, anvilRange),
		Bore:        t.Length("bore", 0, toml.ZeroOrMore),
		Span:        t.Length("span", 0, toml.AboveZero),
		MaxBend:     t.Length("max_bend", 0, toml.AboveZero),
		HardnessHRC: t.Number("hardness_hrc", 0, material.SoftestHRC, material.HardestHRC),
	}
	if a.Diameter > 0 && a.Bore >= a.Diameter {
		u := t.Doc.Unit
		t.Refuse("bore", "correct bore or diameter", "%s is not below the diameter of %s", u.Show(a.Bore), u.Show(a.Diameter))
	}
	readBearings(t, a, web)
	oddAnvil(t, a, web)
	for _, bad := range t.List("bad") {
		bad.Place = "anvil." + bad.Place
		before := t.Doc.Failed
		bad.Need("from", "to")
		band := plan.Span{From: bad.Length("from", 0, toml.AnyPlace), To: bad.Length("to", 0, toml.AnyPlace)}
		if t.Doc.Failed == before {
			a.Bad = append(a.Bad, bad.Ascending("from", band))
			if web != (plan.Span{}) && (band.To < web.From || band.From > web.To) {
				u := t.Doc.Unit
				bad.Note("from", "a band from %s to %s is outside the web area, %s to %s: no cut comes there", u.Number(band.From), u.Show(band.To), u.Number(web.From), u.Show(web.To))
			}
		}
		bad.Done()
	}
	t.Done()
	return a
}

// readBearings reads where the anvil lies: without these keys that is taken from the
// web area.
func readBearings(t *toml.Table, a *knife.Anvil, web plan.Span) {
	u := t.Doc.Unit
	if t.Has("bearing") {
		at := t.Length("bearing", 0, toml.AnyPlace)
		a.Bearing = &at
		if !t.Has("span") {
			t.Refuse("bearing", "add "+t.Example("span"), "there is no span to the other bearing")
		}
	}
	if !t.Has("face") {
		return
	}
	a.Face = t.Span("face")
	if a.Face != (plan.Span{}) && web != (plan.Span{}) && (a.Face.From > web.From || a.Face.To < web.To) {
		t.Refuse("face", "correct it, or the web area in [beam]", "a face from %s to %s leaves a part of the web area, %s to %s, without an anvil below the blades",
			u.Number(a.Face.From), u.Show(a.Face.To), u.Number(web.From), u.Show(web.To))
	}
}

// The hardness of anvils that are hardened for score cutting at all, HRC (common practice,
// no source).
const softAnvil, hardAnvil = 55.0, 68.0

// oddAnvil notes an anvil that is likely meant otherwise, or that ends short of the web
// area.
func oddAnvil(t *toml.Table, a *knife.Anvil, web plan.Span) {
	if h := a.HardnessHRC; h != 0 && (h < softAnvil || h > hardAnvil) {
		t.Note("hardness_hrc", "%s HRC is not what a hardened anvil has, %s to %s: blades of usual hardness would groove it, or they chip", toml.Plainly(h), toml.Plainly(softAnvil), toml.Plainly(hardAnvil))
	}
	if a.Span == 0 || web == (plan.Span{}) {
		return
	}
	from := a.From(web)
	if from > web.From || from+a.Span < web.To {
		u := t.Doc.Unit
		t.Note("span", "bearings at %s and %s leave a part of the web area, %s to %s, beside the anvil: where blades cut there its bend isn't worked out",
			u.Number(from), u.Show(from+a.Span), u.Number(web.From), u.Show(web.To))
	}
}
