package knife

import (
	"fmt"

	"bide/material"
	"bide/plan"
)

// Damaged says how cuts lie about each damaged band of the anvil, in numbers and in
// words, counting metres as far as a band of the face to both sides.
func (e *Equipment) Damaged(cuts []material.Cut) (out []material.Damage) {
	reach := int64(bandOf(e.hardened().Length(), e.Unit))
	for _, bad := range e.Beam.Bad {
		d := material.DamageFrom(int64(bad.From), int64(bad.To), reach, cuts)
		d.Where, d.Worn = damageWords(d, e.Unit), damageWorn(d, e.Unit)
		out = append(out, d)
	}
	return out
}

// damageWords says where a damaged band lies and what is cut beside it.
func damageWords(d material.Damage, u plan.Unit) string {
	text := fmt.Sprintf("from %s to %s: ", u.Number(plan.Length(d.From)), u.Show(plan.Length(d.To)))
	switch {
	case d.Metres > 0:
		text += fmt.Sprintf("%.0f m are cut in it", d.Metres)
	case !d.Operator.Cuts && !d.Drive.Cuts:
		return text + "no cut is laid in it"
	default:
		text += "no cut is in it"
	}
	return text + fmt.Sprintf("; nearest %s on the operator side, %s on the drive side",
		nearestWords(d.Operator, d.From, u), nearestWords(d.Drive, d.To, u))
}

// damageWorn says how much is cut beside it.
func damageWorn(d material.Damage, u plan.Unit) string {
	return fmt.Sprintf("cut within %s of it: %.0f m and %.0f m", u.Show(plan.Length(d.Reach)), d.Operator.Metres, d.Drive.Metres)
}

// nearestWords says where the nearest cut on one side lies, and that it lies at the
// band's end where the numbers would make one of the two.
func nearestWords(b material.Beside, end int64, u plan.Unit) string {
	at := u.Show(plan.Length(b.Nearest))
	switch {
	case !b.Cuts:
		return "none"
	case at == u.Show(plan.Length(end)):
		return "right at its end, " + at + ","
	}
	return "at " + at
}
