package pane

import (
	"fmt"

	"bide/material"
	"bide/plan"
)

// ToSet is one line on what is to be set at the knife for a job, or that nothing is known
// of it.
func ToSet(d *Shared, j *plan.Job) string {
	s := d.Shop.Settings(j)
	if s == nil {
		return "not known what to set: " + d.Shop.Unset(j)
	}
	return SetWords(s)
}

// SetWords are pressure, blade and wick in a few words, and whether silicone is allowed.
func SetWords(s *material.Settings) string {
	pressure := "no pressure is high enough"
	if s.Refused == "" {
		pressure = fmt.Sprintf("set %.2f bar (%.0f psi)", s.Air.SetBar, material.Psi(s.Air.SetBar))
	}
	switch {
	case s.Unfound:
		pressure = "no pressure known, find it by trial"
	case s.Guessed:
		pressure += ", a guess"
	}
	if s.Refused == "" && !s.Air.Own {
		pressure += " on " + s.Air.Fitted()
	}
	wick := s.Wicking.Wick.String()
	if s.Wicking.Wick == material.NoWick {
		wick = "no wick"
	}
	text := fmt.Sprintf("%s; blade %g degrees, tip %g mm; %s", pressure, s.Blade.Bevel, s.Blade.Tip, wick)
	if s.Material.SiliconeFree {
		text += "; free of silicone"
	}
	return text
}
