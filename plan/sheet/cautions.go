package sheet

import (
	"fmt"

	"bide/plan"
)

// The cautions of a changeover: common practice of the trade, told in the order
// of the work. They permit nothing; local codes, the site's own procedure and
// licensed people decide.

const beforeHead = "BEFORE A HAND GOES NEAR THE BEAM. Local codes, the site's procedure and licensed or authorised people come first; this sheet permits nothing."

// before is what comes before a hand goes near the beam.
var before = []string{
	"Stopped, and blades, anvil and web stand still. Blades coast: wait and look.",
	"Locked out as local code and the site's procedure say. Owner: ______________",
	"Holders lifted and seen lifted; stored air dumped and zero pressure proved; proved again for as long as it can build up.",
	"As found: holders stand where this sheet has them. If not, plan again.",
	"No hand between holders, or at the beam, while one travels: gaps close. Cut-resistant gloves with a blade in the hand, none near turning nips.",
}

// power is what comes before moves that a positioner of that kind makes; empty for
// moves by hand.
func power(kind plan.DriveKind) string {
	if kind == plan.ByHand {
		return ""
	}
	return "Moves that the positioner makes need its power: who makes them, from where and under which lock is for the site's procedure."
}

const afterHead = "BEFORE THE RUN IS FREED"

// after is what comes before the run is freed. Sharps are counted where blades
// were to be swapped, and by anyone who swapped one all the same.
func after(swaps int) []string {
	return []string{
		fmt.Sprintf("Sharps: %d to swap; taken out ____ = put in ____ + scrapped ____", swaps),
		"Hands and tools clear, guards back. Air on again: knives may drop at once.",
		"No knife down on a standing roll: engage at a crawl with the web moving.",
		"Web: right material and width, right side up, unwound the right way.",
		"First-off: every strip of the first set measured relaxed and within limits.",
	}
}

// signOff is where people sign.
const signOff = "Set by __________________  Checked by __________________  Time ________________"
