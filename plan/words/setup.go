package words

import (
	"fmt"
	"strings"
	"time"

	"bide/plan"
)

// Cause is one part of a setup's time, in a word or two and as a sheet explains it.
type Cause struct {
	Minutes     string
	Brief, Text string
}

// beside says what time counted side by side does not permit.
const beside = "at the same time, only where the site's procedure allows it"

// Causes are the parts of a setup's time that take any, in the order in which they come.
// Where blades are swapped beside the moves, the longer of the two is one part.
func Causes(s *plan.SetupTime, drive plan.DriveKind) (out []Cause) {
	add := func(takes time.Duration, brief, text string) {
		if takes > 0 {
			out = append(out, Cause{Minutes(takes), brief, text})
		}
	}
	moves := "moves " + [...]string{plan.Shuttle: "by the carriage", plan.OwnDrive: "by the holders' drives", plan.ByHand: "by hand"}[drive]
	blades := Count(s.Swaps, "blade")
	add(s.Every, "every setup", "stop, unload, first-off")
	switch {
	case !s.Beside || s.Positioner == 0 || s.Crew == 0:
		add(s.Positioner, "moves", moves)
		add(s.Crew, blades, blades+" swapped")
	case s.Crew > s.Positioner:
		add(s.Crew, fmt.Sprintf("%s with moves %s", blades, Minutes(s.Positioner)), fmt.Sprintf("%s swapped; %s, %s min, %s", blades, moves, Minutes(s.Positioner), beside))
	default:
		add(s.Positioner, fmt.Sprintf("moves with %s %s", blades, Minutes(s.Crew)), fmt.Sprintf("%s; %s swapped, %s min, %s", moves, blades, Minutes(s.Crew), beside))
	}
	add(s.Rethread, "rethread", "rethread: other material or web width")
	add(s.CleanDown, "clean-down", "clean down to free of silicone")
	add(s.Pressure, "pressure", "other set pressure")
	add(s.Wicks, "wicks", "fit or refill wicks")
	add(s.Pistons, "pistons", "fit other pistons")
	return out
}

// BriefCauses are those parts on one line.
func BriefCauses(s *plan.SetupTime, drive plan.DriveKind) string {
	var parts []string
	for _, c := range Causes(s, drive) {
		parts = append(parts, c.Brief+" "+c.Minutes)
	}
	return strings.Join(parts, ", ")
}
