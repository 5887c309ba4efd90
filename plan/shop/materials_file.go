package shop

import (
	"fmt"
	"math"
	"strings"

	"bide/material"
	"bide/plan/shop/toml"
	"bide/plan/words"
)

// readMaterials reads materials.toml: the shop's own materials. It is always in
// millimetres, bar and metres a minute.
func readMaterials(root *toml.Table) material.Table {
	var out material.Table
	seen := map[string]bool{}
	for _, t := range root.List("material") {
		m := readMaterial(t)
		if seen[m.Name] {
			t.Refuse("name", "keep one entry, or give this one another name", "%s is there already", words.Quoted(m.Name))
		}
		if m.Name != "" {
			seen[m.Name] = true
		}
		out = append(out, m)
	}
	root.Done()
	return out
}

// readMaterial reads one [[material]] entry.
func readMaterial(t *toml.Table) material.Material {
	name := t.Text("name", "")
	t.Called(name)
	t.Need("name", "group", "thickness_mm", "adhesive")
	group := t.Text("group", "")
	g, ok := material.GroupNamed(group)
	if !ok && group != "" {
		t.Refuse("group", groupRemedy(group), "%s is no group of the built-in table", words.Quoted(group))
	}
	m := g.Start(name)
	m.ThicknessMM = t.Number("thickness_mm", 0, 0.001, 100)
	m.Adhesive = readAdhesive(t)
	m.CutThroughBar = t.Number("cut_through_bar", 0, 0.01, 100)
	m.SiliconeFree = t.Flag("silicone_free", false)
	m.Bevel = t.Number("bevel", m.Bevel, 5, 150)
	m.Tip = t.Number("tip", m.Tip, 0.001, 5)
	m.AllowancePct = t.Exact("width_allowance_pct", -50, 100)
	m.SpeedMax = t.Number("speed_max", m.SpeedMax, 0.1, 5000)
	m.ScoreMM = t.Number("score_mm", m.ScoreMM, 0.001, 100)
	m.ParentMetres = t.Number("parent_m", 0, 0.1, 1e7)
	m.ModulusMPa = t.Number("modulus_mpa", 0, 0.001, 1e6)
	m.Poisson = t.Number("poisson", 0, 0.01, 20)
	m.TensionNM = t.Number("tension_n_m", 0, 0.1, 1e6)
	m.Source = t.Text("source", m.Source)
	t.Done()
	oddMaterial(t, &m)
	if m.SiliconeFree && m.Adhesive == material.Silicone {
		t.Doc.Notes = append(t.Doc.Notes, fmt.Sprintf("%s, %s: silicone_free, and its adhesive is silicone: one of the two is wrong", t.Doc.File, t.Place))
	}
	return m
}

// mostUsualAllowance is the width allowance in percent, either way, beyond which it is more
// likely a slip (common practice, no source).
const mostUsualAllowance = 10.0

// oddMaterial notes what a material may well mean otherwise.
func oddMaterial(t *toml.Table, m *material.Material) {
	if pct := material.PctOf(m.AllowancePct); math.Abs(pct) > mostUsualAllowance {
		t.Note("width_allowance_pct", "%s %% is more than an allowance usually is, %s: cuts are that much wider or narrower than finished", toml.Plainly(pct), toml.Plainly(mostUsualAllowance))
	}
	var has, lacks []string
	for _, key := range []string{"modulus_mpa", "poisson", "tension_n_m"} {
		if t.Has(key) {
			has = append(has, key)
		} else {
			lacks = append(lacks, key)
		}
	}
	if len(has) > 0 && len(lacks) > 0 {
		t.Note(has[0], "neck-in isn't worked out without %s", strings.Join(lacks, " and "))
	}
}

// readAdhesive reads what the material is coated with.
func readAdhesive(t *toml.Table) material.Adhesive {
	var words []string
	for _, a := range material.Adhesives() {
		words = append(words, string(a))
	}
	return material.Adhesives()[t.Choice("adhesive", words...)]
}

// groupRemedy names the group that was likely meant, or all of them.
func groupRemedy(group string) string {
	return meant(group, material.Table(nil).Names())
}

// meant is the remedy for a name that isn't known: the nearest, or all of them.
func meant(word string, known []string) string {
	if near := words.Nearest(word, known); near != "" {
		return "did you mean " + words.Quoted(near) + "?"
	}
	const most = 20
	if len(known) > most {
		return "known: " + toml.OneOf(known[:most]) + " or others"
	}
	return "known: " + toml.OneOf(known)
}
