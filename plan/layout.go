package plan

// Layout is the cuts of one job placed on the beam.
type Layout struct {
	Web   Span      // where the job's web runs
	Slits []Length  // cut widths, operator side first
	Trim  [2]Length // waste strip on the operator and on the drive side
	Shift Length    // from centred in the trim, + to the drive side
	Cuts  []Length  // places of the cuts, ascending; score cuts have no kerf
}

// Lay places the job's slits, in the order given, at a shift from centred. It
// checks nothing: see Faults and Window.
func (b *Beam) Lay(j *Job, slits []Length, shift Length) Layout {
	l := Layout{Web: b.WebOf(j.Web), Slits: slits, Shift: shift}
	trim := j.Web - Sum(slits)
	l.Trim = [2]Length{trim/2 + shift, trim - trim/2 - shift}
	at := l.Web.From + l.Trim[0]
	if trim > 0 {
		l.Cuts = append(make([]Length, 0, len(slits)+1), at)
	}
	for _, s := range slits {
		at += s
		l.Cuts = append(l.Cuts, at)
	}
	if trim == 0 && len(l.Cuts) > 0 {
		l.Cuts = l.Cuts[:len(l.Cuts)-1] // the last edge is the web's own
	}
	return l
}

// WebOf is where a web of the given width runs. Of an odd nanometre beside a
// centred web the drive side gets the larger half.
func (b *Beam) WebOf(width Length) Span {
	from := b.Web.From
	switch room := b.Web.Length() - width; b.Guide {
	case GuideCentre:
		from += room / 2
	case GuideDrive:
		from += room
	}
	return Span{from, from + width}
}

// Window is the stretch of shifts the job allows: 0 alone when it is
// centred or has no trim.
func (b *Beam) Window(j *Job) (from, to Length) {
	trim := j.Web - Sum(j.Slits())
	if j.Shift == Centred || trim <= 0 {
		return 0, 0
	}
	return j.Trim - trim/2, trim - j.Trim - trim/2
}

// Sum adds lengths up.
func Sum(ls []Length) Length {
	var s Length
	for _, l := range ls {
		s += l
	}
	return s
}
