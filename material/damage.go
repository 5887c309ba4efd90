package material

import "math"

// Damage is a damaged band of the anvil's face, both ends part of it, and how the cuts
// of a day, or of one job, lie about it. All places and widths are nm.
type Damage struct {
	From, To        int64
	Reach           int64   // how far to each side Beside.Metres are counted
	Metres          float64 // cut in it; none as long as cuts keep out
	Operator, Drive Beside
	Where, Worn     string // in words, with the shop's unit: where it lies, what is cut beside it
}

// Beside is what is cut on one side of a damaged band.
type Beside struct {
	Cuts    bool    // any cut lies on this side
	Nearest int64   // the nearest of them
	Metres  float64 // cut no further from the band than the reach
}

// DamageFrom works out how cuts lie about the damaged band from one place to another, up to
// a reach from it on both sides. O(n) for n cuts.
func DamageFrom(from, to, reach int64, cuts []Cut) Damage {
	d := Damage{From: from, To: to, Reach: reach}
	d.Operator.Nearest, d.Drive.Nearest = math.MinInt64, math.MaxInt64
	for _, c := range cuts {
		switch {
		case c.At < from:
			d.Operator.add(c, from-c.At <= reach)
			d.Operator.Nearest = max(d.Operator.Nearest, c.At)
		case c.At > to:
			d.Drive.add(c, c.At-to <= reach)
			d.Drive.Nearest = min(d.Drive.Nearest, c.At)
		default:
			d.Metres += c.Metres
		}
	}
	return d
}

func (b *Beside) add(c Cut, near bool) {
	b.Cuts = true
	if near {
		b.Metres += c.Metres
	}
}
