package material

import (
	"cmp"
	"fmt"
)

// Limits are rules of thumb that warn, and what is assumed where no file says it. A shop may
// replace each by its own; one that is 0 is the usual, common practice without a source.
type Limits struct {
	HolderSpeed     float64 // m/min that standard holders are good for
	FastHolderSpeed float64 // m/min that holders with larger pistons and matching bearings are good for
	ThicknessMM     float64 // the thickest that a holder's stroke and blade can part
	MarginLeastBar  float64 // set above cut-through: with less some blades may not cut,
	MarginMostBar   float64 // and more only blunts them
	RollMM          float64 // the largest finished roll; a larger one is likely a slip
	CoreMM          float64 // outside of a core: 3 in and its wall
	NeckInPct       float64 // of its relaxed width that a web may narrow before the formula is only a guess
	TrimLostPct     float64 // of the trim asked for that neck-in may take
}

var usual = Limits{
	HolderSpeed: Metres(1000), FastHolderSpeed: Metres(3000), ThicknessMM: 12.7,
	MarginLeastBar: 0.7, MarginMostBar: 1.0, RollMM: 2000, CoreMM: 89, NeckInPct: 5, TrimLostPct: 25,
}

// OrUsual is the limits with the usual ones where the shop has none of its own.
func (l Limits) OrUsual() Limits {
	return Limits{
		cmp.Or(l.HolderSpeed, usual.HolderSpeed), cmp.Or(l.FastHolderSpeed, usual.FastHolderSpeed), cmp.Or(l.ThicknessMM, usual.ThicknessMM),
		cmp.Or(l.MarginLeastBar, usual.MarginLeastBar), cmp.Or(l.MarginMostBar, usual.MarginMostBar), cmp.Or(l.RollMM, usual.RollMM),
		cmp.Or(l.CoreMM, usual.CoreMM), cmp.Or(l.NeckInPct, usual.NeckInPct), cmp.Or(l.TrimLostPct, usual.TrimLostPct),
	}
}

// limitFrom says in brackets where a limit comes from.
func limitFrom(limit, usual float64) string {
	if limit == usual {
		return " (" + commonPractice + ")"
	}
	return " (the shop's own limit)"
}

// CheckThickness compares a thickness in mm with the reach of holders and blades and says
// what is wrong; empty where nothing is wrong. 0 is unknown. Range 0 to 1000 mm.
func (l Limits) CheckThickness(mm float64) (string, error) {
	if err := inRange("thickness", mm, "mm", 0, 1000); err != nil {
		return "", err
	}
	switch most := l.OrUsual().ThicknessMM; {
	case mm == 0:
		return "The thickness is unknown: check it against stroke and blade.", nil
	case mm > most:
		return fmt.Sprintf("%g mm is beyond the %g mm that holders and blades can cut%s.", mm, most, limitFrom(most, usual.ThicknessMM)), nil
	}
	return "", nil
}

// margin is the margins that are usual, and where that comes from.
func (l Limits) margin() string {
	from := limitFrom(l.MarginLeastBar, usual.MarginLeastBar)
	if l.MarginMostBar != usual.MarginMostBar {
		from = limitFrom(l.MarginMostBar, usual.MarginMostBar)
	}
	return fmt.Sprintf("%.2g to %s bar%s", l.MarginLeastBar, trimmed(l.MarginMostBar, 2), from)
}

// CheckMargin says what is wrong with a margin above cut-through, in bar; empty where
// nothing is wrong. Range 0 to 1000 bar.
func (l Limits) CheckMargin(bar float64) (string, error) {
	if err := inRange("margin", bar, "bar", 0, mostBar); err != nil {
		return "", err
	}
	l = l.OrUsual()
	const slack = 0.04 // bar; people mean 10 and 15 psi, 0.69 and 1.03 bar, by the usual ones
	switch {
	case bar < l.MarginLeastBar-slack:
		return fmt.Sprintf("A margin of %.2g bar is below the usual %s: some blades may not cut through.", bar, l.margin()), nil
	case bar > l.MarginMostBar+slack:
		return fmt.Sprintf("A margin of %.2g bar is above the usual %s: more only blunts the blade.", bar, l.margin()), nil
	}
	return "", nil
}
