// Package caution has what comes before any move: usual cautions of the trade. They permit
// nothing.
package caution

import "bide/ui/draw"

// Caution is what one is about, and the caution.
type Caution struct{ Head, Text string }

// All are the cautions before a changeover.
var All = []Caution{
	{"Site rules", "Local codes, the site's procedure and licensed or authorised people come first; this screen permits nothing."},
	{"Standstill", "Stop, and wait until all is still: blades coast."},
	{"Lifted", "Lift holders, secure them against falling: without air they drop."},
	{"Locked out", "Lock out by local code and the site's procedure. Then dump stored air, prove zero pressure, and again while it can build up."},
	{"Power", "Powered moves: control station, guards closed, everyone clear."},
	{"Positions", "Check that each holder is where the screen shows it. Correct any that is not."},
	{"Hands", "Keep hands away from the beam and from between holders while one travels: gaps close. Cut-resistant gloves with a blade in the hand, no gloves near turning nips."},
	{"In order", "In the order given, each move is clear of its neighbours; out of order it may not be."},
}

// AirBack comes when all moves are made.
const AirBack = "Air back on: knives may drop at once. Everyone clear first. Never lower a knife onto a roll at rest."

// InShort is all of them in a sentence, in more or fewer words.
func InShort(w int) string {
	if w < 50 {
		return "Site rules first: stopped, lifted and secured, locked out, no air."
	}
	return "First, by local code and the site's procedure: stopped, holders lifted and secured, locked out, air dumped and zero proved. Keep hands away from moving holders."
}

// OnOneLine is the same in as many words as there is room for.
func OnOneLine(w int) string {
	for _, text := range []string{InShort(w), "Site rules! Secured? Locked out? Air off?", "Secured? Locked? Air off?", "Secured? Locked?"} {
		if draw.CellWidth(text) <= w {
			return text
		}
	}
	return "Locked?"
}
