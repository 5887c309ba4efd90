package sheet

import (
	"fmt"

	"bide/plan"
)

// The cautions of a changeover: common practice of the trade, in the order of
// the work. They permit nothing; local codes, the site's own procedure and
// licensed people decide.

const beforeHead = "BEFORE A HAND GOES NEAR THE BEAM. Local codes, the site's procedure and licensed or authorised people come first; this sheet permits nothing."

// before is what comes before a hand goes near the beam.
var before = []string{
	"Machine stopped; blades, anvil and web at rest. Blades coast: wait and look.",
	"Holders lifted and secured against falling: they drop when air is lost or dumped.",
	"Locked out as local code and the site's procedure say. Owner: ______________",
	"Then stored air dumped and zero pressure proved, and proved again as long as air can build up.",
	"Check that each holder is where this sheet shows it. If not, plan again.",
	"Keep hands away from moving holders and out of the beam: gaps close. Wear cut-resistant gloves to handle blades, none near turning nips.",
}

// power is what comes before moves that a positioner of that kind makes; empty for
// moves by hand.
func power(kind plan.DriveKind) string {
	if kind == plan.ByHand {
		return ""
	}
	return "Moves by the positioner need its power: made from the control station, guards closed and everyone clear, as the site's procedure says; hands at the beam only locked out."
}

const afterHead = "BEFORE RELEASING THE RUN"

// after is what comes before the run is released. Sharps are counted where blades
// were to be swapped, and by anyone who swapped one all the same.
func after(swaps int) []string {
	return []string{
		fmt.Sprintf("Sharps: %d to swap; taken out ____ = put in ____ + scrapped ____", swaps),
		"Hands and tools clear, guards back. Air on again: knives may drop at once.",
		"Never lower a knife onto a roll at rest: engage at crawl with the web moving.",
		"Web: right material and width, right side up, unwound the right way.",
		"First-off: every strip of the first set measured relaxed and within limits.",
	}
}

// signOff is where people sign.
const signOff = "Set by __________________  Checked by __________________  Time ________________"
