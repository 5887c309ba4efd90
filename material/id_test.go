package material

import (
	"math/big"
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// TestEachSettingHasItsID: a job of which everything is known has each setting once, in the
// order of the work, and Line finds it; what isn't known leaves out its own settings alone.
func TestEachSettingHasItsID(t *testing.T) {
	all := []ID{
		IDMethod, IDEdge, IDBevel, IDTip, IDBladeHardness, IDWearIndex, IDCutThrough, IDSetPressure, IDPistons, IDForce,
		IDWicking, IDSilicone, IDSpeed, IDRunTime, IDAnvilTurns, IDRoll, IDAllowance, IDNeckIn, IDWidths,
	}
	m := of(t, "spunlace", 0.254, NoAdhesive)
	m.SiliconeFree, m.AllowancePct = true, big.NewRat(1, 2)
	m.TensionNM, m.ModulusMPa, m.Poisson = 100, 100, 3
	full := Run{Speed: 100, Metres: 1000, WebMM: 1000, Slits: []Slit{{50, 51}}}
	for name, c := range map[string]struct {
		change func(*Material, *Machine, *Run)
		lacks  []ID
	}{
		"everything known":   {func(*Material, *Machine, *Run) {}, nil},
		"no anvil":           {func(_ *Material, on *Machine, _ *Run) { on.AnvilMM = 0 }, []ID{IDWearIndex, IDAnvilTurns}},
		"silicone allowed":   {func(m *Material, _ *Machine, _ *Run) { m.SiliconeFree = false }, []ID{IDSilicone}},
		"no length":          {func(_ *Material, _ *Machine, r *Run) { r.Metres = 0 }, []ID{IDRunTime, IDAnvilTurns, IDRoll}},
		"no thickness":       {func(m *Material, _ *Machine, _ *Run) { m.ThicknessMM = 0 }, []ID{IDRoll, IDNeckIn}},
		"no modulus":         {func(m *Material, _ *Machine, _ *Run) { m.ModulusMPa = 0 }, []ID{IDNeckIn}},
		"cut as finished":    {func(m *Material, _ *Machine, _ *Run) { m.AllowancePct, m.TensionNM = nil, 0 }, []ID{IDAllowance, IDNeckIn, IDWidths}},
		"no slits":           {func(_ *Material, _ *Machine, r *Run) { r.Slits = nil }, []ID{IDWidths}},
		"nothing reaches it": {func(m *Material, _ *Machine, _ *Run) { m.CutThroughBar = 90 }, []ID{IDWearIndex, IDCutThrough, IDPistons, IDForce}},
		"no pressure known":  {func(m *Material, _ *Machine, _ *Run) { m.ThicknessMM = 14 }, []ID{IDWearIndex, IDPistons, IDForce}},
	} {
		m, on, r := m, shop, full
		c.change(&m, &on, &r)
		s := ran(t, m, on, r)
		var got, want []ID
		for _, l := range s.Lines {
			got = append(got, l.ID)
			if s.Line(l.ID) != l {
				t.Errorf("%s: %s finds %+v", name, l.ID, s.Line(l.ID))
			}
		}
		for _, id := range all {
			if !slices.Contains(c.lacks, id) {
				want = append(want, id)
			} else if s.Line(id) != (Line{}) {
				t.Errorf("%s: %s is %+v", name, id, s.Line(id))
			}
		}
		if diff := cmp.Diff(want, got); diff != "" {
			t.Errorf("%s:\n%s", name, diff)
		}
	}
}
