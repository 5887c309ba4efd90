// Package knife joins materials to a plan: what is set at the knife for a job, what that
// changes from the job before, how the blades bend the anvil and where they wear its face.
package knife

import (
	"bide/material"
	"bide/plan"
)

// Equipment is what a beam's materials are cut with.
type Equipment struct {
	Unit      plan.Unit // of beam.toml: what people are shown
	Beam      *plan.Beam
	Anvil     *Anvil         // nil when beam.toml has none
	Materials material.Table // the shop's own
	Limits    material.Limits
}

// Anvil is the hardened roll that the blades press on. Lengths are exact.
type Anvil struct {
	Diameter, Bore plan.Length
	Span           plan.Length // between its bearings
	HardnessHRC    float64
	MaxBend        plan.Length  // that the shop allows; 0 none
	Bearing        *plan.Length // place of the operator-side one; nil unknown
	Face           plan.Span    // what of it is hardened and ground; nothing is unknown
	Bad            []plan.Span  // damaged bands as written; those of the plan's beam are in order
}

// From is the place of the operator-side bearing. Where no file says so, bearings are taken
// to lie evenly about the middle of the web area.
func (a *Anvil) From(web plan.Span) plan.Length {
	if a.Bearing != nil {
		return *a.Bearing
	}
	return (web.From + web.To - a.Span) / 2
}

// TrimOf is the trim of both sides together; none on a job slit from edge to edge.
func TrimOf(j *plan.Job) plan.Length {
	left := j.Web
	for _, slit := range j.Slits() {
		left -= slit
	}
	return left
}
