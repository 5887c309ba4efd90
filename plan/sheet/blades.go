package sheet

import "bide/plan"

// swap names the holders whose blades matter at one changeover.
type swap struct {
	change  []int // they aren't known to carry the blade that the job wants
	unknown []int // of those: nobody has said what they carry
}

// swaps follows the blades through the day. A holder that cuts carries from then
// on what its job wants.
func swaps(d *plan.DayPlan) []swap {
	blades := make([]plan.Blade, len(d.Beam.Holders))
	copy(blades, d.Start.Blades)
	steps := d.Steps()
	out := make([]swap, len(steps))
	for n, s := range steps {
		wanted := s.Job.Blade
		for i, h := range s.Changeover.Holders {
			if h.Use != plan.Cutting || !wanted.Known() || blades[i] == wanted {
				continue
			}
			out[n].change = append(out[n].change, i+1)
			if !blades[i].Known() {
				out[n].unknown = append(out[n].unknown, i+1)
			}
			blades[i] = wanted
		}
	}
	return out
}

// used lists the holders in one use, ascending.
func used(c *plan.Changeover, use plan.Use) (out []int) {
	for i, h := range c.Holders {
		if h.Use == use {
			out = append(out, i+1)
		}
	}
	return out
}
