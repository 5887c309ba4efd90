package material

import "fmt"

// Change is one setting that differs from the job before.
type Change struct {
	ID       ID
	From, To string // From is "not known" where it isn't
	Do       string // what to do, in a few words
}

// Changes lists what differs at the knife from the job before, in the order of the work. A
// pressure or speed of 0 before is one that isn't known. Before may be nil, for a beam whose
// last job isn't known: everything is then to be set or checked.
func Changes(before, after *Settings) []Change {
	var out []Change
	compare := func(id ID, do string, show func(*Settings) string) {
		from := notKnown
		if before != nil {
			from = show(before)
		}
		if to := show(after); from != to {
			out = append(out, Change{id, from, to, do})
		}
	}
	if c, ok := cleanDown(before, after); ok {
		out = append(out, c)
	}
	compare(IDBlade, "swap the blades of the cutting holders", func(s *Settings) string {
		return fmt.Sprintf("%g degrees, tip %g mm", s.Blade.Bevel, s.Blade.Tip)
	})
	compare(IDPistons, "connect them or fit other holders", func(s *Settings) string {
		return s.airText(s.Air.Fitted())
	})
	prove := "set it, then prove it on the first-off"
	if after.Unfound {
		prove = "start low and find it by trial"
	}
	compare(IDPressure, prove, func(s *Settings) string {
		if s.Air.SetBar == 0 && s.Refused == "" {
			return notKnown
		}
		return s.airText(bars(s.Air.SetBar))
	})
	compare(IDWicking, "fit, remove or refill; fresh felts if the fluid changes", func(s *Settings) string {
		if s.Wicking.Fluid == "" {
			return s.Wicking.Wick.String()
		}
		return s.Wicking.Wick.String() + ", " + s.Wicking.Fluid
	})
	compare(IDSpeed, after.Speed.do(), func(s *Settings) string {
		if s.Speed.Speed == 0 {
			return notKnown
		}
		return speeds(s.Speed.Speed)
	})
	return out
}

// airText is a text about the pressure, or none where nothing fits.
func (s *Settings) airText(text string) string {
	if s.Refused != "" {
		return "none fits"
	}
	return text
}

// cleanDown is the clean-down between two jobs. After a job that isn't known it is a
// question to the crew.
func cleanDown(before, after *Settings) (Change, bool) {
	const to = "free of silicone"
	if before == nil {
		return Change{IDSilicone, notKnown, to, "find out what ran; clean down if in doubt"}, after.Material.SiliconeFree
	}
	return Change{IDSilicone, "not free of it", to, "clean blades, felts and rolls; fresh wicks"}, CleanDown(before.Material, after.Material)
}
