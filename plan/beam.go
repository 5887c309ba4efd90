// Package plan is the model of a score slitter whose knife holders stand on one beam:
// lengths, beam, job, layout, changeover and the plan of a day, and what they say of
// themselves. It plans nothing; the packages under it do.
//
// What it promises:
//   - Places are Lengths, whole nanometres on the beam's own scale, from the operator side
//     (small) to the drive side (large): "the same place" never depends on rounding.
//   - A planned sequence is one type, DayPlan: turns, each with its job and either the step
//     or the faults that refuse it.
//   - How costs are compared is said once (Score), and so are the rules of an order (Rules),
//     the clock of a changeover (SetupTime) and the layout of a job (Lay).
//   - It is pure: it reads no files, no clock and no randomness that it is not given, and
//     imports the standard library alone.
package plan

import "time"

// Limits of what is planned. They keep every sum of the solver inside 63 bits.
const (
	MaxHolders        = 500
	MaxRail    Length = 50_000 * Millimetre
)

// Span is a stretch of the beam, both ends included.
type Span struct{ From, To Length }

// Length is how long the stretch is.
func (s Span) Length() Length { return s.To - s.From }

// Condition is what a holder can still do.
type Condition uint8

// The conditions of a holder.
const (
	Good  Condition = iota
	NoCut           // moves, but may not cut
	Stuck           // can't move, so it splits the beam; may cut where it stands
	Out             // neither moves nor cuts
)

// Moves reports whether a holder in this condition can be moved.
func (c Condition) Moves() bool { return c == Good || c == NoCut }

// Cuts reports whether a holder in this condition may cut.
func (c Condition) Cuts() bool { return c == Good || c == Stuck }

// String is the condition's word in the shop's files.
func (c Condition) String() string {
	return [...]string{"good", "no cut", "stuck", "out"}[c]
}

// Guide says on which line of the web area the jobs' webs run.
type Guide uint8

// The guide lines.
const (
	GuideCentre   Guide = iota // middle of the web on the middle of the web area
	GuideOperator              // operator-side edges together
	GuideDrive                 // drive-side edges together
)

// Beam is one beam with its holders, its positioner and what a changeover takes.
type Beam struct {
	Name              string
	HolderWidth       Length
	Clearance         Length      // least air between two neighbouring holders
	Rail              Span        // where centre lines of holders may stand
	Web               Span        // web area: the widest web
	ParkClearance     Length      // least distance of an idle holder from the web when it may not rest over it
	RestOverWeb       bool        // idle holders may rest lifted over the web
	PositionTolerance Length      // a holder this near to a cut may serve it and stay; below half the pitch
	Holders           []Condition // by number from the operator side; Holders[0] is holder 1
	Bad               Spans       // damaged bands of the anvil: no cut may lie in one, ends included
	Guide             Guide
	Drive             Drive
	Setup             Setup
	Line              Line
	Supply            Air
}

// Pitch is the least distance between the centre lines of two neighbours.
func (b *Beam) Pitch() Length { return b.HolderWidth + b.Clearance }

// DriveKind is what moves the holders.
type DriveKind uint8

// The kinds of drive.
const (
	Shuttle  DriveKind = iota // one carriage takes one holder after the other
	OwnDrive                  // each holder drives itself
	ByHand                    // a person moves them
)

// Drive is the positioner.
type Drive struct {
	Kind         DriveKind
	Speed        Length        // nm/s
	Acceleration Length        // nm/s^2; 0 means at once at full speed
	Pick, Set    time.Duration // unlock and take; place, lock and let go
	Home         Length        // where a carriage starts and ends
	Hand         time.Duration // for each holder moved by hand, of one person
}

// Setup is what the crew does at a changeover while the machine stands.
type Setup struct {
	Every     time.Duration // each changeover: stop, unload, first-off
	Rethread  time.Duration // other material or web width
	Blade     time.Duration // each blade swapped
	CleanDown time.Duration // to a job that must be free of silicone
	Pressure  time.Duration // other set pressure
	Wicks     time.Duration // other wicking or fluid than what is fitted
	Pistons   time.Duration // other pistons than what is fitted
	Crew      int           // people who share the blades, and the holders moved by hand
	Beside    bool          // blades are swapped while other holders travel, where the site has made that safe
}

// Air is the holders' pressure supply.
type Air struct {
	Area      float64 // of one piston, mm2
	Bore      Length  // of a round piston; 0 is another shape
	Room      Length  // the largest bore that a holder has room for
	Pistons   int     // acting in one holder
	SupplyBar float64 // bar, gauge
	MarginBar float64 // bar above cut-through
	// What other holders may be had with; 0 is the usual.
	MostPistons int
	MostArea    float64 // of one piston that isn't round, mm2
}
