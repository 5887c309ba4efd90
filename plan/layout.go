package plan

import "fmt"

// Layout is the cuts of one job placed on the beam.
type Layout struct {
	Web   Span      // where the job's web runs
	Slits []Length  // cut widths, operator side first
	Trim  [2]Length // waste strip on the operator and on the drive side
	Shift Length    // from centred in the trim, + to the drive side
	Cuts  []Length  // places of the cuts, ascending; score cuts have no kerf
}

// Fault is one thing that keeps a job from being laid out or run on a beam: the
// part of the job at fault and what is wrong, with its numbers in Unit.
type Fault struct {
	Key string // the job's key in day.toml it belongs to: material, web, slits, trim, shift
	Why func(Unit) string
}

// Faults lists everything that keeps the job from being laid out on the beam,
// whatever the holders' conditions; empty when it can be.
func (b *Beam) Faults(j *Job) []Fault {
	var out []Fault
	fault := func(key string, why func(Unit) string) { out = append(out, Fault{key, why}) }
	if j.Web > b.Web.Length() {
		fault("web", func(u Unit) string {
			web, area := u.apart(j.Web, b.Web.Length())
			return fmt.Sprintf("the web of %s is wider than the web area of %s", web, area)
		})
	}
	if j.Uncut != "" {
		fault("material", func(Unit) string { return j.Uncut })
	}
	slits := j.Slits()
	trim := j.Web - sum(slits)
	switch {
	case len(slits) == 0:
		fault("slits", func(Unit) string { return "no slits are listed" })
	case trim < 0:
		fault("slits", func(u Unit) string {
			all, web := u.apart(sum(slits), j.Web)
			return fmt.Sprintf("the slits add up to %s, more than the web of %s", all, web)
		})
	case trim > 0 && j.Trim <= 0:
		fault("trim", func(u Unit) string {
			return fmt.Sprintf("the least trim is %s; where there is trim, %s in all, it must be above 0", u.Show(j.Trim), u.Show(trim))
		})
	case trim > 0 && trim < 2*j.Trim:
		fault("trim", func(u Unit) string {
			has, needs := u.apart(trim, 2*j.Trim)
			return fmt.Sprintf("the trim is %s in all, less than the %s needed for %s on each side", has, needs, u.Show(j.Trim))
		})
	}
	inner := slits // strips between two cuts
	if trim == 0 {
		inner = slits[min(1, len(slits)):max(len(slits)-1, min(1, len(slits)))]
	}
	for i, s := range inner {
		if s < b.Pitch() {
			n := i + 1
			if trim == 0 {
				n++
			}
			fault("slits", func(u Unit) string {
				slit, pitch := u.apart(s, b.Pitch())
				return fmt.Sprintf("slit %d of %s is narrower than the pitch of %s: two holders can't stand so near", n, slit, pitch)
			})
			break // the first says it; a run of equal slits would repeat it
		}
	}
	if n, good := cutCount(len(slits), trim), b.cutters(); n > good {
		fault("slits", func(Unit) string {
			return fmt.Sprintf("%d cuts need as many holders; %d of the %d holders may cut", n, good, len(b.Holders))
		})
	}
	if len(out) == 0 && len(b.offRail(j, slits)) > 0 {
		cuts := b.offRail(j, slits)
		fault("slits", func(u Unit) string {
			return fmt.Sprintf("the cut at %s is off the rail, which runs from %s to %s", u.Show(cuts[0]), u.Show(b.Rail.From), u.Show(b.Rail.To))
		})
	}
	if len(out) == 0 {
		out = b.damaged(j)
	}
	return out
}

// apart shows two lengths that are not the same, in full where rounding would make
// them look so.
func (u Unit) apart(a, b Length) (string, string) {
	if u.Show(a) == u.Show(b) {
		return a.MM() + " mm", b.MM() + " mm"
	}
	return u.Show(a), u.Show(b)
}

// offRail lists the cuts that are off the rail at every allowed shift.
func (b *Beam) offRail(j *Job, slits []Length) []Length {
	from, to := b.Window(j)
	var out []Length
	for _, c := range b.Lay(j, slits, 0).Cuts {
		if c+to < b.Rail.From || c+from > b.Rail.To {
			out = append(out, c)
		}
	}
	return out
}

// Lay places the job's slits, in the order given, at a shift from centred. It
// checks nothing: see Faults and Window.
func (b *Beam) Lay(j *Job, slits []Length, shift Length) Layout {
	l := Layout{Web: b.web(j.Web), Slits: slits, Shift: shift}
	trim := j.Web - sum(slits)
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

// web is where a web of the given width runs. Of an odd nanometre beside a
// centred web the drive side gets the larger half.
func (b *Beam) web(width Length) Span {
	from := b.Web.From
	switch room := b.Web.Length() - width; b.Guide {
	case GuideCentre:
		from += room / 2
	case GuideDrive:
		from += room
	}
	return Span{from, from + width}
}

// Window is the stretch of shifts the job allows: nought alone when it is
// centred or has no trim.
func (b *Beam) Window(j *Job) (from, to Length) {
	trim := j.Web - sum(j.Slits())
	if j.Shift == Centred || trim <= 0 {
		return 0, 0
	}
	return j.Trim - trim/2, trim - j.Trim - trim/2
}

// cutters counts the holders that may cut.
func (b *Beam) cutters() int {
	n := 0
	for _, c := range b.Holders {
		if c.Cuts() {
			n++
		}
	}
	return n
}

// cutCount is the number of cuts of that many slits: one at each edge trim and one
// between any two neighbours.
func cutCount(slits int, trim Length) int {
	if trim > 0 {
		return slits + 1
	}
	return max(slits-1, 0)
}

func sum(ls []Length) Length {
	var s Length
	for _, l := range ls {
		s += l
	}
	return s
}
