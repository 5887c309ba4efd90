package material

import (
	"errors"
	"fmt"
	"strings"
)

// Blade and anvil, common practice, no source: the blade is a few points softer, so
// that the cheap part wears and not the sleeve.
const (
	UsualAnvilHRC = 64.0 // of a sleeve; usual 63 to 65
	bladeSofterBy = 4.0  // HRC points
	usualBladeHRC = UsualAnvilHRC - bladeSofterBy
	UsualBladeMM  = 90.0 // diameter of a blade where the shop's isn't known
)

// SoftestHRC to HardestHRC is the range of the Rockwell C scale (ISO 6508-1, from memory,
// unchecked).
const (
	SoftestHRC = 20.0
	HardestHRC = 70.0
)

var usualAnvil = Range{63, 65}

// BladeAdvice is the blade that a material needs.
type BladeAdvice struct {
	Bevel    float64 // included angle, degrees
	Bevels   Range   // usual for the group
	Tip      float64 // radius, mm
	Tips     Range
	HRC      float64 // hardness of the blade
	AnvilHRC float64 // the anvil's
	Assumed  bool    // the anvil is the usual one, since its own hardness is unknown
	Warnings []string
	Source   string
}

// AdviseBlade is the blade for a material on an anvil of a hardness in HRC; 0 is
// unknown and assumed to be the usual. The warnings say where the material's blade lies
// outside its group's usual range, and what that does. Range: anvil 20 to 70 HRC,
// bevel 5 to 150 degrees, tip 0.001 to 5 mm; errors name numbers outside.
func AdviseBlade(m Material, anvilHRC float64) (BladeAdvice, error) {
	g, err := m.group()
	if err != nil {
		return BladeAdvice{}, err
	}
	assumed := anvilHRC == 0
	if assumed {
		anvilHRC = UsualAnvilHRC
	}
	err = errors.Join(
		inRange("anvil hardness", anvilHRC, "HRC", SoftestHRC, HardestHRC),
		inRange("bevel", m.Bevel, "degrees", 5, 150),
		inRange("tip radius", m.Tip, "mm", 0.001, 5))
	if err != nil {
		return BladeAdvice{}, err
	}
	a := BladeAdvice{m.Bevel, g.Bevels, m.Tip, g.Tips, anvilHRC - bladeSofterBy, anvilHRC, assumed, nil, m.Source}
	a.check()
	return a, nil
}

// bevelSlack is how many degrees beside the usual a bevel is no more than another grinder's
// (common practice, no source).
const bevelSlack = 5.0

// Unusual names what of the blade is well outside its group's usual range; empty for
// nothing.
func (a *BladeAdvice) Unusual() string {
	var parts []string
	if a.Bevel < a.Bevels.Least-bevelSlack || a.Bevel > a.Bevels.Most+bevelSlack {
		parts = append(parts, fmt.Sprintf("bevel %g, usual %s", a.Bevel, a.Bevels.text("degrees")))
	}
	if !a.Tips.Holds(a.Tip) {
		parts = append(parts, fmt.Sprintf("tip %g, usual %s", a.Tip, a.Tips.text("mm")))
	}
	return strings.Join(parts, "; ")
}

// check compares the blade with the usual one.
func (a *BladeAdvice) check() {
	if a.Tip < a.Tips.Least {
		a.warn("A tip of %g mm is sharper than the usual %s: it blunts at once on the anvil.", a.Tip, a.Tips.text("mm"))
	}
	if a.Tip > a.Tips.Most {
		a.warn("A tip of %g mm is blunter than the usual %s: it may not cut through.", a.Tip, a.Tips.text("mm"))
	}
	if a.Bevel < a.Bevels.Least {
		a.warn("A bevel of %g is slimmer than the usual %s: the edge may chip.", a.Bevel, a.Bevels.text("degrees"))
	}
	if a.Bevel > a.Bevels.Most {
		a.warn("A bevel of %g is wider than the usual %s: it needs more force.", a.Bevel, a.Bevels.text("degrees"))
	}
	if a.AnvilHRC < usualAnvil.Least {
		a.warn("An anvil of %g HRC is softer than the usual %s: it grooves sooner.", a.AnvilHRC, usualAnvil.text("HRC"))
	}
	if text, _ := CheckHardness(usualBladeHRC, a.AnvilHRC); text != "" { // both are in range by now
		a.warn("%s", text)
	}
}

func (a *BladeAdvice) warn(format string, args ...any) {
	a.Warnings = append(a.Warnings, fmt.Sprintf(format, args...))
}

// CheckHardness compares a blade's hardness with the anvil's, both HRC, 20 to 70,
// and says what is wrong; empty where nothing is wrong. The softer of the two wears, and a worn
// blade is cheaper than a grooved sleeve (common practice, no source).
func CheckHardness(bladeHRC, anvilHRC float64) (string, error) {
	err := errors.Join(
		inRange("blade hardness", bladeHRC, "HRC", SoftestHRC, HardestHRC),
		inRange("anvil hardness", anvilHRC, "HRC", SoftestHRC, HardestHRC))
	if err != nil || bladeHRC < anvilHRC {
		return "", err
	}
	return fmt.Sprintf("A blade of %g HRC on an anvil of %g HRC: the anvil wears, not the blade. Use a softer blade.", bladeHRC, anvilHRC), nil
}
