package material

import (
	"errors"
	"fmt"
	"math"
)

// Run is what one job runs, as far as it is known.
type Run struct {
	Speed  float64 // line speed, m/min
	Metres float64 // of web; 0 unknown
	WebMM  float64 // width of the web, relaxed; 0 unknown
	Slits  []Slit  // each width once
	Roll   Roll
	// The web running with ramps, and how often it comes to rest in it; 0 unknown.
	RampedS float64
	Legs    int
	Laid    *Laid // nil where it has no layout
}

// Slit is the width of a strip that the customer gets, and the width cut for it.
type Slit struct{ FinishedMM, CutMM float64 }

// Roll is what is asked of a finished roll: how long or how thick it is, one of the
// two or neither, and what it is wound on.
type Roll struct {
	Metres, DiameterMM float64 // 0 unknown
	CoreMM             float64 // outside of the core; 0 unknown
}

// Wound is a finished roll worked out.
type Wound struct {
	Metres, DiameterMM float64
	CoreMM             float64
	CoreAssumed        bool // as is usual, since no core is known
	Whole              bool // nothing says how much is on a roll: all of the run
	Wraps              float64
	Sets               int // such rolls of each slit in the run, the last may be shorter
}

// wind works out a finished roll of web of a thickness in mm; nil where length or
// thickness isn't known. The error is that of RollLength or RollDiameter.
func (r Run) wind(thicknessMM float64, l Limits) (*Wound, error) {
	if r.Metres == 0 || thicknessMM == 0 {
		return nil, nil
	}
	w := &Wound{Metres: r.Roll.Metres, DiameterMM: r.Roll.DiameterMM, CoreMM: r.Roll.CoreMM}
	if w.CoreMM == 0 {
		w.CoreMM, w.CoreAssumed = l.CoreMM, true
	}
	var err error
	if w.DiameterMM > 0 && w.Metres == 0 {
		w.Metres, err = RollLength(w.DiameterMM, w.CoreMM, thicknessMM)
	} else {
		if w.Metres == 0 {
			w.Metres, w.Whole = r.Metres, true
		}
		w.DiameterMM, err = RollDiameter(w.Metres, w.CoreMM, thicknessMM)
	}
	if err != nil {
		return nil, err
	}
	w.Wraps, err = RollWraps(w.DiameterMM, w.CoreMM, thicknessMM)
	w.Sets = sets(r.Metres, w.Metres)
	return w, err
}

// sets is how often a length is taken from a run, the last time what is left of it.
func sets(run, length float64) int {
	const most, crumb = 1 << 30, 1e-9 // the rounding error of a division isn't one more
	return int(min(max(math.Ceil(run/length-crumb), 1), most))
}

// Times are how long a run takes and how far the anvil turns in it.
type Times struct {
	SpeedS  float64 // length over speed; 0 unknown
	RampedS float64 // with ramps, as the run says; 0 unknown
	Legs    int     // from rest to rest; 0 unknown
	Turns   float64 // of the anvil; 0 unknown
}

// times works them out.
func (r Run) times(on Machine) (t Times, err error) {
	if r.Metres == 0 {
		return t, nil
	}
	err = errors.Join(inRange("length", r.Metres, "m", 0, 1e9), inRange("speed", r.Speed, "m/min", 1e-3, 2e4), inRange("run time", r.RampedS, "s", 0, 1e12))
	if err != nil {
		return t, err
	}
	t.SpeedS, t.RampedS, t.Legs = r.Metres/r.Speed*60, r.RampedS, r.Legs
	if on.AnvilMM > 0 {
		t.Turns, err = AnvilTurns(r.Metres, on.AnvilMM)
	}
	return t, err
}

// timeLines say how long the run takes.
func (s *Settings) timeLines(on Machine, r Run) (out []Line) {
	t := s.Times
	if t.SpeedS == 0 {
		return nil
	}
	l := Line{IDRunTime, inMinutes(t.SpeedS), "as in the schedule: length over speed, without ramps and stops", "calculated"}
	if t.RampedS > 0 {
		l.Value = inMinutes(t.RampedS) + " with ramps"
		if t.Legs > 1 {
			l.Value += fmt.Sprintf(", %d times from rest to rest", t.Legs)
		}
		l.Why = fmt.Sprintf("as in the schedule; at full speed alone %s; stops between rolls are extra", inMinutes(t.SpeedS))
		l.Source = "calculated from the shop's own ramps"
	}
	out = append(out, l)
	if t.Turns > 0 {
		out = append(out, Line{IDAnvilTurns, fmt.Sprintf("%.0f, %.0f a minute", t.Turns, t.Turns*60/t.SpeedS),
			fmt.Sprintf("%s m over the circumference at %g mm diameter", trimmed(r.Metres, 3), on.AnvilMM), "calculated"})
	}
	return out
}

// rollLines describe the finished roll.
func (s *Settings) rollLines() []Line {
	w := s.Wound
	if w == nil {
		return nil
	}
	l := Line{
		ID:     IDRoll,
		Value:  fmt.Sprintf("%s, %s m on a core of %s", lengths(w.DiameterMM, 1), trimmed(w.Metres, 1), lengths(w.CoreMM, 1)),
		Why:    fmt.Sprintf("%.0f turns of %g mm; air wound in makes it thicker", w.Wraps, s.Material.ThicknessMM),
		Source: "area of the ring over the thickness",
	}
	if w.CoreAssumed {
		l.Value += ", assumed"
		l.Source += "; core: as is usual" + limitFrom(w.CoreMM, usual.CoreMM)
	}
	if w.Whole {
		l.Value += "; if wound in one"
		l.Why += "; no file has roll_m or roll_diameter"
	} else {
		l.Value += fmt.Sprintf("; %d of each slit", w.Sets)
	}
	if w.DiameterMM > s.Limits.RollMM {
		l.Value += "; larger than usual: check thickness and length"
	}
	return []Line{l}
}
