package shop

import (
	"fmt"
	"math"
	"strings"

	"bide/material"
)

// readMaterials reads materials.toml: the shop's own materials. It is always in
// millimetres, bar and metres a minute.
func readMaterials(d *document, root *table) material.Table {
	var out material.Table
	seen := map[string]bool{}
	for _, t := range root.list("material") {
		m := readMaterial(t)
		if seen[m.Name] {
			t.refuse("name", "keep one entry, or give this one another name", "%s is there already", quoted(m.Name))
		}
		if m.Name != "" {
			seen[m.Name] = true
		}
		out = append(out, m)
	}
	root.done()
	return out
}

// readMaterial reads one [[material]] entry.
func readMaterial(t *table) material.Material {
	name := t.text("name", "")
	t.called(name)
	t.need("name", "group", "thickness_mm", "adhesive")
	group := t.text("group", "")
	g, ok := material.GroupNamed(group)
	if !ok && group != "" {
		t.refuse("group", groupRemedy(group), "%s is no group of the built-in table", quoted(group))
	}
	m := g.Start(name)
	m.ThicknessMM = t.number("thickness_mm", 0, 0.001, 100)
	m.Adhesive = readAdhesive(t)
	m.Tried = t.has("cut_through_bar")
	m.CutThroughBar = t.number("cut_through_bar", m.CutThroughBar, 0.01, 100)
	m.SiliconeFree = t.flag("silicone_free", false)
	m.Bevel = t.number("bevel", m.Bevel, 5, 150)
	m.Tip = t.number("tip", m.Tip, 0.001, 5)
	m.AllowancePct = t.exact("width_allowance_pct", -50, 100)
	m.SpeedMax = t.number("speed_max", m.SpeedMax, 0.1, 5000)
	m.ModulusMPa = t.number("modulus_mpa", 0, 0.001, 1e6)
	m.Poisson = t.number("poisson", 0, 0.01, 20)
	m.TensionNM = t.number("tension_n_m", 0, 0.1, 1e6)
	m.Source = t.text("source", m.Source)
	t.done()
	oddMaterial(t, &m)
	if m.SiliconeFree && m.Adhesive == material.Silicone {
		t.doc.notes = append(t.doc.notes, fmt.Sprintf("%s, %s: silicone_free, and its adhesive is silicone: one of the two is wrong", t.doc.file, t.place))
	}
	return m
}

// mostUsualAllowance is the width allowance in percent, either way, beyond which it is more
// likely a slip (common practice, no source).
const mostUsualAllowance = 10.0

// oddMaterial notes what a material may well mean otherwise.
func oddMaterial(t *table, m *material.Material) {
	if pct := material.PctOf(m.AllowancePct); math.Abs(pct) > mostUsualAllowance {
		t.note("width_allowance_pct", "%s %% is more than an allowance usually is, %s: cuts are that much wider or narrower than finished", plainly(pct), plainly(mostUsualAllowance))
	}
	var has, lacks []string
	for _, key := range []string{"modulus_mpa", "poisson", "tension_n_m"} {
		if t.has(key) {
			has = append(has, key)
		} else {
			lacks = append(lacks, key)
		}
	}
	if len(has) > 0 && len(lacks) > 0 {
		t.note(has[0], "neck-in isn't worked out without %s", strings.Join(lacks, " and "))
	}
}

// readAdhesive reads what the material is coated with.
func readAdhesive(t *table) material.Adhesive {
	var words []string
	for _, a := range material.Adhesives() {
		words = append(words, string(a))
	}
	return material.Adhesives()[t.choice("adhesive", words...)]
}

// groupRemedy names the group that was likely meant, or all of them.
func groupRemedy(group string) string {
	return meant(group, material.Table(nil).Names())
}

// meant is the remedy for a name that isn't known: the nearest, or all of them.
func meant(word string, known []string) string {
	if near := Nearest(word, known); near != "" {
		return "did you mean " + quoted(near) + "?"
	}
	const most = 20
	if len(known) > most {
		return "known: " + oneOf(known[:most]) + " or others"
	}
	return "known: " + oneOf(known)
}
