package sheet

import (
	"fmt"
	"slices"

	"bide/material"
	"bide/plan"
	"bide/plan/words"
)

// wornFace says how the day wears the anvil's face, and where its damaged bands are.
type wornFace struct{ *facts }

// worn says how the day wears the anvil's face; empty where nothing is cut.
func (f wornFace) worn() string {
	if f.options.Knife == nil || f.options.Knife.Face == nil || f.options.Knife.Face.Worst < 0 {
		return ""
	}
	face, u := f.options.Knife.Face, f.options.Unit
	from, to := face.Span(face.Worst)
	text := fmt.Sprintf("%.0f m from %s to %s; the bands that are cut in have %.0f %% of that on average.",
		face.Metres[face.Worst], u.Number(plan.Length(from)), u.Show(plan.Length(to)), 100*face.Evenness())
	if taken := f.options.Knife.Faced; taken != "" {
		text += " Here " + taken + "."
	}
	if f.options.Day != nil && slices.ContainsFunc(f.options.Day.Jobs, func(j plan.Job) bool { return j.State == plan.Done }) {
		text += " Jobs that are done aren't counted."
	}
	return text + " Shifts and another order of slits spread the wear."
}

// faceBand is a band of the face in the table: where it begins, what is cut in it, and
// whether a damaged one lies in it.
type faceBand struct{ From, Metres, Mark string }

// damageMark stands by what is damaged.
const damageMark = "x"

// bandsHead says what the table of bands is.
func (f wornFace) bandsHead() string {
	text := "Metres cut in each band, named by where it begins (" + f.options.Unit.String() + "). Bands that aren't listed have no cuts"
	if len(f.options.Knife.Damaged) > 0 {
		text += "; " + damageMark + ": a damaged band is in it, or a part of one"
	}
	return text + "."
}

// bands are those of the face that are cut in or damaged.
func (f wornFace) bands() (out []faceBand) {
	face := f.options.Knife.Face
	var from []plan.Length
	for b := range face.Metres {
		if face.Metres[b] > 0 || f.damagedIn(b) {
			at, _ := face.Span(b)
			mark := ""
			if f.damagedIn(b) {
				mark = damageMark
			}
			from = append(from, plan.Length(at))
			out = append(out, faceBand{Metres: fmt.Sprintf("%.0f", face.Metres[b]), Mark: mark})
		}
	}
	r := words.NewRuler(f.options.Unit, "from", from...)
	for i := range out {
		out[i].From = r.Place(from[i])
	}
	return out
}

// damagedIn reports whether a part of a damaged band lies in a band of the face.
func (f wornFace) damagedIn(band int) bool {
	from, to := f.options.Knife.Face.Span(band)
	last := band == len(f.options.Knife.Face.Metres)-1 // which has its far end too
	for _, d := range f.options.Knife.Damaged {
		if d.To >= from && (d.From < to || last && d.From == to) {
			return true
		}
	}
	return false
}

// damaged are the damaged bands of the anvil.
func (o *Options) damaged() (out []plan.Span) {
	if o.Knife != nil {
		for _, d := range o.Knife.Damaged {
			out = append(out, plan.Span{From: plan.Length(d.From), To: plan.Length(d.To)})
		}
	}
	return out
}

// damagedHead says what a damaged band is to a plan.
const damagedHead = "No cut is placed in these, their ends included, but one may be right beside them: give each in beam.toml with the room that a blade needs. Damage grows: check that it still ends there."

// damaged says of each damaged band how the day's cuts lie about it, or those of the one
// job that is written.
func (f atKnife) damaged() (out []string) {
	all := f.options.Knife.Damaged
	if f.options.Only != "" {
		all = f.options.turn(f.set[0]).Damaged
	}
	for _, d := range all {
		out = append(out, d.Where+"; "+d.Worn)
	}
	return out
}

// damagedUnder lists the damaged bands under step i's web, one after the other.
func (f *facts) damagedUnder(i int, all []material.Damage) (out []fact) {
	const most = 3
	web, name, more := f.steps[i].Layout.Web, "DAMAGED", 0
	for _, d := range all {
		switch {
		case d.To < int64(web.From) || d.From > int64(web.To):
		case len(out) == most:
			more++
		default:
			out, name = append(out, fact{Name: name, Text: "anvil " + d.Where}), ""
		}
	}
	if more > 0 {
		out = append(out, fact{Text: "and " + words.Count(more, "band") + " more, see the knife's page"})
	}
	return out
}
